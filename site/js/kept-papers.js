// What this device keeps of question papers: the one that is being put together, those that were made, each with its
// names, so that one learner's paper can be printed again, and the answers to each. Names and answers are the lecturer's
// alone: in no link, never sent.

import * as store from "./kept.js";

/** @import { MadePaper, PaperAnswers, PaperText } from "../types/shared.js" */

const VERSION = 1;
const FILE = { format: "phasor-folio question paper", version: 1 };
const MOST_TEXT = 1_000_000;

/** The texts of an object by name, whatever else it holds. @param {unknown} value @returns {Record<string, string>} */
function textsIn(value) {
  const isText = (/** @type {[string, unknown]} */ [, text]) => typeof text === "string" && text.length <= MOST_TEXT;
  return value && typeof value === "object" ? Object.fromEntries(Object.entries(value).filter(isText)) : {};
}

/** @param {unknown} value @returns {PaperText | null} */
function paperOf(value) {
  if (!value || typeof value !== "object") return null;
  const { form, roll, links, spaces } = /** @type {Record<string, unknown>} */ (value);
  if (!form || typeof form !== "object") return null;
  const listed = Array.isArray(links) ? links.filter((one) => typeof one === "string") : [];
  return { form: textsIn(form), roll: typeof roll === "string" ? roll : "", links: listed, spaces: textsIn(spaces) };
}

const BEFORE = ""; // whose answers an earlier version kept is not known until a paper is shown

/** @param {unknown} value @returns {Record<string, PaperAnswers>} */
function answersIn(value) {
  if (typeof value === "string") return value ? { [BEFORE]: { text: value, settled: [] } } : {};
  if (!value || typeof value !== "object" || Array.isArray(value)) return {};
  const listed = Object.entries(value).flatMap(([key, one]) => {
    if (typeof one?.text !== "string") return [];
    return [[key, { text: one.text, settled: Array.isArray(one.settled) ? one.settled : [] }]];
  });
  return Object.fromEntries(listed);
}

/** @returns {{ draft: PaperText | null, made: MadePaper[], answers: Record<string, PaperAnswers> }} */
function found() {
  const nothing = { draft: null, made: [], answers: {} };
  try {
    const value = JSON.parse(store.read("papers") ?? "null");
    if (value?.version !== VERSION) return nothing;
    const isMade = (/** @type {any} */ one) => paperOf(one) && typeof one.code === "string" && typeof one.id === "string";
    const made = Array.isArray(value.made) ? value.made.filter(isMade) : [];
    return { draft: paperOf(value.draft), made, answers: answersIn(value.answers) };
  } catch {
    return nothing;
  }
}

/** @param {Partial<ReturnType<typeof found>>} changed */
function write(changed) {
  const { draft, made, answers } = { ...found(), ...changed };
  const hasAnswers = Object.keys(answers).length > 0;
  if (made.length || draft?.roll || hasAnswers) store.stay();
  store.write("papers", draft || made.length || hasAnswers ? JSON.stringify({ version: VERSION, draft, made, answers }) : null);
}

export const draft = () => found().draft;
export const made = () => found().made;

/** What the answers to a paper are kept under. @param {string} code @param {string | undefined} group */
export const keyOf = (code, group) => `${code} ${(group ?? "").trim()}`;

/** The answers to a paper as they were typed, and what was chosen from ranges of marks. @param {string} key @returns {PaperAnswers} */
export const answers = (key) => found().answers[key] ?? { text: "", settled: [] };

/** All answers but those to one paper. @param {string} key */
const without = (key) => Object.fromEntries(Object.entries(found().answers).filter(([other]) => other !== key));

/** @param {string} key @param {PaperAnswers} of */
export function keepAnswers(key, of) {
  write({ answers: of.text ? { ...found().answers, [key]: of } : without(key) });
}

/** Answers that an earlier version kept, or those of a paper whose group was renamed, are now this paper's. @param {string} key @param {string} [from] */
export function takeAnswers(key, from = BEFORE) {
  const taken = found().answers[from];
  if (taken && !found().answers[key]) write({ answers: { ...without(from), [key]: taken } });
}

const LINKS = 4; // the address follows the answer a little later, so a page that is left may have an earlier link

/** Keep the paper that is being put together; `link`: the one that it has now, if known. @param {PaperText} paper @param {string} [link] */
export function keepDraft({ form, roll, spaces }, link) {
  const before = draft()?.links ?? [];
  const links = link ? [link, ...before.filter((one) => one !== link)].slice(0, LINKS) : before;
  write({ draft: { form, roll, links, spaces } });
}

export const MOST_QUESTIONS = 10;

/**
 * Put a problem with values of its own at the end of the paper that is being put together, or begin one with it; gives
 * its number, 0 where there is no room.
 * @param {string} topic the page of the problem @param {string} link
 */
export function addQuestion(topic, link) {
  const { form, roll, spaces } = draft() ?? { form: /** @type {Record<string, string>} */ ({}), roll: "" };
  const number = (Number(form.questions) || 0) + 1;
  if (number > MOST_QUESTIONS) return 0;
  const added = { questions: String(number), [`q${number}-topic`]: topic, [`q${number}-link`]: link };
  keepDraft({ form: { ...form, ...added }, roll, spaces });
  return number;
}

/**
 * Keep a paper that was made; the same one for the same group and names takes its place.
 * @param {Omit<MadePaper, "id">} paper
 */
export function keepMade(paper) {
  const isSame = (/** @type {MadePaper} */ one) =>
    one.code === paper.code && one.form.group === paper.form.group && one.roll === paper.roll;
  write({ made: [{ ...paper, id: String(Date.now()) }, ...made().filter((one) => !isSame(one))] });
}

/** Erase a paper that was made, and the answers to it; gives what brings both back. @param {string} id */
export function erase(id) {
  const before = found();
  const left = before.made.filter((one) => one.id !== id);
  const gone = before.made.find((one) => one.id === id);
  const key = gone ? keyOf(gone.code, gone.form.group) : "";
  const isLast = !left.some((one) => keyOf(one.code, one.form.group) === key);
  write({ made: left, ...(gone && isLast ? { answers: without(key) } : {}) });
  return () => {
    const now = found();
    const kept = before.answers[key];
    const isBack = !gone || now.made.some((one) => one.id === id);
    write({ made: isBack ? now.made : [gone, ...now.made], answers: kept ? { [key]: kept, ...now.answers } : now.answers });
  };
}

/** A paper as a file. @param {PaperText} paper */
export const fileText = ({ form, roll }) => JSON.stringify({ ...FILE, form, roll }, null, 1);

/** The paper in a file; null if it holds none that this version reads. @param {string} text */
export function read(text) {
  try {
    const value = JSON.parse(text.replace(/^\uFEFF/, ""));
    return value?.format === FILE.format && value.version === FILE.version ? paperOf(value) : null;
  } catch {
    return null;
  }
}
