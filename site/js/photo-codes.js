// The QR codes of a photograph, with a reader of codes that is handed in. Knows nothing of what they say.

const MOST = 4200; // pixels of the longer side, for a code is small: as a phone takes it
const QUARTER = 0.55; // of each side: four such parts cover a picture, and a code where two meet is whole in one
const CORNER = 0.45; // of each side: where a sheet has its code, whichever way it lies
const ENLARGED = 2;
const FINER = 1.25; // times as fine as it is measured: for less, nothing more is seen

/** @typedef {{ width: number, height: number }} Size */

/** The corners of a picture as [left, top, width, height], the lower ones first. @param {Size} size @param {number} share of each side */
function corners({ width, height }, share) {
  const [wide, high] = [Math.round(width * share), Math.round(height * share)];
  const [right, low] = [width - wide, height - high];
  return [[right, low], [0, low], [0, 0], [right, 0]].map(([left, top]) => [left, top, wide, high]);
}

/**
 * The texts of a picture's QR codes: in the whole of it as it is measured, and in its finer quarters one after another, which
 * take less memory than all of it; then in enlarged corners.
 * @template {Size} Part
 * @param {Size} size of the picture in its file
 * @param {Part} whole the picture as it is measured
 * @param {(picture: Part) => Promise<string[]>} codesIn
 * @param {(part: number[], times: number) => Part} partOf a part of the picture, so many times as large
 */
export async function codesOf(size, whole, codesIn, partOf) {
  const found = new Set(await codesIn(whole));
  /** @param {number[]} part @param {number} times */
  const look = async (part, times) => {
    for (const text of await codesIn(partOf(part, times))) found.add(text);
  };
  const fine = Math.min(1, MOST / Math.max(size.width, size.height));
  const isFiner = size.width * fine > FINER * whole.width;
  for (const part of isFiner ? corners(size, QUARTER) : []) await look(part, fine);
  for (const part of corners(size, CORNER)) if (!found.size) await look(part, ENLARGED);
  return [...found];
}
