// Finds the ringed discs of a sheet in a photograph, and which of them is which. Works on plain pixels (width, height,
// data as RGBA) and on the marks' places in mm, clockwise from the upper left; knows nothing of pages or of what the
// sheet is about. Where the marks found do not fit the sheet beyond doubt it gives none, so that they are set by hand.

/** @import { Pair, Point } from "../types/shared.js" */

/** @typedef {{ width: number, height: number, data: ArrayLike<number> }} Picture */
/** @typedef {ReturnType<typeof newBlob>} Blob */
/** @typedef {ReturnType<typeof finished>} Patch */
/** @typedef {Point & { size: number, wide: number, high: number }} Mark */
/** @typedef {{ fits: (Mark | null)[], count: number, off: number }} Agreement */

const LEVELS = [0.82, 0.68, 0.52]; // of the brightness about: below it ink begins; dimmer where a blur fills the ring
const NEEDED = 6; // marks that must agree: four fix the sheet, and two more say that it is this sheet
const MOST = 14; // candidates that are tried with one another
const NEAR = 2.6; // mm from where the others say a mark should be, with what a lens may bend

/**
 * Brightness of every pixel, 0 to 255.
 * @param {Picture} image
 */
function brightness({ width, height, data }) {
  const grey = new Uint8Array(width * height);
  for (let pixel = 0, at = 0; pixel < grey.length; pixel += 1, at += 4) {
    grey[pixel] = (data[at] * 2 + data[at + 1] * 5 + data[at + 2]) >> 3;
  }
  return grey;
}

/**
 * Mean brightness in a square about every pixel, from running sums.
 * @param {Uint8Array} grey
 * @param {number} width
 * @param {number} height
 * @param {number} reach
 */
function meanAbout(grey, width, height, reach) {
  const sums = new Uint32Array((width + 1) * (height + 1)); // 16 million white pixels fit
  for (let y = 0; y < height; y += 1) {
    let row = 0;
    for (let x = 0; x < width; x += 1) {
      row += grey[y * width + x];
      sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1] + row;
    }
  }
  const mean = new Uint8Array(grey.length);
  for (let y = 0; y < height; y += 1) {
    const low = Math.max(0, y - reach) * (width + 1);
    const high = Math.min(height, y + reach + 1) * (width + 1);
    for (let x = 0; x < width; x += 1) {
      const left = Math.max(0, x - reach);
      const right = Math.min(width, x + reach + 1);
      const count = ((high - low) / (width + 1)) * (right - left);
      mean[y * width + x] = (sums[high + right] - sums[high + left] - sums[low + right] + sums[low + left]) / count;
    }
  }
  return mean;
}

/** @param {number} y @param {number} start @param {number} end */
const newBlob = (y, start, end) => ({
  area: end - start, left: start, right: end, top: y, bottom: y + 1, x: ((end + start) / 2) * (end - start),
  y: (y + 0.5) * (end - start),
});

/**
 * Add one blob to another.
 * @param {Blob} into
 * @param {Blob} other
 */
function join(into, other) {
  into.area += other.area;
  into.left = Math.min(into.left, other.left);
  into.right = Math.max(into.right, other.right);
  into.top = Math.min(into.top, other.top);
  into.bottom = Math.max(into.bottom, other.bottom);
  into.x += other.x;
  into.y += other.y;
}

/**
 * Connected dark patches, corners counting as touching: area, bounds and middle of each.
 * @param {(at: number) => boolean} isDark
 * @param {number} width
 * @param {number} height
 */
