// The page of question papers: what is its own beside set-page.js. How many questions are shown, their order, and the
// papers that this device keeps; names stay here.

import * as college from "./college.js";
import * as device from "./device.js";
import { download } from "./download.js";
import { around, controlOf, need } from "./elements.js";
import * as form from "./form.js";
import { follow, learner, saveFile } from "./kept.js";
import * as papers from "./kept-papers.js";
import { add as addToRegister } from "./kept-register.js";
import * as regions from "./regions.js";
import { live } from "./said.js";
import * as setPage from "./set-page.js";
import { failed, fileOf, give, open, say, update, work } from "./set-page.js";

/** @import { AnswerReply, PaperText, Values, WorkReply } from "../types/shared.js" */

const SEEDS = 32768; // as many papers as codes can tell apart
const DAY = 86_400_000;
const roll = need("[data-roll]", HTMLTextAreaElement);
const results = need("[data-results]", HTMLTextAreaElement);
const which = need("#which", HTMLInputElement);
const file = need("[data-paper-file]", HTMLInputElement);
const list = need("[data-kept-papers]");
const sections = [...document.querySelectorAll("[data-question]")].map((one) => /** @type {HTMLElement} */ (one));
let code = "";

const count = () => Number(form.read().questions);

/** @returns {PaperText} */
const shown = () => ({ form: form.read(), roll: roll.value });

// The questions: those beyond the paper's number keep what they hold, unseen.

function showQuestions() {
  // A link may name any number: what cannot be shown could not be mended.
  const many = Math.max(1, Math.min(sections.length, Math.trunc(count()) || 1));
  need('input[name="questions"]', HTMLInputElement).value = String(many);
  sections.forEach((section, place) => (section.hidden = place >= many));
  need('[data-do="add"]', HTMLButtonElement).hidden = many >= sections.length;
  for (const [name, is] of Object.entries({ remove: many > 1, up: true, down: true })) {
    for (const button of document.querySelectorAll(`[data-do="${name}"]`)) {
      const of = Number(/** @type {HTMLElement} */ (button).dataset.of);
      const isEnd = (name === "up" && of === 1) || (name === "down" && of >= many);
      /** @type {HTMLButtonElement} */ (button).disabled = !is || isEnd;
    }
  }
}

/** @param {number} number @returns {Values} */
function valuesOf(number) {
  const start = `q${number}-`;
  const own = Object.entries(form.read()).filter(([name]) => name.startsWith(start));
  return Object.fromEntries(own.map(([name, value]) => [name.slice(start.length), value]));
}

/** @param {number} number @param {Values} values */
const named = (number, values) => Object.fromEntries(Object.entries(values).map(([name, value]) => [`q${number}-${name}`, value]));

/** Put questions in another order: `order` has the number of each that stands there now. @param {number[]} order */
function reorder(order) {
  const before = order.map(valuesOf);
  form.fill(Object.assign({}, ...before.map((values, place) => named(place + 1, values))));
}

/** @param {number} many */
function setCount(many) {
  need('input[name="questions"]', HTMLInputElement).value = String(many);
  showQuestions();
}

/** @param {number} number @param {number} by */
function move(number, by) {
  const order = sections.map((_, place) => place + 1);
  const other = number + by;
  [order[number - 1], order[other - 1]] = [other, number];
  reorder(order);
  const isEnd = other === 1 || other === count();
  need(`[data-do="${isEnd === by > 0 ? "up" : "down"}"][data-of="${other}"]`).focus();
  return changed();
}

/** @param {number} number */
function remove(number) {
  const order = sections.map((_, place) => place + 1);
  order.push(...order.splice(number - 1, 1));
  reorder(order);
  setCount(count() - 1);
  need("h2", HTMLElement, sections[Math.min(number, count()) - 1]).focus();
  return changed();
}

function add() {
  setCount(count() + 1);
  need("select", HTMLSelectElement, sections[count() - 1]).focus();
  return changed();
}

function changed() {
  isOwn = true;
  say("");
  marksOld();
  papers.keepDraft(shown());
  return update();
}

