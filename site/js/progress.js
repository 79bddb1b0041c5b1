// The strip that says what the page waits for until Python runs: what is loaded, how much of it is here, how long the
// rest takes. Its sentences stand in the page.

import { Lacking } from "./bridge.js";
import { need } from "./elements.js";
import { paceOf, spaced } from "./pace.js";

/** @import { Fetched, State } from "../types/shared.js" */

const root = document.documentElement;
const strip = need("[data-progress]");
const text = need("[data-progress-text]", HTMLElement, strip);
const far = need("[data-progress-far]", HTMLElement, strip);
const over = document.querySelector("[data-progress-too]"); // the same in a lesson, which lies over the strip
const bar = need("[data-bar]", HTMLElement, strip);
const retry = need("[data-retry]", HTMLElement, strip);
const SPOKEN_AFTER = 3_000; // ms of waiting before it is said in words
const REASON_SHOWN_FOR = 6_000; // ms; a new start is over sooner than its reason could be read
const SHOWN_AFTER = 250; // ms; a start from the cache is over before anybody could read a sentence
const FAR_PAUSE = 2_000; // ms between two figures, which nobody reads if they run
const MINUTE = 60; // s
const NEARLY = 0.9; // of it all: what is left then is to start
const CODE = /^[\w \-–—−]{1,20}$/u; // what a sentence repeats of an address

// What waits beside the strip says the same, and gives way to it. A style that looked for the strip by :has() would be
// looked for whenever an element comes or goes.
const told = () => root.toggleAttribute("data-loading-said", !strip.hidden && strip.dataset.speaks === "loading");
new MutationObserver(told).observe(strip, { attributeFilter: ["hidden", "data-speaks"] });

/** @param {string} name */
const word = (name) => strip.dataset[name] ?? "";

/**
 * Say a sentence that must be seen, whatever stands in its place.
 * @param {string} name
 */
function speak(name) {
  text.textContent = word(name);
  far.textContent = "";
  strip.dataset.speaks = "";
}

/** @type {ReturnType<typeof setTimeout>[]} */
let timers = [];
let reason = "again"; // why Python is started once more: it stopped by itself, or lacked a part
let reasonUntil = 0; // until when that is said
let loading = "loading"; // the sentence for what is loaded
let code = ""; // the code of the problem that is loaded, if it is one
let pace = paceOf();
let fetching = false; // or else no figure is said
let reached = 0; // the share that is here
let filling = false; // Python is ready, but what was asked waits for the rest of its data
let looking = false; // whether a typed code is being looked up, which goes on when Python is ready

/**
 * Say what the page waits for: the answer to a link's "values", what else a "link" asks for, the problem of a "code", the
 * same where its values are there already ("problem"), the problem of this device's record ("own"), or without any of them what it needs for whatever is typed.
 * @param {"values" | "link" | "code" | "problem" | "own" | ""} awaited
 * @param {string} typed the code
 */
export function expect(awaited = "", typed = "") {
  code = CODE.test(typed.trim()) ? typed.trim().toUpperCase() : "";
  const known = code ? { code: "loadingCode", problem: "loadingProblem" } : { code: "loadingAnyCode", problem: "loadingValues" };
  loading = { values: "loadingValues", link: "loadingLink", own: "loadingOwn", "": "loading", ...known }[awaited];
}

/**
 * Begin anew; `again` is called when the reader asks for another try.
 * @param {() => void} again
 */
export function begin(again) {
  pace = paceOf();
  reached = 0;
  timers = [
    setTimeout(() => (strip.hidden = false), SHOWN_AFTER),
    setTimeout(() => (strip.dataset.speaks = "loading"), loading === "loading" ? SPOKEN_AFTER : SHOWN_AFTER),
  ];
  retry.hidden = true;
  retry.onclick = again;
  far.textContent = "";
  sayLoading(null);
  delete strip.dataset.speaks;
  bar.style.width = "0";
}

/**
 * Say that the problem of a typed code is on its way, for as long as it is.
 * @param {string | null} typed null once it is there, or will not come
 */
export function lookUp(typed) {
  looking = typed !== null;
  expect(looking ? "code" : "", typed ?? "");
  strip.hidden = !looking;
  if (!looking) return;
  sayLoading(null);
  strip.dataset.speaks = "loading";
}

/** The sentence for a start that failed. */
export const failedWords = () => word(loading === "loading" ? "failed" : "failedOwn");

/** The sentence for a start that is under way. */
export const startingWords = () => word("starting");

// Said anew only when it changes, because it is read aloud.
/** @param {number | null} seconds that are left, if that is known */
function sayLoading(seconds) {
  const minutes = Math.round((seconds ?? 0) / MINUTE);
  const left = seconds === null ? "" : seconds < MINUTE ? word("soon") : word(minutes === 1 ? "minute" : "minutes");
  const awaited = filling && loading === "loading" ? "loadingRest" : loading;
  const sentences = [word(awaited).replace("{code}", code), left.replace("{minutes}", String(minutes)), word(`${awaited}Meanwhile`)];
  const said = sentences.filter(Boolean).join(" ");
  if (text.textContent !== said) text.textContent = said;
  if (over) over.textContent = `${said} ${far.textContent}`;
}

const sayFar = spaced(FAR_PAUSE, (/** @type {Fetched} */ { share, bytes, whole }) => {
  if (!fetching || performance.now() < reasonUntil) return;
  const mega = (/** @type {number} */ number) => (number / 1e6).toFixed(1);
  far.textContent = word("far").replace("{done}", mega(bytes)).replace("{whole}", mega(whole));
  sayLoading(pace(share));
});

/**
 * Show a state of the start.
 * @param {State} state
 * @param {Fetched | string | undefined} detail
 */
export function show(state, detail = "") {
  if (state === "ready" || state === "failed") timers.forEach((timer) => clearTimeout(timer));
  fetching = typeof detail === "object";
  filling = state === "ready" && fetching;
  if (filling) strip.dataset.speaks = "loading";
  else if (state === "ready") hideAfterReason();
  if (filling || state === "failed" || state === "again") strip.hidden = false;
  retry.hidden = state !== "failed";
  if (state === "again") showReason("again");
  if (performance.now() < reasonUntil && state !== "failed") {
    speak(reason);
    bar.style.width = "0";
  } else if (typeof detail === "object") {
    sayFar(detail);
    reached = detail.share;
    bar.style.width = `${reached * 95}%`;
  } else if (state === "starting" && (loading === "loading" || reached > NEARLY)) {
    if (loading === "loading") text.textContent = word("starting");
    far.textContent = "";
    bar.style.width = "97%";
  } else if (state === "failed") {
    speak(loading === "loading" ? "failed" : "failedOwn");
    bar.style.width = "0";
  }
}

/** @param {string} name */
function showReason(name) {
  reason = name;
  reasonUntil = performance.now() + REASON_SHOWN_FOR;
}

function hideAfterReason() {
  if (looking) return;
  if (performance.now() >= reasonUntil) delete strip.dataset.speaks;
  const left = reasonUntil - performance.now();
  if (left > 0) timers.push(setTimeout(() => (strip.hidden = true), left));
  else strip.hidden = true;
}

/**
 * Say for a while that a request came to nothing; gives the sentence.
 * @param {unknown} error
 */
export function stuck(error) {
  const name = error instanceof Lacking ? "lacking" : "stuck";
  if (name === "lacking") showReason(name);
  speak(name);
  strip.hidden = false;
  timers.push(setTimeout(() => (strip.hidden = true), 8000));
  return word(name);
}
