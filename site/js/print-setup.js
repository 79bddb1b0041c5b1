// The print set-up: readings in, pycore's HTML out; keeps on this device what pycore worked out.

import { Bridge, Stuck, Superseded } from "./bridge.js";
import * as device from "./device.js";
import { download } from "./download.js";
import * as form from "./form.js";
import { afterQuiet } from "./pace.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";

const TYPING_PAUSE = 400; // ms of quiet before a reading is judged: half a number is always far out
const root = document.documentElement;
const live = afterQuiet(700, (sentence) => {
  document.querySelector("[data-live]").textContent = sentence;
});
const bridge = new Bridge((state, detail) => {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
});
let edition = 0;
let correction = null; // what the readings in the form give, ready to be kept

const question = (more = {}) => ({ do: "setup", form: form.read(), kept: device.printer(), ...more });

function failed(error) {
  if (error instanceof Superseded) return;
  live(progress.stuck());
  if (!(error instanceof Stuck)) reportError(error);
}

// An older reply, and what it would let a reader keep, hold no longer.
function outdate() {
  edition += 1;
  correction = null;
  root.dataset.answer = "pending";
}

/** Bring sheet, result and what is kept up to date with the form. */
async function update() {
  outdate();
  const mine = edition;
  offerCorrected();
  try {
    const reply = await bridge.ask(question(), { topic: "setup" });
    if (mine === edition) take(reply);
  } catch (error) {
    failed(error);
  }
}

function take(reply) {
  for (const [name, html] of Object.entries(reply.regions ?? {})) regions.replace(name, html);
  form.showErrors(reply.errors ?? []);
  correction = reply.correction ?? null;
  if (reply.scaling) document.getElementById("scaling").open = true;
  live(reply.announce ?? "");
  root.dataset.answer = reply.ok ? "fresh" : "old";
}

const updateSoon = afterQuiet(TYPING_PAUSE, update);

// A corrected sheet can only be printed when there is a correction.
function offerCorrected() {
  const choice = form.control("printed");
  const none = device.printer() === null;
  choice.querySelector('[value="corrected"]').disabled = none;
  if (none) choice.value = "plain";
}

/** Say one of the sentences that an element carries, or nothing. */
function say(place, name) {
  place.textContent = place.dataset[name] ?? "";
  place.hidden = !place.textContent;
}

const sayStorage = () => say(document.querySelector("[data-device-said]"), device.storage());
const sayPrinter = (name) => say(document.querySelector("[data-printer-said]"), name);

const actions = {
  print: () => window.print(),
  async pdf() {
    const reply = await bridge.ask(question({ pdf: true }));
    if (!reply.ok) return;
    download(reply);
    const place = document.querySelector("[data-said]");
    place.textContent = place.dataset.saved;
    live(place.dataset.saved);
  },
  "keep-printer": async () => {
    if (root.dataset.answer === "pending") await update();
    if (!correction || !device.keepPrinter(correction)) return;
    // The readings belong to the sheet before this correction; the next sheet is the corrected one.
    form.fill({ upright: "", level: "" });
    offerCorrected();
    form.control("printed").value = "corrected";
    sayStorage();
    sayPrinter("kept");
    update();
  },
  "forget-printer": () => {
    device.forgetPrinter();
    sayStorage();
    sayPrinter("");
    update();
  },
  "keep-screen": () => {
    device.keepScreen(Number(outline.value));
    showScreen("kept");
    sayStorage();
  },
  "forget-screen": () => {
    device.forgetScreen();
    showScreen("none");
    sayStorage();
  },
};

const outline = document.querySelector("[data-outline]");

function showOutline() {
  document.querySelector("[data-card]").style.setProperty("--px-per-mm", outline.value);
}

function showScreen(name) {
  const place = document.querySelector("[data-screen-said]");
  place.textContent = place.dataset[name];
  document.querySelector('[data-do="forget-screen"]').hidden = !device.screen();
}

function startScreen() {
  const screen = device.screen();
  // A CSS pixel is about 1/96 inch on a desk and about 1/160 inch on a phone.
  outline.value = String(screen ? screen.pxPerMm : matchMedia("(pointer: coarse)").matches ? 6.3 : 96 / 25.4);
  showOutline();
  showScreen(screen ? "before" : "none");
}

document.addEventListener("input", (event) => {
  if (event.target === outline) showOutline();
  else if (event.target.form?.id === "problem") {
    sayPrinter("");
    outdate();
    if (event.target.matches("select")) update();
    else updateSoon();
  }
});

document.addEventListener("click", async (event) => {
  const step = event.target.closest("[data-step]");
  if (step?.matches("button")) {
    outline.stepUp(2 * Number(step.dataset.step));
    showOutline();
  }
  const offer = event.target.closest("[data-set]");
  if (offer) {
    form.fill(JSON.parse(offer.dataset.set));
    update();
  }
  const button = event.target.closest("[data-do]");
  if (button) {
    try {
      await actions[button.dataset.do]?.();
    } catch (error) {
      failed(error);
    }
  }
});

function openTarget() {
  const target = document.getElementById(location.hash.slice(1));
  if (target?.matches("details")) target.open = true;
}

function begin() {
  root.dataset.python = "starting";
  progress.begin(begin);
  bridge.start();
}

document.addEventListener("submit", (event) => event.preventDefault());
window.addEventListener("hashchange", openTarget);
window.addEventListener("storage", () => {
  device.load();
  startScreen();
  update();
});
openTarget();
startScreen();
sayStorage();
begin();
update();
