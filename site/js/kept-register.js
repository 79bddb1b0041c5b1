// The register as this device keeps it: marked papers in the order of their days. Names and marks are the lecturer's alone.

import * as store from "./kept.js";

/** @import { LearnerMarks, MarksChange, QuestionMarks, RegisterEntry } from "../types/shared.js" */

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

/** @param {LearnerMarks} one */
const whoIs = ({ place, name }) => `${place} ${name}`;

/** @param {QuestionMarks[]} questions */
function summed(questions) {
  let [low, high] = [0, 0];
  for (const one of questions) [low, high] = [low + one.low, high + one.high];
  return { low, high, mistakes: [...new Set(questions.flatMap(({ mistakes }) => mistakes))] };
}

/** A learner's marks, later ones in the place of earlier ones question by question. @param {LearnerMarks | undefined} before @param {LearnerMarks} after */
function joined(before, after) {
  // Earlier versions kept the marks of the whole paper only.
  if (before?.questions?.length && !after.questions?.length) return before;
  if (!before?.questions?.length || !after.questions) return after;
  const later = after.questions;
  const kept = before.questions.filter((one) => !later.some(({ number }) => number === one.number));
  const questions = [...kept, ...later].sort((one, two) => one.number - two.number);
  return { ...after, ...summed(questions), questions };
}

/** One paper of one group marked twice: the later marks of each learner and question count. @param {RegisterEntry} before @param {RegisterEntry} after */
function together(before, after) {
  const later = new Map(after.marks.map((one) => [whoIs(one), one]));
  const earlier = new Map(before.marks.map((one) => [whoIs(one), one]));
  const others = before.marks.filter((one) => !later.has(whoIs(one)));
  return { ...after, marks: [...others, ...after.marks.map((one) => joined(earlier.get(whoIs(one)), one))] };
}

/** @param {RegisterEntry} one */
const markedOn = ({ marked, day }) => marked ?? day;

/** @param {RegisterEntry[]} list */
function join(list) {
  const all = papers();
  for (const entry of list) {
    const at = all.findIndex((one) => isSame(one, entry));
    if (at < 0) all.push(entry);
    else all[at] = markedOn(entry) < markedOn(all[at]) ? together(entry, all[at]) : together(all[at], entry);
  }
  return write(all);
}

/** What of a learner's marks would change. @param {LearnerMarks} own @param {RegisterEntry | undefined} before @returns {MarksChange[]} */
function changesOf(own, before) {
  const { place, name } = own;
  const old = before?.marks.find((one) => whoIs(one) === whoIs(own));
  if (!old) return [];
  if (!old.questions?.length) return [{ place, name, before: old }];
  return (own.questions ?? []).flatMap((one) => {
    const was = old.questions?.find(({ number }) => number === one.number);
    // Marks chosen from the range that is there are what was still to come.
    const isChosen = was && was.low < was.high && was.low <= one.low && one.high <= was.high;
    const differs = was && !isChosen && (was.low !== one.low || was.high !== one.high);
    return differs ? [{ place, name, question: one.number, before: was, after: one }] : [];
  });
}

/**
 * What adding a marked paper comes to: the marks that would change, how many answers of the paper would not be marked yet,
 * and how many marks are still a range.
 * @param {Omit<RegisterEntry, "day">} entry @returns {{ changes: MarksChange[], missing: number, open: number }}
 */
export function weigh(entry) {
  const after = /** @type {RegisterEntry} */ (entry);
  const before = papers().find((one) => isSame(one, after));
  const changes = after.marks.flatMap((own) => changesOf(own, before));
  const all = before ? together(before, after) : after;
  const marked = all.marks.flatMap(({ questions }) => questions ?? []);
  const open = after.marks.flatMap(({ questions }) => questions ?? []).filter(({ low, high }) => low < high);
  const asked = Math.max(after.learners ?? 0, all.marks.length) * (after.questions?.length ?? 0);
  return { changes, missing: Math.max(0, asked - marked.length), open: open.length };
}

/**
 * Add a marked paper; of one that is there all other marks stay. Its day is its own, else today. Gives whether the browser
 * keeps it.
 * @param {Omit<RegisterEntry, "day">} entry
 */
export function add(entry) {
  const today = Math.floor(Date.now() / DAY);
  return join([/** @type {RegisterEntry} */ ({ day: today, ...entry, marked: today })]);
}

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
    date: one.date || new Date(one.day * DAY).toLocaleDateString("en-GB", { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" }),
  }));
