// Reads straight strokes from a photograph of a sheet: pixels in, millimetres on the paper out. Plain code without a page:
// runs in a worker and in Node. It knows nothing of what the strokes mean.
//
// readStrokes({ pixels, width, height }, { projection, box, printed }) gives { strokes, noise, cover }.
//   pixels      RGBA, as a canvas gives them (Uint8ClampedArray); v counts downwards
//   projection  { numbers, middle: [u, v], reach }: pycore's Projection of the marks, the lens among its nine numbers
//   box         [left, bottom, right, top]: the part of the paper that is read, mm, y up
//   printed     { lines: [[x1, y1, x2, y2, width]], discs: [[x, y, radius]], areas: [[left, bottom, right, top]] }, mm:
//               what stands on the sheet before anybody draws; it and 0.5 mm about it are neither ink nor blank
// A stroke is { x1, y1, x2, y2, width, dark, dashed, sigma, cover, runs, blind, heads, beside }, in mm, y up:
//   dark    how much darker than the paper (logarithm), sigma: of one place across the stroke, mm
//   cover   share of its length that is drawn; dashed: whether it has gaps at even distances
//   runs    [from, to] along it from its first end: stretches that are drawn; blind: stretches that nobody can judge
//           both also beyond its ends (negative, or over its length)
//   heads   [place, way, votes]: where two short wings meet on it; way 1 points to its second end, -1 to its first; beside: those
//           that meet a little beside it, as of an arrow that lies on a longer line at a flat angle
// noise is the paper's own unevenness, cover the share of the box that the photograph shows.

import { findLines } from "./photo-lines.js";
import { darkness, printedMask, rectified } from "./photo-paper.js";
import { ridgePoints } from "./photo-ridges.js";
import { described } from "./photo-runs.js";

/** @import { Ground, Pixels, Strokes } from "../types/strokes.js" */

/** The sheet laid flat, how dark it is, and its mask; its colours are let go. @param {Pixels} picture @param {Ground} ground */
function inked(picture, ground) {
  const { flat, channels, inside } = rectified(picture, ground);
  return { flat, ink: darkness(flat, channels), mask: printedMask(flat, inside, ground) };
}

/**
 * The straight strokes on a sheet.
 * @param {Pixels} picture
 * @param {Ground} ground
 * @returns {Strokes}
 */
export function readStrokes(picture, ground) {
  const { flat, ink, mask } = inked(picture, ground);
  const { points, noise } = ridgePoints(ink, flat, mask);
  const lines = findLines(points);
  const strokes = described(lines, points, flat, mask);
  return { strokes, noise, cover: flat.shown };
}
