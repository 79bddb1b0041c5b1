// Sentences of pycore's that stand beside the answer, or are read out.

import { hide, need, write } from "./elements.js";
import { afterQuiet } from "./pace.js";

const ANNOUNCE_PAUSE = 700; // ms of quiet before a sentence is read out

/** Read a sentence out, once no other came for a while. */
export const live = afterQuiet(ANNOUNCE_PAUSE, (/** @type {string} */ sentence) => {
  need("[data-live]").textContent = sentence;
});

/**
 * Show one of the sentences that a place has, by its name, and read it out; without one the place is empty.
 * @param {string} place a selector @param {string} [name]
 */
export function sayIn(place, name = "") {
  const shown = need(place);
  shown.textContent = shown.dataset[name] ?? "";
  if (shown.textContent) live(shown.textContent);
}

/**
 * Show what there is to say of a link that was opened, in the place of what was said before.
 * @param {string[]} notices
 */
export function showNotices(notices) {
  const list = need("[data-open-notices]");
  const items = notices.map((notice) => Object.assign(document.createElement("li"), { textContent: notice }));
  if (items.length || list.childElementCount) list.replaceChildren(...items);
  hide(list, notices.length === 0);
}

/**
 * Show the story of the problem, where the page has a place for one.
 * @param {string | undefined} scenario
 */
export function showScenario(scenario) {
  const place = document.querySelector("[data-scenario]");
  if (!place || typeof scenario !== "string") return;
  // Its text stays when it goes, and with it its line: the fields below do not move.
  if (scenario) write(place, scenario);
  hide(place, !scenario);
}
