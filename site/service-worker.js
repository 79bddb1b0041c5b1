// Keeps the whole site on the device, one edition at a time and never two mixed. The build writes EDITION above this:
// its name, the security policy, and every file with the digest of its contents.


const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const ROOT = new URL("./", location.href).href;
const PREFIX = `phasor-folio-edition ${ROOT} `;
const CACHE = PREFIX + EDITION.name;
const AT_ONCE = 4;

/** @param {string} path */
const addressOf = (path) => new URL(path, ROOT).href;
/** @param {string} path */
const named = (path) => /^(?:a|lib|py)\//.test(path); // the name changes with the contents

/** @param {ArrayBuffer} bytes */
async function digestOf(bytes) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
  return [...digest.slice(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

// The response if it is whole and of this edition, else null. Scripts and pages get the policy from here where the
// host does not send it; everything else stays the response that it was, with what a browser keeps beside it.
/** @param {string} path @param {Response | undefined} response */
async function ours(path, response) {
  if (!response?.ok || response.redirected) return null;
  const bytes = await response.clone().arrayBuffer();
  if ((await digestOf(bytes)) !== EDITION.files[path]) return null;
  const type = response.headers.get("content-type") ?? "";
  if (!/html|javascript/.test(type) || response.headers.get("content-security-policy")) return response;
  const headers = new Headers(response.headers);
  headers.set("content-security-policy", EDITION.policy);
  headers.delete("content-encoding");
  headers.delete("content-length");
  return new Response(bytes, { headers });
}

const editions = async () => (await caches.keys()).filter((name) => name.startsWith(PREFIX));

/** @param {string} path */
async function fromOlder(path) {
  for (const name of await editions()) {
    if (name === CACHE) continue;
    const found = await ours(path, await (await caches.open(name)).match(addressOf(path)));
    if (found) return found;
  }
  return null;
}

/**
 * One file of this edition: from an older one on the device, from the browser's own cache, from the host.
 * @param {string} path
 */
async function obtain(path) {
  const found = await fromOlder(path);
  if (found) return found;
  /** @type {RequestCache[]} */
  const ways = [named(path) ? "force-cache" : "no-cache", "reload"];
  for (const cache of ways) {
    const response = await ours(path, await fetch(addressOf(path), { cache }));
    if (response) return response;
  }
  throw new Error(`${path || "the front page"} is not what this edition says it is`);
}

// What an interrupted visit has brought already stays: on a poor network every visit gets further.
async function fetchWhole() {
  const cache = await caches.open(CACHE);
  const had = new Set((await cache.keys()).map((request) => request.url));
  const wanted = Object.keys(EDITION.files).filter((path) => !had.has(addressOf(path)));
  const bring = async () => {
    for (let path = wanted.pop(); path !== undefined; path = wanted.pop()) {
      await cache.put(addressOf(path), await obtain(path));
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, bring));
}

// A window that is open keeps the edition that it came from: its parts may still be wanted.
async function tidy(asking = "") {
  const open = await worker.clients.matchAll({ type: "window", includeUncontrolled: true });
  if (open.some((client) => client.id !== asking)) return;
  for (const name of await editions()) if (name !== CACHE) await caches.delete(name);
}

worker.addEventListener("install", (event) => event.waitUntil(fetchWhole()));
worker.addEventListener("activate", (event) => event.waitUntil(tidy().then(() => worker.clients.claim())));
worker.addEventListener("message", (event) => {
  if (event.data === "take over") event.waitUntil(worker.skipWaiting());
  if (event.data === "opened" && event.source instanceof Client) event.waitUntil(tidy(event.source.id));
});

/**
 * The file of this edition that a request is for; undefined when it is none.
 * @param {Request} request
 */
function pathOf(request) {
  if (request.method !== "GET" || !request.url.startsWith(ROOT)) return undefined;
  const path = request.url.slice(ROOT.length).replace(/[?#].*$/, "").replace(/(^|\/)index\.html$/, "$1");
  if (Object.hasOwn(EDITION.files, path)) return path;
  return Object.hasOwn(EDITION.files, `${path}/`) ? `${path}/` : undefined;
}

/** @param {string} path */
async function keepAnew(path) {
  const response = await ours(path, await fetch(addressOf(path), { cache: "reload" }));
  if (!response) throw new Error("not of this edition");
  await (await caches.open(CACHE)).put(addressOf(path), response.clone());
  return response;
}

// From the device; what is missing there, or has failed and is asked for anew, comes from the host and is kept.
/** @param {Request} request @param {string} path */
async function answer(request, path) {
  const cached = async () => (await caches.open(CACHE)).match(addressOf(path));
  const anew = request.cache === "reload" && request.mode !== "navigate";
  const found = anew ? null : await cached().catch(() => null);
  if (found) return found;
  try {
    return await keepAnew(path);
  } catch {
    return (await cached().catch(() => null)) ?? fetch(request);
  }
}

// A window of an older edition may ask for its own files.
/** @param {Request} request */
async function olderOrHost(request) {
  for (const name of await editions().catch(() => [])) {
    const found = await (await caches.open(name)).match(request.url);
    if (found) return found;
  }
  return fetch(request);
}

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const path = pathOf(request);
  if (path === undefined) {
    if (request.method === "GET" && request.url.startsWith(ROOT) && named(request.url.slice(ROOT.length))) {
      event.respondWith(olderOrHost(request));
    }
    return;
  }
  if (request.mode === "navigate") {
    // A page without its closing slash would look for its files in the wrong place.
    if (path.endsWith("/") && !/\/(?:index\.html)?(?:[?#]|$)/.test(request.url)) {
      event.respondWith(Response.redirect(addressOf(path), 302));
      return;
    }
  }
  event.respondWith(answer(request, path));
});
