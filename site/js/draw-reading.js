// What was read off the drawing: in the fields of the view, kept with the drawing, marked by pycore.

import { regionHTML } from "./bridge.js";

/** @import { Desk } from "./draw-desk.js" */
/** @import { DrawOp } from "../types/draw.js" */
/** @import { Reply, Values } from "../types/shared.js" */

/** @param {HTMLFormElement} form */
const valuesOf = (form) => Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value)]));

export class Reading {
  /** @type {Values} by the fields of the answer */
  values = {};
  isNew = false; // whether it was typed since the view was opened
  /** @type {Values[]} of the drawings before, as long as they can be brought back */
  #before = [];
  #form;

  /** @param {HTMLDialogElement} dialog without fields where nothing is read in mm */
  constructor(dialog) {
    const form = dialog.querySelector("[data-draw-read]");
    this.#form = form instanceof HTMLFormElement ? form : null;
  }

  /** The fields were typed in. */
  typed() {
    if (this.#form) this.values = valuesOf(this.#form);
    this.isNew = true;
  }

  /** The reading of another drawing, of which nothing is said yet. @param {Values} values */
  #put(values) {
    this.values = values;
    this.isNew = false;
    if (!this.#form) return;
    this.#form.reset();
    for (const [name, value] of Object.entries(values)) {
      const field = this.#form.elements.namedItem(name);
      if (field && "value" in field) field.value = value;
    }
    this.#showFaults(this.#form, []);
    this.#form.querySelector("[data-draw-marked]")?.replaceChildren();
  }

  /** A kept drawing is opened. @param {Values} values */
  open(values) {
    this.#before = [];
    this.#put(values);
  }

  /** It goes with its drawing when that is begun afresh, and is back when that is undone. @param {DrawOp} op */
  follow(op, isUndone = false) {
    if (op.do !== "clear") return;
    if (isUndone) this.#put(this.#before.pop() ?? this.values);
    else {
      this.#before.push(this.values);
      this.#put({});
    }
  }

  /** @param {HTMLFormElement} form @param {NonNullable<Reply["errors"]>} errors */
  #showFaults(form, errors) {
    for (const line of form.querySelectorAll("[data-draw-message]")) {
      const name = line.dataset.drawMessage ?? "";
      const fault = errors.find(({ field }) => field === name);
      line.textContent = fault?.message ?? "";
      line.hidden = !fault;
      const field = form.elements.namedItem(name);
      if (field instanceof HTMLElement && fault) field.setAttribute("aria-invalid", "true");
      else if (field instanceof HTMLElement) field.removeAttribute("aria-invalid");
    }
  }

  /** @param {Desk} desk @param {HTMLFormElement} form */
  async mark(desk, form) {
    const answer = { ...valuesOf(form), "answer-how": "drawn", "answer-unit": "mm" };
    const { page, form: problem } = desk.problem;
    const request = { do: /** @type {const} */ ("mark"), page, form: problem, given: answer, drawing_judged: true };
    const marked = await desk.page.bridge.ask(request, { topic: "draw-mark" });
    if (!desk.dialog.open) return;
    this.#showFaults(form, marked.errors ?? []);
    desk.speak(marked.announce ?? "");
    if (!marked.ok) return;
    const place = desk.find("marked");
    place.innerHTML = regionHTML(marked.regions?.marked ?? "");
    place.scrollIntoView({ block: "nearest" });
  }
}
