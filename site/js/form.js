// The form: the only state of a page. Reads it, fills it, and shows what is wrong beside the control.

import { around, hide, need, write } from "./elements.js";

/** @import { AnswerReply, Control, Fault, InputControl, Offer, SelectControl, Values } from "../types/shared.js" */

const form = document.getElementById("problem");

/**
 * The controls of a form that have a name.
 * @param {HTMLFormElement} of
 */
export const namedControls = (of) => /** @type {Control[]} */ ([...of.elements]).filter((one) => one.name);

/** @type {Control[] | null} */
let all = null; // no region holds a control, so they stay the same but for stray choices

export const controls = () => (all ??= form instanceof HTMLFormElement ? namedControls(form) : []);

/** @param {string} name */
export const control = (name) => controls().find((one) => one.name === name);

/** @param {Control} one */
const isRadio = (one) => one.type === "radio";

// What belongs to a control, by what it is and the control's name. Each edit asks for a hundred of them: found once.
/** @type {Map<string, HTMLElement | null>} */
const found = new Map();

/** @param {string} key @param {string} name */
function about(key, name) {
  const place = `[data-${key}="${CSS.escape(name)}"]`;
  if (!found.get(place)?.isConnected) found.set(place, document.querySelector(place));
  return found.get(place) ?? null;
}

// The choice of lagging or leading beside a power factor.
/** @param {string} name */
function sideOf(name) {
  const side = about("sense-of", name);
  return side instanceof HTMLSelectElement ? side : null;
}

/** Every named control's text, as pycore reads it; of radio buttons the one that is chosen. */
export function read() {
  const counted = controls().filter((one) => !isRadio(one) || one.checked);
  return Object.fromEntries(counted.map((one) => [one.name, one.value]));
}

/** @param {SelectControl} select */
function builtOption(select) {
  return ([...select.options].find((option) => option.defaultSelected) ?? select.options[0])?.value ?? "";
}

/** Every named control's text as the page was built, whatever a browser has restored since. */
export function initial() {
  const counted = controls().filter((one) => !isRadio(one) || one.defaultChecked);
  /** @param {Control} one */
  const asBuilt = (one) => (one.options ? builtOption(one) : isRadio(one) ? one.value : one.defaultValue);
  return Object.fromEntries(counted.map((one) => [one.name, asBuilt(one)]));
}

// What a link says stays to be seen even if it is none of the choices: pycore then says what is accepted.
/** @param {SelectControl} select @param {string} value */
function admitOption(select, value) {
  if ([...select.options].some((option) => option.value === value)) return value;
  if (value === "") return builtOption(select);
  const stray = new Option(value, value);
  stray.dataset.stray = "";
  select.add(stray);
  return value;
}

/** @param {InputControl} one @param {string} value */
function admitRadio(one, value) {
  const group = controls().filter((other) => other.name === one.name);
  if (value === "" || group.some((other) => other.value === value)) return;
  const own = one.closest("label");
  if (!own) return;
  const label = /** @type {HTMLElement} */ (own.cloneNode(true));
  label.dataset.stray = "";
  Object.assign(need("input", HTMLInputElement, label), { id: `${one.id}-stray`, value, checked: true });
  need("[data-option]", HTMLElement, label).textContent = value;
  own.parentElement?.append(label);
  all = null;
}

// A stray choice goes once something else is chosen.
function tidy() {
  for (const stray of document.querySelectorAll("[data-stray]")) {
    const chosen = stray instanceof HTMLOptionElement ? stray.selected : stray.querySelector("input")?.checked;
    if (chosen) continue;
    stray.remove();
    all = null;
  }
}

/** @param {Control} one @param {string} value */
function choose(one, value) {
  if (one instanceof HTMLInputElement && isRadio(one)) {
    admitRadio(one, value);
    const differs = one.value === value && !one.checked;
    if (differs) one.checked = true;
    return differs;
  }
  const wanted = one.options ? admitOption(one, value) : value;
  const differs = wanted !== one.value;
  if (differs) one.value = wanted;
  return differs;
}

/**
 * Put values into the controls; unknown names are left alone. Gives the names that changed.
 * @param {Partial<Values>} values
 */
