// Ridges of a picture: the middle of every dark stroke to a fraction of a pixel, with its direction. After Steger, An
// unbiased detector of curvilinear structures (1998), from memory: where the first derivative across vanishes.

import { drawnOut } from "./photo-paper.js";

/** @import { Flat, RidgePoints } from "../types/strokes.js" */

const WIDE = 2; // standard deviation of the smoothing, pixels
const REACH = 7; // pixels on each side that it takes in
const OVER = 2.1; // times the unevenness about, from which a ridge is a stroke
const LEAST = 0.0025; // strength of the weakest stroke
const SQUARE = 64; // pixels of a square whose unevenness is one
const SHARE = 0.75; // of the ridges of a square that are weaker than its unevenness
const MOST_OFF = 0.6; // pixels from a pixel's middle to its ridge
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
 * @param {Float32Array} picture
 * @param {number} width
 * @param {number} height
 * @param {Float32Array} kernel
 */
function alongRows(picture, width, height, kernel) {
  const out = new Float32Array(picture.length);
  for (let row = 0; row < height; row += 1) {
    const from = row * width;
    for (let column = REACH; column < width - REACH; column += 1) {
      let sum = 0;
      for (let place = 0, at = from + column - REACH; place < kernel.length; place += 1, at += 1) sum += kernel[place] * picture[at];
      out[from + column] = sum;
    }
  }
  return out;
}

/**
 * @param {Float32Array} picture
 * @param {number} width
 * @param {number} height
 * @param {Float32Array} kernel
 */
function alongColumns(picture, width, height, kernel) {
  const out = new Float32Array(picture.length);
  for (let row = REACH; row < height - REACH; row += 1) {
    const to = row * width;
    for (let place = 0; place < kernel.length; place += 1) {
      const share = kernel[place];
      const from = (row - REACH + place) * width;
      for (let column = 0; column < width; column += 1) out[to + column] += share * picture[from + column];
    }
  }
  return out;
}

/**
 * Strength of the ridge at each pixel, where it lies (offsets in pixels, to the right and down), its direction across.
 * @param {Float32Array} ink
 * @param {number} width
 * @param {number} height
 */
function ridges(ink, width, height) {
  const [smooth, slope, curve] = kernels();
  const [flat, sloped, curved] = [smooth, slope, curve].map((kernel) => alongRows(ink, width, height, kernel));
  // A kernel laid over a picture is not turned round: the slope is that of the picture as it stands.
  const [gx, gy] = [alongColumns(sloped, width, height, smooth), alongColumns(flat, width, height, slope)];
  const [xx, yy] = [alongColumns(curved, width, height, smooth), alongColumns(flat, width, height, curve)];
  const xy = alongColumns(sloped, width, height, slope);
  const strength = new Float32Array(ink.length);
  for (let at = 0; at < ink.length; at += 1) {
    const half = (xx[at] + yy[at]) / 2;
    const uneven = Math.sqrt(((xx[at] - yy[at]) / 2) ** 2 + xy[at] ** 2);
    strength[at] = uneven - half - BLOB * Math.abs(half + uneven);
  }
  return { strength, gx, gy, xx, yy, xy };
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
export function ridgePoints(ink, { width, height, left, top, fine }, mask) {
  const { strength, gx, gy, xx, yy, xy } = ridges(ink, width, height);
  const { noise, across, down } = unevenness(strength, width, height);
  /** @type {number[][]} */
  const [xs, ys, ways, strengths] = [[], [], [], []];
  const least = new Float32Array(width);
  for (let row = REACH; row < height - REACH; row += 1) {
    drawnOut(noise, across, down, SQUARE, row, least);
    for (let column = REACH, at = row * width + REACH; column < width - REACH; column += 1, at += 1) {
      if (strength[at] <= LEAST || strength[at] <= OVER * least[column] || mask[at]) continue;
      const angle = 0.5 * Math.atan2(2 * xy[at], xx[at] - yy[at]) + Math.PI / 2; // across the stroke
      const [acrossX, acrossY] = [Math.cos(angle), Math.sin(angle)];
      const bent = (xx[at] + yy[at]) / 2 - Math.sqrt(((xx[at] - yy[at]) / 2) ** 2 + xy[at] ** 2);
      const off = -(gx[at] * acrossX + gy[at] * acrossY) / bent;
      const [offX, offY] = [off * acrossX, off * acrossY];
      if (Math.abs(offX) > MOST_OFF || Math.abs(offY) > MOST_OFF) continue;
      xs.push(left + (column + 0.5 + offX) / fine);
      ys.push(top - (row + 0.5 + offY) / fine);
      const way = -(angle + Math.PI / 2) % Math.PI; // along the stroke, y up
      ways.push(way < 0 ? way + Math.PI : way);
      strengths.push(strength[at]);
    }
  }
  const sorted = Float32Array.from(strengths).sort();
  const cap = sorted[Math.floor(0.7 * sorted.length)] || 1;
  const points = {
    count: xs.length, x: Float32Array.from(xs), y: Float32Array.from(ys), way: Float32Array.from(ways),
    strength: Float32Array.from(strengths), weight: Float32Array.from(strengths, (one) => Math.min(1, Math.max(0.5, one / cap))),
  };
  return { points, noise: noise.slice().sort()[noise.length >> 1] };
}
