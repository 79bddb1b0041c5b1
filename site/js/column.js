// What stands beside the sheet: moves, results, checks, or the settings in their place.

import { around, hide, need, write } from "./elements.js";
import { sayElsewhere } from "./form.js";
import { lay, lift } from "./layers.js";

const column = need(".column");
const main = need("main");
const switches = [...document.querySelectorAll("[data-settings-switch]")]; // one for each width: one is in view
const more = need("[data-more]", HTMLDetailsElement);
const choices = need(".choices");
const compares = document.querySelector("[data-tab=compare]") !== null;
const COMPARISON = '[data-working="accuracy"]'; // drawing, calculation and meter beside each other
const also = need("[data-also-said]");
const buttons = [...document.querySelectorAll("[data-tab]")];

// One thing at a time is in view: with the settings in its place, none of the tabs is.
function markTab() {
  const shown = main.hasAttribute("data-settings") ? "" : column.dataset.shows;
  for (const button of buttons) button.setAttribute("aria-pressed", String(button.dataset.tab === shown));
}

let isAwaited = false; // whether the comparison opens once it is there

/** What was put into the column is there: the comparison opens, if it is what is shown and has just come. */
export function arrived() {
  if (!isAwaited) return;
  const fold = column.querySelector(COMPARISON);
  fold?.setAttribute("open", "");
  isAwaited = !fold;
}

/** @type {() => unknown} */
let turned = () => {};

/** What is done whenever another tab is shown. @param {() => unknown} run */
export function onTurn(run) {
  turned = run;
}

/** @param {string} name */
export function show(name) {
  column.dataset.shows = name;
  main.toggleAttribute("data-checking", name === "check");
  isAwaited = name === "compare";
  arrived();
  markTab();
  need("[data-list]").scrollTop = 0;
  turned();
}

const closeSettings = () => turnSettings(false);

/** @param {boolean} on */
function turnSettings(on) {
  if (on === main.hasAttribute("data-settings")) return;
  main.toggleAttribute("data-settings", on);
  if (on) lay(closeSettings);
  else lift(closeSettings);
  for (const one of switches) one.setAttribute("aria-pressed", String(on));
  markTab();
  if (on) choices.scrollTop = 0;
  sayElsewhere(); // A fault of the settings is out of sight with them.
}

const firstSetting = () => [...choices.querySelectorAll("input, select")].find((one) => one.checkVisibility());

/**
 * Bring what is not in view into view, whatever it stands behind.
 * @param {Element} element
 */
export function reveal(element) {
  if (element.closest(".choices")) turnSettings(true);
  else if (element.closest(".column")) {
    turnSettings(false);
    const [tab] = ["check", "compare", "result-list"].filter((name) => element.closest(`.${name}`));
    if (compares && element.closest(COMPARISON)) show("compare");
    else if (element.closest("details.working") || tab === "result-list") show("results");
    else if (element.closest("section.working, .method, .easy")) show("moves");
    else if (tab) show(tab);
  }
  const fold = element.closest("details");
  if (fold) fold.open = true;
}

// What opens from there gives the focus back to what is still in view.
function closeMore() {
  if (more.contains(document.activeElement)) need("summary", HTMLElement, more).focus();
  more.open = false;
}

/** @param {Event} event */
function clicked(event) {
  const tab = around(event, "[data-tab]");
  if (tab) {
    turnSettings(false);
    show(tab.dataset.tab ?? "");
    // Far down in a long list there would be nothing of a short one.
    if (tab.getBoundingClientRect().top > column.getBoundingClientRect().top + 1) column.scrollIntoView();
    // What is asked for stands below the method on a phone: it comes into view.
    document.querySelector(`.column .${tab.dataset.tab}`)?.scrollIntoView({ block: "nearest" });
    // A list that scrolls by itself begins with its first lines, though what is asked for has lines before it.
    need("[data-list]").scrollTop = 0;
  }
  if (around(event, "[data-settings-switch]")) {
    turnSettings(!main.hasAttribute("data-settings"));
    // Whom a key brought here goes on to the settings, which stand before the bar.
    if (main.hasAttribute("data-settings") && event instanceof MouseEvent && event.detail === 0) firstSetting()?.focus();
  }
  const go = around(event, "[data-also-go]");
  if (go) {
    const control = need(`:is([data-holds-values], .choices) [name="${CSS.escape(go.dataset.alsoGo ?? "")}"]`);
    reveal(control);
    control.focus();
  }
  if (more.open && !around(event, "[data-more] > summary")) closeMore();
}

/** @param {KeyboardEvent} event */
function pressed(event) {
  if (event.key !== "Escape" || event.defaultPrevented) return;
  if (more.open) {
    need("summary", HTMLElement, more).focus();
    closeMore();
  } else if (main.hasAttribute("data-settings")) {
    turnSettings(false);
    switches.find((one) => one.checkVisibility())?.focus();
  }
}

/** A value that is set, with its label and unit. @param {HTMLElement} control */
function told(control) {
  const name = control.getAttribute("name") ?? "";
  const label = document.querySelector(`[data-label-for="${name}"]`)?.textContent ?? "";
  if (control instanceof HTMLSelectElement) return `${label} ${control.selectedOptions[0].text}`;
  const typed = control instanceof HTMLInputElement ? control.value.trim() : "";
  if (/[a-z]/i.test(typed)) return `${label}: ${typed}`; // a unit or a side of its own
  const unit = control.closest(".entry")?.querySelector(".unit")?.textContent ?? "";
  const space = unit === "°" ? "" : "\u00a0";
  return `${label} ${typed}${/\d$/.test(typed) && unit ? space + unit : ""}`;
}

/** @param {HTMLElement[]} set */
const placeOf = (set) => set[0]?.closest("[data-also]");

/**
 * Whether `sayAlso` would move what stands below it.
 * @param {HTMLElement[]} set
 */
export const saysOther = (set) => also.hidden === Boolean(placeOf(set) || also.dataset.alsoFirst) || set.length > 0 || need("span", HTMLElement, also).textContent !== "";

/**
 * Say which values are set that stand elsewhere; `set` names their controls. While there are none, a page with lags among its settings leads to these.
 * @param {HTMLElement[]} set
 */
export function sayAlso(set) {
  const place = placeOf(set);
  const { alsoFirst, alsoSaid = "" } = also.dataset;
  hide(also, !place && !alsoFirst);
  const button = need("button", HTMLElement, also);
  write(need("span", HTMLElement, also), place ? alsoSaid.replace("{list}", set.map(told).join("; ")) : "");
  write(button, (place ? button.dataset.alsoSome : button.dataset.alsoNone) ?? "");
  button.dataset.alsoGo = (place ? set[0].getAttribute("name") : alsoFirst) ?? "";
}

document.addEventListener("click", clicked);
document.addEventListener("keydown", pressed);
document.addEventListener("unfold", ({ target }) => target instanceof Element && reveal(target));
