// A link that could not be copied, as text below the buttons: with a way to copy it all the same, and to close it.

import { around, need } from "./elements.js";

const row = need("[data-link]");
const field = need("input", HTMLInputElement, row);
const said = need("[data-said]");
const opener = need('[data-action="share"], [data-do="share"]');

function select() {
  field.focus();
  field.select();
}

export function hide() {
  if (!row.hidden) row.hidden = true;
}

/** @param {string} link */
export function show(link) {
  row.hidden = false;
  field.value = link;
  select();
}

function close() {
  hide();
  opener.focus();
}

// On an address without encryption a page has no clipboard, but what is selected can be copied.
function copy() {
  select();
  if (!document.execCommand("copy")) return;
  close();
  said.textContent = said.dataset.copied ?? "";
}

row.addEventListener("click", (event) => {
  const pressed = around(event, "[data-link-do]")?.dataset.linkDo;
  if (pressed === "copy") copy();
  if (pressed === "close") close();
});
document.addEventListener("keydown", (event) => {
  if (event.key !== "Escape" || row.hidden || event.defaultPrevented) return;
  event.preventDefault();
  close();
}, true);
