// What this device keeps of a class: the list of names and the answers as they were typed, until they are erased, and
// the link of the set that was last shown, so that the page opens with it. Names and answers are the lecturer's alone:
// in no link, in no request that leaves the device.

const KEY = "phasor-folio-class";
const VERSION = 1;
/** @type {Record<string, number>} */
const PARTS = { roll: 400_000, results: 150_000, set: 2000 }; // by name, the most characters that are kept

/** @param {unknown} value @param {number} most @returns {value is string} */
const isText = (value, most) => typeof value === "string" && value.length <= most;

/** @returns {Record<string, unknown>} */
function found() {
  try {
    const value = JSON.parse(localStorage.getItem(KEY) ?? "null");
    return value && value.version === VERSION ? value : {};
  } catch {
    return {};
  }
}

/**
 * What is kept under a name, "" if nothing of ours is.
 * @param {string} name
 */
export function kept(name) {
  const value = found()[name];
  return isText(value, PARTS[name]) ? value : "";
}

/**
 * Keep a text, or forget it if it is empty; gives whether the browser let it.
 * @param {string} name
 * @param {string} text
 */
export function keep(name, text) {
  const texts = Object.fromEntries(Object.keys(PARTS).map((part) => [part, part === name ? text : kept(part)]));
  try {
    if (Object.values(texts).some(Boolean)) localStorage.setItem(KEY, JSON.stringify({ version: VERSION, ...texts }));
    else localStorage.removeItem(KEY);
    return true;
  } catch {
    return false;
  }
}
