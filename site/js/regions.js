// Puts pycore's HTML into the regions of the page, and keeps what the reader had open or focused there.

import morphdom from "morphdom";

import { regionHTML } from "./bridge.js";
import { patch, read } from "./patch.js";

/** @import { Part } from "./patch.js" */

// What every edit changes is changed where it stands: most of a sheet stays, and need not be laid out again.
const CHANGED_IN_PLACE = ["answer", "notes", "results", "figures", "sheet", "problem-sheet", "kinds", "view", "workings"];

/** What a region shows, by its name. @type {Map<string, Part | null>} */
const parts = new Map();

const TOLD_BY = ["data-set", "data-action", "data-to-working"]; // each is one of its kind in a region

/** @type {Map<string, string>} */
const last = new Map();

/** What has the focus. */
function active() {
  const found = document.activeElement;
  return found instanceof HTMLElement || found instanceof SVGElement ? found : null;
}

/** The regions by name, each looked for once. @type {Map<string, HTMLElement | null>} */
const known = new Map();

/** @param {string} name */
function regionOf(name) {
  if (!known.get(name)?.isConnected) known.set(name, document.querySelector(`[data-region="${CSS.escape(name)}"]`));
  return known.get(name) ?? null;
}

// What tells an element of a region apart from the others, before and after it is replaced.
/** @param {HTMLElement | SVGElement} element */
function identity(element) {
  const kept = element.closest("[data-keep]");
  if (element.matches("summary") && kept) return `[data-keep="${CSS.escape(kept.dataset.keep ?? "")}"] > summary`;
  const mark = TOLD_BY.find((name) => element.hasAttribute(name));
  if (mark) return `[${mark}="${CSS.escape(element.getAttribute(mark) ?? "")}"]`;
  if (element.tabIndex >= 0 && element.className) return `.${CSS.escape(element.classList[0])}[tabindex]`;
  return "";
}

/**
 * Make what stands in a region like the HTML, and leave what is like it already: by what differs from the text that it
 * shows, or, where that is not known or a script has changed it since, element by element.
 * @param {string} name
 * @param {HTMLElement} region
 * @param {string} html
 */
function change(name, region, html) {
  const [was, now] = [parts.get(name), name === "workings" ? null : read(html)];
  if (!was || !now || !patch(region, was, now)) compare(region, regionHTML(html));
  parts.set(name, now);
}

/** @param {HTMLElement} region @param {string} html */
function compare(region, html) {
  const wanted = /** @type {HTMLElement} */ (region.cloneNode(false));
  wanted.innerHTML = html;
  morphdom(region, wanted, {
    childrenOnly: true,
    onBeforeElUpdated(now, then) {
      if (now instanceof HTMLDetailsElement && then instanceof HTMLDetailsElement) then.open = now.open;
      return !now.isEqualNode(then);
    },
  });
}

/**
 * Run what changes regions, and keep the field that is being typed in where it is on the screen.
 * @param {() => void} run
 */
export function steady(run) {
  const focused = active();
  const field = focused && "form" in focused && focused.form ? focused : null;
  const top = () => field?.getBoundingClientRect().top ?? 0;
  const before = top();
  run();
  const moved = top() - before;
  if (Math.abs(moved) >= 1) scrollBy({ top: moved, behavior: "instant" });
}

/**
 * Replace a region if its HTML has changed. Focus and open parts stay, and where it is changed in place, scroll too.
 * @param {string} name
 * @param {string} html
 */
export function replace(name, html) {
  if (document.documentElement.dataset.follows === name) delete document.documentElement.dataset.follows;
  const region = regionOf(name);
  if (!region || last.get(name) === html) return false;
  // Most regions have no folds, and a sheet has a thousand elements among which to look for them.
  const hasFolds = html.includes("data-keep");
  /** @returns {Iterable<HTMLDetailsElement>} */
  const folds = () => (hasFolds ? region.querySelectorAll("details[data-keep]") : []);
  const open = new Map([...folds()].map((part) => [part.dataset.keep, part.open]));
  const before = active();
  const focused = before !== region && region.contains(before) ? before : null;
  const focus = focused ? identity(focused) : "";
  const inPlace = CHANGED_IN_PLACE.includes(name);
  if (inPlace) change(name, region, html);
  else region.innerHTML = regionHTML(html);
  last.set(name, html);
  // A new fold is as the HTML has it; where the place of another was changed, that one's state is not its own.
  for (const part of folds()) part.open = open.get(part.dataset.keep) ?? (part.open && !inPlace);
  // What was changed where it stood has kept the focus, if it is still what it was.
  if (focused && !(focused === document.activeElement && focused.isConnected && identity(focused) === focus)) {
    const target = (focus && region.querySelector(focus)) || region;
    if (target === region) region.tabIndex = -1;
    if (target !== document.activeElement) target.focus({ preventScroll: true });
  }
  return true;
}

/**
 * Leave nothing in these regions.
 * @param {string[]} names
 */
export function empty(names) {
  for (const name of names) {
    regionOf(name)?.replaceChildren();
    last.delete(name);
    parts.delete(name);
  }
}

/** What every region shows now, by name, to be put back by `replace`. */
export function snapshot() {
  const all = [...document.querySelectorAll("[data-region]")];
  return new Map(
    all.map((region) => {
      const name = region.dataset.region ?? "";
      return [name, last.get(name) ?? region.innerHTML];
    }),
  );
}

/**
 * Mark a region as being behind the values, for readers who cannot see that it is.
 * @param {string} name
 * @param {boolean} is
 */
export function busy(name, is) {
  const region = regionOf(name);
  if (is) region?.setAttribute("aria-busy", "true");
  else region?.removeAttribute("aria-busy");
}
