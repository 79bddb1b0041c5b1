// The memory of a started Python, kept in the browser's own cache, so that a return visit need not start it again.
// It is made by the visitor's own browser, from imports alone; it holds nothing that anybody typed. Used by worker.js.

/** @import { Places } from "../types/shared.js" */

/**
 * What Pyodide gives to its own module: `instantiateWasm` makes the instance, and hands it on.
 * @typedef {(instance: WebAssembly.Instance, module: WebAssembly.Module) => void} Done
 * @typedef {{ instantiateWasm: (imports: WebAssembly.Imports, done: Done) => unknown }} Settings
 * @typedef {(settings: Settings) => Promise<unknown>} ModuleMaker
 */

const HEADER = 8; // words that Pyodide writes before the memory; the second says where the memory begins
const PAGE = 65536; // bytes, the unit in which WebAssembly memory grows
const PIECE = 4096; // bytes: seven pieces in ten of a started memory hold nothing, and are not kept

/** @param {Places} places */
const cacheOf = (places) => caches.open(`phasor-folio-memory ${places.root}`);
/** @param {Places} places */
const addressOf = (places) => new URL(`memory/${places.memory}`, places.root).href;

// Fast, and enough to notice what a disk has lost or mixed up; nobody else can write here.
/** @param {Uint8Array} bytes */
function checksum(bytes) {
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength >> 2);
  let sum = words.length | 0;
  for (let at = 0; at < words.length; at++) sum = (Math.imul(sum, 31) + words[at]) | 0;
  return String(sum);
}

/**
 * A memory without its empty pieces: its length, how many pieces are kept, which they are, then the pieces.
 * @param {Uint8Array} bytes
 */
export function packed(bytes) {
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength >> 2);
  const each = PIECE / words.BYTES_PER_ELEMENT;
  /** @type {number[]} */
  const full = [];
  for (let at = 0; at < words.length; at += each) {
    if (words.subarray(at, at + each).some((word) => word)) full.push(at / each);
  }
  const head = new Uint32Array([bytes.length, full.length, ...full]);
  const made = new Uint8Array(head.byteLength + full.length * PIECE);
  made.set(new Uint8Array(head.buffer));
  full.forEach((piece, place) => {
    made.set(bytes.subarray(piece * PIECE, (piece + 1) * PIECE), head.byteLength + place * PIECE);
  });
  return made;
}

/**
 * The memory of which `packed` made `stored`.
 * @param {Uint8Array} stored
 */
export function unpacked(stored) {
  const [length, count] = new Uint32Array(stored.buffer, 0, 2);
  const full = new Uint32Array(stored.buffer, 8, count);
  const bytes = new Uint8Array(length);
  let from = full.byteOffset + full.byteLength;
  for (const piece of full) {
    const to = piece * PIECE;
    bytes.set(stored.subarray(from, from + Math.min(PIECE, length - to)), to);
    from += PIECE;
  }
  return bytes;
}

/**
 * The kept memory that fits this edition, or null; what is kept but damaged is thrown away.
 * @param {Places} places
 */
export async function kept(places) {
  try {
    const found = await (await cacheOf(places)).match(addressOf(places));
    if (!found) return null;
    const bytes = new Uint8Array(await found.arrayBuffer());
    if (bytes.length > HEADER * 4 && checksum(bytes) === found.headers.get("x-checksum")) return unpacked(bytes);
    if (bytes.length > 0) await forget(places);
  } catch {
    // Storage is refused or broken, or what it holds is no memory: Python starts without.
    await forget(places);
  }
  return null;
}

/**
 * Keep a packed memory in the place of every older one. Throws when there is no room.
 * @param {Places} places
 * @param {Uint8Array<ArrayBuffer>} bytes
 */
export async function keep(places, bytes) {
  const cache = await cacheOf(places);
  for (const older of await cache.keys()) await cache.delete(older);
  await cache.put(addressOf(places), new Response(bytes, { headers: { "x-checksum": checksum(bytes) } }));
}

/**
 * Throw away whatever is kept.
 * @param {Places} places
 */
export async function forget(places) {
  try {
    await caches.delete(`phasor-folio-memory ${places.root}`);
  } catch {
    // Where nothing can be kept, nothing is.
  }
}

/**
 * Whether a memory, good or given up, stands here for this edition: then none is to be made.
 * @param {Places} places
 */
export async function isSettled(places) {
  return Boolean(await (await cacheOf(places)).match(addressOf(places)));
}

/**
 * Note that no memory can be made here, so that not every visit tries. An empty one is never restored.
 * @param {Places} places
 */
export async function giveUp(places) {
  try {
    await keep(places, new Uint8Array());
  } catch {
    // Then the next visit tries again.
  }
}

/**
 * The function that makes Pyodide's module, from `asm`, Pyodide's own; with `bytes`, in a memory large enough for
 * them: one that had grown before it was kept is larger than that which a module starts with.
 * @param {ModuleMaker} asm
 * @param {Uint8Array | null} bytes
 * @returns {ModuleMaker}
 */
export function moduleMaker(asm, bytes) {
  if (!bytes) return asm;
  const begins = new Uint32Array(bytes.buffer, bytes.byteOffset, 2)[1];
  const needed = bytes.length - begins;
  return (settings) => {
    const instantiate = settings.instantiateWasm;
    settings.instantiateWasm = (imports, done) =>
      instantiate(imports, (instance, module) => {
        const memory = /** @type {WebAssembly.Memory} */ (instance.exports.memory);
        const short = needed - memory.buffer.byteLength;
        if (short > 0) memory.grow(Math.ceil(short / PAGE));
        done(instance, module);
      });
    return asm(settings);
  };
}
