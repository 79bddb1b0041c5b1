// What the drawing says in words: pycore's sentences, filled with where instruments and pencil are and what a line became.

import { isArc } from "./draw-arcs.js";
import { apart } from "./draw-tools.js";

/** @import { Drawing } from "./draw-strokes.js" */
/** @import { Tools } from "./draw-tools.js" */
/** @import { DrawItem, DrawName, ToolName } from "../types/draw.js" */

const ON = 0.05; // mm within which something is on a point

/**
 * @param {Record<string, string>} sentences
 * @param {Record<string, DrawName>} names
 * @param {Drawing} drawing
 * @param {Tools} tools
 */
export function voice(sentences, names, drawing, tools) {
  /** @param {string} name @param {Record<string, string | number>} [values] */
  const said = (name, values = {}) =>
    (sentences[name] ?? "").replace(/\{(\w+)\}/g, (_, key) => String(values[key] ?? ""));
  const size = (/** @type {number} */ value) => (Math.round(value * 10) / 10).toFixed(1);

  /** @param {DrawItem} item */
  const called = (item) => names[item.name]?.plain ?? said("line-of", { number: place(item) });
  const place = (/** @type {DrawItem} */ item) => drawing.items().findIndex(({ id }) => id === item.id) + 1;

  /** The point of the drawing that a place is on, in words; not those of one line. @param {{ x: number, y: number }} at */
  function pointAt(at, but = 0) {
    const point = drawing.points(but).find((one) => apart(one, at) < ON);
    if (!point) return "";
    if (point.what === "mark") return said("point-mark", { number: point.item ? place(point.item) : "" });
    return said(`point-${point.what}`, { name: point.item ? called(point.item) : "" });
  }

  /** @param {{ x: number, y: number }} at */
  const where = (at, but = 0) => {
    const point = pointAt(at, but);
    return point ? said("on", { point }) : said("at", { x: size(at.x), y: size(at.y) });
  };

  /** How far compasses are open: as exactly as a ruler shows it. @param {number} value */
  const half = (value) => (Math.round(value * 2) / 2).toFixed(1);

  /** Where the instrument in hand lies. */
  function tool() {
    const { pose, kind, inHand, open } = tools;
    const values = { tool: said(`tool-${inHand}`), where: where(pose), angle: size(pose.deg), open: half(open) };
    const at = tools.kind === "compasses" ? pointAt(tools.tip("compasses", 0)) : "";
    return [said(kind, values), ...(at ? [said("opened-on", { point: at })] : []), ...(tools.rests() ? [said(`rests-${kind}`)] : [])].join(" ");
  }

  /** What to do with the instrument in hand. @param {string} verb */
  const prompt = (verb) => said(`prompt-${verb}-${tools.kind}`) || said(`prompt-${verb}`);

  /** Where the pencil is. @param {ToolName} edge */
  function pencil(edge) {
    const shape = tools.shapes[edge];
    const reading = tools.pencil[edge];
    const on = pointAt(tools.tip(edge));
    const other = shape.kind === "protractor" && shape.circle ? 360 - reading : 180 - reading;
    const along = shape.kind === "square" ? said(`edge-${shape.edge}`) : "";
    const values = { reading: size(reading), other: size(other), edge: along, angle: size(tools.poseOf(edge).deg), turned: size(tools.turned) };
    return said(`pencil-${shape.kind}`, { ...values, where: on ? `, ${said("on", { point: on })}` : "" });
  }

  /** What a line or mark became. @param {DrawItem} one */
  function became(one) {
    if (one.kind === "mark") return said("marked", { number: place(one), where: "" });
    if (isArc(one)) return said("drawn-arc", { centre: where({ x: one.x, y: one.y }), open: half(one.r) });
    const [start, end] = [{ x: one.x1, y: one.y1 }, { x: one.x2, y: one.y2 }];
    const others = { start: pointAt(start, one.id) || where(start, one.id), end: pointAt(end, one.id) || where(end, one.id) };
    return said("drawn", { kind: said(`kind-${one.kind}`), ...others, length: size(apart(start, end)) });
  }

  /** A line of the list. @param {DrawItem} one */
  function listed(one) {
    if (one.kind === "mark") return said("list-mark", { number: place(one) });
    const name = names[one.name] ? ` ${names[one.name].plain}` : "";
    return said("list-line", { number: place(one), kind: said(`kind-${one.kind}`), name });
  }

  /** An arrow that the sheet has drawn already. @param {DrawItem} one */
  const printed = (one) => said("list-printed", { kind: said(`kind-${one.kind}`), name: called(one) });

  /** What was done, for the eye. @param {DrawItem} one */
  const done = (one) => (one.kind === "mark" ? became(one) : said("done-line", { kind: said(`kind-${one.kind}`) }));

  return { said, prompt, tool, pencil, became, listed, printed, called, done };
}
