// The photograph on the screen, or the part of it that matters: its points as handles that finger, mouse and keys can
// move, a loupe while one moves, and lines over it. All places are in pixels of the whole picture.

import { need } from "./elements.js";
import { arrows } from "./photo-arrows.js";

/** @import { Pair, Path, Point } from "../types/shared.js" */

const NEAR = 30; // CSS px within which a press takes hold of a handle
const SLOW = 0.25; // how far a point moves for a finger that all but rests, which is thicker than what it points at
const FAST = 0.06; // CSS px for each ms from which the point keeps up with the finger
const CATCHING_UP = 0.3; // the share of what it lags behind that the point catches up with each move of a fast finger
const LOUPE = 132; // CSS px
const GAP = 8; // CSS px between the loupe and the edges of what is seen of the picture
const MARGIN = 0.1; // of the marks' own extent, shown about them
const ENLARGED = 2.4; // CSS px for each pixel of the picture in the loupe, at least twice the picture's own size

/** @typedef {Point & { button: HTMLButtonElement, name: string }} Handle */

/**
 * What draws on a canvas.
 * @param {HTMLCanvasElement} canvas
 * @param {CanvasRenderingContext2DSettings} [options]
 */
function penOf(canvas, options) {
  const pen = canvas.getContext("2d", options);
  if (!pen) throw new Error("this browser gives no drawing surface");
  return pen;
}

export class Picture {
  #frame;
  #whole = document.createElement("canvas");
  #view = { x: 0, y: 0, width: 1, height: 1 }; // the part that is shown
  #quarters = 0; // how far the picture was turned since it was opened
  #canvas;
  #lines;
  #box;
  #loupe;
  /** @type {Handle[]} */
  #handles = []; // { x, y, button, marked }
  /** @type {{ handle: Handle, x: number, y: number, lag: Point, time: number, touch: boolean } | null} */
  #held = null;
  /** @type {Path[]} */
  #paths = [];
  /** @type {(x: number, y: number) => Handle | null} */
  onPress = () => null; // (x, y) of a press that takes hold of no handle: gives a handle to hold, or null
  /** @type {(handle: Handle) => void} */
  onMove = () => {};
  /** @type {(handle: Handle) => void} */
  onDrop = () => {};

