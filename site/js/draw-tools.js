// The instruments: where they lie on the paper, their edges, what they touch. Places are mm from the left and from the
// top; angles are degrees, anticlockwise from the right, as a protractor shows them.

/** @import { Drawing } from "./draw-strokes.js" */
/** @import { DrawItem, DrawPoint, ToolName, ToolPicture, ToolPose } from "../types/draw.js" */

const RADIANS = Math.PI / 180;
const LEVER = 12; // mm: what lies nearer to an instrument's zero says nothing of its direction
const BESIDE = 0.3; // mm within which an instrument's zero lies on a line
const SWING = 2; // degrees: the most by which an instrument swings onto a point

/** A degree between -180 and 180. @param {number} deg */
export const wrap = (deg) => {
  const turned = ((deg % 360) + 360) % 360;
  return turned > 180 ? turned - 360 : turned;
};

/** The direction from one place to another. @param {{ x: number, y: number }} from @param {{ x: number, y: number }} to */
export const direction = (from, to) => Math.atan2(from.y - to.y, to.x - from.x) / RADIANS;

/** A place so far away in a direction. @param {{ x: number, y: number }} from @param {number} far @param {number} deg */
export const moved = (from, far, deg) => ({ x: from.x + far * Math.cos(deg * RADIANS), y: from.y - far * Math.sin(deg * RADIANS) });

/** @param {{ x: number, y: number }} one @param {{ x: number, y: number }} other */
export const apart = (one, other) => Math.hypot(one.x - other.x, one.y - other.y);

/** Whether a point is an end of a dashed line that nothing meets: nobody lays an instrument there. @param {DrawPoint} point */
const isLoose = ({ what, item }) => (what === "tip" || what === "tail") && item?.kind === "dashed";

/** @param {DrawItem} line */
function bothWays({ x1, y1, x2, y2 }) {
  const deg = direction({ x: x1, y: y1 }, { x: x2, y: y2 });
  return [deg, wrap(deg + 180)];
}

/** How far a place is from a line and what it goes on to. @param {{ x: number, y: number }} place @param {DrawItem} line */
function offLine({ x, y }, { x1, y1, x2, y2 }) {
  return Math.abs((x - x1) * (y2 - y1) - (y - y1) * (x2 - x1)) / (Math.hypot(x2 - x1, y2 - y1) || 1);
}

/** Each direction once, in order. @param {number[]} ways */
const sorted = (ways) => [...new Set(ways.map((deg) => Number(wrap(deg).toFixed(6))))].sort((one, other) => one - other);

export class Tools {
  /** @type {ToolName} */
  inHand = "ruler";
  catches = true; // whether instruments and pencil catch on what was drawn
  /** @type {Record<ToolName, number>} where the pencil is at an edge: mm from the ruler's zero, degrees from the zero line */
  pencil = { ruler: 0, protractor: 90 };

  /**
   * @param {Record<ToolName, ToolPicture>} pictures
   * @param {Record<ToolName, ToolPose>} poses
   * @param {Drawing} drawing
   */
  constructor(pictures, poses, drawing) {
    this.pictures = pictures;
    this.poses = poses;
    this.drawing = drawing;
    this.long = pictures.ruler.length ?? 150;
    this.before = pictures.ruler.before ?? 5;
    this.wide = pictures.ruler.width ?? 25;
    this.radius = pictures.protractor.radius ?? 75;
    this.base = pictures.protractor.base ?? 9;
    this.circle = pictures.protractor.circle === true;
  }

  get pose() {
    return this.poses[this.inHand];
  }

