// On a phone the drawing stays in view as a band at the top, once the reader has scrolled past it to the moves.

import { need } from "./elements.js";

const figure = need(".figure");
const view = need(".view", HTMLElement, figure);
const phone = matchMedia("(max-width: 47.99em)");
const SHARE = 0.45; // of the drawing that is still to be seen where the band takes its place

function follow() {
  const above = -figure.getBoundingClientRect().top;
  const is = phone.matches && view.childElementCount > 0 && above > (1 - SHARE) * (figure.offsetHeight || 1);
  if (is === figure.hasAttribute("data-band")) return;
  // The place keeps its height, so that nothing moves below it.
  figure.style.setProperty("min-height", is ? `${figure.offsetHeight}px` : "0");
  figure.toggleAttribute("data-band", is);
}

/** Begin to follow the page's scroll. */
export function listen() {
  document.addEventListener("scroll", follow, { passive: true });
  phone.addEventListener("change", follow);
}
