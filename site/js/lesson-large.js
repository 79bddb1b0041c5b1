// What the device keeps of the classroom view: large print.

const KEY = "phasor-folio-lesson";

/** @param {boolean} on */
export function keep(on) {
  try {
    if (on) localStorage.setItem(KEY, JSON.stringify({ version: 1, large: true }));
    else localStorage.removeItem(KEY);
  } catch {
    // Not kept, but shown.
  }
}

export function kept() {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return found?.version === 1 && found.large === true;
  } catch {
    return false;
  }
}
