// Long work in pieces: begun, carried on for at most 50 ms at a time so that typing comes between, then finished.

import { download } from "./download.js";

/** @import { Request, WorkResult } from "../types/shared.js" */
/** @import { Bridge } from "./bridge.js" */

const PIECE = 40; // ms that one request should take, so that with its way there and back it stays below 50
const MOST_AT_ONCE = 400;

/** Raised when the reader has stopped the work. */
export class Stopped extends Error {}

/**
 * Carry out work. `begin` is its first request; `tell(said, share)` hears how far it is; `isStopped()` ends it. Gives the
 * last reply, with the whole file. Its parts are handed over as they are ready, so that Python never holds a large one. A
 * worker that was started anew has forgotten it: it is begun once more.
 * @param {Bridge} bridge
 * @param {Request<"begin">} begin
 * @param {(said: string, share: number) => void} tell
 * @param {() => boolean} isStopped
 * @param {Uint8Array | null} [blob] bytes that the work is about
 * @returns {Promise<WorkResult>}
 */
export async function carryOut(bridge, begin, tell, isStopped, blob = null) {
  let reply = await bridge.ask(begin, { blob });
  let pieces = 1;
  let again = true;
  /** @type {Blob[]} */
  let parts = [];
  while (reply.ok && !reply.ended) {
    tell(reply.said, reply.share);
    if (isStopped()) {
      await bridge.ask({ do: "stop", job: reply.job });
      throw new Stopped();
    }
    const began = performance.now();
    const next = await bridge.ask({ do: "next", job: reply.job, pieces, parts: true });
    const taken = Math.max(1, performance.now() - began);
    pieces = Math.max(1, Math.min(MOST_AT_ONCE, 2 * pieces, Math.floor((pieces * PIECE) / taken)));
    if (next.gone && again) {
      again = false;
      parts = [];
      reply = await bridge.ask(begin, { blob });
      continue;
    }
    if (next.blob) parts.push(new Blob([next.blob]));
    reply = next;
  }
  if (!reply.ok) return reply;
  const last = await bridge.ask({ do: "finish", job: reply.job, needs: begin.needs });
  return last.blob ? { ...last, blob: new Blob([...parts, last.blob]) } : last;
}

/**
 * Carry out short work that gives a table, and save it; gives what is told of it, null where there is none.
 * @param {Bridge} bridge @param {Request<"begin">} begin
 */
export async function saveTable(bridge, begin) {
  const reply = await carryOut(bridge, begin, () => {}, () => false);
  if (!reply.ok) return null;
  download(reply);
  return reply.told;
}
