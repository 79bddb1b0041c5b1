// The move in hand: the sentence that is pointed at, focused or pressed inks its lines on the sheet, and a line that is
// pressed brings its sentence. What was drawn before stays, paler; what comes later is paler still.

import { around, need } from "./elements.js";

const SVG = "http://www.w3.org/2000/svg";
const AROUND = [0, 4, 8, 12, 16]; // px from a finger within which a line counts as pressed
const SIDE = 4.4; // mm, of the number beside the line
const BESIDE = 5; // mm from the line to the number's middle
const ALONG = [0.62, 0.4, 0.8, 0.25, 0.5]; // where along the line it may stand, in order of preference
const list = need("[data-list]");
const figure = need(".figure");

let held = ""; // the step that was pressed
let shown = ""; // the step whose lines are inked
let passed = ""; // the step that is inked because the reader has scrolled to it

const moves = () => /** @type {HTMLElement[]} */ ([...list.querySelectorAll("section.working .moves li")]);
/** @param {string} step */
const moveOf = (step) => moves().find((move) => move.dataset.forStep === step);
/** @param {Event} event */
const moveAt = (event) => {
  const move = around(event, "section.working .moves li");
  return move instanceof HTMLElement ? move : null;
};

/** Where a number may stand beside the lines of a step, the best place first. @param {Element} group */
function places(group) {
  const line = group.querySelector(".exact") ?? group.querySelector("line");
  if (line) {
    const [x1, y1, x2, y2] = ["x1", "y1", "x2", "y2"].map((name) => Number(line.getAttribute(name)));
    const long = Math.hypot(x2 - x1, y2 - y1) || 1;
    const away = { x: ((y2 - y1) / long) * BESIDE, y: ((x2 - x1) / long) * BESIDE };
    return ALONG.flatMap((share) => [1, -1].map((side) => (
      { x: x1 + (x2 - x1) * share + side * away.x, y: y1 + (y2 - y1) * share - side * away.y }
    )));
  }
  const box = /** @type {SVGGElement} */ (group).getBBox();
  return [{ x: box.x + box.width / 2, y: box.y + box.height / 2 }];
}

/** The first place that hides no word. @param {Element} drawing @param {Element} group */
function free(drawing, group) {
  const words = [...drawing.querySelectorAll("text")].map((one) => /** @type {SVGTextElement} */ (/** @type {Element} */ (one)).getBBox());
  const listed = places(group);
  return listed.find(({ x, y }) => !words.some((box) => x + SIDE / 2 > box.x && x - SIDE / 2 < box.x + box.width
    && y + SIDE / 2 > box.y && y - SIDE / 2 < box.y + box.height)) ?? listed[0];
}

/** @param {Element} drawing @param {string} step @param {string} number */
function mark(drawing, step, number) {
  const group = drawing.querySelector(`:scope g[data-step="${CSS.escape(step)}"]`);
  if (!group || !drawing.checkVisibility()) return;
  const { x, y } = free(drawing, group);
  const place = document.createElementNS(SVG, "g");
  place.setAttribute("class", "step-mark");
  place.setAttribute("aria-hidden", "true");
  const box = document.createElementNS(SVG, "rect");
  const text = document.createElementNS(SVG, "text");
  for (const [name, value] of Object.entries({ x: x - SIDE / 2, y: y - SIDE / 2, width: SIDE, height: SIDE })) {
    box.setAttribute(name, String(value));
  }
  for (const [name, value] of Object.entries({ x, y: y + SIDE * 0.3, "font-size": SIDE * 0.8 })) {
    text.setAttribute(name, String(value));
  }
  text.textContent = number;
  place.append(box, text);
  drawing.append(place);
}

/** @param {string} step */
function ink(step) {
  if (step === shown) return;
  shown = step;
  for (const old of figure.querySelectorAll(".step-mark")) old.remove();
  const all = moves();
  const own = all.find((move) => move.dataset.forStep === step);
  for (const move of all) {
    if (move === own) move.setAttribute("aria-current", "step");
    else move.removeAttribute("aria-current");
  }
  for (const drawing of figure.querySelectorAll("svg[data-sheet], svg[data-view]")) {
    const groups = [...drawing.querySelectorAll("g[data-step]")];
    const drawn = groups.some((group) => group.dataset.step === step);
    // What only measures inks what was drawn last.
    const last = Math.max(0, ...groups.map((group) => Number(group.dataset.step)).filter((one) => one <= Number(step)));
    for (const group of groups) {
      const difference = Number(group.dataset.step) - last;
      if (!last || difference === 0) delete group.dataset.when;
      else group.dataset.when = difference < 0 ? "before" : "later";
    }
    if (own && drawn) mark(drawing, step, String(all.indexOf(own) + 1));
  }
  figure.dispatchEvent(new Event("inked"));
}

