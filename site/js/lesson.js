// The classroom view: one step at a time, as pycore makes it, over the whole window. It shows the form as it stands
// and keeps nothing of its own but where the lesson is; no timer drives anything.

import { regionHTML, Superseded } from "./bridge.js";
import { around, need } from "./elements.js";
import * as form from "./form.js";
import { listen as listenToKeys } from "./lesson-keys.js";

/** @import { LessonReply } from "../types/shared.js" */
/** @import { Bridge } from "./bridge.js" */

const KEY = "phasor-folio-lesson"; // what the device keeps of the classroom view: large print
/** @typedef {{ view: string, step: string, ask: boolean }} LessonPlace */

/**
 * @typedef {{
 *   bridge: Bridge, changed: () => void, failed: (error: unknown) => void,
 *   share: (where: Record<string, string> | null) => unknown,
 * }} Joined
 */

const dialog = need("[data-lesson]", HTMLDialogElement);
/** @param {string} mark */
const find = (mark) => need(`[data-lesson-${mark}]`, HTMLElement, dialog);
const slider = need("[data-lesson-slider]", HTMLInputElement, dialog);
const [notice, liveLine, typedLine, panel] = ["notice", "live", "typed", "panel"].map(find);
const words = need(".lesson-text", HTMLElement, dialog);
const waitingWords = need('[data-lesson-region="lesson-text"] > :first-child', HTMLElement, dialog);
/** @param {string} name */
const button = (name) => need(`[data-lesson-do="${name}"]`, HTMLElement, dialog);
const slug = document.documentElement.dataset.slug ?? "";

/** @type {Joined} */
let page; // set by join: { bridge, changed, failed, share }
/** @type {LessonPlace | null} */
let place = null; // { view, step, ask } while the view is open; step as a link gives it
/** @type {LessonReply | null} */
let shown = null; // pycore's reply for the step in view
let revealed = false;
let edition = 0;

// Where a link leads.

