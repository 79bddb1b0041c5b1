// The page of question papers: what is its own beside set-page.js, paper-questions.js and paper-marks.js. New papers, those
// that this device keeps, and what is made of them; names stay here.

import * as college from "./college.js";
import * as device from "./device.js";
import { actOnPress, controlOf, need } from "./elements.js";
import * as form from "./form.js";
import { follow, learner, saveFile } from "./kept.js";
import * as papers from "./kept-papers.js";
import * as marks from "./paper-marks.js";
import * as questions from "./paper-questions.js";
import { sayIn } from "./said.js";
import * as setPage from "./set-page.js";
import { failed, fileOf, give, open, say, update, work } from "./set-page.js";

/** @import { AnswerReply, PaperText, Values } from "../types/shared.js" */

const DAY = 86_400_000;
const OF_GROUP = ["college", "group", "learners"]; // what a new paper takes over from the one before
const roll = need("[data-roll]", HTMLTextAreaElement);
const which = need("#which", HTMLInputElement);
const file = need("[data-paper-file]", HTMLInputElement);
const list = need("[data-kept-papers]", HTMLDetailsElement);
const collegeNote = need("[data-college-note]");
const sameNumber = need("[data-same-number]");
let code = "";

/** @returns {PaperText} */
const shown = () => ({ form: form.read(), roll: roll.value, spaces: questions.spaces() });
/** @param {string} template @param {Values} values */
const filled = (template, values) => template.replace(/\{(\w+)\}/g, (_, name) => values[name] ?? "");

function changed() {
  isOwn = true;
  say("");
  sayBegun();
  marks.old();
  papers.keepDraft(shown());
  return update();
}

/** @type {PaperText | null} */
let before = null; // the paper that stood here before another was opened
/** @type {(() => void) | null} */
let bringBack = null; // brings back the paper that was erased last
let isOwn = false; // whether what stands here is kept as the paper that is being put together
let link = ""; // the fragment of what stands here, as it was last answered

/** From here on what stands here is the paper that is being put together: somebody works on it. */
function keepShown() {
  isOwn = true;
  papers.keepDraft(shown(), link);
}

/** What is said of a paper that took the place of another. @param {string} [name] */
const sayBegun = (name) => sayIn("[data-begun]", name);

/** @param {PaperText} paper @param {string} [name] what is said of it */
async function showOther(paper, name = "opened") {
  before = shown();
  list.open = false;
  await show(paper);
  need('[data-do="back"]').hidden = false;
  scrollTo({ top: 0 });
  sayBegun(name);
}

/** @param {PaperText} paper */
function fill(paper) {
  form.fill({ ...form.initial(), ...paper.form });
  roll.value = paper.roll;
  questions.showOpened(paper.spaces);
}

/** @param {PaperText} paper */
function show(paper) {
  fill(paper);
  return changed();
}

// A new paper: other values than any that was made, as the college has it. The one before stays.

/** @param {PaperText} paper */
function isBegun({ form: values, roll: names }) {
  const built = form.initial();
  const own = Object.entries(values).filter(([name, text]) => text !== built[name] && name !== "seed" && !OF_GROUP.includes(name));
  return Boolean(own.length || names.trim());
}

/** A paper number that no paper of this device has. */
function newSeed() {
  const taken = new Set(papers.made().map((one) => one.form.seed));
  const [drawn] = crypto.getRandomValues(new Uint32Array(1));
  let seed = drawn % setPage.SEEDS;
  while (taken.has(String(seed)) && taken.size < setPage.SEEDS) seed = (seed + 1) % setPage.SEEDS;
  return String(seed);
}

/** Keep a paper among those of this device. @param {PaperText} paper @param {string} its */
function keepMade(paper, its) {
  const learners = paper.roll.split("\n").filter((line) => line.trim()).length || Number(paper.form.learners);
  papers.keepMade({ form: paper.form, roll: paper.roll, code: its, learners, day: Math.floor(Date.now() / DAY) });
  showMade();
}

