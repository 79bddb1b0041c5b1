// Straight lines among points of ridges: each point votes for the lines through it that lie near its own direction (after
// Hough); the line with most votes is fitted, split into its runs and taken away, and so on. Pieces of one line are joined.

/** @import { FoundLine, RidgePoints } from "../types/strokes.js" */

const TURNS = 720; // directions in half a turn
const APART = 0.4; // mm between two lines of one direction
const SPREAD = 16; // directions on each side of its own for which a point votes: 4 degrees
const LEAST = 7; // mm of the shortest line
const GAP = 4.6; // mm that a dashed line may be bare
const MOST = 80;
const TRIES = 200;
const STEP = Math.PI / TURNS;
const DEGREE = Math.PI / 180;
const SIDE = 9; // a point of each mm: fewer votes than this share of it are no line
const BIN = 0.5; // mm

/** The angle between two directions of lines, radians. @param {number} one @param {number} other */
function between(one, other) {
  const off = Math.abs(one - other) % Math.PI;
  return off > Math.PI / 2 ? Math.PI - off : off;
}

/**
 * Indices of points near a line, sorted along it, and where each of them is along it.
 * @param {RidgePoints} points
 * @param {Uint8Array} left
 * @param {{ x: number, y: number, dx: number, dy: number }} line
 * @param {number} side mm across
 * @param {number} turn radians
 */
function near(points, left, { x, y, dx, dy }, side, turn) {
  const way = Math.atan2(dy, dx);
  /** @type {number[]} */
  const found = [];
  for (let at = 0; at < points.count; at += 1) {
    if (!left[at]) continue;
    const across = (points.y[at] - y) * dx - (points.x[at] - x) * dy;
    if (across < side && across > -side && between(points.way[at], way) < turn) found.push(at);
  }
  const places = Float32Array.from(found, (at) => (points.x[at] - x) * dx + (points.y[at] - y) * dy);
  const order = found.map((_, index) => index).sort((one, other) => places[one] - places[other]);
  return { found: order.map((index) => found[index]), along: Float32Array.from(order, (index) => places[index]) };
}

/**
 * Stretches of sorted places without a gap.
 * @param {Float32Array} along
 * @param {number} gap
 */
function* runs(along, gap) {
  let start = 0;
  for (let place = 1; place <= along.length; place += 1) {
    if (place < along.length && along[place] - along[place - 1] <= gap) continue;
    yield [start, place - 1];
    start = place;
  }
}

/**
 * The line that fits some points best, near a line that is known; null if few do.
 * @param {RidgePoints} points
 * @param {number[]} part
 * @param {{ x: number, y: number, dx: number, dy: number }} line
 */
function fitted(points, part, line) {
  let { x, y, dx, dy } = line;
  for (let round = 0; round < 3; round += 1) {
    let [whole, sumX, sumY, count] = [0, 0, 0, 0];
    /** @type {number[]} */
    const on = [];
    for (const at of part) {
      if (Math.abs((points.y[at] - y) * dx - (points.x[at] - x) * dy) > 0.55) continue;
      on.push(at);
      whole += points.weight[at];
      sumX += points.weight[at] * points.x[at];
      sumY += points.weight[at] * points.y[at];
      count += 1;
    }
    if (count < 6) return null;
    [x, y] = [sumX / whole, sumY / whole];
    let [xx, yy, xy] = [0, 0, 0];
    for (const at of on) {
      const offX = points.x[at] - x;
      const offY = points.y[at] - y;
      xx += points.weight[at] * offX * offX;
      yy += points.weight[at] * offY * offY;
      xy += points.weight[at] * offX * offY;
    }
    const way = 0.5 * Math.atan2(2 * xy, xx - yy);
    const sense = Math.cos(way) * dx + Math.sin(way) * dy < 0 ? -1 : 1;
    [dx, dy] = [sense * Math.cos(way), sense * Math.sin(way)];
  }
  return { x, y, dx, dy };
}

/** The votes of all points: directions by distances from their middle. @param {RidgePoints} points */
function votesOf(points) {
  let [low, high, down, up] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let at = 0; at < points.count; at += 1) {
    low = Math.min(low, points.x[at]);
    high = Math.max(high, points.x[at]);
    down = Math.min(down, points.y[at]);
    up = Math.max(up, points.y[at]);
  }
  const [x, y] = [(low + high) / 2, (down + up) / 2];
  const reach = Math.hypot(high - x, up - y) + 2;
  const across = Math.floor((2 * reach) / APART) + 2;
  const votes = new Float32Array(TURNS * across);
  const [sines, cosines] = [Math.sin, Math.cos].map((f) => Float32Array.from({ length: TURNS }, (_, k) => f(k * STEP)));
  /** @param {number} at @param {number} sense */
  const vote = (at, sense) => {
    const own = Math.round(points.way[at] / STEP);
    const offX = points.x[at] - x;
    const offY = points.y[at] - y;
    for (let k = own - SPREAD; k <= own + SPREAD; k += 1) {
      const turn = (k + 2 * TURNS) % TURNS;
      votes[turn * across + Math.floor((offY * cosines[turn] - offX * sines[turn] + reach) / APART)] += sense * points.weight[at];
    }
  };
  for (let at = 0; at < points.count; at += 1) vote(at, 1);
  return { votes, across, reach, vote, x, y };
}

