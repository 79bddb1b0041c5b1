// What is kept on this device as things that a reader knows: one key may hold several, a thing may be erased alone.

import * as kept from "./kept.js";

/** @import { Entry, KeptRow } from "../types/shared.js" */

const PARTS = { roll: "class-names.txt", results: "class-answers.txt", set: "class-set.txt" };

/** @param {string} text @returns {Record<string, any> | null} */
function objectOf(text) {
  try {
    const value = JSON.parse(text);
    return value && typeof value === "object" && !Array.isArray(value) ? value : null;
  } catch {
    return null;
  }
}

/** @param {string} text */
const lines = (text) => text.split("\n").filter((line) => line.trim()).length;

/** @param {string} name @param {string} who */
const named = (name, who) => (who ? name.replace(/\.(\w+)$/, `-${who.replace(/[^\p{L}\p{N}]+/gu, "-")}.$1`) : name);

/**
 * Take one part out of what is kept under a key; the key goes with the last part.
 * @param {Entry} entry @param {string} part
 */
function without({ key, text }, part) {
  const { [part]: gone, ...rest } = objectOf(text) ?? {};
  const isLeft = Object.entries(rest).some(([name, value]) => name !== "version" && value && !(Array.isArray(value) && !value.length));
  if (gone !== undefined && isLeft) kept.restore(key, JSON.stringify(rest));
  else kept.erase(key);
}

/** @param {any} record @param {"solved" | "had"} count */
function sum(record, count) {
  const ways = Object.values(record?.ways ?? {});
  return ways.reduce((whole, way) => whole + (Number.isInteger(way?.[count]) ? way[count] : 0), 0);
}

/** How much of a practice record there is to tell. @param {string} text */
export function progressOf(text) {
  const record = objectOf(text);
  const ways = Object.values(record?.ways ?? {});
  const seen = ways.filter((way) => way?.code && !way.tries && !way.done).length;
  const solved = sum(record, "solved");
  return { solved, unsolved: sum(record, "had") - solved - seen };
}

/** @param {Entry} entry @returns {KeptRow[]} */
function practiceRows(entry) {
  const { key, text, who } = entry;
  const record = objectOf(text);
  const file = { name: named("phasor-folio-practice.json", who), text: record ? JSON.stringify(record, null, 1) : text };
  const erase = () => {
    kept.erase(key);
    kept.erase(key.replace("-practice", "-taken"));
  };
  return [{ name: "practice", entry, counts: progressOf(text), readable: Boolean(record?.ways), file, erase }];
}

/** @param {Entry} entry @returns {KeptRow[]} */
function classRows(entry) {
  const texts = objectOf(entry.text);
  if (!texts) return [plainRow("roll", entry, false)];
  return Object.entries(PARTS).flatMap(([name, file]) => {
    const text = texts[name];
    if (typeof text !== "string" || !text) return [];
    const erase = () => without(entry, name);
    return [{ name, entry, counts: { count: lines(text) }, readable: true, file: { name: named(file, entry.who), text }, erase }];
  });
}

/** @param {string} name @param {Entry} entry @param {string} part @returns {KeptRow} */
function listRow(name, entry, part) {
  const list = objectOf(entry.text)?.[part];
  const isList = Array.isArray(list);
  return { ...plainRow(name, entry, isList), counts: { count: isList ? list.length : 0 } };
}

/** Question papers, and the answers to them apart. @param {Entry} entry @returns {KeptRow[]} */
function paperRows(entry) {
  const { answers, ...papers } = objectOf(entry.text) ?? {};
  const made = Array.isArray(papers.made) ? papers.made : [];
  const isNamed = [papers.draft, ...made].some((one) => one?.roll?.trim?.());
  const row = listRow(`papers${papers.draft ? "" : "-made"}${isNamed ? "" : "-unnamed"}`, entry, "made");
  const texts = typeof answers === "string" ? [answers] : Object.values(answers ?? {}).map((one) => String(one?.text ?? ""));
  const written = texts.filter(Boolean).join("\n");
  if (!written) return [row];
  const hasPapers = Boolean(papers.draft) || row.counts.count !== 0;
  const file = { name: named("paper-answers.txt", entry.who), text: written };
  const erase = () => without(entry, "answers");
  const own = { name: "answers", entry, counts: { count: lines(written) }, readable: true, file, erase };
  const erasePapers = () => kept.restore(entry.key, JSON.stringify({ version: papers.version, answers }));
  return hasPapers ? [{ ...row, erase: erasePapers }, own] : [own];
}

/** @param {Entry} entry @returns {KeptRow[]} */
function deviceRows(entry) {
  const values = objectOf(entry.text);
  const found = values ? ["printer", "screen"].filter((name) => values[name]) : [];
  if (!found.length) return [plainRow("printer", entry, false)];
  return found.map((name) => {
    const own = JSON.stringify({ version: values?.version, [name]: values?.[name] });
    const file = { name: `phasor-folio-${name}.json`, text: fileOf([{ ...entry, text: own }]) };
    return { name, entry, counts: {}, readable: true, file, erase: () => without(entry, name) };
  });
}

/** @param {string} name @param {Entry} entry @param {boolean} [readable] @returns {KeptRow} */
function plainRow(name, entry, readable = true) {
  const file = { name: named(`phasor-folio-${name}.json`, entry.who), text: fileOf([entry]) };
  return { name, entry, counts: {}, readable, file, erase: () => kept.erase(entry.key) };
}

/** Everything that is kept, in rows. @returns {KeptRow[]} */
export function rows() {
  const all = kept.all();
  /** @param {string} thing */
  const of = (thing) => all.filter((entry) => entry.thing === thing);
  return [
    ...of("practice").flatMap(practiceRows),
    ...of("drawings").map((entry) => listRow("drawings", entry, "drawings")),
    ...of("class").flatMap(classRows),
    ...of("papers").flatMap(paperRows),
    ...of("register").map((entry) => listRow("register", entry, "papers")),
    ...of("pile").map((entry) => listRow("pile", entry, "rows")),
    ...of("device").flatMap(deviceRows),
    ...["college", "lesson", "theme", "store"].flatMap((name) => of(name).map((entry) => plainRow(name, entry))),
  ];
}

const MOST_TEXT = 4_000_000;

/** A file of what is kept, to be loaded on this page. @param {Entry[]} entries */
export const fileOf = (entries) => kept.fileOf(Object.fromEntries(entries.map(({ key, text }) => [key, text])));

/**
 * Keep what such a file holds. Gives what became of it: how many things were kept, and whether there was room for all; or
 * why it is none.
 * @param {string} text
 * @returns {{ count: number, whole: boolean } | "practice" | "notOurs"}
 */
export function load(text) {
  const file = objectOf(text.replace(/^\uFEFF/, ""));
  if (file?.kind === "phasor-folio-practice") return "practice";
  if (file?.kind !== kept.FILE.kind || file.version !== kept.FILE.version || !file.kept || typeof file.kept !== "object") return "notOurs";
  const texts = Object.entries(file.kept).filter(([key, value]) => kept.isOurs(key) && typeof value === "string" && value.length <= MOST_TEXT);
  if (!texts.length) return "notOurs";
  const count = texts.filter(([key, value]) => kept.restore(key, String(value))).length;
  return { count, whole: count === texts.length };
}
