// The print set-up: readings in, pycore's HTML out; keeps on this device what pycore worked out.

import { Bridge, Stuck, Superseded } from "./bridge.js";
import * as device from "./device.js";
import { download } from "./download.js";
import { around, controlOf, need } from "./elements.js";
import * as form from "./form.js";
import { afterQuiet } from "./pace.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import { live } from "./said.js";
import { markAnswer } from "./state.js";

/** @import { PrinterSetup, SetupReply } from "../types/shared.js" */

const TYPING_PAUSE = 400; // ms of quiet before a reading is judged: half a number is always far out
const root = document.documentElement;
const bridge = new Bridge((state, detail) => {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
});
let edition = 0;
/** @type {PrinterSetup | null} */
let correction = null; // what the readings in the form give, ready to be kept

/** @param {Record<string, unknown>} more */
const question = (more = {}) => ({ do: /** @type {const} */ ("setup"), form: form.read(), kept: device.printer(), ...more });

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Superseded) return;
  live(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

// An older reply, and what it would let a reader keep, hold no longer.
function outdate() {
  edition += 1;
  correction = null;
  markAnswer("pending");
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

/** @param {SetupReply} reply */
function take(reply) {
  for (const [name, html] of Object.entries(reply.regions ?? {})) regions.replace(name, html);
  form.showErrors(reply.errors ?? []);
  correction = reply.correction ?? null;
  if (reply.scaling) need("#scaling", HTMLDetailsElement).open = true;
  live(reply.announce ?? "");
  markAnswer(reply.ok ? "fresh" : "old");
}

const updateSoon = afterQuiet(TYPING_PAUSE, update);

// A corrected sheet can only be printed when there is a correction.
function offerCorrected() {
  const choice = need("[name=printed]", HTMLSelectElement);
  const none = device.printer() === null;
  need('[value="corrected"]', HTMLOptionElement, choice).disabled = none;
  if (none) choice.value = "plain";
}

/**
 * Say one of the sentences that an element carries, or nothing.
 * @param {HTMLElement} place
 * @param {string} name
 */
function say(place, name) {
  place.textContent = place.dataset[name] ?? "";
  place.hidden = !place.textContent;
}

const sayStorage = () => say(need("[data-device-said]"), device.storage());
/** @param {string} name */
const sayPrinter = (name) => say(need("[data-printer-said]"), name);

/** @type {Record<string, () => unknown>} */
const actions = {
  print: () => window.print(),
  async pdf() {
    const reply = await bridge.ask(question({ pdf: true }));
    if (!reply.ok) return;
    download(reply);
    const place = need("[data-said]");
    const saved = place.dataset.saved ?? "";
    place.textContent = saved;
    live(saved);
  },
  "keep-printer": async () => {
    if (root.dataset.answer === "pending") await update();
    if (!correction || !device.keepPrinter(correction)) return;
    // The readings belong to the sheet before this correction; the next sheet is the corrected one.
    form.fill({ upright: "", level: "" });
    offerCorrected();
    need("[name=printed]", HTMLSelectElement).value = "corrected";
    sayStorage();
    sayPrinter(device.storage() === "ok" ? "kept" : "");
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
    showScreen(device.storage() === "ok" ? "kept" : "");
    sayStorage();
  },
  "forget-screen": () => {
    device.forgetScreen();
    showScreen("none");
    sayStorage();
  },
};

const outline = need("[data-outline]", HTMLInputElement);

function showOutline() {
  need("[data-card]").style.setProperty("--px-per-mm", outline.value);
}

/** @param {string} name */
function showScreen(name) {
  const place = need("[data-screen-said]");
  place.textContent = place.dataset[name] ?? "";
  need('[data-do="forget-screen"]').hidden = !device.screen();
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
  else if (controlOf(event)?.form?.id === "problem") {
    sayPrinter("");
    outdate();
    if (event.target instanceof HTMLSelectElement) update();
    else updateSoon();
  }
});

document.addEventListener("click", async (event) => {
  const step = around(event, "[data-step]");
  if (step?.matches("button")) {
    outline.stepUp(2 * Number(step.dataset.step));
    showOutline();
  }
  const offer = around(event, "[data-set]");
  if (offer) {
    form.fill(JSON.parse(offer.dataset.set ?? "{}"));
    update();
  }
  const button = around(event, "[data-do]");
  if (button) {
    try {
      await actions[button.dataset.do ?? ""]?.();
    } catch (error) {
      failed(error);
    }
  }
});

function openTarget() {
  const target = document.getElementById(location.hash.slice(1));
  if (target instanceof HTMLDetailsElement) target.open = true;
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
