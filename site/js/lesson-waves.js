// The waves of the lesson view: a cursor that is dragged, turned by keys, or played. Each moment is pycore's own.

import { need } from "./elements.js";

/** @import { LessonReply } from "../types/shared.js" */

const TURN = 6000; // ms for one turn
const CALM = { step: 30, wait: 1000 }; // reduced motion: 30 degrees each second

/** @typedef {(step: string) => Promise<unknown>} Show */

/** @type {HTMLElement} */
let dialog;
let degrees = 0;
let playing = 0; // a number for each time that it is played; 0 while it stands
let isDragged = false;

/** @param {number} turned */
const stepOf = (turned) => (1 + turned / 10).toFixed(1).replace(/\.0$/, "");
/** @param {number} turned */
const within = (turned) => ((Math.round(turned) % 360) + 360) % 360;

/** Whether it is played or dragged: what is said and the address follow when it stands. */
export const isMoving = () => playing > 0 || isDragged;

/** @param {LessonReply} reply */
export function shown(reply) {
  if (reply.view === "waves") degrees = reply.turned;
  else stop();
}

/** @param {number} by @param {Show} show */
export function turn(by, show) {
  stop();
  degrees = within(degrees + by);
  show(stepOf(degrees));
}

export function stop() {
  playing = 0;
  label();
}

function label() {
  const button = need('[data-lesson-do="play"]', HTMLElement, dialog);
  button.textContent = (playing ? button.dataset.pause : button.dataset.play) ?? "";
}

/** @param {number} time */
const wait = (time) => new Promise((done) => setTimeout(done, time));

/** Play one turn, or stand still. @param {Show} show */
export async function play(show) {
  if (playing) return stand(show);
  const mine = (playing = performance.now());
  label();
  const start = degrees;
  const isCalm = matchMedia("(prefers-reduced-motion: reduce)").matches;
  for (let turned = 0; turned < 360 && playing === mine; ) {
    await (isCalm ? wait(CALM.wait) : new Promise(requestAnimationFrame));
    if (playing !== mine) return;
    turned = Math.min(360, isCalm ? turned + CALM.step : (360 * (performance.now() - mine)) / TURN);
    await show(stepOf(within(start + turned)));
  }
  if (playing === mine) await stand(show);
}

/** @param {Show} show */
function stand(show) {
  stop();
  return show(stepOf(degrees));
}

/** @param {HTMLElement} joined @param {Show} show */
export function join(joined, show) {
  dialog = joined;
  const pane = need(".lesson-stage", HTMLElement, dialog);

  // The curves run from 0 to 360 degrees between the ends of their axis, which the picture itself says.
  /** @param {PointerEvent} event */
  function follow(event) {
    const axis = pane.querySelector('[data-name="axis"]')?.getBoundingClientRect();
    if (!axis?.width) return;
    const turned = Math.round((360 * (event.clientX - axis.x)) / axis.width);
    const held = Math.min(Math.max(turned, 0), 359);
    if (held === degrees) return;
    stop();
    degrees = held;
    show(stepOf(degrees));
  }

  pane.addEventListener("pointerdown", (event) => {
    if (!pane.querySelector('[data-name="axis"]')) return;
    isDragged = true;
    pane.setPointerCapture(event.pointerId);
    follow(event);
  });
  pane.addEventListener("pointermove", (event) => isDragged && follow(event));
  for (const end of ["pointerup", "pointercancel"]) {
    pane.addEventListener(end, () => {
      if (isDragged) show(stepOf(degrees));
      isDragged = false;
    });
  }
}
