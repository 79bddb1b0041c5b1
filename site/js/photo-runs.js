// What a straight line is like along its length: where it is drawn, where nobody can judge, how dark and wide it is, and
// where two short wings meet on it, as at the head of an arrow.

/** @import { Flat, FoundLine, RidgePoints, Stroke } from "../types/strokes.js" */

const BEYOND = 32; // mm that runs are told beyond a line's ends
const BIN = 0.5; // mm
const WING = 9; // mm: how far from its tip a wing reaches
const SIDE = 3.2; // mm: how far a wing reaches from the line
const DEGREE = Math.PI / 180;
const CLEAR = 1.2; // votes of clear points for each wing, from which two are a head
const LINE_WIDTH = 0.4; // mm: of a stroke of the mean strength
const ASIDE = [0, -0.8, 0.8]; // mm: how far beside a line the wings of an arrow meet that lies along it at a flat angle

/** @param {number} angle */
const turned = (angle) => {
  const rest = angle % Math.PI;
  if (rest > Math.PI / 2) return rest - Math.PI;
  return rest <= -Math.PI / 2 ? rest + Math.PI : rest;
};

/** Stretches of full bins as [from, to] in mm. @param {Uint8Array} bins @param {number} start */
function stretches(bins, start) {
  /** @type {number[][]} */
  const found = [];
  for (let bin = 0; bin < bins.length; bin += 1) {
    if (!bins[bin]) continue;
    const first = bin;
    while (bin + 1 < bins.length && bins[bin + 1]) bin += 1;
    found.push([rounded(start + first * BIN), rounded(start + (bin + 1) * BIN)]);
  }
  return found;
}

/** @param {number} value */
const rounded = (value) => Math.round(value * 1000) / 1000;

/**
 * Whether a pixel under a place (mm) cannot be judged.
 * @param {Flat} flat
 * @param {Uint8Array} mask
 * @param {number} x
 * @param {number} y
 */
function isBlind({ width, height, left, top, fine }, mask, x, y) {
  const [column, row] = [Math.floor((x - left) * fine), Math.floor((top - y) * fine)];
  return column < 0 || row < 0 || column >= width || row >= height || mask[row * width + column] === 1;
}

/**
 * Places along a line where wings from both sides meet, as [place, way, votes].
 * @param {number[][]} wings for both ways and both sides the votes of each half millimetre
 * @param {number} mean
 * @param {number} start
 */
function headsOf(wings, mean, start) {
  /** @type {number[][]} */
  const found = [];
  for (const way of [1, -1]) {
    const [one, other] = way > 0 ? [wings[0], wings[1]] : [wings[2], wings[3]];
    const both = one.map((_, bin) => {
      let [mine, theirs] = [0, 0];
      for (let near = Math.max(0, bin - 2); near <= Math.min(one.length - 1, bin + 2); near += 1) {
        mine += one[near];
        theirs += other[near];
      }
      return Math.min(mine, theirs);
    });
    for (let bin = 0; bin < both.length; bin += 1) {
      if (both[bin] < CLEAR * mean) continue;
      if (both.slice(Math.max(0, bin - 8), bin + 9).some((value, near) => value > both[bin] || (value === both[bin] && near < Math.min(8, bin)))) continue;
      let [whole, sum] = [0, 0];
      for (let near = Math.max(0, bin - 2); near <= Math.min(one.length - 1, bin + 2); near += 1) {
        whole += one[near] + other[near];
        sum += (near + 0.5) * (one[near] + other[near]);
      }
      found.push([rounded(start + (sum / whole) * BIN), way, rounded(both[bin] / mean)]);
    }
  }
  return found;
}

/**
 * One line as a stroke.
 * @param {FoundLine} line
 * @param {RidgePoints} points
 * @param {Flat} flat
 * @param {Uint8Array} mask
 * @param {number} mean the strength of the sheet's clear strokes
 * @returns {Stroke}
 */
function strokeOf({ x, y, dx, dy, from, to, strength, spread }, points, flat, mask, mean) {
  const length = to - from;
  const count = Math.ceil((length + 2 * BEYOND) / BIN);
  const [drawn, blind] = [new Uint8Array(count), new Uint8Array(count)];
  const wings = ASIDE.map(() => [0, 1, 2, 3].map(() => /** @type {number[]} */ (new Array(count).fill(0))));
  const start = from - BEYOND;
  const way = Math.atan2(dy, dx);
  for (let at = 0; at < points.count; at += 1) {
    const across = (points.y[at] - y) * dx - (points.x[at] - x) * dy;
    if (Math.abs(across) > SIDE + ASIDE[2]) continue;
    const along = (points.x[at] - x) * dx + (points.y[at] - y) * dy - start;
    if (along < 0 || along >= count * BIN) continue;
    const turn = turned(points.way[at] - way);
    if (Math.abs(across) < 0.6 && Math.abs(turn) < 12 * DEGREE) drawn[Math.floor(along / BIN)] = 1;
    const steep = Math.abs(turn);
    if (points.strength[at] < 0.2 * mean || steep < 8 * DEGREE || steep > 40 * DEGREE) continue;
    ASIDE.forEach((aside, which) => {
      const [left, size] = [across > aside, Math.abs(across - aside)];
      if (size < 0.45 || size > SIDE || size / Math.tan(steep) > WING - 2) return;
      const sense = left === turn < 0 ? 1 : -1; // a wing comes in towards the tip
      const bin = Math.floor((along + (sense * size) / Math.tan(steep)) / BIN);
      if (bin >= 0 && bin < count) wings[which][(sense > 0 ? 0 : 2) + (left ? 0 : 1)][bin] += Math.min(points.strength[at], mean);
    });
  }
  for (let bin = 0; bin < count; bin += 1) {
    const place = start + (bin + 0.5) * BIN;
    if (isBlind(flat, mask, x + place * dx, y + place * dy)) blind[bin] = 1;
  }
  const runs = stretches(drawn, -BEYOND);
  const own = runs.map(([low, high]) => Math.max(0, Math.min(length, high) - Math.max(0, low)));
  const cover = Math.min(1, own.reduce((sum, one) => sum + one, 0) / length);
  const gaps = runs.slice(1).map(([low], index) => [runs[index][1], low]).filter(([low, high]) => low > 0 && high < length && high - low > 0.7);
  return {
    x1: rounded(x + from * dx), y1: rounded(y + from * dy), x2: rounded(x + to * dx), y2: rounded(y + to * dy),
    width: rounded(LINE_WIDTH * Math.min(2, Math.max(0.5, strength / mean))), dark: Math.round(strength * 1e5) / 1e5,
    dashed: cover < 0.85 && gaps.length > length / 14, sigma: rounded(Math.max(0.05, spread)), cover: rounded(cover),
    runs, blind: stretches(blind, -BEYOND), heads: headsOf(wings[0], mean, -BEYOND),
    beside: wings.slice(1).flatMap((votes) => headsOf(votes, mean, -BEYOND)),
  };
}

/**
 * Lines as strokes, the longest first.
 * @param {FoundLine[]} lines
 * @param {RidgePoints} points
 * @param {Flat} flat
 * @param {Uint8Array} mask
 */
export function described(lines, points, flat, mask) {
  const long = [...lines].sort((one, other) => other.to - other.from - (one.to - one.from));
  const strengths = long.filter((line) => line.to - line.from > 12).slice(0, 8).map((line) => line.strength).sort((one, other) => one - other);
  const mean = strengths[strengths.length >> 1] || 0.02;
  return long.map((line) => strokeOf(line, points, flat, mask, mean));
}
