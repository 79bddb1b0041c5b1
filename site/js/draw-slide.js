// A set square at a ruler: one edge against the other, along which it slides and keeps its direction. Places are mm from the
// left and from the top.

/** @import { Shape } from "./draw-shapes.js" */
/** @import { DrawPoint, ToolPose } from "../types/draw.js" */

const RADIANS = Math.PI / 180;
const TOUCH = 0.3; // mm and degrees within which two edges lie against each other
const TURN = 4; // degrees by which an instrument turns to lie against another one
const OVERLAP = 8; // mm that edges must share
const PULL = 9; // mm by which a set square must be drawn away from the ruler to come off

const SIDES = [2, 0, 1]; // of a set square's corners, the one at which each of its edges begins: base, upright, slope

/** @typedef {{ x: number, y: number }} Place */
/** An edge on the paper: its ends, its unit, outward from its instrument. @typedef {{ a: Place, b: Place, ux: number, uy: number, nx: number, ny: number, long: number }} Edge */
/** An instrument where it lies. @typedef {{ shape: Shape, pose: ToolPose }} Laid */
/** Two edges that face each other: how far apart (mm), and by how much one must turn (degrees). @typedef {{ mine: Edge, its: Edge, gap: number, turn: number }} Facing */

/** @param {Laid} laid @returns {Edge[]} */
function edgesOf({ shape, pose }) {
  const [cos, sin] = [Math.cos(pose.deg * RADIANS), Math.sin(pose.deg * RADIANS)];
  const places = shape.corners.map(([along, up]) => ({ x: pose.x + along * cos - up * sin, y: pose.y - along * sin - up * cos }));
  return places.map((a, index) => {
    const b = places[(index + 1) % places.length];
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    const [ux, uy] = [(b.x - a.x) / long, (b.y - a.y) / long];
    // Corners run anticlockwise as seen, with y downwards: outward is to the right of the way along.
    return { a, b, ux, uy, nx: -uy, ny: ux, long };
  });
}

/** The edges of two instruments that face each other, the nearest first. @param {Laid} one @param {Laid} other @returns {Facing[]} */
function facing(one, other) {
  /** @type {Facing[]} */
  const found = [];
  for (const mine of edgesOf(one)) {
    for (const its of edgesOf(other)) {
      const [dot, turned] = [mine.nx * its.nx + mine.ny * its.ny, mine.ux * its.uy - mine.uy * its.ux];
      if (dot > 0) continue;
      // The middle of what they share, from the other edge.
      const ends = [mine.a, mine.b].map(({ x, y }) => (x - its.a.x) * its.ux + (y - its.a.y) * its.uy);
      const [first, last] = [Math.max(0, Math.min(...ends)), Math.min(its.long, Math.max(...ends))];
      if (last - first < OVERLAP) continue;
      const gap = Math.max(...[mine.a, mine.b].map(({ x, y }) => Math.abs((x - its.a.x) * its.nx + (y - its.a.y) * its.ny)));
      found.push({ mine, its, gap, turn: Math.asin(Math.max(-1, Math.min(1, turned))) / RADIANS });
    }
  }
  return found.sort((a, b) => a.gap - b.gap);
}

/** The edges with which two instruments touch; undefined if they do not. @param {Laid} one @param {Laid} other */
export const touching = (one, other) => facing(one, other).find(({ gap, turn }) => gap < TOUCH && Math.abs(turn) < TOUCH);

/** Whether a set square touches a ruler with another edge than its base, so that the base goes from line to line.
 * @param {Laid} one @param {Laid} other */
export function isCarried(one, other) {
  const [square, ruler] = one.shape.kind === "square" ? [one, other] : [other, one];
  const edge = touching(square, ruler)?.mine;
  const base = edgesOf(square)[SIDES[0]];
  return edge !== undefined && Math.abs(edge.ux * base.ny - edge.uy * base.nx) < 0.99;
}

/** Turn an instrument about its zero. @param {ToolPose} pose @param {number} turn @returns {ToolPose} */
const turnedBy = (pose, turn) => ({ ...pose, deg: pose.deg + turn });

/** Where an instrument comes to lie against another one that it has all but reached (mm); null if it has not.
 * @param {Laid} laid @param {Laid} other @param {number} reach @returns {ToolPose | null} */
