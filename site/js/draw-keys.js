// Everything of the drawing by keys alone, while the paper has the focus.

import { mark } from "./draw-hand.js";
import { wrap } from "./draw-tools.js";

/** @import { Desk } from "./draw-desk.js" */

/** @type {Record<string, [number, number]>} */
const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
/** @type {Record<string, number>} */
const TURNS = { "[": 1, "]": -1, "{": 0.1, "}": -0.1 };
/** @type {Record<string, string>} */
const VERBS = { 1: "place", 2: "turn", 3: "mark", 4: "draw" };
/** @type {Record<string, string>} */
const KINDS = { a: "arrow", f: "full", d: "dashed" };
/** @type {Record<string, string>} */
const BUTTONS = { z: "undo", y: "redo", o: "onto", l: "along", j: "judge", 0: "whole", "+": "closer", "=": "closer", "-": "farther" };

/**
 * @param {Desk} desk
 * @param {(does: string, value?: string) => void} press does what a button does
 */
export function listen(desk, press) {
  const { board, tools, view, drawing } = desk;
  const leads = () => desk.verb === "mark" || desk.verb === "draw";

  function showPencil() {
    const tip = tools.tip(desk.edge);
    view.reveal(tip);
    view.pencil(tip, desk.line(tip));
    view.look(tip);
    desk.speak(desk.words.pencil(desk.edge));
  }

  function showTool() {
    desk.lay();
    view.reveal(tools.pose);
    desk.settled();
  }

  /** @param {[number, number]} step @param {number} size */
  function arrow([across, down], size) {
    const verb = desk.verb;
    if (leads()) {
      // On the protractor the figures go up anticlockwise, which is to the left of its middle.
      const sign = desk.edge === "ruler" ? across - down : -across - down;
      tools.lead(desk.edge, Math.round((tools.pencil[desk.edge] + sign * size) * 1000) / 1000);
      showPencil();
    } else if (verb === "turn") {
      tools.turn(tools.pose.deg + (-across - down) * size);
      showTool();
    } else {
      tools.place(tools.pose.x + across * size, tools.pose.y + down * size);
      showTool();
    }
  }

  function enter() {
    if (desk.verb === "mark") {
      desk.did(mark(tools, drawing));
    } else if (desk.verb === "draw" && !desk.begun) {
      desk.begin(tools.tip("ruler"));
      showPencil();
      desk.say("begun");
    } else if (desk.verb === "draw") desk.end(tools.tip("ruler"));
  }

  /** @param {string} key @param {boolean} fine */
  function does(key, fine) {
    const small = key.length === 1 ? key.toLowerCase() : key;
    if (ARROWS[key]) arrow(ARROWS[key], fine ? 0.1 : 1);
    else if (key in TURNS) {
      tools.turn(tools.pose.deg + TURNS[key]);
      showTool();
    } else if (key === "Enter" || key === " ") enter();
    else if (small === "c" && leads()) {
      if (tools.next(desk.edge)) showPencil();
      else desk.say("no-edge-point");
    } else if (small === "b") {
      tools.turn(wrap(tools.pose.deg + 180));
      showTool();
    } else if (small === "r" || small === "p") press("tool", small === "r" ? "ruler" : "protractor");
    else if (key in VERBS) press("verb", VERBS[key]);
    else if (small in KINDS) press("kind", KINDS[small]);
    else if (small in BUTTONS) press(BUTTONS[small]);
    else return false;
    return true;
  }

  board.addEventListener("keydown", (event) => {
    if (event.altKey || (event.metaKey && event.key !== "z") || (event.ctrlKey && !"zy".includes(event.key))) return;
    if (does(event.key, event.shiftKey)) event.preventDefault();
  });
  board.addEventListener("blur", () => desk.rest());
}
