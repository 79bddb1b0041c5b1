// What is typed goes along when a newer edition is taken over: the controls of the page, kept by this window until it is
// loaded anew. What would end or be lost is said instead.

import { controlOf } from "./elements.js";
import * as store from "./kept.js";

/** @import { Control, InputControl } from "../types/shared.js" */

const KEPT = "phasor-folio-typed";
const LONGEST_WAIT = 60_000; // ms within which a page answers, or what was typed comes without
const root = document.documentElement;

/** @param {Control} one */
const passes = (one) => one.type !== "file" && one.type !== "hidden" && !one.hasAttribute("readonly") && Boolean(one.name || one.id);
const controls = () => [...document.querySelectorAll("input, select, textarea")].map((one) => /** @type {Control} */ (one)).filter(passes);
/** @param {Control} one @returns {one is InputControl} */
const toggles = (one) => one.type === "radio" || one.type === "checkbox";
/** @param {Control} one */
const keyOf = (one) => [one.form?.id ?? "", one.name || one.id, ...(toggles(one) ? [one.value] : [])].join(" ");
/** @param {Control} one */
const isOfLink = (one) => one.form?.id === "problem";

/** What the page has in hand that would end, as a sentence; "" if nothing has. */
export function inHand() {
  const holding = [...document.querySelectorAll("[data-in-hand]")].find((one) => one.checkVisibility());
  return holding?.dataset.inHand ?? "";
}

/** Keep what is typed; gives whether all of it comes again: the address, too, holds the values that could be used. */
export function keep() {
  const values = controls().map((one) => [keyOf(one), toggles(one) ? one.checked : one.value]);
  try {
    sessionStorage.setItem(KEPT, JSON.stringify({ page: root.dataset.slug, values, veiled: root.dataset.veiled }));
    return !store.holdsUnkept();
  } catch {
    /** @param {Control} one */
    const isTyped = (one) => !one.options && !toggles(one) && one.value !== one.defaultValue;
    return !store.holdsUnkept() && !controls().some((one) => isTyped(one) && (!isOfLink(one) || one.hasAttribute("aria-invalid")));
  }
}

/** @type {Set<string>} */
const typed = new Set(); // since the page was loaded: it stays

/** @param {Map<string, unknown>} values @param {Control[]} among */
function fill(values, among) {
  return among.filter((one) => {
    if (typed.has(keyOf(one))) return false;
    const value = values.get(keyOf(one));
    if (toggles(one) ? typeof value !== "boolean" || value === one.checked : typeof value !== "string" || value === one.value) return false;
    if (toggles(one)) one.checked = value === true;
    else one.value = String(value);
    return !toggles(one) || value === true;
  });
}

/** @param {Iterable<Control>} changed */
function tell(changed) {
  // The page's own script hears of it as if it were typed now.
  for (const one of changed) one.dispatchEvent(new Event("input", { bubbles: true }));
}

// An answer belongs to a problem, which comes with the page's first reply.
/** @param {() => void} then */
function whenAnswered(then) {
  const isOver = () => root.dataset.answer !== "pending";
  if (isOver()) {
    then();
    return;
  }
  const watch = new MutationObserver(() => isOver() && end());
  const end = () => {
    watch.disconnect();
    clearTimeout(late);
    then();
  };
  const late = setTimeout(end, LONGEST_WAIT);
  watch.observe(root, { attributeFilter: ["data-answer"] });
}

/** Put back what was kept before the page was loaded anew. */
export function take() {
  let kept;
  try {
    kept = JSON.parse(sessionStorage.getItem(KEPT) ?? "null");
    sessionStorage.removeItem(KEPT);
  } catch {
    return;
  }
  if (kept?.page !== root.dataset.slug || !Array.isArray(kept.values)) return;
  // An answer that was hidden stays so (veil.js).
  if (typeof kept.veiled === "string") root.dataset.veilStays = kept.veiled;
  document.addEventListener("input", (event) => {
    const control = controlOf(event);
    if (control && event.isTrusted) typed.add(keyOf(control));
  });
  const values = new Map(kept.values.filter((/** @type {unknown} */ pair) => Array.isArray(pair) && pair.length === 2));
  const putBack = () => fill(values, controls().filter(isOfLink));
  const early = putBack();
  // The page's own script may have filled the fields from the link meanwhile.
  addEventListener("load", () => {
    tell(new Set([...early, ...putBack()]));
    whenAnswered(() => tell(fill(values, controls().filter((one) => !isOfLink(one)))));
  });
}