export function caught({ shape, pose }, other, reach) {
  for (const { its, turn } of facing({ shape, pose }, other).filter((one) => Math.abs(one.turn) <= TURN)) {
    const turned = turnedBy(pose, turn);
    const mine = edgesOf({ shape, pose: turned }).find(({ nx, ny }) => nx * its.nx + ny * its.ny < -0.9999);
    const off = mine ? (mine.a.x - its.a.x) * its.nx + (mine.a.y - its.a.y) * its.ny : Infinity;
    if (Math.abs(off) <= reach) return { ...turned, x: pose.x - off * its.nx, y: pose.y - off * its.ny };
  }
  return null;
}

/** How far along an edge, and away from it, a step leads. @param {Edge} its @param {number} dx @param {number} dy */
export const parts = (its, dx, dy) => ({ along: dx * its.ux + dy * its.uy, away: dx * its.nx + dy * its.ny });

/** Whether a step draws an instrument off an edge. @param {Edge} its @param {number} dx @param {number} dy */
export const drawnOff = (its, dx, dy) => parts(its, dx, dy).away > PULL;

/** A step along an edge. @param {Place} pose @param {Edge} its @param {number} along */
export const slid = ({ x, y }, its, along) => ({ x: x + along * its.ux, y: y + along * its.uy });

/**
 * How far along a ruler's edge a set square must go so that the edge that is drawn along leads through a point (its
 * base, or another one, where that edge lies along the ruler); the shortest way first.
 * @param {Laid} square @param {Edge} its @param {DrawPoint[]} points
 */
export function ways(square, its, points) {
  /** @type {{ along: number, off: number, point: DrawPoint }[]} */
  const found = [];
  const isAcross = (/** @type {Edge} */ { nx, ny }) => Math.abs(its.ux * nx + its.uy * ny) > 0.2;
  const edges = edgesOf(square);
  const drawn = square.shape.kind === "square" ? square.shape.edge : 0;
  const [edge] = [edges[SIDES[drawn]], edges[SIDES[0]], ...edges].filter(isAcross);
  if (edge) {
    const across = its.ux * edge.nx + its.uy * edge.ny;
    for (const point of points) {
      const off = (point.x - edge.a.x) * edge.nx + (point.y - edge.a.y) * edge.ny;
      const along = off / across;
      const on = (point.x - edge.a.x - along * its.ux) * edge.ux + (point.y - edge.a.y - along * its.uy) * edge.uy;
      if (on > -1 && on < edge.long + 1) found.push({ along, off: Math.abs(off), point });
    }
  }
  return found.sort((one, other) => Math.abs(one.along) - Math.abs(other.along));
}

/**
 * How far a set square must go so that its base leads through a point within reach (mm): straight towards it.
 * @param {Laid} square @param {DrawPoint[]} points @param {number} reach
 */
export function ontoBase(square, points, reach) {
  const base = edgesOf(square)[SIDES[0]];
  const offs = points.flatMap(({ x, y }) => {
    const along = (x - base.a.x) * base.ux + (y - base.a.y) * base.uy;
    return along > -1 && along < base.long + 1 ? [(x - base.a.x) * base.nx + (y - base.a.y) * base.ny] : [];
  });
  const off = offs.sort((one, other) => Math.abs(one) - Math.abs(other))[0] ?? Infinity;
  return Math.abs(off) <= reach ? { dx: off * base.nx, dy: off * base.ny } : null;
}

/**
 * Where a ruler lies against a set square, so that the set square can slide both ways; or a set square against a ruler.
 * The edge of the set square at its right angle which is not its base comes first: the base is drawn along.
 * @param {Laid} moving @param {Laid} fixed @returns {ToolPose | null}
 */
export function laidAgainst(moving, fixed) {
  const [ruler, square] = moving.shape.kind === "ruler" ? [moving, fixed] : [fixed, moving];
  const [mine, its] = [edgesOf(ruler)[2], edgesOf(square)[0]];
  // The ruler's graduated edge and the upright lie on each other, middle on middle.
  const [still, goes] = moving === ruler ? [its, mine] : [mine, its];
  const wanted = Math.atan2(still.uy, -still.ux) / RADIANS; // the way of the other edge, turned round, y upwards
  const now = Math.atan2(-goes.uy, goes.ux) / RADIANS;
  const turned = { shape: moving.shape, pose: turnedBy(moving.pose, wanted - now) };
  const edge = edgesOf(turned)[moving === ruler ? 2 : 0];
  const middle = (/** @type {Edge} */ { a, b }) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
  const [from, to] = [middle(edge), middle(still)];
  return { ...turned.pose, x: turned.pose.x + to.x - from.x, y: turned.pose.y + to.y - from.y };
}
