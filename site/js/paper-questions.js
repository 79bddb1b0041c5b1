// The questions of a question paper: how many are shown, their order, and which marks each asks for. Those beyond the
// paper's number keep what they hold, unseen.

import { need } from "./elements.js";
import * as form from "./form.js";

/** @import { Values } from "../types/shared.js" */

const sections = [...document.querySelectorAll("[data-question]")].map((one) => /** @type {HTMLElement} */ (one));

const list = need("[data-questions]");
const calculatedFirst = list.dataset.calculatedFirst?.split(" ") ?? [];

/** The controls of questions that are drawn alone and lost their page for working here, with what they had. @type {Map<string, string>} */
let withoutSpace = new Map();

export const count = () => Number(form.read().questions);

export function show() {
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
  showMarks();
}

/** The calculator that a link leads to: the last part of its path. @param {string} link */
const calculatorOf = (link) => link.split(/[#?]/)[0].split("/").filter(Boolean).pop() ?? "";

/** Marks are given for what is asked, and for values where some are calculated before they are drawn; own values have no tier, and those of a link their own topic and method. */
export function showMarks() {
  const values = form.read();
  sections.forEach((section, place) => {
    need("[data-own-example]", HTMLElement, section).textContent = list.getAttribute(`data-own-${values[`q${place + 1}-topic`]}`);
    const own = values[`q${place + 1}-link`]?.trim() ?? "";
    const isLink = /[#/]/.test(own);
    const hasNone = !calculatedFirst.includes((isLink ? calculatorOf(own) : values[`q${place + 1}-topic`]) ?? "");
    for (const [name, isOut] of Object.entries({ tier: own !== "", method: isLink, "marks-values": hasNone })) {
      need(`[name="q${place + 1}-${name}"]`, HTMLElement, section).closest(".field, .choose-one")?.toggleAttribute("hidden", isOut);
    }
  });
  for (const part of document.querySelectorAll("[data-marks-of]")) {
    const { marksOf, of } = /** @type {HTMLElement} */ (part).dataset;
    const asks = values[`q${of}-asks`];
    /** @type {HTMLElement} */ (part).hidden = asks !== marksOf && (asks === "drawing" || asks === "calculation");
  }
}

/** Whether a question has this field: none that its topic, its own values or what it asks for leave out. @param {string} name */
export function isShown(name) {
  const hidden = form.control(name)?.closest("[hidden]");
  return !hidden || !list.contains(hidden);
}

/** A drawing alone needs no page for working; with a calculation the page comes back, unless the space was chosen by hand. @param {HTMLElement} control */
export function fitSpace(control) {
  const { name = "", value } = /** @type {HTMLSelectElement} */ (control);
  withoutSpace.delete(name);
  if (!/^q\d+-asks$/.test(name)) return;
  const space = name.replace("asks", "working");
  const now = form.read()[space] ?? "";
  const before = withoutSpace.get(space);
  if (value === "drawing" && now === form.initial()[space]) {
    withoutSpace.set(space, now);
    form.fill({ [space]: "none" });
  } else if (value !== "drawing" && before) {
    withoutSpace.delete(space);
    form.fill({ [space]: before });
  }
}

/** Space for working that the page took away and would bring back, to be kept with the paper. */
export const spaces = () => Object.fromEntries(withoutSpace);

/** Another paper is in the form: its space for working is as whoever made it chose, but for what the page took away. @param {Values} taken */
export function showOpened(taken = {}) {
  withoutSpace = new Map(Object.entries(taken));
  show();
}

/** What each question is worth: all of it beside its heading, how it falls on its parts where these are set. @param {string[]} totals @param {string[]} parts */
export function showTotals(totals, parts) {
  sections.forEach((section, place) => {
    need("[data-total-of]", HTMLElement, section).textContent = totals[place] ?? "";
    if (parts[place]) need("[data-parts-of]", HTMLElement, section).textContent = parts[place];
  });
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
  const keys = order.map((number) => `q${number}-working`);
  withoutSpace = new Map([...withoutSpace].map(([name, value]) => [`q${keys.indexOf(name) + 1}-working`, value]));
}

/** @param {number} many */
function setCount(many) {
  need('input[name="questions"]', HTMLInputElement).value = String(many);
  show();
}

/** @param {number} number @param {number} by */
export function move(number, by) {
  const order = sections.map((_, place) => place + 1);
  const other = number + by;
  [order[number - 1], order[other - 1]] = [other, number];
  reorder(order);
  show();
  const isEnd = other === 1 || other === count();
  need(`[data-do="${isEnd === by > 0 ? "up" : "down"}"][data-of="${other}"]`).focus();
}

/** @param {number} number */
export function remove(number) {
  const order = sections.map((_, place) => place + 1);
  order.push(...order.splice(number - 1, 1));
  reorder(order);
  setCount(count() - 1);
  need("h2", HTMLElement, sections[Math.min(number, count()) - 1]).focus();
}

export function add() {
  setCount(count() + 1);
  need("select", HTMLSelectElement, sections[count() - 1]).focus();
}
