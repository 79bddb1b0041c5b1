// The answer is held back until it is asked for where somebody is to find it: pycore is not even asked for it. The way in
// decides. A problem's code or link comes with its answer held back, and `<html data-veiled>` says so: "sheet" where the
// sheet itself is the problem and may be seen, else "all". It says so before the page is painted, and the example's answer
// has left the page by then (before-paint.js). Whoever types values gets the answer at once; it stands aside ("check")
// while Check, which asks for it, is in view, and comes back with every other tab.

import { need } from "./elements.js";
import * as form from "./form.js";
import * as regions from "./regions.js";
import { live } from "./said.js";

const root = document.documentElement;

/** The regions of an answer, and all that may hold something of it. */
const ANSWER = ["answer", "notes", "results", "figures", "sheet", "view", "workings"];
const HOLD_ANSWER = [
  ...ANSWER, "marked", "easy", "photo-result", "lesson-text", "lesson-picture", "lesson-why", "lesson-why-picture",
];

/** Whether the answer is held back. */
export const isDown = () => root.hasAttribute("data-veiled");

/** Whether it is because a code or a link has opened a problem. */
export const isProblem = () => isDown() && root.dataset.veiled !== "check";

/**
 * Hold the answer back if a link is that of a problem, or if it was hidden before a newer edition was taken over.
 * @param {string} link
 */
export function open(link) {
  const keys = new URLSearchParams(link.replace(/^#/, ""));
  const { veilStays } = root.dataset;
  delete root.dataset.veilStays;
  if (veilStays) {
    root.dataset.veiled = veilStays === "sheet" ? "sheet" : "all";
    regions.empty(HOLD_ANSWER);
  } else if (keys.get("code")?.trim() || keys.get("sheet") === "problem") {
    root.dataset.veiled = keys.get("sheet") === "problem" ? "sheet" : "all";
    hush();
  } else {
    lift();
  }
}

/** Neither the line that is read out nor what waits for it tells an earlier answer. */
function hush() {
  need("[data-live]").textContent = "";
  live("");
}

function cover() {
  root.dataset.veiled = form.read().sheet === "problem" ? "sheet" : "all";
}

// Hidden from the eye is not enough: nothing of the answer stays in the page, to be found or read out there.
/** Hold the answer back while an answer of one's own is checked; gives what stood there, by region. */
export function lower() {
  const all = regions.snapshot();
  root.dataset.veiled = "check";
  regions.empty(HOLD_ANSWER);
  hush();
  return new Map([...all].filter(([name]) => ANSWER.includes(name)));
}

/**
 * Leave nothing of an earlier answer in the page while the answer is held back; `kept` are the regions that stay.
 * @param {Record<string, unknown>} kept
 */
export function empty(kept) {
  if (isDown()) regions.empty(ANSWER.filter((name) => !(name in kept)));
}

/** The sheet may be seen as long as it is a problem's. */
export function follow() {
  if (isProblem()) cover();
}

/** The answer is asked for. */
export function lift() {
  delete root.dataset.veiled;
}

/** What a request for an answer says of it. */
export const asked = () => (isDown() ? { veiled: true } : {});

/** What a request says that judges lines: those of a problem are judged without their right values. */
export const judged = () => (isProblem() ? { veiled: true } : {});

/** What must come with the answer, because the workings do not follow it. */
export const parts = () => (isDown() ? ["check"] : []);
