// The page of class sets: what is its own beside set-page.js. Names and answers stay on the device.

import * as college from "./college.js";
import * as device from "./device.js";
import { download } from "./download.js";
import { around, controlOf, need } from "./elements.js";
import * as form from "./form.js";
import { follow, learner, saveFile } from "./kept.js";
import { keep, kept } from "./kept-class.js";
import * as regions from "./regions.js";
import { live, sayIn } from "./said.js";
import * as setPage from "./set-page.js";
import { failed, fileOf, give, open, refuse, say, update, work } from "./set-page.js";
import * as toRegister from "./to-register.js";

/** @import { WorkResult } from "../types/shared.js" */

const root = document.documentElement;
const roll = need("[data-roll]", HTMLTextAreaElement);
const results = need("[data-results]", HTMLTextAreaElement);
/** @type {WorkResult | null} */
let table = null; // the last marking as a file

async function make() {
  const correction = device.factors("a4l");
  const reply = await work({ work: "pdf", correction, needs: form.read().opens === "qr" ? ["codes"] : [] });
  if (reply) give(reply);
}

async function makeKey() {
  const reply = await work({ work: "key" });
  if (reply) give(reply);
}

async function mark() {
  const marked = results.value;
  const reply = await work({ work: "marks", results: setPage.textOf(results) });
  if (!reply) return;
  if (results.value !== marked) {
    if (results.value) marksSaid("old");
    return;
  }
  setTable(reply);
  marksSaid();
  regions.replace("marks", reply.regions.marks);
  live(reply.announce);
}

/** Put the code that is meant in the place of a mistyped one, and mark again. @param {HTMLElement} button */
async function takeCode({ dataset: { line, typed = "", code = "" } }) {
  const lines = results.value.split("\n");
  // Lines may have been added or taken away since they were marked.
  const own = Number(line) - 1;
  const at = lines[own]?.includes(typed) ? own : lines.findIndex((one) => one.includes(typed));
  if (at < 0) {
    marksSaid("old");
    return;
  }
  lines[at] = lines[at].replace(typed, () => code);
  results.value = lines.join("\n");
  keep("results", results.value, fileOf(results).name);
  await mark();
  (document.querySelector('[data-do="take-code"]') ?? results).focus();
}

async function openCode() {
  const reply = await setPage.ofCode(form.read().code);
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
  form.fill({ seed: String(drawn % setPage.SEEDS), generator: newest?.value ?? "" });
}

/** @param {string} [name] */
const marksSaid = (name) => sayIn("[data-marks-said]", name);
/** @param {string} [name] */
const rollSaid = (name) => sayIn("[data-roll-said]", name);

/** @type {Record<string, (button: HTMLElement) => unknown>} */
const actions = {
  make,
  "make-key": makeKey,
  share: setPage.share,
  mark,
  stop: setPage.stop,
  ...toRegister.actions,
  "open-code": openCode,
  another: () => (newSeed(), update()),
  "take-code": takeCode,
  "save-marks": () => {
    if (!table) return;
    download(table);
    need("[data-marks-said]").textContent = table.told;
  },
  "save-roll": () => saveFile(fileOf(roll)),
  "save-results": () => saveFile(fileOf(results)),
  "erase-roll": () => {
    roll.value = "";
    keep("roll", "");
    rollSaid("erased");
    return update();
  },
  "erase-results": () => {
    if (root.dataset.working === "marks") setPage.stop();
    results.value = "";
    keep("results", "");
    regions.replace("marks", "");
    setTable(null);
    marksSaid("erased");
  },
};

document.addEventListener("click", async (event) => {
  const button = around(event, "[data-do]");
  if (!button) return;
  keepsSet = true;
  try {
    await actions[button.dataset.do ?? ""]?.(button);
  } catch (error) {
    failed(error);
  }
});

/** Give what was marked as a file and to the register; null gives nothing. @param {WorkResult | null} reply */
function setTable(reply) {
  table = reply;
  toRegister.offer(reply);
  need('[data-do="save-marks"]').hidden = !reply;
}

/** What was marked is no longer what stands there: said, and nothing of it is given. */
function marksOld() {
  if (!table) return;
  setTable(null);
  marksSaid("old");
}

document.addEventListener("input", (event) => {
  keepsSet = true;
  if (event.target === results) {
    keep("results", results.value, fileOf(results).name);
    marksOld();
  }
  if (event.target === roll) {
    rollSaid();
    keep("roll", roll.value, fileOf(roll).name);
  }
  const control = controlOf(event);
  if (event.target === roll || (control?.form?.id === "problem" && control.name !== "code")) {
    say("");
    setPage.updateSoon();
  }
});

function showKept() {
  roll.value = kept("roll");
  results.value = kept("results");
  if (roll.value) roll.closest("details")?.setAttribute("open", "");
}

showKept();
// Another window has changed or erased them, or another learner uses the device.
let of = learner();
let keepsSet = true; // not while the page only follows another window that has erased the set
follow("class", () => {
  keepsSet = Boolean(kept("set"));
  if (results.value !== kept("results")) marksOld();
  const isAnother = of !== learner();
  const isSame = roll.value === kept("roll");
  of = learner();
  showKept();
  if (isAnother) openOwn();
  else if (!isSame) update();
});
/** @param {string} hash */
function openOwn(hash = "") {
  const shown = hash.length > 1 ? hash : `#${kept("set")}`;
  if (shown.length > 1) {
    open(shown).catch(failed);
  } else {
    // Every lecturer has a set of values of their own, and has it again: answers to it may come days later.
    college.fill();
    newSeed();
    update();
  }
}

setPage.begin("class-set", (reply) => keepsSet && keep("set", reply.fragment), openOwn);
