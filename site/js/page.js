// The page of a calculator: events in, pycore's HTML out. The form is the only state, the fragment its copy.

import * as actions from "./actions.js";
import * as band from "./band.js";
import * as check from "./check.js";
import * as college from "./college.js";
import * as column from "./column.js";
import { Bridge, lack, Stuck, Superseded } from "./bridge.js";
import { around, controlOf, need } from "./elements.js";
import * as example from "./example.js";
import * as followers from "./followers.js";
import * as form from "./form.js";
import * as easy from "./easy.js";
import * as hand from "./hand.js";
import * as handout from "./handout.js";
import { isOld, onUncovered } from "./layers.js";
import * as lesson from "./lesson.js";
import * as opening from "./opening.js";
import { afterQuiet, spaced } from "./pace.js";
import * as printable from "./printable.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import { live, showNotices, showScenario } from "./said.js";
import * as settings from "./settings.js";
import * as sharePanel from "./share-panel.js";
import * as sheetDevice from "./sheet-device.js";
import { pend, settle } from "./state.js";
import * as veil from "./veil.js";
import * as views from "./views.js";

/** @import { AnswerReply, Fault, Fetched, Reply, State } from "../types/shared.js" */

const root = document.documentElement;
const slug = root.dataset.slug ?? "";
const FRAGMENT_PAUSE = 334; // ms; engines limit how often the address may change
const READ = 1500; // ms for which an answer is in view before it counts as one that was meant
const WITHOUT_PYTHON = ["print", "true-size"]; // what can be done with an answer that stands

const keepAddress = spaced(FRAGMENT_PAUSE, () => {
  if (!fragment || unread) return; // What is still to be read stands in the address.
  written = `#${fragment}${views.suffix()}`;
  history.replaceState(history.state, "", written);
});

const wide = matchMedia("(min-width: 48em)"); // as in calculator.css: the sheet itself is in view, not the phone's drawing
const desk = matchMedia("(min-width: 75em)"); // as in calculator.css: what changes never moves a field

let edition = 0; // counts edits, so that an older reply is never taken for the latest
let written = location.hash;
let fragment = ""; // the problem as pycore writes it into links
let shownFor = JSON.stringify(form.initial()); // the form that the answer in view belongs to
/** @type {{ link: string } | null} */
let unread = null; // a link still to be opened: until then the form does not say what is asked
/** @type {{ of: number, regions: Map<string, string>, shownFor: string, parts: ReturnType<typeof followers.shownParts> } | null} */
let before = null; // what was shown before a field was gone into
let rememberAt = 0; // the edition whose answer is to be remembered so
let answering = Promise.resolve();
const touched = /** @type {Set<string>} */ (new Set());
const bridge = new Bridge(hear, actions.announce);

/** @param {State} state @param {Fetched | string | undefined} detail */
function hear(state, detail) {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
  if (state === "failed") standStill();
  else if (state === "ready" && root.dataset.answer === "fresh") actions.wait("");
}

/** Whether the answer in view is the answer to the form as it stands. */
const showsAnswer = () => !unread && JSON.stringify(form.read()) === shownFor;

/** What holds while Python cannot answer: the answer in view if it is the form's, or else it is old. */
function standStill() {
  lesson.refused(progress.failedWords());
  if (!showsAnswer()) {
    markOld(progress.failedWords());
    return;
  }
  settle("fresh");
  actions.wait(progress.failedWords(), followers.shownParts().sheet ? WITHOUT_PYTHON : []);
}

function wait() {
  if (root.dataset.python === "failed") {
    standStill();
    return;
  }
  pend(() => {
    if (showsAnswer()) return false;
    if (root.dataset.python !== "ready") actions.wait(progress.startingWords());
  });
}

