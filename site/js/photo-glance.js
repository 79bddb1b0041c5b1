// One glance at the live picture of a camera: which QR codes are in it, and whether all marks of a sheet are.

import { findMarks, ringedDiscs } from "./photo-marks.js";

/** @import { Pair } from "../types/shared.js" */
/** @import { Glance } from "../types/photos.js" */

export const LOOKED_AT = 1200; // pixels of the longer side: enough to see a mark, not to measure by it

/**
 * What is seen. `places` are those of the marks if all of them are seen, in longer sides of the picture.
 * @param {string[]} texts of the QR codes in it
 * @param {ImageData} picture
 * @param {{ text: string, editions: Pair[][] } | null} sheet that is probably in view, with the places of its marks
 * @returns {Glance}
 */
export function glanceAt(texts, picture, sheet) {
  if (texts.length !== 1 || texts[0] !== sheet?.text) return { texts, seen: ringedDiscs(picture).length, places: null };
  const { marks, seen } = findMarks(picture, sheet.editions);
  const longer = Math.max(picture.width, picture.height);
  /** @type {Pair[] | undefined} */
  const places = marks?.flatMap((mark) => (mark ? [[mark.x / longer, mark.y / longer]] : []));
  return { texts, seen, places: places && places.length === marks?.length ? places : null };
}
