// Lets the site be kept on the device, and offers a newer edition once all of it is there. What is typed goes along. Where
// loading it may cost something, that is asked first (store.js).

import * as carried from "./carried.js";
import { need } from "./elements.js";
import * as store from "./store.js";
import { editionAddress, scriptURL } from "./trusted.js";

const PAUSE = 2_000; // ms in which the page can be used and nobody types before the rest of the site is fetched
const AGAIN = 3_600_000; // ms between looks for a newer edition on a page that stays open
const ASK_AGAIN = 1_000; // ms after which a newer edition is asked anew to take over
const LONGEST_RELOAD = 8_000; // ms after which the page, which comes from the device, is asked for once more
const MOST_ASKED = 6; // times, then the page is loaded anew from whichever edition has it

const root = document.documentElement;
const offer = need("[data-edition-offer]");
const workers = keeper();

/** What keeps the site; null in another's page, where the browser has none (on plain http) or blocks all that sites keep. */
function keeper() {
  if (root.dataset.embedded) return null;
  try {
    return /** @type {ServiceWorkerContainer | undefined} */ (navigator.serviceWorker) ?? null;
  } catch {
    return null;
  }
}

/** @param {() => void} then */
function whenUsable(then) {
  let typed = -PAUSE;
  document.addEventListener("input", () => (typed = performance.now()));
  // What the answer waits for comes first.
  const usable = () => {
    const { python, answer } = root.dataset;
    return python === undefined || python === "failed" || (python === "ready" && answer !== "pending");
  };
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
  carried.keep();
  location.reload();
  // Seen in Chromium where the newer edition takes over just then: it never asks for the page.
  setTimeout(() => location.reload(), LONGEST_RELOAD);
}

let warned = false;

/** Why the newer edition is not taken over now: what is in hand is finished first; what cannot be kept goes at a second press. */
function whyNot() {
  const held = carried.inHand();
  if (held || warned || carried.keep()) return held;
  warned = true;
  return offer.dataset.lost ?? "";
}

/**
 * Offer the edition of `waiting`, or, without it, the one that another window has taken over already.
 * @param {ServiceWorker | null} waiting
 */
function offerIt(waiting) {
  offer.hidden = false;
  need("button", HTMLButtonElement, offer).onclick = () => {
    const why = whyNot();
    if (why) {
      need("p", HTMLElement, offer).textContent = why;
      return;
    }
    if (waiting?.state !== "installed") {
      reload();
      return;
    }
    workers?.addEventListener("controllerchange", reload, { once: true });
    takeOver(waiting);
  };
}

// A browser lets a newer edition wait while the older one is at work, and may not notice when that is over. The press is
// never without effect.
/** @param {ServiceWorker} waiting @param {number} [asked] times before */
function takeOver(waiting, asked = 0) {
  if (asked === MOST_ASKED) reload();
  if (leaving) return;
  waiting.postMessage("take over");
  setTimeout(() => takeOver(waiting, asked + 1), ASK_AGAIN);
}

// What is kept may have been damaged or erased since: only what is whole works without a network.
/** @param {ServiceWorker} keeping */
async function ask(keeping) {
  const whole = await store.isWhole(keeping);
  root.dataset.offline = whole ? "ready" : "partly";
  store.show(whole ? "stored" : "partly");
}

/** @param {ServiceWorkerRegistration} registration */
function follow(registration) {
  if (registration.waiting && workers?.controller) offerIt(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => {
      if (coming.state === "installed" && workers?.controller) offerIt(coming);
      if (coming.state === "activated") ask(coming);
    });
  });
  if (registration.active) ask(registration.active);
  let looked = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.hidden || Math.abs(Date.now() - looked) < AGAIN) return;
    looked = Date.now();
    registration.update().catch(() => {});
  });
}

/** @param {ServiceWorkerContainer} by */
async function register(by) {
  try {
    follow(await by.register(scriptURL(editionAddress), { updateViaCache: "none" }));
  } catch (error) {
    // Without a network the script cannot be had, which another visit tries again; else the browser keeps nothing.
    if (!(error instanceof TypeError)) store.refused();
  }
}

carried.take();
if (workers?.controller) {
  // This page is of the edition that is kept: if no other window is open, older ones are wanted no more.
  workers.controller.postMessage("opened");
  workers.addEventListener("controllerchange", () => offerIt(null));
}
if (workers) {
  store.join(() => register(workers));
  whenUsable(() => store.mayBegin(Boolean(workers.controller)) && register(workers));
} else if (!root.dataset.embedded) {
  store.refused();
}
