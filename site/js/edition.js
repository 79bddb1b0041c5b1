// Lets the site be kept on the device, and offers a newer edition once all of it is there. What is typed goes along.

import { need } from "./elements.js";
import { editionAddress, scriptURL } from "./trusted.js";

/** @import { Control, InputControl } from "../types/shared.js" */

const PAUSE = 2_000; // ms in which the page can be used and nobody types before the rest of the site is fetched
const AGAIN = 3_600_000; // ms between looks for a newer edition on a page that stays open
const KEPT = "phasor-folio-typed";

const root = document.documentElement;
const offer = need("[data-edition-offer]");
const workers = /** @type {ServiceWorkerContainer | undefined} */ (navigator.serviceWorker); // not on plain http

/** @returns {Control[]} */
function controls() {
  const form = document.getElementById("problem");
  const all = /** @type {Control[]} */ (form instanceof HTMLFormElement ? [...form.elements] : []);
  return all.filter((one) => one.name || one.id);
}
/** @param {Control} one @returns {one is InputControl} */
const toggles = (one) => one.type === "radio" || one.type === "checkbox";
/** @param {Control} one */
const keyOf = (one) => (toggles(one) ? `${one.name} ${one.value}` : one.name || one.id);

function keepTyped() {
  const values = controls().map((one) => [keyOf(one), toggles(one) ? one.checked : one.value]);
  try {
    sessionStorage.setItem(KEPT, JSON.stringify({ page: root.dataset.slug, values }));
  } catch {
    // The address still holds every value that could be used.
  }
}

function takeTyped() {
  let kept;
  try {
    kept = JSON.parse(sessionStorage.getItem(KEPT) ?? "null");
    sessionStorage.removeItem(KEPT);
  } catch {
    return;
  }
  if (kept?.page !== root.dataset.slug || !Array.isArray(kept.values)) return;
  const values = new Map(kept.values.filter((/** @type {unknown} */ pair) => Array.isArray(pair) && pair.length === 2));
  const changed = controls().filter((one) => {
    const value = values.get(keyOf(one));
    if (toggles(one) ? typeof value !== "boolean" || value === one.checked : typeof value !== "string" || value === one.value) return false;
    if (toggles(one)) one.checked = value;
    else one.value = value;
    return !toggles(one) || value;
  });
  // The page's own script hears of it as if it were typed now.
  addEventListener("load", () => {
    for (const one of changed) one.dispatchEvent(new Event("input", { bubbles: true }));
  });
}

/** @param {() => void} then */
function whenUsable(then) {
  let typed = -PAUSE;
  document.addEventListener("input", () => (typed = performance.now()));
  const usable = () => [undefined, "ready", "failed"].includes(root.dataset.python);
  const quiet = () => performance.now() - typed >= PAUSE;
  const wait = () => {
    setTimeout(() => (usable() && quiet() ? then() : wait()), PAUSE);
  };
  if (document.readyState === "complete") wait();
  else addEventListener("load", wait);
}

let leaving = false;

function reload() {
  if (leaving) return;
  leaving = true;
  keepTyped();
  location.reload();
}

/**
 * Offer the edition of `waiting`, or, without it, the one that another window has taken over already.
 * @param {ServiceWorker | null} waiting
 */
function offerIt(waiting) {
  offer.hidden = false;
  need("button", HTMLButtonElement, offer).onclick = () => {
    if (waiting?.state !== "installed") {
      reload();
      return;
    }
    workers?.addEventListener("controllerchange", reload, { once: true });
    waiting.postMessage("take over");
  };
}

/** @param {ServiceWorkerRegistration} registration */
function follow(registration) {
  if (registration.waiting && workers?.controller) offerIt(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => {
      if (coming.state === "installed" && workers?.controller) offerIt(coming);
      if (coming.state === "activated") root.dataset.offline = "ready";
    });
  });
  if (registration.active) root.dataset.offline = "ready";
  let looked = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.hidden || Math.abs(Date.now() - looked) < AGAIN) return;
    looked = Date.now();
    registration.update().catch(() => {});
  });
}

/** @param {ServiceWorkerContainer} keeper */
async function register(keeper) {
  try {
    follow(await keeper.register(scriptURL(editionAddress), { updateViaCache: "none" }));
  } catch {
    root.dataset.offline = "refused"; // A private window, a full disk: the site works as long as there is a network.
  }
}

takeTyped();
if (workers?.controller) {
  // This page is of the edition that is kept: if no other window is open, older ones are wanted no more.
  workers.controller.postMessage("opened");
  workers.addEventListener("controllerchange", () => offerIt(null));
}
if (workers && !navigator.connection?.saveData) whenUsable(() => register(workers));