/** @param {string} hash @returns {LessonPlace | null} */
function placeOf(hash) {
  const keys = new URLSearchParams(hash.replace(/^#/, ""));
  if (!keys.has("view")) return null;
  return { view: keys.get("view") ?? "", step: keys.get("step") ?? "1", ask: keys.get("ask") === "1" };
}

/** What the address says of the lesson, to stand behind the problem. */
export function suffix() {
  if (!place) return "";
  const pairs = [["view", place.view], ["step", place.step], ...(place.ask ? [["ask", "1"]] : [])];
  return pairs.map(([key, value]) => `&${key}=${encodeURIComponent(value)}`).join("");
}

/** Where the lesson is, for a link to it; null while it is closed. */
export const where = () =>
  place && { view: String(place.view), step: String(place.step), ask: place.ask ? "1" : "" };

/**
 * Open as a link says, or close; the step comes once the page has read the link's problem.
 * @param {string} hash
 */
export function follow(hash) {
  const wanted = placeOf(hash);
  if (!wanted) {
    if (dialog.open) dialog.close();
    return;
  }
  place = wanted;
  wait();
  if (!dialog.open) dialog.showModal();
}

// One step.

/** @param {string} name */
const region = (name) => need(`[data-lesson-region="${name}"]`, HTMLElement, dialog);

function wait() {
  shown = null;
  region("lesson-text").replaceChildren(waitingWords);
  region("lesson-picture").replaceChildren();
  region("lesson-scale").replaceChildren();
  liveLine.textContent = liveLine.dataset.waiting ?? "";
}

/** @param {number | string} step @param {string | undefined} view */
async function show(step, view = place?.view) {
  if (!place || view === undefined) return;
  place.step = String(step);
  place.view = view;
  const mine = ++edition;
  try {
    const asked = { page: slug, form: form.read(), view, step: place.step };
    const reply = await page.bridge.ask({ do: "lesson", ...asked }, { topic: "lesson" });
    if (mine !== edition || !place) return;
    if (reply.ok) take(reply);
    else refused(reply.announce);
  } catch (error) {
    if (!(error instanceof Superseded)) page.failed(error);
  }
}

/** @param {LessonReply} reply */
function take(reply) {
  if (!place) return;
  shown = reply;
  place.view = reply.view;
  place.step = String(reply.step);
  revealed = false;
  for (const [name, html] of Object.entries(reply.regions)) region(name).innerHTML = regionHTML(html);
  say(reply.notice);
  words.scrollTop = 0;
  Object.assign(slider, { max: String(reply.steps), value: String(reply.step) });
  slider.setAttribute("aria-valuetext", reply.progress);
  syncChoices();
  settle();
  page.changed();
}

/** @param {string | undefined} sentence */
function say(sentence) {
  notice.textContent = sentence ?? "";
  notice.hidden = !sentence;
}

/**
 * The form cannot be used, or Python cannot answer: what was shown stays, and it is said why nothing new comes.
 * @param {string} sentence
 */
export function refused(sentence) {
  if (!place) return;
  edition += 1;
  if (!shown) region("lesson-text").replaceChildren();
  say(sentence);
}

/** The page has an answer to the form as it stands: the lesson follows. */
export function answered() {
  if (place) show(place.step);
}

// A reading that each learner takes from their own drawing is never given at once.
const isAsking = () => Boolean((place?.ask || shown?.measured) && !revealed && shown?.hidden);
const isBlank = () => dialog.hasAttribute("data-blank");

// What follows from the switches: what is hidden, what the buttons say, what is read out.
function settle() {
  const asking = isAsking();
  dialog.toggleAttribute("data-asking", asking);
  const next = button("next");
  next.textContent = (asking ? next.dataset.show : next.dataset.next) ?? "";
  disable(next, !asking && shown?.step === shown?.steps);
  disable(button("back"), shown?.step === 1);
  button("ask").setAttribute("aria-pressed", String(Boolean(place?.ask)));
  button("blank").setAttribute("aria-pressed", String(isBlank()));
  if (shown) announce(shown, asking);
}

/** @param {LessonReply} reply @param {boolean} asking */
function announce(reply, asking) {
  const told = isBlank() && reply.blanked ? reply.blanked : asking ? reply.asked : reply.announce;
  liveLine.textContent = [reply.notice, told].filter(Boolean).join(" ");
}

/** @param {HTMLElement} one @param {boolean} is */
function disable(one, is) {
  if (is) one.setAttribute("aria-disabled", "true");
  else one.removeAttribute("aria-disabled");
}

// What can be done.

/** @param {number} step */
function go(step) {
  if (!place || !shown) return;
  fold();
  if (step >= 1 && step <= shown.steps && String(step) !== place.step) show(step);
}

function reveal() {
  revealed = true;
  settle();
}

const doings = {
  next: () => (isAsking() ? reveal() : go(Number(place?.step) + 1)),
  back: () => go(Number(place?.step) - 1),
  first: () => go(1),
  last: () => go(shown?.steps ?? 0),
  reveal: () => isAsking() && reveal(),
  close: () => dialog.close(),
  ask() {
    if (!place) return;
    place.ask = !place.ask;
    revealed = false;
    settle();
    page.changed();
  },
  blank() {
    dialog.toggleAttribute("data-blank");
    settle();
  },
  more: () => fold(!panel.hidden),
  large: () => keepLarge(!dialog.hasAttribute("data-large")),
  jump: () => jump(need("[data-lesson-jump]", HTMLInputElement, dialog).value),
  share: () => page.share(where()),
};

/**
 * Go to a step by its number as typed; pycore says what there is if it is none.
 * @param {string} text
 */
function jump(text) {
  if (!place || !text.trim()) return;
  fold();
  show(text.trim());
}

// The further choices lie over the step's words, so that the picture stays in view.
function fold(folded = true) {
  if (panel.hidden === folded) return;
  panel.hidden = folded;
  words.inert = !folded;
  button("more").setAttribute("aria-expanded", String(!folded));
  if (folded && panel.contains(document.activeElement)) button("more").focus();
}

function syncChoices() {
  if (!place) return;
  const views = need("[data-lesson-view]", HTMLSelectElement, dialog);
  for (const one of views.options) one.hidden = one.disabled = Boolean(shown && !shown.views.includes(one.value));
  views.value = place.view;
  /** @type {NodeListOf<HTMLSelectElement>} */
  const selects = dialog.querySelectorAll("[data-lesson-set]");
  for (const select of selects) {
    const name = select.dataset.lessonSet ?? "";
    const original = form.control(name);
    if (original?.options) select.replaceChildren(...[...original.options].map((one) => one.cloneNode(true)));
    select.value = form.read()[name];
    if (select.parentElement) select.parentElement.hidden = place.view !== "lesson" || Boolean(original?.closest("[data-field]")?.hidden);
  }
}

// A choice made here is the form's own: the page answers it, and the lesson follows from its first step.
/** @param {HTMLSelectElement} select */
function choose(select) {
  const name = select.dataset.lessonSet ?? "";
  if (place) place.step = "1";
  form.fill({ [name]: select.value });
  const changed = form.controls().find((one) => one.name === name && (one.type !== "radio" || one.checked));
  changed?.dispatchEvent(new Event("input", { bubbles: true }));
}

/** @param {boolean} on */
function keepLarge(on) {
  dialog.toggleAttribute("data-large", on);
  button("large").setAttribute("aria-pressed", String(on));
  try {
    if (on) localStorage.setItem(KEY, JSON.stringify({ version: 1, large: true }));
    else localStorage.removeItem(KEY);
  } catch {
    // Not kept, but shown.
  }
}

function keptLarge() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return kept?.version === 1 && kept.large === true;
  } catch {
    return false;
  }
}

function closed() {
  place = null;
  shown = null;
  edition += 1;
  fold();
  dialog.removeAttribute("data-blank");
  page.changed();
  if (!dialog.contains(document.activeElement) && document.activeElement !== document.body) return;
  need('[data-action="lesson"]').focus();
}

/** Open at a step of the form as it stands; with `ask`, readings stay hidden until they are asked for. */
export function open(step = "1", ask = false) {
  place = { view: "lesson", step, ask };
  wait();
  dialog.showModal();
  return show(step);
}

/**
 * Join the page: its `bridge`, `changed()` when the address must follow, `failed(error)`, `share(where)`.
 * @param {Joined} joined
 */
export function join(joined) {
  page = joined;
  if (keptLarge()) keepLarge(true);
  dialog.addEventListener("click", (event) => {
    const pressed = around(event, "[data-lesson-do]");
    if (pressed && pressed.getAttribute("aria-disabled") !== "true") doings[/** @type {keyof typeof doings} */ (pressed.dataset.lessonDo)]();
  });
  slider.addEventListener("input", () => go(Number(slider.value)));
  dialog.addEventListener("change", (event) => {
    const select = event.target;
    if (!(select instanceof HTMLSelectElement)) return;
    if (select.matches("[data-lesson-set]")) choose(select);
    if (select.matches("[data-lesson-view]")) show("1", select.value);
  });
  dialog.addEventListener("close", closed);
  listenToKeys(dialog, typedLine, { ...doings, jump, isFolded: () => Boolean(panel.hidden), fold });
}
