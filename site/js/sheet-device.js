// At a calculator's sheet: says that prints are corrected, and shows the sheet at true size on this screen.

import * as device from "./device.js";
import { around, need } from "./elements.js";
import { go } from "./embedded.js";

const figure = need(".figure");
const corrected = need("[data-corrected]");
const bar = need("[data-true-size-bar]");
const main = need("[data-true-size-switch]");

/** @param {number} factor */
const percent = (factor) => {
  const written = Math.abs((factor - 1) * 100).toFixed(1);
  if (Number(written) === 0) return written;
  return (factor > 1 ? "+" : "−") + written;
};

function showCorrection() {
  const printer = device.printer();
  corrected.hidden = !printer;
  need("[data-set-up-link]").hidden = Boolean(printer);
  if (!printer) return;
  const sentence = (corrected.dataset.words ?? "")
    .replace("{along}", percent(printer.along))
    .replace("{across}", percent(printer.across));
  need("span", HTMLElement, corrected).textContent = sentence;
}

const isOn = () => figure.hasAttribute("data-true-size");

// The star point and its arrows are what is laid on paper: they are brought to the middle of the box.
function centre() {
  const box = figure.querySelector(".paper-scroll");
  const drawing = figure.querySelector('svg[data-sheet] [data-phasor="sum"]') ?? figure.querySelector("svg[data-sheet]");
  if (!box || !drawing) return;
  const [outer, inner] = [box.getBoundingClientRect(), drawing.getBoundingClientRect()];
  box.scrollLeft += inner.left + inner.width / 2 - (outer.left + outer.width / 2);
  box.scrollTop += inner.top + inner.height / 2 - (outer.top + outer.height / 2);
}

function size() {
  const screen = device.screen();
  if (!screen) return false;
  figure.style.setProperty("--px-per-mm", String(screen.pxPerMm));
  const zoomed = Math.abs((globalThis.visualViewport?.scale ?? 1) - 1) > 0.001;
  need("[data-changed]", HTMLElement, bar).hidden = !screen.changed && !zoomed;
  return true;
}

/** The papers that are shown now give the sheet's place its shape. */
export function shape() {
  const papers = [...figure.querySelectorAll("[data-page]")].map((paper) => paper.dataset.page).join(" ");
  const page = need("main");
  if (page.dataset.papers !== papers) page.dataset.papers = papers;
}

/** @param {boolean} on */
function turn(on) {
  figure.toggleAttribute("data-true-size", on);
  bar.hidden = !on;
  main.setAttribute("aria-pressed", String(on));
  if (!on) return;
  bar.scrollIntoView({ block: "start" });
  centre();
}

function toggle() {
  if (isOn()) {
    turn(false);
    (main.checkVisibility() ? main : need("[data-more] > summary")).focus();
  } else if (size()) {
    turn(true);
    need("button", HTMLElement, bar).focus({ preventScroll: true });
  } else {
    go(main.dataset.setUp ?? "");
  }
}

function follow() {
  device.load();
  showCorrection();
  if (isOn() && !size()) turn(false);
}

document.addEventListener("click", (event) => {
  const button = around(event, '[data-action="true-size"]');
  if (button && button.getAttribute("aria-disabled") !== "true") toggle();
});
globalThis.visualViewport?.addEventListener("resize", () => isOn() && size());
window.addEventListener("resize", () => isOn() && size());
window.addEventListener("storage", follow);
window.addEventListener("pageshow", follow);
showCorrection();
