// The way of marks into the register. Before they are added it is said what would change there, and what is missing.

import { need } from "./elements.js";
import { add, weigh } from "./kept-register.js";
import { sayIn } from "./said.js";

/** @import { Marked, MarksChange, MarksRange, RegisterEntry } from "../types/shared.js" */

const LISTED = 6; // changes that are told one by one
const ask = need("[data-ask]");
const button = need('[data-do="register"]');
let isGrowing = false;
/** @type {Marked | null} */
let marking = null; // the last marking, with what the register keeps of it

/** @param {string} [name] */
const say = (name) => sayIn("[data-marks-said]", name);

/**
 * Offer a marking to the register; null offers nothing. `grows`: what is not marked yet is to come, and no question is
 * asked about that.
 * @param {Marked | null} reply @param {boolean} [grows]
 */
export function offer(reply, grows = false) {
  marking = reply;
  isGrowing = grows;
  ask.hidden = true;
  button.hidden = !reply?.entry;
}

/** @param {string} name @param {Record<string, string | number>} values */
const told = (name, values) => (ask.dataset[name] ?? "").replace(/\{(\w+)\}/g, (_, one) => String(values[one] ?? ""));

/** @param {MarksRange} marks */
const range = ({ low, high }) => (low === high ? String(low) : told("range", { low, high }));

/** @param {MarksChange} change @param {boolean} isAlone whether the paper has one question */
function changeSaid({ place, name, question = 0, before, after }, isAlone) {
  const values = { who: name || told("learner", { place }), question, before: range(before), after: after ? range(after) : "" };
  if (!after) return told("whole", values);
  return told(isAlone ? "alone" : "one", values);
}

/** @param {Marked} reply @returns {string[]} what is to be known before these marks are added; ranges alone need no asking */
function doubts({ entry, count = 0, left = 0, unread = 0 }) {
  if (!entry) return [];
  const { changes, missing, open } = weigh(entry);
  if (!changes.length && (!missing || isGrowing) && !count && !left && !unread) return [];
  const isAlone = /** @type {RegisterEntry} */ (entry).questions?.length === 1;
  const counts = Object.entries({ refused: count, left, unread, missing, open }).filter(([, many]) => many);
  return [
    ...(changes.length ? [told("replaced", { count: changes.length }), ...changes.slice(0, LISTED).map((one) => changeSaid(one, isAlone))] : []),
    ...(changes.length > LISTED ? [told("more", { count: changes.length - LISTED })] : []),
    ...counts.map(([name, many]) => told(name, { count: many })),
  ];
}

function register() {
  if (!marking) return;
  const listed = doubts(marking);
  if (!listed.length) {
    put();
    return;
  }
  const lines = listed.map((text) => Object.assign(document.createElement("li"), { textContent: text }));
  need("ul", HTMLElement, ask).replaceChildren(...lines);
  ask.hidden = false;
  say();
  need("h3", HTMLElement, ask).focus();
  ask.scrollIntoView({ block: "nearest" });
}

/** @param {boolean} [isTold] whether ranges have been told of before */
function put(isTold) {
  ask.hidden = true;
  const open = !isTold && marking?.entry ? weigh(marking.entry).open : 0;
  if (marking?.entry && add(marking.entry)) say(open ? "addedOpen" : "added");
  button.focus();
  need("[data-marks-said]").scrollIntoView({ block: "nearest" });
}

/** @type {{ register: () => void, "add-anyway": () => void, "add-not": () => void }} */
export const actions = {
  register,
  "add-anyway": () => put(true),
  "add-not": () => {
    ask.hidden = true;
    button.focus();
  },
};
