// Reads the photographs of a pile one after another: code, sheet, marks. What comes of each stands in its row.

import { Superseded } from "./bridge.js";
import { atOnce, Reader } from "./photo-readers.js";

/** @import { PileRow, PileAsk, Seen } from "../types/photos.js" */

const SURE = 1.2; // pixels: how well a point is set at best

/**
 * Find the sheet of a row by the text of its code, and say in the row what is wrong with it.
 * @param {PileRow} row @param {string} text @param {PileAsk} ask
 */
export async function findSheet(row, text, ask) {
  const reply = await ask({ move: "sheet", text });
  if (!reply.ok) {
    Object.assign(row, { state: "fault", said: reply.announce ?? "" });
    return null;
  }
  Object.assign(row, { page: reply.page, form: reply.form, code: reply.code, group: reply.group });
  return /** @type {import("../types/shared.js").Pair[][]} */ (reply.editions);
}

/**
 * What of a photograph pycore is told: its size, its marks, whether they are those of today's sheets.
 * @param {any} found
 * @returns {Seen}
 */
function seenOf(found) {
  return {
    photo: { width: found.width, height: found.height, tap: SURE },
    ground: "marks",
    byHand: false,
    printed: found.edition ? "older" : "marks",
    marks: found.marks.map((/** @type {any} */ mark) => mark && [mark.x, mark.y]),
    rings: found.marks.map((/** @type {any} */ mark) => mark && [mark.wide, mark.high]),
    untouched: [],
  };
}

/**
 * Read one photograph; what comes of it stands in its row.
 * @param {Reader} reader @param {PileRow} row @param {File} file @param {PileAsk} ask
 */
async function readOne(reader, row, file, ask) {
  row.state = "reading";
  const { fault, digest, texts } = await reader.open(file);
  row.digest = digest;
  if (fault) {
    Object.assign(row, { state: "fault", said: fault });
    return;
  }
  const text = row.typed || texts[0];
  if (!text || (!row.typed && texts.length > 1)) {
    Object.assign(row, { state: "fault", said: text ? "many-codes" : "no-code" });
    return;
  }
  const editions = await findSheet(row, text, ask);
  if (!editions) return;
  const found = await reader.marks(editions);
  if (!found.marks) {
    Object.assign(row, { state: "fault", said: found.seen < 4 ? "no-marks" : "misfit" });
    return;
  }
  row.seen = seenOf(found);
  row.turned = found.turned;
  const { ok, ground } = await ask({ move: "strokes", sheet: row.page, form: row.form, ...row.seen });
  if (!ok) {
    Object.assign(row, { state: "fault", said: "misfit" });
    return;
  }
  row.strokes = await reader.strokes(ground);
  await readAgain(row, ask);
}

/**
 * Read the drawing of a row from its strokes and from what a person has answered.
 * @param {PileRow} row @param {PileAsk} ask
 */
export async function readAgain(row, ask) {
  const { page: sheet, form, group, seen, strokes, answers: settled } = row;
  const reply = await ask({ move: "strokes", sheet, form, group, ...seen, strokes, settled });
  if (reply.drawing) Object.assign(row, { state: "judged", said: "", drawing: reply.drawing, points: reply.points });
  else Object.assign(row, { state: reply.ok && (reply.point || reply.readings.length) ? "asked" : "press", said: "" });
}

/** What pycore is told of a row's drawing, to show it. @param {PileRow} row */
export function whatIsKnown({ page: sheet, form, group, seen, strokes, answers, taps }) {
  return seen ? { sheet, form, group, ...seen, ...(taps ? { taps } : { strokes, settled: answers }) } : {};
}

/**
 * Judge the drawing of a row by the points that were pressed; what was accepted before is open again.
 * @param {PileRow} row @param {PileAsk} ask
 */
export async function judge(row, ask) {
  const { page: sheet, form, group, seen, taps } = row;
  const reply = await ask({ move: "judge", sheet, form, group, ...seen, taps });
  if (!reply.ok || !reply.drawing) return;
  Object.assign(row, { state: "judged", said: "", drawing: reply.drawing, points: reply.points, accepted: false });
  delete row.settled;
}

/**
 * Keep what a person answers to a question of pycore's, by its number from 0; -1: the point is not drawn.
 * @param {PileRow} row @param {import("../types/photos.js").PileReply} question @param {number} choice
 */
export function takeAnswer(row, { point, readings }, choice) {
  const chosen = point ? point.choices[choice] : readings[choice];
  row.answers = point
    ? { method: point.method, points: { ...row.answers?.points, [point.name]: chosen?.place ?? null } }
    : { method: chosen.method, points: chosen.settled };
}

/**
 * Read photographs, as many at once as this device can, until all are read or it is stopped.
 * @param {{ row: PileRow, file: File }[]} queue of which the first is taken
 * @param {PileAsk} ask
 * @param {(row: PileRow) => void} changed
 * @param {() => boolean} isStopped
 */
export async function readAll(queue, ask, changed, isStopped) {
  const one = async () => {
    const reader = new Reader();
    try {
      for (let next = queue.shift(); next; next = queue.shift()) {
        const { row, file } = next;
        try {
          const work = readOne(reader, row, file, ask);
          changed(row);
          await work;
        } catch (error) {
          Object.assign(row, { state: "fault", said: "failed" });
          if (!(error instanceof Superseded)) reportError(error);
        }
        changed(row);
        if (isStopped()) return;
      }
    } finally {
      reader.end();
    }
  };
  await Promise.all(Array.from({ length: Math.min(atOnce, queue.length) }, one));
}
