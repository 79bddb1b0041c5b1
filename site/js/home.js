// The front page: the main job's values, answered in place, and the code of a printed sheet. Python is sent for with
// the first field that somebody goes into; until then the page is its example, complete.

import { Bridge, Stuck, Superseded } from "./bridge.js";
import { controlOf, need } from "./elements.js";
import * as form from "./form.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import { live } from "./said.js";
import { pend, settle } from "./state.js";

/** @import { Fault, Fetched, State } from "../types/shared.js" */

const root = document.documentElement;
const page = need(".job").dataset.page ?? "";
const codeForm = need("#find-code", HTMLFormElement);
const code = need("input", HTMLInputElement, codeForm);
const openCode = need("button", HTMLButtonElement, codeForm);
const LATE = 400; // ms after which what is shown is marked as behind

/** @type {Bridge | null} */
let bridge = null;
let edition = 0; // counts edits, so that an older reply is never taken for the latest
let shownFor = JSON.stringify(form.initial()); // the form that the answer in view belongs to
/** @type {{ html: Map<string, string>, of: string } | null} */
let before = null; // what was shown before a field was gone into
let looking = false; // whether a code is being looked up

/** @param {State} state @param {Fetched | string | undefined} detail */
function hear(state, detail) {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
  if (state === "failed") standStill();
}

/** What holds while Python cannot answer: the answer in view if it is the form's, or else it is old. */
function standStill() {
  settle(JSON.stringify(form.read()) === shownFor ? "fresh" : "old");
  look(false);
}

/** Python, sent for the first time that it is wanted. */
function woken() {
  if (bridge) return bridge;
  bridge = new Bridge(hear, live);
  begin(bridge);
  return bridge;
}

/** @param {Bridge} started */
function begin(started) {
  root.dataset.python = "starting";
  progress.begin(() => {
    begin(started);
    if (JSON.stringify(form.read()) !== shownFor) update();
  });
  started.start();
}

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Superseded) return;
  settle("old");
  live(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

async function update() {
  const mine = ++edition;
  const values = form.read();
  // Until Python is there, which may take minutes, what is shown is the example's and no answer to these values.
  pend(() => void root.toggleAttribute("data-old", root.dataset.python !== "ready"));
  try {
    const reply = await woken().ask({ do: "answer", page, form: values, parts: ["answer", "front"] }, { topic: "answer" });
    if (mine !== edition) return;
    if (!reply.ok) {
      refuse(reply.errors ?? []);
    } else {
      for (const [name, html] of Object.entries(reply.regions)) regions.replace(name, html);
      shownFor = JSON.stringify(values);
      form.showErrors(reply.errors ?? []);
      form.showEcho(reply.echo);
      settle("fresh");
    }
    live(reply.announce ?? "");
  } catch (error) {
    failed(error);
  }
}

// The old answer is the one from before the field was gone into, never that of a half-typed number.
/** @param {Fault[]} errors */
function refuse(errors) {
  const active = document.activeElement?.getAttribute("name");
  if (before && before.of !== shownFor && errors.some((error) => error.field === active)) {
    for (const [name, html] of before.html) regions.replace(name, html);
    shownFor = before.of;
  }
  form.showErrors(errors);
  settle("old");
}

/** The links take along what stands in the fields, answered or not. */
function carry() {
  const values = Object.entries(form.read()).map((pair) => pair.map(encodeURIComponent).join("="));
  for (const link of document.querySelectorAll("a[data-carries]")) {
    link.setAttribute("href", [link.dataset.carries, ...values].join("&") + (link.dataset.carriesToo ?? ""));
  }
}

/** @param {boolean} is */
function look(is) {
  looking = is;
  openCode.setAttribute("aria-disabled", String(is));
}

/** Open the problem of the code; one that cannot be used stays where it was typed, with what is wrong. */
async function findCode() {
  if (looking) return;
  look(true);
  const said = setTimeout(() => progress.lookUp(code.value), LATE);
  try {
    // What the problem of a code needs is far less than all the rest, which comes if that is not enough.
    const reply = await woken().ask({ do: "code", code: code.value, needs: ["coded"] });
    clearTimeout(said);
    progress.lookUp(null);
    const faults = (reply.errors ?? []).map((error) => ({ ...error, field: code.name }));
    form.showFaults([code], faults);
    if (reply.ok) location.assign(`${reply.page}/#${reply.fragment}`);
    else {
      code.focus();
      need(`[data-message-for="${code.name}"]`).scrollIntoView({ block: "nearest" });
    }
    live(reply.announce ?? "");
  } catch (error) {
    clearTimeout(said);
    progress.lookUp(null);
    live(progress.stuck(error));
    if (!(error instanceof Stuck)) reportError(error);
  } finally {
    look(false);
  }
}

document.addEventListener("focusin", (event) => {
  const control = controlOf(event);
  if (!control?.form) return;
  woken();
  if (control !== code && root.dataset.answer === "fresh") before = { html: regions.snapshot(), of: shownFor };
});
document.addEventListener("input", (event) => {
  if (controlOf(event)?.form?.id !== "problem") return;
  form.refresh();
  carry();
  update();
});
document.addEventListener("click", (event) => {
  const offer = event.target instanceof Element && event.target.closest("[data-set]");
  if (!(offer instanceof HTMLElement)) return;
  form.fill(JSON.parse(offer.dataset.set ?? "{}"));
  carry();
  update();
});
form.listen();
codeForm.addEventListener("submit", findCode);
// A browser may bring back what was typed before the page was left.
if (JSON.stringify(form.read()) !== shownFor) {
  carry();
  update();
}
