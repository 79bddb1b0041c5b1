// A page that a printed problem opened holds its answer back until it is asked for: pycore is not even asked for it.
// `<html data-veiled>` says so: "sheet" where the sheet itself is the problem and may be seen, else "all".

import * as form from "./form.js";

const root = document.documentElement;

/** Whether the answer is held back. */
export const isDown = () => root.hasAttribute("data-veiled");

/**
 * Hold the answer back if a link is that of a problem.
 * @param {string} link
 */
export function open(link) {
  const keys = new URLSearchParams(link.replace(/^#/, ""));
  if (keys.get("code")?.trim() || keys.get("sheet") === "problem") {
    root.dataset.veiled = keys.get("sheet") === "problem" ? "sheet" : "all";
  } else {
    lift();
  }
}

/** The sheet may be seen as long as it is a problem's. */
export function follow() {
  if (isDown()) root.dataset.veiled = form.read().sheet === "problem" ? "sheet" : "all";
}

/** The answer is asked for. */
export function lift() {
  delete root.dataset.veiled;
}

/** What a request for an answer says of it. */
export const asked = () => (isDown() ? { veiled: true } : {});

/** What must come with the answer, because the workings do not follow it. */
export const parts = () => (isDown() ? ["check"] : []);