function patches(isDark, width, height) {
  /** @type {number[]} */
  const parents = [];
  /** @type {Blob[]} */
  const blobs = [];
  /** @param {number} label */
  const rootOf = (label) => {
    let index = label;
    while (parents[index] !== index) index = parents[index] = parents[parents[index]];
    return index;
  };
  /** @type {{ start: number, end: number, label: number }[]} */
  let above = [];
  for (let y = 0; y < height; y += 1) {
    /** @type {typeof above} */
    const runs = [];
    let first = 0;
    for (let x = 0; x < width; x += 1) {
      if (!isDark(y * width + x)) continue;
      const start = x;
      while (x < width && isDark(y * width + x)) x += 1;
      let mine = -1;
      while (first < above.length && above[first].end < start) first += 1;
      for (let index = first; index < above.length && above[index].start <= x; index += 1) {
        const other = rootOf(above[index].label);
        if (mine < 0) mine = other;
        else if (other !== mine) {
          parents[other] = mine;
          join(blobs[mine], blobs[other]);
        }
      }
      const blob = newBlob(y, start, x);
      if (mine < 0) {
        mine = parents.length;
        parents.push(mine);
        blobs.push(blob);
      } else join(blobs[mine], blob);
      runs.push({ start, end: x, label: mine });
    }
    above = runs;
  }
  return blobs.filter((_, index) => parents[index] === index).map((blob) => finished(blob));
}

/** @param {Blob} blob */
function finished(blob) {
  const [wide, high] = [blob.right - blob.left, blob.bottom - blob.top];
  return { ...blob, wide, high, x: blob.x / blob.area, y: blob.y / blob.area, fill: blob.area / (wide * high) };
}

/** @param {Patch} blob @param {number} largest */
const isDisc = (blob, largest) =>
  blob.area >= 5 && Math.max(blob.wide, blob.high) <= largest / 2 && blob.fill > 0.5 &&
  blob.wide < 2.6 * blob.high && blob.high < 2.6 * blob.wide;

/** @param {Patch} blob @param {number} largest */
const isRing = (blob, largest) =>
  Math.min(blob.wide, blob.high) >= 6 && Math.max(blob.wide, blob.high) <= largest && blob.fill > 0.12 &&
  blob.fill < 0.68 && blob.wide < 2.6 * blob.high && blob.high < 2.6 * blob.wide;

/**
 * Whether a patch lies in the middle of another, of the sizes that disc and ring have.
 * @param {Patch} ring
 * @param {Patch} disc
 */
function isMark(ring, disc) {
  const [across, down] = [ring.wide / disc.wide, ring.high / disc.high];
  const [middleX, middleY] = [(ring.left + ring.right) / 2, (ring.top + ring.bottom) / 2];
  return (
    across > 1.6 && across < 4.5 && down > 1.6 && down < 4.5 && Math.abs(disc.x - middleX) < 0.16 * ring.wide &&
    Math.abs(disc.y - middleY) < 0.16 * ring.high && Math.abs(ring.x - middleX) < 0.16 * ring.wide &&
    Math.abs(ring.y - middleY) < 0.16 * ring.high
  );
}

/**
 * The middle of a disc to a fraction of a pixel: each pixel counts as much as it is darker than the paper about.
 * @param {Uint8Array} grey
 * @param {number} width
 * @param {number} height
 * @param {Patch} disc
 */
function sharpened(grey, width, height, disc) {
  const [left, right] = [Math.max(0, disc.left - 2), Math.min(width, disc.right + 2)];
  const [top, bottom] = [Math.max(0, disc.top - 2), Math.min(height, disc.bottom + 2)];
  const reach = (Math.max(disc.wide, disc.high) / 2 + 1.6) ** 2;
  let paper = 0;
  for (let y = top; y < bottom; y += 1) for (let x = left; x < right; x += 1) paper = Math.max(paper, grey[y * width + x]);
  let [whole, acrossSum, downSum] = [0, 0, 0];
  for (let y = top; y < bottom; y += 1) {
    for (let x = left; x < right; x += 1) {
      if ((x + 0.5 - disc.x) ** 2 + (y + 0.5 - disc.y) ** 2 > reach) continue;
      const weight = Math.max(0, paper - grey[y * width + x] - 0.15 * paper);
      whole += weight;
      acrossSum += weight * (x + 0.5);
      downSum += weight * (y + 0.5);
    }
  }
  return whole > 0 ? { x: acrossSum / whole, y: downSum / whole } : { x: disc.x, y: disc.y };
}

/**
 * Every ringed disc in a picture: its middle and the ring's size in pixels.
 * @param {Picture} image
 */
