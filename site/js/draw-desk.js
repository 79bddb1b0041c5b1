// The desk of one drawing: paper, instruments and lines together, what is in hand, what is said; every change of the
// drawing goes through here, is kept on the device at once, and makes what was judged before an earlier judgement.

import { arcOf, isArc } from "./draw-arcs.js";
import * as keep from "./draw-kept.js";
import { Reading } from "./draw-reading.js";
import { voice } from "./draw-said.js";
import { Drawing } from "./draw-strokes.js";
import { apart, Tools } from "./draw-tools.js";
import { View } from "./draw-view.js";
import { need } from "./elements.js";

/** @import { DrawPage } from "../types/draw-page.js" */
/** @import { DrawItem, DrawOp, DrawProblem, DrawReply, LineKind, ToolName, ToolPose, ToolPoses, TruePath, Verb } from "../types/draw.js" */

const REPLAY = 700; // ms from one move to the next
export const SHORTEST = 1; // mm of a line
const TRUE_SIZE = 25.4 / 96; // mm of a CSS px

/** Where the instruments lie at first: below the start, partly in view; those that the sheet's construction needs.
 * @param {DrawReply} reply @returns {ToolPoses} */
function parked({ start: [x, y], paper, front }) {
  const within = (/** @type {ToolPose} */ pose) => ({
    ...pose, x: Math.min(Math.max(pose.x, 8), paper.width - 20), y: Math.min(Math.max(pose.y, 8), paper.height - 8),
  });
  /** @type {Record<ToolName, ToolPose>} */
  const poses = {
    ruler: { x: Math.min(x, paper.width - 60), y: Math.min(y + 32, paper.height - 12), deg: 0 },
    protractor: { x: Math.min(paper.width - 20, x + 110), y: paper.height - 8, deg: 0 },
    "square-60": within({ x: x - 40, y: y + 68, deg: 0 }),
    "square-45": within({ x: x + 130, y: y + 68, deg: 0 }),
    compasses: within({ x: x + 20, y: y - 30, deg: 0 }),
  };
  return Object.fromEntries(front.map((name) => [name, poses[name]]));
}

export class Desk {
  /** @type {Verb} */
  verb = "place";
  /** @type {LineKind} */
  kind = "arrow";
  rubs = false;
  naming = 0; // the arrow that a name is pressed for
  /** @type {{ x: number, y: number } | null} where a line begins that is not ended yet */
  begun = null;
  isBegun = false; // whether it waits for a press that ends it
  judgesEach = false; // whether each line is judged as soon as it is drawn
  /** @type {() => unknown} what follows a line that needs no name */
  drawn = () => {};
  edition = 0; // counts changes, so that no judgement of older lines is taken
  /** @type {Map<number, string>} */
  bands = new Map(); // of judged lines, by id
  /** @type {TruePath[]} */
  right = []; // the lines of the true drawing, once pycore gives them
  #timer = 0;
  #whole = 0; // how much holds when the replay is over

  /**
   * @param {HTMLDialogElement} dialog
   * @param {DrawPage} page
   * @param {DrawReply} reply
   * @param {DrawProblem} problem
   */
  constructor(dialog, page, reply, problem) {
    this.dialog = dialog;
    this.page = page;
    this.reply = reply;
    this.problem = problem;
    this.board = this.find("board");
    this.reading = new Reading(dialog);
    this.drawing = new Drawing({ x: reply.start[0], y: reply.start[1] }, reply.zero && { x: reply.zero[0], y: reply.zero[1] }, reply.printed);
    const before = keep.read(page.kept, problem.page, reply.problem);
    if (before) this.#take(before);
    this.tools = new Tools(reply.tools, { ...parked(reply), ...before?.tools }, this.drawing);
    this.view = new View(this.board, reply);
    this.words = voice(JSON.parse(this.find("panel").dataset.sentences ?? "{}"), reply.names, this.drawing, this.tools);
  }

  /** @param {string} name */
  find(name) {
    return need(`[data-draw-${name}]`, HTMLElement, this.dialog);
  }

  /** @param {string} does */
  button(does) {
    return need(`[data-draw-do="${does}"]`, HTMLElement, this.dialog);
  }

  /** @param {...string} names */
  unfold(...names) {
    for (const fold of this.dialog.querySelectorAll("[data-draw-fold]")) {
      if (names.includes(fold.dataset.drawFold ?? "")) fold.toggleAttribute("open", true);
    }
  }

