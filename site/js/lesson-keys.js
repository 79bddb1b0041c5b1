// Keys and swipes of the classroom view, presenter remotes among them. Digits wait for Enter; nothing runs by a clock.

import { around, controlOf } from "./elements.js";

/** @import { Point } from "../types/shared.js" */

/** @typedef {"next" | "back" | "first" | "last" | "blank" | "ask"} Move */

/**
 * @typedef {Record<Move | "reveal", () => unknown>
 *   & { jump(step: string): void, isFolded(): boolean, fold(): void }} Doings
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
  b: "blank",
  B: "blank",
  ".": "blank", // what presenter remotes send to darken the screen
  q: "ask",
  Q: "ask",
};
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
    doings[event.shiftKey ? "back" : "next"]();
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
    if (controlOf(event)?.matches('select, input:not([type="range"])')) {
      typedIn(event);
    } else if (/^\d$/.test(event.key)) {
      hold((digits + event.key).slice(-LONGEST));
    } else if (event.key === "Enter") {
      enter(event);
    } else if (event.key === " ") {
      hold("");
      space(event);
    } else if (Object.hasOwn(MOVES, event.key)) {
      event.preventDefault();
      hold("");
      doings[MOVES[event.key]]();
    }
  }

  dialog.addEventListener("keydown", pressed);
  dialog.addEventListener("keyup", (event) => {
    // Some engines press a button when space comes up.
    if (event.key === " " && around(event, '[data-lesson-do="next"]') === event.target) event.preventDefault();
  });
  dialog.addEventListener("cancel", (event) => {
    if (!digits && doings.isFolded()) return;
    event.preventDefault();
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
    if (Math.abs(across) < SWIPE || Math.abs(across) < 2 * Math.abs(along)) return;
    doings[across < 0 ? "next" : "back"]();
  });
}
