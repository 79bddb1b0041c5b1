// What pycore needs to know of letters that our faces lack, for each request: shaped once, kept while the page is open.

/** @import { Glyph, Letters, Piece, Request } from "../types/shared.js" */

const LIMIT = 15_000; // ms for all pieces together: the page waits for them
const root = document.documentElement;
/** @type {Map<string, { text: string, glyphs: Glyph[] | null }>} */
const known = new Map(); // by a piece's key
let tries = 0; // that failed: browsers ask no second time for a script that did not come

/** @param {Piece} piece @returns {Promise<Glyph[] | null>} */
async function shaped(piece) {
  const mine = tries;
  const address = new URL(`${root.dataset.letters}letters.js${mine ? `?${mine}` : ""}`, document.baseURI).href;
  try {
    return await (await import(address)).shaped(piece);
  } catch (error) {
    tries = mine + 1;
    throw error;
  }
}

/** @returns {Promise<never>} */
const tooLong = () => new Promise((_kept, broken) => setTimeout(broken, LIMIT));

/**
 * Shape pieces of names, all at once: a network that stands still is waited for once. What no font has is known from
 * then on; what could not be fetched is tried again by a later request. Gives the keys of those.
 * @param {Piece[]} pieces
 */
export async function learn(pieces) {
  const limit = tooLong();
  limit.catch(() => {}); // where nothing waits for it, it is no fault
  const failed = pieces.map(async (piece) => {
    try {
      known.set(piece.key, { text: piece.text, glyphs: await Promise.race([shaped(piece), limit]) });
      return [];
    } catch {
      return [piece.key];
    }
  });
  return (await Promise.all(failed)).flat();
}

/**
 * The letters that a request's text may need; `failed`: keys of pieces that could not be shaped now.
 * @param {string} text @param {string[]} failed
 * @returns {Letters | undefined}
 */
function lettersFor(text, failed) {
  /** @type {Map<string, number>} */
  const places = new Map();
  /** @type {Glyph[]} */
  const glyphs = [];
  /** @type {Record<string, number[] | null>} */
  const runs = Object.fromEntries(failed.map((key) => [key, null]));
  for (const [key, one] of known) {
    if (!text.includes(one.text)) continue;
    runs[key] = one.glyphs && one.glyphs.map((glyph) => {
      const name = JSON.stringify(glyph);
      const place = places.get(name) ?? glyphs.push(glyph) - 1;
      places.set(name, place);
      return place;
    });
  }
  return Object.keys(runs).length ? { glyphs, runs } : undefined;
}

/**
 * A request as text, its texts composed (NFC): however a name was typed, pycore sees the same letters.
 * @param {Request} request @param {string[]} failed
 */
export function textOf(request, failed = []) {
  const text = JSON.stringify(request, (_key, value) => (typeof value === "string" ? value.normalize() : value));
  const letters = known.size || failed.length ? lettersFor(text, failed) : undefined;
  return letters ? `${text.slice(0, -1)},"letters":${JSON.stringify(letters)}}` : text;
}
