// A sheet in a photograph laid flat, its light levelled, and what is printed on it left out. Pixels and mm alone.

/** @import { Flat, Ground, Pixels } from "../types/strokes.js" */

const LEVELS = 4; // for each step of a photograph's own brightness
const FINE = 8; // pixels for each mm of the paper laid flat
const GROWN = 0.5; // mm about what is printed that nobody can judge
const BLOCK = 8; // pixels of a square whose paper has one brightness
const PAPER_SHARE = 0.7; // of a square's pixels that are darker than its paper
const AROUND = 3; // squares on each side that a square's paper is compared with

/**
 * The part of the paper in the box as it lies flat, its three channels, and which of its pixels the photograph shows. The
 * loops over all pixels here and in what reads them make no arrays: each would be thrown away.
 * @param {Pixels} picture
 * @param {Ground} ground
 * @returns {{ flat: Flat, channels: Uint16Array[], inside: Uint8Array }}
 */
export function rectified({ pixels, width: wide, height: high }, { projection, box }) {
  const [left, bottom, right, top] = box;
  const [width, height] = [Math.floor((right - left) * FINE), Math.floor((top - bottom) * FINE)];
  const channels = [0, 1, 2].map(() => new Uint16Array(width * height));
  const inside = new Uint8Array(width * height);
  const [a, b, c, d, e, f, g, h, bend] = projection.numbers;
  const [middleU, middleV] = projection.middle;
  const share = bend / (projection.reach * projection.reach);
  let shown = 0;
  for (let row = 0, at = 0; row < height; row += 1) {
    const y = top - (row + 0.5) / FINE;
    for (let column = 0; column < width; column += 1, at += 1) {
      const x = left + (column + 0.5) / FINE;
      const depth = g * x + h * y + 1;
      let u = (a * x + b * y + c) / depth - middleU;
      let v = (d * x + e * y + f) / depth - middleV;
      const grown = 1 + share * (u * u + v * v);
      u = u * grown + middleU - 0.5;
      v = v * grown + middleV - 0.5;
      if (!(u >= 0 && v >= 0 && u < wide - 1 && v < high - 1)) continue;
      inside[at] = 1;
      shown += 1;
      const over = u - (u | 0);
      const down = v - (v | 0);
      const upper = (1 - over) * (1 - down);
      const upperNext = over * (1 - down);
      const lower = (1 - over) * down;
      const lowerNext = over * down;
      const p = ((v | 0) * wide + (u | 0)) * 4;
      const q = p + wide * 4;
      for (let index = 0; index < 3; index += 1) {
        const value = pixels[p + index] * upper + pixels[p + 4 + index] * upperNext + pixels[q + index] * lower + pixels[q + 4 + index] * lowerNext;
        channels[index][at] = Math.fround(value) * LEVELS;
      }
    }
  }
  return { flat: { width, height, left, top, fine: FINE, shown: shown / (width * height) }, channels, inside };
}

/**
 * Which pixels nobody can judge: what is printed, a little about it, and what the photograph does not show.
 * @param {Flat} flat
 * @param {Uint8Array} inside
 * @param {Ground} ground
 */
export function printedMask({ width, height, left, top }, inside, { printed }) {
  const mask = inside.map((is) => (is ? 0 : 1));
  /**
   * @param {number[]} sides left, bottom, right, top in mm
   * @param {(x: number, y: number) => boolean} covers
   */
  const cover = ([from, low, to, up], covers) => {
    const first = Math.max(0, Math.floor((from - left) * FINE));
    const last = Math.min(width - 1, Math.ceil((to - left) * FINE));
    for (let row = Math.max(0, Math.floor((top - up) * FINE)); row <= Math.min(height - 1, (top - low) * FINE); row += 1) {
      const y = top - (row + 0.5) / FINE;
      for (let column = first; column <= last; column += 1) {
        if (covers(left + (column + 0.5) / FINE, y)) mask[row * width + column] = 1;
      }
    }
  };
  for (const [from, low, to, up] of printed.areas) cover([from - GROWN, low - GROWN, to + GROWN, up + GROWN], () => true);
  for (const [x, y, radius] of printed.discs) {
    const reach = radius + GROWN;
    cover([x - reach, y - reach, x + reach, y + reach], (u, v) => Math.hypot(u - x, v - y) <= reach);
  }
  for (const [x1, y1, x2, y2, thick] of printed.lines) {
    const reach = thick / 2 + GROWN;
    const [alongX, alongY] = [x2 - x1, y2 - y1];
    const square = alongX * alongX + alongY * alongY || 1;
    const sides = [Math.min(x1, x2) - reach, Math.min(y1, y2) - reach, Math.max(x1, x2) + reach, Math.max(y1, y2) + reach];
    cover(sides, (u, v) => {
      const t = Math.min(1, Math.max(0, ((u - x1) * alongX + (v - y1) * alongY) / square));
      return Math.hypot(u - x1 - t * alongX, v - y1 - t * alongY) <= reach;
    });
  }
  return mask;
}

