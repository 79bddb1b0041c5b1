// Reads photographs under Node with the page's own scripts: one request as JSON on each line of the input, one reply on
// each line of the output, with the processor's milliseconds. `marks`: where a sheet's marks are. `strokes`: the straight
// strokes. `codes`: the texts of its QR codes; the picture as it is measured is in a second file.
import { readFileSync } from "node:fs";
import { createInterface } from "node:readline";

import { codesIn } from "../../site/js/codes.js";
import { codesOf } from "../../site/js/photo-codes.js";
import { findMarks } from "../../site/js/photo-marks.js";
import { readStrokes } from "../../site/js/photo-strokes.js";
import { prepareZXingModule } from "../../site/node_modules/zxing-wasm/dist/es/reader/index.js";

prepareZXingModule({ overrides: { wasmBinary: readFileSync(new URL("../../site/node_modules/zxing-wasm/dist/reader/zxing_reader.wasm", import.meta.url)) } });

/** @param {{ file: string, width: number, height: number }} request */
const pixelsOf = ({ file }) => new Uint8ClampedArray(readFileSync(file));

/**
 * A part of a picture, so many times as large: each pixel as often as it takes.
 * @param {{ width: number, data: Uint8ClampedArray }} picture
 */
function partOf({ width, data }, [left, top, wide, high], times) {
  const size = { width: Math.round(wide * times), height: Math.round(high * times) };
  const part = new Uint32Array(size.width * size.height);
  const from = new Uint32Array(data.buffer);
  for (let row = 0, at = 0; row < size.height; row += 1) {
    const start = (top + Math.floor(row / times)) * width + left;
    for (let column = 0; column < size.width; column += 1, at += 1) part[at] = from[start + Math.floor(column / times)];
  }
  return { ...size, data: new Uint8ClampedArray(part.buffer) };
}

const doings = {
  marks: ({ width, height, editions }, data) => findMarks({ width, height, data }, editions),
  strokes: ({ width, height, ground }, pixels) => readStrokes({ pixels, width, height }, ground),
  codes: async ({ width, height, measured }, data) => {
    const whole = { ...measured, data: pixelsOf(measured) };
    return { texts: await codesOf({ width, height }, whole, codesIn, (part, times) => partOf({ width, data }, part, times)) };
  },
};

for await (const line of createInterface({ input: process.stdin })) {
  const request = JSON.parse(line);
  const pixels = pixelsOf(request);
  const start = process.cpuUsage();
  const reply = await doings[request.do](request, pixels);
  const { user, system } = process.cpuUsage(start);
  process.stdout.write(`${JSON.stringify({ ...reply, milliseconds: (user + system) / 1000 })}\n`);
}
