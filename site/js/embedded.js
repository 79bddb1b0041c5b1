// A page for embedding, in another site's page: what leads elsewhere opens by itself, since only this page may be framed.

/** What the folders of such pages begin with; "" on a page by itself. */
export const prefix = document.documentElement.dataset.embedded ?? "";

/**
 * The address of the same page by itself.
 * @param {string} address
 */
export const byItself = (address) => (prefix ? address.replace(`/${prefix}`, "/") : address);

/**
 * Go to another page of the site.
 * @param {string} address
 */
export function go(address) {
  if (prefix) open(address, "_blank", "noopener");
  else location.href = address;
}

/** @param {Event} event */
function openByItself(event) {
  const link = event.target instanceof Element ? event.target.closest("a[href]") : null;
  if (!(link instanceof HTMLAnchorElement) || link.href.split("#")[0] === location.href.split("#")[0]) return;
  link.target = "_blank";
  link.rel = "noopener";
}

if (prefix) document.addEventListener("click", openByItself, { capture: true });
