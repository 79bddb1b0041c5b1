// Python on a thread of its own. Knows nothing of the page: text and bytes in, text and bytes out.

import { countOf, fetchAhead, measuredPace } from "./ahead.js";
import { COLD, joinCold, WARM } from "./cold.js";
import * as memory from "./memory.js";
import { joinPart } from "./part.js";

/** @import { Fetched, FromWorker, Places, ToWorker } from "../types/shared.js" */

const PART_LIMIT = 10_000; // ms; without the part the answer is complete but for what the part makes
const REST_LIMIT = 60_000; // for what an answer cannot do without, on slow networks
const COLD_LIMIT = 50_000; // less than the page waits for it
const STALL = 25_000; // in which nothing comes of a module: with one more try, less than the page waits
const REPORT_PAUSE = 100; // ms: more often nobody could read, and the page would be laid out each time
const REST = "later";

/**
 * What is used of a proxy of Python's.
 * @typedef {{ get(index: number): any, destroy(): void }} Proxy
 *
 * pycore's one function: a request as text, with or without bytes; a pair of text and bytes.
 * @typedef {(text: string | undefined, blob?: unknown) => Proxy} Handle
 *
 * What is used of Pyodide; its own types do not name what makes a memory.
 * @typedef {{
 *   pyimport(name: string): { handle: Handle }, runPython(code: string): unknown, toPy(value: unknown): unknown,
 *   makeMemorySnapshot(): Uint8Array, FS: { writeFile(place: string, bytes: Uint8Array): void },
 * }} Python
 */

/** @param {FromWorker} message */
const tell = (message, moved = /** @type {Transferable[]} */ ([])) => self.postMessage(message, moved);

// Pyodide tries this to learn where it runs; here it cannot work, and the policy would call the try an offence.
self.importScripts = () => {
  throw new TypeError("a module has no importScripts");
};

// Python looks for files where there are none, and each time that costs an error: nobody reads where it arose.
const TRACE = Error.stackTraceLimit;
Error.stackTraceLimit = 0;

/** @type {Python} */
let python;
/** @type {Handle} */
let handle;
/** @type {ReturnType<typeof joinCold>} */
let data; // of the Python that was made last
/** @type {Map<string, WebAssembly.Module>} */
const modules = new Map(); // beside the hot one, compiled, once they are there
/** @type {Promise<WebAssembly.Module> | null} */
let warm = null; // on its way, or there
let lacking = false; // whether a call went without its cold function: what this Python says from then on counts for nothing
/** @type {(error: unknown) => void} */
let lose;
/** @type {Promise<never>} */
const lost = new Promise((_kept, broken) => (lose = broken)); // broken at that moment, since a start might wait for ever
lost.catch(() => {});
/** @type {Places} */
let places; // addresses of site, runtime and library, the parts to start with, the name of a kept memory
/** @type {ReturnType<typeof countOf>} */
let count; // how much is here of what is awaited

addEventListener("message", async ({ data: message }) => {
  try {
    if (message.start) await start(message.start);
    else if (message.make) await make(message.make);
    else if (message.part) await load(message.part);
    else if (message.early || (await isWhole(message))) answer(message);
  } catch (error) {
    tell({ id: message.id ?? null, failed: String(error), lacking });
  }
});

/** @returns {Promise<[{ loadPyodide: (options: object) => Promise<Python> }, { default: memory.ModuleMaker }]>} */
const scripts = () => Promise.all([import(`${places.runtime}pyodide.js`), import(`${places.runtime}pyodide.asm.js`)]);

/**
 * Load Pyodide with the site's library: from `bytes`, a kept memory, if there is one.
 * @param {Uint8Array | null} bytes
 * @param {object} more
 */
async function loadPython(bytes, more = {}) {
  const [{ loadPyodide }, { default: asm }] = await scripts();
  const maker = memory.moduleMaker(asm, bytes);
  return loadPyodide({
    indexURL: places.runtime,
    stdLibURL: `${places.library}library.zip`,
    createPyodideModule: (/** @type {memory.Settings} */ settings) => {
      data = joinCold(settings, moduleAtOnce);
      return maker(settings);
    },
    ...(bytes ? { _loadSnapshot: bytes } : {}),
    ...more,
  });
}

