// The photograph of the row in hand, turned as its sheet was read; over it what was read, and the right drawing.

import { hide, need } from "./elements.js";
import { MEASURED, opened } from "./photo-file.js";
import { arrows, dots, numbers } from "./photo-arrows.js";

/** @import { Path } from "../types/shared.js" */
/** @import { Marked } from "./photo-arrows.js" */
/** @import { PileReply, PileRow } from "../types/photos.js" */

const EDGE = 0.01; // of the sheet, shown about it

/** What is numbered in the photograph, and which points were read. @param {PileReply} reply @returns {Marked} */
export function marksOf({ point, readings, found }) {
  /** @type {any[]} */
  const listed = point ? point.choices.map((/** @type {any} */ one) => [one.mark]) : (readings ?? []).map((/** @type {any} */ one) => one.marks);
  return { places: listed, found: found ?? [] };
}

/**
 * Draw a photograph as it is measured, turned clockwise by quarters.
 * @param {HTMLCanvasElement} canvas @param {ImageBitmap} bitmap @param {number} quarters
 */
export function drawTurned(canvas, bitmap, quarters) {
  const share = Math.min(1, MEASURED / Math.max(bitmap.width, bitmap.height));
  const [wide, high] = [Math.round(bitmap.width * share), Math.round(bitmap.height * share)];
  const sizes = quarters % 2 ? [high, wide] : [wide, high];
  [canvas.width, canvas.height] = sizes;
  const pen = canvas.getContext("2d");
  pen?.translate(canvas.width / 2, canvas.height / 2);
  pen?.rotate((quarters * Math.PI) / 2);
  pen?.drawImage(bitmap, -wide / 2, -high / 2, wide, high);
}

/**
 * The part of a photograph that the sheet fills, with a little about it; without a frame all of it.
 * @param {{ width: number, height: number }} whole @param {number[]} frame left, top, right, bottom
 */
export function partOf({ width, height }, frame) {
  if (frame.length < 4) return { left: 0, top: 0, width, height };
  const [left, top, right, low] = frame;
  const edge = EDGE * Math.max(right - left, low - top);
  const start = { left: Math.max(0, Math.floor(left - edge)), top: Math.max(0, Math.floor(top - edge)) };
  return {
    ...start, width: Math.min(width, Math.ceil(right + edge)) - start.left, height: Math.min(height, Math.ceil(low + edge)) - start.top,
  };
}

export class Shown {
  #look;
  #frame;
  #canvas;
  #base = document.createElement("canvas"); // the photograph without lines
  /** @type {Path[]} */
  #right = [];
  /** @type {Path[]} */
  #read = [];
  /** @type {Marked} */
  #marked = { places: [], found: [] };
  #hidden = new Set(); // of the lines over it
  #view = { left: 0, top: 0, width: 1, height: 1 }; // the part that is shown
  #of = ""; // the row that is shown, with how it is turned
  #edition = 0;

  /** @param {HTMLElement} look */
  constructor(look) {
    this.#look = look;
    this.#frame = need("[data-picture]", HTMLElement, look);
    this.#canvas = need("[data-canvas]", HTMLCanvasElement, look);
  }

  /**
   * Show the photograph of a row, or say that it is no longer here.
   * @param {PileRow} row @param {File | null} file @param {number[]} frame the part that the sheet fills; empty: not known
   */
  async show(row, file, frame) {
    const of = `${row.id} ${row.turned ?? 0} ${Boolean(file)} ${frame}`;
    if (of === this.#of) return; // shown, or being opened
    const mine = ++this.#edition;
    this.#of = of;
    this.draw([], []);
    const bitmap = file && (await opened(file));
    if (mine !== this.#edition) {
      bitmap?.close();
      return;
    }
    hide(this.#frame, !bitmap);
    hide(need("[data-picture-tools]", HTMLElement, this.#look), !bitmap);
    hide(need("[data-gone]", HTMLElement, this.#look), Boolean(file));
    if (!bitmap) return;
    drawTurned(this.#base, bitmap, row.turned ?? 0);
    this.#view = partOf(this.#base, frame);
    bitmap.close();
    this.#paint();
  }

  #paint() {
    const { left, top, width, height } = this.#view;
    [this.#canvas.width, this.#canvas.height] = [width, height];
    const pen = this.#canvas.getContext("2d");
    if (!pen) return;
    pen.translate(-left, -top);
    pen.drawImage(this.#base, 0, 0);
    const [unit, style] = [Math.max(width, height) / 800, getComputedStyle(this.#frame)];
    if (!this.#hidden.has("right")) arrows(pen, this.#right, unit, style);
    if (!this.#hidden.has("read")) dots(pen, this.#read, unit, style);
    numbers(pen, this.#marked, unit, style);
  }

  /**
   * Draw lines over it, and what is asked.
   * @param {Path[]} right drawing @param {Path[]} read `first`: to look at first @param {Marked} [marked]
   */
  draw(right, read, marked = { places: [], found: [] }) {
    [this.#right, this.#read, this.#marked] = [right, read, marked];
    this.#showLegend();
    if (this.#of) this.#paint();
  }

  #showLegend() {
    const read = this.#read.map(({ role }) => role);
    const drawn = { right: this.#right.length > 0, read: read.includes("read"), first: read.includes("first") };
    for (const [name, is] of Object.entries(drawn)) {
      const hidden = this.#hidden.has(name === "first" ? "read" : name);
      hide(need(`[data-legend="${name}"]`, HTMLElement, this.#look), hidden || !is);
    }
    hide(this.#button('[data-lines="right"]'), !drawn.right);
    hide(this.#button('[data-lines="read"]'), !read.length);
  }

  /** @param {string} selector */
  #button = (selector) => need(selector, HTMLElement, this.#look);

  /** Write on a switch what a press does. @param {HTMLElement} button @param {boolean} is whether it is on */
  #name(button, is) {
    button.textContent = (is ? button.dataset.sayOn : button.dataset.sayOff) ?? "";
  }

  /** Show lines, or hide them. @param {string} name `right` or `read` */
  toggle(name) {
    const is = this.#hidden.delete(name);
    if (!is) this.#hidden.add(name);
    this.#name(this.#button(`[data-lines="${name}"]`), is);
    this.#showLegend();
    this.#paint();
  }

  larger() {
    const is = document.querySelector(".pile-columns")?.toggleAttribute("data-larger") ?? false;
    this.#name(this.#button('[data-do="larger"]'), is);
  }

  /** Bring it into view: beside the list it has a place of its own, on smaller screens it stands above the list. */
  bringIntoView() {
    this.#look.scrollTop = 0;
    this.#look.scrollIntoView({ block: matchMedia("(min-width: 75em)").matches ? "nearest" : "start" });
  }
}