/** @type {PaperText | null} */
let before = null; // the paper that stood here before another was opened
let isOwn = false; // whether what stands here is kept as the paper that is being put together

/** @param {PaperText} paper */
async function showOther(paper) {
  before = shown();
  await show(paper);
  need('[data-do="back"]').hidden = false;
  say("opened");
}

/** @param {PaperText} paper */
function fill(paper) {
  form.fill({ ...form.initial(), ...paper.form });
  roll.value = paper.roll;
  if (roll.value) roll.closest("details")?.setAttribute("open", "");
  showQuestions();
}

/** @param {PaperText} paper */
function show(paper) {
  fill(paper);
  return changed();
}

// The papers that were made.

/** @param {number} day */
const dateOf = (day) => new Date(day * DAY).toLocaleDateString("en-GB", { dateStyle: "long", timeZone: "UTC" });

function showMade() {
  const template = need("[data-kept-row]", HTMLTemplateElement);
  const made = papers.made();
  list.hidden = made.length === 0;
  const rows = made.map((paper) => {
    const row = need("li", HTMLElement, /** @type {DocumentFragment} */ (template.content.cloneNode(true)));
    /** @type {Values} */
    const values = { code: paper.code, count: String(paper.learners), date: dateOf(paper.day) };
    need("h3", HTMLElement, row).textContent = paper.form.title ?? "";
    need("p", HTMLElement, row).textContent = (list.dataset.detail ?? "").replace(/\{(\w+)\}/g, (_, name) => values[name] ?? "");
    for (const button of row.querySelectorAll("button")) {
      button.dataset.made = paper.id;
      button.setAttribute("aria-label", `${button.textContent}: ${paper.form.title ?? ""}, ${paper.code}`);
    }
    return row;
  });
  need("ul", HTMLElement, list).replaceChildren(...rows);
}

/** @param {string | undefined} of */
function openMade(of) {
  const paper = papers.made().find((one) => one.id === of);
  if (!paper) return;
  scrollTo({ top: 0 });
  return showOther(paper);
}

/** What two codes of one paper share: all but the learner's number and the check. @param {string} text */
const paperPart = (text) => text.toUpperCase().replace(/[^0-9A-Z]/g, "").slice(0, 6);

/** A learner's paper; that of a code from a paper that this device keeps, though another stands here. */
function makeOne() {
  const of = paperPart(which.value);
  const kept = of.startsWith("7") && of !== paperPart(code) && papers.made().find((one) => paperPart(one.code) === of);
  const other = kept ? { form: kept.form, roll: kept.roll } : {};
  return makeOther({ work: "one", which: which.value, needs: needs(), ...other });
}

// The answers, and the marks that they were given.

/** @type {WorkReply | null} */
let table = null; // the last marking as a file, and what the register keeps of it

/** @param {string} name */
function marksSaid(name = "") {
  const place = need("[data-marks-said]");
  place.textContent = place.dataset[name] ?? "";
  if (place.textContent) live(place.textContent);
}

/** @param {WorkReply | null} reply */
function setTable(reply) {
  table = reply;
  for (const name of ["register", "save-marks"]) need(`[data-do="${name}"]`).hidden = !reply;
}

/** What was marked is no longer what stands there. */
function marksOld() {
  if (!table) return;
  setTable(null);
  marksSaid("old");
}

async function mark() {
  const marked = results.value;
  const reply = await work({ work: "marks", results: setPage.textOf(results) });
  if (!reply) return;
  if (results.value !== marked) {
    marksSaid("old");
    return;
  }
  setTable(reply);
  marksSaid();
  regions.replace("marks", reply.regions.marks);
  live(reply.announce);
}

const needs = () => (form.read().codes === "problem" ? ["codes"] : []);

async function make() {
  const paper = shown();
  const reply = await work({ work: "papers", correction: device.factors("a4l"), needs: needs() });
  if (!reply) return;
  give(reply);
  const learners = paper.roll.split("\n").filter((line) => line.trim()).length || Number(paper.form.learners);
  papers.keepMade({ form: paper.form, roll: paper.roll, code: reply.code ?? "", learners, day: Math.floor(Date.now() / DAY) });
  showMade();
}

