// The picture of the lesson view: the arrow that the class expects, and what moves from one step to the next.

import { need } from "./elements.js";

/** @import { Point } from "../types/shared.js" */

const MOTION = 150; // ms
const HEAD = 4.4; // units
const TAP = 8; // px

/** @type {HTMLElement} */
let dialog;
/** @type {{ stage: string, tip: Point } | null} */
let guess = null; // where the class's arrow ends, in the picture's units, and the stage that it belongs to
let view = "";

const figure = () => dialog.querySelector('[data-lesson-region="lesson-picture"] .lesson-figure');
const stage = () => figure()?.getAttribute("data-stage") ?? "";

// The class's arrow: from the common point to where the lecturer pressed.

export function unguess() {
  guess = null;
  draw();
}

function draw() {
  const over = need("[data-lesson-guess]", SVGSVGElement, dialog);
  const seen = Boolean(guess && guess.stage === stage() && view === "lesson");
  over.toggleAttribute("hidden", !seen);
  if (!guess || !seen) return;
  const [x, y] = guess.stage.split(" ").map(Number);
  const { tip } = guess;
  const length = Math.hypot(tip.x - x, tip.y - y);
  const along = { x: (tip.x - x) / length, y: (tip.y - y) / length };
  const back = { x: tip.x - HEAD * along.x, y: tip.y - HEAD * along.y };
  const half = 0.2 * HEAD;
  const line = need("line", SVGLineElement, over);
  for (const [name, value] of Object.entries({ x1: x, y1: y, x2: back.x, y2: back.y })) line.setAttribute(name, String(value));
  const sides = [1, -1].map((side) => `${back.x - side * half * along.y} ${back.y + side * half * along.x}`);
  need("path", SVGPathElement, over).setAttribute("d", `M${tip.x} ${tip.y}L${sides.join("L")}Z`);
  const name = need("text", SVGTextElement, over);
  name.setAttribute("text-anchor", along.x > 0 ? "end" : "start");
  name.setAttribute("x", String(Math.min(Math.max(tip.x, 2), 118)));
  name.setAttribute("y", String(tip.y < 12 ? tip.y + 6 : tip.y - 3));
}

/** @param {PointerEvent} event @returns {Point | null} */
function placeOf(event) {
  const drawn = need("[data-lesson-guess]", SVGSVGElement, dialog);
  const svg = figure()?.querySelector("svg");
  const matrix = (drawn.getScreenCTM() ?? (svg instanceof SVGSVGElement ? svg.getScreenCTM() : null))?.inverse();
  return matrix ? new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix) : null;
}

/** @param {PointerEvent} event */
function place(event) {
  const [x, y] = stage().split(" ").map(Number);
  if (view !== "lesson" || Number.isNaN(y) || dialog.hasAttribute("data-why")) return;
  const over = need("[data-lesson-guess]", SVGSVGElement, dialog);
  over.removeAttribute("hidden"); // a hidden picture has no scale
  const tip = placeOf(event);
  guess = tip && Math.hypot(tip.x - x, tip.y - y) > HEAD ? { stage: stage(), tip: { x: tip.x, y: tip.y } } : null;
  draw();
}

// What moves: the instrument slides to its place, then the new line grows from its tail.

/** Where the instrument of the step in view lies. */
export function instrument() {
  const one = figure()?.querySelector("[data-instrument]");
  if (!one) return { kind: "", x: 0, y: 0 };
  const box = one.getBoundingClientRect();
  return { kind: one.getAttribute("data-instrument"), x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

const isStill = () => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** @param {Element} part @param {Keyframe[]} frames @param {number} delay */
function run(part, frames, delay = 0) {
  part.animate(frames, { duration: MOTION, delay, easing: "ease-out", fill: "backwards" });
}

/** @param {ReturnType<typeof instrument>} before */
function slide(before) {
  const now = instrument();
  if (!now.kind || now.kind !== before.kind) return;
  const svg = figure()?.querySelector("svg");
  const scale = svg instanceof SVGSVGElement ? svg.getScreenCTM()?.a ?? 1 : 1;
  const by = `translate(${(before.x - now.x) / scale}px, ${(before.y - now.y) / scale}px)`;
  const tools = figure()?.querySelectorAll('[data-name="tool"], [data-name="known"], [data-name="zero"]') ?? [];
  for (const part of tools) run(part, [{ transform: by }, { transform: "none" }]);
  for (const part of figure()?.querySelectorAll('[data-name="reading"]') ?? []) run(part, [{ opacity: 0 }, { opacity: 1 }], MOTION);
}

function grow() {
  for (const part of figure()?.querySelectorAll('[data-name="fresh"]') ?? []) {
    const line = part.querySelector("line.exact");
    if (!(line instanceof SVGLineElement) || !(part instanceof SVGElement)) continue;
    part.style.transformOrigin = `${line.x1.baseVal.value}px ${line.y1.baseVal.value}px`;
    run(part, [{ transform: "scale(0)" }, { transform: "none" }], MOTION);
  }
}

/**
 * A step is in view. `before`: where the instrument of the step before lay; null if nothing is to move.
 * @param {string} name @param {ReturnType<typeof instrument> | null} before
 */
export function shown(name, before) {
  view = name;
  draw();
  if (!before || isStill()) return;
  slide(before);
  grow();
}

/** @param {HTMLElement} joined */
export function join(joined) {
  dialog = joined;
  const pane = need(".lesson-stage", HTMLElement, dialog);
  /** @type {Point | null} */
  let from = null;
  pane.addEventListener("pointerdown", (event) => (from = event.isPrimary ? { x: event.clientX, y: event.clientY } : null));
  pane.addEventListener("pointerup", (event) => {
    if (from && Math.hypot(event.clientX - from.x, event.clientY - from.y) < TAP) place(event);
    from = null;
  });
}