export function fill(values) {
  const changed = controls().filter((one) => {
    const value = values[one.name];
    return typeof value === "string" && choose(one, value);
  });
  refresh();
  return changed.map((one) => one.name);
}

/** What follows from the form alone: the unit gives way to typed letters, a field without a meaning to the others. */
export function refresh() {
  tidy();
  const values = read();
  for (const one of controls()) {
    one.closest(".entry")?.toggleAttribute("data-worded", /[\p{L}°]/u.test(one.options ? "" : one.value));
  }
  for (const field of document.querySelectorAll("[data-only]")) {
    const choices = (field.dataset.only ?? "").split(" ").map((choice) => choice.split("="));
    hide(field, !choices.some(([name, value]) => values[name] === value));
  }
}

/** The controls of values that stand apart from the row of values and are not as the page was built. */
export function setElsewhere() {
  const built = initial();
  return controls().filter((one) => one.value !== built[one.name] && !isRadio(one) && one.closest("[data-also]"));
}

/**
 * An edit of a power factor or its side writes the field it belongs to.
 * @param {Control} edited
 */
export function followFactor(edited) {
  const name = edited.dataset.factorOf ?? edited.dataset.senseOf;
  if (!name) return;
  const [side, own] = [sideOf(name), control(name)];
  if (!side || !own) return;
  if (edited === side) {
    // Of what cannot be read there is no other side.
    if (!own.hasAttribute("aria-invalid")) own.value = side.selectedOptions[0].dataset.text ?? "";
    return;
  }
  const typed = edited.value.trim();
  for (const option of side.options) option.dataset.text = typed && `${typed} ${option.value}`;
  own.value = side.selectedOptions[0].dataset.text ?? "";
}

/**
 * Show how pycore understood the inputs, without touching what is being typed.
 * @param {AnswerReply["echo"]} echo
 */
export function showEcho(echo) {
  for (const [name, heard] of Object.entries(echo ?? {})) {
    const words = about("echo-for", name);
    if (words) write(words, heard.said ?? "");
    const factor = about("factor-of", name);
    const side = sideOf(name);
    const busy = document.activeElement;
    if (!(factor instanceof HTMLInputElement) || !side || busy === factor || busy === side) continue;
    factor.value = heard.factor ?? "";
    side.value = heard.sense ?? "lag";
    for (const option of side.options) {
      const text = heard[`as_${option.value}`] ?? "";
      if (option.dataset.text !== text) option.dataset.text = text;
    }
  }
}

/**
 * Give every line sample the ink that its line has now.
 * @param {Values | undefined} inks
 */
export function showInks(inks) {
  for (const [name, ink] of Object.entries(inks ?? {})) {
    for (const sample of document.querySelectorAll(`[data-sample="${CSS.escape(name)}"]`)) {
      const names = `sample sample-${name} ink-${ink}`;
      if (sample.getAttribute("class") !== names) sample.setAttribute("class", names);
    }
  }
}

/**
 * Labels and options that name lines, as pycore writes them for the names chosen.
 * @param {Values | undefined} labels
 * @param {Record<string, Values> | undefined} options
 */
export function showNames(labels, options) {
  for (const [name, label] of Object.entries(labels ?? {})) {
    const place = about("label-for", name);
    if (place) write(place, label);
  }
  for (const [name, texts] of Object.entries(options ?? {})) {
    for (const option of control(name)?.options ?? []) {
      if (option.value in texts) write(option, texts[option.value]);
    }
  }
}

/** The first control that cannot be used as it stands, or is asked about, if there is one. */
const firstFault = () => controls().find((one) => faulty.has(one));

/**
 * A press that asks for it brings the first control that cannot be used into view, and goes to it.
 * @param {Event} event
 */
function goToFault(event) {
  const one = around(event, "[data-go]") && firstFault();
  if (!one) return;
  unfold(one);
  one.dispatchEvent(new Event("unfold", { bubbles: true })); // whatever else it stands behind
  one.scrollIntoView({ block: "center" });
  one.focus({ preventScroll: true });
}

/**
 * Typing replaces what stands in a field that was tapped; a second tap sets the caret.
 * @param {Event} event
 */
function selectTapped({ target }) {
  if (!(target instanceof HTMLInputElement) || !target.matches("form input, .field input")) return;
  if (target.type !== "text" || target === document.activeElement) return;
  const select = () => target.selectionStart === target.selectionEnd && target.select();
  target.addEventListener("click", select, { once: true });
}

