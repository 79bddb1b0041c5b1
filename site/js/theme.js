// Night and day: the switch, kept on this device. Loaded before the page is painted, so that nothing flashes.
(() => {
  const root = document.documentElement;
  const key = "theme";

  function stored() {
    try {
      return localStorage.getItem(key);
    } catch {
      return null; // A browser may refuse storage; the system's choice then holds.
    }
  }

  /** @param {string} theme */
  function keep(theme) {
    try {
      localStorage.setItem(key, theme);
    } catch {
      // Not kept, but shown.
    }
  }

  const before = stored();
  if (before === "night" || before === "day") root.dataset.theme = before;

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
