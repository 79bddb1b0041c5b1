// How much of the site itself this device keeps, and whether the browser may erase it.

import { isWhole } from "./store.js";

const EDITIONS = /^phasor-folio-edition /;
const MEMORIES = /^phasor-folio-memory /;
const MEGABYTE = 1_000_000;
const ROOT = new URL("../", location.href).href;

/** @param {RegExp} kind */
async function sizeOf(kind) {
  let bytes = 0;
  let files = 0;
  try {
    // Another copy of the site at the same host keeps its own.
    for (const name of await caches.keys()) {
      if (!kind.test(name) || !name.includes(`${ROOT}`)) continue;
      const cache = await caches.open(name);
      for (const request of await cache.keys()) {
        const response = await cache.match(request);
        bytes += response ? (await response.blob()).size : 0;
        files += 1;
      }
    }
  } catch {
    // A browser that refuses its store keeps nothing in it.
  }
  return { size: Math.round(bytes / MEGABYTE), files };
}

/** How many MB and files of the site, and of the started calculator, are here; whether the browser promised to keep them. */
export async function look() {
  const [site, memory] = await Promise.all([sizeOf(EDITIONS), sizeOf(MEMORIES)]);
  const [whole, stays] = await Promise.all([
    unlessRefused(async () => {
      const active = (await navigator.serviceWorker?.getRegistration())?.active;
      return Boolean(active && (await isWhole(active)));
    }),
    unlessRefused(async () => navigator.storage?.persisted()),
  ]);
  return { site, memory, whole, stays };
}

/** @template T @param {() => Promise<T>} asked @returns {Promise<T | undefined>} */
async function unlessRefused(asked) {
  try {
    return await asked();
  } catch {
    return undefined;
  }
}

/** Ask the browser to keep it. */
export const stay = () => unlessRefused(async () => navigator.storage?.persist());

/** Take the site off this device, and the started calculator. */
export async function remove() {
  try {
    const registration = await navigator.serviceWorker?.getRegistration();
    await registration?.unregister();
    for (const name of await caches.keys()) if (name.startsWith("phasor-folio-")) await caches.delete(name);
  } catch {
    // As above: then there was nothing.
  }
  delete document.documentElement.dataset.offline;
}