/** The step whose lines are inked; "" if none is. */
export const inked = () => shown;

/**
 * Ink the move that is in view between two heights of the window: the one in hand if it is there, else the first.
 * @param {number} top @param {number} bottom
 */
export function follow(top, bottom) {
  const listed = moves().map((move) => ({ step: move.dataset.forStep ?? "", box: move.getBoundingClientRect() }));
  const seen = listed.filter(({ box }) => box.height > 0 && box.bottom > top && box.top < bottom);
  if (shown && shown !== passed && seen.some((one) => one.step === shown)) return;
  held = "";
  passed = seen.find(({ box }) => box.top >= top - box.height / 3)?.step ?? "";
  ink(passed);
}

/** Nothing is inked any longer because it was scrolled to. */
export function unfollow() {
  if (shown === passed) ink(held);
  passed = "";
}

// What is only pointed at does not unfold: the list would move under the pointer.
/** @param {HTMLElement} move */
function take(move) {
  passed = "";
  for (const other of moves()) {
    other.tabIndex = other === move ? 0 : -1;
    other.toggleAttribute("data-unfolded", other === move);
  }
  move.focus({ preventScroll: true });
  move.scrollIntoView({ block: "nearest" });
}

// A line is thin: what lies a little beside the finger counts too.
/** @param {MouseEvent} event */
function lineAt(event) {
  for (const far of AROUND) {
    for (const [x, y] of [[far, 0], [-far, 0], [0, far], [0, -far], [far, far], [-far, -far], [far, -far], [-far, far]]) {
      const found = document.elementFromPoint(event.clientX + x, event.clientY + y)?.closest("g[data-step]");
      if (found && figure.contains(found)) return found.getAttribute("data-step") ?? "";
    }
  }
  return "";
}

/** @param {MouseEvent} event @param {(move: HTMLElement) => void} bring */
function pressed(event, bring) {
  const move = moveAt(event);
  if (move) {
    held = held === move.dataset.forStep ? "" : (move.dataset.forStep ?? "");
    take(move);
    ink(held || (move.dataset.forStep ?? ""));
    return;
  }
  if (!around(event, ".figure svg")) return;
  held = lineAt(event);
  const its = held ? moveOf(held) : undefined;
  if (its) {
    bring(its);
    take(its);
  }
  ink(its ? held : "");
}

/** @param {KeyboardEvent} event */
function walk(event) {
  const move = moveAt(event);
  if (!move) return;
  const all = moves();
  const at = all.indexOf(move);
  const next = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1 }[event.key];
  if (next !== undefined) {
    event.preventDefault();
    if (all[next]) take(all[next]);
  } else if (event.key === "Escape" && shown) {
    event.preventDefault();
    held = "";
    ink("");
  }
}

/** What stands there is about to change: for that it is as pycore wrote it. Gives what brings the move in hand back. */
export function rest() {
  const step = shown;
  ink("");
  return () => step && again(step);
}

/** The move in hand stays in hand. @param {string} step */
function again(step) {
  const move = moveOf(step);
  if (!move) held = "";
  if (step !== passed) move?.setAttribute("data-unfolded", "");
  ink(move ? step : "");
}

/**
 * Follow pointer and keyboard; `bring(move)` brings a sentence into view.
 * @param {(move: HTMLElement) => void} bring
 */
export function listen(bring) {
  document.addEventListener("click", (event) => pressed(event, bring));
  list.addEventListener("keydown", walk);
  list.addEventListener("focusin", (event) => {
    const move = moveAt(event);
    if (!move) return;
    move.setAttribute("data-unfolded", "");
    ink(move.dataset.forStep ?? "");
  });
  list.addEventListener("focusout", (event) => moveAt(event) && ink(held));
  list.addEventListener("pointerover", (event) => {
    const move = moveAt(event);
    if (move && event.pointerType === "mouse") ink(move.dataset.forStep ?? "");
  });
  list.addEventListener("pointerleave", () => {
    const focused = document.activeElement?.closest("section.working .moves li");
    ink(focused instanceof HTMLElement ? (focused.dataset.forStep ?? "") : held);
  });
}
