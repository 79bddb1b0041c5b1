// The form in which an answer is given: asked first how it was found, then the rest. Used by the checker of a page and
// by free practice; words and fields are pycore's.

import { controlOf, need } from "./elements.js";
import * as form from "./form.js";
import * as regions from "./regions.js";
import { regionHTML } from "./trusted.js";

/** @import { Asked, Control, Reply, Values } from "../types/shared.js" */

/** @type {Values} what is read off a drawing, before anything is */
const NOTHING_READ = { answer: "", "answer-angle": "", "answer-side": "" };

/** @param {string} key @param {string} name */
const about = (key, name) => need(`[data-${key}="${CSS.escape(name)}"]`);

/**
 * The answer's form in `section`: reads it, lets it follow a problem, shows what was said of it.
 * @param {HTMLElement} section
 */
export function fields(section) {
  const own = need("#check", HTMLFormElement, section);
  const rest = need("[data-check-rest]", HTMLElement, section);
  const place = need(".marked-place", HTMLElement, section);
  const unit = need("[name=answer-unit]", HTMLSelectElement, own);
  const judged = need("[data-judged-by]", HTMLElement, own);
  const filled = need("[data-filled-in]", HTMLElement, rest);
  let unitChosen = false;
  let version = 0; // counts edits, so that what is said of an older answer is dropped

  const controls = () => form.namedControls(own);

  function read() {
    /** @param {Control} one */
    const given = (one) => (one.type !== "radio" || one.checked) && !one.closest("[data-field][hidden]");
    const counted = controls().filter(given);
    return Object.fromEntries(counted.map((one) => [one.name, one.value]));
  }

  // By which scale a length is judged is said of a drawn answer.
  function showJudged() {
    judged.hidden = !judged.textContent || !own.querySelector("[name=answer-how]:checked")?.getAttribute("data-unit");
  }

  // A drawn answer is read in millimetres, a calculated one is not; what was chosen by hand stays.
  function suggestUnit() {
    const how = own.querySelector("[name=answer-how]:checked");
    rest.hidden = !how;
    showJudged();
    if (how && !unitChosen) {
      const wanted = [...unit.options].find((option) => option.value === how.dataset.unit) ?? unit.options[0];
      unit.value = wanted.value;
    }
    showUnit();
  }

  // Sizes found on the way are in the same unit.
  function showUnit() {
    for (const one of own.querySelectorAll("[data-unit-of-answer]")) one.textContent = unit.value;
  }

  /** @param {Asked} asked */
  function follow(asked) {
    for (const field of own.querySelectorAll("[data-field]")) {
      const name = field.dataset.field ?? "";
      const label = asked.labels[name];
      if (name.startsWith("answer") && name !== "answer-unit") field.hidden = !label;
      if (label) about("label-for", name).innerHTML = regionHTML(label);
    }
    judged.textContent = asked.scale;
    showJudged();
    for (const group of own.querySelectorAll("[data-on-the-way]")) {
      group.hidden = [...group.querySelectorAll("[data-field]")].every((field) => field.hidden);
    }
    if (asked.units.join() === [...unit.options].map((option) => option.value).join()) return;
    const kept = unit.value;
    unit.replaceChildren(...asked.units.map((one) => new Option(one, one)));
    unitChosen &&= asked.units.includes(kept);
    if (unitChosen) unit.value = kept;
    suggestUnit();
  }

  function outdate() {
    place.toggleAttribute("data-old", need("[data-region=marked]", HTMLElement, place).childElementCount > 0);
  }

  function forget() {
    version += 1;
    regions.replace("marked", "");
    place.removeAttribute("data-old");
    form.showFaults(controls(), []);
  }

  /** @param {Reply & { regions?: Values }} reply */
  function take(reply) {
    form.showFaults(controls(), reply.errors ?? []);
    if (!reply.ok) {
      outdate();
      controls().find((one) => one.hasAttribute("aria-invalid"))?.focus();
      return;
    }
    for (const [name, html] of Object.entries(reply.regions ?? {})) regions.replace(name, html);
    place.removeAttribute("data-old");
    need("[data-region=marked]", HTMLElement, place).scrollIntoView({ block: "nearest" });
  }

  /** @param {Event} event */
  function edited(event) {
    version += 1;
    if (event.target === unit) {
      unitChosen = true;
      showUnit();
    }
    const control = controlOf(event);
    if (control) form.showFaults([control], []); // what was wrong with it before
    if (control?.name === "answer-how") suggestUnit();
    showWorded();
    filled.hidden = true;
    outdate();
  }

  // A value with a unit or a side of its own needs none beside it.
  function showWorded() {
    for (const one of controls()) {
      one.closest(".entry")?.toggleAttribute("data-worded", /[\p{L}°]/u.test(one.options ? "" : one.value));
    }
  }

  /** Whether nothing was typed or chosen by hand since the form was empty or filled in. */
  const isUntouched = () => !own.querySelector("[name=answer-how]:checked") || !filled.hidden;

  /**
   * Fill in what was read off a drawing made on the screen, by field, unless another answer was begun before; a new
   * reading takes that one's place. Where nothing is read off it any more, what was filled in goes too.
   * @param {Values} reading
   * @param {boolean} isNew
   */
  function fillIn(reading, isNew = false) {
    const isRead = Object.values(reading).some(Boolean);
    if (isRead ? !(isNew || isUntouched()) : filled.hidden) return;
    const wanted = /** @type {Values} */ ({ ...NOTHING_READ, ...reading, "answer-how": isRead ? "drawn" : "" });
    if (!filled.hidden && controls().every((one) => one.type === "radio" || (wanted[one.name] ?? one.value) === one.value)) return;
    for (const one of controls()) {
      if (one.type === "radio") one.checked = wanted[one.name] === one.value;
      else if (one.name in wanted) one.value = wanted[one.name];
    }
    version += 1;
    form.showFaults(controls(), []);
    unitChosen = false; // it was read in millimetres
    suggestUnit();
    showWorded();
    filled.hidden = !isRead;
    outdate();
  }

  own.addEventListener("input", edited);
  suggestUnit();

  /** Empty for another problem. */
  function clear() {
    own.reset();
    unitChosen = false;
    filled.hidden = true;
    suggestUnit();
    forget();
  }

  return { read, follow, forget, take, clear, fillIn, version: () => version };
}
