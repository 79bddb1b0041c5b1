// The page that lists what this device keeps: each thing with a way to save and to erase it, the learners, how long it is
// kept, the site itself. Its sentences are pycore's, in attributes; numbers and names come into their places. No Python.

import { around, need } from "./elements.js";
import * as kept from "./kept.js";
import * as site from "./kept-site.js";
import { fileOf, load, progressOf, rows } from "./kept-things.js";

/** @import { Entry, KeptRow, Thing } from "../types/shared.js" */

const list = need("[data-kept-rows]");
const file = need("[data-kept-file]", HTMLInputElement);
/** @type {KeptRow[]} */
let shown = [];
/** @type {Entry[]} */
let erased = []; // what stood there before the last erasing
let erasedTitle = "";
let isLoaded = false; // whether a file was loaded since, whose things go when that is undone

/** @param {string | undefined} sentence @param {Record<string, string | number>} values */
const filled = (sentence, values) => (sentence ?? "").replace(/\{(\w+)\}/g, (_, name) => String(values[name] ?? ""));

/** @param {string} part @param {string} name @param {Record<string, string | number>} [values] */
function say(part, name, values = {}) {
  const line = need(`[data-said-of="${part}"]`);
  line.textContent = filled(line.dataset[name], values);
}

/** @param {string} does */
const button = (does) => need(`[data-device-do="${does}"]`);
/** @param {number} day */
const dateOf = (day) => new Date(day * 86_400_000).toLocaleDateString("en-GB", { dateStyle: "long", timeZone: "UTC" });
/** @param {string} who */
const nameOf = (who) => who || (need("[data-learners]").dataset.learners ?? "");

/** @param {"title" | "detail"} kind @param {string} name */
const sentence = (kind, name) => list.getAttribute(`data-${kind}-${name}`) ?? "";

/** @param {KeptRow} row */
function titleOf({ name, entry }) {
  const what = sentence("title", name);
  return entry.who ? filled(list.dataset.of, { what, who: entry.who }) : what;
}

/** @param {KeptRow} row */
function whenOf({ entry }) {
  const days = kept.term(entry.thing);
  const until = days ? filled(list.dataset.until, { date: dateOf(entry.day + days) }) : list.dataset.forEver;
  return `${filled(list.dataset.changed, { date: dateOf(entry.day) })} ${until}`;
}

/** @param {string} selector @returns {HTMLElement} */
function copyOf(selector) {
  const template = need(selector, HTMLTemplateElement);
  return need("li", HTMLElement, /** @type {DocumentFragment} */ (template.content.cloneNode(true)));
}

/** @param {KeptRow} row @param {number} place */
function rowElement(row, place) {
  const item = copyOf("[data-row]");
  item.dataset.place = String(place);
  const title = titleOf(row);
  need("h3", HTMLElement, item).textContent = title;
  const detail = row.readable ? sentence("detail", row.name) : list.dataset.unreadable;
  need("[data-detail]", HTMLElement, item).textContent = filled(detail, row.counts);
  need("[data-when]", HTMLElement, item).textContent = whenOf(row);
  for (const one of item.querySelectorAll("button")) one.setAttribute("aria-label", `${one.textContent}: ${title}`);
  return item;
}

/** The sentence of an element that is of the learner in use. @param {HTMLElement} place @param {string} named @param {string} first */
const ofLearnerIn = ({ dataset }, named, first) => (kept.learner() ? filled(dataset[named], { who: kept.learner() }) : (dataset[first] ?? ""));

/** What is kept of the learner in use. */
const ofLearner = () => kept.all().filter(({ thing, who }) => kept.THINGS[thing].ofLearner && who === kept.learner());

function showKept() {
  shown = rows();
  list.replaceChildren(...shown.map(rowElement));
  const nothing = need("[data-nothing]");
  nothing.hidden = shown.length > 0;
  const all = button("erase-learner");
  all.hidden = ofLearner().length === 0;
  all.textContent = ofLearnerIn(all, "of", "first");
  nothing.textContent = (kept.isRefused() ? nothing.dataset.refused : nothing.dataset.nothing) ?? "";
}

function showLearners() {
  const records = new Map(kept.all().filter(({ thing }) => thing === "practice").map(({ who, text }) => [who, text]));
  const items = kept.learners().map((who) => {
    const item = copyOf("[data-learner-row]");
    need("h3", HTMLElement, item).textContent = nameOf(who);
    const detail = need("[data-detail]", HTMLElement, item);
    const progress = progressOf(records.get(who) ?? "");
    detail.textContent = filled(progress.solved + progress.unsolved > 0 ? detail.dataset.detail : detail.dataset.none, progress);
    const use = need("button", HTMLButtonElement, item);
    use.dataset.who = who;
    use.hidden = who === kept.learner();
    use.setAttribute("aria-label", `${use.textContent}: ${nameOf(who)}`);
    return item;
  });
  need("[data-learners]").replaceChildren(...items);
  const line = need("[data-in-use]");
  line.textContent = kept.learner() ? filled(line.dataset.inUse, { who: kept.learner() }) : (line.dataset.inUseFirst ?? "");
}

function showTerms() {
  for (const select of document.querySelectorAll("select[data-term]")) {
    const control = /** @type {HTMLSelectElement} */ (select);
    control.value = String(kept.term(/** @type {Thing} */ (control.dataset.term)));
  }
}

