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
const BUTTONS = { z: "undo", y: "redo", o: "onto", l: "along", g: "against", j: "judge", 0: "whole", "+": "closer", "=": "closer", "-": "farther" };

/** @type {Record<string, string[]>} a key takes the first of these that is not in hand */
const TOOLS = { r: ["ruler"], p: ["protractor"], s: ["square-60", "square-45"], m: ["compasses"] };

/**
 * @param {Desk} desk
 * @param {(does: string, value?: string) => void} press does what a button does
 */
export function listen(desk, press) {
  const { board, tools, view, drawing } = desk;
  const leads = () => desk.verb === "mark" || desk.verb === "draw";

  function showPencil() {
    const tip = tools.tip(desk.edge);
    if (desk.edge === "compasses") desk.moved();
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
      // Round a centre degrees go up anticlockwise, which is to the left of its top.
      const sign = tools.shapes[desk.edge].isStraight ? across - down : -across - down;
      tools.lead(desk.edge, Math.round((tools.pencil[desk.edge] + sign * size) * 1000) / 1000);
      showPencil();
    } else if (verb === "turn" && tools.kind === "compasses") {
      tools.openTo(Math.round((tools.open + (across - down) * size) * 1000) / 1000);
      showTool();
    } else if (verb === "turn") {
      tools.turn(tools.pose.deg + (-across - down) * size);
      showTool();
    } else {
      tools.step(across * size, down * size);
      showTool();
    }
  }

  function enter() {
    if (desk.verb === "mark") {
      desk.did(mark(tools, drawing));
    } else if (desk.verb === "draw" && !desk.begun) {
      tools.turned = 0;
      desk.begin(tools.tip(desk.edge));
      showPencil();
      desk.say(desk.edge === "compasses" ? "begun-arc" : "begun");
    } else if (desk.verb === "draw") desk.end(tools.tip(desk.edge));
  }

  /** @param {string} key @param {boolean} fine */
  function does(key, fine) {
    const small = key.length === 1 ? key.toLowerCase() : key;
    if (ARROWS[key]) arrow(ARROWS[key], fine ? 0.1 : 1);
    else if (key in TURNS) {
      tools.turn(tools.pose.deg + TURNS[key]);
      showTool();
    } else if (key === "Enter" || key === " ") enter();
    else if (small === "c" && desk.verb === "turn" && tools.kind === "compasses") {
      if (tools.openNext()) showTool();
      else desk.say("no-point");
    } else if (small === "e" && leads() && tools.nextEdge()) showPencil();
    else if (small === "c" && leads()) {
      if (tools.next(desk.edge)) showPencil();
      else desk.say("no-edge-point");
    } else if (small === "b") {
      tools.turn(wrap(tools.pose.deg + 180));
      showTool();
    } else if (small in TOOLS) press("tool", TOOLS[small].find((name) => name !== tools.inHand) ?? tools.inHand);
    else if (key in VERBS) press("verb", VERBS[key]);
    else if (small in KINDS) press("kind", KINDS[small]);
    else if (small in BUTTONS) press(BUTTONS[small]);
    else return false;
    return true;
  }

  board.addEventListener("keydown", (event) => {
    if (event.altKey || (event.metaKey && event.key !== "z") || (event.ctrlKey && !"zy".includes(event.key))) return;
    if (!does(event.key, event.shiftKey)) return;
    event.preventDefault();
    press("aside");
  });
  board.addEventListener("blur", () => desk.rest());
}