/** @param {Record<string, unknown> & { work: string }} more */
async function makeOther(more) {
  const reply = await work({ correction: device.factors("a4l"), ...more });
  if (reply) give(reply);
}

/** @type {Record<string, (button: HTMLElement) => unknown>} */
const actions = {
  make,
  scheme: () => makeOther({ work: "scheme" }),
  one: makeOne,
  share: setPage.share,
  stop: setPage.stop,
  add,
  remove: ({ dataset }) => remove(Number(dataset.of)),
  up: ({ dataset }) => move(Number(dataset.of), -1),
  down: ({ dataset }) => move(Number(dataset.of), 1),
  save: () => saveFile({ name: "question-paper.json", text: papers.fileText(shown()) }),
  "save-roll": () => saveFile(fileOf(roll)),
  "erase-roll": () => {
    roll.value = "";
    const place = need("[data-roll-said]");
    place.textContent = place.dataset.erased ?? "";
    return changed();
  },
  mark,
  register: () => {
    if (table?.entry && addToRegister(table.entry)) marksSaid("added");
  },
  "save-marks": () => {
    if (!table) return;
    download(table);
    need("[data-marks-said]").textContent = table.told;
  },
  "erase-results": () => {
    if (document.documentElement.dataset.working === "marks") setPage.stop();
    results.value = "";
    papers.keepAnswers("");
    regions.replace("marks", "");
    setTable(null);
    marksSaid("erased");
  },
  "open-kept": ({ dataset }) => openMade(dataset.made),
  "erase-kept": ({ dataset }) => {
    papers.erase(dataset.made ?? "");
    showMade();
    which.focus();
  },
  back: () => {
    const paper = before;
    need('[data-do="back"]').hidden = true;
    need('[data-do="save"]').focus();
    return paper && show(paper);
  },
};

document.addEventListener("click", async (event) => {
  const button = around(event, "[data-do]");
  try {
    if (button) await actions[button.dataset.do ?? ""]?.(button);
  } catch (error) {
    failed(error);
  }
});

document.addEventListener("input", (event) => {
  if (event.target === results) {
    papers.keepAnswers(results.value);
    marksOld();
  }
  const control = controlOf(event);
  if (event.target !== roll && control?.form?.id !== "problem") return;
  isOwn = true;
  say("");
  need("[data-roll-said]").textContent = "";
  papers.keepDraft(shown());
  marksOld();
  setPage.updateSoon();
});

file.addEventListener("change", async () => {
  const [chosen] = file.files ?? [];
  if (!chosen) return;
  const paper = papers.read(await chosen.text());
  file.value = "";
  if (!paper) {
    say("badFile");
    return;
  }
  await showOther(paper);
});

// Another window has changed them, or another learner uses the device.
let of = learner();
follow("papers", () => {
  showMade();
  const draft = papers.draft();
  if (!draft) isOwn = false; // what was erased is kept again only when something is changed here
  if (of === learner()) return;
  of = learner();
  results.value = papers.answers();
  marksOld();
  fill(draft ?? { form: {}, roll: "" });
  update();
});

/** @param {AnswerReply} reply */
function answered(reply) {
  ({ code } = reply);
  if (isOwn) papers.keepDraft(shown(), reply.fragment);
}

/** @param {string} hash */
function openOwn(hash) {
  showMade();
  results.value = papers.answers();
  const draft = papers.draft();
  // The link in the address is that of the paper being put together, unless somebody else's was opened.
  if (draft && (hash.length <= 1 || draft.links?.includes(hash.slice(1)))) {
    show(draft).catch(failed);
  } else if (hash.length > 1) {
    open(hash).catch(failed);
  } else {
    // Every lecturer has values of their own, and has them again.
    const [drawn] = crypto.getRandomValues(new Uint32Array(1));
    college.fill();
    form.fill({ seed: String(drawn % SEEDS) });
    isOwn = true;
    update();
  }
  showQuestions();
}

setPage.begin("question-papers", answered, openOwn, showQuestions);
