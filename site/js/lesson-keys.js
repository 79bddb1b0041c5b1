// Keys and swipes of the lesson view, presenter remotes among them. Digits wait for Enter. A letter is pressed in the
// menu, open or not.

import { around, controlOf } from "./elements.js";

/** @import { Point } from "../types/shared.js" */

/** @typedef {"next" | "back" | "first" | "last" | "dark" | "why" | "more"} Move */

/**
 * @typedef {Record<Move | "reveal" | "play", () => unknown> & {
 *   jump(step: string): void, fold(): void, pressLetter(letter: string): boolean, turn(degrees: number): void,
 *   isFolded(): boolean, isWaves(): boolean, isAside(): boolean,
 * }} Doings
 */

/** @type {Record<string, Move>} */
const MOVES = {
  ArrowRight: "next",
  ArrowDown: "next",
  PageDown: "next",
  ArrowLeft: "back",
  ArrowUp: "back",
  PageUp: "back",
  Home: "first",
  End: "last",
  ".": "dark", // what presenter remotes send to darken the screen
  w: "why",
  m: "more",
};
/** @type {Record<string, number>} */
const TURNS = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };
const SWIPE = 48; // px
const LONGEST = 3; // digits of a step's number

/**
 * `doings` are called by name; `typed` shows the digits of a step that is being typed.
 * @param {HTMLDialogElement} dialog
 * @param {HTMLElement} typed
 * @param {Doings} doings
 */
export function listen(dialog, typed, doings) {
  let digits = "";

  /** @param {string} next */
  function hold(next) {
    digits = next;
    typed.hidden = !digits;
    typed.textContent = (typed.dataset.words ?? "").replace("{digits}", digits);
  }

  /** @param {KeyboardEvent} event */
  function enter(event) {
    if (digits) {
      event.preventDefault();
      const step = digits;
      hold("");
      doings.jump(step);
    } else if (!around(event, "button")) {
      event.preventDefault();
      doings.reveal();
    }
  }

  // On any button but Next, space presses that button, as everywhere.
  /** @param {KeyboardEvent} event */
  function space(event) {
    if (around(event, 'button:not([data-lesson-do="next"])')) return;
    event.preventDefault();
    doings[doings.isWaves() ? "play" : event.shiftKey ? "back" : "next"]();
  }

  /** @param {KeyboardEvent} event */
  function command(event) {
    const turned = doings.isWaves() ? TURNS[event.key] : undefined;
    const name = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    if (turned !== undefined) doings.turn(turned * (event.shiftKey ? 1 : 10));
    else if (Object.hasOwn(MOVES, name)) doings[MOVES[name]]();
    else if (!/^[a-z]$/.test(name) || !doings.pressLetter(name)) return;
    event.preventDefault();
    hold("");
  }

  /** @param {KeyboardEvent} event */
  function typedIn(event) {
    if (event.key === "Enter" && event.target instanceof HTMLInputElement) {
      event.preventDefault();
      doings.jump(event.target.value);
    }
  }

  /** @param {KeyboardEvent} event */
  function pressed(event) {
    if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
    // Page keys are those of a remote control: they never change a choice that happens to have the focus.
    if (controlOf(event)?.matches('select, input:not([type="range"])') && !event.key.startsWith("Page")) {
      typedIn(event);
    } else if (/^\d$/.test(event.key)) {
      hold((digits + event.key).slice(-LONGEST));
    } else if (event.key === "Enter") {
      enter(event);
    } else if (event.key === " ") {
      hold("");
      space(event);
    } else {
      command(event);
    }
  }

  dialog.addEventListener("keydown", pressed);
  dialog.addEventListener("keyup", (event) => {
    // Some engines press a button when space comes up.
    if (event.key === " " && around(event, '[data-lesson-do="next"]') === event.target) event.preventDefault();
  });
  dialog.addEventListener("cancel", (event) => {
    if (!digits && doings.isFolded() && !doings.isAside()) return;
    event.preventDefault();
    if (!digits && doings.isFolded()) doings.why();
    hold("");
    doings.fold();
  });
  dialog.addEventListener("close", () => hold(""));
  listenToSwipes(dialog, doings);
}

/** @param {HTMLDialogElement} dialog @param {Doings} doings */
function listenToSwipes(dialog, doings) {
  /** @type {Point | null} */
  let from = null;
  dialog.addEventListener("pointerdown", (event) => {
    const inControl = around(event, "input, select, button");
    from = event.pointerType === "mouse" || inControl || !event.isPrimary ? null : { x: event.clientX, y: event.clientY };
  });
  dialog.addEventListener("pointercancel", () => (from = null));
  dialog.addEventListener("pointerup", (event) => {
    if (!from || !event.isPrimary || (globalThis.visualViewport?.scale ?? 1) > 1.01) return;
    const [across, along] = [event.clientX - from.x, event.clientY - from.y];
    from = null;
    if (doings.isWaves() || Math.abs(across) < SWIPE || Math.abs(across) < 2 * Math.abs(along)) return;
    doings[across < 0 ? "next" : "back"]();
  });
}