/** @param {string} waiting @param {string[]} but */
function markOld(waiting, but = []) {
  settle("old");
  actions.wait(waiting, but);
}

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Superseded) return;
  markOld(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

// What was asked beside the answer came to nothing; the answer itself stays as it is.
/** @param {unknown} error */
function unanswered(error) {
  live(progress.stuck(error));
  lesson.refused(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

/**
 * Ask for parts of the answer to the form as it stands now; a later edit takes the place of one that waits.
 * @param {string} topic
 * @param {string[]} parts
 * @param {Record<string, unknown> & { needs?: string[], early?: boolean }} more
 */
const ask = (topic, parts, { early = false, ...more } = {}) =>
  bridge.ask({ do: "answer", page: slug, form: form.read(), parts, ...veil.asked(), base: actions.base(), ...more },
    { topic, early });

/**
 * Bring the answer up to date. `quiet`: it is what the page shows already; `typed`: there may be more of it at once;
 * `opened`: a link has just filled in the values.
 * The sheet comes with it or follows, seen or not, because it is what would be printed.
 * @param {{ quiet?: boolean, typed?: boolean, opened?: boolean }} options
 */
const update = (options = {}) => (answering = answer(options));

/** @param {{ quiet?: boolean, typed?: boolean, opened?: boolean }} options */
async function answer({ quiet = false, typed = false, opened = false }) {
  const mine = ++edition;
  const asked = JSON.stringify(form.read());
  veil.follow();
  // Python begins before what else is to do: it has a thread of its own.
  const asking = ask("answer", followers.parts(!typed), { early: quiet && !veil.isDown(), opened });
  check.forget();
  wait();
  actions.forget();
  try {
    const reply = await asking;
    if (mine !== edition) return;
    if (reply.ok) take(reply, mine, quiet, asked);
    else refuse(reply);
  } catch (error) {
    failed(error);
  }
}

// Half-typed numbers give answers on the way to what is meant. If it ends up unusable, the old answer is the one
// from before the field was gone into, or one that was in view for a while.
function remember() {
  if (root.dataset.answer === "fresh") {
    before = { of: edition, regions: regions.snapshot(), shownFor, parts: followers.shownParts() };
  } else {
    rememberAt = edition;
  }
}

const rememberSoon = afterQuiet(READ, () => root.dataset.answer === "fresh" && remember());

/** All of an answer is there now: of what was shown before a field was gone into, too. @param {number} of */
function completed(of) {
  if (before?.of === of) remember();
}

/** @param {Fault[]} errors */
function recall(errors) {
  const active = document.activeElement;
  const field = active?.getAttribute("name") || active?.getAttribute("data-factor-of");
  const known = before && !veil.isDown() && before.shownFor !== shownFor;
  if (!before || !known || !errors.some((error) => error.field === field)) return;
  exchange(before.regions);
  shownFor = before.shownFor;
  followers.recalled(before.parts);
}

/** @param {Iterable<[string, string]>} html by region */
function exchange(html) {
  const inHand = band.rest();
  for (const [name, text] of html) regions.replace(name, text);
  column.arrived();
  sheetDevice.shape();
  inHand();
}

/** @param {AnswerReply} reply */
function put(reply) {
  const change = () => {
    veil.empty(reply.regions);
    exchange(Object.entries(reply.regions));
    easy.again();
  };
  // In one column what changes may stand above the field, which would leave the screen.
  if (desk.matches) change();
  else regions.steady(change);
}

/** @param {AnswerReply} reply @param {number} mine @param {boolean} quiet @param {string} asked */
function take(reply, mine, quiet, asked) {
  // Values that are no longer their code's lose it.
  shownFor = form.fill({ code: reply.code }).length ? JSON.stringify(form.read()) : asked;
  fragment = reply.fragment;
  opening.end();
  if (!quiet) {
    put(reply);
    keepAddress();
    live(reply.announce ?? "");
  }
  form.showErrors(reply.errors ?? []);
  form.showEcho(reply.echo);
  form.showInks(reply.inks);
  form.showNames(reply.labels, reply.options);
  showScenario(reply.scenario);
  check.follow(reply);
  actions.wait("");
  settle("fresh");
  followers.answered(quiet);
  if (rememberAt === mine) remember();
  rememberSoon();
  views.answered();
}

/** @param {Reply} reply */
function refuse(reply) {
  recall(reply.errors ?? []);
  form.showErrors(reply.errors ?? []);
  markOld(reply.waiting ?? "", ["find-code"]); // which asks nothing of the values
  live(reply.announce ?? "");
  lesson.refused(reply.announce ?? "");
}

/**
 * Open the problem that a link holds; what was typed meanwhile stays.
 * @param {string} link
 */
async function open(link) {
  written = link;
  edition += 1;
  const mine = (unread = { link });
  views.follow(link);
  veil.open(link);
  opening.begin(link);
  wait();
  try {
    const reply = await bridge.ask({ do: "open", page: slug, fragment: link }, { topic: "open" });
    if (!reply.ok) {
      refuse(reply);
      return;
    }
    if (reply.page) {
      location.replace(`../${reply.page}/#${reply.fragment}`);
      return;
    }
    const values = { ...reply.form };
    for (const name of touched) delete values[name];
    form.fill(values);
    example.opened(reply.own === true);
    column.sayAlso(form.setElsewhere());
    unread = null;
    showNotices(reply.notices ?? []);
    if (reply.typed) markOld(check.mend(reply.typed, reply.errors ?? [], reply.held), ["find-code"]);
    else await update({ opened: true });
  } catch (error) {
    failed(error);
  } finally {
    if (unread === mine) unread = null;
  }
}

/** @param {Event} event */
function edited(event) {
  const control = controlOf(event);
  if (control?.form?.id !== "problem") return;
  form.followFactor(control);
  const name = control.name || control.dataset.factorOf || control.dataset.senseOf;
  if (name) touched.add(name);
  update({ typed: true });
  form.refresh();
  const set = form.setElsewhere();
  if (column.saysOther(set)) regions.steady(() => column.sayAlso(set));
  showNotices([]);
}

/** @param {Event} event */
function setValues(event) {
  const button = around(event, "[data-set]");
  if (!button) return;
  form.fill(JSON.parse(button.dataset.set ?? "{}"));
  // A way out goes with its message; the reader stays at the field.
  const field = button.closest("[data-message-for]")?.dataset.messageFor;
  if (field) form.control(field)?.focus();
  update();
}

function begin() {
  root.dataset.python = "starting";
  progress.begin(() => (begin(), update()));
  bridge.start();
}

document.addEventListener("input", edited);
document.addEventListener("click", setValues);
document.addEventListener("focusin", (event) => {
  if (controlOf(event)?.form?.id === "problem") remember();
});
form.listen();
window.addEventListener("hashchange", (event) => {
  const { hash } = new URL(event.newURL); // the address may have been written again since
  if (hash === written || isOld(hash)) return;
  touched.clear();
  check.clear();
  open(hash);
});
onUncovered(() => location.hash !== written && keepAddress());
wide.addEventListener("change", () => update());
form.refresh();
followers.join({
  edition: () => edition, isFresh: () => root.dataset.answer === "fresh", isReady: () => root.dataset.python === "ready",
  hasCodes: () => bridge.holds("codes"), answering: () => answering, showsAnswer, ask, put, failed, completed,
});
column.onTurn(followers.bringProblem);
actions.listen(bridge, live, unanswered, followers);
actions.add("lesson", () => lesson.open());
actions.add("code", () => sharePanel.open(bridge));
actions.add("give", () => sharePanel.give(bridge, unanswered));
actions.add("easy", () => easy.open(bridge));
actions.add("draw", views.openDrawing);
actions.add("photo", async () => (await import("./photo.js").catch(lack)).open(bridge, unanswered, actions.say));
actions.add("handout", async () => (await handout.save(bridge)) && actions.told("handed"));
actions.add("check", () => check.ask(bridge, live));
actions.add("find-code", () => check.findCode(bridge, live));
actions.add("unveil", async () => {
  if (veil.isDown()) {
    veil.lift();
    await update();
  }
  check.showAnswer();
  need("#answer").focus();
});
actions.add("veil", () => (veil.lower(), update()));
printable.guard(() => showsAnswer() && followers.shownParts().sheet);
example.join({ touched, cleared: update });
band.listen();
hand.listen(column.reveal);
settings.listen(update, live);
check.join({ bridge, live, failed: unanswered, reveal: column.reveal, look: lesson.open });
/** @param {Record<string, string> | null} where */
const share = (where) => sharePanel.open(bridge, where).catch(unanswered);
lesson.join({ bridge, changed: keepAddress, failed: unanswered, share, draw: views.openDrawing });
views.join({ bridge, changed: keepAddress, failed: unanswered, said: actions.say, readOff: check.readOff });

// What is awaited is known before Python begins, and said so.
college.start(open, update);
begin();
