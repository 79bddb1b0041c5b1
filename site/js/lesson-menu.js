// The menu of the lesson view: which views, methods and choices it offers, and which view stands next to the one in
// view. Past the last step the menu opens with that one, so that the two keys of a remote control reach every view.

import { need } from "./elements.js";
import * as form from "./form.js";

/** @type {HTMLElement} */
let dialog;
let offered = 0; // 1: the next view is offered, -1: the one before, 0: none

/** @param {string} selector @returns {HTMLElement[]} */
const all = (selector) => [...dialog.querySelectorAll(selector)];

/** The methods, then what else the problem has, in the order in which two keys reach them. */
function stations() {
  const methods = all("[data-lesson-method]:not([hidden])");
  const views = all("[data-lesson-view]:not([hidden])");
  return methods.length ? [...methods, ...views.filter((one) => one.dataset.lessonView !== "lesson")] : views;
}

/**
 * The view that stands next to the one in view, or before it; undefined if there is none.
 * @param {number} by 1 or -1
 */
export function neighbour(by) {
  const listed = stations();
  const at = listed.findIndex((one) => one.getAttribute("aria-pressed") === "true");
  return at < 0 ? undefined : listed[at + by];
}

/** Which way a view is offered: 1 onward, -1 back, 0 not at all. */
export const isOffered = () => offered;

/**
 * Mark the next view (or the one before) and say how it is reached; with 0 no view is marked. Gives what is said.
 * @param {number} by
 */
export function offer(by) {
  offered = by && neighbour(by) ? by : 0;
  const one = offered ? neighbour(offered) : undefined;
  for (const item of stations()) item.toggleAttribute("data-offered", item === one);
  const lead = need("[data-lesson-lead]", HTMLElement, dialog);
  const name = one ? need("span", HTMLElement, one).textContent ?? "" : "";
  const touch = matchMedia("(hover: none) and (pointer: coarse)").matches;
  const still = touch ? lead.dataset.touch : lead.dataset.lead;
  const words = { 1: lead.dataset.next, "-1": lead.dataset.back, 0: still }[offered] ?? "";
  lead.toggleAttribute("data-offering", Boolean(offered));
  lead.textContent = words.replace("{view}", name);
  return lead.textContent;
}

/**
 * Show what the problem and the form offer; `views` are those of the problem, if they are known.
 * @param {string} view @param {string[] | undefined} views
 */
export function follow(view, views) {
  const inMoves = view === "lesson";
  for (const one of all("[data-lesson-view]")) {
    one.hidden = Boolean(views && !views.includes(one.dataset.lessonView ?? ""));
    one.setAttribute("aria-pressed", String(one.dataset.lessonView === view));
  }
  const method = form.control("method");
  const values = method?.options ? new Set([...method.options].map(({ value }) => value)) : null;
  for (const one of all("[data-lesson-method]")) {
    one.hidden = Boolean(values && !values.has(one.dataset.lessonMethod ?? ""));
    one.setAttribute("aria-pressed", String(inMoves && one.dataset.lessonMethod === form.read().method));
  }
  /** @type {NodeListOf<HTMLSelectElement>} */
  const selects = dialog.querySelectorAll("[data-lesson-set]");
  for (const select of selects) followChoice(select, inMoves);
}

/** @param {HTMLSelectElement} select @param {boolean} inMoves */
function followChoice(select, inMoves) {
  const name = select.dataset.lessonSet ?? "";
  const original = form.control(name);
  if (original?.options) select.replaceChildren(...[...original.options].map((one) => one.cloneNode(true)));
  select.value = form.read()[name];
  const isIdle = !inMoves || Boolean(original?.closest("[data-field]")?.hidden);
  if (select.parentElement) select.parentElement.hidden = isIdle;
  if (name === "order") need('[data-lesson-do="pair"]', HTMLElement, dialog).hidden = isIdle;
}

/** @param {HTMLElement} joined */
export function join(joined) {
  dialog = joined;
}
