// The answer checker of a page: what a learner typed goes to pycore, its reply into the region `marked`. None of it is
// in the link. The fields follow the problem's conventions as pycore says.

import { around, need } from "./elements.js";
import * as form from "./form.js";
import { fields } from "./answer-form.js";

/** @import { AnswerReply, InputControl, Say } from "../types/shared.js" */
/** @import { Bridge } from "./bridge.js" */

const slug = document.documentElement.dataset.slug ?? "";
const section = document.querySelector(".check");
/** @type {InputControl | null} */
const codeField = document.querySelector('[name="typed-code"]');
const answer = section && fields(section);

let asked = 0;
/** @type {(step: string) => void} */
let look = () => {};
/** @type {(element: Element) => void} */
let reveal = () => {};

/**
 * What the problem asks for, in its own names and units; and which problem it is.
 * @param {AnswerReply} reply
 */
export function follow(reply) {
  if (!section || !answer) return;
  if (reply.asked) answer.follow(reply.asked);
  const number = need("[data-problem-code]", HTMLElement, section);
  number.textContent = reply.problem ?? "";
  number.hidden = !reply.problem;
}

/** The problem is another one: what was said of an answer holds no longer. */
export function forget() {
  answer?.forget();
}

/**
 * Ask pycore what it thinks of the answer as it stands.
 * @param {Bridge} bridge
 * @param {Say} live
 */
export async function ask(bridge, live) {
  if (!answer) return;
  const mine = ++asked;
  const of = answer.version();
  const reply = await bridge.ask({ do: "mark", page: slug, form: form.read(), given: answer.read() });
  if (mine !== asked || of !== answer.version()) return; // asked again, or of an answer that has changed
  answer.take(reply);
  live(reply.announce ?? "");
}

/**
 * Open the problem of the code that was typed.
 * @param {Bridge} bridge
 * @param {Say} live
 */
export async function findCode(bridge, live) {
  if (!codeField) return;
  const reply = await bridge.ask({ do: "code", code: codeField.value });
  const faults = (reply.errors ?? []).map((error) => ({ ...error, field: codeField.name }));
  form.showFaults([codeField], faults);
  if (reply.ok) location.assign(`../${reply.page}/#${reply.fragment}`);
  else codeField.focus();
  live(reply.announce ?? "");
}

// A cause's step is shown here, in the classroom view; its working below is unfolded, as that is which the answer
// itself points to.
/** @param {Event} event */
function go(event) {
  const step = around(event, "a[data-to-step]");
  if (step) {
    event.preventDefault();
    look(step.dataset.toStep ?? "");
    return;
  }
  const key = around(event, "[data-to-working]")?.dataset.toWorking;
  const working = key && document.querySelector(`[data-working="${CSS.escape(key)}"]`);
  if (!working) return;
  reveal(working);
  working.tabIndex = -1;
  working.focus();
}

/**
 * Join the page: `look(step)` opens the lesson at a step, `reveal(element)` brings what is beside the sheet into view.
 * @param {{ look: (step: string) => void, reveal: (element: Element) => void }} joined
 */
export function join(joined) {
  look = joined.look;
  reveal = joined.reveal;
  section?.addEventListener("click", go);
  document.querySelector("[data-region=notes]")?.addEventListener("click", go);
}

