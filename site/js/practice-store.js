// What this device keeps of a learner's practice. Whether it is a record of ours, pycore decides.

import * as kept from "./kept.js";

export const FILE_NAME = "phasor-folio-practice.json";
const MOST_TAKEN = 100;
/** @type {("practice" | "taken")[]} */
const PARTS = ["practice", "taken"];

/** @import { PracticeRecord } from "../types/shared.js" */

/** @type {PracticeRecord | null} */
let begun = null; // a record in which nothing was done yet, and which is not kept before that

/**
 * The record as it is kept, or as it was begun; null where there is none.
 * @returns {PracticeRecord | null}
 */
export function read() {
  const text = kept.read("practice");
  if (text === null) return begun;
  try {
    return JSON.parse(text) ?? {};
  } catch {
    return {}; // No record: pycore says so, and begins anew.
  }
}

/**
 * Keep a record.
 * @param {PracticeRecord} record
 */
export function write(record) {
  const text = JSON.stringify(record);
  begun = null;
  return kept.write("practice", text, { name: FILE_NAME, text });
}

/**
 * Go on with a record; where none is kept, because another window erased it, this one stays with the page until something is
 * done in it.
 * @param {PracticeRecord} record
 */
export function goOn(record) {
  if (kept.read("practice") === null) begun = record;
  else write(record);
}

/** Keep nothing; gives what brings it back. */
export function forget() {
  const before = PARTS.map((part) => kept.read(part));
  for (const part of PARTS) kept.write(part, null);
  return () => PARTS.forEach((part, place) => kept.write(part, before[place]));
}

// Files that were added to the record, by length and a sum of their signs: added once more they would count twice.
/** @param {string} text */
function markOf(text) {
  let sum = 2166136261; // the start and the factor of FNV-1a
  for (let at = 0; at < text.length; at += 1) sum = Math.imul(sum ^ text.charCodeAt(at), 16777619);
  return `${text.length}.${sum >>> 0}`;
}

const taken = () => (kept.read("taken") ?? "").split(" ").filter(Boolean);

/**
 * Whether a file was added to the record before.
 * @param {string} text
 */
export const tookBefore = (text) => taken().includes(markOf(text));

/**
 * A file has been added to the record.
 * @param {string} text
 */
export const took = (text) => kept.write("taken", [...taken(), markOf(text)].slice(-MOST_TAKEN).join(" "), null);

/** @param {() => void} then */
export const follow = (then) =>
  kept.follow("practice", () => {
    begun = null;
    then();
  });

/** A number of this device's own, with which a new record begins. */
export const seed = () => crypto.getRandomValues(new Uint16Array(1))[0];
