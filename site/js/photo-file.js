// A photograph from its file, and how it must be turned for the sheet to stand upright in it.

/** @import { Pair, Point } from "../types/shared.js" */

export const MEASURED = 2000; // pixels of the longer side for measuring: finer pictures take time and make nothing surer

/** Whether a file is a PDF. @param {File} file */
export const isPDF = ({ name, type }) => type === "application/pdf" || /\.pdf$/i.test(name);

/** What tells a file from others. @param {File} file */
export async function digestOf(file) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", await file.arrayBuffer()));
  return [...digest.slice(0, 12)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * The picture in a file, turned as its camera says, smaller if it is too large to be held whole; null if it cannot be read.
 * @param {File} file
 */
export async function opened(file) {
  try {
    return await createImageBitmap(file, { imageOrientation: "from-image" });
  } catch {
    try {
      return await createImageBitmap(file, { imageOrientation: "from-image", resizeWidth: MEASURED });
    } catch {
      return null;
    }
  }
}

/**
 * How many quarter turns clockwise bring the sheet's upper edge to the top.
 * @param {Pair[]} places of marks on the sheet, y up
 * @param {(Point | null)[]} points where they are seen, y down
 */
export function turnsToUpright(places, points) {
  const seen = points.flatMap((point, index) => (point ? [{ point, height: places[index][1] }] : []));
  const middle = seen.reduce((sum, { height }) => sum + height, 0) / seen.length;
  const across = seen.reduce((sum, { point, height }) => sum + (height - middle) * point.x, 0);
  const down = seen.reduce((sum, { point, height }) => sum + (height - middle) * point.y, 0);
  if (Math.abs(down) >= Math.abs(across)) return down < 0 ? 0 : 2;
  return across < 0 ? 1 : 3;
}

/**
 * Where a point of a picture is after quarter turns clockwise.
 * @param {Point} point
 * @param {number} quarters
 * @param {number} width of the picture before
 * @param {number} height
 * @returns {Point}
 */
export function turned({ x, y }, quarters, width, height) {
  return [{ x, y }, { x: height - y, y: x }, { x: width - x, y: height - y }, { x: y, y: width - x }][quarters % 4];
}
