// The answer checker of a page: what a learner typed goes to pycore, its reply into the region `marked`. None of it is
// in the link. The fields follow the problem's conventions as pycore says.

import * as form from "./form.js";
import { fields } from "./answer-form.js";

const root = document.documentElement;
const slug = root.dataset.slug;
const section = document.querySelector(".check");
const fold = section?.querySelector("[data-check]");
const codeField = document.querySelector('[name="typed-code"]');
const answer = section && fields(section);

let asked = 0;
let look = () => {};

/** Where the checker stands: first where the answer is held back, else below the sheet's buttons. */
export function arrange() {
  if (!section) return;
  const veiled = root.hasAttribute("data-veiled");
  if (veiled) document.querySelector(".answer").before(section);
  else document.querySelector(".tools").after(section);
  if (veiled) fold.open = true;
}

/** What the problem asks for, in its own names and units; and which problem it is. */
export function follow(reply) {
  if (!section) return;
  if (reply.asked) answer.follow(reply.asked);
  const number = section.querySelector("[data-problem-code]");
  number.textContent = reply.problem ?? "";
  number.hidden = !reply.problem;
}

/** The problem is another one: what was said of an answer holds no longer. */
export function forget() {
  if (section) answer.forget();
}

/** Ask pycore what it thinks of the answer as it stands. */
export async function ask(bridge, live) {
  const mine = ++asked;
  const of = answer.version();
  const request = { do: "mark", page: slug, form: form.read(), given: answer.read() };
  const reply = await bridge.ask(request);
  if (mine !== asked || of !== answer.version()) return; // asked again, or of an answer that has changed
  answer.take(reply);
  live(reply.announce ?? "");
}

/** Open the problem of the code that was typed. */
export async function findCode(bridge, live) {
  const reply = await bridge.ask({ do: "code", code: codeField.value });
  const faults = (reply.errors ?? []).map((error) => ({ ...error, field: codeField.name }));
  form.showFaults([codeField], faults);
  if (reply.ok) location.assign(`../${reply.page}/#${reply.fragment}`);
  else codeField.focus();
  live(reply.announce ?? "");
}

// A cause's step is shown here, in the classroom view; its working below is unfolded, as that is which the answer
// itself points to.
function go(event) {
  const step = event.target.closest("a[data-to-step]");
  if (step) {
    event.preventDefault();
    look(step.dataset.toStep);
    return;
  }
  const key = event.target.closest("[data-to-working]")?.dataset.toWorking;
  const working = key && document.querySelector(`[data-working="${CSS.escape(key)}"]`);
  if (!working) return;
  if ("open" in working) working.open = true;
  working.tabIndex = -1;
  working.focus();
}

/** Join the page: `look(step)` opens the lesson at a step. */
export function join(joined) {
  look = joined.look;
  section?.addEventListener("click", go);
  document.querySelector("[data-region=answer]")?.addEventListener("click", go);
}

