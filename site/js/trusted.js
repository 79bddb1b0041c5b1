// The page's only trusted-types policy: what may become HTML, and which scripts may run beside the page.

const root = document.documentElement;
/** @param {string} name */
const addressIn = (name) => {
  const address = root.dataset[name];
  return address ? new URL(address, document.baseURI).href : "";
};

/** The address of the worker that runs Python, or "" on a page without one. */
export const workerAddress = addressIn("worker");

/** The address of the worker that reads photographs, or "" on a page without one. */
export const readerAddress = addressIn("reader");

/** The address of the script that keeps the site on the device. */
export const editionAddress = addressIn("edition");

const REFUSED = new RegExp(
  [
    "<(?:script|iframe|object|embed|base|meta|link)\\b",
    "\\son\\w+\\s*=\\s*[\"']",
    "\\s(?:xlink:)?(?:href|src|srcset|action|formaction|data|poster)\\s*=\\s*[\"']\\s*javascript:",
  ].join("|"),
  "i",
);

const rules = {
  // HTML reaches the page only from pycore, which escapes all text, quotes too; what it never writes is refused all
  // the same. Nothing that a person types can look like it, so that no link can stop the page by being refused.
  /** @param {string} html */
  createHTML(html) {
    if (REFUSED.test(html)) {
      throw new TypeError("pycore writes no such HTML");
    }
    return html;
  },
  /** @param {string} address */
  createScriptURL(address) {
    if (!address || ![workerAddress, editionAddress, readerAddress].includes(address)) {
      throw new TypeError("only the page's own workers may run");
    }
    return address;
  },
};
const policy = globalThis.trustedTypes ? trustedTypes.createPolicy("phasor-folio", rules) : rules;

/**
 * HTML of a region, as pycore made it, in the form that the page's policy asks for.
 * @param {string} html
 */
export const regionHTML = (html) => policy.createHTML(html);

/**
 * The address of a script of ours, in the form that the page's policy asks for.
 * @param {string} address
 */
export const scriptURL = (address) => policy.createScriptURL(address);
