// All settings put back to those of the page at one press, which can be undone. Values stay as they are.

import { controlOf, need, write } from "./elements.js";
import * as form from "./form.js";

/** @import { Values } from "../types/shared.js" */

const button = need("[data-settings-back]");
const said = need("[data-settings-said]");
// Values, the kind of sheet, what was measured, and what was typed for the title block.
const APART = "[data-holds-values], [data-field=sheet], .field.length, .field.text";

const PLACES = ".choices, .scale-row";

/** @type {Values | null} */
let before = null; // the settings from before they were put back

/** @param {Record<string, string>} values */
function settingsOf(values) {
  const names = form.controls().filter((one) => one.closest(PLACES) && !one.closest(APART)).map((one) => one.name);
  return Object.fromEntries(names.map((name) => [name, values[name] ?? ""]));
}

/** @param {Values | null} kept @param {string} sentence */
function keep(kept, sentence) {
  before = kept;
  write(button, (kept ? button.dataset.undo : button.dataset.settingsBack) ?? "");
  write(said, sentence);
}

/**
 * Listen to the button; `changed()` follows the form, `live(sentence)` is read out.
 * @param {() => unknown} changed @param {(sentence: string) => void} live
 */
export function listen(changed, live) {
  button.addEventListener("click", () => {
    const now = settingsOf(form.read());
    const differ = form.fill(before ?? settingsOf(form.initial())).length > 0;
    const sentence = before ? "" : ((differ ? button.dataset.done : button.dataset.none) ?? "");
    keep(before || !differ ? null : now, sentence);
    if (differ) changed();
    live(sentence);
  });
  document.addEventListener("input", (event) => {
    if (controlOf(event)?.form?.id === "problem") keep(null, "");
  });
}
