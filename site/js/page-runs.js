// Runs as the last of a page's modules: all others have begun, so nothing is left to watch (watch.js).

const root = document.documentElement;

if (root.dataset.script) root.dataset.script = "runs";
document.querySelector("[data-start-notice]")?.remove();

export {};
