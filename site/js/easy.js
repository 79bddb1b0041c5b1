// The moves for easy reading: one action on a line, ticked off as they are done, read aloud by the browser's own voice.
// Each use of a tool has a small picture. What is said comes from pycore. Ticks last as long as the page is open and the moves stay the same.

import { regionHTML } from "./bridge.js";
import { reveal } from "./column.js";
import { around, need } from "./elements.js";
import * as form from "./form.js";
import * as regions from "./regions.js";

/** @import { Bridge } from "./bridge.js" */

const root = document.documentElement;
const place = need("[data-easy]");
const aloud = need("[data-aloud]", HTMLButtonElement, place);
const voice = window.speechSynthesis && "SpeechSynthesisUtterance" in window ? window.speechSynthesis : null;

/** @type {Bridge | null} */
let bridge = null;
let asked = 0;

function hush() {
  voice?.cancel();
  aloud.textContent = aloud.dataset.aloud ?? "";
  for (const line of place.querySelectorAll("[data-now]")) line.removeAttribute("data-now");
}

function read() {
  if (!voice) return;
  const lines = /** @type {HTMLElement[]} */ ([...place.querySelectorAll("[data-spoken]")]);
  aloud.textContent = aloud.dataset.stop ?? "";
  for (const line of lines) {
    const saying = new SpeechSynthesisUtterance(line.dataset.spoken ?? "");
    saying.lang = root.lang;
    saying.onstart = () => line.setAttribute("data-now", "");
    saying.onend = () => {
      line.removeAttribute("data-now");
      if (line === lines.at(-1)) hush();
    };
    voice.speak(saying);
  }
}

/** A picture is made when its place comes into view: a phone makes none that nobody looks at. */
const looked = new IntersectionObserver(
  (entries) => {
    for (const { isIntersecting, target } of entries) {
      if (isIntersecting && target instanceof HTMLElement) picture(target);
    }
  },
  { rootMargin: "100px" },
);

/** @param {HTMLElement} box */
async function picture(box) {
  looked.unobserve(box);
  const mine = asked;
  const frame = Number(box.dataset.easyFrame);
  const reply = await bridge?.ask({ do: "easy", page: root.dataset.slug ?? "", form: form.read(), frame });
  if (mine === asked && reply?.ok) box.innerHTML = regionHTML(reply.regions.picture ?? "");
}

function watch() {
  looked.disconnect();
  for (const box of place.querySelectorAll("[data-easy-frame]:empty")) looked.observe(box);
}

/** The values may have changed: moves that are shown follow them. An answer that is hidden has no moves. */
export async function again() {
  if (place.hidden) return;
  if ("veiled" in root.dataset) {
    close();
    return;
  }
  const mine = ++asked;
  const reply = await bridge?.ask({ do: "easy", page: root.dataset.slug ?? "", form: form.read() });
  if (mine !== asked || !reply?.ok) return;
  for (const [name, html] of Object.entries(reply.regions)) {
    if (regions.replace(name, html)) hush();
  }
  watch();
}

function close() {
  hush();
  looked.disconnect();
  place.hidden = true;
  root.toggleAttribute("data-easy-reading", false);
}

/** Show the moves so. @param {Bridge} asks */
export async function open(asks) {
  bridge = asks;
  place.hidden = false;
  reveal(place);
  root.toggleAttribute("data-easy-reading", true);
  await again();
  if (!place.hidden) need("h2", HTMLElement, place).focus();
}

aloud.hidden = !voice;
place.addEventListener("click", (event) => {
  const tick = around(event, "[data-tick]");
  if (tick) tick.setAttribute("aria-pressed", String(tick.getAttribute("aria-pressed") !== "true"));
  else if (around(event, "[data-easy-close]")) close();
  else if (around(event, "[data-aloud]")) {
    if (aloud.textContent === aloud.dataset.stop) hush();
    else read();
  }
});
window.addEventListener("pagehide", hush);