/** @param {boolean} keepsQuestions */
async function begin(keepsQuestions) {
  const left = shown();
  if (code && isBegun(left)) keepMade(left, code);
  const taken = Object.fromEntries(OF_GROUP.map((name) => [name, left.form[name] ?? ""]));
  const start = keepsQuestions ? left.form : { ...form.initial(), ...taken, ...college.forPage() };
  const { generator } = form.initial();
  const spaces = keepsQuestions ? left.spaces : {}; // it goes with its questions
  await showOther({ form: { ...start, generator, seed: newSeed(), date: "" }, roll: left.roll, spaces }, keepsQuestions ? "otherValues" : "new");
}

// What is said of the paper: that it is not as the college has it, that another has its number.

/** Whether a field is one that the paper uses, and that no question has as the college has it. @param {string} name @param {number} at @param {string[]} names */
function isTold(name, at, names) {
  const [, part] = /^q\d+-(.*)$/.exec(name) ?? [];
  if (!part) return true;
  const all = Object.keys(form.read()).filter((one) => one.endsWith(`-${part}`) && questions.isShown(one));
  return all.every((one) => names.includes(one)) && names.indexOf(all[0]) === at;
}

function showNotes() {
  const names = college.different().filter(isTold);
  const labels = names.map((name) => document.querySelector(`label[for="f-${CSS.escape(name)}"]`)?.textContent?.trim() || name);
  const note = need("p", HTMLElement, collegeNote);
  note.textContent = filled(note.dataset.text ?? "", { what: [...new Set(labels)].join(", ") });
  collegeNote.hidden = names.length === 0;
  const { seed } = form.read();
  const other = papers.made().find((one) => one.form.seed === seed && one.code !== code);
  sameNumber.textContent = other ? filled(sameNumber.dataset.text ?? "", { title: other.form.title ?? "", code: other.code }) : "";
  sameNumber.hidden = !other;
}

// The papers that were made.

/** @param {number} day */
const dateOf = (day) => new Date(day * DAY).toLocaleDateString("en-GB", { dateStyle: "long", timeZone: "UTC" });

function showMade() {
  const template = need("[data-kept-row]", HTMLTemplateElement);
  const made = papers.made();
  list.hidden = made.length === 0;
  need("[data-kept-count]", HTMLElement, list).textContent = String(made.length);
  const rows = made.map((paper) => {
    const row = need("li", HTMLElement, /** @type {DocumentFragment} */ (template.content.cloneNode(true)));
    /** @type {Values} */
    const values = { code: paper.code, count: String(paper.learners), date: dateOf(paper.day) };
    const title = [paper.form.title, paper.form.group].filter(Boolean).join(", ");
    need("h3", HTMLElement, row).textContent = title;
    need("p", HTMLElement, row).textContent = filled(list.dataset.detail ?? "", values);
    for (const button of row.querySelectorAll("button")) {
      button.dataset.made = paper.id;
      button.setAttribute("aria-label", `${button.textContent}: ${title}, ${paper.code}`);
    }
    return row;
  });
  need("ul", HTMLElement, list).replaceChildren(...rows);
}

/** @param {string | undefined} of */
function openMade(of) {
  const paper = papers.made().find((one) => one.id === of);
  return paper && showOther(paper);
}

function toMarks() {
  const heading = need("#mark-papers");
  heading.scrollIntoView();
  heading.focus({ preventScroll: true });
}

/** What two codes of one paper share: all but the learner's number and the check. @param {string} text */
const paperPart = (text) => text.toUpperCase().replace(/[^0-9A-Z]/g, "").slice(0, 6);

/** A learner's paper; that of a code from a paper that this device keeps, though another stands here. */
async function makeOne() {
  const said = need("[data-one-said]");
  said.textContent = "";
  const of = paperPart(which.value);
  const kept = of.startsWith("7") && of !== paperPart(code) && papers.made().find((one) => paperPart(one.code) === of);
  const other = kept ? { form: kept.form, roll: kept.roll } : {};
  const reply = await makeOther({ work: "one", which: which.value, needs: needs(), ...other });
  said.textContent = reply?.told ?? "";
}

const needs = () => (form.read().codes === "problem" ? ["codes"] : []);

async function make() {
  const paper = shown();
  const reply = await work({ work: "papers", correction: device.factors("a4l"), needs: needs() });
  if (!reply) return;
  give(reply);
  keepMade(paper, reply.code ?? "");
  keepShown();
}

/** @param {Record<string, unknown> & { work: string }} more */
async function makeOther(more) {
  const reply = await work({ correction: device.factors("a4l"), ...more });
  if (reply) give(reply);
  return reply;
}

