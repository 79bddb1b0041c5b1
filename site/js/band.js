// On a phone the drawing stays in view as a band at the top, once the reader has scrolled past it to the moves. The band
// shows the part of the drawing that the move in view is about.

import { need } from "./elements.js";
import * as hand from "./hand.js";

const figure = need(".figure");
const view = need(".view", HTMLElement, figure);
const corner = need(".answer");
const tabs = need(".tabs");
const foot = need(".action-bar");
const phone = matchMedia("(max-width: 47.99em) and (min-height: 20.01em)"); // lower, it would leave nothing to read
const SHARE = 0.45; // of the drawing that is still to be seen where the band takes its place
const ROOM = 6; // units around the lines of a move
const CLOSEST = 1.5; // how much larger than the whole drawing on this phone a part of it may be

let whole = ""; // the part that the drawing shows when it is no band: all of it
let framed = "";

function drawing() {
  const svg = view.querySelector("svg");
  return svg instanceof SVGSVGElement ? svg : null;
}

/** The lines that a move is about: its own, or the last before it if it draws none. @param {SVGSVGElement} svg */
function linesOf(svg) {
  const step = Number(hand.inked());
  const groups = [...svg.querySelectorAll("[data-step]")].filter((one) => one instanceof SVGGElement);
  const drawn = groups.filter((one) => step && Number(one.dataset.step) <= step);
  const last = Math.max(...drawn.map((one) => Number(one.dataset.step)));
  const marks = [...svg.querySelectorAll(".step-mark")].filter((one) => one instanceof SVGGElement);
  return [...drawn.filter((one) => Number(one.dataset.step) === last), ...marks].map((one) => one.getBBox());
}

/** Where a part of this length begins, about its middle, within what there is. @param {number} middle @param {number} part @param {number} all */
const begin = (middle, part, all) => (part >= all ? (all - part) / 2 : Math.min(Math.max(middle - part / 2, 0), all - part));

/** @param {SVGSVGElement} svg */
function partOf(svg) {
  const [, , width, height] = whole.split(" ").map(Number);
  const boxes = linesOf(svg);
  if (!boxes.length) return whole;
  const [left, top] = [Math.min(...boxes.map(({ x }) => x)), Math.min(...boxes.map(({ y }) => y))];
  const right = Math.max(...boxes.map((box) => box.x + box.width));
  const bottom = Math.max(...boxes.map((box) => box.y + box.height));
  const shape = svg.clientWidth / (svg.clientHeight || 1);
  const needed = Math.max(right - left + 2 * ROOM, (bottom - top + 2 * ROOM) * shape, width / CLOSEST);
  const across = Math.min(needed, Math.max(width, height * shape));
  const down = across / shape;
  const [x, y] = [begin((left + right) / 2, across, width), begin((top + bottom) / 2, down, height)];
  return [x, y, across, down].map((one) => one.toFixed(2)).join(" ");
}

/** Half a label says something else: one that the band cuts or its answer covers is not shown. @param {SVGSVGElement} svg */
function passOver(svg) {
  if (!figure.hasAttribute("data-band")) {
    // Where nothing is cut nothing is measured: every edit comes here.
    for (const label of svg.querySelectorAll("[data-cut]")) label.removeAttribute("data-cut");
    return;
  }
  const [band, answer] = [svg.getBoundingClientRect(), corner.getBoundingClientRect()];
  for (const label of svg.querySelectorAll("text")) {
    const { left, right, top, bottom } = label.getBoundingClientRect();
    const inside = left >= band.left && right <= band.right && top >= band.top && bottom <= band.bottom;
    const covered = left < answer.right && top < answer.bottom;
    label.toggleAttribute("data-cut", !inside || covered);
  }
}

/** @param {boolean} anew whether its place has changed too */
function frame(anew = false) {
  const svg = drawing();
  if (!svg) return;
  const now = svg.getAttribute("viewBox") ?? "";
  if (now !== framed) whole = now; // it was drawn anew
  framed = figure.hasAttribute("data-band") ? partOf(svg) : whole;
  if (framed !== now) svg.setAttribute("viewBox", framed);
  if (framed !== now || anew) passOver(svg);
}

function follow() {
  const above = -figure.getBoundingClientRect().top;
  const is = phone.matches && view.childElementCount > 0 && above > (1 - SHARE) * (figure.offsetHeight || 1);
  const turns = is !== figure.hasAttribute("data-band");
  if (turns) {
    // The place keeps its height, so that nothing moves below it.
    figure.style.setProperty("min-height", is ? `${figure.offsetHeight}px` : "0");
    figure.toggleAttribute("data-band", is);
    if (!is) hand.unfollow();
  }
  if (is) hand.follow(tabs.getBoundingClientRect().bottom, foot.getBoundingClientRect().top);
  frame(turns);
}

/** The whole sheet was asked for: it comes into view, below the drawing. @param {Event} event */
function unfolded(event) {
  const { target } = event;
  if (target instanceof HTMLDetailsElement && target.open) {
    need(".sheet", HTMLElement, figure).scrollIntoView({ block: "nearest" });
  }
}

/** What stands there is about to be replaced; gives what follows that. */
export function rest() {
  const inHand = hand.rest();
  return () => {
    inHand();
    frame(true);
  };
}

/** Begin to follow the page's scroll. */
export function listen() {
  document.addEventListener("scroll", follow, { passive: true });
  document.addEventListener("click", () => figure.hasAttribute("data-band") && follow());
  need(".request").addEventListener("toggle", unfolded);
  figure.addEventListener("inked", () => frame());
  phone.addEventListener("change", follow);
}
