// Sends for Python before the rest of the page is there: what it needs to start is known from the page's first line.

import { scriptURL, workerAddress } from "./trusted.js";

const root = document.documentElement;
const address = (place) => new URL(place, document.baseURI).href;

/** Where Python's files are, for workers; undefined on a page without Python. */
export const places = root.dataset.runtime && {
  root: address(`${root.dataset.runtime}../../`),
  runtime: address(root.dataset.runtime),
  library: address(root.dataset.library),
  parts: root.dataset.parts.split(" "),
  memory: root.dataset.memory,
  size: Number(root.dataset.size),
};

const EVENTS = ["message", "error"];
const heard = []; // what the worker has said before anybody listened
function note(event) {
  if (event.type === "error") event.preventDefault?.(); // The page says what became of its start.
  heard.push(event);
}
let sent = places ? send(false, note) : null;

function send(anew, hear) {
  const worker = new Worker(scriptURL(workerAddress), { type: "module" });
  for (const name of EVENTS) worker.addEventListener(name, hear);
  worker.postMessage({ start: { ...places, anew } });
  return worker;
}

/**
 * A worker that starts Python, and tells `hear` its events: the one sent for as the page came, with all that it has
 * said so far, or another. `anew`: from the network, because what the browser has kept does not start.
 */
export function startedWorker(anew, hear) {
  const early = sent;
  sent = null;
  if (!early || anew) {
    early?.terminate();
    return send(anew, hear);
  }
  for (const name of EVENTS) {
    early.removeEventListener(name, note);
    early.addEventListener(name, hear);
  }
  // Before any further event, and after the caller knows the worker.
  queueMicrotask(() => heard.splice(0).forEach(hear));
  return early;
}
