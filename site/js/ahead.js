// Fetches what Pyodide will ask for before it asks, and compiles its WebAssembly while that still arrives. Used by
// worker.js, in place of the worker's own fetch.

/** @import { Fetched, Places } from "../types/shared.js" */

/**
 * Counts what has come of WebAssembly and archives, which are nearly all that is awaited; `report(fetched)` hears it.
 * @param {Places} places
 * @param {(fetched: Fetched) => void} report
 */
export function countOf(places, report = () => {}) {
  let bytes = 0; // as the page uses them
  let packed = 0; // what is sent of each: as of the WebAssembly, which is most of it; no figure before that is known
  let all = places.whole;
  const tell = () => {
    if (!packed) return;
    const share = Math.min(1, bytes / all);
    report({ share, bytes: share * packed * all, whole: packed * all });
  };
  return {
    /** The warm data is awaited too. */
    expectWarm() {
      all = places.whole + places.warm;
      if (bytes) tell();
    },
    /** @param {number} sent of the WebAssembly; 0 if the host does not say it */
    pack(sent) {
      packed = Math.min(1, sent / places.size) || 1;
    },
    /** @param {number} more */
    add(more) {
      bytes += more;
      tell();
    },
  };
}

/** Bytes a second of what came over the network; 0 if nothing did, or the browser does not tell. */
export function measuredPace() {
  const came = performance.getEntriesByType("resource").filter((one) => one instanceof PerformanceResourceTiming && one.transferSize > 0);
  const files = /** @type {PerformanceResourceTiming[]} */ (came);
  const bytes = files.reduce((sum, one) => sum + one.encodedBodySize, 0);
  const taken = Math.max(...files.map((one) => one.responseEnd)) - Math.min(...files.map((one) => one.requestStart));
  return files.length ? (1000 * bytes) / taken : 0;
}

/**
 * Begin. `count` counts what comes; `anew`: what the browser has kept has failed, so it is fetched again. Gives two
 * promises: `come` is kept once all is here; `bad` never is, and broken when a file cannot be had or used: Pyodide would
 * only warn, and wait for ever.
 * @param {Places} places
 * @param {{ count?: ReturnType<typeof countOf>, anew?: boolean }} options
 * @returns {{ come: Promise<unknown>, bad: Promise<never> }}
 */
export function fetchAhead(places, { count = countOf(places), anew = false } = {}) {
  const wasm = `${places.runtime}pyodide.asm.wasm`;
  const archives = ["library", ...places.parts].map((part) => `${places.library}${part}.zip`);
  const fetchFirst = self.fetch.bind(self);
  /** @param {RequestInfo | URL} resource @param {RequestInit | undefined} options */
  const get = async (resource, options = undefined) => {
    const response = await fetchFirst(resource, anew ? { ...options, cache: "reload" } : options);
    const isWasm = String(resource) === wasm;
    if (isWasm) count.pack(sentOf(response));
    const body = response.ok && (isWasm || archives.includes(String(resource))) ? response.clone().body : null;
    if (body) follow(body, count.add);
    return withItsType(response);
  };
  /** @type {Map<string, Promise<Response>>} */
  const early = new Map();
  for (const address of [...archives, `${places.runtime}pyodide-lock.json`]) {
    early.set(address, quiet(get(address).then(whole)));
  }
  const compiled = quiet(WebAssembly.compileStreaming(get(wasm).then(whole)));
  self.fetch = (resource, options) => {
    const address = String(resource);
    if (address === wasm) return Promise.resolve(new Response());
    const found = early.get(address);
    early.delete(address);
    return found ?? get(resource, options);
  };
  WebAssembly.instantiateStreaming = async (_response, imports) => {
    const module = await compiled;
    return { module, instance: await WebAssembly.instantiate(module, imports) };
  };
  const come = quiet(Promise.all([compiled, ...early.values()]));
  return { come, bad: quiet(come.then(() => new Promise(() => {}))) };
}

// Whoever uses the promise hears of its failure; that nobody does so yet is no fault.
/** @template T @param {Promise<T>} promise */
function quiet(promise) {
  promise.catch(() => {});
  return promise;
}

/** @param {Response} response */
function whole(response) {
  if (response.ok) return response;
  throw new Error(`${response.status} ${response.url}`);
}

// The bytes that come over the network; 0 if the host does not say it.
/** @param {Response} response */
function sentOf(response) {
  return response.headers.has("content-encoding") ? Number(response.headers.get("content-length")) : 0;
}

// Many a host does not know the media type of WebAssembly, without which no browser compiles it.
/** @param {Response} response */
function withItsType(response) {
  if (!response.ok || !response.url.endsWith(".wasm")) return response;
  if (response.headers.get("content-type")?.startsWith("application/wasm")) return response;
  return new Response(response.body, { headers: { "content-type": "application/wasm" } });
}

// A copy of each response is counted as it arrives; the response itself stays the browser's own,
// so that compiled code can be kept with it.
/** @param {ReadableStream<Uint8Array>} body @param {(bytes: number) => void} note */
async function follow(body, note) {
  const reader = body.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      note(value.length);
    }
  } catch {
    // Whoever reads the response itself hears of it.
  }
}
