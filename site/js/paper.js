// Blank paper: choices in, pycore's sheet out. The form is the only state, the fragment its copy.

import * as actions from "./actions.js";
import { Bridge, Stuck, Superseded } from "./bridge.js";
import * as college from "./college.js";
import { controlOf } from "./elements.js";
import * as form from "./form.js";
import * as opening from "./opening.js";
import { spaced } from "./pace.js";
import * as printable from "./printable.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import { live, showNotices } from "./said.js";
import { markAnswer } from "./state.js";

/** @import { AnswerReply, Fetched, State } from "../types/shared.js" */

const root = document.documentElement;
const page = root.dataset.slug;
const WITHOUT_PYTHON = ["print", "true-size"]; // what can be done with the sheet that stands
const keepFragment = spaced(334, (/** @type {string} */ fragment) => {
  written = `#${fragment}`;
  history.replaceState(null, "", written);
});
const bridge = new Bridge(hear);
let written = location.hash;
let edition = 0; // counts choices, so that an older reply is never taken for the latest
let shownFor = JSON.stringify(form.initial());
/** @type {string} */
let unread = ""; // a link still to be opened
/** @type {Promise<void>} */
let updating = Promise.resolve();

const showsChoices = () => !unread && JSON.stringify(form.read()) === shownFor;

/** @param {State} state @param {Fetched | string | undefined} detail */
function hear(state, detail) {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
  if (state === "failed") standStill();
}

/** Without Python the sheet in view can be printed if it is the one that is asked for. */
function standStill() {
  const fresh = showsChoices();
  markAnswer(fresh ? "fresh" : "old");
  actions.wait(progress.failedWords(), fresh ? WITHOUT_PYTHON : []);
}

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Superseded) return;
  markAnswer("old");
  actions.wait(progress.stuck(error));
  live(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

/** @param {{ quiet?: boolean }} options */
function update({ quiet = false } = {}) {
  return (updating = draw(quiet));
}

/** @param {boolean} quiet */
async function draw(quiet) {
  const mine = ++edition;
  const asked = form.read();
  if (root.dataset.python === "failed") {
    standStill();
    return;
  }
  markAnswer("pending");
  actions.forget();
  try {
    const reply = await bridge.ask({ do: "answer", page, form: asked }, { topic: "answer" });
    if (mine === edition) take(reply, quiet, JSON.stringify(asked));
  } catch (error) {
    failed(error);
  }
}

/** @param {AnswerReply} reply @param {boolean} quiet @param {string} asked */
function take(reply, quiet, asked) {
  form.showErrors(reply.errors ?? []);
  actions.wait(reply.waiting ?? "");
  if (!quiet) live(reply.announce ?? "");
  markAnswer(reply.ok ? "fresh" : "old");
  opening.end(); // Blank paper is nobody's problem: where a link is refused, the sheet of the page stands marked old.
  if (!reply.ok) return;
  shownFor = asked;
  if (quiet) return;
  for (const [name, html] of Object.entries(reply.regions)) regions.replace(name, html);
  keepFragment(reply.fragment);
}

/**
 * Open the sheet that a link asks for.
 * @param {string} fragment
 */
async function open(fragment) {
  written = fragment;
  unread = fragment;
  opening.wait();
  markAnswer("pending");
  try {
    const reply = await bridge.ask({ do: "open", page, fragment }, { topic: "open" });
    unread = "";
    if (reply.form) form.fill(reply.form);
    showNotices(reply.notices ?? []);
    await update();
  } catch (error) {
    failed(error);
  }
}

/** Whether what stands on the page is what would be asked for, and may be printed. */
async function complete() {
  if (root.dataset.python === "ready") await updating;
  return root.dataset.answer === "fresh" || (root.dataset.python !== "ready" && showsChoices());
}

function begin() {
  root.dataset.python = "starting";
  progress.begin(() => {
    begin();
    update();
  });
  bridge.start();
}

document.addEventListener("input", (event) => {
  if (controlOf(event)?.form?.id !== "problem") return;
  form.refresh();
  showNotices([]);
  update();
});
form.listen();
printable.guard(showsChoices);
window.addEventListener("hashchange", () => {
  if (location.hash !== written) open(location.hash);
});
actions.listen(bridge, live, (error) => {
  live(progress.stuck(error)); // The sheet itself stays as it is.
  if (!(error instanceof Stuck)) reportError(error);
}, { complete });

// What is awaited is known before Python begins, and said so.
college.start(open, update);
begin();
