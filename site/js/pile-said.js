// What is said of a press, and how far the reading is: at the foot, in view wherever the page is scrolled to.

import { hide, need } from "./elements.js";

const said = need("[data-said]");
const bar = need("[data-share]", HTMLProgressElement);

/** @param {string} name @param {Record<string, string | number>} values */
const sentence = (name, values) =>
  (said.dataset[name] ?? "").replace(/\{(\w+)\}/g, (_, one) => String(values[one] ?? ""));

/** Say what a press has done, in view of the press. @param {string} text */
export function tell(text) {
  said.textContent = text;
  if (text) said.scrollIntoView({ block: "nearest" });
}

/** Say one of the sentences that the page has, by its name; "" for nothing. @param {string} name @param {Record<string, string | number>} [values] */
export const say = (name, values = {}) => tell(name ? sentence(name, values) : "");

/**
 * Say which photograph is read.
 * @param {{ number: number, count: number }} which @param {number} share of the work that is done
 * @param {number} seconds about how many are left; 0: not known
 */
export function sayReading(which, share, seconds) {
  said.textContent = sentence("reading", which) + (seconds > 1 ? ` ${sentence("left", { seconds })}` : "");
  bar.value = share;
}

/** @param {boolean} is whether photographs are read */
export const showReading = (is) => hide(bar, !is);
