// How the answer in view stands to the form: `<html data-answer>` says it to whoever waits, `data-old` and `data-late` to
// the style sheets. A style that named data-answer would be looked for again in the whole page at every edit.

/** @typedef {"fresh" | "pending" | "old"} Standing */

const root = document.documentElement;
const LATE = 400; // ms after which what is shown is marked as behind
let lateTimer = 0;

/** @param {Standing} standing */
export function markAnswer(standing) {
  root.dataset.answer = standing;
  root.toggleAttribute("data-old", standing === "old");
}

/** It is behind no longer. @param {Standing} standing */
export function settle(standing) {
  clearTimeout(lateTimer);
  delete root.dataset.late;
  markAnswer(standing);
}

/** An answer is on its way; `late()` once that takes long, which marks what is shown unless it gives false. @param {() => unknown} late */
export function pend(late = () => true) {
  markAnswer("pending");
  clearTimeout(lateTimer);
  lateTimer = setTimeout(() => late() !== false && (root.dataset.late = ""), LATE);
}