  /** @param {HTMLElement} panel */
  constructor(panel) {
    this.#frame = need("[data-photo-picture]", HTMLElement, panel);
    this.#box = need("[data-photo-handles]", HTMLElement, panel);
    this.#canvas = need("[data-photo-canvas]", HTMLCanvasElement, panel);
    this.#lines = need("[data-photo-drawn]", HTMLCanvasElement, panel);
    this.#loupe = need("[data-photo-loupe]", HTMLCanvasElement, panel);
    this.#frame.addEventListener("pointerdown", (event) => this.#press(event));
    this.#frame.addEventListener("pointermove", (event) => this.#drag(event));
    for (const end of ["pointerup", "pointercancel"]) this.#frame.addEventListener(end, () => this.#drop());
    this.#frame.addEventListener("keydown", (event) => this.#key(event));
    new ResizeObserver(() => this.#place()).observe(this.#frame);
  }

  get width() {
    return this.#whole.width;
  }

  get height() {
    return this.#whole.height;
  }

  /** How many quarters the picture was turned clockwise since it was opened. */
  get quarters() {
    return this.#quarters;
  }

  /** Pixels of the picture for one CSS pixel. */
  get coarseness() {
    return this.#view.width / Math.max(1, this.#canvas.clientWidth);
  }

  /**
   * Show a picture, no wider or higher than `most` pixels; gives its pixels.
   * @param {ImageBitmap} bitmap
   * @param {number} most
   */
  show(bitmap, most) {
    const share = Math.min(1, most / Math.max(bitmap.width, bitmap.height));
    this.#whole.width = Math.round(bitmap.width * share);
    this.#whole.height = Math.round(bitmap.height * share);
    const pen = penOf(this.#whole, { willReadFrequently: true });
    pen.imageSmoothingQuality = "high";
    pen.drawImage(bitmap, 0, 0, this.width, this.height);
    this.#quarters = 0;
    this.clear();
    this.look(null);
    return pen.getImageData(0, 0, this.width, this.height);
  }

  /**
   * Turn the picture clockwise by so many quarters; its points and lines are taken away.
   * @param {number} quarters
   */
  turn(quarters) {
    const before = this.#whole;
    const after = document.createElement("canvas");
    const sizes = [before.width, before.height];
    [after.width, after.height] = quarters % 2 ? sizes.reverse() : sizes;
    const pen = penOf(after, { willReadFrequently: true });
    pen.translate(after.width / 2, after.height / 2);
    pen.rotate((quarters * Math.PI) / 2);
    pen.drawImage(before, -before.width / 2, -before.height / 2);
    this.#whole = after;
    this.#quarters = (this.#quarters + quarters) % 4;
    this.clear();
    this.look(null);
  }

  /**
   * Show the part about some points, or all of the picture.
   * @param {Point[] | null} points
   */
  look(points) {
    let [left, top, right, bottom] = [0, 0, this.width, this.height];
    if (points) {
      const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
      const margin = MARGIN * Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
      [left, top] = [Math.max(0, Math.min(...xs) - margin), Math.max(0, Math.min(...ys) - margin)].map(Math.floor);
      right = Math.min(this.width, Math.ceil(Math.max(...xs) + margin));
      bottom = Math.min(this.height, Math.ceil(Math.max(...ys) + margin));
    }
    this.#view = { x: left, y: top, width: right - left, height: bottom - top };
    this.#frame.dataset.view = [left, top, right - left, bottom - top, this.#quarters].join(" ");
    this.#frame.style.setProperty("--shape", String((right - left) / (bottom - top)));
    for (const canvas of [this.#canvas, this.#lines]) [canvas.width, canvas.height] = [right - left, bottom - top];
    penOf(this.#canvas).drawImage(this.#whole, -left, -top);
    this.draw(this.#paths);
    this.#place();
  }

  /** Take all points and lines away. */
  clear() {
    for (const handle of this.#handles) handle.button.remove();
    this.#handles = [];
    this.draw([]);
  }

  /**
   * Add a point with a name that is read out and a sign that is seen.
   * @param {number} x
   * @param {number} y
   * @param {string} name
   * @param {string} sign
   * @param {string} kind
   * @returns {Handle}
   */
  add(x, y, name, sign, kind = "") {
    const button = document.createElement("button");
    button.type = "button";
    button.className = `photo-handle ${kind}`;
    button.setAttribute("aria-label", name);
    button.dataset.sign = sign;
    const handle = { x, y, button, name };
    button.addEventListener("focus", () => this.onMove(handle));
    this.#handles.push(handle);
    this.#box.append(button);
    this.#place();
    return handle;
  }

  /**
   * Take one point away.
   * @param {Handle | undefined} handle
   */
  remove(handle) {
    handle?.button.remove();
    this.#handles = this.#handles.filter((other) => other !== handle);
  }

  #place() {
    for (const { x, y, button } of this.#handles) {
      button.style.left = `${(100 * (x - this.#view.x)) / this.#view.width}%`;
      button.style.top = `${(100 * (y - this.#view.y)) / this.#view.height}%`;
    }
  }

  /** @param {PointerEvent} event */
  #at(event) {
    const box = this.#canvas.getBoundingClientRect();
    const share = this.#view.width / box.width;
    const [across, down] = [(event.clientX - box.left) * share, (event.clientY - box.top) * share];
    return { x: this.#view.x + across, y: this.#view.y + down };
  }

  /** @param {PointerEvent} event */
  #press(event) {
    if (event.button || this.#held) return;
    const { x, y } = this.#at(event);
    const reach = NEAR * this.coarseness;
    const near = this.#handles
      .map((handle) => ({ handle, away: Math.hypot(handle.x - x, handle.y - y) }))
      .filter(({ away }) => away < reach)
      .sort((one, other) => one.away - other.away)[0];
    const handle = near?.handle ?? this.onPress(x, y);
    if (!handle) return;
    event.preventDefault();
    this.#frame.setPointerCapture(event.pointerId);
    handle.button.focus({ preventScroll: true });
    const touch = event.pointerType !== "mouse";
    this.#held = { handle, x: event.clientX, y: event.clientY, lag: { x: 0, y: 0 }, time: event.timeStamp, touch };
    this.#look(handle);
    this.onMove(handle);
  }

  /** @param {PointerEvent} event */
  #drag(event) {
    const held = this.#held;
    if (!held) return;
    const [across, down] = [event.clientX - held.x, event.clientY - held.y];
    const speed = Math.hypot(across, down) / Math.max(1, event.timeStamp - held.time);
    const gain = held.touch ? Math.min(1, Math.max(SLOW, speed / FAST)) : 1;
    const lag = { x: held.lag.x + across, y: held.lag.y + down };
    const share = gain < 1 ? 0 : CATCHING_UP;
    const step = {
      x: across * gain + (lag.x - across * gain) * share,
      y: down * gain + (lag.y - down * gain) * share,
    };
    held.lag = { x: lag.x - step.x, y: lag.y - step.y };
    Object.assign(held, { x: event.clientX, y: event.clientY, time: event.timeStamp });
    this.#shift(held.handle, step.x * this.coarseness, step.y * this.coarseness);
    this.#look(held.handle);
  }

  /** @param {Handle} handle @param {number} across @param {number} down */
  #shift(handle, across, down) {
    handle.x = Math.min(this.width, Math.max(0, handle.x + across));
    handle.y = Math.min(this.height, Math.max(0, handle.y + down));
    this.#place();
  }

  #drop() {
    if (!this.#held) return;
    const { handle } = this.#held;
    this.#held = null;
    this.#loupe.hidden = true;
    this.onDrop(handle);
  }

  /** @param {KeyboardEvent} event */
  #key(event) {
    /** @type {Record<string, Pair>} */
    const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
    const handle = this.#handles.find(({ button }) => button === event.target);
    const step = steps[event.key];
    if (handle && step) {
      event.preventDefault();
      const size = event.shiftKey ? 10 : 1;
      this.#shift(handle, step[0] * size, step[1] * size);
      this.#look(handle);
      this.onDrop(handle);
    } else if (handle && (event.key === "Enter" || event.key === " ")) {
      event.preventDefault();
      this.onDrop(handle);
    } else if (!handle && event.target === this.#frame && event.key === "Enter") {
      const { x, y, width, height } = this.#view;
      const added = this.onPress(x + width / 2, y + height / 2);
      added?.button.focus();
      if (added) this.onDrop(added);
    }
  }

  /**
   * Put the loupe into that corner of what is seen of the picture which is farthest from a point.
   * @param {Handle} handle
   */
  #away(handle) {
    const box = this.#frame.getBoundingClientRect();
    const place = handle.button.getBoundingClientRect();
    const [left, right] = [Math.max(0, box.left), Math.min(document.documentElement.clientWidth, box.right)];
    const [top, bottom] = [Math.max(0, box.top), Math.min(innerHeight, box.bottom)];
    const atRight = place.left + place.right < left + right;
    const atFoot = place.top + place.bottom < top + bottom;
    this.#loupe.style.left = `${(atRight ? right - LOUPE - GAP : left + GAP) - box.left}px`;
    this.#loupe.style.top = `${(atFoot ? bottom - LOUPE - GAP : top + GAP) - box.top}px`;
  }

  /**
   * Show what lies about a point, enlarged, away from it and from the finger.
   * @param {Handle} handle
   */
  #look(handle) {
    const loupe = this.#loupe;
    const sharp = Math.min(3, devicePixelRatio || 1);
    loupe.width = loupe.height = LOUPE * sharp;
    loupe.hidden = false;
    this.#away(handle);
    const share = Math.max(ENLARGED, 2 / this.coarseness) * sharp;
    const size = loupe.width / share;
    const pen = penOf(loupe);
    pen.imageSmoothingEnabled = share < 6;
    pen.drawImage(this.#whole, handle.x - size / 2, handle.y - size / 2, size, size, 0, 0, loupe.width, loupe.width);
    const middle = loupe.width / 2;
    /** @type {[string, number][]} */
    const layers = [["--paper", 3], ["--accent", 1.2]];
    for (const [colour, thick] of layers) {
      pen.strokeStyle = getComputedStyle(loupe).getPropertyValue(colour);
      pen.lineWidth = thick * sharp;
      pen.beginPath();
      for (const [along, across] of [[1, 0], [-1, 0], [0, 1], [0, -1]]) {
        pen.moveTo(middle + along * 5 * sharp, middle + across * 5 * sharp);
        pen.lineTo(middle + along * middle, middle + across * middle);
      }
      pen.stroke();
    }
  }

  /**
   * Draw lines over the picture: `{ role, points }`, points as [x, y].
   * @param {Path[]} paths
   */
  draw(paths) {
    this.#paths = paths;
    const pen = penOf(this.#lines);
    pen.setTransform(1, 0, 0, 1, -this.#view.x, -this.#view.y);
    pen.clearRect(this.#view.x, this.#view.y, this.#view.width, this.#view.height);
    this.#strokes(pen, paths);
  }

  /** @param {CanvasRenderingContext2D} pen @param {Path[]} paths */
  #strokes(pen, paths) {
    arrows(pen, paths, Math.max(this.#view.width, this.#view.height) / 800, getComputedStyle(this.#frame));
  }

  /**
   * What is shown with the lines on it, as a PNG.
   * @param {Path[]} paths
   * @returns {Promise<Blob>}
   */
  saved(paths) {
    const { x, y, width, height } = this.#view;
    const made = document.createElement("canvas");
    [made.width, made.height] = [width, height];
    const pen = penOf(made);
    pen.drawImage(this.#whole, -x, -y);
    pen.translate(-x, -y);
    this.#strokes(pen, paths);
    return new Promise((resolve, reject) => {
      const take = (/** @type {Blob | null} */ blob) => (blob ? resolve(blob) : reject(new Error("no PNG was made")));
      made.toBlob(take, "image/png");
    });
  }
}