/**
 * The paper's brightness in each square, from that of the squares about it.
 * @param {Uint16Array} channel
 * @param {number} width
 * @param {number} across
 * @param {number} down
 */
function paperLevels(channel, width, across, down) {
  const levels = new Uint8Array(across * down);
  const counts = new Uint16Array(256);
  const needed = Math.round((1 - PAPER_SHARE) * BLOCK * BLOCK);
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      counts.fill(0);
      for (let y = 0; y < BLOCK; y += 1) {
        const from = (row * BLOCK + y) * width + column * BLOCK;
        for (let x = 0; x < BLOCK; x += 1) counts[(channel[from + x] / LEVELS) | 0] += 1;
      }
      let [level, passed] = [256, 0];
      while (passed < needed && level > 0) passed += counts[(level -= 1)];
      levels[row * across + column] = level;
    }
  }
  return levels;
}

/**
 * The median of the squares about each square.
 * @param {Uint8Array} levels
 * @param {number} across
 * @param {number} down
 */
function medians(levels, across, down) {
  const found = new Float32Array(across * down);
  const about = new Uint8Array((2 * AROUND + 1) ** 2);
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      let count = 0;
      for (let y = Math.max(0, row - AROUND); y <= Math.min(down - 1, row + AROUND); y += 1) {
        for (let x = Math.max(0, column - AROUND); x <= Math.min(across - 1, column + AROUND); x += 1) {
          about[count] = levels[y * across + x];
          count += 1;
        }
      }
      const sorted = about.subarray(0, count).sort();
      found[row * across + column] = sorted[count >> 1];
    }
  }
  return found;
}

/**
 * A coarse picture drawn out smoothly: the value at each pixel of one row.
 * @param {Float32Array} coarse
 * @param {number} across
 * @param {number} down
 * @param {number} block
 * @param {number} row
 * @param {Float32Array} into
 */
export function drawnOut(coarse, across, down, block, row, into) {
  const place = Math.min(down - 1, Math.max(0, (row + 0.5) / block - 0.5));
  const upper = Math.min(Math.max(0, down - 2), place | 0);
  const lower = Math.min(down - 1, upper + 1);
  const share = place - upper;
  for (let column = 0; column < into.length; column += 1) {
    const at = Math.min(across - 1, Math.max(0, (column + 0.5) / block - 0.5));
    const i = Math.min(Math.max(0, across - 2), at | 0);
    const j = Math.min(across - 1, i + 1);
    const over = at - i;
    const first = coarse[upper * across + i] * (1 - over) + coarse[upper * across + j] * over;
    const second = coarse[lower * across + i] * (1 - over) + coarse[lower * across + j] * over;
    into[column] = first * (1 - share) + second * share;
  }
}

/**
 * How much darker than the paper about it each pixel is: the mean of its channels and the darkest of them, so that a
 * coloured pencil counts too. -ln(brightness / paper).
 * @param {Flat} flat
 * @param {Uint16Array[]} channels
 */
export function darkness({ width, height }, channels) {
  const [across, down] = [Math.floor(width / BLOCK), Math.floor(height / BLOCK)];
  const ink = new Float32Array(width * height);
  const logarithms = Float32Array.from({ length: 256 * LEVELS }, (_, level) => Math.log(Math.max(4, level / LEVELS)));
  const papers = channels.map((channel) => medians(paperLevels(channel, width, across, down), across, down));
  const rows = channels.map(() => new Float32Array(width));
  for (let row = 0; row < height; row += 1) {
    papers.forEach((paper, index) => {
      drawnOut(paper, across, down, BLOCK, row, rows[index]);
      for (let column = 0; column < width; column += 1) rows[index][column] = Math.log(Math.max(8, rows[index][column]));
    });
    for (let column = 0, at = row * width; column < width; column += 1, at += 1) {
      let whole = 0;
      let most = -9;
      for (let index = 0; index < 3; index += 1) {
        const value = rows[index][column] - logarithms[channels[index][at]];
        whole += value;
        if (value > most) most = value;
      }
      ink[at] = whole / 6 + most / 2;
    }
  }
  return ink;
}