/**
 * Mark what cannot be used, each with its message and the ways out; everything else is cleared.
 * @param {Fault[]} errors
 */
export function showErrors(errors) {
  showFaults(controls(), errors);
  faults = errors;
  sayElsewhere();
  for (const button of document.querySelectorAll("[data-go]")) hide(button, !firstFault());
  const typedIn = document.activeElement?.getAttribute("name");
  const fault = errors.some(({ field }) => field === typedIn);
  // What is wrong and what would help stand in view, above the bar, while the field is typed in.
  if (fault) document.querySelector(`[data-message-for="${typedIn}"]`)?.scrollIntoView({ block: "nearest" });
}

/** @type {WeakSet<Control>} */
const faulty = new WeakSet(); // controls that bear a fault: of all others there is nothing to clear

/**
 * The same for the controls of any form.
 * @param {Control[]} listed
 * @param {Fault[]} errors
 */
export function showFaults(listed, errors) {
  // A field that waits for its first value shows no fault: what to type is said beside the buttons.
  const byField = new Map(errors.filter((error) => !error.awaited).map((error) => [error.field, error]));
  for (const one of listed) {
    const error = byField.get(one.name);
    if (!error && !faulty.has(one)) continue;
    if (error) faulty.add(one);
    else faulty.delete(one);
    if (error && !error.question) one.setAttribute("aria-invalid", "true");
    else one.removeAttribute("aria-invalid");
    showMessage(one.name, error);
    underline(one, error?.part ?? "");
    if (error) unfold(one);
  }
}

const APART = "details, .choices, .column";

/** @param {HTMLElement | undefined} one */
function inSight(one) {
  const { top = 0, bottom = 0 } = one?.getBoundingClientRect() ?? {};
  return top > 0 && bottom < innerHeight * 0.75;
}

/** @type {Fault[]} */
let faults = []; // of the latest answer

/** A message out of sight would be missed: it is said beside the answer too, with the way to its field. */
export function sayElsewhere() {
  const place = document.querySelector("[data-elsewhere]");
  if (!place) return;
  /** @param {Fault} error */
  const isFar = ({ awaited, field }) => !awaited && control(field)?.closest(APART) && !inSight(control(field));
  const far = faults.find(isFar);
  hide(place, !far || document.activeElement?.getAttribute("name") === far.field);
  write(need("span", HTMLElement, place), far?.message ?? "");
}

/** @param {string} name @param {Fault | undefined} error */
function showMessage(name, error) {
  const slot = about("message-for", name);
  if (!slot) return;
  slot.hidden = !error;
  slot.toggleAttribute("data-question", Boolean(error?.question));
  // Made anew only when it differs, so that a button in it keeps the focus.
  const shown = error ? JSON.stringify([error.message, error.offers]) : "";
  if (slot.dataset.shown === shown) return;
  slot.dataset.shown = shown;
  slot.replaceChildren(error?.message ?? "", ...(error?.offers?.length ? [waysOut(error.offers)] : []));
}

/** @param {Offer[]} offers */
function waysOut(offers) {
  const row = document.createElement("span");
  row.className = "ways-out";
  for (const offer of offers) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "plain";
    button.dataset.set = JSON.stringify(offer.set);
    button.textContent = offer.label;
    row.append(button);
  }
  return row;
}

/** @param {Control} one @param {string} part */
function underline(one, part) {
  const marks = !one.options && about("marks-for", one.name);
  if (!marks) return;
  const place = part ? one.value.lastIndexOf(part) : -1;
  marks.textContent = "";
  if (place < 0) return;
  const line = document.createElement("u");
  line.textContent = part;
  marks.append(one.value.slice(0, place), line);
}

// An error in a folded group would be said but not seen.
/** @param {HTMLElement} one */
function unfold(one) {
  const group = one.closest("details");
  if (group) group.open = true;
}

/** A form is never sent; a press goes to what cannot be used, and a tap selects what stands in a field. */
export function listen() {
  document.addEventListener("submit", (event) => event.preventDefault());
  document.addEventListener("click", goToFault);
  document.addEventListener("pointerdown", selectTapped);
}
