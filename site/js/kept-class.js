// What this device keeps of a class: the list of names and the answers as they were typed, until they are erased or their
// time is over, and the link of the set that was last shown, so that the page opens with it. Names and answers are the
// lecturer's alone: in no link, in no request that leaves the device.

import * as store from "./kept.js";

const VERSION = 1;
const PARTS = ["roll", "results", "set"];

/** @returns {Record<string, unknown>} */
function found() {
  try {
    const value = JSON.parse(store.read("class") ?? "null");
    return value && value.version === VERSION ? value : {};
  } catch {
    return {};
  }
}

/** @param {unknown} value */
const textOf = (value) => (typeof value === "string" ? value : "");

/**
 * What is kept under a name, "" if nothing of ours is.
 * @param {string} name
 */
export const kept = (name) => textOf(found()[name]);

/**
 * Keep a text, or forget it if it is empty; gives whether the browser let it. Where it does not, `file` names the file of it
 * that is offered.
 * @param {string} name @param {string} text @param {string} [file]
 */
export function keep(name, text, file) {
  const before = found();
  const texts = Object.fromEntries(PARTS.map((part) => [part, part === name ? text : textOf(before[part])]));
  const whole = Object.values(texts).some(Boolean) ? JSON.stringify({ version: VERSION, ...texts }) : null;
  if (texts.roll || texts.results) store.stay();
  return store.write("class", whole, file ? { name: file, text } : null);
}
