// Between page and worker: one request runs, the others wait, and of those that ask for an answer only the
// latest. A request that needs a lazy part waits aside until it is there or cannot be had. Restarts a worker that
// died or hangs. The page's only trusted-types policy is here.

const START_LIMIT = 60_000; // ms without any sign of progress, for slow phones on slow networks
const REPLY_LIMIT = 20_000;

const root = document.documentElement;
const workerAddress = root.dataset.worker ? new URL(root.dataset.worker, document.baseURI).href : "";
const runtimeAddress = root.dataset.runtime ? new URL(root.dataset.runtime, document.baseURI).href : "";

const REFUSED = new RegExp(
  [
    "<(?:script|iframe|object|embed|base|meta|link)\\b",
    "\\son\\w+\\s*=\\s*[\"']",
    "\\s(?:xlink:)?(?:href|src|srcset|action|formaction|data|poster)\\s*=\\s*[\"']\\s*javascript:",
  ].join("|"),
  "i",
);

const rules = {
  // HTML reaches the page only from pycore, which escapes all text, quotes too; what it never writes is refused all
  // the same. Nothing that a person types can look like it, so that no link can stop the page by being refused.
  createHTML(html) {
    if (REFUSED.test(html)) {
      throw new TypeError("pycore writes no such HTML");
    }
    return html;
  },
  createScriptURL(address) {
    if (address !== workerAddress) throw new TypeError("only the page's own worker may run");
    return address;
  },
};
const policy = globalThis.trustedTypes ? trustedTypes.createPolicy("phasor-folio", rules) : rules;

/** HTML of a region, as pycore made it, in the form that the page's policy asks for. */
export function regionHTML(html) {
  return policy.createHTML(html);
}

export class Superseded extends Error {}
export class Stuck extends Error {}

/** The worker and its queue. `onState(state, detail)` hears "fetching", "starting", "ready" and "failed". */
export class Bridge {
  #worker = null;
  #ready = false;
  #running = null;
  #waiting = [];
  #parts = new Map(); // by name: "asked", "loaded" or "failed", in this worker
  #nextId = 1;
  #timer = 0;
  #onState;

  constructor(onState) {
    this.#onState = onState;
  }

  start() {
    this.#stop();
    this.#worker = new Worker(policy.createScriptURL(workerAddress), { type: "module" });
    this.#worker.addEventListener("message", ({ data }) => this.#hear(data));
    this.#worker.addEventListener("error", (event) => {
      event.preventDefault?.();
      this.#fail(event.message || "worker");
    });
    this.#worker.postMessage({ start: runtimeAddress });
    this.#limit(START_LIMIT, () => this.#fail("time"));
  }

  /**
   * Ask pycore. With a `topic`, a later request of that topic replaces one that still waits. `request.needs` names
   * lazy parts; when one cannot be had, pycore answers without it and says so.
   */
  ask(request, { topic = "", blob = null } = {}) {
    return new Promise((resolve, reject) => {
      const job = { id: this.#nextId++, request, topic, blob, resolve, reject };
      if (topic) {
        const older = this.#waiting.findIndex((waiting) => waiting.topic === topic);
        if (older >= 0) this.#waiting.splice(older, 1)[0].reject(new Superseded());
      }
      this.#waiting.push(job);
      this.#next();
    });
  }

  /** Whether a lazy part is there, so that asking for what it makes would not fail for want of it. */
  holds(part) {
    return this.#parts.get(part) === "loaded";
  }

  #hear(data) {
    if (data.stage === "ready") {
      this.#ready = true;
      clearTimeout(this.#timer);
      this.#onState("ready");
      this.#next();
    } else if (data.part) {
      this.#parts.set(data.part, data.loaded ? "loaded" : "failed");
      this.#next();
    } else if (data.stage) {
      this.#limit(START_LIMIT, () => this.#fail("time"));
      this.#onState(data.stage, data.share);
    } else if (!this.#ready) {
      this.#fail(data.failed);
    } else if (this.#running && data.id === this.#running.id) {
      this.#settle(data);
    }
  }

  #settle(data) {
    const job = this.#running;
    this.#running = null;
    clearTimeout(this.#timer);
    if (data.failed) job.reject(new Error(data.failed));
    else job.resolve({ ...JSON.parse(data.text), blob: data.blob });
    this.#next();
  }

  #next() {
    if (!this.#ready || this.#running) return;
    const next = this.#waiting.findIndex((job) => this.#equipped(job));
    if (next < 0) return;
    const [job] = this.#waiting.splice(next, 1);
    this.#running = job;
    this.#worker.postMessage({ id: job.id, text: JSON.stringify(job.request), blob: job.blob });
    this.#limit(REPLY_LIMIT, () => {
      this.#running = null;
      job.reject(new Stuck());
      this.start();
    });
  }

  /** Whether all that a request needs has been loaded or given up; what was not asked for yet is asked for now. */
  #equipped(job) {
    const needs = job.request.needs ?? [];
    for (const part of needs) {
      const state = this.#parts.get(part);
      // Given up for an earlier request: this one tries anew.
      if (!state || (state === "failed" && !job.tried?.has(part))) {
        this.#parts.set(part, "asked");
        this.#worker.postMessage({ part });
      }
      (job.tried ??= new Set()).add(part);
    }
    return needs.every((part) => this.#parts.get(part) !== "asked");
  }

  #limit(time, then) {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(then, time);
  }

  #stop() {
    clearTimeout(this.#timer);
    this.#ready = false;
    this.#parts.clear();
    this.#worker?.terminate();
    this.#worker = null;
    if (this.#running) this.#waiting.unshift(this.#running);
    this.#running = null;
  }

  #fail(reason) {
    this.#stop();
    this.#onState("failed", reason);
  }
}
