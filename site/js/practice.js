// Free practice: what a learner does goes to pycore with the record of this device, and the record comes back. It is
// kept here and nowhere else; what it means, pycore alone knows.

import { fields } from "./answer-form.js";
import { Bridge, Stuck, Superseded } from "./bridge.js";
import { afterQuiet } from "./pace.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import * as store from "./practice-store.js";

const root = document.documentElement;
const main = document.querySelector(".practice");
const attempt = main.querySelector(".try");
const said = main.querySelector("[data-said]");
const way = main.querySelector("[name=way]");
const file = main.querySelector("[data-file]");
const answer = fields(attempt);
const button = (name) => main.querySelector(`[data-do="${name}"]`);
const live = afterQuiet(700, (sentence) => {
  document.querySelector("[data-live]").textContent = sentence;
});

let asked = 0; // counts requests, so that an older reply is dropped
let incoming = null; // what a file brought, until it is decided what becomes of it
let erased = null; // the record before it was erased, as long as that can be undone
let problem = ""; // the problem in view, as HTML

const bridge = new Bridge((state, detail) => {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
});

function say(sentence) {
  said.textContent = sentence ?? "";
}

function failed(error) {
  if (error instanceof Superseded) return;
  root.dataset.answer = "old";
  live(progress.stuck());
  if (!(error instanceof Stuck)) reportError(error);
}

/** Ask pycore for one move; gives its reply, or nothing if another move was made meanwhile. */
async function ask(move, more = {}) {
  const mine = ++asked;
  root.dataset.answer = "pending";
  try {
    const request = { do: "practice", move, record: store.read(), seed: store.seed(), ...more };
    const reply = await bridge.ask(request, { topic: "practice" });
    return mine === asked ? reply : null;
  } catch (error) {
    failed(error);
    return null;
  }
}

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
  }
  answer.follow(reply.asked);
  for (const [name, html] of Object.entries(reply.regions)) regions.replace(name, html);
  if (!reply.regions.incoming) dropIncoming();
  way.value = reply.way;
  show(reply.state);
}

// While a problem is open it can be tried; once it is done, there is only the next.
function show(state) {
  const done = state !== "asking";
  attempt.dataset.state = done ? "done" : "asking";
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

function save() {
  const blob = new Blob([JSON.stringify(store.read(), null, 1)], { type: "application/json" });
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = said.dataset.fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  say(said.dataset.exported);
}

async function load() {
  const [chosen] = file.files;
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

const goOn = (reply) => {
  take(reply);
  document.getElementById("answer").focus({ preventScroll: true });
  document.getElementById("answer").scrollIntoView({ block: "nearest" });
};

const doings = {
  show: async () => {
    answer.forget();
    take(await ask("show"));
  },
  next: async () => goOn(await ask("next")),
  export: save,
  erase,
  undo,
  merge: async () => take(await ask("merge", { incoming })),
  replace: async () => take(await ask("replace", { incoming })),
  leave: dropIncoming,
};

document.addEventListener("click", (event) => {
  const pressed = event.target.closest("[data-do]");
  if (pressed) doings[pressed.dataset.do]();
  if (event.target.closest('[data-action="check"]')) check();
});
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
