// The learners' sheets of feedback as one PDF: their photographs made small here, the pages made by pycore.

import { download } from "./download.js";
import { carryOut } from "./long-work.js";
import { opened } from "./photo-file.js";
import { drawTurned, partOf } from "./pile-picture.js";

/** @import { Bridge } from "./bridge.js" */
/** @import { Request } from "../types/shared.js" */
/** @import { PileAsk, PileRow } from "../types/photos.js" */

const WIDTH = 1300; // pixels of a photograph on its sheet: 180 dots to the inch
const BYTES = 130_000; // of a photograph, so that a sheet stays small
const QUALITIES = [0.75, 0.6, 0.45, 0.3];

/** A canvas as a JPEG file, as good as it fits. @param {HTMLCanvasElement} canvas @returns {Promise<Blob | null>} */
async function jpegOf(canvas) {
  /** @type {Blob | null} */
  let made = null;
  for (const quality of QUALITIES) {
    made = await new Promise((kept) => canvas.toBlob(kept, "image/jpeg", quality));
    if (made && made.size <= BYTES) break;
  }
  return made?.type === "image/jpeg" ? made : null;
}

/**
 * A row's photograph for its sheet: the part that the paper fills.
 * @param {PileRow} row @param {File} file @param {PileAsk} ask
 */
async function pictureOf(row, file, ask) {
  const { page: sheet, form, seen } = row;
  const { frame = [] } = await ask({ move: "frame", sheet, form, ...seen });
  const bitmap = await opened(file);
  if (!bitmap) return null;
  const [whole, small] = [document.createElement("canvas"), document.createElement("canvas")];
  drawTurned(whole, bitmap, row.turned ?? 0);
  bitmap.close();
  const { left, top, width, height } = partOf(whole, frame);
  const share = Math.min(1, WIDTH / Math.max(width, height));
  [small.width, small.height] = [Math.round(width * share), Math.round(height * share)];
  const pen = small.getContext("2d");
  if (!pen) return null;
  pen.imageSmoothingQuality = "high";
  pen.drawImage(whole, left, top, width, height, 0, 0, small.width, small.height);
  const jpeg = await jpegOf(small);
  return jpeg && { row: row.id, part: [left, top, width, height], data: new Uint8Array(await jpeg.arrayBuffer()) };
}

/** Several pieces of bytes as one. @param {Uint8Array[]} pieces */
function joined(pieces) {
  const whole = new Uint8Array(pieces.reduce((count, { length }) => count + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/**
 * Make the sheets of all accepted rows and save them; gives what is told of it.
 * @param {Bridge} bridge
 * @param {PileAsk} ask
 * @param {Request<"begin"> & { rows: PileRow[] }} begin
 * @param {Map<string, File>} files by row
 * @param {(name: string, values?: Record<string, string | number>) => void} say
 */
export async function save(bridge, ask, begin, files, say) {
  const accepted = begin.rows.filter((row) => row.accepted);
  const made = [];
  for (const [at, row] of accepted.entries()) {
    say("preparing", { number: at + 1, count: accepted.length });
    const file = files.get(row.id);
    const picture = file && (await pictureOf(row, file, ask));
    if (picture) made.push(picture);
  }
  const pictures = made.map(({ row, part, data }) => ({ row, part, size: data.length }));
  say("");
  const reply = await carryOut(bridge, { ...begin, pictures }, () => {}, () => false, joined(made.map(({ data }) => data)));
  if (!reply.ok) return reply.announce;
  download(reply);
  return reply.told;
}
