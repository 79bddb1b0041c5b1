// Lines and arrows over a photograph, each on a lighter band, so that it is seen on any ground.

/** @import { Pair, Path } from "../types/shared.js" */

/**
 * Draw paths: `{ role, points }`, points as [x, y].
 * @param {CanvasRenderingContext2D} pen
 * @param {Path[]} paths
 * @param {number} unit pixels of the picture for a line of usual weight
 * @param {CSSStyleDeclaration} style of the page where the picture stands
 */
export function arrows(pen, paths, unit, style) {
  pen.lineCap = pen.lineJoin = "round";
  /** @type {[string, number][]} */
  const layers = [["--paper", 2], ["--accent", 0]];
  for (const [colour, more] of layers) {
    pen.strokeStyle = pen.fillStyle = style.getPropertyValue(colour);
    for (const { role, points } of paths) {
      pen.setLineDash(role === "parallel" ? [9 * unit, 6 * unit] : []);
      pen.lineWidth = unit * ((role === "resultant" ? 3.4 : role === "parallel" ? 1.2 : 1.8) + more);
      pen.beginPath();
      points.forEach(([x, y]) => pen.lineTo(x, y));
      pen.stroke();
      if (role !== "parallel") head(pen, points, unit * (role === "resultant" ? 20 : 14), unit * more);
    }
  }
  pen.setLineDash([]);
}

/**
 * Draw dots along lines that were read, so that the pencil is seen between them; in red the line to look at first.
 * @param {CanvasRenderingContext2D} pen
 * @param {Path[]} lines
 * @param {number} unit
 * @param {CSSStyleDeclaration} style
 */
export function dots(pen, lines, unit, style) {
  pen.lineCap = "round";
  for (const { role, points } of lines) {
    const [colour, weight] = role === "first" ? ["--line-red", 5] : ["--ink", 3.2];
    pen.setLineDash([0, 10 * unit]);
    for (const [name, wide] of [["--paper", weight + 2], [colour, weight]]) {
      pen.strokeStyle = style.getPropertyValue(String(name));
      pen.lineWidth = unit * Number(wide);
      pen.beginPath();
      points.forEach(([x, y]) => pen.lineTo(x, y));
      pen.stroke();
    }
  }
  pen.setLineDash([]);
}

/** @param {CanvasRenderingContext2D} pen @param {Pair[]} points @param {number} length @param {number} more */
function head(pen, points, length, more) {
  const [[fromX, fromY], [x, y]] = points.slice(-2);
  const way = Math.atan2(y - fromY, x - fromX);
  pen.beginPath();
  pen.moveTo(x, y);
  for (const side of [0.17, -0.17]) pen.lineTo(x - length * Math.cos(way + side), y - length * Math.sin(way + side));
  pen.closePath();
  pen.fill();
  if (more) pen.stroke();
}

/** Points of a photograph that are asked, by the number of the answer, and points that were read. @typedef {{ places: number[][][], found: number[][] }} Marked */

/**
 * Number the places that are asked; ring the points that were read.
 * @param {CanvasRenderingContext2D} pen
 * @param {Marked} marked
 * @param {number} unit
 * @param {CSSStyleDeclaration} style
 */
export function numbers(pen, { places, found }, unit, style) {
  const [paper, accent] = ["--paper", "--accent"].map((name) => style.getPropertyValue(name));
  pen.lineWidth = 1.6 * unit;
  pen.strokeStyle = accent;
  for (const [x, y] of found) ring(pen, x, y, 6 * unit);
  pen.font = `700 ${15 * unit}px ${style.fontFamily}`;
  pen.textAlign = "center";
  pen.textBaseline = "middle";
  places.forEach((points, index) => {
    for (const [x, y] of points) {
      const [left, top] = [x + 9 * unit, y - 25 * unit];
      ring(pen, x, y, 8 * unit);
      pen.fillStyle = accent;
      pen.fillRect(left, top, 18 * unit, 18 * unit);
      pen.fillStyle = paper;
      pen.fillText(String(index + 1), left + 9 * unit, top + 9.5 * unit);
    }
  });
}

/** @param {CanvasRenderingContext2D} pen @param {number} x @param {number} y @param {number} radius */
function ring(pen, x, y, radius) {
  pen.beginPath();
  pen.arc(x, y, radius, 0, 2 * Math.PI);
  pen.stroke();
}
