// The form: the only state of a page. Reads it, fills it, and shows what is wrong beside the control.

const form = document.getElementById("problem");

export const controls = () => [...form.elements].filter((control) => control.name);

export const control = (name) => controls().find((one) => one.name === name);

/** Every named control's text, as pycore reads it. */
export function read() {
  return Object.fromEntries(controls().map((one) => [one.name, one.value]));
}

/** Every named control's text as the page was built, whatever a browser has restored since. */
export function initial() {
  const asBuilt = (one) =>
    one.options ? ([...one.options].find((option) => option.defaultSelected) ?? one.options[0])?.value ?? "" : one.defaultValue;
  return Object.fromEntries(controls().map((one) => [one.name, asBuilt(one)]));
}

/** Put values into the controls; unknown names are left alone. Gives the names that changed. */
export function fill(values) {
  const changed = [];
  for (const one of controls()) {
    const value = values[one.name];
    if (typeof value !== "string" || value === one.value) continue;
    one.value = value;
    changed.push(one.name);
  }
  return changed;
}

/** An edit of a power factor or its sense writes the field it belongs to. */
export function followFactor(edited) {
  const name = edited.dataset.factorOf ?? edited.dataset.senseOf;
  if (!name) return;
  const factor = form.elements.namedItem(`pf-${name}`);
  const sense = document.querySelector(`[data-sense-of="${CSS.escape(name)}"]`);
  control(name).value = `${factor.value} ${sense.value}`;
}

/** Show how pycore understood the inputs, without touching what is being typed. */
export function showEcho(echo) {
  for (const [name, heard] of Object.entries(echo ?? {})) {
    const words = document.querySelector(`[data-echo-for="${CSS.escape(name)}"]`);
    const typed = control(name)?.value;
    if (words) words.textContent = heard.degrees === `${typed}°` ? "" : (heard.degrees ?? "");
    const factor = document.querySelector(`[data-factor-of="${CSS.escape(name)}"]`);
    const sense = document.querySelector(`[data-sense-of="${CSS.escape(name)}"]`);
    if (factor && factor !== document.activeElement && sense !== document.activeElement) {
      factor.value = heard.factor ?? "";
    }
    if (sense && sense !== document.activeElement && factor !== document.activeElement && heard.sense) {
      sense.value = heard.sense;
    }
  }
}

/** Give every line sample the ink that its line has now. */
export function showInks(inks) {
  for (const [name, ink] of Object.entries(inks ?? {})) {
    for (const sample of document.querySelectorAll(`[data-sample="${CSS.escape(name)}"]`)) {
      sample.setAttribute("class", `sample sample-${name} ink-${ink}`);
    }
  }
}

/** Mark what cannot be used, each with its message; everything else is cleared. */
export function showErrors(errors) {
  const byField = new Map(errors.map((error) => [error.field, error]));
  for (const one of controls()) {
    const error = byField.get(one.name);
    if (error) one.setAttribute("aria-invalid", "true");
    else one.removeAttribute("aria-invalid");
    const slot = document.querySelector(`[data-message-for="${CSS.escape(one.name)}"]`);
    if (slot) {
      slot.textContent = error?.message ?? "";
      slot.hidden = !error;
    }
    underline(one, error?.part ?? "");
    if (error) unfold(one);
  }
}

function underline(one, part) {
  const marks = document.querySelector(`[data-marks-for="${CSS.escape(one.name)}"]`);
  if (!marks) return;
  const place = part ? one.value.lastIndexOf(part) : -1;
  marks.textContent = "";
  if (place < 0) return;
  const line = document.createElement("u");
  line.textContent = part;
  marks.append(one.value.slice(0, place), line);
}

// An error in a folded group would be said but not seen.
function unfold(one) {
  const group = one.closest("details");
  if (group) group.open = true;
}
