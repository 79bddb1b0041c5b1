// The strip at the foot that says how far the start is. Its sentences stand in the page.

import { Lacking } from "./bridge.js";
import { need } from "./elements.js";

/** @import { State } from "../types/shared.js" */

const strip = need("[data-progress]");
const text = need("[data-progress-text]", HTMLElement, strip);
const bar = need("[data-bar]", HTMLElement, strip);
const retry = need("[data-retry]", HTMLElement, strip);
const SLOW_AFTER = 15_000;
const TOLD_FOR = 6_000; // ms; a new start is over sooner than its reason could be read
const SHOWN_AFTER = 250; // ms; a start from the cache is over before anybody could read a sentence

/** @param {string} name */
const word = (name) => strip.dataset[name] ?? "";

/**
 * Say a sentence that must be seen, whatever stands in its place.
 * @param {string} name
 */
function speak(name) {
  text.textContent = word(name);
  strip.dataset.speaks = "";
}

/** @type {ReturnType<typeof setTimeout>[]} */
let timers = [];
let told = "again"; // why Python is started once more: it stopped by itself, or lacked a part
let toldUntil = 0; // until when that is said

/**
 * Begin anew; `again` is called when the reader asks for another try.
 * @param {() => void} again
 */
export function begin(again) {
  timers = [
    setTimeout(() => (strip.hidden = false), SHOWN_AFTER),
    setTimeout(() => speak("slow"), SLOW_AFTER),
  ];
  retry.hidden = true;
  retry.onclick = again;
  text.textContent = word("starting");
  delete strip.dataset.speaks;
  bar.style.width = "0";
}

/** The sentence for a start that failed. */
export const failedWords = () => word("failed");

/** The sentence for a start that is under way. */
export const startingWords = () => word("starting");

/**
 * Show a state of the start; `share` in percent.
 * @param {State} state
 * @param {number | string | undefined} share
 */
export function show(state, share = 0) {
  if (state === "ready" || state === "failed") timers.forEach((timer) => clearTimeout(timer));
  if (state === "ready") hideWhenTold();
  else if (state === "failed" || state === "again") strip.hidden = false;
  retry.hidden = state !== "failed";
  if (state === "again") tell("again");
  if (performance.now() < toldUntil && state !== "failed") {
    speak(told);
    bar.style.width = "0";
  } else if (state === "fetching") {
    text.textContent = word("fetching").replace("{share}", String(share));
    bar.style.width = `${Number(share) * 0.8}%`;
  } else if (state === "starting") {
    text.textContent = word("starting");
    bar.style.width = "90%";
  } else if (state === "failed") {
    speak("failed");
    bar.style.width = "0";
  }
}

/** @param {string} name */
function tell(name) {
  told = name;
  toldUntil = performance.now() + TOLD_FOR;
}

function hideWhenTold() {
  if (performance.now() >= toldUntil) delete strip.dataset.speaks;
  const left = toldUntil - performance.now();
  if (left > 0) timers.push(setTimeout(() => (strip.hidden = true), left));
  else strip.hidden = true;
}

/**
 * Say for a while that a request came to nothing; gives the sentence.
 * @param {unknown} error
 */
export function stuck(error) {
  const name = error instanceof Lacking ? "lacking" : "stuck";
  if (name === "lacking") tell(name);
  speak(name);
  strip.hidden = false;
  timers.push(setTimeout(() => (strip.hidden = true), 8000));
  return word(name);
}