/** @type {Record<string, (button: HTMLElement) => unknown>} */
const actions = {
  ...marks.actions,
  make,
  scheme: () => makeOther({ work: "scheme" }),
  one: makeOne,
  share: setPage.share,
  stop: setPage.stop,
  new: () => begin(false),
  "other-values": () => begin(true),
  "use-college": () => {
    college.fill();
    need('[data-do="new"]').focus();
    return changed();
  },
  add: () => (questions.add(), changed()),
  remove: ({ dataset }) => (questions.remove(Number(dataset.of)), changed()),
  up: ({ dataset }) => (questions.move(Number(dataset.of), -1), changed()),
  down: ({ dataset }) => (questions.move(Number(dataset.of), 1), changed()),
  save: () => {
    saveFile({ name: `question-paper ${code}.json`.replace(" .", "."), text: papers.fileText(shown()) });
    say(roll.value.trim() ? "savedNames" : "saved");
  },
  "save-roll": () => saveFile(fileOf(roll)),
  "erase-roll": () => {
    roll.value = "";
    sayIn("[data-roll-said]", "erased");
    return changed();
  },
  "to-marks": toMarks,
  "open-kept": ({ dataset }) => openMade(dataset.made),
  "mark-kept": ({ dataset }) => openMade(dataset.made)?.then(toMarks),
  "erase-kept": ({ dataset }) => {
    const gone = papers.made().find((one) => one.id === dataset.made);
    bringBack = papers.erase(dataset.made ?? "");
    showMade();
    sayBegun(gone?.code === code && roll.value.trim() ? "erasedShown" : "erased");
    const undo = need('[data-do="undo-kept"]');
    undo.hidden = false;
    undo.focus();
  },
  "undo-kept": () => {
    bringBack?.();
    bringBack = null;
    showMade();
    sayBegun("restored");
    need('[data-do="undo-kept"]').hidden = true;
    need('[data-do="new"]').focus();
  },
  back: () => {
    const paper = before;
    need('[data-do="back"]').hidden = true;
    need('[data-do="new"]').focus();
    return paper && show(paper);
  },
};

actOnPress(actions, failed);

document.addEventListener("input", (event) => {
  const control = controlOf(event);
  if (control?.matches("[data-results]")) keepShown();
  if (event.target !== roll && control?.form?.id !== "problem") return;
  isOwn = true;
  say("");
  sayBegun();
  sayIn("[data-roll-said]");
  if (control) questions.fitSpace(control);
  papers.keepDraft(shown());
  questions.showMarks();
  marks.old();
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

/** Whether a paper is another than the one that is shown. @param {PaperText} paper */
const isOther = (paper) => Object.entries(shown().form).some(([name, text]) => (paper.form[name] ?? text) !== text) || paper.roll !== roll.value;

// Another window has changed them, or another learner uses the device.
let of = learner();
follow("papers", () => {
  showMade();
  const draft = papers.draft();
  if (!draft) isOwn = false; // what was erased is kept again only when something is changed here
  if (of === learner()) {
    if (draft && isOwn && isOther(draft)) show(draft).catch(failed);
    return;
  }
  of = learner();
  bringBack = null;
  need('[data-do="undo-kept"]').hidden = true;
  marks.leave();
  fill(draft ?? { form: {}, roll: "" });
  update();
});
follow("college", showNotes);

/** @param {AnswerReply} reply */
function answered(reply) {
  ({ code } = reply);
  link = reply.fragment;
  if (isOwn) papers.keepDraft(shown(), reply.fragment);
  marks.showOf(code, form.read().group);
  questions.showTotals(reply.totals ?? [], reply.parts ?? []);
  showNotes();
}

/** @param {string} hash */
function openOwn(hash) {
  showMade();
  const draft = papers.draft();
  // The link in the address is that of the paper being put together, unless somebody else's was opened.
  if (draft && (hash.length <= 1 || draft.links?.includes(hash.slice(1)))) {
    show(draft).catch(failed);
  } else if (hash.length > 1) {
    open(hash).catch(failed);
  } else {
    // Every lecturer has values of their own, and has them again.
    college.fill();
    form.fill({ seed: newSeed() });
    update();
  }
  questions.show();
}

setPage.begin("question-papers", answered, openOwn, () => questions.showOpened());
