// The front page: a code that was typed is opened on a page that can read it.

import { around, need } from "./elements.js";

document.addEventListener("submit", (event) => {
  const place = around(event, "[data-code-page]");
  if (!place) return;
  event.preventDefault();
  const field = need("input", HTMLInputElement, place);
  if (field.value.trim()) location.assign(`${place.dataset.codePage}${encodeURIComponent(field.value.trim())}`);
  else field.focus();
});
