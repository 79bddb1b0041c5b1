// The page of class sets: choices in, pycore's preview out; the set itself is made piece by piece. The form is the only
// state, the fragment its copy; names and answers stay on the device.

import { Bridge, Stuck, Superseded } from "./bridge.js";
import * as device from "./device.js";
import { download } from "./download.js";
import * as form from "./form.js";
import { keep, kept } from "./kept-class.js";
import { carryOut, Stopped } from "./long-work.js";
import { afterQuiet, spaced } from "./pace.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";

const page = "class-set";
const SEEDS = 32768; // as many sets of values as codes can tell apart
const TYPING_PAUSE = 150;
const root = document.documentElement;
const roll = document.querySelector("[data-roll]");
const results = document.querySelector("[data-results]");
const working = document.querySelector("[data-working]");
const said = document.querySelector("[data-said]");
const waiting = document.getElementById("waiting");
const linkRow = document.querySelector("[data-link]");
const live = afterQuiet(700, (sentence) => {
  document.querySelector("[data-live]").textContent = sentence;
});
const keepFragment = spaced(334, (fragment) => {
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
let table = null; // the last marking as a file

const base = () => root.dataset.base ?? location.href.replace(/[?#].*$/, "");
const asked = (more = {}) => ({ page, form: form.read(), roll: roll.value, base: base(), ...more });

function failed(error) {
  if (error instanceof Superseded || error instanceof Stopped) return;
  root.dataset.answer = "old";
  live(progress.stuck());
  if (!(error instanceof Stuck)) reportError(error);
}

function refuse(reply) {
  form.showErrors(reply.errors ?? []);
  showMessage("roll", reply);
  showMessage("results", reply);
  waiting.textContent = reply.waiting ?? "";
  waiting.hidden = !waiting.textContent;
  live(reply.announce ?? "");
}

// The two lists are no fields of the form, so their messages are shown here.
function showMessage(name, reply) {
  const error = (reply.errors ?? []).find((one) => one.field === name);
  const slot = document.getElementById(`m-${name}`);
  slot.textContent = error?.message ?? "";
  slot.hidden = !error;
  const area = document.getElementById(name);
  area.toggleAttribute("aria-invalid", Boolean(error));
  if (error) area.closest("details")?.setAttribute("open", "");
}

async function update() {
  const mine = ++edition;
  root.dataset.answer = "pending";
  try {
    const reply = await bridge.ask(asked({ do: "answer" }), { topic: "answer" });
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

async function open(fragment) {
  written = fragment;
  root.dataset.answer = "pending";
  const reply = await bridge.ask({ do: "open", page, fragment }, { topic: "open" });
  if (reply.form) form.fill(reply.form);
  for (const notice of reply.notices ?? []) live(notice);
  await update();
}

function say(name) {
  said.textContent = said.dataset[name] ?? "";
  if (said.textContent) live(said.textContent);
}

function tell(sentence, share) {
  document.querySelector("[data-work-said]").textContent = sentence;
  document.querySelector("[data-share]").value = share;
}

/** Carry out long work; gives its last reply, or null if it came to nothing. */
async function work(more) {
  if (busy) return null;
  busy = true;
  stopped = false;
  root.dataset.working = more.work;
  say("");
  tell("", 0);
  working.hidden = false;
  try {
    const reply = await carryOut(bridge, asked({ do: "begin", ...more }), tell, () => stopped);
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
  document.querySelector('[data-do="save-marks"]').hidden = false;
  live(reply.announce);
}

async function share() {
  const reply = await bridge.ask(asked({ do: "share" }));
  if (!reply.ok) return;
  linkRow.hidden = true;
  try {
    await navigator.clipboard.writeText(reply.link);
    say("copied");
  } catch {
    const field = linkRow.querySelector("input");
    linkRow.hidden = false;
    field.value = reply.link;
    field.select();
  }
}

async function openCode() {
  const reply = await bridge.ask({ do: "set-again", page, code: form.control("code").value });
  refuse(reply);
  if (!reply.ok) return;
  form.fill(reply.form);
  await update();
}

function newSeed() {
  const [drawn] = crypto.getRandomValues(new Uint32Array(1));
  form.fill({ seed: String(drawn % SEEDS) });
}

function marksSaid(name) {
  const place = document.querySelector("[data-marks-said]");
  place.textContent = place.dataset[name] ?? "";
}

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
    const place = document.querySelector("[data-roll-said]");
    place.textContent = place.dataset[keep("roll", "") ? "erased" : "denied"];
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
  const button = event.target.closest("[data-do]");
  try {
    await actions[button?.dataset.do]?.();
  } catch (error) {
    failed(error);
  }
});

/** No file is given of what was marked. */
function dropTable() {
  table = null;
  document.querySelector('[data-do="save-marks"]').hidden = true;
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
    const place = document.querySelector("[data-roll-said]");
    place.textContent = keep("roll", roll.value) ? "" : place.dataset.denied;
  }
  if (event.target === roll || (event.target.form?.id === "problem" && event.target.name !== "code")) {
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
if (roll.value) roll.closest("details").open = true;
begin();
const shown = location.hash.length > 1 ? location.hash : `#${kept("set")}`;
if (shown.length > 1) {
  open(shown).catch(failed);
} else {
  // Every lecturer has a set of values of their own, and has it again: answers to it may come days later.
  newSeed();
  update();
}