async function showSite() {
  const { site: files, memory, whole, stays } = await site.look();
  const line = need("[data-site-line]");
  const isAny = files.files > 0;
  line.textContent = filled(isAny ? (whole ? line.dataset.whole : line.dataset.part) : line.dataset.none, files);
  const started = need("[data-memory-line]");
  started.hidden = memory.files === 0;
  started.textContent = filled(started.dataset.memoryLine, memory);
  const stay = need("[data-stay-line]");
  stay.hidden = stays === undefined;
  stay.textContent = (stays ? stay.dataset.stays : stay.dataset.mayGo) ?? "";
  button("stay").hidden = stays !== false;
  button("remove-site").hidden = !isAny && memory.files === 0;
}

function show() {
  showLearners();
  showKept();
  showTerms();
}

/** Use a learner's record, whether the name is written with capitals or not; gives whether it is in use. @param {string} typed */
function useLearner(typed) {
  const known = kept.learners().find((one) => one.toLocaleLowerCase() === typed.toLocaleLowerCase());
  const [who, isNew] = [known ?? typed, known === undefined];
  if (!kept.setLearner(who)) return false;
  // What one learner erased is not for the next to bring back.
  couldBeUndone([], "");
  show();
  say("learners", isNew ? "started" : "takenUp", { who: nameOf(who) });
  return true;
}

/** @param {Entry[]} entries @param {string} title */
function couldBeUndone(entries, title) {
  isLoaded = false;
  erased = entries;
  erasedTitle = title;
  button("undo").hidden = !title;
  button("undo-all").hidden = Boolean(title) || entries.length === 0;
}

function bringBack() {
  const before = new Set(erased.map(({ key }) => key));
  if (isLoaded) for (const { key } of kept.all()) if (!before.has(key)) kept.erase(key);
  const count = erased.filter(({ key, text }) => kept.restore(key, text)).length;
  const done = count < erased.length ? "full" : "back";
  say(erasedTitle ? "kept" : "all", done, { what: erasedTitle, count });
  couldBeUndone([], erasedTitle);
  button("undo").hidden = true;
  show();
}

/** @param {HTMLElement} pressed */
const rowOf = (pressed) => shown[Number(pressed.closest("li")?.dataset.place)];

/** @type {Record<string, (pressed: HTMLElement) => unknown>} */
const doings = {
  use: (pressed) => useLearner(pressed.dataset.who ?? ""),
  save: (pressed) => kept.saveFile(rowOf(pressed).file),
  erase: (pressed) => {
    const row = rowOf(pressed);
    const before = kept.all();
    row.erase();
    const left = new Map(kept.all().map(({ key, text }) => [key, text]));
    couldBeUndone(before.filter(({ key, text }) => left.get(key) !== text), titleOf(row));
    show();
    say("kept", "erased", { what: erasedTitle });
    button("undo").focus();
  },
  "erase-learner": (pressed) => {
    const entries = ofLearner();
    for (const { key } of entries) kept.erase(key);
    couldBeUndone(entries, ofLearnerIn(pressed, "allOf", "allOfFirst"));
    show();
    say("kept", "erased", { what: erasedTitle });
    button("undo").focus();
  },
  undo: bringBack,
  "undo-all": bringBack,
  "save-all": () => {
    if (kept.isRefused()) say("all", "refused");
    else kept.saveFile({ name: need("[data-file]").dataset.file ?? "", text: fileOf(kept.all()) });
  },
  "erase-all": async () => {
    if (kept.isRefused()) {
      say("all", "refused");
      return;
    }
    couldBeUndone(kept.all(), "");
    kept.eraseAll();
    show();
    say("all", "erased");
    await site.remove();
    await showSite();
  },
  stay: async () => {
    await site.stay();
    await showSite();
  },
  "remove-site": async () => {
    await site.remove();
    await showSite();
    say("site", "removed");
  },
};

async function loadFile() {
  const chosen = file.files?.[0];
  file.value = "";
  if (!chosen) return;
  if (chosen.size > Number(file.dataset.longest)) {
    say("all", "large");
    return;
  }
  const before = kept.all();
  const done = load(await chosen.text());
  if (typeof done === "string") {
    say("all", done);
    return;
  }
  couldBeUndone(before, "");
  isLoaded = true;
  button("undo-all").hidden = false;
  show();
  say("all", done.whole ? "loaded" : "full", { count: done.count });
}

document.addEventListener("click", (event) => {
  const pressed = around(event, "[data-device-do]");
  if (pressed) doings[pressed.dataset.deviceDo ?? ""]?.(pressed);
});
need("[data-new-learner]").addEventListener("submit", (event) => {
  event.preventDefault();
  const field = need("#new-learner", HTMLInputElement);
  const who = kept.cleanName(field.value);
  if (!who) {
    say("learners", "noName");
    field.focus();
    return;
  }
  if (useLearner(who)) field.value = "";
});
document.addEventListener("change", ({ target }) => {
  if (!(target instanceof HTMLSelectElement) || !target.dataset.term) return;
  const days = Number(target.value);
  kept.setTerm(/** @type {Thing} */ (target.dataset.term), days);
  const what = target.labels[0]?.textContent ?? "";
  say("terms", days ? "chosen" : "none", { what, term: target.selectedOptions[0].text });
  show();
});
file.addEventListener("change", loadFile);
addEventListener("storage", show);
addEventListener("pageshow", show);
show();
showSite();
new MutationObserver(showSite).observe(document.documentElement, { attributeFilter: ["data-offline"] });
