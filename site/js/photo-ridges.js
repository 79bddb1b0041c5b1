// Ridges of a picture: the middle of every dark stroke to a fraction of a pixel, with its direction. After Steger, An
// unbiased detector of curvilinear structures (1998), from memory: where the first derivative across vanishes.

import { drawnOut } from "./photo-paper.js";

/** @import { Flat, RidgePoints } from "../types/strokes.js" */
/** @typedef {{ pixels: number[], xs: number[], ys: number[], ways: number[] }} Possible */

const WIDE = 2; // standard deviation of the smoothing, pixels
const REACH = 7; // pixels on each side that it takes in
const OVER = 2.1; // times the unevenness about, from which a ridge is a stroke
const LEAST = 0.0025; // strength of the weakest stroke
const SQUARE = 64; // pixels of a square whose unevenness is one
const SHARE = 0.75; // of the ridges of a square that are weaker than its unevenness
const MOST_OFF = 0.6; // pixels from a pixel's middle to its ridge
const BAND = 64; // rows that are looked at together
const BLOB = 0.8; // how much of the curvature along a ridge counts against it

/** The smoothing kernel and its first two derivatives. */
function kernels() {
  const places = Array.from({ length: 2 * REACH + 1 }, (_, index) => index - REACH);
  const bell = places.map((place) => Math.exp((-place * place) / (2 * WIDE * WIDE)));
  const whole = bell.reduce((sum, value) => sum + value, 0);
  const smooth = bell.map((value) => value / whole);
  const slope = smooth.map((value, index) => (value * places[index]) / WIDE ** 2);
  const curve = smooth.map((value, index) => value * (places[index] ** 2 / WIDE ** 4 - 1 / WIDE ** 2));
  const rest = curve.reduce((sum, value) => sum + value, 0) / curve.length;
  return [smooth, slope, curve.map((value) => value - rest)].map((kernel) => Float32Array.from(kernel));
}

/**
 * Rows of a picture from a first one to before a last one, smoothed along themselves.
 * @param {Float32Array} picture
 * @param {number} width
 * @param {number} first
 * @param {number} last
 * @param {Float32Array} kernel
 * @param {Float32Array} out its first and last columns are left as they are
 */
function alongRows(picture, width, first, last, kernel, out) {
  for (let row = first; row < last; row += 1) {
    const from = row * width - REACH;
    const to = (row - first) * width;
    for (let column = REACH; column < width - REACH; column += 1) {
      let sum = 0;
      for (let place = 0, at = from + column; place < kernel.length; place += 1, at += 1) sum += kernel[place] * picture[at];
      out[to + column] = sum;
    }
  }
}

/**
 * So many rows smoothed along their columns; the band that they are taken from has more rows about them.
 * @param {Float32Array} band
 * @param {number} width
 * @param {number} rows
 * @param {Float32Array} kernel
 * @param {Float32Array} out
 */
function alongColumns(band, width, rows, kernel, out) {
  out.fill(0);
  for (let to = 0; to < rows * width; to += width) {
    for (let place = 0; place < kernel.length; place += 1) {
      const share = kernel[place];
      const from = to + place * width;
      for (let column = 0; column < width; column += 1) out[to + column] += share * band[from + column];
    }
  }
}

/**
 * Finds the ridges in a picture band by band: in rows from a first one to before a last one, the strength at each pixel and
 * the derivatives, in the same arrays for every band. Of a whole picture they would be seven times as large as its ink.
 * @param {Float32Array} ink
 * @param {number} width
 */
function ridgeFinder(ink, width) {
  const [smooth, slope, curve] = kernels();
  const [flat, sloped, curved] = Array.from({ length: 3 }, () => new Float32Array((BAND + 2 * REACH) * width));
  const [strength, gx, gy, xx, yy, xy] = Array.from({ length: 6 }, () => new Float32Array(BAND * width));
  return (/** @type {number} */ first, /** @type {number} */ last) => {
    alongRows(ink, width, first - REACH, last + REACH, smooth, flat);
    alongRows(ink, width, first - REACH, last + REACH, slope, sloped);
    alongRows(ink, width, first - REACH, last + REACH, curve, curved);
    // A kernel laid over a picture is not turned round: the slope is that of the picture as it stands.
    alongColumns(sloped, width, last - first, smooth, gx);
    alongColumns(flat, width, last - first, slope, gy);
    alongColumns(curved, width, last - first, smooth, xx);
    alongColumns(flat, width, last - first, curve, yy);
    alongColumns(sloped, width, last - first, slope, xy);
    for (let at = 0; at < (last - first) * width; at += 1) {
      const half = (xx[at] + yy[at]) / 2;
      const uneven = Math.sqrt(((xx[at] - yy[at]) / 2) ** 2 + xy[at] ** 2);
      strength[at] = uneven - half - BLOB * Math.abs(half + uneven);
    }
    return { strength: strength.subarray(0, (last - first) * width), gx, gy, xx, yy, xy };
  };
}

