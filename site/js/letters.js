// Letters that the site's own faces lack: fetches the fonts that a name needs and no others, and shapes the name with
// HarfBuzz. Stands in a folder of its own, which no page asks for until a name needs it. What comes of it is outlines:
// pycore draws them.

import { Blob, Buffer, Direction, Face, Font, Variation, shape } from "harfbuzzjs";
import unpacked from "woff2-encoder/decompress";

/** @import { Glyph, Piece } from "../types/shared.js" */

const LIMIT = 10_000; // ms for one font: without it the name is written by number, and a later request tries anew
const UNITS = 1000; // of an em, as pycore reads them
const WEIGHT = 450; // that of the regular face
const CLUSTERS = /[^](?:\p{M}|\u200c|\u200d)*/gu;

/** @typedef {{ file: string, ranges: [number, number][] }} Slice */

/** @param {string} name */
async function fetched(name) {
  const response = await fetch(new URL(name, import.meta.url), { signal: AbortSignal.timeout(LIMIT) });
  if (!response.ok) throw new Error(`${name}: ${response.status}`);
  return response;
}

/** @param {string} text @returns {[number, number][]} */
const rangesOf = (text) =>
  text.split(",").map((one) => {
    const [first, last = first] = one.split("-").map((code) => parseInt(code, 16));
    return [first, last];
  });

/**
 * Which files the site has for each script, the best first.
 * @returns {Promise<Record<string, Slice[]>>}
 */
async function readList() {
  /** @type {{ ranges: Record<string, string>, scripts: Record<string, string[]> }} */
  const { ranges, scripts } = await (await fetched("fonts.json")).json();
  const slices = new Map(Object.entries(ranges).map(([file, text]) => [file, { file, ranges: rangesOf(text) }]));
  return Object.fromEntries(
    Object.entries(scripts).map(([script, files]) => [script, files.flatMap((file) => slices.get(file) ?? [])]),
  );
}

/**
 * What was fetched once stays; what failed is fetched anew when it is asked for again.
 * @template T
 * @param {(name: string) => Promise<T>} make
 */
function remembering(make) {
  /** @type {Map<string, Promise<T>>} */
  const kept = new Map();
  return (/** @type {string} */ name) => {
    const found = kept.get(name) ?? make(name);
    kept.set(name, found);
    found.catch(() => kept.delete(name));
    return found;
  };
}

const fonts = remembering(async (file) => {
  const bytes = await unpacked(await (await fetched(file)).arrayBuffer());
  const font = new Font(new Face(new Blob(/** @type {ArrayBuffer} */ (bytes.buffer))));
  font.setVariations([new Variation("wght", WEIGHT)]);
  return font;
});

const list = remembering(readList);

/** @param {Slice} slice @param {string} cluster */
function covers({ ranges }, cluster) {
  const code = cluster.codePointAt(0) ?? 0;
  return ranges.some(([first, last]) => first <= code && code <= last);
}

/**
 * A glyph's outline in pycore's form, moved by so much.
 * @param {Font} font @param {number} id @param {number} across @param {number} up
 */
function outlineOf(font, id, across, up) {
  const factor = UNITS / font.face.upem;
  const words = font.glyphToPath(id).match(/[A-Z]|-?[\d.]+(?:e-?\d+)?/g) ?? [];
  let place = 0;
  return words.map((word) => {
    if (/[A-Z]/.test(word)) {
      place = 0;
      return word;
    }
    return String(Math.round((Number(word) + (place++ % 2 ? up : across)) * factor));
  });
}

/**
 * A text of one script in one font: a glyph for each cluster, from left to right; null if the font lacks one.
 * @param {Font} font @param {string} text @param {Piece} piece
 * @returns {Glyph[] | null}
 */
function shapedIn(font, text, { script, rtl }) {
  const buffer = new Buffer();
  buffer.addText(text);
  buffer.setDirection(rtl ? Direction.RTL : Direction.LTR);
  buffer.setScript(script);
  shape(font, buffer);
  const infos = buffer.getGlyphInfos();
  const positions = buffer.getGlyphPositions();
  if (infos.some((one) => one.codepoint === 0)) return null;
  const starts = [...new Set(infos.map((one) => one.cluster))].sort((one, other) => one - other);
  /** @type {{ start: number, advance: number, outline: string[] }[]} */
  const clusters = [];
  for (const [at, { codepoint, cluster }] of infos.entries()) {
    const { xAdvance, xOffset, yOffset } = positions[at];
    if (clusters.at(-1)?.start !== cluster) clusters.push({ start: cluster, advance: 0, outline: [] });
    const last = clusters[clusters.length - 1];
    last.outline.push(...outlineOf(font, codepoint, last.advance + xOffset, yOffset));
    last.advance += xAdvance;
  }
  const factor = UNITS / font.face.upem;
  return clusters.map(({ start, advance, outline }) => {
    const end = starts[starts.indexOf(start) + 1] ?? text.length;
    return [text.slice(start, end), Math.max(0, Math.round(advance * factor)), outline.join(" ")];
  });
}

/**
 * A text in the first of these fonts that has all of it.
 * @param {Slice[]} slices @param {string} text @param {Piece} piece
 */
async function firstOf(slices, text, piece) {
  for (const { file } of slices) {
    const glyphs = shapedIn(await fonts(file), text, piece);
    if (glyphs) return glyphs;
  }
  return null;
}

/**
 * A piece of a name as glyphs, from left to right; null if no font of the site has all of it. Rejects if a font cannot
 * be fetched.
 * @param {Piece} piece
 * @returns {Promise<Glyph[] | null>}
 */
export async function shaped(piece) {
  const slices = (await list("fonts.json"))[piece.script] ?? [];
  const clusters = piece.text.match(CLUSTERS) ?? [];
  const whole = slices.filter((slice) => clusters.every((cluster) => covers(slice, cluster)));
  const together = await firstOf(whole, piece.text, piece);
  if (together) return together;
  // Its characters are in several files: each by itself. (Scripts whose letters join have one file each.)
  const parts = [];
  for (const cluster of clusters) {
    const glyphs = await firstOf(slices.filter((slice) => covers(slice, cluster)), cluster, piece);
    if (!glyphs) return null;
    parts.push(glyphs);
  }
  return (piece.rtl ? parts.reverse() : parts).flat();
}
