// What the device keeps of the lesson view: large print.

import * as store from "./kept.js";

/** @param {boolean} on */
export const keep = (on) => store.write("lesson", on ? JSON.stringify({ version: 1, large: true }) : null, null);

/** Hear of it when another window changes it. @param {() => void} then */
export const follow = (then) => store.follow("lesson", then);

export function kept() {
  try {
    const found = JSON.parse(store.read("lesson") ?? "null");
    return found?.version === 1 && found.large === true;
  } catch {
    return false;
  }
}
