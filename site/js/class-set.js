// The page of class sets: choices in, pycore's preview out; the set itself is made piece by piece. The form is the only
// state, the fragment its copy; names and answers stay on the device.

import { Bridge, Stuck, Superseded } from "./bridge.js";
import * as device from "./device.js";
import { download } from "./download.js";
import { around, controlOf, need } from "./elements.js";
import * as form from "./form.js";
import { keep, kept } from "./kept-class.js";
import { carryOut, Stopped } from "./long-work.js";
import { afterQuiet, spaced } from "./pace.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import { live } from "./said.js";

/** @import { Reply, WorkReply } from "../types/shared.js" */

const page = "class-set";
const SEEDS = 32768; // as many sets of values as codes can tell apart
const TYPING_PAUSE = 150;
const root = document.documentElement;
const roll = need("[data-roll]", HTMLTextAreaElement);
const results = need("[data-results]", HTMLTextAreaElement);
const working = need("[data-working]");
const said = need("[data-said]");
const waiting = need("#waiting");
const linkRow = need("[data-link]");
const keepFragment = spaced(334, (/** @type {string} */ fragment) => {
  written = `#${fragment}`;
  history.replaceState(null, "", written);
});
const bridge = new Bridge((state, detail) => {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
});
let written = location.hash;
let edition = 0;
let stopped = false;
let busy = false;
/** @type {WorkReply | null} */
let table = null; // the last marking as a file

