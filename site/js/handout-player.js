// The player of a handout: one step at a time. It stands inside the handout, which is complete without it.
(() => {
  const steps = [...document.querySelectorAll("[data-player-step]")];
  const bar = document.querySelector("[data-player-bar]");
  const live = document.querySelector("[data-player-live]");
  const button = (name) => document.querySelector(`[data-player-do="${name}"]`);
  let now = 0;
  let one = true;

  function disable(name, is) {
    if (is) button(name).setAttribute("aria-disabled", "true");
    else button(name).removeAttribute("aria-disabled");
  }

  function show(announce) {
    steps.forEach((step, index) => (step.hidden = one && index !== now));
    const all = button("all");
    all.textContent = one ? all.dataset.all : all.dataset.one;
    disable("back", !one || now === 0);
    disable("next", !one || now === steps.length - 1);
    if (announce) live.textContent = steps[now].querySelector(".words").innerText;
  }

  function go(step) {
    const wanted = Math.min(Math.max(step, 0), steps.length - 1);
    if (!one || wanted === now) return;
    now = wanted;
    show(true);
  }

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
  const keys = {
    ArrowRight: "next", PageDown: "next", ArrowLeft: "back", PageUp: "back", Home: "first", End: "last",
  };

  document.addEventListener("click", (event) => {
    const pressed = event.target.closest("[data-player-do]");
    if (pressed && pressed.getAttribute("aria-disabled") !== "true") doings[pressed.dataset.playerDo]();
  });
  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const free = event.target === document.body || event.target.closest("[data-player-bar]");
    const onButton = event.target.closest("button");
    const doing = event.key === " " && !onButton ? (event.shiftKey ? "back" : "next") : keys[event.key];
    if (!one || !free || !doing) return;
    event.preventDefault();
    doings[doing]();
  });
  bar.hidden = false;
  button("print").hidden = false;
  show(false);
})();
