// Finds what the page's template has.

/**
 * The first element within `within` that a selector names. Throws where there is none, or one of another kind.
 * @template {Element} [E=HTMLElement]
 * @param {string} selector
 * @param {{ new (): E }} [kind]
 * @param {ParentNode} [within]
 * @returns {E}
 */
export function need(selector, kind, within = document) {
  const found = within.querySelector(selector);
  if (!found || (kind && !(found instanceof kind))) throw new TypeError(`no ${selector} of the expected kind`);
  return /** @type {E} */ (/** @type {Element} */ (found));
}

// What stays as it is is not written: even the same text or attribute, written again, costs style and layout.

/** @param {Node} place @param {string} text */
export function write(place, text) {
  if (place.textContent !== text) place.textContent = text;
}

/** @param {HTMLElement} element @param {boolean} hidden */
export function hide(element, hidden) {
  if (element.hidden !== hidden) element.hidden = hidden;
}

/**
 * The element that a selector names and in which an event happened, if there is one.
 * @param {Event} event
 * @param {string} selector
 */
export const around = ({ target }, selector) => (target instanceof Element ? target.closest(selector) : null);

/**
 * The control in which an event happened, if it happened in one.
 * @param {Event} event
 */
export function controlOf({ target }) {
  const kinds = [HTMLInputElement, HTMLSelectElement, HTMLTextAreaElement];
  return kinds.some((kind) => target instanceof kind) ? /** @type {import("../types/shared.js").Control} */ (target) : null;
}

/**
 * Carry out what a pressed button of the page names in `data-do`.
 * @param {Record<string, (button: HTMLElement) => unknown>} actions @param {(error: unknown) => void} failed
 */
export function actOnPress(actions, failed) {
  document.addEventListener("click", async (event) => {
    const button = around(event, "[data-do]");
    try {
      if (button) await actions[button.dataset.do ?? ""]?.(button);
    } catch (error) {
      failed(error);
    }
  });
}
