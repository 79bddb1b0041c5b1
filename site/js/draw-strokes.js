// What was drawn: a list of what the hand did, of which any part can be undone, brought back or played again; the lines
// and marks that come of it, in mm from the left and from the top of the sheet; and the points at which they can be met.

import { arcOf, crossings, isArc, offArc } from "./draw-arcs.js";

/** @import { DrawItem, DrawOp, DrawPoint } from "../types/draw.js" */

const SAME = 0.05; // mm: points nearer than this are one
const ONE = 0.5; // mm: crossings with an arc that are nearer to another crossing are none of their own
const BEYOND = 1; // mm by which lines may miss each other and still cross

/** @param {DrawItem[]} items @param {DrawOp} op @returns {DrawItem[]} */
function after(items, op) {
  if (op.do === "line") return [...items, { ...op, name: "" }];
  if (op.do === "arc") return [...items, arcOf(op)];
  if (op.do === "mark") return [...items, { ...op, kind: "mark", x2: op.x1, y2: op.y1, name: "" }];
  if (op.do === "name") return items.map((one) => (one.id === op.id ? { ...one, name: op.name } : one));
  return op.do === "rub" ? items.filter(({ id }) => id !== op.id) : [];
}

/** Where two lines cross, if they do. @param {DrawItem} one @param {DrawItem} other */
function crossing(one, other) {
  const [ax, ay] = [one.x2 - one.x1, one.y2 - one.y1];
  const [bx, by] = [other.x2 - other.x1, other.y2 - other.y1];
  const [along, beside] = [Math.hypot(ax, ay), Math.hypot(bx, by)];
  const turn = ax * by - ay * bx;
  if (Math.abs(turn) < 0.03 * along * beside) return null;
  const [x, y] = [other.x1 - one.x1, other.y1 - one.y1];
  const [here, there] = [(x * by - y * bx) / turn, (x * ay - y * ax) / turn];
  /** @param {number} share @param {number} long */
  const isOn = (share, long) => share * long > -BEYOND && (share - 1) * long < BEYOND;
  return isOn(here, along) && isOn(there, beside) ? { x: one.x1 + here * ax, y: one.y1 + here * ay } : null;
}

/** Where arcs cross each other, then where they cross lines. @param {DrawItem[]} strokes */
function arcsMeet(strokes) {
  const arcs = strokes.filter(isArc);
  const pairs = arcs.flatMap((one, place) => arcs.slice(place + 1).flatMap((other) => crossings(one, other)));
  return [...pairs, ...arcs.flatMap((arc) => strokes.filter((one) => !isArc(one)).flatMap((line) => crossings(arc, line)))];
}

export class Drawing {
  /** @type {DrawOp[]} */
  ops = [];
  at = 0; // so many of them hold
  /** @type {DrawPoint[] | null} */
  #points = null;
  /** @type {DrawItem[] | null} */
  #items = null;

  /**
   * @param {{ x: number, y: number }} start where the sheet's start is
   * @param {{ x: number, y: number } | null} zero the mark that the sheet has in its first direction
   * @param {Omit<DrawItem, "id">[]} printed the arrows that the sheet has drawn already
   */
  constructor(start, zero, printed = []) {
    this.start = start;
    this.zero = zero;
    this.printed = printed.map((line, place) => ({ ...line, id: -1 - place }));
  }

  /** Do something; what was undone before is gone. @param {DrawOp} op */
  add(op) {
    this.ops.length = this.at;
    this.ops.push(op);
    this.go(this.ops.length);
  }

  /** Let so many of the ops hold. @param {number} at */
  go(at) {
    this.at = Math.min(Math.max(at, 0), this.ops.length);
    this.#items = this.#points = null;
  }

  /** A number that no line has yet. */
  next() {
    return 1 + Math.max(0, ...this.ops.map((op) => ("id" in op ? op.id : 0)));
  }

