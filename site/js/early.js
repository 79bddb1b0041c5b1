// Sends for Python before the rest of the page is there: what it needs to start is known from the page's first line.

import { scriptURL, workerAddress } from "./trusted.js";

/** @import { Places } from "../types/shared.js" */

const root = document.documentElement;

/** The archive with all that no page's first answer needs. */
export const REST = "later";
const CODED = "coded"; // the one with what the problem of a code needs of it
/** @param {string} place */
const address = (place) => new URL(place, document.baseURI).href;

/**
 * Where Python's files are, for workers; null on a page without Python.
 * @type {Places | null}
 */
export const places = placesOf(root.dataset);

/** @param {DOMStringMap} data @returns {Places | null} */
function placesOf({ runtime = "", library = "", parts = "", memory = "", size = "" }) {
  if (!runtime) return null;
  const [wasm, archives, coded, warm] = size.split(" ").map(Number);
  const listed = parts.split(" ");
  // It comes at once with what the page needs, not after all that nobody waits for.
  const more = isCoded() && !listed.includes(REST) ? [CODED] : [];
  return {
    root: address(`${runtime}../../`),
    runtime: address(runtime),
    library: address(library),
    parts: [...listed, ...more],
    memory,
    size: wasm,
    whole: wasm + archives + (more.length ? coded : 0),
    warm,
    asked: root.dataset.python === "idle" || location.hash.includes("="),
  };
}

/** Whether the address names the code of a problem. */
function isCoded() {
  return Boolean(new URLSearchParams(location.hash.slice(1)).get("code")?.trim());
}

const EVENTS = ["message", "error"];
/** @type {Event[]} */
const heard = []; // what the worker has said before anybody listened
/** @param {Event} event */
function note(event) {
  if (event.type === "error") event.preventDefault?.(); // The page says what became of its start.
  heard.push(event);
}
// On a page that is idle, nobody may need Python: it is sent for with the first value that is typed.
/** @type {Worker | null} */
let sent = places && root.dataset.python !== "idle" && root.dataset.script !== "stopped" ? send({}, note) : null;

/** @param {{ anew?: boolean, withCold?: boolean }} how @param {(event: Event) => void} hear */
function send({ anew = false, withCold = false }, hear) {
  const worker = new Worker(scriptURL(workerAddress), { type: "module" });
  for (const name of EVENTS) worker.addEventListener(name, hear);
  worker.postMessage({ start: { ...places, anew, withCold } });
  return worker;
}

/**
 * A worker that starts Python, and tells `hear` its events: the one sent for as the page came, with all that it has
 * said so far, or another. `anew`: from the network, because what the browser has kept does not start. `withCold`: it
 * begins with Python's cold module, because one before it has missed that.
 * @param {{ anew?: boolean, withCold?: boolean }} how
 * @param {(event: Event) => void} hear
 */
export function startedWorker(how, hear) {
  const early = sent;
  sent = null;
  if (!early || how.anew || how.withCold) {
    early?.terminate();
    return send(how, hear);
  }
  for (const name of EVENTS) {
    early.removeEventListener(name, note);
    early.addEventListener(name, hear);
  }
  // Before any further event, and after the caller knows the worker.
  queueMicrotask(() => heard.splice(0).forEach(hear));
  return early;
}
