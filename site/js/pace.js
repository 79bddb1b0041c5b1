// When things happen: after a pause, not too often, when nothing else is to do.

/**
 * Run with the latest argument once no call came for `pause` ms.
 * @template [T=void]
 * @param {number} pause
 * @param {(argument: T) => void} run
 */
export function afterQuiet(pause, run) {
  let timer = 0;
  return (/** @type {T} */ argument) => {
    clearTimeout(timer);
    timer = setTimeout(run, pause, argument);
  };
}

/**
 * Run at once, then at most every `pause` ms, the last argument always last.
 * @template [T=void]
 * @param {number} pause
 * @param {(argument: T) => void} run
 */
export function spaced(pause, run) {
  let next = 0;
  let timer = 0;
  return (/** @type {T} */ argument) => {
    clearTimeout(timer);
    const now = performance.now();
    const later = () => {
      next = performance.now() + pause;
      run(argument);
    };
    if (now >= next) later();
    else timer = setTimeout(later, next - now);
  };
}

/**
 * Run when the browser has nothing better to do, half a second later at most.
 * @param {() => void} run
 */
export function inIdle(run) {
  if ("requestIdleCallback" in globalThis) requestIdleCallback(run, { timeout: 500 });
  else setTimeout(run, 50);
}