/**
 * The strength of the ridge at every pixel, and the points that may be the middle of a stroke.
 * @param {Float32Array} ink
 * @param {Flat} flat
 * @param {Uint8Array} mask
 */
function possible(ink, { width, height, left, top, fine }, mask) {
  const strength = new Float32Array(ink.length);
  /** @type {Possible} */
  const points = { pixels: [], xs: [], ys: [], ways: [] };
  const ridges = ridgeFinder(ink, width);
  for (let first = REACH; first < height - REACH; first += BAND) {
    const last = Math.min(height - REACH, first + BAND);
    const band = ridges(first, last);
    strength.set(band.strength, first * width);
    for (let row = first; row < last; row += 1) {
      for (let column = REACH, at = (row - first) * width + REACH; column < width - REACH; column += 1, at += 1) {
        if (band.strength[at] <= LEAST || mask[row * width + column]) continue;
        const xx = band.xx[at];
        const yy = band.yy[at];
        const xy = band.xy[at];
        const angle = 0.5 * Math.atan2(2 * xy, xx - yy) + Math.PI / 2; // across the stroke
        const acrossX = Math.cos(angle);
        const acrossY = Math.sin(angle);
        const bent = (xx + yy) / 2 - Math.sqrt(((xx - yy) / 2) ** 2 + xy ** 2);
        const off = -(band.gx[at] * acrossX + band.gy[at] * acrossY) / bent;
        const offX = off * acrossX;
        const offY = off * acrossY;
        if (Math.abs(offX) > MOST_OFF || Math.abs(offY) > MOST_OFF) continue;
        points.pixels.push(row * width + column);
        points.xs.push(left + (column + 0.5 + offX) / fine);
        points.ys.push(top - (row + 0.5 + offY) / fine);
        const way = -(angle + Math.PI / 2) % Math.PI; // along the stroke, y up
        points.ways.push(way < 0 ? way + Math.PI : way);
      }
    }
  }
  return { strength, points };
}

/**
 * The unevenness of the paper in each square.
 * @param {Float32Array} strength
 * @param {number} width
 * @param {number} height
 */
function unevenness(strength, width, height) {
  const [across, down] = [Math.max(1, Math.floor(width / SQUARE)), Math.max(1, Math.floor(height / SQUARE))];
  const each = new Float32Array(across * down);
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      const values = new Float32Array((SQUARE / 2) ** 2);
      let count = 0;
      for (let y = 0; y < SQUARE; y += 2) {
        const from = Math.min(height - 1, row * SQUARE + y) * width + column * SQUARE;
        for (let x = 0; x < SQUARE; x += 2) {
          values[count] = Math.max(0, strength[from + x]);
          count += 1;
        }
      }
      each[row * across + column] = values.sort()[Math.floor(SHARE * count)];
    }
  }
  const noise = new Float32Array(each.length);
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      const about = [];
      for (let y = Math.max(0, row - 2); y <= Math.min(down - 1, row + 2); y += 1) {
        for (let x = Math.max(0, column - 2); x <= Math.min(across - 1, column + 2); x += 1) about.push(each[y * across + x]);
      }
      about.sort((one, other) => one - other);
      noise[row * across + column] = about[about.length >> 1];
    }
  }
  return { noise, across, down };
}

/**
 * Points on the middle of dark strokes.
 * @param {Float32Array} ink
 * @param {Flat} flat
 * @param {Uint8Array} mask
 * @returns {{ points: RidgePoints, noise: number }}
 */
export function ridgePoints(ink, flat, mask) {
  const { width, height } = flat;
  const { strength, points } = possible(ink, flat, mask);
  const { noise, across, down } = unevenness(strength, width, height);
  const least = new Float32Array(width);
  let drawn = -1; // the row that `least` is of
  const kept = [...points.pixels.keys()].filter((index) => {
    const pixel = points.pixels[index];
    const row = Math.floor(pixel / width);
    if (row !== drawn) drawnOut(noise, across, down, SQUARE, row, least);
    drawn = row;
    return strength[pixel] > OVER * least[pixel % width];
  });
  const strengths = kept.map((index) => strength[points.pixels[index]]);
  const sorted = Float32Array.from(strengths).sort();
  const cap = sorted[Math.floor(0.7 * sorted.length)] || 1;
  const [x, y, way] = [points.xs, points.ys, points.ways].map((all) => Float32Array.from(kept, (index) => all[index]));
  const weight = Float32Array.from(strengths, (one) => Math.min(1, Math.max(0.5, one / cap)));
  const found = { count: kept.length, x, y, way, strength: Float32Array.from(strengths), weight };
  return { points: found, noise: noise.slice().sort()[noise.length >> 1] };
}