  /** Where a place is on an instrument: along its edge and up from it. @param {ToolName} name @param {number} x @param {number} y */
  #own(name, x, y) {
    const { x: left, y: top, deg } = this.poses[name];
    const [across, up, turn] = [x - left, top - y, deg * RADIANS];
    return { along: across * Math.cos(turn) + up * Math.sin(turn), up: up * Math.cos(turn) - across * Math.sin(turn) };
  }

  /** Whether a place lies on an instrument. @param {ToolName} name @param {number} x @param {number} y */
  #covers(name, x, y) {
    const { along, up } = this.#own(name, x, y);
    if (name === "ruler") return along >= -this.before && along <= this.long + this.before && up <= 0 && up >= -this.wide;
    return Math.hypot(along, up) <= this.radius ? this.circle || up >= -this.base : up < 0 && up >= -this.base && Math.abs(along) <= this.radius;
  }

  /** The instrument that a finger at a place takes hold of. @param {number} x @param {number} y @returns {ToolName | null} */
  at(x, y) {
    /** @type {ToolName[]} */
    const order = this.inHand === "ruler" ? ["ruler", "protractor"] : ["protractor", "ruler"];
    return order.find((name) => this.#covers(name, x, y)) ?? null;
  }

  /**
   * Lay the zero of the instrument in hand on a place; it catches on a point within reach (mm).
   * @param {number} x @param {number} y @param {number} reach
   */
  place(x, y, reach = 0) {
    const caught = this.catches && reach ? this.drawing.near(x, y, reach) : null;
    Object.assign(this.pose, { x: caught?.x ?? x, y: caught?.y ?? y });
  }

  /** The directions in which its edge, or its zero line, would go through a point. @param {DrawPoint} point */
  #towards(point) {
    const deg = direction(this.pose, point);
    return this.inHand === "ruler" ? [deg] : [deg, deg + 180];
  }

  /**
   * Turn the instrument in hand about its zero; its edge catches on a point within reach (mm).
   * @param {number} deg @param {number} reach
   */
  turn(deg, reach = 0) {
    let [best, least] = [deg, Infinity];
    if (this.catches && reach) {
      for (const point of this.drawing.points()) {
        const far = apart(this.pose, point);
        if (far < LEVER) continue;
        for (const way of this.#towards(point)) {
          const off = Math.abs(wrap(way - deg));
          if (off < Math.min(SWING, least) && far * Math.sin(off * RADIANS) <= reach) [best, least] = [way, off];
        }
      }
    }
    this.pose.deg = wrap(best);
  }

  // The pencil at an edge.

  /** Where the pencil is, at an edge. @param {ToolName} name @param {number} [value] */
  tip(name = this.inHand, value = this.pencil[name]) {
    const pose = this.poses[name];
    return name === "ruler" ? moved(pose, value, pose.deg) : moved(pose, this.radius, pose.deg + value);
  }

  /** What an edge reads beside a place, as far as the edge goes. @param {ToolName} name @param {number} x @param {number} y */
  reading(name, x, y) {
    const { along, up } = this.#own(name, x, y);
    if (name === "ruler") return this.#within(name, along);
    return this.#within(name, Math.atan2(up, along) / RADIANS);
  }

  /** @param {ToolName} name @param {number} value */
  #within(name, value) {
    if (name === "ruler") return Math.min(Math.max(value, -this.before), this.long + this.before);
    if (this.circle) return ((value % 360) + 360) % 360;
    const turned = wrap(value);
    return turned >= 0 ? turned : turned < -90 ? 180 : 0;
  }

  /** The readings at which points lie at an edge, within reach (mm). @param {ToolName} name @param {number} reach */
  #met(name, reach) {
    return this.drawing.points().flatMap((point) => {
      const value = this.reading(name, point.x, point.y);
      return apart(this.tip(name, value), point) <= reach ? [{ value, point }] : [];
    });
  }

  /**
   * Lead the pencil along an edge to a reading; it catches on a point at the edge within reach (mm).
   * @param {ToolName} name @param {number} value @param {number} reach
   */
  lead(name, value, reach = 0) {
    this.pencil[name] = this.#within(name, value);
    if (!this.catches || !reach) return null;
    const here = this.tip(name);
    const near = this.#met(name, reach).filter((one) => apart(one.point, here) <= reach)
      .sort((one, other) => apart(one.point, here) - apart(other.point, here))[0];
    if (near) this.pencil[name] = near.value;
    return near?.point ?? null;
  }

  /** Lead the pencil to the next point at the edge, for whom no finger leads it. @param {ToolName} name */
  next(name) {
    const met = this.#met(name, 1).map(({ value }) => value).sort((one, other) => one - other);
    const here = this.pencil[name];
    const onward = met.find((value) => value > here + 0.05) ?? met[0];
    if (onward !== undefined) this.pencil[name] = onward;
    return onward !== undefined;
  }

  // Laid on by a press, without dragging.

  /** Lay the instrument in hand on the next point after the one it lies on. */
  onto() {
    const points = this.drawing.points().filter((point) => point.what !== "zero" && !isLoose(point));
    const here = points.findIndex((point) => apart(point, this.pose) < 0.05);
    const point = points[(here + 1) % points.length];
    Object.assign(this.pose, { x: point.x, y: point.y });
    return point;
  }

  /** The directions of lines and of the sheet's mark that go through the zero of the instrument in hand, and of the points to
   * which a ruler would lead from there. */
  #through() {
    const { pose } = this;
    const isFar = (/** @type {DrawPoint} */ point) => apart(point, pose) > LEVER;
    const led = this.inHand === "ruler" ? (/** @type {DrawPoint} */ point) => point.what !== "tail" && !isLoose(point) : (/** @type {DrawPoint} */ point) => point.what === "zero";
    const ways = this.drawing.points().filter((point) => isFar(point) && led(point)).map((point) => direction(pose, point));
    for (const line of this.drawing.lines()) if (offLine(pose, line) < BESIDE) ways.push(...bothWays(line));
    return ways;
  }

  /** Turn the instrument in hand along the next line: first those through its zero, then the others, for parallels. */
  along() {
    const through = sorted(this.#through());
    const others = sorted(this.drawing.lines().flatMap(bothWays)).filter((deg) => !through.includes(deg));
    const ways = [...through, ...others];
    if (!ways.length) return false;
    const here = ways.findIndex((deg) => Math.abs(wrap(deg - this.pose.deg)) < 0.01);
    const onward = through.findIndex((deg) => deg > this.pose.deg);
    this.pose.deg = ways[here >= 0 ? (here + 1) % ways.length : Math.max(onward, 0)];
    return true;
  }
}
