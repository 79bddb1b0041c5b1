// A college's settings as this device keeps them: pages that are opened without a link start with them. They change no link.

import * as form from "./form.js";
import * as store from "./kept.js";

/** @import { Values } from "../types/shared.js" */

const VERSION = 1;
export const FILE = { format: "phasor-folio college settings", version: VERSION };

/** @param {unknown} value @returns {Values} */
function textsOf(value) {
  if (!value || typeof value !== "object" || Array.isArray(value)) return {};
  return Object.fromEntries(Object.entries(value).filter(([, text]) => typeof text === "string" && text));
}

/** What is chosen, by field; empty if this device uses no settings. @returns {Values} */
export function chosen() {
  try {
    const value = JSON.parse(store.read("college") ?? "null");
    return value?.version === VERSION ? textsOf(value.chosen) : {};
  } catch {
    return {};
  }
}

/** Use these settings, or none. Gives whether the browser keeps them. @param {Values | null} values */
export function use(values) {
  const is = values && Object.keys(values).length;
  return store.write("college", is ? JSON.stringify({ version: VERSION, chosen: values }) : null);
}

/** The settings in a file; null if it holds none. @param {string} text */
export function read(text) {
  try {
    const value = JSON.parse(text.replace(/^\uFEFF/, ""));
    return value?.format === FILE.format && value.version === VERSION ? textsOf(value.chosen) : null;
  } catch {
    return null;
  }
}

/** What is chosen for the fields of this page. @returns {Values} */
export function forPage() {
  const values = chosen();
  const names = [...new Set(form.controls().map((one) => one.name))];
  // A question paper has the marks of each part once for each question.
  const all = names.map((name) => [name, values[name.replace(/^q\d+-/, "")] ?? ""]);
  return Object.fromEntries(all.filter(([, text]) => text));
}

/** The names of the fields in which this page is not as the college has it. */
export function different() {
  const now = form.read();
  return Object.entries(forPage()).filter(([name, text]) => now[name] !== text).map(([name]) => name);
}

/** Fill the page's fields with the settings. It is opened without a link. */
export function fill() {
  const values = chosen();
  form.fill(forPage());
  // What an answer may be off by is asked in the form of the checker.
  for (const [name, text] of Object.entries(values)) {
    for (const one of document.querySelectorAll(`form:not(#problem) input[name="${CSS.escape(name)}"]`)) {
      /** @type {HTMLInputElement} */ (one).value = text;
    }
  }
}

/**
 * Open the link of the page, or start as the college has it.
 * @param {(hash: string) => unknown} open @param {(more: { quiet: boolean }) => unknown} update
 */
export function start(open, update) {
  if (location.hash.length > 1) {
    open(location.hash);
    return;
  }
  fill();
  update({ quiet: JSON.stringify(form.read()) === JSON.stringify(form.initial()) });
}
