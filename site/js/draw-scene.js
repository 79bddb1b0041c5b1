// The layers of the drawing, each an element of its own: paper, instruments, lines, the pencil. What moves is moved by CSS,
// so that nothing is painted anew while a finger leads it. There are two scenes: the view's and the close-up's.

import { isArc, pathOf } from "./draw-arcs.js";
import { hingeOf } from "./draw-shapes.js";
import { regionHTML } from "./trusted.js";

/** @import { DrawItem, DrawReply, ToolName, ToolPicture, ToolPose } from "../types/draw.js" */

const SVG = "http://www.w3.org/2000/svg";
const HEAD = 4.6; // mm of an arrowhead, as on sheets
const [NEEDLE, PENCIL] = [7, 12]; // mm of the compasses' needle and of their pencil
const DOT = 0.7; // mm of the pencil's point

export const number = (/** @type {number} */ value) => value.toFixed(3);

/** @param {string} name @param {Record<string, string | number>} [marks] @param {Element[]} inside */
export function element(name, marks = {}, ...inside) {
  const made = document.createElementNS(SVG, name);
  for (const [mark, value] of Object.entries(marks)) made.setAttribute(mark, String(value));
  made.append(...inside);
  return made;
}

/** What a picture of pycore's holds, as a group, and its size. @param {string} text */
function groupOf(text) {
  const place = document.createElement("div");
  place.innerHTML = regionHTML(text);
  const svg = place.firstElementChild;
  const group = element("g", { fill: "none" });
  for (const mark of ["font-family", "font-weight"]) group.setAttribute(mark, svg?.getAttribute(mark) ?? "");
  for (const one of [...(svg?.children ?? [])]) if (!["title", "desc"].includes(one.tagName)) group.append(one);
  return { group, size: (svg?.getAttribute("viewBox") ?? "0 0 1 1").split(" ").slice(2).map(Number) };
}

/** @param {{ x1: number, y1: number, x2: number, y2: number }} line @param {string} kind */
function shapes({ x1, y1, x2, y2 }, kind) {
  const long = Math.hypot(x2 - x1, y2 - y1) || 1;
  const [ux, uy] = [(x2 - x1) / long, (y2 - y1) / long];
  const back = kind === "arrow" ? Math.min(HEAD * 0.8, long) : 0;
  const corners = [[x2, y2], ...[1, -1].map((side) => [x2 - HEAD * ux - side * 0.17 * HEAD * uy, y2 - HEAD * uy + side * 0.17 * HEAD * ux])];
  return {
    shaft: { x1: number(x1), y1: number(y1), x2: number(x2 - back * ux), y2: number(y2 - back * uy) },
    head: kind === "arrow" ? corners.map((one) => one.map(number).join(",")).join(" ") : "",
  };
}

/** @param {{ x1: number, y1: number, x2: number, y2: number }} line @param {string} kind @param {number} thick */
export function stroke(line, kind, thick) {
  const { shaft, head } = shapes(line, kind);
  const parts = [element("line", { ...shaft, "stroke-width": thick, stroke: "currentColor" })];
  if (kind === "dashed") parts[0].setAttribute("stroke-dasharray", "3 2");
  if (head) parts.push(element("polygon", { points: head, fill: "currentColor" }));
  return parts;
}

/** An arc, dashed. @param {string} d @param {number} thick */
export const arc = (d, thick) => element("path", { d, fill: "none", "stroke-width": thick, stroke: "currentColor", "stroke-dasharray": "3 2" });

/** The pencil's point and what it is drawing: the same four shapes all the time. */
class Pencil {
  arc = arc("", 0.4);
  line = element("line", { "stroke-width": 0.5, stroke: "currentColor" });
  head = element("polygon", { fill: "currentColor" });
  dot = element("circle", { r: DOT, class: "draw-pencil" });

  /** @param {{ x: number, y: number } | null} tip @param {DrawItem | null} line */
  put(tip, line) {
    const d = line && isArc(line) ? pathOf(line) : "";
    if (this.arc.getAttribute("d") !== d) this.arc.setAttribute("d", d);
    const { shaft, head } = line && !isArc(line) ? shapes(line, line.kind) : { shaft: { x1: 0, y1: 0, x2: 0, y2: 0 }, head: "" };
    for (const [mark, value] of Object.entries(shaft)) this.line.setAttribute(mark, String(value));
    this.line.setAttribute("stroke-dasharray", line?.kind === "dashed" ? "3 2" : "none");
    this.head.setAttribute("points", head);
    this.dot.setAttribute("cx", number(tip?.x ?? 0));
    this.dot.setAttribute("cy", number(tip?.y ?? 0));
    this.line.toggleAttribute("hidden", !line || isArc(line));
    this.dot.toggleAttribute("hidden", !tip);
  }
}

/** An instrument: its picture, whose zero lies on the corner of an element that CSS moves and turns. */
class Tool {
  root = document.createElement("div");

  /** @param {ToolName} name @param {ToolPicture} picture */
  constructor(name, { svg, at }) {
    const { group, size } = groupOf(svg);
    this.at = at;
    this.size = size;
    this.picture = element("svg", { viewBox: `0 0 ${size.join(" ")}`, "aria-hidden": "true", focusable: "false" }, group);
    this.root.className = `draw-tool ${name}`;
    this.root.append(this.picture);
  }

