// Lets the site be kept on the device, and offers a newer edition once all of it is there. What is typed goes along.

import { editionAddress, scriptURL } from "./trusted.js";

const PAUSE = 2_000; // ms in which the page can be used and nobody types before the rest of the site is fetched
const AGAIN = 3_600_000; // ms between looks for a newer edition on a page that stays open
const KEPT = "phasor-folio-typed";

const root = document.documentElement;
const offer = document.querySelector("[data-edition-offer]");
const workers = navigator.serviceWorker;

const controls = () => [...(document.getElementById("problem")?.elements ?? [])].filter((one) => one.name || one.id);
const toggles = (one) => one.type === "radio" || one.type === "checkbox";
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
  let kept = null;
  try {
    kept = JSON.parse(sessionStorage.getItem(KEPT));
    sessionStorage.removeItem(KEPT);
  } catch {
    return;
  }
  if (kept?.page !== root.dataset.slug || !Array.isArray(kept.values)) return;
  const values = new Map(kept.values.filter((pair) => Array.isArray(pair) && pair.length === 2));
  const changed = controls().filter((one) => {
    const value = values.get(keyOf(one));
    if (toggles(one) ? typeof value !== "boolean" || value === one.checked : typeof value !== "string" || value === one.value) return false;
    one[toggles(one) ? "checked" : "value"] = value;
    return !toggles(one) || value;
  });
  // The page's own script hears of it as if it were typed now.
  addEventListener("load", () => {
    for (const one of changed) one.dispatchEvent(new Event("input", { bubbles: true }));
  });
}

function whenUsable(then) {
  let typed = -PAUSE;
  document.addEventListener("input", () => (typed = performance.now()));
  const usable = () => ["ready", "failed", undefined].includes(root.dataset.python);
  const quiet = () => performance.now() - typed >= PAUSE;
  const wait = () => setTimeout(() => (usable() && quiet() ? then() : wait()), PAUSE);
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

/** Offer the edition of `waiting`, or, without it, the one that another window has taken over already. */
function offerIt(waiting) {
  offer.hidden = false;
  offer.querySelector("button").onclick = () => {
    if (waiting?.state !== "installed") {
      reload();
      return;
    }
    workers.addEventListener("controllerchange", reload, { once: true });
    waiting.postMessage("take over");
  };
}

function follow(registration) {
  if (registration.waiting && workers.controller) offerIt(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => {
      if (coming.state === "installed" && workers.controller) offerIt(coming);
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

async function register() {
  try {
    follow(await workers.register(scriptURL(editionAddress), { updateViaCache: "none" }));
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
if (workers && !navigator.connection?.saveData) whenUsable(register);