  /** @param {keep.KeptDrawing} kept */
  #take({ ops, at, reading }) {
    this.reading.open(reading);
    this.drawing.ops = ops;
    this.drawing.go(at);
  }

  // What is said.

  /** To a screen reader. @param {string} sentence */
  speak(sentence) {
    const live = this.find("live");
    live.textContent = "";
    live.textContent = sentence;
  }

  /** Beside the paper. @param {string} sentence */
  prompt(sentence) {
    this.find("prompt").textContent = sentence;
  }

  /** One of pycore's sentences; `aloud`: beside the paper too. @param {string} name @param {Record<string, string | number>} values */
  say(name, values = {}, aloud = false) {
    const sentence = this.words.said(name, values);
    this.speak(sentence);
    if (aloud) this.prompt(sentence);
  }

  saySize() {
    this.say("size", { percent: Math.round(this.view.seen.scale * TRUE_SIZE * 100) });
  }

  // What is seen.

  /** The instruments, where they lie. */
  lay() {
    const laid = /** @type {[ToolName, ToolPose][]} */ (Object.entries(this.tools.poses));
    for (const [name, pose] of laid) this.view.lay(name, pose);
    this.view.take(this.tools.inHand);
  }

  /** The instrument in hand, as it moves. */
  moved() {
    this.view.lay(this.tools.inHand, this.tools.pose);
  }

  /** An instrument has come to rest. */
  settled() {
    this.save();
    this.speak(this.words.tool());
  }

  redraw() {
    const { printed } = this.drawing;
    const items = this.drawing.items();
    this.view.draw(items, this.bands);
    this.find("words").toggleAttribute("data-empty", !items.length);
    const rows = [...printed.map((item) => this.#told(this.words.printed(item))), ...items.map((item) => this.#row(item))];
    this.find("lines").replaceChildren(...(rows.length ? rows : [this.#told(this.words.said("no-lines"))]));
  }

  /** @param {string} sentence */
  #told(sentence) {
    const row = document.createElement("li");
    row.append(Object.assign(document.createElement("span"), { textContent: sentence }));
    return row;
  }

  /** @param {DrawItem} item */
  #row(item) {
    const row = this.#told(this.words.listed(item));
    if (item.kind !== "mark" && item.kind !== "arc") row.append(this.#rowButton("rename", item, "rename"));
    row.append(this.#rowButton("rub", item, "remove"));
    return row;
  }

  /** @param {string} does @param {DrawItem} item @param {string} name of its sentence */
  #rowButton(does, item, name) {
    const button = document.createElement("button");
    const label = this.words.said(name);
    Object.assign(button, { type: "button", className: "plain", textContent: label });
    button.dataset.drawDo = does;
    button.dataset.value = String(item.id);
    button.setAttribute("aria-label", `${label}: ${this.words.listed(item)}`);
    return button;
  }

  /** @param {string} group @param {string} value */
  press(group, value) {
    for (const button of this.dialog.querySelectorAll(`[data-draw-do="${group}"]`)) {
      button.setAttribute("aria-pressed", String(button.dataset.value === value));
    }
  }

  /** @param {Verb} verb */
  setVerb(verb, rubs = false) {
    this.verb = verb;
    this.rubs = rubs;
    this.press("verb", rubs ? "" : verb);
    this.button("rubber").setAttribute("aria-pressed", String(rubs));
    this.board.dataset.verb = rubs ? "rubber" : verb;
    this.rest();
    this.askName(0);
    this.suit();
    this.prompt(this.words.prompt(rubs ? "rubber" : verb));
  }

  /** Show what can be done with the instrument in hand. */
  suit() {
    const { verb, rubs } = this;
    const { kind } = this.tools;
    const isLaid = !rubs && (verb === "place" || verb === "turn");
    this.find("kinds").hidden = rubs || verb !== "draw" || kind === "compasses";
    this.find("further").hidden = !isLaid;
    this.button("against").hidden = !this.tools.hasOther();
    this.button("against").textContent = this.words.said(`against-${kind}`);
    const turn = need('[data-draw-do="verb"][data-value="turn"]', HTMLElement, this.dialog);
    turn.textContent = this.words.said(kind === "compasses" ? "verb-open" : "verb-turn");
    need('[data-draw-do="verb"][data-value="mark"]', HTMLElement, this.dialog).hidden = kind === "compasses";
  }

  /** The pencil is at nothing. */
  rest() {
    this.begun = null;
    this.isBegun = false;
    this.view.pencil(null);
    this.view.look(null);
  }

  /** Begin a line that another press ends. @param {{ x: number, y: number }} place */
  begin(place) {
    this.begun = place;
    this.isBegun = true;
    this.say(this.edge === "compasses" ? "begun-arc" : "begun", {}, true);
  }

  /** The line from where one begins to a place, as the pencil draws it. @param {{ x: number, y: number }} tip @returns {DrawItem | null} */
  line(tip) {
    const { begun, kind } = this;
    if (begun && this.edge === "compasses") return arcOf({ do: "arc", id: 0, ...this.tools.arc() });
    return begun && { id: 0, name: "", kind, x1: begun.x, y1: begun.y, x2: tip.x, y2: tip.y };
  }

  /** End the line at a place. @param {{ x: number, y: number }} tip */
  end(tip) {
    const line = this.line(tip);
    this.rest();
    if (line && isArc(line)) {
      const { x, y, r, deg, sweep } = line;
      if ((r * Math.abs(sweep) * Math.PI) / 180 < SHORTEST) this.say("short-arc", {}, true);
      else this.did({ do: "arc", id: this.drawing.next(), x, y, r, deg, sweep });
    } else if (!line || apart({ x: line.x1, y: line.y1 }, tip) < SHORTEST) this.say("short", {}, true);
    else this.did({ do: "line", id: this.drawing.next(), kind: this.kind, x1: line.x1, y1: line.y1, x2: line.x2, y2: line.y2 });
  }

  /** Take an instrument in hand. @param {ToolName} name */
  take(name) {
    if (!this.tools.poses[name]) {
      const { x, y } = this.view.middle();
      this.tools.poses[name] = { x: x - 30, y, deg: 0 };
      this.showAll(false);
    }
    this.tools.inHand = name;
    this.press("tool", name);
    this.suit();
    this.lay();
    this.save();
  }

  /** Show the buttons of all instruments, or only of those in front and on the paper. @param {boolean} is */
  showAll(is) {
    this.button("others").setAttribute("aria-expanded", String(is));
    for (const button of this.dialog.querySelectorAll("[data-draw-other]")) {
      const isOut = this.tools.poses[/** @type {ToolName} */ (button.dataset.value)];
      button.hidden = !is && !isOut;
    }
  }

  /** At whose edge the pencil is. @returns {ToolName} */
  get edge() {
    return this.verb === "draw" && this.tools.inHand === "protractor" ? "ruler" : this.tools.inHand;
  }

  // What is drawn.

  save() {
    const { ops } = this.drawing;
    const at = this.#timer ? this.#whole : this.drawing.at;
    const drawn = { page: this.problem.page, problem: this.reply.problem, ops, at, tools: this.tools.poses, reading: this.reading.values };
    keep.write(this.page.kept, drawn);
    return drawn;
  }

  /** What was judged was judged of the lines as they were. */
  outdate() {
    this.edition += 1;
    this.bands = new Map();
    this.right = [];
    this.button("true").setAttribute("aria-pressed", "false");
    this.button("true").hidden = true;
    this.view.layOver([]);
    const result = this.find("result");
    result.toggleAttribute("data-old", result.childElementCount > 0);
  }

  /** Ask for the name of an arrow; 0: of none. @param {number} id */
  askName(id, sentence = this.words.said("name-it")) {
    this.naming = id;
    this.find("names").hidden = !id;
    this.find("words").toggleAttribute("data-naming", id > 0);
    this.find("asked").textContent = sentence;
  }

  /** @param {DrawOp} op */
  did(op) {
    this.drawing.add(op);
    this.reading.follow(op);
    this.outdate();
    this.redraw();
    this.save();
    if (op.do === "line" || op.do === "mark" || op.do === "arc") {
      const item = this.drawing.items().find(({ id }) => id === op.id);
      const isArrow = op.do === "line" && op.kind === "arrow";
      this.askName(isArrow ? op.id : 0);
      if (item) this.#done(item, isArrow);
    } else if (op.do === "rub") {
      this.say("rubbed");
      this.askName(this.naming === op.id ? 0 : this.naming);
    }
  }

  /** What a line or a mark became: heard in full; seen without its length, which the ruler tells. @param {DrawItem} item @param {boolean} isArrow */
  #done(item, isArrow) {
    this.speak(this.words.became(item) + (isArrow ? ` ${this.words.said("name-it")}` : ""));
    if (isArrow) return;
    this.prompt(this.words.done(item));
    if (item.kind !== "mark") this.drawn();
  }

  /** Undo or bring back. @param {number} by @param {string} sentence @param {string} none */
  go(by, sentence, none) {
    const at = this.drawing.at + by;
    const moves = at >= 0 && at <= this.drawing.ops.length;
    if (moves) {
      this.reading.follow(this.drawing.ops[Math.min(at, this.drawing.at)], by < 0);
      this.drawing.go(at);
      this.outdate();
      this.askName(0);
      this.redraw();
      this.save();
    }
    this.say(moves ? sentence : none);
  }

  /** Go on with a drawing that a file holds. @param {keep.KeptDrawing} read */
  replace(read) {
    this.#take(read);
    Object.assign(this.tools.poses, read.tools ?? {});
    this.tools.openTo(read.tools?.compasses?.open ?? this.tools.open);
    this.showAll(false);
    this.outdate();
    this.askName(0);
    this.lay();
    this.redraw();
    this.save();
  }

  // What was drawn, played again.

  replay() {
    this.#whole = this.drawing.at;
    let at = 0;
    this.outdate();
    this.askName(0);
    const step = () => {
      if (at > this.#whole) {
        this.stopReplay();
        this.say("replayed");
        return;
      }
      this.drawing.go(at);
      this.view.draw(this.drawing.items(), this.bands);
      at += 1;
    };
    this.#timer = window.setInterval(step, REPLAY);
    step();
  }

  /** It is over as soon as anything is done. */
  stopReplay() {
    if (!this.#timer) return;
    clearInterval(this.#timer);
    this.#timer = 0;
    this.drawing.go(this.#whole);
    this.redraw();
  }

  /** The view is closed. */
  leave() {
    this.stopReplay();
    this.edition += 1;
    this.view.watch.disconnect();
  }
}