// A call within Python cannot wait for a promise: the request holds this thread until the file is there.
/** @param {string} name @param {number} slot */
function moduleAtOnce(name, slot) {
  const there = modules.get(name);
  if (there) return there;
  if (lacking) throw new Error("asked for in vain"); // by what reports the first time
  tell({ stage: "cold", slot });
  try {
    const request = new XMLHttpRequest();
    request.open("GET", `${places.runtime}${name}`, false);
    request.responseType = "arraybuffer";
    request.timeout = COLD_LIMIT;
    request.send();
    if (request.status !== 200) throw new Error(`${request.status}`);
    const module = new WebAssembly.Module(request.response);
    modules.set(name, module);
    return module;
  } catch (error) {
    lacking = true;
    lose(error);
    throw error;
  }
}

// However slow a network is: as long as something comes, it is waited for, and the page hears that.
/** @param {string} name @param {RequestInit} options */
async function fetchModule(name, options = {}) {
  const stalled = new AbortController();
  let timer = 0;
  const wait = () => {
    clearTimeout(timer);
    timer = self.setTimeout(() => stalled.abort(), STALL);
    tell({ stage: "warm" });
  };
  try {
    wait();
    const response = await fetch(`${places.runtime}${name}`, { ...options, signal: stalled.signal });
    if (!response.ok || !response.body) throw new Error(`${response.status}`);
    const pieces = [];
    const reader = response.body.getReader();
    for (let read = await reader.read(); !read.done; read = await reader.read()) {
      pieces.push(read.value);
      if (name === WARM) count.add(read.value.length);
      wait();
    }
    const module = await WebAssembly.compile(await new Blob(pieces).arrayBuffer());
    modules.set(name, module);
    return module;
  } finally {
    clearTimeout(timer);
  }
}

// What cannot be had is asked for once more past whatever the browser has kept of it, and anew by the next who needs it.
function fetchWarm() {
  warm ??= fetchModule(WARM).catch(() => fetchModule(WARM, { cache: "reload" }));
  warm.catch(() => (warm = null));
  return warm;
}

// Python may do more than give the page's first answer only where all of its data is in memory.
async function fill() {
  if (!data.isThere()) data.put(await fetchWarm());
}

/**
 * The same for a request, which is told of when that cannot be.
 * @param {ToWorker} request
 */
async function isWhole({ id }) {
  if (data.isThere()) return true;
  count.expectWarm();
  tell({ stage: "warm" });
  try {
    await fill();
    return true;
  } catch (error) {
    tell({ id, failed: String(error), absent: true });
    return false;
  }
}

/** @param {Places & { anew: boolean, withCold: boolean }} places */
async function start({ anew, withCold, ...given }) {
  places = given;
  // A call has found it wanting: it comes past whatever the browser has kept of it. Without it, all else is answered.
  const whole = withCold && fetchModule(COLD, { cache: "reload" }).catch(() => {});
  let next = 0;
  count = countOf(places, (/** @type {Fetched} */ fetched) => {
    if (performance.now() < next) return;
    next = performance.now() + REPORT_PAUSE;
    tell({ stage: "fetching", fetched });
  });
  if (places.asked || !isProven(places.parts)) count.expectWarm();
  const { bad, come } = fetchAhead(places, { count, anew });
  const life = holdLife();
  scripts().catch(() => {}); // while the kept memory is read
  const restored = !anew && (await Promise.race([restore(), bad, lost]));
  if (!restored) {
    if (anew) await memory.forget(places);
    come.then(fetchWarm).catch(() => {}); // after what the first answer needs
    python = await Promise.race([loadPython(null), bad, lost]);
    tell({ stage: "starting" });
    if (!isProven(places.parts)) await Promise.race([fill(), bad, lost]);
    await Promise.race([joinAll(python, places.parts), bad, lost]);
    handle = python.pyimport("pycore.api").handle;
  }
  await whole;
  if (lacking) await lost; // Python may go on where a call came to nothing.
  Error.stackTraceLimit = TRACE;
  tell({ stage: "ready", restored, filled: data.isThere(), pace: measuredPace(), life: await life });
}

