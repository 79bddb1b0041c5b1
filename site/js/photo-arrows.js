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
