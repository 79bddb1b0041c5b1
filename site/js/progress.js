// The strip at the foot that says how far the start is. Its sentences stand in the page.

const strip = document.querySelector("[data-progress]");
const text = strip.querySelector("[data-progress-text]");
const bar = strip.querySelector("[data-bar]");
const retry = strip.querySelector("[data-retry]");
const SLOW_AFTER = 15_000;
const TOLD_FOR = 6_000; // ms; a new start is over sooner than its reason could be read
const SHOWN_AFTER = 250; // ms; a start from the cache is over before anybody could read a sentence

let timers = [];
let toldUntil = 0; // until when it is said that Python stopped by itself

/** Begin anew; `again` is called when the reader asks for another try. */
export function begin(again) {
  timers = [
    setTimeout(() => (strip.hidden = false), SHOWN_AFTER),
    setTimeout(() => (text.textContent = strip.dataset.slow), SLOW_AFTER),
  ];
  retry.hidden = true;
  retry.onclick = again;
  text.textContent = strip.dataset.starting;
  bar.style.width = "0";
}

/** The sentence for a start that failed. */
export const failedWords = () => strip.dataset.failed;

/** The sentence for a start that is under way. */
export const startingWords = () => strip.dataset.starting;

/** Show a state of the start; `share` in percent. */
export function show(state, share) {
  if (state === "ready" || state === "failed") timers.forEach(clearTimeout);
  if (state === "ready") hideWhenTold();
  else if (state === "failed" || state === "again") strip.hidden = false;
  retry.hidden = state !== "failed";
  if (state === "again") toldUntil = performance.now() + TOLD_FOR;
  if (performance.now() < toldUntil && state !== "failed") {
    text.textContent = strip.dataset.again;
    bar.style.width = "0";
  } else if (state === "fetching") {
    text.textContent = strip.dataset.fetching.replace("{share}", String(share));
    bar.style.width = `${share * 0.8}%`;
  } else if (state === "starting") {
    text.textContent = strip.dataset.starting;
    bar.style.width = "90%";
  } else if (state === "failed") {
    text.textContent = strip.dataset.failed;
    bar.style.width = "0";
  }
}

function hideWhenTold() {
  const left = toldUntil - performance.now();
  if (left > 0) timers.push(setTimeout(() => (strip.hidden = true), left));
  else strip.hidden = true;
}

/** Say for a while that a request came to nothing; gives the sentence. */
export function stuck() {
  text.textContent = strip.dataset.stuck;
  strip.hidden = false;
  timers.push(setTimeout(() => (strip.hidden = true), 8000));
  return strip.dataset.stuck;
}