  /** Its picture is the same however it lies. @param {ToolPose} _pose */
  open(_pose) {}

  /** @param {number} scale px for each mm */
  resize(scale) {
    const { style } = this.picture;
    [style.left, style.top] = this.at.map((part) => `${-part * scale}px`);
    [style.width, style.height] = this.size.map((part) => `${part * scale}px`);
  }
}

/** The compasses: two legs, a point and a pencil, as far apart as they are open (mm). */
class Compasses extends Tool {
  legs = element("path", { fill: "none", class: "draw-legs" });
  needle = element("path", { fill: "none", class: "draw-needle" });
  joint = element("circle", { r: 3, class: "draw-joint" });
  lead = element("polygon", { class: "draw-lead" });

  /** @param {ToolPicture} picture */
  constructor({ open = 40 }) {
    super("compasses", { svg: "", at: [0, 0] });
    this.picture.replaceChildren(this.legs, this.joint, this.needle, this.lead);
    this.open({ x: 0, y: 0, deg: 0, open });
  }

  /** @override @param {ToolPose} pose */
  open({ open = 40 }) {
    const { along: middle, up: above } = hingeOf(open);
    const high = -above;
    const long = Math.hypot(middle, high);
    // The ends of the legs: a needle, and a pencil that is thicker.
    const [x, y] = [(middle * NEEDLE) / long, (high * NEEDLE) / long];
    const [right, up] = [open - (middle * PENCIL) / long, (high * PENCIL) / long];
    const side = (/** @type {number} */ far, /** @type {number} */ wide) =>
      `${number(open - (middle * far + high * wide) / long)},${number((high * far - middle * wide) / long)}`;
    this.legs.setAttribute("d", `M${number(x)} ${number(y)}L${number(middle)} ${number(high)}L${number(right)} ${number(up)}`);
    this.needle.setAttribute("d", `M0 0L${number(x)} ${number(y)}`);
    this.lead.setAttribute("points", [side(0, 0), ...[[4, 1.5], [PENCIL, 1.5], [PENCIL, -1.5], [4, -1.5]].map(([far, wide]) => side(far, wide))].join(" "));
    this.joint.setAttribute("cx", number(middle));
    this.joint.setAttribute("cy", number(high));
  }
}

/** One set of layers. */
export class Scene {
  root = document.createElement("div");
  pencil = new Pencil();
  scale = 1; // px for each mm, at which the layers are painted
  /** @type {Map<ToolName, ToolPose>} */
  #poses = new Map();

  /** @param {DrawReply} reply */
  constructor({ paper, tools }) {
    this.width = paper.width;
    this.height = paper.height;
    const sheet = element("rect", { class: "draw-sheet", x: 0, y: 0, width: paper.width, height: paper.height });
    this.paper = this.#layer("paper", sheet, groupOf(paper.svg).group);
    this.true = this.#layer("true");
    this.lines = this.#layer("lines");
    this.hand = this.#layer("hand", this.pencil.arc, this.pencil.line, this.pencil.head, this.pencil.dot);
    const names = /** @type {ToolName[]} */ (Object.keys(tools));
    this.tools = new Map(names.map((name) => [name, name === "compasses" ? new Compasses(tools[name]) : new Tool(name, tools[name])]));
    // An instrument is seen once it is laid.
    for (const { root } of this.tools.values()) root.hidden = true;
    this.root.className = "draw-scene";
    this.root.append(this.paper, ...[...this.tools.values()].map(({ root }) => root), this.lines, this.true, this.hand);
    this.pencil.put(null, null);
  }

  /** @param {string} name @param {Element[]} inside */
  #layer(name, ...inside) {
    const viewBox = `0 0 ${this.width} ${this.height}`;
    return /** @type {SVGElement} */ (element("svg", { class: `draw-layer draw-${name}`, viewBox, "aria-hidden": "true", focusable: "false" }, ...inside));
  }

  /** Paint the layers at another size. @param {number} scale */
  resize(scale) {
    this.scale = scale;
    for (const { style } of [this.paper, this.true, this.lines, this.hand]) {
      style.width = `${this.width * scale}px`;
      style.height = `${this.height * scale}px`;
    }
    for (const tool of this.tools.values()) tool.resize(scale);
    for (const [name, pose] of this.#poses) this.lay(name, pose);
  }

  /** @param {ToolName} name @param {ToolPose} pose */
  lay(name, pose) {
    const { x, y, deg } = pose;
    this.#poses.set(name, { ...pose });
    const tool = this.tools.get(name);
    if (!tool) return;
    tool.root.hidden = false;
    tool.open(pose);
    tool.root.style.transform = `translate(${number(x * this.scale)}px, ${number(y * this.scale)}px) rotate(${number(-deg)}deg)`;
  }

  /** Lay a place of the sheet (mm) on the upper left corner, at so many px for each mm. @param {number} x @param {number} y @param {number} scale */
  show(x, y, scale) {
    const grown = scale === this.scale ? "" : ` scale(${scale / this.scale})`;
    this.root.style.transform = `translate(${number(-x * scale)}px, ${number(-y * scale)}px)${grown}`;
  }
}
