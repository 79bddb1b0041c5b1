// Free practice: what a learner does goes to pycore with the record of this device, and the record comes back. It is
// kept here and nowhere else; what it means, pycore alone knows.

import { fields } from "./answer-form.js";
import { Bridge, Stuck, Superseded } from "./bridge.js";
import { around, need } from "./elements.js";
import * as guess from "./guess.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import * as store from "./practice-store.js";
import { live } from "./said.js";

/** @import { PracticeRecord, PracticeReply } from "../types/shared.js" */

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
/** @type {PracticeRecord | null} */
let erased = null; // the record before it was erased, as long as that can be undone
let problem = ""; // the problem in view, as HTML

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
  root.dataset.answer = "old";
  live(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

/**
 * Ask pycore for one move; gives its reply, or nothing if another move was made meanwhile.
 * @param {string} move
 * @param {Record<string, unknown>} more
 */
async function ask(move, more = {}) {
  const mine = ++asked;
  root.dataset.answer = "pending";
  try {
    const request = { do: /** @type {const} */ ("practice"), move, record: store.read(), seed: store.seed(), ...more };
    const reply = await bridge.ask(request, { topic: "practice" });
    return mine === asked ? reply : null;
  } catch (error) {
    failed(error);
    return null;
  }
}

/** @param {PracticeReply | null} reply */
function take(reply) {
  if (!reply) return;
  root.dataset.answer = "fresh";
  live(reply.announce ?? "");
  if (!reply.ok) {
    say(reply.said);
    return;
  }
  store.write(reply.record);
  if (!store.works()) say(said.dataset.denied);
  if (reply.said) say(reply.said);
  if (reply.regions.problem !== problem) {
    problem = reply.regions.problem;
    answer.clear();
    guess.forget();
    regions.replace("guess", "");
  }
  answer.follow(reply.asked);
  for (const [name, html] of Object.entries(reply.regions)) regions.replace(name, html);
  guess.draw();
  if (!reply.regions.incoming) dropIncoming();
  way.value = reply.way;
  show(reply.state);
}

// While a problem is open it can be tried; once it is done, there is only the next.
/** @param {string} state */
function show(state) {
  const done = state !== "asking";
  main.dataset.state = done ? "done" : "asking";
  button("show").hidden = done;
  button("next").hidden = !done;
}

function dropIncoming() {
  incoming = null;
  regions.replace("incoming", "");
}

async function check() {
  const of = answer.version();
  const reply = await ask("mark", { given: answer.read() });
  if (!reply || of !== answer.version()) {
    root.dataset.answer = "fresh";
    return;
  }
  if (!reply.ok) {
    root.dataset.answer = "fresh";
    answer.take(reply);
    live(reply.announce ?? "");
    return;
  }
  take(reply);
  answer.take({ ...reply, regions: {} });
  if (reply.state !== "asking") button("next").focus({ preventScroll: true });
}

// A guess changes nothing: no record, no level.
/** @param {[number, number]} at */
async function sayGuess(at) {
  const request = { do: /** @type {const} */ ("practice"), move: "guess", record: store.read(), seed: store.seed(), at };
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
  const blob = new Blob([JSON.stringify(store.read(), null, 1)], { type: "application/json" });
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = said.dataset.fileName ?? "";
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
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
  const reply = await ask("read", { text: await chosen.text() });
  if (reply?.incoming) incoming = reply.incoming;
  take(reply);
  main.querySelector('[data-do="merge"]')?.focus();
}

async function erase() {
  erased = store.read();
  store.forget();
  take(await ask("erase"));
  button("undo").hidden = false;
}

function undo() {
  if (erased) store.write(erased);
  erased = null;
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
    take(await ask("show"));
    button("next").focus({ preventScroll: true });
  },
  next: async () => {
    main.removeAttribute("data-shown");
    goOn(await ask("next"));
  },
  export: save,
  erase,
  undo,
  merge: async () => take(await ask("merge", { incoming })),
  replace: async () => take(await ask("replace", { incoming })),
  leave: dropIncoming,
};

document.addEventListener("click", (event) => {
  const pressed = around(event, "[data-do]");
  if (pressed) doings[pressed.dataset.do ?? ""]();
  if (around(event, '[data-action="check"]')) check();
});
guess.join(sheet, sayGuess);
document.addEventListener("submit", (event) => event.preventDefault());
way.addEventListener("change", async () => take(await ask("way", { way: way.value })));
file.addEventListener("change", load);
// Another window of this site may have gone on with the same record.
addEventListener("storage", (event) => {
  if (store.holds(event.key)) ask("open").then(take);
});

function begin() {
  root.dataset.python = "starting";
  progress.begin(() => {
    begin();
    ask("open").then(take);
  });
  bridge.start();
}

begin();
ask("open").then(take);
