// The pile of photographs as this device keeps it: rows without the photographs themselves. Names and marks are the
// lecturer's alone: in no link, never sent.

import * as store from "./kept.js";

/** @import { PileRow } from "../types/photos.js" */

const VERSION = 1;

/** The rows of the pile. @returns {PileRow[]} */
export function rows() {
  try {
    const value = JSON.parse(store.read("pile") ?? "null");
    const listed = value?.version === VERSION && Array.isArray(value.rows) ? value.rows : [];
    return listed.filter((/** @type {any} */ one) => one && typeof one.id === "string" && typeof one.state === "string");
  } catch {
    return [];
  }
}

/** Keep the rows; gives whether the browser let it. @param {PileRow[]} list */
export function keep(list) {
  if (list.length) store.stay();
  return store.write("pile", list.length ? JSON.stringify({ version: VERSION, rows: list }) : null);
}
