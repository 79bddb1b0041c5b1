// What this device keeps of practice: one key of the browser's storage. Where storage is refused it lasts until the
// page is closed. Whether it is a record of ours, pycore decides.

/** @import { PracticeRecord } from "../types/shared.js" */

const KEY = "phasor-folio-practice";

/** @type {PracticeRecord | null} */
let kept = null; // the record when storage is refused
let working = true;

/**
 * The record as it is kept; null where there is none.
 * @returns {PracticeRecord | null}
 */
export function read() {
  let text = null;
  try {
    text = localStorage.getItem(KEY);
  } catch {
    working = false;
  }
  if (!working) return kept;
  if (text === null) return null;
  try {
    return JSON.parse(text) ?? {};
  } catch {
    return {}; // No record: pycore says so, and begins anew.
  }
}

/**
 * Keep a record.
 * @param {PracticeRecord} record
 */
export function write(record) {
  kept = record;
  try {
    localStorage.setItem(KEY, JSON.stringify(record));
    working = true;
  } catch {
    working = false;
  }
}

/** Keep nothing. */
export function forget() {
  kept = null;
  try {
    localStorage.removeItem(KEY);
  } catch {
    working = false;
  }
}

/**
 * Whether a change of this key of the storage, null for all of it, is one of the record.
 * @param {string | null} key
 */
export const holds = (key) => key === KEY || key === null;

/** Whether the browser keeps what it is given. */
export const works = () => working;

/** A number of this device's own, with which a new record begins. */
export const seed = () => crypto.getRandomValues(new Uint16Array(1))[0];
