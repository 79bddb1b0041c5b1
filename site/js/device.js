// What this device keeps of its printer and its screen, with a version, checked on reading, erasable. None of it is in
// any link.

import * as store from "./kept.js";

/** @import { Pair, PrinterSetup, ScreenSetup } from "../types/shared.js" */

const VERSION = 1;
const LIMIT = 0.03 + 1e-9; // no printer is out by more; pycore holds the same limit
const PAGE = /^(?:a[2-5]|letter|tabloid)[lp]$/;

/** @type {{ printer?: PrinterSetup | null, screen?: ScreenSetup | null }} */
let kept = {};
/** @type {"ok" | "denied" | "unreadable"} */
let state = "ok"; // "denied": storage is refused; "unreadable": what was there was no set-up of ours

/** @param {unknown} value @param {number} low @param {number} high @returns {value is number} */
const within = (value, low, high) => typeof value === "number" && value >= low && value <= high;
/** @param {unknown} value @returns {value is number} */
const isFactor = (value) => within(value, 1 - LIMIT, 1 + LIMIT);
/** @param {unknown} value @returns {value is Pair} */
const isPair = (value) => Array.isArray(value) && value.length === 2 && value.every(isFactor);

/** @param {any} value @returns {value is PrinterSetup} */
function isPrinter(value) {
  if (!value || !isFactor(value.along) || !isFactor(value.across) || !within(value.lead, 1, 2000)) return false;
  const pages = Object.entries(value.pages ?? {});
  return (
    ["short", "long"].includes(value.edge) && pages.length > 0 && pages.every(([key, pair]) => PAGE.test(key) && isPair(pair))
  );
}

/** @param {any} value @returns {value is ScreenSetup} */
const isScreen = (value) => Boolean(value) && within(value.pxPerMm, 0.5, 30) && within(value.pixelRatio, 0.1, 20);

/** @param {string} text */
function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Read what is kept, leaving out whatever is no set-up of ours, and let every print follow it. */
export function load() {
  const text = store.read("device");
  const found = text === null ? {} : parsed(text);
  const known = found && typeof found === "object" && (text === null || found.version === VERSION);
  const ours = {
    printer: known && isPrinter(found.printer) ? found.printer : null,
    screen: known && isScreen(found.screen) ? found.screen : null,
  };
  const lost = !known || Boolean(found.printer && !ours.printer) || Boolean(found.screen && !ours.screen);
  state = lost ? "unreadable" : store.works("device") ? "ok" : "denied";
  kept = ours;
  apply();
}

function keepIt() {
  const text = kept.printer || kept.screen ? JSON.stringify({ version: VERSION, ...kept }) : null;
  if (text) store.stay();
  state = store.write("device", text) ? "ok" : "denied";
  apply();
}

// The style sheet stretches a printed page about its centre by the variable of that page.
/** @type {string[]} */
let applied = [];
function apply() {
  const style = document.documentElement.style;
  for (const name of applied) style.removeProperty(name);
  applied = [];
  for (const [key, pair] of Object.entries(kept.printer?.pages ?? {})) {
    if (!pair) continue;
    const [across, up] = pair;
    const name = `--print-${key}`;
    style.setProperty(name, `scale(${across}, ${up})`);
    applied.push(name);
  }
}

/** "ok", "denied" or "unreadable". */
export const storage = () => state;

/** The printer's correction as pycore worked it out, or null. */
export const printer = () => kept.printer ?? null;

/**
 * The factors across and up for a page such as "a4l"; undefined when there is no correction.
 * @param {string | undefined} page
 */
export const factors = (page) => kept.printer?.pages[page ?? ""];

/** @param {PrinterSetup} correction */
export function keepPrinter(correction) {
  if (!isPrinter(correction)) return false;
  kept = { ...kept, printer: correction };
  keepIt();
  return true;
}

export function forgetPrinter() {
  kept = { ...kept, printer: null };
  keepIt();
}

/** CSS pixels in one true millimetre, and whether zoom or screen have changed since it was set up; or null. */
export function screen() {
  if (!kept.screen) return null;
  // Zooming enlarges the CSS pixel: what was 4 of them to the millimetre is fewer now.
  const change = devicePixelRatio / kept.screen.pixelRatio;
  return { pxPerMm: kept.screen.pxPerMm / change, changed: Math.abs(change - 1) > 0.001 };
}

/** @param {number} pxPerMm */
export function keepScreen(pxPerMm) {
  const value = { pxPerMm, pixelRatio: devicePixelRatio };
  if (!isScreen(value)) return false;
  kept = { ...kept, screen: value };
  keepIt();
  return true;
}

export function forgetScreen() {
  kept = { ...kept, screen: null };
  keepIt();
}

load();
