// Types of the reader of strokes (js/photo-strokes.js).

export interface Pixels {
  pixels: ArrayLike<number>;
  width: number;
  height: number;
}

/** What is printed, mm: lines with their width, discs with their radius, areas by their sides. */
export interface Printed {
  lines: number[][];
  discs: number[][];
  areas: number[][];
}

export interface Ground {
  projection: { numbers: number[]; middle: number[]; reach: number };
  box: number[];
  printed: Printed;
}

/** The part of the paper as it lies flat: row 0 on top, `fine` pixels for each mm. */
export interface Flat {
  width: number;
  height: number;
  left: number;
  top: number;
  fine: number;
  shown: number;
}

/** Points on the middle of dark strokes: mm, direction in radians from 0 to pi, strength, weight of their vote. */
export interface RidgePoints {
  count: number;
  x: Float32Array;
  y: Float32Array;
  way: Float32Array;
  strength: Float32Array;
  weight: Float32Array;
}

/** A straight line through (x, y) along (dx, dy), drawn from `from` to `to` along it (mm). */
export interface FoundLine {
  x: number;
  y: number;
  dx: number;
  dy: number;
  from: number;
  to: number;
  cover: number;
  strength: number;
  spread: number;
}

export interface Stroke {
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  width: number;
  dark: number;
  dashed: boolean;
  sigma: number;
  cover: number;
  runs: number[][];
  blind: number[][];
  heads: number[][];
  beside: number[][];
}

export interface Strokes {
  strokes: Stroke[];
  noise: number;
  cover: number;
}
