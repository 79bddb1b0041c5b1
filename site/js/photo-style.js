// The style of the panel for a photograph, fetched when the panel is opened.

/** Wait for the style; without it the panel works too. */
export function styled() {
  return new Promise((resolve) => {
    const link = document.createElement("link");
    link.rel = "stylesheet";
    link.href = new URL("../css/photo.css", import.meta.url).href;
    link.onload = link.onerror = resolve;
    document.head.append(link);
  });
}
