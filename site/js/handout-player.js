// The player of a handout: one step at a time. It stands inside the handout, which is complete without it.
(() => {
  /**
   * The first element that a selector names.
   * @param {string} selector
   * @param {ParentNode} [within]
   * @returns {HTMLElement}
   */
  function need(selector, within = document) {
    const found = within.querySelector(selector);
    if (!found) throw new TypeError(`this handout has no ${selector}`);
    return found;
  }

  const steps = [...document.querySelectorAll("[data-player-step]")];
  const bar = need("[data-player-bar]");
  const live = need("[data-player-live]");
  /** @param {string} name */
  const button = (name) => need(`[data-player-do="${name}"]`);
  const near = (/** @type {Event} */ { target }, /** @type {string} */ selector) =>
    target instanceof Element ? target.closest(selector) : null;
  let now = 0;
  let one = true;

  /** @param {string} name @param {boolean} is */
  function disable(name, is) {
    if (is) button(name).setAttribute("aria-disabled", "true");
    else button(name).removeAttribute("aria-disabled");
  }

  /** @param {boolean} announce */
  function show(announce) {
    steps.forEach((step, index) => (step.hidden = one && index !== now));
    const all = button("all");
    all.textContent = (one ? all.dataset.all : all.dataset.one) ?? "";
    disable("back", !one || now === 0);
    disable("next", !one || now === steps.length - 1);
    if (announce) live.textContent = need(".words", steps[now]).innerText;
  }

  /** @param {number} step */
  function go(step) {
    const wanted = Math.min(Math.max(step, 0), steps.length - 1);
    if (!one || wanted === now) return;
    now = wanted;
    show(true);
  }

  /** @type {Record<string, () => void>} */
  const doings = {
    next: () => go(now + 1),
    back: () => go(now - 1),
    first: () => go(0),
    last: () => go(steps.length - 1),
    all() {
      one = !one;
      show(false);
    },
    print: () => window.print(),
  };
  /** @type {Record<string, string>} */
  const keys = {
    ArrowRight: "next", PageDown: "next", ArrowLeft: "back", PageUp: "back", Home: "first", End: "last",
  };

  document.addEventListener("click", (event) => {
    const pressed = near(event, "[data-player-do]");
    if (pressed && pressed.getAttribute("aria-disabled") !== "true") doings[pressed.dataset.playerDo ?? ""]();
  });
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const free = event.target === document.body || near(event, "[data-player-bar]");
    const onButton = near(event, "button");
    const doing = event.key === " " && !onButton ? (event.shiftKey ? "back" : "next") : keys[event.key];
    if (!one || !free || !doing) return;
    event.preventDefault();
    doings[doing]();
  });
  bar.hidden = false;
  button("print").hidden = false;
  show(false);
})();
