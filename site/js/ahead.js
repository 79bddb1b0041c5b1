// Fetches what Pyodide will ask for before it asks, and compiles its WebAssembly while that still arrives. Used by
// worker.js, in place of the worker's own fetch.

/** @import { Fetched, Places } from "../types/shared.js" */

/**
 * Begin. `report(fetched)` hears how far WebAssembly and archives are, which are nearly all of it; `anew`: what the
 * browser has kept has failed, so it is fetched again. Gives two promises: `come` is kept once all is here; `bad` never
 * is, and broken when a file cannot be had or used: Pyodide would only warn, and wait for ever.
 * @param {Places} places
 * @param {{ report?: (fetched: Fetched) => void, anew?: boolean }} options
 * @returns {{ come: Promise<unknown>, bad: Promise<never> }}
 */
export function fetchAhead(places, { report = () => {}, anew = false } = {}) {
  const wasm = `${places.runtime}pyodide.asm.wasm`;
  const archives = ["library", ...places.parts].map((part) => `${places.library}${part}.zip`);
  const fetchFirst = self.fetch.bind(self);
  let bytes = 0; // as the page uses them
  let packed = 1; // what is sent of each by a host that compresses: as of the WebAssembly, which is most of it
  /** @param {number} more */
  const note = (more) => {
    bytes += more;
    const share = Math.min(1, bytes / places.whole);
    report({ share, bytes: share * packed * places.whole, whole: packed * places.whole });
  };
  /** @param {RequestInfo | URL} resource @param {RequestInit | undefined} options */
  const get = async (resource, options = undefined) => {
    const response = await fetchFirst(resource, anew ? { ...options, cache: "reload" } : options);
    const isWasm = String(resource) === wasm;
    if (isWasm) packed = Math.min(1, sentOf(response) / places.size) || 1;
    const counted = response.ok && (isWasm || archives.includes(String(resource))) ? response.clone().body : null;
    if (counted) count(counted, note);
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
async function count(body, note) {
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
