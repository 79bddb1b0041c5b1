// The answer checker of a page: what a learner typed goes to pycore, its reply into the region `marked`. None of it is
// in the link. The fields follow the problem's conventions as pycore says.

import { around, hide, need, write } from "./elements.js";
import { prefix } from "./embedded.js";
import * as form from "./form.js";
import { fields } from "./answer-form.js";
import { showWay } from "./practice-way.js";
import * as regions from "./regions.js";
import * as veil from "./veil.js";

/** @import { AnswerReply, Fault, InputControl, Say, Values } from "../types/shared.js" */
/** @import { Bridge } from "./bridge.js" */

const slug = document.documentElement.dataset.slug ?? "";
const section = document.querySelector(".check");
/** @type {InputControl | null} */
const codeField = document.querySelector('[name="typed-code"]');
const answer = section && fields(section);

const main = need("main");
const veilText = section?.querySelector(".veil");
let asked = 0;
let codeOfPage = ""; // as it was filled in, or typed and found
let solvedFor = ""; // the problem that was solved last
/** @type {(step: string, ask: boolean) => void} */
let look = () => {};
/** @type {(button: HTMLElement) => unknown} */
let hintOf = () => {};
/** @type {(element: Element) => void} */
let reveal = () => {};

// Whoever turns to Check has an answer to be checked. The page's own is out of view meanwhile (css/check.css), until it is
// asked for; only a problem's is not even in the page (veil.js).
export const isAside = () => !veil.isDown() && main.hasAttribute("data-checking") && !main.hasAttribute("data-seen");
const isHidden = () => veil.isDown() || isAside();

/** The answer beside Check is asked for; it stays in view until the values change. */
export const showAnswer = () => main.setAttribute("data-seen", "");

/**
 * What the problem asks for, in its own names and units; and which problem it is.
 * @param {AnswerReply} reply
 */
export function follow(reply) {
  if (!section || !answer) return;
  if (reply.asked) answer.follow(reply.asked);
  const number = need("[data-problem-code]", HTMLElement, section);
  write(number, reply.problem ?? "");
  hide(number, !reply.problem);
  fillInCode(reply.code);
  showWay(section, reply.code);
}

/**
 * The code that opened the page stands where one types it, unless another one is being typed there.
 * @param {string} code
 */
function fillInCode(code) {
  if (!codeField || codeField.value !== codeOfPage) return;
  codeField.value = codeOfPage = code;
}

/**
 * What was read off a drawing made on the screen is the answer to be checked.
 * @param {Values} reading
 * @param {boolean} isNew
 */
export const readOff = (reading, isNew) => answer?.fillIn(reading, isNew);

/**
 * A link opened another problem: nothing stays of the answer to the one before, nor a code that was refused, and the new
 * values are in view.
 */
export function clear() {
  answer?.clear();
  if (codeField?.hasAttribute("aria-invalid")) {
    codeField.value = codeOfPage;
    showCode([]);
  }
  regions.replace("hint", "");
  scrollTo(0, 0);
}

/** The problem is another one: what was said of an answer holds no longer. */
export function forget() {
  answer?.forget();
  main.removeAttribute("data-seen");
  if (solvedFor !== shownFor()) veilText?.removeAttribute("data-solved");
  regions.replace("hint", "");
}

/**
 * Ask pycore for a hint: of a step, by its rung.
 * @param {Bridge} bridge
 * @param {Say} live
 * @param {HTMLElement} button
 */
async function hint(bridge, live, button) {
  const of = shownFor();
  const { hintStep, hintRung } = button.dataset;
  const request = { do: /** @type {const} */ ("hint"), page: slug, form: form.read() };
  const reply = await bridge.ask({ ...request, step: Number(hintStep), rung: Number(hintRung) });
  if (reply.ok && of === shownFor()) {
    regions.replace("hint", reply.regions.hint);
    need("[data-region=hint]").scrollIntoView({ block: "nearest" });
  }
  live(reply.announce ?? "");
}

const shownFor = () => JSON.stringify(form.read());

/**
 * Ask pycore what it thinks of the answer as it stands.
 * @param {Bridge} bridge
 * @param {Say} live
 */
export async function ask(bridge, live) {
  if (!answer) return;
  const mine = ++asked;
  const of = answer.version();
  const reply = await bridge.ask({ do: "mark", page: slug, form: form.read(), given: answer.read(), shown: !isHidden() });
  if (mine !== asked || of !== answer.version()) return; // asked again, or of an answer that has changed
  answer.take(reply);
  if (reply.solved) {
    solvedFor = shownFor();
    veilText?.setAttribute("data-solved", "");
  }
  live(reply.announce ?? "");
}

/**
 * Show what is wrong with a code where it is typed.
 * @param {Fault[]} errors
 */
function showCode(errors) {
  if (!codeField) return;
  form.showFaults([codeField], errors.map((error) => ({ ...error, field: codeField.name })));
}

/**
 * A link has a code that cannot be used: it stands where one types it, to be mended. Gives what is wrong with it.
 * `held`: it checks values that are still to be typed, and their answer is held back.
 * @param {string} code
 * @param {Fault[]} errors
 * @param {boolean} held
 */
export function mend(code, errors, held = false) {
  const [{ message }] = errors;
  if (!codeField) return message;
  if (!held) veil.lift(); // There is no answer to hold back.
  codeField.value = code;
  showCode(errors);
  reveal(codeField);
  codeField.focus();
  return message;
}

/**
 * Open the problem of the code that was typed.
 * @param {Bridge} bridge
 * @param {Say} live
 */
export async function findCode(bridge, live) {
  if (!codeField) return;
  const code = codeField.value;
  const reply = await bridge.ask({ do: "code", code, page: slug, form: form.read() });
  showCode(reply.errors ?? []);
  if (reply.ok) {
    codeOfPage = code;
    location.assign(`../${prefix}${reply.page}/#${reply.fragment}`);
  } else codeField.focus();
  live(reply.announce ?? "");
}

// A cause's step is shown here, in the lesson view; its working below is unfolded, as that is which the answer
// itself points to.
/** @param {Event} event */
function go(event) {
  const step = around(event, "a[data-to-step]");
  if (step) {
    event.preventDefault();
    look(step.dataset.toStep ?? "", isHidden() && !("done" in step.dataset));
    return;
  }
  const asks = around(event, "[data-hint-step]");
  if (asks) hintOf(asks);
  const key = around(event, "[data-to-working]")?.dataset.toWorking;
  const working = key && document.querySelector(`[data-working="${CSS.escape(key)}"]`);
  if (!working) return;
  reveal(working);
  working.tabIndex = -1;
  working.focus();
}

/**
 * Join the page: `look(step, ask)` opens the lesson at a step, `reveal(element)` brings what is beside the sheet into
 * view, `failed(error)` says that a hint cannot come.
 * @param {{ bridge: Bridge, live: Say, look: (step: string, ask: boolean) => void, reveal: (element: Element) => void,
 *   failed: (error: unknown) => void }} joined
 */
export function join(joined) {
  hintOf = (button) => hint(joined.bridge, joined.live, button).catch(joined.failed);
  look = joined.look;
  reveal = joined.reveal;
  section?.addEventListener("click", go);
  document.querySelector("[data-region=notes]")?.addEventListener("click", go);
}

