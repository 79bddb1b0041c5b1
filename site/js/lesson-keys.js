// Keys and swipes of the classroom view, presenter remotes among them. Digits wait for Enter; nothing runs by a clock.

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

/** `doings` are called by name; `typed` shows the digits of a step that is being typed. */
export function listen(dialog, typed, doings) {
  let digits = "";

  function hold(next) {
    digits = next;
    typed.hidden = !digits;
    typed.textContent = typed.dataset.words.replace("{digits}", digits);
  }

  function enter(event) {
    if (digits) {
      event.preventDefault();
      const step = digits;
      hold("");
      doings.jump(step);
    } else if (!event.target.closest("button")) {
      event.preventDefault();
      doings.reveal();
    }
  }

  // On any button but Next, space presses that button, as everywhere.
  function space(event) {
    if (event.target.closest('button:not([data-lesson-do="next"])')) return;
    event.preventDefault();
    doings[event.shiftKey ? "back" : "next"]();
  }

  function typedIn(event) {
    if (event.key === "Enter" && event.target.matches("input")) {
      event.preventDefault();
      doings.jump(event.target.value);
    }
  }

  function pressed(event) {
    if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
    if (event.target.matches('select, input:not([type="range"])')) {
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
    if (event.key === " " && event.target.matches('[data-lesson-do="next"]')) event.preventDefault();
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

function listenToSwipes(dialog, doings) {
  let from = null;
  dialog.addEventListener("pointerdown", (event) => {
    const inControl = event.target.closest("input, select, button");
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
