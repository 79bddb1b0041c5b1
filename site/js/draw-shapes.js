// The shape of each instrument: which places it covers, where its edges are, what they read. A place on an instrument is so
// many mm along its own direction and up from it; a value is mm along an edge, or degrees round a centre.

/** @import { ToolName, ToolPicture } from "../types/draw.js" */

const RADIANS = Math.PI / 180;
const GRIP = 7; // mm about a leg of the compasses within which a finger holds it

/** @typedef {{ along: number, up: number }} Own */

/** @param {number} value @param {number} least @param {number} most */
const between = (value, least, most) => Math.min(Math.max(value, least), most);

/** How far a place is from a line between two others. @param {Own} place @param {Own} first @param {Own} last */
function offSegment(place, first, last) {
  const [along, up] = [last.along - first.along, last.up - first.up];
  const share = between(((place.along - first.along) * along + (place.up - first.up) * up) / (along * along + up * up || 1), 0, 1);
  return Math.hypot(first.along + share * along - place.along, first.up + share * up - place.up);
}

/** Where the legs of compasses meet. @param {number} open mm @returns {Own} */
export const hingeOf = (open) => ({ along: open / 2, up: Math.max(16, 0.45 * open) });

class Ruler {
  kind = /** @type {const} */ ("ruler");
  ways = [0]; // the directions, from its own, of the edges that go through its zero
  isStraight = true;

  /** @param {ToolPicture} picture */
  constructor({ length = 150, before = 5, width = 25 }) {
    this.first = -before;
    this.last = length + before;
    /** @type {[number, number][]} anticlockwise */
    this.corners = [[this.first, -width], [this.last, -width], [this.last, 0], [this.first, 0]];
    this.width = width;
  }

  /** @param {Own} own */
  covers({ along, up }) {
    return along >= this.first && along <= this.last && up <= 0 && up >= -this.width;
  }

  /** @param {number} value */
  within(value) {
    return between(value, this.first, this.last);
  }

  /** @param {Own} own */
  value({ along }) {
    return this.within(along);
  }

  /** @param {number} value @returns {Own} */
  place(value) {
    return { along: value, up: 0 };
  }

  /** The direction across the edge, from its own. @param {number} _value */
  across(_value) {
    return 90;
  }

  /** @param {Own} _own */
  pick(_own) {}
}

class Protractor {
  kind = /** @type {const} */ ("protractor");
  ways = [0, 180];
  isStraight = false;
  /** @type {[number, number][]} */
  corners = [];

  /** @param {ToolPicture} picture */
  constructor({ radius = 75, base = 9, circle = false }) {
    this.radius = radius;
    this.base = base;
    this.circle = circle;
  }

  /** @param {Own} own */
  covers({ along, up }) {
    return Math.hypot(along, up) <= this.radius ? this.circle || up >= -this.base : up < 0 && up >= -this.base && Math.abs(along) <= this.radius;
  }

  /** @param {number} value */
  within(value) {
    const whole = ((value % 360) + 360) % 360;
    if (this.circle || whole <= 180) return whole;
    return whole < 270 ? 180 : 0;
  }

  /** @param {Own} own */
  value({ along, up }) {
    return this.within(Math.atan2(up, along) / RADIANS);
  }

  /** @param {number} value @returns {Own} */
  place(value) {
    return { along: this.radius * Math.cos(value * RADIANS), up: this.radius * Math.sin(value * RADIANS) };
  }

  /** @param {number} value */
  across(value) {
    return value;
  }

  /** @param {Own} _own */
  pick(_own) {}
}

class SetSquare {
  kind = /** @type {const} */ ("square");
  ways = [0, -90];
  isStraight = true;
  edge = 0; // along which the pencil goes: the base, the upright, the slope

  /** @param {ToolPicture} picture */
  constructor({ legs = [120, 120] }) {
    const [base, upright] = legs;
    /** @type {[number, number][]} anticlockwise; its right angle lies on its zero */
    this.corners = [[0, 0], [0, -upright], [base, 0]];
    this.edges = [
      { along: 0, up: 0, way: 0, long: base },
      { along: 0, up: 0, way: -90, long: upright },
      { along: base, up: 0, way: 180 + Math.atan2(upright, base) / RADIANS, long: Math.hypot(base, upright) },
    ];
  }

  /** @param {Own} own */
  covers({ along, up }) {
    const [, [, foot], [base]] = this.corners;
    return along >= 0 && up <= 0 && along / base + up / foot <= 1;
  }

  /** @param {number} value */
  within(value) {
    return between(value, 0, this.edges[this.edge].long);
  }

  /** @param {Own} own */
  value({ along, up }) {
    const edge = this.edges[this.edge];
    const turn = edge.way * RADIANS;
    return this.within((along - edge.along) * Math.cos(turn) + (up - edge.up) * Math.sin(turn));
  }

  /** @param {number} value @returns {Own} */
  place(value) {
    const { along, up, way } = this.edges[this.edge];
    return { along: along + value * Math.cos(way * RADIANS), up: up + value * Math.sin(way * RADIANS) };
  }

  /** @param {number} _value */
  across(_value) {
    return this.edges[this.edge].way + 90;
  }

  /** Let the pencil go along the edge that is nearest to a place. @param {Own} own */
  pick(own) {
    const ends = this.edges.map(({ along, up, way, long }) =>
      offSegment(own, { along, up }, { along: along + long * Math.cos(way * RADIANS), up: up + long * Math.sin(way * RADIANS) }));
    this.edge = ends.indexOf(Math.min(...ends));
  }
}

class Compasses {
  kind = /** @type {const} */ ("compasses");
  ways = [0];
  isStraight = false;
  /** @type {[number, number][]} */
  corners = [];

  /** @param {ToolPicture} picture */
  constructor({ most = 250, open = 40 }) {
    this.most = most;
    this.open = open; // mm from its point to its pencil
  }

  get hinge() {
    return hingeOf(this.open);
  }

  /** @param {Own} own */
  covers(own) {
    const ends = [{ along: 0, up: 0 }, { along: this.open, up: 0 }];
    return ends.some((end) => offSegment(own, end, this.hinge) < GRIP);
  }

  /** @param {number} value */
  within(value) {
    return value;
  }

  /** @param {Own} own */
  value({ along, up }) {
    return Math.atan2(up, along) / RADIANS;
  }

  /** @param {number} value @returns {Own} */
  place(value) {
    return { along: this.open * Math.cos(value * RADIANS), up: this.open * Math.sin(value * RADIANS) };
  }

  /** @param {number} value */
  across(value) {
    return value;
  }

  /** @param {Own} _own */
  pick(_own) {}
}

/** @typedef {Ruler | Protractor | SetSquare | Compasses} Shape */

/** @type {Record<ToolName, new (picture: ToolPicture) => Shape>} */
const SHAPES = { ruler: Ruler, protractor: Protractor, "square-60": SetSquare, "square-45": SetSquare, compasses: Compasses };

/** The shape of each instrument. @param {Record<ToolName, ToolPicture>} pictures @returns {Record<ToolName, Shape>} */
export function shapesOf(pictures) {
  const names = /** @type {ToolName[]} */ (Object.keys(pictures));
  return /** @type {Record<ToolName, Shape>} */ (Object.fromEntries(names.map((name) => [name, new SHAPES[name](pictures[name])])));
}