export function ringedDiscs(image) {
  const { width, height } = image;
  const grey = brightness(image);
  const longer = Math.max(width, height);
  const mean = meanAbout(grey, width, height, Math.max(8, Math.round(longer / 36)));
  const largest = longer / 10;
  /** @type {Mark[]} */
  const found = [];
  for (const level of LEVELS) {
    const blobs = patches((at) => grey[at] < mean[at] * level && mean[at] - grey[at] > 14, width, height);
    const rings = blobs.filter((blob) => isRing(blob, largest));
    const discs = blobs.filter((blob) => isDisc(blob, largest)).sort((one, other) => one.x - other.x);
    for (const ring of rings) {
      const within = discs.filter((disc) => disc !== ring && isMark(ring, disc));
      if (within.length !== 1) continue;
      const size = Math.max(ring.wide, ring.high);
      if (found.some((mark) => Math.hypot(mark.x - within[0].x, mark.y - within[0].y) < size / 2)) continue;
      found.push({ ...sharpened(grey, width, height, within[0]), size, wide: ring.wide, high: ring.high });
    }
  }
  return found;
}

// Which mark is which.

/**
 * The eight numbers of the projection that takes four places to four points; null if there is none.
 * @param {Pair[]} from
 * @param {Point[]} to
 */
function projection(from, to) {
  /** @type {number[][]} */
  const rows = [];
  from.forEach(([x, y], index) => {
    const { x: u, y: v } = to[index];
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y, u], [0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  });
  for (let column = 0; column < 8; column += 1) {
    let best = column;
    for (let row = column + 1; row < 8; row += 1) if (Math.abs(rows[row][column]) > Math.abs(rows[best][column])) best = row;
    if (Math.abs(rows[best][column]) < 1e-9) return null;
    [rows[column], rows[best]] = [rows[best], rows[column]];
    for (let row = column + 1; row < 8; row += 1) {
      const share = rows[row][column] / rows[column][column];
      if (share) for (let place = column; place < 9; place += 1) rows[row][place] -= share * rows[column][place];
    }
  }
  const found = new Array(8);
  for (let row = 7; row >= 0; row -= 1) {
    let value = rows[row][8];
    for (let place = row + 1; place < 8; place += 1) value -= rows[row][place] * found[place];
    found[row] = value / rows[row][row];
  }
  return found;
}

/** @param {number[]} numbers @param {Pair} place @returns {Point | null} */
function seen([a, b, c, d, e, f, g, h], [x, y]) {
  const depth = g * x + h * y + 1;
  return depth > 0.05 ? { x: (a * x + b * y + c) / depth, y: (d * x + e * y + f) / depth } : null;
}

/** @param {Point} a @param {Point} b @param {Point} c */
const turn = (a, b, c) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/**
 * Whether four points run clockwise round a picture and none lies nearly between two others.
 * @param {Point[]} four
 */
function isRound(four) {
  return four.every((point, index) => {
    const [next, after] = [four[(index + 1) % 4], four[(index + 2) % 4]];
    const longest = Math.max(Math.hypot(next.x - point.x, next.y - point.y), Math.hypot(after.x - point.x, after.y - point.y));
    return turn(point, next, after) > 0.04 * longest * longest;
  });
}

/** @param {number} count @param {number} size @param {number} start @returns {Generator<number[]>} */
function* choices(count, size, start = 0) {
  if (size === 0) yield [];
  else {
    for (let first = start; first <= count - size; first += 1) {
      for (const rest of choices(count, size - 1, first + 1)) yield [first, ...rest];
    }
  }
}

/**
 * Four points in the order in which they run clockwise round their middle.
 * @param {Mark[]} points
 */
function roundAbout(points) {
  const [x, y] = [points.map((point) => point.x), points.map((point) => point.y)].map(
    (all) => all.reduce((sum, one) => sum + one, 0) / points.length,
  );
  return [...points].sort((a, b) => Math.atan2(a.y - y, a.x - x) - Math.atan2(b.y - y, b.x - x));
}

/**
 * For every mark of the sheet the point that fits it, or null; how many there are and how far off they are.
 * @param {number[]} numbers
 * @param {Pair[]} places
 * @param {Mark[]} points
 * @returns {Agreement}
 */
