// A guess before drawing: the end of a dashed arrow on the sheet, dragged, set by a press or moved by the arrow keys.
// It is kept only as long as its problem is in view. Places are mm on the paper from the starting point, y up; what
// they stand for, pycore says.

import { afterQuiet } from "./pace.js";

const QUIET = 250; // ms without a further move before it is asked what a guess stands for
const STEP = 5; // mm
const FINE = 1; // mm, with Shift
/** @type {Record<string, [number, number]>} */
const KEYS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

/** @type {{ x: number, y: number } | null} */
let end = null; // the guess; null until there is one
/** @type {HTMLElement} */
let place;

const boards = () => [...place.querySelectorAll(".board")].filter((board) => board.querySelector("[data-guess]"));

/** @param {HTMLElement} board */
function parts(board) {
  const drawing = /** @type {SVGSVGElement} */ (board.querySelector("[data-guess]"));
  return {
    drawing,
    box: drawing.viewBox.baseVal,
    start: { x: Number(drawing.dataset.x), y: Number(drawing.dataset.y) },
    first: (drawing.dataset.first ?? "").split(" ").map(Number),
  };
}

/** Draw the guess, or the arrow as it is before there is one, on every board. */
export function draw() {
  for (const board of boards()) {
    const { drawing, box, start, first } = parts(board);
    const at = end ?? { x: first[0], y: first[1] };
    const [x, y] = [start.x + at.x, start.y - at.y];
    const line = drawing.querySelector("line");
    line?.setAttribute("x2", String(x));
    line?.setAttribute("y2", String(y));
    const turn = (Math.atan2(-at.y, at.x) * 180) / Math.PI;
    drawing.querySelector("[data-guess-head]")?.setAttribute("transform", `translate(${x} ${y}) rotate(${turn})`);
    const label = drawing.querySelector("text");
    const above = Number(label?.dataset.above);
    label?.setAttribute("x", String(Math.min(box.width - 14, Math.max(14, x))));
    label?.setAttribute("y", String(at.y >= 0 ? Math.max(above, y - above) : Math.min(box.height - 2, y + 2 * above)));
    const handle = /** @type {HTMLElement | null} */ (board.querySelector("[data-guess-end]"));
    if (!handle) continue;
    handle.style.left = `${(100 * x) / box.width}%`;
    handle.style.top = `${(100 * y) / box.height}%`;
  }
  place.toggleAttribute("data-guessed", end !== null);
}

/** Another problem: no guess of it yet. */
export function forget() {
  end = null;
  draw();
}

/**
 * Join the page: `say(at)` asks what a guess stands for.
 * @param {HTMLElement} sheet
 * @param {(at: [number, number]) => void} say
 */
export function join(sheet, say) {
  place = sheet;
  const sayLater = afterQuiet(QUIET, () => end && say([end.x, end.y]));

  /** @param {HTMLElement} board @param {{ x: number, y: number }} wanted */
  function move(board, wanted) {
    const { box, start } = parts(board);
    /** @param {number} value @param {number} low @param {number} high */
    const within = (value, low, high) => Math.round(Math.min(high, Math.max(low, value)) * 10) / 10;
    end = { x: within(wanted.x, -start.x, box.width - start.x), y: within(wanted.y, start.y - box.height, start.y) };
    draw();
    sayLater();
  }

  /** @param {HTMLElement} board @param {PointerEvent} event */
  function moveTo(board, event) {
    const { drawing, box, start } = parts(board);
    const seen = drawing.getBoundingClientRect();
    const scale = box.width / seen.width;
    move(board, { x: (event.clientX - seen.left) * scale - start.x, y: start.y - (event.clientY - seen.top) * scale });
  }

  /** @type {HTMLElement | null} */
  let dragged = null;
  sheet.addEventListener("pointerdown", (event) => {
    if (!(event.target instanceof HTMLElement) || !event.target.matches("[data-guess-end]")) return;
    dragged = event.target.closest(".board");
    event.target.setPointerCapture(event.pointerId);
  });
  sheet.addEventListener("pointermove", (event) => {
    if (dragged) moveTo(dragged, event);
  });
  for (const over of ["pointerup", "pointercancel"]) sheet.addEventListener(over, () => (dragged = null));
  sheet.addEventListener("keydown", (event) => {
    const way = KEYS[event.key];
    const board = event.target instanceof HTMLElement && event.target.matches("[data-guess-end]") && event.target.closest(".board");
    if (!way || !(board instanceof HTMLElement) || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const step = event.shiftKey ? FINE : STEP;
    const { first } = parts(board);
    const from = end ?? { x: first[0], y: first[1] };
    move(board, { x: from.x + step * way[0], y: from.y + step * way[1] });
  });
  draw();
}
