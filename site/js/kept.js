// All that this device keeps of the site between visits goes through this file: keys of the browser's storage that begin
// with our name, some of them for each learner, each with the day of its last change, so that it can be erased when its
// time is over. Where the browser keeps nothing, it lasts until the page is closed, and that is said.

import { around } from "./elements.js";

/** @import { Entry, Thing } from "../types/shared.js" */

const PREFIX = "phasor-folio";
const LEARNER = `${PREFIX}-learner`; // whose record is in use
const DATES = `${PREFIX}-dates`; // by key, the day of the last change
const TERMS = `${PREFIX}-terms`; // by thing, after how many days it is erased, where that was chosen
const DAY = 86_400_000;
const LONGEST_NAME = 40;

/** @type {Record<Thing, { ofLearner: boolean, days: number }>} by default erased so many days after the last change; 0: never */
export const THINGS = {
  practice: { ofLearner: true, days: 0 },
  taken: { ofLearner: true, days: 0 },
  drawings: { ofLearner: true, days: 365 },
  class: { ofLearner: true, days: 90 },
  papers: { ofLearner: true, days: 365 },
  register: { ofLearner: true, days: 365 },
  pile: { ofLearner: true, days: 30 },
  college: { ofLearner: false, days: 0 },
  lesson: { ofLearner: true, days: 0 },
  device: { ofLearner: false, days: 0 },
  theme: { ofLearner: false, days: 0 },
  store: { ofLearner: false, days: 0 },
};
const NAMES = /** @type {Thing[]} */ (Object.keys(THINGS));

/** @type {Map<string, string | null>} */
const unkept = new Map(); // by key, what the browser did not keep
let refused = false; // whether the browser has refused to let its storage be read

/** @param {string} key */
function raw(key) {
  try {
    return localStorage.getItem(key);
  } catch {
    refused = true;
    return null;
  }
}

/** @param {string} key @param {string | null} text */
function put(key, text) {
  try {
    if (text === null) localStorage.removeItem(key);
    else localStorage.setItem(key, text);
    return true;
  } catch {
    return false;
  }
}

/** @param {string} key @returns {Record<string, unknown>} */
function table(key) {
  try {
    const found = JSON.parse(raw(key) ?? "{}");
    return found && typeof found === "object" ? found : {};
  } catch {
    return {};
  }
}

/** @param {string} text */
export const cleanName = (text) => text.normalize("NFC").replace(/[\p{C}\p{Z}]+/gu, " ").trim().slice(0, LONGEST_NAME);

// Read once and again when it changes in another window: what was begun for one learner is not kept for another.
let who = cleanName(raw(LEARNER) ?? "");

/** The name or number of the learner whose record is in use; "" for the first of this device. */
export const learner = () => who;

/** @param {Thing} thing */
const base = (thing) => (thing === "device" ? PREFIX : `${PREFIX}-${thing}`);
/** @param {Thing} thing @param {string} [of] */
const keyOf = (thing, of = who) => (THINGS[thing].ofLearner && of ? `${base(thing)}@${of}` : base(thing));

/** @param {string} key */
function partsOf(key) {
  const thing = NAMES.find((one) => key === base(one) || (THINGS[one].ofLearner && key.startsWith(`${base(one)}@`)));
  return thing && { thing, who: key === base(thing) ? "" : key.slice(base(thing).length + 1), key };
}

const today = () => Math.floor(Date.now() / DAY);

/** @param {string} key @param {boolean} is */
function date(key, is) {
  const dates = table(DATES);
  if (is ? dates[key] === today() : !(key in dates)) return;
  if (is) dates[key] = today();
  else delete dates[key];
  put(DATES, JSON.stringify(dates));
}

/**
 * What is kept of a thing, null if nothing is.
 * @param {Thing} thing
 */
export function read(thing) {
  const key = keyOf(thing);
  return unkept.has(key) ? (unkept.get(key) ?? null) : raw(key);
}

/**
 * Keep the text of a thing, or nothing of it (null); gives whether the browser let it. Where it did not, that is said with a
 * `file` of the text on offer.
 * @param {Thing} thing
 * @param {string | null} text
 * @param {{ name: string, text: string } | null} [file]
 */
export function write(thing, text, file = { name: `${base(thing)}.json`, text: fileOf({ [keyOf(thing)]: text }) }) {
  const key = keyOf(thing);
  if (put(key, text)) {
    unkept.delete(key);
    date(key, text !== null);
    settled(thing);
    return true;
  }
  unkept.set(key, text);
  if (text !== null) say(thing, file);
  return false;
}

/**
 * Whether the browser keeps what it is given of a thing.
 * @param {Thing} thing
 */
export const works = (thing) => !refused && !unkept.has(keyOf(thing));

/** Whether this page holds something that the browser did not keep, and that is lost with it. */
export const holdsUnkept = () => [...unkept.values()].some((text) => text !== null);

// Erased when its time is over.

/**
 * After how many days without a change a thing is erased; 0: never.
 * @param {Thing} thing
 */
export function term(thing) {
  const chosen = table(TERMS)[thing];
  return typeof chosen === "number" && Number.isInteger(chosen) && chosen >= 0 ? chosen : THINGS[thing].days;
}

/**
 * Choose that time; gives whether the browser keeps the choice.
 * @param {Thing} thing @param {number} days
 */
export function setTerm(thing, days) {
  const is = put(TERMS, JSON.stringify({ ...table(TERMS), [thing]: days }));
  if (is) expire();
  else say("choice");
  return is;
}

function expire() {
  const dates = table(DATES);
  for (const { thing, key } of all()) {
    const changed = dates[key];
    if (typeof changed !== "number" || changed > today()) date(key, true);
    else if (term(thing) && today() - changed >= term(thing)) erase(key);
  }
}

