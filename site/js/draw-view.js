// The paper on the screen: which part of it is seen and how large; its layers, and the close-up beside the finger. Each
// layer is there twice, once in the view and once in the close-up: a copy by reference would be made anew at every move.

import { regionHTML } from "./trusted.js";

/** @import { DrawItem, DrawName, DrawReply, ToolName, ToolPose, TruePath } from "../types/draw.js" */

const SVG = "http://www.w3.org/2000/svg";
const ENLARGED = 2.2; // times the view, in the close-up
const LEAST = 7; // px for each mm in the close-up
const CLOSE_UP = 152; // CSS px
const GAP = 10;
const FOOT = 46; // CSS px
const MOST = 40; // px for each mm
const HEAD = 4.6; // mm, as on sheets
const NAME_OFF = 4.5; // mm of a name from its line

/** @param {string} name @param {Record<string, string | number>} [marks] @param {Element[]} inside */
export function element(name, marks = {}, ...inside) {
  const made = document.createElementNS(SVG, name);
  for (const [mark, value] of Object.entries(marks)) made.setAttribute(mark, String(value));
  made.append(...inside);
  return made;
}

/** What a picture of pycore's holds, as a group. @param {string} text */
function groupOf(text) {
  const place = document.createElement("div");
  place.innerHTML = regionHTML(text);
  const svg = place.firstElementChild;
  const group = element("g", { fill: "none" });
  for (const mark of ["font-family", "font-weight"]) group.setAttribute(mark, svg?.getAttribute(mark) ?? "");
  for (const one of [...(svg?.children ?? [])]) if (!["title", "desc"].includes(one.tagName)) group.append(one);
  return group;
}

const number = (/** @type {number} */ value) => value.toFixed(3);

/** One set of layers. */
class Scene {
  root = element("svg", { "aria-hidden": "true", focusable: "false", preserveAspectRatio: "none" });
  lines = element("g", { class: "draw-lines" });
  true = element("g", { class: "draw-true" });
  hand = element("g", { class: "draw-hand" });

  /** @param {DrawReply} reply */
  constructor({ paper, tools }) {
    const sheet = element("rect", { class: "draw-sheet", x: 0, y: 0, width: paper.width, height: paper.height });
    /** @param {ToolName} name */
    const tool = (name) => {
      const { svg, at } = tools[name];
      const inside = element("g", { transform: `translate(${-at[0]} ${-at[1]})` }, groupOf(svg));
      return element("g", { class: `draw-tool ${name}` }, inside);
    };
    this.tools = { protractor: tool("protractor"), ruler: tool("ruler") };
    this.root.append(sheet, groupOf(paper.svg), this.true, this.lines, this.tools.protractor, this.tools.ruler, this.hand);
  }

  /** @param {ToolName} name @param {ToolPose} pose */
  lay(name, { x, y, deg }) {
    this.tools[name].setAttribute("transform", `translate(${number(x)} ${number(y)}) rotate(${number(-deg)})`);
  }
}

/** @param {{ x1: number, y1: number, x2: number, y2: number }} line @param {string} kind @param {number} thick */
function stroke({ x1, y1, x2, y2 }, kind, thick) {
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [ux, uy] = [(x2 - x1) / long, (y2 - y1) / long];
  const back = kind === "arrow" ? Math.min(HEAD * 0.8, long) : 0;
  /** @type {Record<string, string | number>} */
  const marks = { x1, y1, x2: number(x2 - back * ux), y2: number(y2 - back * uy), "stroke-width": thick, stroke: "currentColor" };
  if (kind === "dashed") marks["stroke-dasharray"] = "3 2";
  const parts = [element("line", marks)];
  if (kind === "arrow") {
    const corners = [[x2, y2], ...[1, -1].map((side) => [x2 - HEAD * ux - side * 0.17 * HEAD * uy, y2 - HEAD * uy + side * 0.17 * HEAD * ux])];
    parts.push(element("polygon", { points: corners.map((one) => one.map(number).join(",")).join(" "), fill: "currentColor" }));
  }
  return parts;
}

export class View {
  /** @type {{ x: number, y: number, scale: number }} the upper left corner (mm), and px for each mm */
  seen = { x: 0, y: 0, scale: 1 };

  #top = 0; // of the board on the screen

