// The instruments: where they lie on the paper, their edges, what they touch. Places are mm from the left and from the
// top; angles are degrees, anticlockwise from the right, as a protractor shows them.

import { shapesOf } from "./draw-shapes.js";
import * as slide from "./draw-slide.js";

/** @import { Drawing } from "./draw-strokes.js" */
/** @import { DrawItem, DrawPoint, ToolName, ToolPicture, ToolPose, ToolPoses } from "../types/draw.js" */

const RADIANS = Math.PI / 180;
const LEVER = 12; // mm: what lies nearer to an instrument's zero says nothing of its direction
const BESIDE = 0.3; // mm within which an instrument's zero lies on a line
const LIFT = 12; // mm by which an instrument is lifted off another one
const NARROWEST = 2; // mm between point and pencil of the compasses
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
  #led = 0; // the mark that an edge was turned to since it was laid
  turned = 0; // degrees that the compasses have gone round since an arc was begun
  /** @type {Record<ToolName, number>} where the pencil is: mm along an edge, degrees from the zero line */
  pencil = { ruler: 0, protractor: 90, "square-60": 0, "square-45": 0, compasses: 0 };

  /**
   * @param {Record<ToolName, ToolPicture>} pictures
   * @param {ToolPoses} poses of the instruments on the paper
   * @param {Drawing} drawing
   */
  constructor(pictures, poses, drawing) {
    this.shapes = shapesOf(pictures);
    this.poses = poses;
    this.drawing = drawing;
    const { compasses } = this.shapes;
    if (compasses.kind === "compasses") compasses.open = poses.compasses?.open ?? compasses.open;
  }

  get pose() {
    return this.poseOf(this.inHand);
  }

  get kind() {
    return this.shapes[this.inHand].kind;
  }

  /** How far the compasses are open, mm. */
  get open() {
    const { compasses } = this.shapes;
    return compasses.kind === "compasses" ? compasses.open : 0;
  }

  /** @param {ToolName} name @returns {ToolPose} */
  poseOf(name) {
    return this.poses[name] ?? { x: 0, y: 0, deg: 0 };
  }

  /** Where a place is on an instrument: along its edge and up from it. @param {ToolName} name @param {number} x @param {number} y */
  #own(name, x, y) {
    const { x: left, y: top, deg } = this.poseOf(name);
    const [across, up, turn] = [x - left, top - y, deg * RADIANS];
    return { along: across * Math.cos(turn) + up * Math.sin(turn), up: up * Math.cos(turn) - across * Math.sin(turn) };
  }

  /** The instrument that a finger at a place takes hold of. @param {number} x @param {number} y @returns {ToolName | null} */
  at(x, y) {
    const names = /** @type {ToolName[]} */ (Object.keys(this.poses));
    const order = [this.inHand, ...names.filter((name) => name !== this.inHand).reverse()];
    return order.find((name) => this.shapes[name].covers(this.#own(name, x, y))) ?? null;
  }

  // A set square at the ruler.

  /** @param {ToolName} name @param {ToolPose} [pose] */
  #laid(name, pose = this.poseOf(name)) {
    return { shape: this.shapes[name], pose };
  }

  /** What the instrument in hand may lie against. @returns {ToolName[]} */
  #others() {
    if (this.kind === "square") return this.poses.ruler ? ["ruler"] : [];
    const squares = /** @type {ToolName[]} */ (["square-60", "square-45"]);
    return this.kind === "ruler" ? squares.filter((name) => this.poses[name]) : [];
  }

  /** The ruler's edge that the set square in hand lies against; undefined if it does not. */
  rail() {
    if (this.kind !== "square" || !this.poses.ruler) return undefined;
    return slide.touching(this.#laid(this.inHand), this.#laid("ruler"))?.its;
  }

  /** Whether there is another instrument that the one in hand may lie against. */
  hasOther() {
    return this.#others().length > 0;
  }

  /** Whether the instrument in hand lies against another one. */
  rests() {
    return this.#others().some((name) => slide.touching(this.#laid(this.inHand), this.#laid(name)));
  }

  /** Lay the instrument in hand against another one, or lift it off. Gives whether there is one. */
  against() {
    const [other] = this.#others();
    if (!other) return false;
    const rail = slide.touching(this.#laid(this.inHand), this.#laid(other))?.its;
    const { x, y } = this.pose;
    if (rail && slide.isCarried(this.#laid(this.inHand), this.#laid(other))) Object.assign(this.pose, { x: x + LIFT * rail.nx, y: y + LIFT * rail.ny });
    else Object.assign(this.pose, slide.laidAgainst(this.#laid(this.inHand), this.#laid(other)));
    this.pose.deg = wrap(this.pose.deg);
    return true;
  }

  /** Slide the set square in hand along the ruler so that an edge leads through a point within reach (mm).
   * @param {slide.Edge} rail @param {number} along @param {number} reach */
  #slide(rail, along, reach) {
    Object.assign(this.pose, slide.slid(this.pose, rail, along));
    if (!this.catches || !reach) return;
    const near = slide.ways(this.#laid(this.inHand), rail, this.drawing.points()).find(({ off }) => off <= reach);
    if (near) Object.assign(this.pose, slide.slid(this.pose, rail, near.along));
  }

  /** Move the instrument in hand a step; along the ruler, if it lies against it. @param {number} dx @param {number} dy */
  step(dx, dy) {
    const rail = this.rail();
    const { x, y } = this.pose;
    if (!rail) this.place(x + dx, y + dy);
    else this.#slide(rail, Math.hypot(dx, dy) * (slide.parts(rail, dx, dy).along < 0 ? -1 : 1), 0);
  }

  /**
   * Lay the zero of the instrument in hand on a place; it catches on a point within reach (mm). A set square at the ruler
   * slides along it, until it is drawn off.
   * @param {number} x @param {number} y @param {number} reach
   */
  place(x, y, reach = 0) {
    this.#led = 0;
    const rail = reach ? this.rail() : undefined;
    const [dx, dy] = [x - this.pose.x, y - this.pose.y];
    if (rail && !slide.drawnOff(rail, dx, dy)) {
      this.#slide(rail, slide.parts(rail, dx, dy).along, reach);
      return;
    }
    const point = this.catches && reach ? this.drawing.near(x, y, reach) : null;
    Object.assign(this.pose, { x: point?.x ?? x, y: point?.y ?? y });
    if (point || !this.catches || !reach || rail) return;
    const onto = this.kind === "square" ? slide.ontoBase(this.#laid(this.inHand), this.drawing.points(), reach) : null;
    if (onto) Object.assign(this.pose, { x: x + onto.dx, y: y + onto.dy });
    for (const name of this.#others()) {
      const pose = slide.caught(this.#laid(this.inHand), this.#laid(name), reach);
      if (pose) Object.assign(this.pose, pose, { deg: wrap(pose.deg) });
    }
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
        for (const from of this.shapes[this.inHand].ways) {
          const way = direction(this.pose, point) - from;
          const off = Math.abs(wrap(way - deg));
          if (off < Math.min(SWING, least) && far * Math.sin(off * RADIANS) <= reach) [best, least] = [way, off];
        }
      }
    }
    // An arc that was begun goes on with them.
    if (this.inHand === "compasses") this.turned += wrap(best - this.pose.deg);
    this.pose.deg = wrap(best);
  }

  /** Open the compasses so far (mm), as far as they go. @param {number} far */
  openTo(far) {
    const { compasses } = this.shapes;
    if (compasses.kind !== "compasses") return;
    compasses.open = Math.min(Math.max(far, NARROWEST), compasses.most);
    this.poseOf("compasses").open = compasses.open;
  }

  /** Open the compasses up to a place; they catch on a point within reach (mm). @param {{ x: number, y: number }} place @param {number} reach */
  openOnto(place, reach = 0) {
    const to = (this.catches && reach ? this.drawing.near(place.x, place.y, reach) : null) ?? place;
    const { pose } = this;
    if (apart(pose, to) < NARROWEST) return;
    pose.deg = wrap(direction(pose, to));
    this.openTo(apart(pose, to));
  }

  /** The arc that the compasses have drawn since it was begun: at the most a whole circle. */
  arc() {
    const { x, y, deg } = this.poseOf("compasses");
    const sweep = Math.min(Math.max(this.turned, -360), 360);
    return { x, y, r: this.open, deg: wrap(deg - this.turned), sweep };
  }

  // The pencil at an edge.

  /** Where the pencil is, at an edge. @param {ToolName} name @param {number} [value] */
  tip(name = this.inHand, value = this.pencil[name]) {
    const { along, up } = this.shapes[name].place(value);
    const pose = this.poseOf(name);
    return moved(moved(pose, along, pose.deg), up, pose.deg + 90);
  }

  /** Let the pencil go along the edge of an instrument that is nearest to a place. @param {ToolName} name @param {number} x @param {number} y */
  pick(name, x, y) {
    this.shapes[name].pick(this.#own(name, x, y));
  }

  /** Let the pencil go along the next edge of the set square in hand. */
  nextEdge() {
    const shape = this.shapes[this.inHand];
    if (shape.kind !== "square") return false;
    shape.edge = (shape.edge + 1) % shape.edges.length;
    this.pencil[this.inHand] = 0;
    return true;
  }

  /** What an edge reads beside a place, as far as the edge goes. @param {ToolName} name @param {number} x @param {number} y */
  reading(name, x, y) {
    return this.shapes[name].value(this.#own(name, x, y));
  }

  /** The direction across the edge where the pencil is. @param {ToolName} name */
  across(name = this.inHand) {
    return wrap(this.poseOf(name).deg + this.shapes[name].across(this.pencil[name]));
  }

  /** @param {ToolName} name @param {number} value */
  #put(name, value) {
    if (name !== "compasses") {
      this.pencil[name] = this.shapes[name].within(value);
      return;
    }
    // The compasses go round with their pencil.
    const pose = this.poseOf(name);
    this.turned += wrap(value);
    pose.deg = wrap(pose.deg + value);
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
    this.#put(name, value);
    if (!this.catches || !reach || name === "compasses") return null;
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
    if (onward !== undefined) this.#put(name, onward);
    return onward !== undefined;
  }

  // Laid on by a press, without dragging.

  /** Lay the instrument in hand on the next point after the one it lies on; slide a set square at the ruler to the next. */
  onto() {
    const points = this.drawing.points().filter((point) => point.what !== "zero" && !isLoose(point));
    const rail = this.rail();
    if (rail) {
      const ways = slide.ways(this.#laid(this.inHand), rail, points).sort((one, other) => one.along - other.along);
      const onward = ways.find(({ along }) => along > 0.05) ?? ways[0];
      if (onward) this.#slide(rail, onward.along, 0);
      return;
    }
    const next = this.#nextOf(points, (point) => apart(point, this.pose) < 0.05);
    this.#led = 0;
    Object.assign(this.pose, { x: next.x, y: next.y });
  }

  /** Open the compasses up to the next point. */
  openNext() {
    const points = this.drawing.points().filter((point) => !isLoose(point) && apart(point, this.pose) > NARROWEST);
    const next = points.length ? this.#nextOf(points, (point) => apart(point, this.tip("compasses")) < 0.05) : null;
    if (next) this.openOnto(next);
    return Boolean(next);
  }

  /** The point after the one that is meant, in turn. @param {DrawPoint[]} points @param {(point: DrawPoint) => boolean} isHere */
  #nextOf(points, isHere) {
    return points[(points.findIndex(isHere) + 1) % points.length];
  }

  /** The directions of lines and of the sheet's mark that go through the zero of the instrument in hand, and of the points to
   * which an edge would lead from there. */
  #through() {
    const { pose } = this;
    const isFar = (/** @type {DrawPoint} */ point) => apart(point, pose) > LEVER;
    const led = this.kind !== "protractor" ? (/** @type {DrawPoint} */ point) => point.what !== "tail" && !isLoose(point) : (/** @type {DrawPoint} */ point) => point.what === "zero";
    const ways = this.drawing.points().filter((point) => isFar(point) && led(point)).map((point) => direction(pose, point));
    for (const line of this.drawing.lines()) if (offLine(pose, line) < BESIDE) ways.push(...bothWays(line));
    return ways;
  }

  /** Turn an edge to the mark after which nothing was drawn, once: that is what the mark was made for. */
  #toTheMark() {
    const last = this.drawing.items().at(-1);
    const isEdge = this.kind === "ruler" || this.kind === "square";
    if (!isEdge || last?.kind !== "mark" || last.id === this.#led) return false;
    const mark = { x: last.x1, y: last.y1 };
    if (apart(this.pose, mark) < LEVER) return false;
    this.#led = last.id;
    this.pose.deg = direction(this.pose, mark);
    return true;
  }

  /** Turn the instrument in hand along the next line: first to a new mark, then those through its zero, then the others, for parallels. */
  along() {
    if (this.#toTheMark()) return true;
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
