// When things happen: after a pause, not too often, when nothing else is to do.

/**
 * Run with the latest argument once no call came for `pause` ms, or as many as it gives at that call.
 * @template [T=void]
 * @param {number | (() => number)} pause
 * @param {(argument: T) => void} run
 */
export function afterQuiet(pause, run) {
  let timer = 0;
  return (/** @type {T} */ argument) => {
    clearTimeout(timer);
    timer = setTimeout(run, typeof pause === "number" ? pause : pause(), argument);
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

const PACE_AFTER = 2_500; // ms of it before a pace is worth anything
const PACE_OVER = 20_000; // ms: what was before says nothing of now

/**
 * Measures how fast something goes on: called with the share that is done, gives the seconds that are left at the pace
 * of late, or null while there is none yet.
 * @returns {(share: number) => number | null}
 */
export function paceOf() {
  /** @type {{ at: number, share: number }[]} */
  let seen = [];
  return (share) => {
    const at = performance.now();
    if (seen.length && share < seen[seen.length - 1].share) seen = []; // begun anew
    seen.push({ at, share });
    while (at - seen[0].at > PACE_OVER) seen.shift();
    const [taken, done] = [at - seen[0].at, share - seen[0].share];
    return taken < PACE_AFTER || done <= 0 ? null : ((1 - share) * taken) / done / 1000;
  };
}
