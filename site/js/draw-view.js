// The paper on the screen: which part of it is seen and how large, and the close-up beside the finger.

import { isArc, pathOf } from "./draw-arcs.js";
import { arc, element, number, Scene, stroke } from "./draw-scene.js";
import { regionHTML } from "./trusted.js";

/** @import { DrawItem, DrawName, DrawReply, ToolName, ToolPose, TruePath } from "../types/draw.js" */

const SVG = "http://www.w3.org/2000/svg";
const ENLARGED = 2.2; // times the view, in the close-up
const LEAST = 7; // px for each mm in the close-up
const CLOSE_UP = 152; // CSS px
const GAP = 10;
const FOOT = 46; // CSS px
const ROOMY = 700; // px of paper across from which the close-up stands beside the pencil
const [AWAY, FAR] = [90, 420]; // px of the close-up from the pencil: at first, and at the most
const MOST = 40; // px for each mm
const COARSE = 2.4; // the same at which a small screen opens, about the start
const NAME_OFF = 4.5; // mm of a name from its line
const REST = 160; // ms after which what is seen is painted at its new size

/** @typedef {{ x: number, y: number }} Place */

export class View {
  /** @type {{ x: number, y: number, scale: number }} the upper left corner (mm), and px for each mm */
  seen = { x: 0, y: 0, scale: 1 };
  #rest = 0;
  /** @type {(() => void) | null} how the paper was fitted to the board, until it is moved by hand */
  #fitted = null;
  #isClose = false;
  #spot = { x: -1, y: -1 }; // of the close-up

