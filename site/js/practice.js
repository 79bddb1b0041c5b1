// Free practice: what a learner does goes to pycore with the record of this device, and the record comes back. It is
// kept here and nowhere else; what it means, pycore alone knows.

import { fields } from "./answer-form.js";
import * as college from "./college.js";
import { Bridge, Stuck, Superseded } from "./bridge.js";
import { around, controlOf, need } from "./elements.js";
import * as form from "./form.js";
import * as guess from "./guess.js";
import * as drawings from "./draw-kept.js";
import * as kept from "./kept.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import * as store from "./practice-store.js";
import { live } from "./said.js";
import { markAnswer } from "./state.js";

/** @import { PracticeRecord, PracticeReply, Values } from "../types/shared.js" */

const root = document.documentElement;
const main = need(".practice");
const attempt = need(".try", HTMLElement, main);
const said = need("[data-said]", HTMLElement, main);
const sheet = need("[data-region=sheet]", HTMLElement, main);
const way = need("[name=way]", HTMLSelectElement, main);
const file = need("[data-file]", HTMLInputElement, main);
const answer = fields(attempt);
/** @param {string} name */
const button = (name) => need(`[data-do="${name}"]`, HTMLElement, main);

let asked = 0; // counts requests, so that an older reply is dropped
/** @type {PracticeRecord | null} */
let incoming = null; // what a file brought, until it is decided what becomes of it
let fileText = ""; // that file as it is written
/** @type {(() => void) | null} */
let bringBack = null; // what was erased, as long as that can be undone
/** @type {PracticeReply["drawing"] | null} */
let drawn = null; // where the drawing of this problem is kept, until it is done
let problem = ""; // the problem in view, as HTML
/** @type {Values | null} */
let lastGiven = null; // the last answer to it that was checked

const bridge = new Bridge((state, detail) => {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
});

