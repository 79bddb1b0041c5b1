// What this device keeps of question papers: the one that is being put together, and those that were made, each with its
// names, so that one learner's paper can be printed again. Names are the lecturer's alone: in no link, never sent.

import * as store from "./kept.js";

/** @import { MadePaper, PaperText } from "../types/shared.js" */

const VERSION = 1;
const FILE = { format: "phasor-folio question paper", version: 1 };
const MOST_TEXT = 1_000_000;

/** @param {unknown} value @returns {PaperText | null} */
function paperOf(value) {
  if (!value || typeof value !== "object") return null;
  const { form, roll, links } = /** @type {Record<string, unknown>} */ (value);
  if (!form || typeof form !== "object") return null;
  const texts = Object.entries(form).filter(([, text]) => typeof text === "string" && text.length <= MOST_TEXT);
  return { form: Object.fromEntries(texts), roll: typeof roll === "string" ? roll : "", links: Array.isArray(links) ? links.filter((one) => typeof one === "string") : [] };
}

/** @returns {{ draft: PaperText | null, made: MadePaper[], answers: string }} */
function found() {
  const nothing = { draft: null, made: [], answers: "" };
  try {
    const value = JSON.parse(store.read("papers") ?? "null");
    if (value?.version !== VERSION) return nothing;
    const isMade = (/** @type {any} */ one) => paperOf(one) && typeof one.code === "string" && typeof one.id === "string";
    const made = Array.isArray(value.made) ? value.made.filter(isMade) : [];
    return { draft: paperOf(value.draft), made, answers: typeof value.answers === "string" ? value.answers : "" };
  } catch {
    return nothing;
  }
}

/** @param {Partial<ReturnType<typeof found>>} changed */
function write(changed) {
  const { draft, made, answers } = { ...found(), ...changed };
  if (made.length || draft?.roll || answers) store.stay();
  store.write("papers", draft || made.length || answers ? JSON.stringify({ version: VERSION, draft, made, answers }) : null);
}

export const draft = () => found().draft;
export const made = () => found().made;
export const answers = () => found().answers;

const LINKS = 4; // the address follows the answer a little later, so a page that is left may have an earlier link

/** Keep the paper that is being put together; `link`: the one that it has now, if known. @param {PaperText} paper @param {string} [link] */
export function keepDraft({ form, roll }, link) {
  const before = draft()?.links ?? [];
  const links = link ? [link, ...before.filter((one) => one !== link)].slice(0, LINKS) : before;
  write({ draft: { form, roll, links } });
}

/** The answers as they were typed. @param {string} text */
export const keepAnswers = (text) => write({ answers: text });

/**
 * Keep a paper that was made; the same one for the same group and names takes its place.
 * @param {Omit<MadePaper, "id">} paper
 */
export function keepMade(paper) {
  const isSame = (/** @type {MadePaper} */ one) =>
    one.code === paper.code && one.form.group === paper.form.group && one.roll === paper.roll;
  write({ made: [{ ...paper, id: String(Date.now()) }, ...made().filter((one) => !isSame(one))] });
}

/** @param {string} id */
export const erase = (id) => write({ made: made().filter((one) => one.id !== id) });

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
