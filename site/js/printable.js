// A browser's own print cannot wait for Python: a sheet of other values than the form's is not printed, and a sentence
// on the paper says so.

import { need } from "./elements.js";

/** @param {() => boolean} isTheForms whether the sheet in the page is that of the form as it stands */
export function guard(isTheForms) {
  const figure = need(".figure");
  // Taken back at the next print alone: phones lay the pages out after they have said that they are printed.
  addEventListener("beforeprint", () => figure.toggleAttribute("data-unprintable", !isTheForms()));
}
