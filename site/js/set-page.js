// What the pages that make files of a class have in common: choices in, pycore's preview out; files made piece by piece,
// with their progress; the link. The form is the only state, the fragment its copy; names stay on the device.

import { Bridge, Stuck, Superseded } from "./bridge.js";
import { download } from "./download.js";
import { need } from "./elements.js";
import * as form from "./form.js";
import * as linkRow from "./link-row.js";
import { carryOut, Stopped } from "./long-work.js";
import * as opening from "./opening.js";
import { afterQuiet, spaced } from "./pace.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import { live, sayIn } from "./said.js";
import { markAnswer } from "./state.js";

/** @import { AnswerReply, Reply, WorkResult } from "../types/shared.js" */

export const SEEDS = 32768; // as many sets of values, and papers, as codes can tell apart
const TYPING_PAUSE = 150;
const root = document.documentElement;
const roll = document.querySelector("[data-roll]");
const working = need("[data-working]");
const said = need("[data-said]");
const waiting = need("#waiting");
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
let page = "";
/** @type {(reply: AnswerReply) => void} */
let answered = () => {};
let filled = () => {};

const base = () => root.dataset.base ?? location.href.replace(/[?#].*$/, "");
/** @param {Record<string, unknown> & { needs?: string[] }} more */
const asked = (more = {}) => ({ page, form: form.read(), ...named(), base: base(), ...more });
const named = () => (roll instanceof HTMLTextAreaElement ? { roll: textOf(roll) } : {});

// One sign more than is read: pycore refuses it in words, and nothing is cut unnoticed.
/** @param {HTMLTextAreaElement} area */
export const textOf = (area) => area.value.slice(0, Number(area.dataset.longest) + 1);

/** @param {HTMLTextAreaElement} area */
export const fileOf = (area) => ({ name: area.dataset.file ?? "", text: area.value });

/** @param {unknown} error */
export function failed(error) {
  if (error instanceof Superseded || error instanceof Stopped) return;
  markAnswer("old");
  live(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

/** @param {Omit<Reply, "blob">} reply */
export function refuse(reply) {
  form.showErrors(reply.errors ?? []);
  for (const slot of document.querySelectorAll("[data-message-for]")) {
    const name = /** @type {HTMLElement} */ (slot).dataset.messageFor ?? "";
    if (!form.control(name)) showMessage(name, reply);
  }
  // What is typed for one request alone keeps no button waiting.
  const blocks = (reply.errors ?? []).every(({ field }) => form.control(field) || field === "roll");
  waiting.textContent = blocks ? (reply.waiting ?? "") : "";
  waiting.hidden = !waiting.textContent;
  live(reply.announce ?? "");
}

// The lists are no fields of the form, so their messages are shown here.
/** @param {string} name @param {Omit<Reply, "blob">} reply */
function showMessage(name, reply) {
  const error = (reply.errors ?? []).find((one) => one.field === name);
  const slot = need(`#m-${name}`);
  slot.textContent = error?.message ?? "";
  slot.hidden = !error;
  const area = document.getElementById(name);
  if (error) area?.setAttribute("aria-invalid", "true");
  else area?.removeAttribute("aria-invalid");
  if (error) area?.closest("details")?.setAttribute("open", "");
}

let isBehind = false; // whether the form was changed since it was last asked about
let answer = Promise.resolve(); // the answer that is awaited, or the last one

export function update() {
  isBehind = false;
  return (answer = ask());
}

/** Whether what stands in the form has no answer yet. */
export const isPending = () => isBehind || root.dataset.answer === "pending";

/** Wait until what stands in the form has its answer, or is refused: what is pressed at once belongs to it. */
export async function upToDate() {
  if (isBehind) update();
  for (let awaited; awaited !== answer; ) {
    awaited = answer;
    await awaited;
  }
}

async function ask() {
  const mine = ++edition;
  markAnswer("pending");
  try {
    const reply = await bridge.ask({ do: "answer", ...asked() }, { topic: "answer" });
    if (mine !== edition) return;
    markAnswer(reply.ok ? "fresh" : "old");
    refuse(reply);
    if (!reply.ok) return;
    opening.end();
    for (const [name, html] of Object.entries(reply.regions)) regions.replace(name, html);
    keepFragment(reply.fragment);
    answered(reply);
  } catch (error) {
    failed(error);
  }
}

const soon = afterQuiet(TYPING_PAUSE, () => isBehind && update());

export function updateSoon() {
  isBehind = true;
  soon();
}

/** @param {string} fragment */
export async function open(fragment) {
  written = fragment;
  if (location.hash.length > 1) opening.wait();
  markAnswer("pending");
  const reply = await bridge.ask({ do: "open", page, fragment }, { topic: "open" });
  if (reply.form) form.fill(reply.form);
  filled();
  for (const notice of reply.notices ?? []) live(notice);
  await update();
}

/** @param {string} name */
export const say = (name) => sayIn("[data-said]", name);

/** @param {string} sentence @param {number} part */
function tell(sentence, part) {
  need("[data-work-said]").textContent = sentence;
  need("[data-share]", HTMLProgressElement).value = part;
}

/**
 * Carry out long work; gives its last reply, or null if it came to nothing.
 * @param {{ work: string, needs?: string[] } & Record<string, unknown>} more
 */
export async function work(more) {
  if (busy) return null;
  busy = true;
  stopped = false;
  root.dataset.working = more.work;
  say("");
  tell("", 0);
  working.hidden = false;
  try {
    await upToDate();
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

export const stop = () => (stopped = true);

/** @param {WorkResult} reply */
export function give(reply) {
  download(reply);
  said.textContent = reply.told;
  live(reply.told);
}

export async function share() {
  const reply = await bridge.ask({ do: "share", ...asked() });
  if (!reply.ok) {
    refuse(reply);
    return;
  }
  linkRow.hide();
  try {
    await navigator.clipboard.writeText(reply.link);
    say("copied");
  } catch {
    linkRow.show(reply.link);
  }
}

/** @param {string} code */
export const ofCode = (code) => bridge.ask({ do: "set-again", page, code });

function start() {
  root.dataset.python = "starting";
  progress.begin(() => {
    start();
    update();
  });
  bridge.start();
}

/**
 * Begin as the page with this folder: `then` hears each reply to the form, `openOwn(hash)` shows what the page opens with,
 * `opened` hears that a link has filled the form.
 * @param {string} slug @param {(reply: AnswerReply) => void} then @param {(hash: string) => void} openOwn
 * @param {() => void} [opened]
 */
export function begin(slug, then, openOwn, opened = () => {}) {
  page = slug;
  answered = then;
  filled = opened;
  document.addEventListener("submit", (event) => event.preventDefault());
  window.addEventListener("hashchange", () => {
    if (location.hash !== written) open(location.hash).catch(failed);
  });
  openOwn(location.hash);
  start();
}
