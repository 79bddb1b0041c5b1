// Drawings on this device: one for each problem, the latest first, kept at every stroke; and the file of one.

import { opsOf } from "./draw-strokes.js";

/** @import { DrawKept } from "../types/draw-page.js" */
/** @import { DrawOp, ToolName, ToolPoses } from "../types/draw.js" */
/** @import { Values } from "../types/shared.js" */

/** `reading`: what was read off it, by the fields of the answer.
 * @typedef {{ page: string, problem: string, ops: DrawOp[], at: number, tools: ToolPoses | null, reading: Values }} KeptDrawing */

const VERSION = 2; // with arcs, set squares and compasses
const READ = [1, VERSION];
/** @type {ToolName[]} */
const TOOLS = ["ruler", "protractor", "square-60", "square-45", "compasses"];
const MOST = 40; // drawings
const READ_OFF = ["answer", "answer-angle", "answer-side"];
const LONGEST = 40; // characters of a value
const FORMAT = "phasor-folio drawing";

/** @param {any} pose */
const isPose = (pose) => ["x", "y", "deg"].every((name) => Number.isFinite(pose?.[name]) && Math.abs(pose[name]) < 5000);

/** @param {any} pose */
const poseOf = ({ x, y, deg, open }) => ({ x, y, deg, ...(open > 0 && open < 5000 ? { open } : {}) });

/** @param {any} reading @returns {Values} */
const readingOf = (reading) =>
  Object.fromEntries(READ_OFF.map((name) => [name, reading?.[name]]).filter(([, value]) => typeof value === "string" && value.length <= LONGEST));

/** @param {any} one @returns {KeptDrawing | null} */
function drawingOf(one) {
  const ops = opsOf(one?.ops);
  if (!ops || typeof one.page !== "string" || typeof one.problem !== "string") return null;
  const at = Number.isInteger(one.at) && one.at >= 0 && one.at <= ops.length ? one.at : ops.length;
  const laid = TOOLS.filter((name) => isPose(one.tools?.[name])).map((name) => [name, poseOf(one.tools[name])]);
  const tools = isPose(one.tools?.ruler) ? Object.fromEntries(laid) : null;
  return { page: one.page, problem: one.problem, ops, at, tools, reading: readingOf(one.reading) };
}

/** @param {DrawKept} kept the page's own way to what is kept @returns {KeptDrawing[]} */
function all(kept) {
  try {
    const file = JSON.parse(kept.read("drawings") ?? "{}");
    return READ.includes(file.version) && Array.isArray(file.drawings) ? file.drawings.flatMap((/** @type {unknown} */ one) => drawingOf(one) ?? []) : [];
  } catch {
    return [];
  }
}

/** The drawing of a problem; null if there is none. @param {DrawKept} kept @param {string} page @param {string} problem */
export const read = (kept, page, problem) => all(kept).find((one) => one.page === page && one.problem === problem) ?? null;

/** Keep a drawing; one of which nothing was drawn is not kept. @param {DrawKept} kept @param {KeptDrawing} drawing */
export function write(kept, drawing) {
  const others = all(kept).filter((one) => one.page !== drawing.page || one.problem !== drawing.problem);
  const drawings = (drawing.ops.length ? [drawing, ...others] : others).slice(0, MOST);
  kept.write("drawings", drawings.length ? JSON.stringify({ version: VERSION, drawings }) : null);
}

/** @param {KeptDrawing} drawing */
export const fileOf = (drawing) => JSON.stringify({ format: FORMAT, version: VERSION, ...drawing }, null, 1);

/** The drawing that a file holds; null if it is none of ours. @param {string} text */
export function fromFile(text) {
  try {
    const file = JSON.parse(text.replace(/^\uFEFF/, ""));
    return file?.format === FORMAT && READ.includes(file.version) ? drawingOf(file) : null;
  } catch {
    return null;
  }
}