const base = () => root.dataset.base ?? location.href.replace(/[?#].*$/, "");
/** @param {Record<string, unknown> & { needs?: string[] }} more */
const asked = (more = {}) => ({ page, form: form.read(), roll: roll.value, base: base(), ...more });

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Superseded || error instanceof Stopped) return;
  root.dataset.answer = "old";
  live(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

/** @param {Reply} reply */
function refuse(reply) {
  form.showErrors(reply.errors ?? []);
  showMessage("roll", reply);
  showMessage("results", reply);
  waiting.textContent = reply.waiting ?? "";
  waiting.hidden = !waiting.textContent;
  live(reply.announce ?? "");
}

// The two lists are no fields of the form, so their messages are shown here.
/** @param {string} name @param {Reply} reply */
function showMessage(name, reply) {
  const error = (reply.errors ?? []).find((one) => one.field === name);
  const slot = need(`#m-${name}`);
  slot.textContent = error?.message ?? "";
  slot.hidden = !error;
  const area = need(`#${name}`);
  area.toggleAttribute("aria-invalid", Boolean(error));
  if (error) area.closest("details")?.setAttribute("open", "");
}

async function update() {
  const mine = ++edition;
  root.dataset.answer = "pending";
  try {
    const reply = await bridge.ask({ do: "answer", ...asked() }, { topic: "answer" });
    if (mine !== edition) return;
    root.dataset.answer = reply.ok ? "fresh" : "old";
    refuse(reply);
    if (!reply.ok) return;
    for (const [name, html] of Object.entries(reply.regions)) regions.replace(name, html);
    keepFragment(reply.fragment);
    keep("set", reply.fragment);
  } catch (error) {
    failed(error);
  }
}

const updateSoon = afterQuiet(TYPING_PAUSE, update);

/** @param {string} fragment */
async function open(fragment) {
  written = fragment;
  root.dataset.answer = "pending";
  const reply = await bridge.ask({ do: "open", page, fragment }, { topic: "open" });
  if (reply.form) form.fill(reply.form);
  for (const notice of reply.notices ?? []) live(notice);
  await update();
}

/** @param {string} name */
function say(name) {
  said.textContent = said.dataset[name] ?? "";
  if (said.textContent) live(said.textContent);
}

/** @param {string} sentence @param {number} part */
function tell(sentence, part) {
  need("[data-work-said]").textContent = sentence;
  need("[data-share]", HTMLProgressElement).value = part;
}

/**
 * Carry out long work; gives its last reply, or null if it came to nothing.
 * @param {{ work: string, needs?: string[] } & Record<string, unknown>} more
 */
async function work(more) {
  if (busy) return null;
  busy = true;
  stopped = false;
  root.dataset.working = more.work;
  say("");
  tell("", 0);
  working.hidden = false;
  try {
    const reply = await carryOut(bridge, { do: "begin", ...asked(more) }, tell, () => stopped);
    refuse(reply);
    return reply.ok ? reply : null;
  } catch (error) {
    if (error instanceof Stopped) say("stopped");
    else failed(error);
    return null;
  } finally {
    busy = false;
    working.hidden = true;
    delete root.dataset.working;
  }
}

async function make() {
  const correction = device.factors("a4l");
  const reply = await work({ work: "pdf", correction, needs: form.read().opens === "qr" ? ["codes"] : [] });
  if (!reply) return;
  download(reply);
  said.textContent = reply.told;
  live(reply.told);
}

async function makeKey() {
  const reply = await work({ work: "key" });
  if (!reply) return;
  download(reply);
  say("madeKey");
}

async function mark() {
  const marked = results.value;
  const reply = await work({ work: "marks", results: marked });
  if (!reply) return;
  if (results.value !== marked) {
    if (results.value) marksSaid("old");
    return;
  }
  table = reply;
  marksSaid();
  regions.replace("marks", reply.regions.marks);
  need('[data-do="save-marks"]').hidden = false;
  live(reply.announce);
}

async function share() {
  const reply = await bridge.ask({ do: "share", ...asked() });
  if (!reply.ok) return;
  linkRow.hidden = true;
  try {
    await navigator.clipboard.writeText(reply.link);
    say("copied");
  } catch {
    const field = need("input", HTMLInputElement, linkRow);
    linkRow.hidden = false;
    field.value = reply.link;
    field.select();
  }
}

async function openCode() {
  const reply = await bridge.ask({ do: "set-again", page, code: form.read().code });
  refuse(reply);
  if (!reply.ok) return;
  form.fill(reply.form);
  await update();
}

function newSeed() {
  const [drawn] = crypto.getRandomValues(new Uint32Array(1));
  // A new set has the values of the newest generator, whatever set was open.
  const generators = need('select[name="generator"]', HTMLSelectElement).options;
  const newest = [...generators].find((option) => option.defaultSelected);
  form.fill({ seed: String(drawn % SEEDS), generator: newest?.value ?? "" });
}

/** @param {string} name */
function marksSaid(name = "") {
  const place = need("[data-marks-said]");
  place.textContent = place.dataset[name] ?? "";
}

/** @type {Record<string, () => unknown>} */
const actions = {
  make,
  "make-key": makeKey,
  share,
  mark,
  stop: () => (stopped = true),
  "open-code": openCode,
  another: () => (newSeed(), update()),
  "save-marks": () => {
    if (!table) return;
    download(table);
    marksSaid("made");
  },
  "erase-roll": () => {
    roll.value = "";
    const place = need("[data-roll-said]");
    place.textContent = place.dataset[keep("roll", "") ? "erased" : "denied"] ?? "";
    return update();
  },
  "erase-results": () => {
    if (root.dataset.working === "marks") stopped = true;
    results.value = "";
    keep("results", "");
    regions.replace("marks", "");
    dropTable();
    marksSaid("erased");
  },
};

document.addEventListener("click", async (event) => {
  const button = around(event, "[data-do]");
  try {
    await actions[button?.dataset.do ?? ""]?.();
  } catch (error) {
    failed(error);
  }
});

/** No file is given of what was marked. */
function dropTable() {
  table = null;
  need('[data-do="save-marks"]').hidden = true;
}

/** What was marked is no longer what stands there: said, and no file of it is given. */
function marksOld() {
  if (!table) return;
  dropTable();
  marksSaid("old");
}

document.addEventListener("input", (event) => {
  if (event.target === results) {
    keep("results", results.value);
    marksOld();
  }
  if (event.target === roll) {
    const place = need("[data-roll-said]");
    place.textContent = keep("roll", roll.value) ? "" : (place.dataset.denied ?? "");
  }
  const control = controlOf(event);
  if (event.target === roll || (control?.form?.id === "problem" && control.name !== "code")) {
    say("");
    updateSoon();
  }
});

function begin() {
  root.dataset.python = "starting";
  progress.begin(() => {
    begin();
    update();
  });
  bridge.start();
}

document.addEventListener("submit", (event) => event.preventDefault());
window.addEventListener("hashchange", () => {
  if (location.hash !== written) open(location.hash).catch(failed);
});
roll.value = kept("roll");
results.value = kept("results");
if (roll.value) roll.closest("details")?.setAttribute("open", "");
begin();
const shown = location.hash.length > 1 ? location.hash : `#${kept("set")}`;
if (shown.length > 1) {
  open(shown).catch(failed);
} else {
  // Every lecturer has a set of values of their own, and has it again: answers to it may come days later.
  newSeed();
  update();
}
