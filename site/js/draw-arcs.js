// Arcs that compasses draw: what was done as an item on the paper, where arcs cross, how they are written. Places are mm from
// the left and from the top; angles are degrees, anticlockwise from the right.

/** @import { DrawArc, DrawItem, DrawOp } from "../types/draw.js" */

const RADIANS = Math.PI / 180;
const BEYOND = 1; // mm by which an arc may miss another line and still cross it
const WHOLE = 359.9; // degrees from which an arc is written in two

/** @typedef {{ x: number, y: number }} Place */

/** @param {DrawItem} item @returns {item is DrawArc} */
export const isArc = (item) => item.kind === "arc";

/** @param {{ x: number, y: number, r: number }} arc @param {number} deg */
const at = ({ x, y, r }, deg) => ({ x: x + r * Math.cos(deg * RADIANS), y: y - r * Math.sin(deg * RADIANS) });

/** The arc that something done has left. @param {Extract<DrawOp, { do: "arc" }>} op @returns {DrawArc} */
export function arcOf({ id, x, y, r, deg, sweep }) {
  const [first, last] = [at({ x, y, r }, deg), at({ x, y, r }, deg + sweep)];
  return { id, name: "", kind: "arc", x, y, r, deg, sweep, x1: first.x, y1: first.y, x2: last.x, y2: last.y };
}

/** Whether a place of its circle lies on an arc, or little beyond its ends. @param {DrawArc} arc @param {Place} place */
function reaches(arc, place) {
  const more = BEYOND / arc.r / RADIANS;
  const deg = Math.atan2(arc.y - place.y, place.x - arc.x) / RADIANS;
  const [from, long] = arc.sweep < 0 ? [arc.deg + arc.sweep, -arc.sweep] : [arc.deg, arc.sweep];
  const along = (((deg - from + more) % 360) + 360) % 360;
  return along <= long + 2 * more;
}

/** Where two circles cross. @param {DrawArc} one @param {DrawArc} other @returns {Place[]} */
function circlesCross(one, other) {
  const [dx, dy] = [other.x - one.x, other.y - one.y];
  const apart = Math.hypot(dx, dy);
  if (apart < 0.5) return [];
  const along = (apart * apart + one.r * one.r - other.r * other.r) / (2 * apart);
  const square = one.r * one.r - along * along;
  if (square < 0) return [];
  const high = Math.sqrt(square);
  return [1, -1].map((side) => ({ x: one.x + (along * dx - side * high * dy) / apart, y: one.y + (along * dy + side * high * dx) / apart }));
}

/** Where a circle crosses a line. @param {DrawArc} arc @param {DrawItem} line @returns {Place[]} */
function circleCrosses(arc, { x1, y1, x2, y2 }) {
  const long = Math.hypot(x2 - x1, y2 - y1);
  if (!long) return [];
  const [ux, uy] = [(x2 - x1) / long, (y2 - y1) / long];
  const foot = (arc.x - x1) * ux + (arc.y - y1) * uy;
  const square = arc.r * arc.r - ((arc.x - x1 - foot * ux) ** 2 + (arc.y - y1 - foot * uy) ** 2);
  if (square < 0) return [];
  return [foot + Math.sqrt(square), foot - Math.sqrt(square)]
    .filter((far) => far > -BEYOND && far < long + BEYOND)
    .map((far) => ({ x: x1 + far * ux, y: y1 + far * uy }));
}

/** Where an arc crosses another one or a line. @param {DrawArc} arc @param {DrawItem} other */
export function crossings(arc, other) {
  const places = isArc(other) ? circlesCross(arc, other).filter((place) => reaches(other, place)) : circleCrosses(arc, other);
  return places.filter((place) => reaches(arc, place));
}

/** How far a place is from an arc. @param {DrawArc} arc @param {number} x @param {number} y */
export function offArc(arc, x, y) {
  const from = Math.hypot(x - arc.x, y - arc.y);
  if (from > 0 && reaches(arc, { x, y })) return Math.abs(from - arc.r);
  return Math.min(Math.hypot(x - arc.x1, y - arc.y1), Math.hypot(x - arc.x2, y - arc.y2));
}

/** An arc as the path of a picture. @param {DrawArc} arc */
export function pathOf(arc) {
  const { r, deg, sweep } = arc;
  const parts = Math.abs(sweep) > WHOLE ? [sweep / 2, sweep] : [sweep];
  const said = (/** @type {Place} */ { x, y }) => `${x.toFixed(3)} ${y.toFixed(3)}`;
  let before = 0;
  const pieces = parts.map((to) => {
    const large = Math.abs(to - before) > 180 ? 1 : 0;
    before = to;
    return `A${r.toFixed(3)} ${r.toFixed(3)} 0 ${large} ${sweep < 0 ? 1 : 0} ${said(at(arc, deg + to))}`;
  });
  return `M${said(at(arc, deg))}${pieces.join("")}`;
}
