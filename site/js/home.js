// The front page: a code that was typed is opened on a page that can read it.

document.addEventListener("submit", (event) => {
  const place = event.target.closest("[data-code-page]");
  if (!place) return;
  event.preventDefault();
  const field = place.querySelector("input");
  if (field.value.trim()) location.assign(`${place.dataset.codePage}#v=1&code=${encodeURIComponent(field.value.trim())}`);
  else field.focus();
});