/** What a file of kept texts says of itself. */
export const FILE = { kind: `${PREFIX}-kept`, version: 1 };

/**
 * A file of texts by their keys, which the page that lists all can load.
 * @param {Record<string, string | null>} texts
 */
export const fileOf = (texts) => JSON.stringify({ ...FILE, kept: texts }, null, 1);

// Everything, for the page that lists it.

/** @returns {Entry[]} */
export function all() {
  /** @type {string[]} */
  let keys = [];
  try {
    keys = Object.keys(localStorage);
  } catch {
    refused = true;
  }
  const dates = table(DATES);
  return keys.sort().flatMap((key) => {
    const parts = partsOf(key);
    const day = dates[key];
    return parts ? [{ ...parts, text: raw(key) ?? "", day: typeof day === "number" ? day : today() }] : [];
  });
}

/**
 * Erase what is kept under a key of ours.
 * @param {string} key
 */
export function erase(key) {
  put(key, null);
  unkept.delete(key);
  date(key, false);
}

/** Erase all that begins with our name, whatever it is. */
export function eraseAll() {
  unkept.clear();
  try {
    // The learner last: windows that follow find nothing of the one whose turn it is.
    const keys = Object.keys(localStorage).filter((key) => new RegExp(`^${PREFIX}(?:-|$)`).test(key) && key !== LEARNER);
    for (const key of [...keys, LEARNER]) localStorage.removeItem(key);
    for (const key of Object.keys(sessionStorage)) if (key.startsWith(`${PREFIX}-`)) sessionStorage.removeItem(key);
  } catch {
    // Where nothing can be erased, nothing is kept.
  }
  who = "";
}

/**
 * Keep a text that a file brought under a key; gives whether it is one of ours and was kept.
 * @param {string} key @param {string} text
 */
export function restore(key, text) {
  if (!partsOf(key) || !put(key, text)) return false;
  date(key, true);
  return true;
}

/**
 * Whether a key is one of ours.
 * @param {string} key
 */
export const isOurs = (key) => Boolean(partsOf(key));

/** Whether the browser refuses to let its storage be read. */
export const isRefused = () => refused;

/** Every learner of whom something is kept, and the one whose record is in use. */
export const learners = () =>
  [...new Set([who, ...all().filter(({ thing }) => THINGS[thing].ofLearner).map((entry) => entry.who)])].sort();

/**
 * Use another learner's record; a new name begins one. Gives whether the browser keeps the choice.
 * @param {string} name
 */
export function setLearner(name) {
  if (!put(LEARNER, cleanName(name) || null)) {
    say("records");
    return false;
  }
  readLearner();
  return true;
}

// Other windows of this browser.

/** @type {(() => void)[]} */
const followers = [];

/**
 * Hear of it when another window changes a thing, or the learner in use.
 * @param {Thing} thing @param {() => void} then
 */
export function follow(thing, then) {
  followers.push(then);
  addEventListener("storage", ({ key }) => {
    if (key === null || key === LEARNER || key === keyOf(thing)) then();
  });
}

function readLearner() {
  who = cleanName(raw(LEARNER) ?? "");
}

// The first listener of the page: who is in use is known before anybody follows.
addEventListener("storage", ({ key }) => {
  if (key === null || key === LEARNER) readLearner();
});
// A page that was left and is shown again has heard of nothing meanwhile.
addEventListener("pageshow", ({ persisted }) => {
  if (!persisted) return;
  readLearner();
  for (const then of followers) then();
});

// What was not kept, said at the foot of the page.

/** @type {{ name: string, text: string } | null} */
let offered = null;
let said = ""; // of what
/** @type {Set<string>} */
const closed = new Set(); // of what the reader has closed the sentence

const strip = () => document.querySelector("[data-not-kept]");

/** @param {string} thing @param {{ name: string, text: string } | null} [file] */
function say(thing, file = null) {
  const place = strip();
  if (!place || closed.has(thing)) return;
  // What was typed stays on offer when something beside it is not kept either.
  if (file?.text || said !== thing) offered = file?.text ? file : null;
  said = thing;
  const sentence = place.dataset[thing] ?? place.dataset.choice ?? "";
  const line = place.querySelector("p");
  if (line && line.textContent !== sentence) line.textContent = sentence;
  const save = place.querySelector('[data-not-kept-do="save"]');
  if (save) save.hidden = !offered || !place.dataset[thing];
  place.hidden = false;
}

/** @param {Thing} thing */
function settled(thing) {
  const place = strip();
  closed.delete(thing);
  if (place && said === thing) place.hidden = true;
}

/**
 * Give a text to the reader as a file.
 * @param {{ name: string, text: string }} file
 */
export function saveFile({ name, text }) {
  const type = name.endsWith(".json") ? "application/json" : "text/plain;charset=utf-8";
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

document.addEventListener("click", (event) => {
  const does = around(event, "[data-not-kept-do]")?.dataset.notKeptDo;
  if (does === "save" && offered) saveFile(offered);
  const place = strip();
  if (does === "close" && place) {
    closed.add(said);
    place.hidden = true;
  }
});
// The switch between night and day works before any module does.
document.addEventListener("phasor-folio-not-kept", () => say("choice"));

// What is worth keeping should outlast a browser that is short of space.

let isAsked = false;

/** Ask the browser to keep what is here, at most once a day; some ask the reader. */
export async function stay() {
  const { storage } = navigator;
  if (isAsked || !storage?.persist || table(DATES).stay === today()) return;
  isAsked = true;
  date("stay", true);
  try {
    if (!(await storage.persisted())) await storage.persist();
  } catch {
    // It is kept as long as there is room.
  }
}

expire();
