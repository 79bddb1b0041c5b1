// The lesson view: one step at a time, as pycore makes it, over the whole window. It shows the form as it stands
// and keeps nothing of its own but where the lesson is. Its picture: lesson-picture.js; its waves: lesson-waves.js.

import { regionHTML, Superseded } from "./bridge.js";
import { around, need } from "./elements.js";
import * as form from "./form.js";
import { showDialog } from "./layers.js";
import { listen as listenToKeys } from "./lesson-keys.js";
import * as large from "./lesson-large.js";
import * as menu from "./lesson-menu.js";
import * as picture from "./lesson-picture.js";
import * as waves from "./lesson-waves.js";

/** @import { LessonReply } from "../types/shared.js" */
/** @import { Bridge } from "./bridge.js" */

/** @typedef {{ view: string, step: string, ask: boolean }} LessonPlace */

/**
 * @typedef {{
 *   bridge: Bridge, changed: () => void, failed: (error: unknown) => void,
 *   share: (where: Record<string, string> | null) => unknown, draw: () => Promise<void>,
 * }} Joined
 */

const dialog = need("[data-lesson]", HTMLDialogElement);
/** @param {string} mark */
const find = (mark) => need(`[data-lesson-${mark}]`, HTMLElement, dialog);
const slider = need("[data-lesson-slider]", HTMLInputElement, dialog);
const [notice, liveLine, typedLine, panel] = ["notice", "live", "typed", "panel"].map(find);
const words = need(".lesson-text", HTMLElement, dialog);
const dark = find("dark");
const waitingWords = need('[data-lesson-region="lesson-text"] > :first-child', HTMLElement, dialog);
/** @param {string} name */
const button = (name) => need(`[data-lesson-do="${name}"]`, HTMLElement, dialog);
const slug = document.documentElement.dataset.slug ?? "";
const DRAW = "draw"; // a view of its own (draw.js)
const LAST = "last"; // the last step of a view, whatever its number

/** @type {Joined} */ let page; // set by join
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
  if (!keys.has("view") || keys.get("view") === DRAW) return null;
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
  for (const one of dialog.querySelectorAll("[data-lesson-region]")) one.replaceChildren();
  region("lesson-text").replaceChildren(waitingWords);
  liveLine.textContent = liveLine.dataset.waiting ?? "";
}

