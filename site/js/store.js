// Whether the site is stored on this device: asked before it is loaded over a connection that is metered or slow, kept,
// and to be changed at the foot of every page.

import { around, need } from "./elements.js";
import * as kept from "./kept.js";

const CACHES = /^phasor-folio-(?:edition|store)/;
const ASKED = "phasor-folio-store"; // a cache by this name tells the service worker that it may load over any connection

const SLOW = 64_000; // bytes a second, measured while Python was loaded: half a megabit

const root = document.documentElement;
const question = need("[data-store-ask]");
const line = need("[data-stored-line]");
const said = need("span", HTMLElement, line);
/** @param {string} what */
const button = (what) => need(`[data-store="${what}"]`, HTMLElement, line);

/** "yes" or "no", once it was chosen. */
const choice = () => kept.read("store");

/** Whether what is loaded over this connection may cost something, or keeps others waiting: not every browser says so. */
function isDear() {
  const { saveData = false, effectiveType = "" } = navigator.connection ?? {};
  const pace = Number(root.dataset.pace);
  return saveData || /^(?:slow-2g|2g|3g)$/.test(effectiveType) || (pace > 0 && pace < SLOW);
}

/**
 * Show whether the site is stored, or cannot be.
 * @param {"stored" | "partly" | "notStored" | "refused"} is
 */
export function show(is) {
  line.hidden = false;
  said.textContent = said.dataset[is] ?? "";
  button("yes").hidden = is !== "notStored";
  button("no").hidden = is !== "stored" && is !== "partly";
}

/**
 * Whether all of the site is on this device and undamaged; what is not is fetched anew first.
 * @param {ServiceWorker} keeping
 * @returns {Promise<boolean>}
 */
export function isWhole(keeping) {
  return new Promise((tell) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }) => tell(data === true);
    keeping.postMessage("is it whole?", [port2]);
  });
}

/** The browser keeps nothing for this site: it works as long as there is a network. */
export function refused() {
  root.dataset.offline = "refused";
  question.hidden = true;
  show("refused");
}

/**
 * Whether the site may be stored without a word; where it may not, that is asked.
 * @param {boolean} isStored
 */
export function mayBegin(isStored) {
  show(isStored ? "stored" : "notStored");
  const may = isStored || choice() === "yes" || (choice() !== "no" && !isDear());
  question.hidden = may || choice() === "no";
  return may;
}

async function remove() {
  const registration = await navigator.serviceWorker.getRegistration();
  await registration?.unregister();
  for (const name of await caches.keys()) if (CACHES.test(name)) await caches.delete(name);
  delete root.dataset.offline;
  show("notStored");
}

/**
 * Listen to the buttons; `begin()` stores the site.
 * @param {() => unknown} begin
 */
export function join(begin) {
  for (const place of [question, line]) {
    for (const one of place.querySelectorAll("p, button")) {
      if (one.childElementCount === 0) one.textContent = (one.textContent ?? "").replace("{whole}", root.dataset.editionSize ?? "");
    }
  }
  document.addEventListener("click", async (event) => {
    const pressed = around(event, "[data-store]")?.dataset.store;
    if (!pressed) return;
    question.hidden = true;
    kept.write("store", pressed === "yes" ? "yes" : "no", null);
    try {
      if (pressed === "no") {
        await remove();
        return;
      }
      await caches.open(ASKED);
      button("yes").hidden = true;
      await begin();
    } catch {
      refused();
    }
  });
}
