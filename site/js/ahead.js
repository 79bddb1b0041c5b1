// Fetches what Pyodide will ask for before it asks, and compiles its WebAssembly while that still arrives. Used by
// worker.js, in place of the worker's own fetch.

/** @import { Places } from "../types/shared.js" */

/**
 * Begin. `report(share)` hears how far the WebAssembly is, which is most of it all; `anew`: what the
 * browser has kept has failed, so it is fetched again. Gives a promise that is never kept, and broken when a file
 * cannot be had or used: Pyodide would only warn, and wait for ever.
 * @param {Places} places
 * @param {{ report?: (share: number) => void, anew?: boolean }} options
 * @returns {Promise<never>}
 */
export function fetchAhead(places, { report = () => {}, anew = false } = {}) {
  const wasm = `${places.runtime}pyodide.asm.wasm`;
  const fetchFirst = self.fetch.bind(self);
  /** @param {RequestInfo | URL} resource @param {RequestInit | undefined} options */
  const get = async (resource, options = undefined) => {
    const response = await fetchFirst(resource, anew ? { ...options, cache: "reload" } : options);
    const counted = response.ok && String(resource) === wasm ? response.clone().body : null;
    if (counted) count(counted, places.size, report);
    return withItsType(response);
  };
  /** @type {Map<string, Promise<Response>>} */
  const early = new Map();
  const archives = ["library", ...places.parts].map((part) => `${places.library}${part}.zip`);
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
  return quiet(Promise.all([compiled, ...early.values()]).then(() => new Promise(() => {})));
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

// Many a host does not know the media type of WebAssembly, without which no browser compiles it.
/** @param {Response} response */
function withItsType(response) {
  if (!response.ok || !response.url.endsWith(".wasm")) return response;
  if (response.headers.get("content-type")?.startsWith("application/wasm")) return response;
  return new Response(response.body, { headers: { "content-type": "application/wasm" } });
}

// A copy of each response is counted as it arrives; the response itself stays the browser's own,
// so that compiled code can be kept with it.
/** @param {ReadableStream<Uint8Array>} body @param {number} total @param {(share: number) => void} report */
async function count(body, total, report) {
  const reader = body.getReader();
  let bytes = 0;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      bytes += value.length;
      report(Math.min(1, bytes / total));
    }
  } catch {
    // Whoever reads the response itself hears of it.
  }
}
