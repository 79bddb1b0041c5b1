// Keeps the whole site on the device, one edition at a time and never two mixed. The build writes EDITION above this:
// its name, the security policy, every file with the digest of its contents, and the bytes of the large ones.


const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));
const ROOT = new URL("./", location.href).href;
const PREFIX = `phasor-folio-edition ${ROOT} `;
const CACHE = PREFIX + EDITION.name;
const LETTERS = `phasor-folio-letters ${ROOT}`;
const AT_ONCE = 4;
const ASKED = "phasor-folio-store"; // as in store.js: a cache by this name says that any connection will do
const DEAR = 5_000_000; // bytes that are not loaded unasked over a connection that is metered or slow

/** @param {string} path */
const addressOf = (path) => new URL(path, ROOT).href;
/** @param {string} path */
const named = (path) => /^(?:a|lib|py|letters|codes)\//.test(path); // the name changes with the contents

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

// Whether so much is wanted over such a connection that nobody should be made to load it: the page asks, or a later visit
// has a better one.
/** @param {string[]} wanted */
async function isTooDear(wanted) {
  const { saveData = false, effectiveType = "" } = navigator.connection ?? {};
  if (!saveData && !/^(?:slow-2g|2g|3g)$/.test(effectiveType)) return false;
  if (await caches.has(ASKED)) return false;
  const older = await Promise.all((await editions()).map(async (name) => (await caches.open(name)).keys()));
  const there = new Set(older.flat().map((request) => request.url));
  const missing = wanted.filter((path) => !(named(path) && there.has(addressOf(path))));
  return missing.reduce((bytes, path) => bytes + (EDITION.bytes[path] ?? 0), 0) > DEAR;
}

// What an interrupted visit has brought already stays: on a poor network every visit gets further.
async function fetchWhole() {
  const cache = await caches.open(CACHE);
  const had = new Set((await cache.keys()).map((request) => request.url));
  const wanted = Object.keys(EDITION.files).filter((path) => !had.has(addressOf(path)));
  if (await isTooDear(wanted)) throw new Error("too much for this connection, unasked");
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
  const { data, source } = event;
  if (data === "take over") event.waitUntil(worker.skipWaiting());
  if (!(source instanceof Client)) return;
  if (data === "opened") event.waitUntil(tidy(source.id));
  if (data === "is it whole?") event.waitUntil(isWhole().then((whole) => event.ports[0]?.postMessage(whole)));
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

const sound = new Set(); // the files that were found whole since a page was last opened

/**
 * A file as it is kept; null where it is missing or damaged.
 * @param {string} path
 */
async function kept(path) {
  try {
    const found = await caches.match(addressOf(path), { cacheName: CACHE });
    if (!found || sound.has(path)) return found ?? null;
    const whole = await ours(path, found);
    if (whole) sound.add(path);
    return whole;
  } catch {
    return null; // The storage is out of order.
  }
}

/** @param {string} path @param {Response} response */
async function keep(path, response) {
  // One that somebody has removed meanwhile stays away.
  if (await caches.has(CACHE)) await (await caches.open(CACHE)).put(addressOf(path), response);
}

/** @param {string} path */
async function keepAnew(path) {
  const response = await ours(path, await fetch(addressOf(path), { cache: "reload" }));
  if (!response) throw new Error("not of this edition");
  await keep(path, response.clone());
  return response;
}

// From the device; what is missing or damaged there, or has failed and is asked for anew, comes from the host and is kept.
/** @param {Request} request @param {string} path */
async function answer(request, path) {
  const anew = request.cache === "reload" && request.mode !== "navigate";
  const found = anew ? null : await kept(path);
  if (found) return found;
  try {
    return await keepAnew(path);
  } catch {
    return (await kept(path)) ?? fetch(request);
  }
}

/** @type {Promise<boolean> | null} */
let looking = null;

/** Whether all of this edition is on the device and undamaged; what is not is fetched anew, once nothing else is at work. */
function isWhole() {
  looking ??= mend().finally(() => (looking = null));
  return looking;
}

async function mend() {
  sound.clear();
  const wanted = [];
  for (const path of Object.keys(EDITION.files)) if (!(await kept(path))) wanted.push(path);
  try {
    if (wanted.length && (await isTooDear(wanted))) return false;
    for (const path of wanted) await keep(path, await obtain(path));
    return await caches.has(CACHE);
  } catch {
    return false; // Without a network, or the host has another edition by now.
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

// What sets names in other scripts, and what reads QR codes, is in no edition: it is kept once it was used, under an address
// for ever its own.
/** @param {Request} request */
async function whenUsed(request) {
  const cache = await caches.open(LETTERS).catch(() => null);
  const found = await cache?.match(request.url);
  if (found) return found;
  const response = await fetch(request);
  if (response.ok && cache) await cache.put(request.url, response.clone()).catch(() => {});
  return response;
}

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && /^(?:letters|codes)\//.test(request.url.slice(ROOT.length)) && request.url.startsWith(ROOT)) {
    event.respondWith(whenUsed(request));
    return;
  }
  const path = pathOf(request);
  if (path === undefined) {
    if (request.method === "GET" && request.url.startsWith(ROOT) && named(request.url.slice(ROOT.length))) {
      event.respondWith(olderOrHost(request));
    }
    return;
  }
  if (request.mode === "navigate") {
    sound.clear();
    // A page without its closing slash would look for its files in the wrong place.
    if (path.endsWith("/") && !/\/(?:index\.html)?(?:[?#]|$)/.test(request.url)) {
      event.respondWith(Response.redirect(addressOf(path), 302));
      return;
    }
  }
  event.respondWith(answer(request, path));
});
