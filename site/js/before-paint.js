// Stands in every page, before it is painted, so that nothing flashes: whether it is night or day, by the switch that is
// kept on this device. And if the link is that of a problem, its answer is held back from here on (veil.js): the
// example's answer, which may be the same, leaves the page before any other script runs.
(() => {
  const root = document.documentElement;
  const keys = new URLSearchParams(location.hash.slice(1));
  const isProblem = keys.get("sheet") === "problem";
  if ("veils" in root.dataset && (isProblem || keys.get("code")?.trim())) {
    root.dataset.veiled = isProblem ? "sheet" : "all";
    document.addEventListener("readystatechange", () => {
      const held = '[data-region="answer"], [data-region="notes"], [data-region="results"], [data-region="figures"], '
        + '[data-region="sheet"], [data-region="view"], [data-region="workings"]';
      for (const region of document.querySelectorAll(held)) region.replaceChildren();
    }, { once: true });
  }

  /** Whether what was kept before can be read, though nothing can be written. */
  function holdsOurs() {
    try {
      return Object.keys(localStorage).some((one) => one.startsWith("phasor-folio"));
    } catch {
      return false;
    }
  }

  const key = "phasor-folio-theme"; // as in kept.js
  const former = "theme"; // without our name until version 1.3

  // Where nothing is kept, or no more, every page says that in the place of what it would keep (page.css).
  try {
    localStorage.setItem("phasor-folio-try", "");
    localStorage.removeItem("phasor-folio-try");
  } catch {
    root.dataset.unkept = holdsOurs() ? "more" : "nothing";
  }

  /** @param {unknown} theme */
  const isOurs = (theme) => theme === "night" || theme === "day";

  function stored() {
    try {
      const found = localStorage.getItem(key);
      const older = localStorage.getItem(former);
      if (found !== null || !isOurs(older)) return found;
      localStorage.setItem(key, older ?? "");
      localStorage.removeItem(former);
      return older;
    } catch {
      return null; // A browser may refuse storage; the system's choice then holds.
    }
  }

  /** @param {string} theme */
  function keep(theme) {
    try {
      localStorage.setItem(key, theme);
    } catch {
      document.dispatchEvent(new Event("phasor-folio-not-kept")); // kept.js says so
    }
  }

  function show() {
    const theme = stored();
    if (isOurs(theme)) root.dataset.theme = theme ?? "";
    else delete root.dataset.theme;
  }

  show();
  addEventListener("storage", (event) => {
    if (event.key === null || event.key === key) show();
  });

  document.addEventListener("click", (event) => {
    if (!(event.target instanceof Element) || !event.target.closest("[data-theme-switch]")) return;
    const dark = root.dataset.theme
      ? root.dataset.theme === "night"
      : matchMedia("(prefers-color-scheme: dark)").matches;
    const theme = dark ? "day" : "night";
    root.dataset.theme = theme;
    keep(theme);
  });
})();