  /** @param {HTMLElement} board @param {DrawReply} reply */
  constructor(board, reply) {
    this.#top = board.getBoundingClientRect().top;
    this.board = board;
    this.reply = reply;
    this.scene = new Scene(reply);
    this.near = new Scene(reply);
    this.closeUp = document.createElement("div");
    this.closeUp.className = "draw-close-up";
    this.closeUp.hidden = true;
    this.closeUp.append(this.near.root);
    board.dataset.start = reply.start.join(" ");
    board.replaceChildren(this.scene.root, this.closeUp);
    this.both = [this.scene, this.near];
    this.watch = new ResizeObserver(() => this.#stay());
    this.watch.observe(board);
  }

  /** A place on the screen as mm of the sheet. @param {{ clientX: number, clientY: number }} event */
  at({ clientX, clientY }) {
    const box = this.board.getBoundingClientRect();
    return { x: this.seen.x + (clientX - box.left) / this.seen.scale, y: this.seen.y + (clientY - box.top) / this.seen.scale };
  }

  /** How many mm of the sheet so many CSS px are. @param {number} pixels */
  mm = (pixels) => pixels / this.seen.scale;

  /** What is said above may take more room: the sheet stays where it is on the screen. */
  #stay() {
    const { top } = this.board.getBoundingClientRect();
    this.seen.y += (top - this.#top) / this.seen.scale;
    this.#top = top;
    this.show();
  }

  show() {
    const { clientWidth: wide, clientHeight: high } = this.board;
    const { x, y, scale } = this.seen;
    this.scene.root.setAttribute("viewBox", [x, y, Math.max(1, wide / scale), Math.max(1, high / scale)].map(number).join(" "));
  }

  /** The whole sheet. */
  whole() {
    const { width, height } = this.reply.paper;
    const { clientWidth: wide, clientHeight: high } = this.board;
    const scale = Math.max(0.2, Math.min(wide / width, high / height) * 0.98);
    this.seen = { x: (width - wide / scale) / 2, y: (height - high / scale) / 2, scale };
    this.show();
  }

  /** So many px for each mm, about a place on the sheet in the middle. @param {{ x: number, y: number }} middle @param {number} scale */
  about({ x, y }, scale) {
    const { clientWidth: wide, clientHeight: high } = this.board;
    this.seen = { x: x - wide / scale / 2, y: y - high / scale / 2, scale };
    this.show();
  }

  /**
   * Larger or smaller by a factor; the place on the sheet under the pointer stays there.
   * @param {number} factor @param {{ clientX: number, clientY: number }} [pointer]
   */
  zoom(factor, pointer) {
    const box = this.board.getBoundingClientRect();
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
    const { width, height } = this.reply.paper;
    const { clientWidth: wide, clientHeight: high } = this.board;
    const { scale } = this.seen;
    const [halfWide, halfHigh] = [wide / scale / 2, high / scale / 2];
    this.seen.x = Math.min(width - halfWide, Math.max(-halfWide, this.seen.x + across));
    this.seen.y = Math.min(height - halfHigh, Math.max(-halfHigh, this.seen.y + down));
    this.show();
  }

  /** Bring a place of the sheet into view, for whom no finger moves what is seen. @param {{ x: number, y: number }} place */
  reveal({ x, y }) {
    const { clientWidth: wide, clientHeight: high } = this.board;
    const { scale } = this.seen;
    const edge = 24 / scale;
    const [right, foot] = [this.seen.x + wide / scale, this.seen.y + high / scale];
    if (x < this.seen.x + edge || x > right - edge || y < this.seen.y + edge || y > foot - edge) this.about({ x, y }, scale);
  }

  /** @param {ToolName} name @param {ToolPose} pose @param {boolean} inHand */
  lay(name, pose, inHand) {
    for (const scene of this.both) {
      scene.lay(name, pose);
      scene.tools[name].toggleAttribute("data-in-hand", inHand);
    }
  }

  /** The line or mark that the pencil is at. @param {{ x: number, y: number } | null} tip @param {DrawItem | null} [line] */
  pencil(tip, line = null) {
    for (const { hand } of this.both) {
      hand.replaceChildren(...(line ? stroke(line, line.kind, 0.5) : []));
      if (tip) hand.append(element("circle", { cx: tip.x, cy: tip.y, r: 0.7, class: "draw-pencil" }));
    }
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
      const [dx, dy] = [2 * Math.cos(turn), -2 * Math.sin(turn)];
      group.append(...stroke({ x1: item.x1 - dx, y1: item.y1 - dy, x2: item.x1 + dx, y2: item.y1 + dy }, "full", 0.3));
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
      scene.true.replaceChildren(...paths.flatMap(({ role, points: [[x1, y1], [x2, y2]] }) =>
        stroke({ x1, y1, x2, y2 }, role === "parallel" ? "dashed" : "arrow", 0.9)));
    }
  }

  /** Show what lies about a place enlarged, away from it. @param {{ x: number, y: number } | null} place */
  look(place) {
    this.closeUp.hidden = !place;
    if (!place) return;
    const scale = Math.max(ENLARGED * this.seen.scale, LEAST);
    const size = CLOSE_UP / scale;
    this.near.root.setAttribute("viewBox", [place.x - size / 2, place.y - size / 2, size, size].map(number).join(" "));
    const { clientWidth: wide, clientHeight: high } = this.board;
    const [x, y] = [(place.x - this.seen.x) * this.seen.scale, (place.y - this.seen.y) * this.seen.scale];
    this.closeUp.style.left = `${x < wide / 2 ? wide - CLOSE_UP - GAP : GAP}px`;
    // Clear of the buttons that a phone has over the paper's lower edge.
    this.closeUp.style.top = `${y < high / 2 ? high - CLOSE_UP - GAP - FOOT : GAP}px`;
  }

  /** The sheet with what is drawn on it as a file: mm in true size, colours of paper. */
  file() {
    const { width, height } = this.reply.paper;
    const svg = /** @type {Element} */ (this.scene.root.cloneNode(true));
    for (const one of svg.querySelectorAll(".draw-tool, .draw-hand, .draw-off, .draw-sheet")) one.remove();
    for (const [mark, value] of Object.entries({ xmlns: SVG, width: `${width}mm`, height: `${height}mm`, viewBox: `0 0 ${width} ${height}`, color: "#14191a" })) {
      svg.setAttribute(mark, value);
    }
    svg.querySelector(".draw-true")?.setAttribute("color", "#00664b");
    return new XMLSerializer().serializeToString(svg);
  }
}