// Tests show that a page's own archive is joined, and its first answer given, without the warm data.
/** @param {string[]} parts */
const isProven = (parts) => parts.length === 1 && parts[0] !== REST;

async function restore() {
  const bytes = places.memory ? await memory.kept(places) : null;
  if (!bytes) return false;
  tell({ stage: "restoring" });
  try {
    python = await loadPython(bytes);
    await joinAll(python, places.parts);
    handle = python.pyimport("pycore.api").handle;
    handle("{}").destroy();
    return true;
  } catch {
    await memory.forget(places);
    return false;
  }
}

// The page waits for this lock, and has it the moment that this worker is no more. A browser that blocks what sites
// keep refuses locks too: then the page learns of the end when a reply does not come.
async function holdLife() {
  try {
    const life = `phasor-folio ${crypto.randomUUID()}`;
    // Held before the page can ask for it: or else the page would have it at once.
    await new Promise((held, refused) => {
      navigator.locks.request(life, () => (held(null), new Promise(() => {}))).catch(refused);
    });
    return life;
  } catch {
    return "";
  }
}

/**
 * In a worker of its own that asks nothing else: make the memory of a started Python, try it once, and keep it.
 * @param {Places} given
 */
async function make(given) {
  places = { ...given, parts: [] }; // every page starts from the same memory
  count = countOf(places);
  try {
    if (await memory.isSettled(places)) return tell({ made: 0 });
    const { bad } = fetchAhead(places, { count });
    const maker = await Promise.race([loadPython(null, { _makeSnapshot: true }), bad]);
    await fill().catch((error) => {
      lacking = true;
      throw error;
    });
    maker.runPython("import pycore.api");
    const bytes = memory.packed(maker.makeMemorySnapshot());
    const tried = await loadPython(memory.unpacked(bytes));
    // Modules that no memory holds, from an archive joined to it: what a Python that was badly restored could not do.
    await joinAll(tried, [REST]);
    tried.runPython("import json, pycore.api, pycore.writers.pdf; json.loads(pycore.api.handle('{}')[0])");
    await memory.keep(places, bytes);
    tell({ made: bytes.length });
  } catch (error) {
    if (!lacking) await memory.giveUp(places); // or else a later visit makes it
    tell({ made: 0, reason: String(error) });
  }
}

// Archives beside the library are written anew in each worker, because a restored memory holds modules but no files.
/** @param {Python} into @param {string[]} parts @param {number} limit */
async function joinAll(into, parts, limit = REST_LIMIT) {
  const files = parts.map(async (part) => {
    const response = await fetch(`${places.library}${part}.zip`, { signal: AbortSignal.timeout(limit) });
    if (!response.ok) throw new Error(`${response.status}`);
    return new Uint8Array(await response.arrayBuffer());
  });
  for (const [at, bytes] of (await Promise.all(files)).entries()) {
    const place = `/lib/${parts[at]}.zip`;
    into.FS.writeFile(place, bytes);
    joinPart(into, place);
  }
}

// Answers go on meanwhile; a part that cannot be had is reported, and pycore does without, or says so.
/** @param {string} part */
async function load(part) {
  try {
    await fill();
    await joinAll(python, [part], part === REST ? REST_LIMIT : PART_LIMIT);
    tell({ part, loaded: true });
  } catch (error) {
    tell({ part, loaded: false, reason: String(error) });
  }
}

/** @param {ToWorker} request */
function answer({ id, text, blob }) {
  // JavaScript's null would not be None.
  const result = blob ? handle(text, python.toPy(blob)) : handle(text);
  const reply = result.get(0);
  const bytes = result.get(1);
  let body = null;
  if (bytes) {
    // What toJs gives is a view into Python's memory only until the proxy goes: take a copy along.
    body = bytes.toJs ? bytes.toJs().slice() : bytes;
    bytes.destroy?.();
  }
  result.destroy();
  if (lacking) throw new Error("a part of Python could not be had");
  tell({ id, text: reply, blob: body }, body ? [body.buffer] : []);
}
