// What lies over a page, each a step of the browser's history: Back closes what lies uppermost, and not the page. The
// page writes its address into the step that it is at, so a step that is come back to may have an older one.

/** @typedef {{ at: number, close: () => void }} Layer */

const OLD_FOR = 300; // ms in which the browser tells of an address that was come back to

/** @type {Layer[]} */
let layers = [];
/** @type {() => void} */
let uncovered = () => {};
let goingBack = false; // because what lay over the page was closed by itself
/** @type {string | null} */
let old = null;

/** How much lies over the page at this step of its history. */
const here = () => Number(history.state?.over ?? 0);

/**
 * Let `run` write the address anew at a step that was come back to.
 * @param {() => void} run
 */
export function onUncovered(run) {
  uncovered = run;
}

/**
 * Whether an address is the older one of a step that was come back to, and none that somebody asks for.
 * @param {string} hash
 */
export const isOld = (hash) => hash === old;

/**
 * Something lies over the page now; `close` is called when Back is pressed.
 * @param {() => void} close
 */
export function lay(close) {
  const at = here() + 1;
  layers.push({ at, close });
  history.replaceState({ over: at - 1 }, "");
  history.pushState({ over: at }, "");
}

/**
 * It was closed by itself: its step of the history goes too, unless others have come after it.
 * @param {() => void} close
 */
export function lift(close) {
  const layer = layers.find((one) => one.close === close);
  if (!layer) return;
  layers = layers.filter((one) => one !== layer);
  if (here() !== layer.at) return;
  goingBack = true;
  history.back();
}

/**
 * Show a dialog over the page.
 * @param {HTMLDialogElement} dialog
 */
export function showDialog(dialog) {
  const close = () => dialog.close();
  dialog.addEventListener("close", () => lift(close), { once: true });
  dialog.showModal();
  lay(close);
}

addEventListener("popstate", () => {
  const at = here();
  const above = layers.filter((one) => one.at > at);
  layers = layers.filter((one) => one.at <= at);
  // An address that somebody asks for is a step of its own, without a state.
  const isBack = history.state && (goingBack || above.length > 0);
  goingBack = false;
  if (isBack) {
    old = location.hash;
    setTimeout(() => (old = null), OLD_FOR);
  }
  for (const layer of above.reverse()) layer.close();
  if (isBack) uncovered();
});