  /** @param {HTMLElement} board @param {DrawReply} reply */
  constructor(board, reply) {
    this.board = board;
    this.reply = reply;
    this.scene = new Scene(reply);
    this.near = new Scene(reply);
    this.both = [this.scene, this.near];
    this.closeUp = document.createElement("div");
    this.closeUp.className = "draw-close-up";
    this.closeUp.append(this.near.root);
    board.dataset.start = reply.start.join(" ");
    board.replaceChildren(this.scene.root, this.closeUp);
    this.box = board.getBoundingClientRect();
    this.watch = new ResizeObserver(() => this.#stay());
    this.watch.observe(board);
  }

  /** A place on the screen as mm of the sheet. @param {{ clientX: number, clientY: number }} event */
  at({ clientX, clientY }) {
    return { x: this.seen.x + (clientX - this.box.left) / this.seen.scale, y: this.seen.y + (clientY - this.box.top) / this.seen.scale };
  }

  /** So many px as mm. @param {number} pixels */
  mm(pixels) {
    return pixels / this.seen.scale;
  }

  /** When the board's edge moves, as when words above it grow, the paper stays where it is on the screen; when a phone is
   * turned it is fitted anew, or what was in the middle stays there. */
  #stay() {
    const [{ top, width }, { x, y }] = [this.box, this.middle()];
    this.measure();
    if (Math.abs(this.box.width - width) < 1) {
      this.seen.y += (this.box.top - top) / this.seen.scale;
      this.show();
    } else if (this.#fitted) this.#fitted();
    else this.about({ x, y }, this.seen.scale);
  }

  /** The whole sheet, or on a small screen what is about the start and the arrows that the sheet has. */
  fit() {
    this.whole();
    const { start, printed } = this.reply;
    const between = (/** @type {number[]} */ all) => (Math.min(...all) + Math.max(...all)) / 2;
    const [x, y] = [between([start[0], ...printed.map(({ x2 }) => x2)]), between([start[1], ...printed.map(({ y2 }) => y2)])];
    if (this.seen.scale < COARSE / 1.4) this.about({ x, y }, COARSE);
    this.#fitted = () => this.fit();
  }

  /** Where the board is on the screen: asked once, since asking while something moves has the page laid out anew. */
  measure() {
    this.box = this.board.getBoundingClientRect();
  }

  show() {
    const { x, y, scale } = this.seen;
    this.scene.show(x, y, scale);
    clearTimeout(this.#rest);
    this.#rest = window.setTimeout(() => this.#settle(), REST);
  }

  /** Paint anew at the size that is seen; whole px, so that lines are sharp. */
  #settle() {
    clearTimeout(this.#rest);
    const { seen } = this;
    if (this.scene.scale !== seen.scale) {
      this.scene.resize(seen.scale);
      this.near.resize(Math.max(ENLARGED * seen.scale, LEAST));
    }
    const whole = (/** @type {number} */ mm) => Math.round(mm * seen.scale * devicePixelRatio) / devicePixelRatio / seen.scale;
    Object.assign(seen, { x: whole(seen.x), y: whole(seen.y) });
    this.scene.show(seen.x, seen.y, seen.scale);
  }

  /** The whole sheet. */
  whole() {
    const { width, height } = this.reply.paper;
    const { width: wide, height: high } = this.box;
    const scale = Math.max(0.2, Math.min(wide / width, high / height) * 0.98);
    this.seen = { x: (width - wide / scale) / 2, y: (height - high / scale) / 2, scale };
    this.#fitted = () => this.whole();
    this.#settle();
  }

  /** So many px for each mm, about a place on the sheet in the middle. @param {Place} middle @param {number} scale */
  about({ x, y }, scale) {
    const { width: wide, height: high } = this.box;
    this.seen = { x: x - wide / scale / 2, y: y - high / scale / 2, scale };
    this.#fitted = null;
    this.#settle();
  }

  /**
   * Larger or smaller by a factor; the place on the sheet under the pointer stays there.
   * @param {number} factor @param {{ clientX: number, clientY: number }} [pointer]
   */
  zoom(factor, pointer) {
    const { box } = this;
    const held = pointer ?? { clientX: box.left + box.width / 2, clientY: box.top + box.height / 2 };
    const before = this.at(held);
    const { width, height } = this.reply.paper;
    const least = Math.min(box.width / width, box.height / height) / 2;
    this.seen.scale = Math.min(MOST, Math.max(least, this.seen.scale * factor));
    const now = this.at(held);
    this.pan(before.x - now.x, before.y - now.y);
  }

  /** Move what is seen over the sheet (mm). @param {number} across @param {number} down */
  pan(across, down) {
    this.#fitted = null;
    const { width, height } = this.reply.paper;
    const { scale } = this.seen;
    const [halfWide, halfHigh] = [this.box.width / scale / 2, this.box.height / scale / 2];
    this.seen.x = Math.min(width - halfWide, Math.max(-halfWide, this.seen.x + across));
    this.seen.y = Math.min(height - halfHigh, Math.max(-halfHigh, this.seen.y + down));
    this.show();
  }

  /** The middle of what is seen (mm). @returns {Place} */
  middle() {
    const { x, y, scale } = this.seen;
    return { x: x + this.box.width / scale / 2, y: y + this.box.height / scale / 2 };
  }

  /** Bring a place of the sheet into view, for whom no finger moves what is seen. @param {Place} place */
  reveal({ x, y }) {
    const { scale } = this.seen;
    const edge = 24 / scale;
    const [right, foot] = [this.seen.x + this.box.width / scale, this.seen.y + this.box.height / scale];
    if (x < this.seen.x + edge || x > right - edge || y < this.seen.y + edge || y > foot - edge) this.about({ x, y }, scale);
  }

  // What lies on the paper.

  /** What is about to move gets a layer of its own; "": nothing. @param {"" | "tool" | "hand" | "paper"} what */
  moves(what) {
    if (what) this.board.dataset.moves = what;
    else delete this.board.dataset.moves;
  }

  /** Which instrument is in hand. @param {ToolName} inHand */
  take(inHand) {
    for (const { tools } of this.both) for (const [name, { root }] of tools) root.toggleAttribute("data-in-hand", name === inHand);
  }

  /** @param {ToolName} name @param {ToolPose} pose */
  lay(name, pose) {
    for (const scene of this.both) scene.lay(name, pose);
  }

  /** The line or mark that the pencil is at. @param {Place | null} tip @param {DrawItem | null} [line] */
  pencil(tip, line = null) {
    for (const { pencil } of this.both) pencil.put(tip, line);
  }

  /** @param {DrawItem[]} items @param {Map<number, string>} bands */
  draw(items, bands) {
    for (const { lines } of this.both) lines.replaceChildren(...items.map((item) => this.#drawn(item, bands.get(item.id))));
  }

  /** @param {DrawItem} item @param {string} [band] */
  #drawn(item, band) {
    const name = this.reply.names[item.name];
    const group = element("g", { "data-kind": item.kind, "data-id": item.id, class: name ? `draw-${name.ink}` : "" });
    if (item.kind === "mark") {
      const turn = ((item.deg ?? 0) * Math.PI) / 180;
      const [dx, dy] = [2.5 * Math.cos(turn), -2.5 * Math.sin(turn)];
      group.append(...stroke({ x1: item.x1 - dx, y1: item.y1 - dy, x2: item.x1 + dx, y2: item.y1 + dy }, "full", 0.5));
      return group;
    }
    if (isArc(item)) {
      if (band === "wrong") group.append(element("path", { d: pathOf(item), class: "draw-off" }));
      group.append(arc(pathOf(item), 0.35));
      return group;
    }
    if (band === "wrong") group.append(element("line", { x1: item.x1, y1: item.y1, x2: item.x2, y2: item.y2, class: "draw-off" }));
    group.append(...stroke(item, item.kind, item.kind === "arrow" ? 0.6 : item.kind === "full" ? 0.25 : 0.35));
    if (name) group.append(this.#label(item, name));
    return group;
  }

  /** @param {DrawItem} item @param {DrawName} name */
  #label({ x1, y1, x2, y2 }, { label }) {
    const long = Math.hypot(x2 - x1, y2 - y1) || 1;
    const [x, y] = [x1 + 0.6 * (x2 - x1) - (NAME_OFF * (y1 - y2)) / long, y1 + 0.6 * (y2 - y1) - (NAME_OFF * (x2 - x1)) / long];
    const text = element("text", { x: number(x), y: number(y + 1.6), "font-size": 5, "text-anchor": "middle", fill: "currentColor" });
    text.innerHTML = regionHTML(label);
    return text;
  }

  /** @param {TruePath[]} paths */
  layOver(paths) {
    for (const scene of this.both) {
      scene.true.replaceChildren(...paths.flatMap(({ role, points }) => {
        if (points.length > 2) return [arc(`M${points.map((place) => place.join(" ")).join("L")}`, 0.9)];
        const [[x1, y1], [x2, y2]] = points;
        return stroke({ x1, y1, x2, y2 }, role === "parallel" ? "dashed" : "arrow", 0.9);
      }));
    }
  }

  /** Show what lies about a place enlarged, away from it. @param {Place | null} place */
  look(place) {
    const is = Boolean(place);
    const isNew = is !== this.#isClose;
    if (isNew) this.closeUp.toggleAttribute("data-on", is);
    this.#isClose = is;
    if (!place) return;
    const half = CLOSE_UP / 2 / this.near.scale;
    this.near.show(place.x - half, place.y - half, this.near.scale);
    const [x, y] = [(place.x - this.seen.x) * this.seen.scale, (place.y - this.seen.y) * this.seen.scale];
    const { x: left, y: top } = this.box.width < ROOMY ? this.#corner(x, y) : this.#beside(x, y, isNew);
    if (left === this.#spot.x && top === this.#spot.y) return;
    this.#spot = { x: left, y: top };
    this.closeUp.style.transform = `translate(${left}px, ${top}px)`;
  }

  /** A corner away from the finger, clear of the buttons that a phone has over the paper's lower edge. @param {number} x @param {number} y */
  #corner(x, y) {
    const { width, height } = this.box;
    return { x: x < width / 2 ? width - CLOSE_UP - GAP : GAP, y: y < height / 2 ? height - CLOSE_UP - GAP - FOOT : GAP };
  }

  /** Beside the pencil, where there is room for it; it stays there until the pencil comes near or goes far. @param {number} x @param {number} y @param {boolean} isNew */
  #beside(x, y, isNew) {
    const { width, height } = this.box;
    const off = [x - this.#spot.x - CLOSE_UP / 2, y - this.#spot.y - CLOSE_UP / 2].map(Math.abs);
    if (!isNew && Math.max(...off) > CLOSE_UP / 2 + GAP && Math.max(...off) < FAR) return this.#spot;
    const within = (/** @type {number} */ value, /** @type {number} */ most) => Math.round(Math.min(Math.max(value, GAP), most - CLOSE_UP - GAP));
    return { x: within(x < width / 2 ? x + AWAY : x - AWAY - CLOSE_UP, width), y: within(y - CLOSE_UP / 2, height) };
  }

  /** The sheet with what is drawn on it: mm in true size, colours of paper. */
  picture() {
    const { width, height } = this.reply.paper;
    const svg = element("svg", { xmlns: SVG, width: `${width}mm`, height: `${height}mm`, viewBox: `0 0 ${width} ${height}`, color: "#14191a" });
    const { paper, lines, true: right } = this.scene;
    for (const layer of [paper, lines, right]) {
      const group = element("g", layer === right ? { class: "draw-true", color: "#00664b" } : {});
      for (const one of layer.children) group.append(one.cloneNode(true));
      svg.append(group);
    }
    for (const one of svg.querySelectorAll(".draw-off, .draw-sheet")) one.remove();
    return svg;
  }
}
