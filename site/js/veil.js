// A page that a printed problem opened holds its answer back until it is asked for: pycore is not even asked for it.
// `<html data-veiled>` says so: "sheet" where the sheet itself is the problem and may be seen, else "all". It says so
// before the page is painted, and the example's answer has left the page by then (before-paint.js).

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
/** Hold the answer back while an answer of one's own is checked. */
export function lower() {
  cover();
  regions.empty(HOLD_ANSWER);
  hush();
  need('[data-action="unveil"]').focus();
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
  if (isDown()) cover();
}

/** The answer is asked for. */
export function lift() {
  delete root.dataset.veiled;
}

/** What a request for an answer says of it. */
export const asked = () => (isDown() ? { veiled: true } : {});

/** What must come with the answer, because the workings do not follow it. */
export const parts = () => (isDown() ? ["check"] : []);
