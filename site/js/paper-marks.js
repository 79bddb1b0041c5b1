// The answers to a question paper, the marks that they were given, and the way of these into the register. Answers belong
// to one paper, by its code and group: another paper shows its own and never marks these.

import { download } from "./download.js";
import { need } from "./elements.js";
import * as papers from "./kept-papers.js";
import { afterQuiet } from "./pace.js";
import * as regions from "./regions.js";
import { live, sayIn } from "./said.js";
import * as setPage from "./set-page.js";
import * as toRegister from "./to-register.js";

/** @import { SettledMarks, WorkResult } from "../types/shared.js" */

const CHOICE_PAUSE = 600; // ms after the last choice from a range
const results = need("[data-results]", HTMLTextAreaElement);
let key = ""; // of the paper whose answers stand here
let isAhead = false; // whether answers are typed before it is known to which paper and group they belong
/** @type {SettledMarks[]} */
let settled = [];
/** @type {WorkResult | null} */
let table = null; // the last marking as a file, and what the register keeps of it

/** @param {string} [name] */
const say = (name) => sayIn("[data-marks-said]", name);

/** @param {WorkResult | null} reply */
function setTable(reply) {
  table = reply;
  toRegister.offer(reply);
  need('[data-do="save-marks"]').hidden = !reply;
}

/** What was marked is no longer what stands there. */
export function old() {
  if (!table) return;
  setTable(null);
  say("old");
}

/** No paper's answers stand here: another learner uses the device. */
export function leave() {
  key = "";
  results.value = "";
  clear();
}

function clear() {
  due = false;
  regions.replace("marks", "");
  setTable(null);
  say();
}

/** Show the answers to the paper with this code and group. @param {string} code @param {string | undefined} group */
export function showOf(code, group) {
  const next = papers.keyOf(code, group);
  if (next === key) return;
  const typed = results.value;
  const isMade = papers.made().some((one) => papers.keyOf(one.code, one.form.group) === key);
  if (!key) papers.takeAnswers(next);
  // A paper that nobody has made yet may get another group's name.
  else if (key.startsWith(`${code} `) && !isMade) papers.takeAnswers(next, key);
  const found = papers.answers(next);
  const isFirst = !key;
  key = next;
  settled = found.settled;
  if (isAhead) return; // it was typed for this paper, and is kept at once
  if (isFirst && typed && !found.text) {
    // It was typed before Python could tell which paper this is.
    papers.keepAnswers(key, { text: typed, settled });
    return;
  }
  if (found.text === typed) return;
  results.value = found.text;
  clear();
  if (typed) say("other");
}

function keep() {
  if (key) papers.keepAnswers(key, { text: results.value, settled });
}

let due = false; // whether marks were chosen since the last marking

async function mark() {
  // Its answer brings the answers of another group in their place, and would take away the marks of these.
  await setPage.upToDate();
  const marked = results.value;
  due = false;
  const reply = await setPage.work({ work: "marks", results: setPage.textOf(results), settled });
  if (!reply) return;
  if (results.value !== marked) {
    say("old");
    return;
  }
  const pressed = document.activeElement?.closest(".settle [data-marks]");
  const again = pressed instanceof HTMLElement ? placeOf(pressed) : "";
  setTable(reply);
  say();
  regions.replace("marks", reply.regions.marks);
  if (again) document.querySelector(again)?.focus();
  live(reply.announce);
}

/** Where a number of marks stands, before and after a marking. @param {HTMLElement} button */
function placeOf(button) {
  const { place, question, part } = /** @type {HTMLElement} */ (button.parentElement).dataset;
  const which = part ? `[data-part="${part}"]` : ":not([data-part])";
  return `.settle[data-place="${place}"][data-question="${question}"]${which} [data-marks="${button.dataset.marks}"]`;
}

async function markDue() {
  if (document.documentElement.dataset.working) {
    markSoon();
    return;
  }
  if (due && table) await mark();
}

const markSoon = afterQuiet(CHOICE_PAUSE, () => markDue().catch(setPage.failed));