/** @param {number | string} step @param {string | undefined} view @param {string} listStep a step of the page's list */
async function show(step, view = place?.view, listStep = "") {
  if (!place || view === undefined) return;
  place.step = String(step);
  place.view = view;
  const mine = ++edition;
  try {
    const asked = { page: slug, form: form.read(), view, step: place.step, list_step: listStep };
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
  const before = shown;
  shown = reply;
  place.view = reply.view;
  place.step = String(reply.step);
  revealed = false;
  dialog.dataset.view = reply.view;
  dialog.removeAttribute("data-why");
  const still = picture.instrument();
  for (const [name, html] of Object.entries(reply.regions)) region(name).innerHTML = regionHTML(html);
  const isNext = before?.view === reply.view && Number(reply.step) === Number(before.step) + 1;
  picture.shown(reply.view, isNext && !isAsking() ? still : null);
  waves.shown(reply);
  say(reply.notice);
  words.scrollTop = 0;
  Object.assign(slider, { max: String(reply.steps), value: String(reply.step) });
  slider.setAttribute("aria-valuetext", reply.progress);
  menu.follow(reply.view, reply.views);
  settle();
  keepFocus(reply.view);
  if (!waves.isMoving()) page.changed(); // browsers refuse an address that changes many times in a second
}

// Waves have no Next: Play has the focus in its place.
/** @param {string} view */
function keepFocus(view) {
  const [play, next] = [button("play"), button("next")];
  if ([document.body, dialog, play, next].some((one) => one === document.activeElement)) (view === "waves" ? play : next).focus();
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
const isWhy = () => dialog.hasAttribute("data-why");
// What follows from the switches: what is hidden, what the buttons say, what is read out.
function settle() {
  const asking = isAsking();
  dialog.toggleAttribute("data-asking", asking);
  const next = button("next");
  const isEnd = !isWhy() && !asking && Number(shown?.step) === shown?.steps;
  const label = isWhy() ? "return" : asking ? "show" : isEnd && menu.neighbour(1) ? "onward" : "next";
  next.textContent = next.dataset[label] ?? "";
  disable(next, isEnd && !menu.neighbour(1));
  disable(button("back"), !isWhy() && Number(shown?.step) === 1 && !menu.neighbour(-1));
  disable(button("why"), !canExplain());
  button("why").toggleAttribute("data-idle", !shown?.explained); // most moves say why in their words
  press("ask", Boolean(place?.ask));
  press("hide", isBlank());
  press("why", isWhy());
  if (shown) announce(shown, asking);
}

// Why is told once the class has seen what was asked.
const canExplain = () => Boolean(shown?.explained) && !isAsking();

/** @param {string} name @param {boolean} is */
function press(name, is) {
  for (const one of dialog.querySelectorAll(`[data-lesson-do="${name}"]`)) one.setAttribute("aria-pressed", String(is));
}

/** @param {LessonReply} reply @param {boolean} asking */
function announce(reply, asking) {
  if (waves.isMoving()) return;
  const sentence = isWhy() ? reply.why : isBlank() && reply.blanked ? reply.blanked : asking ? reply.asked : reply.announce;
  liveLine.textContent = [reply.notice, sentence].filter(Boolean).join(" ");
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

/** @param {number} by degrees */
const turn = (by) => waves.turn(by, (step) => show(step));

/** @param {number} by */
function move(by) {
  const step = Number(place?.step) + by;
  if (isWhy()) doings.why();
  else if (menu.isOffered()) answerOffer(by);
  else if (by > 0 && isAsking()) reveal();
  else if (shown && (step < 1 || (step > shown.steps && shown.view !== "waves")) && menu.neighbour(by)) offer(by);
  else if (shown?.view === "waves") turn(10 * by);
  else go(step);
}

// Past the last step stands the next view: the first press offers it, so that no press too many leaves the picture.
/** @param {number} by */
function offer(by) {
  fold(false);
  liveLine.textContent = menu.offer(by);
}

/** @param {number} by */
function answerOffer(by) {
  const one = menu.isOffered() === by ? menu.neighbour(by) : null;
  fold();
  if (one) enter(one, by < 0 ? LAST : "1");
}

const reveal = () => ((revealed = true), settle());

const doings = {
  next: () => move(1), back: () => move(-1),
  first: () => go(1),
  last: () => go(shown?.steps ?? 0),
  reveal: () => isAsking() && reveal(),
  close: () => dialog.close(),
  why() {
    if (!isWhy() && !canExplain()) return;
    fold();
    dialog.toggleAttribute("data-why");
    settle();
  },
  ask() {
    if (!place) return;
    place.ask = !place.ask;
    revealed = false;
    settle();
    page.changed();
  },
  hide() {
    dialog.toggleAttribute("data-blank");
    settle();
  },
  dark: () => (dark.hidden = !dark.hidden),
  more: () => fold(!panel.hidden),
  large: () => setLarge(!dialog.hasAttribute("data-large")),
  night: () => need("[data-theme-switch]").click(),
  unguess: () => picture.unguess(),
  jump: () => jump(need("[data-lesson-jump]", HTMLInputElement, dialog).value),
  share: () => page.share(where()),
  draw: () => page.draw().catch(page.failed),
  play: () => waves.play((step) => show(step)),
  "back-ten": () => turn(-10),
  "on-ten": () => turn(10),
  pair() {
    const pairs = need('[data-lesson-set="order"]', HTMLSelectElement, dialog);
    pairs.selectedIndex = (pairs.selectedIndex + 1) % pairs.options.length;
    choose("order", pairs.value);
  },
};

/**
 * Go to a step by its number as typed, which is the number that it has in the page's list; pycore says what there is if
 * it is none.
 * @param {string} text
 */
function jump(text) {
  if (!place || !text.trim()) return;
  fold();
  show(place.step, place.view, text.trim());
}

// The menu lies over the step's words, so that the picture stays in view.
function fold(folded = true) {
  menu.offer(0);
  if (panel.hidden === folded) return;
  panel.hidden = folded;
  panel.scrollTop = 0;
  words.inert = !folded;
  button("more").setAttribute("aria-expanded", String(!folded));
  if (folded && panel.contains(document.activeElement)) button("more").focus();
}

// A choice made here is the form's own: the page answers it, and the lesson follows from its first step.
/** @param {string} name @param {string} value @param {string} step */
function choose(name, value, step = "1") {
  if (place) Object.assign(place, { step, view: "lesson" });
  form.fill({ [name]: value });
  const changed = form.controls().find((one) => one.name === name && (one.type !== "radio" || one.checked));
  changed?.dispatchEvent(new Event("input", { bubbles: true }));
}

/** @param {HTMLElement} one a view or a method of the menu @param {string} step */
function enter({ dataset: { lessonView, lessonMethod } }, step) {
  if (lessonView) show(step, lessonView);
  if (lessonMethod) choose("method", lessonMethod, step);
}

/** @param {HTMLElement} pressed */
function pressedOne(pressed) {
  if (pressed.getAttribute("aria-disabled") === "true") return;
  const { lessonDo } = pressed.dataset;
  if (lessonDo) doings[/** @type {keyof typeof doings} */ (lessonDo)]();
  enter(pressed, "1");
  if (!lessonDo || panel.contains(pressed)) fold();
}

// A letter of the menu, whether the menu is open or not.
/** @param {string} letter */
function pressLetter(letter) {
  const one = dialog.querySelector(`[data-lesson-key="${CSS.escape(letter)}"]:not([hidden])`);
  if (one instanceof HTMLElement) pressedOne(one);
  return Boolean(one);
}

/** @param {boolean} on */
function setLarge(on) {
  dialog.toggleAttribute("data-large", on);
  press("large", on);
  large.keep(on);
}

function closed() {
  place = null;
  shown = null;
  edition += 1;
  fold();
  waves.stop();
  picture.unguess();
  dark.hidden = true;
  for (const mark of ["data-blank", "data-why", "data-view"]) dialog.removeAttribute(mark);
  page.changed();
  if (!dialog.contains(document.activeElement) && document.activeElement !== document.body) return;
  need('[data-action="lesson"]').focus();
}

/** Open at a step of the form as it stands; with `ask`, readings stay hidden until they are asked for. */
export function open(step = "1", ask = false) {
  place = { view: "lesson", step, ask };
  wait();
  showDialog(dialog);
  return show(step);
}

/**
 * Join the page: its `bridge`, `changed()` when the address must follow, `failed(error)`, `share(where)`, `draw()`.
 * @param {Joined} joined
 */
export function join(joined) {
  page = joined;
  menu.join(dialog);
  if (large.kept()) setLarge(true);
  large.follow(() => setLarge(large.kept()));
  dialog.addEventListener("click", (event) => {
    const pressed = around(event, "[data-lesson-do], [data-lesson-key]");
    if (pressed) pressedOne(pressed);
    if (event.target === dark) doings.dark();
  });
  slider.addEventListener("input", () => go(Number(slider.value)));
  dialog.addEventListener("change", (event) => {
    const select = event.target;
    if (select instanceof HTMLSelectElement && select.matches("[data-lesson-set]")) choose(select.dataset.lessonSet ?? "", select.value);
  });
  dialog.addEventListener("close", closed);
  picture.join(dialog);
  waves.join(dialog, (step) => show(step));
  listenToKeys(dialog, typedLine, {
    ...doings, jump, fold, pressLetter, turn,
    isFolded: () => Boolean(panel.hidden),
    isWaves: () => shown?.view === "waves",
    isAside: isWhy,
  });
}