/** @param {string | undefined} sentence */
function say(sentence) {
  said.textContent = sentence ?? "";
}

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Superseded) return;
  markAnswer("old");
  live(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

/**
 * One move, with the record of this device and how the learner draws.
 * @param {string} move
 */
const asking = (move) =>
  ({ do: /** @type {const} */ ("practice"), move, record: store.read(), seed: store.seed(), drawn: form.read(), college: college.chosen() });

/**
 * Ask pycore for one move; gives its reply, or nothing if another move was made meanwhile.
 * @param {string} move
 * @param {Record<string, unknown>} more
 */
async function ask(move, more = {}) {
  const mine = ++asked;
  markAnswer("pending");
  try {
    const request = { ...asking(move), ...more };
    const reply = await bridge.ask(request, { topic: "practice" });
    return mine === asked ? reply : null;
  } catch (error) {
    failed(error);
    return null;
  }
}

/** @param {PracticeReply | null} reply @param {(record: PracticeRecord) => void} [keep] */
function take(reply, keep = store.write) {
  if (!reply) return;
  delete root.dataset.opening;
  progress.expect();
  markAnswer("fresh");
  live(reply.announce ?? "");
  if (!reply.ok) {
    say(reply.said);
    return;
  }
  keep(reply.record);
  if (reply.said) say(reply.said);
  if (reply.regions.problem !== problem) {
    problem = reply.regions.problem;
    lastGiven = null;
    answer.clear();
    guess.forget();
    regions.replace("guess", "");
  }
  answer.follow(reply.asked);
  form.showEcho(reply.echo);
  form.showNames(reply.labels, {});
  form.showErrors(reply.errors ?? []);
  for (const [name, html] of Object.entries(reply.regions)) regions.replace(name, html);
  drawn = reply.state === "asking" ? reply.drawing : null;
  fillIn();
  guess.draw();
  if (!reply.regions.incoming) dropIncoming();
  way.value = reply.way;
  show(reply.state);
}

// What was read off the drawing of this problem on the screen is the answer to be checked.
function fillIn() {
  const reading = drawn && drawings.read(kept, drawn.page, drawn.problem)?.reading;
  if (reading) answer.fillIn(reading);
}

// While a problem is open it can be tried; once it is done, there is only the next.
/** @param {string} state */
function show(state) {
  const done = state !== "asking";
  main.dataset.state = done ? "done" : "asking";
  button("show").hidden = done;
  button("next").hidden = !done;
}

/** The learner draws at another scale, or on other paper. */
function drawOtherwise() {
  form.refresh();
  return ask("open").then(take);
}

function dropIncoming() {
  incoming = null;
  regions.replace("incoming", "");
}

async function check() {
  const of = answer.version();
  const given = answer.read();
  const reply = await ask("mark", { given });
  if (!reply || of !== answer.version()) {
    markAnswer("fresh");
    return;
  }
  if (!reply.ok) {
    markAnswer("fresh");
    answer.take(reply);
    live(reply.announce ?? "");
    return;
  }
  take(reply);
  lastGiven = given;
  answer.take({ ...reply, regions: {} });
  if (reply.state === "asking") return;
  button("next").focus({ preventScroll: true });
  kept.stay();
}

// A guess changes nothing: no record, no level.
/** @param {[number, number]} at */
async function sayGuess(at) {
  const request = { ...asking("guess"), at };
  try {
    const reply = await bridge.ask(request, { topic: "guess" });
    if (!reply.ok) return;
    regions.replace("guess", reply.regions.guess);
    live(reply.announce ?? "");
  } catch (error) {
    if (!(error instanceof Superseded || error instanceof Stuck)) reportError(error);
  }
}

function save() {
  kept.saveFile({ name: store.FILE_NAME, text: JSON.stringify(store.read(), null, 1) });
  say(said.dataset.exported);
}

async function load() {
  const chosen = file.files?.[0];
  file.value = "";
  if (!chosen) return;
  if (chosen.size > Number(file.dataset.longest)) {
    say(file.dataset.tooLong);
    return;
  }
  say("");
  fileText = await chosen.text();
  const reply = await ask("read", { text: fileText, before: store.tookBefore(fileText) });
  if (reply?.incoming) incoming = reply.incoming;
  take(reply);
  main.querySelector('[data-do="merge"]')?.focus();
}

async function erase() {
  bringBack = store.forget();
  take(await ask("erase"));
  button("undo").hidden = false;
}

function undo() {
  bringBack?.();
  bringBack = null;
  button("undo").hidden = true;
  say("");
  return ask("open").then(take);
}

/** @param {PracticeReply | null} reply */
const goOn = (reply) => {
  take(reply);
  need("#answer").focus({ preventScroll: true });
  need("#answer").scrollIntoView({ block: "nearest" });
};

/** @type {Record<string, () => unknown>} */
const doings = {
  show: async () => {
    answer.forget();
    main.toggleAttribute("data-shown", true);
    take(await ask("show", { given: lastGiven }));
    button("next").focus({ preventScroll: true });
  },
  next: async () => {
    main.removeAttribute("data-shown");
    form.fill({ scale: "" });
    goOn(await ask("next"));
  },
  another: async () => {
    main.removeAttribute("data-shown");
    goOn(await ask("another"));
  },
  export: save,
  erase,
  undo,
  merge: async () => {
    const reply = await ask("merge", { incoming });
    if (reply?.ok) store.took(fileText);
    take(reply);
  },
  replace: async () => take(await ask("replace", { incoming })),
  leave: dropIncoming,
};

document.addEventListener("click", (event) => {
  const pressed = around(event, "[data-do]");
  if (pressed) doings[pressed.dataset.do ?? ""]();
  if (around(event, '[data-action="check"]')) check();
  const offer = around(event, "[data-set]");
  if (!offer) return;
  form.fill(JSON.parse(offer.dataset.set ?? "{}"));
  drawOtherwise();
});
document.addEventListener("change", (event) => {
  if (controlOf(event)?.form?.id === "problem") drawOtherwise();
});
guess.join(sheet, sayGuess);
document.addEventListener("submit", (event) => event.preventDefault());
way.addEventListener("change", async () => {
  form.fill({ scale: "" });
  take(await ask("way", { way: way.value }));
});
file.addEventListener("change", load);
addEventListener("pageshow", ({ persisted }) => persisted && fillIn());
kept.follow("drawings", fillIn);
// Another window of this site may have gone on with the same record, or with another learner's.
store.follow(() => {
  showLearner();
  ask("open").then((reply) => take(reply, store.goOn));
});

function showLearner() {
  const line = need("[data-learner]", HTMLElement, main);
  line.hidden = !kept.learner();
  line.textContent = (line.dataset.learner ?? "").replace("{who}", kept.learner());
}

function begin() {
  root.dataset.python = "starting";
  progress.begin(() => {
    begin();
    ask("open").then(take);
  });
  bridge.start();
}

showLearner();
progress.expect("own");
begin();
ask("open").then(take);