/** The marks of a button, with the question and the answers that they are for. @param {HTMLElement} group @param {HTMLElement} button @returns {SettledMarks} */
function chosen({ dataset: { place, question, part, drawn = "", calculated = "" } }, button) {
  const marks = Number(button.dataset.marks);
  return { place: Number(place), question: Number(question), ...(part ? { parts: { [part]: marks } } : { marks }), drawn, calculated };
}

/** What was chosen for a question with one more choice, or without it: marks of a part end a choice of all marks together. @param {SettledMarks | undefined} before @param {SettledMarks} own @param {boolean} isTaken @returns {SettledMarks} */
function withChoice(before, own, isTaken) {
  const isSame = before?.drawn === own.drawn && before.calculated === own.calculated;
  const { marks, ...rest } = { ...own, parts: { ...(isSame ? before.parts : {}), ...own.parts } };
  if (isTaken) for (const part of Object.keys(own.parts ?? {})) delete rest.parts[part];
  return marks === undefined || isTaken ? rest : { ...rest, marks };
}

/** Of every range that nobody has chosen from, take the least or the most. @param {HTMLElement} button */
function settleAll({ dataset }) {
  const open = [...document.querySelectorAll(".settle:not([data-part])")].filter((group) => !group.querySelector('[aria-pressed="true"]'));
  const added = open.map((one) => {
    const group = /** @type {HTMLElement} */ (one);
    const buttons = [...group.children].map((each) => /** @type {HTMLElement} */ (each));
    return chosen(group, buttons[dataset.end === "most" ? buttons.length - 1 : 0]);
  });
  for (const own of added) take(own, false);
  keep();
  return mark();
}

/** Put a choice among those of the paper, or take it away. @param {SettledMarks} own @param {boolean} isTaken */
function take(own, isTaken) {
  const isOwn = (/** @type {SettledMarks} */ one) => one.place === own.place && one.question === own.question;
  const now = withChoice(settled.find(isOwn), own, isTaken);
  const isChosen = now.marks !== undefined || Object.keys(now.parts ?? {}).length > 0;
  settled = [...settled.filter((one) => !isOwn(one)), ...(isChosen ? [now] : [])];
}

/** Choose marks from a range; the same again gives the range back. @param {HTMLElement} button */
function settle(button) {
  const group = button.closest("[data-drawn]");
  if (!(group instanceof HTMLElement)) return;
  const isTaken = button.getAttribute("aria-pressed") === "true";
  take(chosen(group, button), isTaken);
  for (const one of group.children) one.setAttribute("aria-pressed", String(one === button && !isTaken));
  keep();
  due = true;
  markSoon();
}

/** Show a line among the answers. @param {number} number */
function showLine(number) {
  const lines = results.value.split("\n");
  const start = lines.slice(0, number - 1).join("\n").length + (number > 1 ? 1 : 0);
  results.focus();
  results.setSelectionRange(start, start + (lines[number - 1] ?? "").length);
  results.scrollTop = (results.scrollHeight * (number - 2)) / lines.length;
}

/** @type {Record<string, (button: HTMLElement) => unknown>} */
export const actions = {
  mark,
  settle,
  "settle-all": settleAll,
  ...toRegister.actions,
  register: async () => {
    await markDue();
    if (!due) toRegister.actions.register();
  },
  "show-line": ({ dataset }) => showLine(Number(dataset.line)),
  "save-marks": async () => {
    await markDue();
    if (!table) return;
    download(table);
    need("[data-marks-said]").textContent = table.told;
  },
  "erase-results": () => {
    if (document.documentElement.dataset.working === "marks") setPage.stop();
    results.value = "";
    settled = [];
    keep();
    clear();
    say("erased");
  },
};

results.addEventListener("input", async () => {
  old();
  if (key && setPage.isPending()) {
    isAhead = true;
    await setPage.upToDate();
    isAhead = false;
  }
  keep();
});

// A table that was pasted is marked at once; what is typed waits for the button.
results.addEventListener("paste", ({ clipboardData }) => {
  if (!clipboardData?.getData("text").trim().includes("\n")) return;
  results.addEventListener("input", () => mark().catch(setPage.failed), { once: true });
});
