// Between page and worker: one request runs, the others wait, and of those that ask for an answer only the
// latest. A request that needs a lazy part waits aside until it is there or cannot be had. One that finds modules
// missing waits likewise for the rest of pycore, which follows each start. A worker that died or hangs is started
// again, and what it was at is asked once more.

import { places, REST, startedWorker } from "./early.js";
import { learn, textOf } from "./lettered.js";
import { scriptURL, workerAddress } from "./trusted.js";

export { regionHTML } from "./trusted.js";

/** @import { Doing, Fetched, FromWorker, Piece, Replies, Request, State, ToWorker } from "../types/shared.js" */

const START_LIMIT = 60_000; // ms without any sign of progress, for slow phones on slow networks
const REPLY_LIMIT = 20_000;
const COLD_LIMIT = 60_000; // the same where a request waits for Python's warm or cold module
const RESTORE_LIMIT = 10_000; // ms for a kept memory, which takes a tenth of that on a slow phone
const DEATHS = 3; // in a row, without an answer between them, before the reader is asked
const QUIET = 5_000; // ms in which nothing was asked before a memory is made, so that nobody waits for it
const MAKE_LIMIT = 60_000;
const ROOM = 200e6; // bytes that the browser must have to spare for it

/**
 * One request on its way. `early`: Python can answer it before all of its data is there; `tried`: lazy parts that were
 * asked for on its account; `again`: Python died of it once; `lacked`: it went without the cold module once; `unset`:
 * keys of letters that could not be had.
 * @typedef {{
 *   id: number, request: Request, topic: string, blob: Uint8Array | null, early: boolean, tried?: Set<string>,
 *   again?: boolean, lacked?: boolean, unset?: string[], resolve: (reply: any) => void, reject: (error: Error) => void,
 * }} Job
 */

/** @typedef {(state: State, detail?: Fetched | string) => void} Hearer */

/** @typedef {ReturnType<typeof setTimeout> | 0} Timer */

const root = document.documentElement;

/** Whether this device is one that can spare the memory, and its browser the room to keep it, and the will. */
async function hasRoom() {
  if (navigator.connection?.saveData || (navigator.deviceMemory ?? Infinity) < 2) return false;
  try {
    if (!globalThis.caches) return false;
    const { quota = Infinity, usage = 0 } = (await navigator.storage?.estimate?.()) ?? {};
    return quota - usage > ROOM;
  } catch {
    return false; // What sites keep is blocked.
  }
}

export class Superseded extends Error {}
export class Stuck extends Error {}
export class Lacking extends Stuck {}

/** What a script that cannot be had comes to: the host may have another edition by now. */
export const lack = () => {
  throw new Lacking();
};

/**
 * The worker and its queue. `onState(state, detail)` hears "fetching", "starting", "ready" and "failed"; "again" when
 * Python stopped by itself and is started again. Ready with a detail: what was asked waits for the warm data. `onLack(sentence)` hears that a request came to nothing because the
 * rest of pycore could not be fetched.
 */
export class Bridge {
  /** @type {Worker | null} */
  #worker = null;
  #ready = false;
  /** @type {Job | null} */
  #running = null;
  /** @type {Job[]} */
  #waiting = [];
  /** @type {Map<string, "asked" | "loaded" | "failed">} */
  #parts = new Map(); // by name: "asked", "loaded" or "failed", in this worker
  #nextId = 1;
  /** @type {Timer} */
  #timer = 0;
  /** @type {Hearer} */
  #onState;
  /** @type {(sentence: string) => void} */
  #onLack;
  /** @type {AbortController | null} */
  #watch = null; // ends the watch over the worker's life
  #deaths = 0;
  #anew = false; // whether what the browser kept is being fetched again
  #filling = false; // whether the page was told that a request waits for the warm data
  /** @type {Fetched | undefined} */
  #fetched; // the latest of it
  /** @type {Timer} */
  #making = 0;

