// The register as this device keeps it: marked papers in the order of their days. Names and marks are the lecturer's alone.

import * as store from "./kept.js";

/** @import { RegisterEntry } from "../types/shared.js" */

const VERSION = 1;
const FILE = { format: "phasor-folio register", version: 1 };
const DAY = 86_400_000;

/** @param {unknown} value @returns {RegisterEntry[]} */
function entriesOf(value) {
  const isEntry = (/** @type {any} */ one) => one && typeof one.paper === "string" && typeof one.group === "string" && Number.isInteger(one.day) && Array.isArray(one.marks);
  return Array.isArray(value) ? value.filter(isEntry) : [];
}

/** The papers of the register. @returns {RegisterEntry[]} */
export function papers() {
  try {
    const value = JSON.parse(store.read("register") ?? "null");
    return value?.version === VERSION ? entriesOf(value.papers) : [];
  } catch {
    return [];
  }
}

/** @param {RegisterEntry[]} list */
function write(list) {
  const sorted = [...list].sort((one, two) => one.day - two.day);
  if (sorted.length) store.stay();
  return store.write("register", sorted.length ? JSON.stringify({ version: VERSION, papers: sorted }) : null);
}

/** @param {RegisterEntry} one @param {RegisterEntry} other */
const isSame = (one, other) => one.paper === other.paper && one.group === other.group;

/** One paper of one group marked twice: the later marks of each learner count. @param {RegisterEntry} before @param {RegisterEntry} after */
function together(before, after) {
  const later = new Set(after.marks.map(({ place, name }) => `${place} ${name}`));
  const marks = [...before.marks.filter(({ place, name }) => !later.has(`${place} ${name}`)), ...after.marks];
  return { ...after, marks };
}

/** @param {RegisterEntry[]} list */
function join(list) {
  const all = papers();
  for (const entry of list) {
    const at = all.findIndex((one) => isSame(one, entry));
    if (at < 0) all.push(entry);
    else all[at] = entry.day < all[at].day ? together(entry, all[at]) : together(all[at], entry);
  }
  return write(all);
}

/**
 * Add a marked paper; of one that is there the marks of other learners stay. Gives whether the browser keeps it.
 * @param {Omit<RegisterEntry, "day">} entry
 */
export const add = (entry) => join([/** @type {RegisterEntry} */ ({ ...entry, day: Math.floor(Date.now() / DAY) })]);

/** Put a paper back that was erased. @param {RegisterEntry} entry */
export const putBack = (entry) => join([entry]);

/** @param {RegisterEntry} entry */
export const erase = (entry) => write(papers().filter((one) => !isSame(one, entry)));

export const fileText = () => JSON.stringify({ ...FILE, papers: papers() }, null, 1);

/** Take the papers of a file in; gives whether it holds a register. @param {string} text */
export function load(text) {
  try {
    const value = JSON.parse(text.replace(/^\uFEFF/, ""));
    if (value?.format !== FILE.format || value.version !== FILE.version) return false;
    join(entriesOf(value.papers));
    return true;
  } catch {
    return false;
  }
}

/** The papers as pycore reads them, each with its day as text. */
export const asked = () =>
  papers().map((one) => ({
    ...one,
    date: new Date(one.day * DAY).toLocaleDateString("en-GB", { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" }),
  }));