function agreement(numbers, places, points) {
  /** @type {Set<Mark>} */
  const taken = new Set();
  let [count, off] = [0, 0];
  const fits = places.map((place) => {
    const [expected, beside] = [seen(numbers, place), seen(numbers, [place[0] + 1, place[1]])];
    const above = seen(numbers, [place[0], place[1] + 1]);
    if (!expected || !beside || !above) return null;
    const millimetre = Math.sqrt(Math.abs(turn(expected, beside, above)));
    /** @type {{ point: Mark, away: number } | null} */
    let best = null;
    for (const point of points) {
      const away = Math.hypot(point.x - expected.x, point.y - expected.y) / millimetre;
      // A ring is 5.2 mm wide, on large paper and older sheets 5.9; much larger or smaller ones belong to something else.
      const fitting = point.size > 2.8 * millimetre && point.size < 9 * millimetre;
      if (away < NEAR && fitting && !taken.has(point) && (!best || away < best.away)) best = { point, away };
    }
    if (!best) return null;
    taken.add(best.point);
    count += 1;
    off += best.away;
    return best.point;
  });
  return { fits, count, off };
}

/** @param {Agreement} one @param {Agreement | null} other */
const better = (one, other) => !other || one.count > other.count || (one.count === other.count && one.off < other.off);

/**
 * Whether two agreements contradict each other: most of the places that both know are other points.
 * @param {Agreement} one
 * @param {Agreement} other
 */
function contradict(one, other) {
  const known = one.fits.map((point, index) => [point, other.fits[index]]).filter(([left, right]) => left && right);
  return known.filter(([left, right]) => left !== right).length * 2 > known.length;
}

/**
 * Which fours of the sheet's marks fix it well: none nearly in line with two others.
 * @param {Pair[]} places
 */
function goodFours(places) {
  const flipped = places.map(([x, y]) => ({ x, y: -y }));
  return [...choices(places.length, 4)].filter((four) => isRound(four.map((index) => flipped[index])));
}

/**
 * How the points found agree best with the marks of one edition of a sheet, and whether they do so beyond doubt: at least
 * six agree, and agree in one way only.
 * @param {Mark[]} points
 * @param {Pair[]} places
 */
function bestOf(points, places) {
  const fours = goodFours(places);
  /** @type {Agreement | null} */
  let best = null;
  /** @type {Agreement | null} */
  let rival = null;
  search: for (const chosen of choices(points.length, 4)) {
    const four = roundAbout(chosen.map((index) => points[index]));
    if (!isRound(four)) continue;
    for (const indices of fours) {
      for (let shift = 0; shift < 4; shift += 1) {
        const from = indices.map((_, index) => places[indices[(index + shift) % 4]]);
        const numbers = projection(from, four);
        if (!numbers) continue;
        const found = agreement(numbers, places, points);
        if (found.count < NEEDED) continue;
        /** @type {Agreement} */
        const leader = !best || better(found, best) ? found : best;
        /** @type {Agreement | null} */
        const beaten = leader === found ? best : found;
        best = leader;
        if (beaten && contradict(beaten, leader) && better(beaten, rival)) rival = beaten;
        if (leader.count === places.length) break search;
      }
    }
  }
  // All marks seen leave no doubt; fewer do, if another way round serves too.
  return best && best.count < places.length && rival && contradict(rival, best) ? null : best;
}

/**
 * The marks of a sheet in a photograph. `editions`: the places (mm, clockwise from the upper left) of the marks that
 * sheets have now, and of those that sheets had before; the one that the points fit is found. Gives its number and for
 * each of its places the mark in pixels, or null where it is not seen; no marks where none fits beyond doubt. `seen`:
 * how many marks there are, fitting or not.
 * @param {Picture} image
 * @param {Pair[][]} editions
 */
export function findMarks(image, editions) {
  const points = ringedDiscs(image).sort((one, other) => other.size - one.size).slice(0, MOST);
  /** @type {{ edition: number, found: Agreement } | null} */
  let best = null;
  for (const [edition, places] of editions.entries()) {
    const found = bestOf(points, places);
    if (found && better(found, best && best.found)) best = { edition, found };
    if (found && found.count === places.length) break;
  }
  return { edition: best ? best.edition : 0, marks: best && best.found.fits, seen: points.length };
}