  /** @param {Hearer} onState @param {(sentence: string) => void} onLack */
  constructor(onState, onLack = () => {}) {
    this.#onState = onState;
    this.#onLack = onLack;
    // A page that is left may come back as it was: without a thread it is kept, and with a dead one it would be lost.
    addEventListener("pagehide", () => this.#stop());
    addEventListener("pageshow", (event) => event.persisted && this.start());
  }

  /**
   * Start Python; `anew`: from the network, because what the browser has kept does not start; `withCold`: with its cold
   * module.
   * @param {{ anew?: boolean, withCold?: boolean }} options
   */
  start({ anew = false, withCold = false } = {}) {
    this.#stop();
    this.#anew = anew;
    const worker = startedWorker({ anew, withCold }, (event) => {
      if (this.#worker !== worker) return;
      if (event instanceof MessageEvent) {
        this.#hear(event.data);
      } else {
        event.preventDefault?.();
        this.#fail((event instanceof ErrorEvent && event.message) || "worker");
      }
    });
    this.#worker = worker;
    this.#limit(START_LIMIT, () => this.#fail("time"));
  }

  /**
   * Ask pycore. With a `topic`, a later request of that topic replaces one that still waits. `request.needs` names
   * lazy parts; when one cannot be had, pycore answers without it and says so. `early`: it is for the first answer of a
   * page as it was built, which tests have proven to need no warm data (cold.js).
   * @template {Doing} D
   * @param {Request<D>} request
   * @param {{ topic?: string, blob?: Uint8Array | null, early?: boolean }} options
   * @returns {Promise<Replies[D]>}
   */
  ask(request, { topic = "", blob = null, early = false } = {}) {
    return new Promise((resolve, reject) => {
      const job = { id: this.#nextId++, request, topic, blob, early, resolve, reject };
      if (topic) {
        const older = this.#waiting.findIndex((waiting) => waiting.topic === topic);
        if (older >= 0) this.#waiting.splice(older, 1)[0].reject(new Superseded());
      }
      this.#waiting.push(job);
      if (this.#making) this.#makeMemory();
      this.#next();
    });
  }

  /**
   * Whether a lazy part is there, so that asking for what it makes would not fail for want of it.
   * @param {string} part
   */
  holds(part) {
    return this.#parts.get(part) === "loaded";
  }

  /** @param {FromWorker} data */
  #hear(data) {
    if (data.stage === "ready") {
      this.#ready = true;
      clearTimeout(this.#timer);
      this.#guard(data.life);
      root.dataset.restored = String(Boolean(data.restored));
      root.dataset.pace = String(Math.round(data.pace ?? 0));
      this.#filling = !data.filled && this.#waiting.some((job) => !job.early);
      this.#onState("ready", this.#filling ? this.#fetched : undefined);
      if (!data.restored && !this.#anew) this.#makeMemory();
      for (const part of places?.parts ?? []) this.#parts.set(part, "loaded");
      this.#next();
      if (!this.#parts.has(REST)) this.#bring(REST);
    } else if (data.part) {
      this.#parts.set(data.part, data.loaded ? "loaded" : "failed");
      this.#next();
    } else if (data.stage === "cold" || data.stage === "warm" || data.stage === "fetching") {
      this.#fetched = data.fetched ?? this.#fetched;
      if (data.stage === "cold") root.dataset.cold = String(data.slot);
      else if (this.#ready && (!this.#running || this.#running.early)) return; // nobody waits for it
      this.#limit(this.#ready ? COLD_LIMIT : START_LIMIT, () => (this.#ready ? this.#died() : this.#fail("time")));
      if (!data.fetched) return;
      this.#filling = this.#ready;
      this.#onState(this.#ready ? "ready" : "fetching", data.fetched);
    } else if (data.stage === "restoring") {
      this.#limit(RESTORE_LIMIT, () => this.start({ anew: true }));
    } else if (data.stage) {
      this.#limit(START_LIMIT, () => this.#fail("time"));
      this.#onState(data.stage);
    } else if (!this.#ready) {
      // What the browser kept may be damaged: the network is asked once before the reader is.
      if (this.#anew) this.#fail(data.failed ?? "");
      else this.start({ anew: true, withCold: data.lacking });
    } else if (this.#running && data.id === this.#running.id) {
      this.#settle(data, this.#running);
    }
  }

  /** @param {FromWorker} data @param {Job} job */
  #settle(data, job) {
    if (data.lacking) {
      this.#lack(job);
      return;
    }
    this.#running = null;
    this.#deaths = 0;
    clearTimeout(this.#timer);
    if (this.#filling) this.#onState("ready");
    this.#filling = false;
    if (data.absent) {
      job.reject(new Lacking());
      this.#next();
      return;
    }
    const reply = data.failed || data.text === undefined ? null : JSON.parse(data.text);
    if (!reply) job.reject(new Error(data.failed));
    else if (reply.missing && !job.tried?.has(REST)) this.#askAgain(job);
    else if (reply.unlettered && !job.unset) this.#bringLetters(job, reply.unlettered);
    else {
      if (reply.missing) this.#onLack(reply.announce);
      job.resolve({ ...reply, blob: data.blob });
    }
    this.#next();
  }

  /**
   * The worker's Python is spent, because its cold module could not be had in time: the next one begins with it, and is
   * asked the same once more. If even that is in vain, the reader hears of it, and the next request tries anew.
   * @param {Job} job
   */
  #lack(job) {
    if (job.lacked) {
      this.#running = null;
      job.reject(new Lacking());
    }
    job.lacked = true;
    this.start({ withCold: true });
  }

  /**
   * A request that found modules missing, asked again once the rest is there.
   * @param {Job} job
   */
  #askAgain(job) {
    job.request = { ...job.request, needs: [...(job.request.needs ?? []), REST] };
    this.#back(job);
  }

  /**
   * A request that waits once more; a later one of its topic replaces it.
   * @param {Job} job
   */
  #back(job) {
    if (job.topic && this.#waiting.some((waiting) => waiting.topic === job.topic)) job.reject(new Superseded());
    else this.#waiting.unshift(job);
  }

  /**
   * A name has letters of other scripts: asked again once they are shaped, and meanwhile others are answered.
   * @param {Job} job @param {Piece[]} pieces
   */
  async #bringLetters(job, pieces) {
    job.unset = await learn(pieces);
    this.#back(job);
    this.#next();
  }

  /** @param {string} part */
  #bring(part) {
    this.#parts.set(part, "asked");
    this.#send({ part });
  }

  /** @param {ToWorker} message */
  #send(message) {
    this.#worker?.postMessage(message);
  }

  #next() {
    if (!this.#ready || this.#running) return;
    const next = this.#waiting.findIndex((job) => this.#equipped(job));
    if (next < 0) return;
    const [job] = this.#waiting.splice(next, 1);
    this.#running = job;
    this.#send({ id: job.id, text: textOf(job.request, job.unset), blob: job.blob, early: job.early });
    this.#limit(REPLY_LIMIT, () => this.#died());
  }

  // A worker holds a lock for as long as it lives, so that its end is known at once, whatever ended it.
  /** @param {string | undefined} life */
  #guard(life) {
    if (!life) return;
    const watch = (this.#watch = new AbortController());
    try {
      navigator.locks.request(life, { signal: watch.signal }, () => this.#watch === watch && this.#died()).catch(() => {});
    } catch {
      // Locks are refused to the page alone: it learns of the end when a reply does not come.
    }
  }

  /** The worker stopped or hangs: what it was at is asked once more, then given up. */
  #died() {
    const job = this.#running;
    if (job?.again) {
      this.#running = null;
      job.reject(new Stuck());
    } else if (job) {
      job.again = true;
    }
    this.#deaths += 1;
    if (this.#deaths > DEATHS) {
      this.#fail("died");
      return;
    }
    this.#onState("again");
    this.start();
  }

  /** Make the memory for return visits, when all is quiet, in a worker that ends with it. */
  #makeMemory() {
    clearTimeout(this.#making);
    this.#making = setTimeout(async () => {
      if (this.#running) return this.#makeMemory();
      this.#making = 0;
      if (document.hidden || !(await hasRoom())) return;
      const maker = new Worker(scriptURL(workerAddress), { type: "module" });
      const limit = setTimeout(() => maker.terminate(), MAKE_LIMIT);
      maker.addEventListener("message", ({ data }) => {
        if (!("made" in data)) return; // It says in between what it fetches.
        clearTimeout(limit);
        maker.terminate();
        root.dataset.memoryMade = String(data.made ?? 0);
      });
      maker.postMessage({ make: places });
    }, QUIET);
  }

  /**
   * Whether all that a request needs has been loaded or given up; what was not asked for yet is asked for now.
   * @param {Job} job
   */
  #equipped(job) {
    const needs = job.request.needs ?? [];
    for (const part of needs) {
      const state = this.#parts.get(part);
      // Given up for an earlier request: this one tries anew.
      if (!state || (state === "failed" && !job.tried?.has(part))) this.#bring(part);
      (job.tried ??= new Set()).add(part);
    }
    return needs.every((part) => this.#parts.get(part) !== "asked");
  }

  /** @param {number} time @param {() => void} then */
  #limit(time, then) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(then, time);
  }

  #stop() {
    clearTimeout(this.#timer);
    clearTimeout(this.#making);
    this.#making = 0;
    this.#watch?.abort();
    this.#watch = null;
    this.#ready = this.#filling = false;
    this.#parts.clear();
    this.#worker?.terminate();
    this.#worker = null;
    if (this.#running) this.#waiting.unshift(this.#running);
    this.#running = null;
  }

  /** @param {string} reason */
  #fail(reason) {
    this.#stop();
    this.#onState("failed", reason);
  }
}
