// Reads photographs under Node with the page's own scripts: one request as JSON on each line of the input, one reply on
// each line of the output, with the processor's milliseconds. `marks`: where a sheet's marks are. `strokes`: the straight
// strokes.
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";

import { findMarks } from "../../site/js/photo-marks.js";
import { readStrokes } from "../../site/js/photo-strokes.js";

/** @param {{ file: string, width: number, height: number }} request */
const pixelsOf = ({ file }) => new Uint8ClampedArray(readFileSync(file));

for await (const line of createInterface({ input: process.stdin })) {
  const request = JSON.parse(line);
  const { width, height } = request;
  const pixels = pixelsOf(request);
  const start = process.cpuUsage();
  const reply = request.do === "marks"
    ? findMarks({ width, height, data: pixels }, request.editions)
    : readStrokes({ pixels, width, height }, request.ground);
  const { user, system } = process.cpuUsage(start);
  process.stdout.write(`${JSON.stringify({ ...reply, milliseconds: (user + system) / 1000 })}\n`);
}