/** Where two neighbouring distances of one direction have most votes. @param {Float32Array} votes @param {number} across */
function mostVotes(votes, across) {
  let best = 0;
  let most = 0;
  for (let at = 0; at < votes.length - 1; at += 1) {
    const both = votes[at] + votes[at + 1];
    if (both <= most) continue;
    best = at;
    most = both;
  }
  return { turn: Math.floor(best / across), distance: best % across, most, best };
}

/** How densely a run must be drawn: chance covers little, so short runs must be dense. @param {number} length */
const dense = (length) => (length < 12 ? 0.6 : length < 25 ? 0.45 : 0.33);

/**
 * The line through one run of points: fitted, then followed as far as it goes on; null if it is none.
 * @param {RidgePoints} points
 * @param {Uint8Array} left
 * @param {{ x: number, y: number, dx: number, dy: number }} line
 * @param {number[]} part
 * @param {number} from
 * @param {number} to
 */
function followed(points, left, line, part, from, to) {
  const fit = fitted(points, part, line);
  if (!fit) return null;
  const { found, along } = near(points, left, fit, 0.5, 12 * DEGREE);
  const [x, y] = [line.x + (line.dx * (from + to)) / 2, line.y + (line.dy * (from + to)) / 2];
  const middle = (x - fit.x) * fit.dx + (y - fit.y) * fit.dy;
  for (const [first, last] of runs(along, GAP + 2)) {
    const [start, end] = [along[first], along[last]];
    if (start - 1 > middle || middle > end + 1 || end - start < LEAST) continue;
    const own = found.slice(first, last + 1);
    const bins = new Set(own.map((_, index) => Math.floor((along[first + index] - start) / BIN)));
    const cover = bins.size / Math.max(1, Math.ceil((end - start) / BIN));
    if (cover < dense(end - start)) continue;
    const strengths = Float32Array.from(own, (at) => points.strength[at]).sort();
    const off = own.map((at) => (points.y[at] - fit.y) * fit.dx - (points.x[at] - fit.x) * fit.dy);
    const spread = Math.sqrt(off.reduce((sum, one) => sum + one * one, 0) / off.length);
    return { ...fit, from: start, to: end, cover, strength: strengths[strengths.length >> 1], spread, own };
  }
  return null;
}

/**
 * Every straight line among points of ridges.
 * @param {RidgePoints} points
 * @returns {FoundLine[]}
 */
export function findLines(points) {
  if (!points.count) return [];
  const { votes, across, reach, vote, x, y } = votesOf(points);
  const left = new Uint8Array(points.count).fill(1);
  /** @type {FoundLine[]} */
  const lines = [];
  for (let tries = 0; tries < TRIES && lines.length < MOST; tries += 1) {
    const { turn, distance, most, best } = mostVotes(votes, across);
    if (most < LEAST * 8 * 0.4) break;
    const [dx, dy] = [Math.cos(turn * STEP), Math.sin(turn * STEP)];
    const away = (distance + 1) * APART - reach;
    const line = { x: x - away * dy, y: y + away * dx, dx, dy };
    const about = near(points, left, line, SIDE / 10, 14 * DEGREE);
    const used = new Set();
    for (const [first, last] of about.found.length >= 12 ? runs(about.along, GAP) : []) {
      const [from, to] = [about.along[first], about.along[last]];
      if (to - from < LEAST) continue;
      const found = followed(points, left, line, about.found.slice(first, last + 1), from, to);
      if (!found) continue;
      const { own, ...one } = found;
      lines.push(one);
      for (const at of own) used.add(at);
      const wide = near(points, left, one, 0.7, 25 * DEGREE);
      wide.found.forEach((at, index) => {
        if (wide.along[index] > one.from - 0.3 && wide.along[index] < one.to + 0.3) used.add(at);
      });
    }
    // Too little in one run: these votes are taken away, or else the place itself.
    const gone = used.size ? used : new Set(about.found);
    for (const at of gone) {
      left[at] = 0;
      vote(at, -1);
    }
    if (!gone.size) votes[best] = votes[best + 1] = 0;
  }
  return joined(lines);
}

/** @param {FoundLine} line @param {number} place @returns {[number, number]} */
const at = (line, place) => [line.x + place * line.dx, line.y + place * line.dy];

/**
 * Pieces of one line put together; a line that was drawn twice becomes one.
 * @param {FoundLine[]} lines
 */
function joined(lines) {
  /** @type {FoundLine[]} */
  const kept = [];
  for (const line of [...lines].sort((one, other) => other.to - other.from - (one.to - one.from))) {
    const ends = [at(line, line.from), at(line, line.to)];
    const whole = kept.find((other) => {
      if (Math.abs(line.dx * other.dy - line.dy * other.dx) > Math.sin(1.6 * DEGREE)) return false;
      if (ends.some(([x, y]) => Math.abs((y - other.y) * other.dx - (x - other.x) * other.dy) > 0.8)) return false;
      const places = ends.map(([x, y]) => (x - other.x) * other.dx + (y - other.y) * other.dy);
      return Math.min(...places) < other.to + 11 && Math.max(...places) > other.from - 11;
    });
    if (!whole) {
      kept.push({ ...line });
      continue;
    }
    const places = ends.map(([x, y]) => (x - whole.x) * whole.dx + (y - whole.y) * whole.dy);
    whole.from = Math.min(whole.from, ...places);
    whole.to = Math.max(whole.to, ...places);
  }
  return kept;
}
