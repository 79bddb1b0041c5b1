// The example that a page opens with: once a value of one's own stands in the form, what is left of it can be cleared.

import { around, hide, need, write } from "./elements.js";
import * as form from "./form.js";

const place = need("[data-example]");
const sentence = need("span", HTMLElement, place);
const button = need("button", HTMLButtonElement, place);
const built = form.initial();
let own = location.hash.length > 1; // a link or a code gave the values, or still has to be read
/** @type {{ touched: Set<string>, cleared: () => void }} */
let page;

/** The texts that are always in view or behind their own fold; choices are no values of an example. */
const values = () => /** @type {HTMLInputElement[]} */ ([...document.querySelectorAll("#problem input[type=text][name]")]);

/** Values that nobody has typed: those of the example that are in view. */
function left() {
  if (own) return [];
  return values().filter(
    (one) => one.value && one.value === built[one.name] && !page.touched.has(one.name) && !one.closest("[hidden]"),
  );
}

function offer() {
  const wanted = left().length > 0 && values().some((one) => one.value !== built[one.name]);
  write(sentence, (wanted && place.dataset.left) || "");
  hide(button, !wanted);
}

function clear() {
  const cleared = left();
  form.fill(Object.fromEntries(cleared.map((one) => [one.name, ""])));
  offer();
  sentence.textContent = place.dataset.cleared ?? "";
  cleared[0]?.focus();
  page.cleared();
}

/**
 * A link was opened.
 * @param {boolean} hasValues
 */
export function opened(hasValues) {
  own = hasValues;
  offer();
}

/** @param {typeof page} hooks */
export function join(hooks) {
  page = hooks;
  document.addEventListener("input", offer);
  document.addEventListener("click", (event) => {
    if (around(event, "[data-clear-example]")) clear();
    else if (around(event, "[data-set]")) offer();
  });
}
