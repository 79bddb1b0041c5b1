// Reads photographs beside the page, one at a time: opens a file, finds its QR code, its marks and its strokes. Nothing of a photograph
// leaves the device, and nothing of it is kept once the next is opened.

import { codesOf } from "./photo-codes.js";
import { digestOf, isPDF, MEASURED, opened, turned, turnsToUpright } from "./photo-file.js";
import { glanceAt, LOOKED_AT } from "./photo-glance.js";
import { findMarks } from "./photo-marks.js";
import { readStrokes } from "./photo-strokes.js";

/** @import { FromReader, ToReader } from "../types/photos.js" */

const LEAST = 500;

/** @type {Map<string, Promise<{ codesIn: (picture: ImageData) => Promise<string[]> }>>} */
const readers = new Map();
/** @type {ImageData | null} */
let shown = null; // the picture in hand, as it is measured

/** @param {string} address */
async function reader(address) {
  const found = readers.get(address) ?? import(address);
  readers.set(address, found);
  try {
    return await found;
  } catch (error) {
    readers.delete(address);
    throw error;
  }
}

/**
 * Pixels drawn on a surface, which is given up at once: it is as large as they are.
 * @param {number} width
 * @param {number} height
 * @param {(pen: OffscreenCanvasRenderingContext2D) => void} draw
 */
function drawn(width, height, draw) {
  const surface = new OffscreenCanvas(width, height);
  const pen = surface.getContext("2d", { willReadFrequently: true });
  if (!pen) throw new Error("this browser gives no drawing surface");
  draw(pen);
  const pixels = pen.getImageData(0, 0, width, height);
  surface.width = surface.height = 0;
  return pixels;
}

/**
 * A part of a picture as pixels.
 * @param {ImageBitmap} bitmap
 * @param {number[]} part left, top, width, height
 * @param {number} share how many pixels for each of the picture's
 */
function pixelsOf(bitmap, [left, top, width, height], share) {
  const [wide, high] = [Math.round(width * share), Math.round(height * share)];
  return drawn(wide, high, (pen) => {
    pen.imageSmoothingQuality = "high";
    pen.drawImage(bitmap, left, top, width, height, 0, 0, wide, high);
  });
}

/**
 * A picture turned clockwise by quarters.
 * @param {ImageData} picture
 * @param {number} quarters
 */
function upright(picture, quarters) {
  const flat = new OffscreenCanvas(picture.width, picture.height);
  flat.getContext("2d")?.putImageData(picture, 0, 0);
  const [width, height] = quarters % 2 ? [picture.height, picture.width] : [picture.width, picture.height];
  const pixels = drawn(width, height, (pen) => {
    pen.translate(width / 2, height / 2);
    pen.rotate((quarters * Math.PI) / 2);
    pen.drawImage(flat, -picture.width / 2, -picture.height / 2);
  });
  flat.width = flat.height = 0;
  return pixels;
}

/** @type {Record<string, (asked: any) => Promise<object>>} */
const doings = {
  /** @param {{ bitmap: ImageBitmap, codes: string, sheet: any }} asked */
  async glance({ bitmap, codes, sheet }) {
    try {
      const [{ codesIn }, { width, height }] = [await reader(codes), bitmap];
      const texts = await codesIn(pixelsOf(bitmap, [0, 0, width, height], 1));
      const share = Math.min(1, LOOKED_AT / Math.max(width, height));
      return glanceAt(texts, pixelsOf(bitmap, [0, 0, width, height], share), sheet);
    } finally {
      bitmap.close();
    }
  },
  /** @param {{ file: File, codes: string }} asked */
  async open({ file, codes }) {
    shown = null;
    const digest = await digestOf(file);
    const bitmap = await opened(file);
    if (!bitmap || Math.max(bitmap.width, bitmap.height) < LEAST) {
      const fault = bitmap ? "small" : isPDF(file) ? "pdf" : "unreadable";
      bitmap?.close();
      return { fault, digest };
    }
    try {
      const share = Math.min(1, MEASURED / Math.max(bitmap.width, bitmap.height));
      shown = pixelsOf(bitmap, [0, 0, bitmap.width, bitmap.height], share);
      const { codesIn } = await reader(codes);
      const texts = await codesOf(bitmap, shown, codesIn, (part, times) => pixelsOf(bitmap, part, times));
      return { digest, texts, width: shown.width, height: shown.height };
    } finally {
      bitmap.close();
    }
  },
  /** @param {{ editions: import("../types/shared.js").Pair[][] }} asked */
  async marks({ editions }) {
    if (!shown) throw new Error("no photograph is open");
    const found = findMarks(shown, editions);
    if (!found.marks) return { seen: found.seen };
    const { width, height } = shown;
    const quarters = turnsToUpright(editions[found.edition], found.marks);
    const marks = found.marks.map((mark) => {
      if (!mark) return null;
      const { x, y } = turned(mark, quarters, width, height);
      return quarters % 2 ? { x, y, wide: mark.high, high: mark.wide } : { x, y, wide: mark.wide, high: mark.high };
    });
    if (quarters) shown = upright(shown, quarters);
    return { marks, edition: found.edition, turned: quarters, width: shown.width, height: shown.height };
  },
  /** @param {{ ground: import("../types/strokes.js").Ground }} asked */
  async strokes({ ground }) {
    if (!shown) throw new Error("no photograph is open");
    const { width, height, data } = shown;
    const { strokes } = readStrokes({ pixels: data, width, height }, ground);
    return strokes.map(({ x1, y1, x2, y2, dark, runs, blind, heads, beside }) => brief({ x1, y1, x2, y2, dark, runs, blind, heads, beside }));
  },
};

/** Figures as fine as anybody needs them. @param {any} value @returns {any} */
function brief(value) {
  if (typeof value === "number") return Math.round(value * 1000) / 1000;
  if (Array.isArray(value)) return value.map(brief);
  return value && typeof value === "object" ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, brief(one)])) : value;
}

addEventListener("message", async (/** @type {MessageEvent<ToReader>} */ { data: { id, ...asked } }) => {
  try {
    const reply = await doings[asked.do](asked);
    postMessage(/** @type {FromReader} */ ({ id, reply }));
  } catch (error) {
    postMessage(/** @type {FromReader} */ ({ id, failed: String(error) }));
  }
});