  /** Lines and marks, in the order in which they were drawn. */
  items() {
    return (this.#items ??= this.ops.slice(0, this.at).reduce(after, /** @type {DrawItem[]} */ ([])));
  }

  /** All that is judged: lines and arcs. */
  strokes() {
    return this.items().filter(({ kind }) => kind !== "mark");
  }

  /** The straight ones, and those that the sheet has. */
  lines() {
    return [...this.printed, ...this.strokes().filter((item) => !isArc(item))];
  }

  /**
   * Every point that can be met: the start, ends of lines, marks, crossings; each place once.
   * @param {number} [but] the line whose own points are left out
   * @returns {DrawPoint[]}
   */
  points(but) {
    if (but) return this.#find(but);
    return (this.#points ??= this.#find(0));
  }

  /** @param {number} but */
  #find(but) {
    /** @type {DrawPoint[]} */
    const found = [];
    /** @param {DrawPoint} point */
    const add = (point) => {
      if (!found.some(({ x, y }) => Math.hypot(x - point.x, y - point.y) < SAME)) found.push(point);
    };
    add({ ...this.start, what: "start" });
    const items = [...this.printed, ...this.items()].filter(({ id }) => id !== but);
    const [strokes, lines] = [items.filter(({ kind }) => kind !== "mark"), items.filter((item) => item.kind !== "mark" && !isArc(item))];
    for (const item of items) {
      if (item.kind === "mark") add({ x: item.x1, y: item.y1, what: "mark", item });
      else if (item.kind === "arrow") add({ x: item.x2, y: item.y2, what: "tip", item });
    }
    for (const met of arcsMeet(strokes)) if (!found.some(({ x, y }) => Math.hypot(x - met.x, y - met.y) < ONE)) add({ ...met, what: "crossing" });
    for (const item of lines) add({ x: item.x2, y: item.y2, what: "tip", item });
    for (const item of lines) add({ x: item.x1, y: item.y1, what: "tail", item });
    lines.forEach((one, place) => {
      for (const other of lines.slice(place + 1)) {
        const met = crossing(one, other);
        if (met) add({ ...met, what: "crossing" });
      }
    });
    if (this.zero) add({ ...this.zero, what: "zero" });
    return found;
  }

  /**
   * The point nearest to a place, if it is within reach (mm).
   * @param {number} x @param {number} y @param {number} reach
   */
  near(x, y, reach) {
    /** @type {DrawPoint | null} */
    let nearest = null;
    let least = reach;
    for (const point of this.points()) {
      const away = Math.hypot(point.x - x, point.y - y);
      if (away <= least) [nearest, least] = [point, away];
    }
    return nearest;
  }

  /**
   * The line or mark nearest to a place, if it is within reach (mm).
   * @param {number} x @param {number} y @param {number} reach
   */
  under(x, y, reach) {
    const away = (/** @type {DrawItem} */ item) => {
      if (isArc(item)) return offArc(item, x, y);
      const { x1, y1, x2, y2 } = item;
      const [dx, dy] = [x2 - x1, y2 - y1];
      const share = Math.min(1, Math.max(0, ((x - x1) * dx + (y - y1) * dy) / (dx * dx + dy * dy || 1)));
      return Math.hypot(x1 + share * dx - x, y1 + share * dy - y);
    };
    const [nearest] = [...this.items()].sort((one, other) => away(one) - away(other));
    return nearest && away(nearest) <= reach ? nearest : null;
  }
}

const KINDS = ["arrow", "full", "dashed"];

/** @param {any} op @returns {op is DrawOp} */
function isOp(op) {
  const isPlace = (/** @type {string[]} */ names) => names.every((name) => Number.isFinite(op[name]) && Math.abs(op[name]) < 5000);
  if (!op || typeof op !== "object") return false;
  if (op.do === "clear") return true;
  if (!Number.isInteger(op.id)) return false;
  if (op.do === "line") return KINDS.includes(op.kind) && isPlace(["x1", "y1", "x2", "y2"]);
  if (op.do === "arc") return isPlace(["x", "y", "r", "deg", "sweep"]) && op.r > 0 && Math.abs(op.sweep) <= 360;
  if (op.do === "mark") return isPlace(["x1", "y1", "deg"]);
  return op.do === "rub" || (op.do === "name" && typeof op.name === "string" && op.name.length <= 20);
}

/**
 * The ops that a kept text or a file holds; null if it holds none of ours.
 * @param {unknown} ops
 * @returns {DrawOp[] | null}
 */
export const opsOf = (ops) => (Array.isArray(ops) && ops.every(isOp) ? ops : null);
