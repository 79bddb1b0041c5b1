// The link back to Practice: seen where the problem is the one that is in hand there.

import { hide } from "./elements.js";
import * as store from "./practice-store.js";

/** @param {string} code */
function isInHand(code) {
  const record = /** @type {any} */ (store.read());
  return Boolean(code) && record?.ways?.[record.way]?.code === code;
}

/** @param {ParentNode} place @param {string} code */
export function showWay(place, code) {
  for (const way of place.querySelectorAll("[data-in-practice]")) hide(way, !isInHand(code));
}
