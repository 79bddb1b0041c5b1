// Changes what stands on a page by the difference between two texts of pycore's: what they share is not looked at, so an
// edit that moves a line costs that line alone. pycore's HTML is regular: each tag is closed, each value stands in quotes.

import { regionHTML } from "./trusted.js";

/**
 * A part of a text: an element with the text of its attributes, or words (`name` is "").
 * @typedef {{ name: string, head: string, source: string, parts: Part[] }} Part
 */

const TOKEN = /<(\/?)([^\s/>]+)([^>]*?)(\/?)>|[^<]+/g;
const ATTRIBUTE = /([^\s="]+)(?:="([^"]*)")?/g;
const TELLS = /\s(?:id|data-(?:step|name|phasor))="[^"]*"/g; // which one of its kind an element is
const CLASS = /\sclass="[^"]*"/;
const ALONE = new Set(["br", "hr", "img", "input"]);
const SIGNS = /** @type {Record<string, string>} */ ({ amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'", nbsp: "\u00a0" });
const OTHER_SIGN = new RegExp(`&(?!(?:${Object.keys(SIGNS).join("|")});)`); // nbsp is the browser's, where it tells what stands there
const MOST = 10_000; // pairs of parts that are worth a comparison

/**
 * Read a text; null if it is none of pycore's.
 * @param {string} source
 * @returns {Part | null}
 */
export function read(source) {
  if (OTHER_SIGN.test(source)) return null;
  const whole = /** @type {Part} */ ({ name: "", head: "", source, parts: [] });
  const open = [whole];
  const starts = [0];
  for (const found of source.matchAll(TOKEN)) {
    const [token, closing, name, head, alone] = found;
    const at = open[open.length - 1];
    if (closing) {
      if (open.length < 2 || at.name !== name) return null;
      at.source = source.slice(starts.pop(), found.index + token.length);
      open.pop();
    } else {
      const part = { name: name ?? "", head: head ?? "", source: token, parts: [] };
      at.parts.push(part);
      if (!name || alone || ALONE.has(name)) continue;
      open.push(part);
      starts.push(found.index);
    }
  }
  return open.length === 1 ? whole : null;
}

/** @param {string} text */
const plain = (text) => (text.includes("&") ? text.replace(/&([^;]*);/g, (_sign, name) => SIGNS[name]) : text);

/** @param {string} head */
const attributesOf = (head) => new Map([...head.matchAll(ATTRIBUTE)].map(([, name, value = ""]) => [name, value]));

/** @param {Element} element @param {Part} was @param {Part} now */
function changeAttributes(element, was, now) {
  // Between the quotes, and beside them: nearly always the names are the same.
  const [one, other] = [was.head.split('"'), now.head.split('"')];
  if (one.length === other.length && one.every((text, place) => place % 2 || text === other[place])) {
    for (let place = 1; place < other.length; place += 2) {
      if (one[place] !== other[place]) element.setAttribute(other[place - 1].slice(0, -1).replace(/.*\s/, ""), plain(other[place]));
    }
    return;
  }
  const [before, after] = [attributesOf(was.head), attributesOf(now.head)];
  for (const name of before.keys()) if (!after.has(name)) element.removeAttribute(name);
  for (const [name, value] of after) if (before.get(name) !== value) element.setAttribute(name, plain(value));
}

/** @param {Part} part */
const kindOf = ({ name, head }) => ({ which: name + (head.match(TELLS)?.join("") ?? ""), like: head.match(CLASS)?.[0] ?? "" });

/** @param {Part} one @param {Part} other */
function isAlike(one, other) {
  if (one.name !== other.name || one.head === other.head) return one.name === other.name;
  const [kind, wanted] = [kindOf(one), kindOf(other)];
  return kind.which === wanted.which && kind.like === wanted.like;
}

/**
 * Which parts stay, go and come: pairs of places, null where there is none. As little as can be goes and comes.
 * @param {Part[]} was @param {Part[]} now
 * @returns {[number | null, number | null][]}
 */
function pairs(was, now) {
  if (was.length === now.length && was.every((part, place) => isAlike(part, now[place]))) return now.map((_part, place) => [place, place]);
  const [kinds, wanted] = [was.map(kindOf), now.map(kindOf)];
  /** What it costs to make one of the other. @param {number} one @param {number} other */
  const change = (one, other) => {
    if (was[one].source === now[other].source) return 0;
    if (kinds[one].which !== wanted[other].which) return Infinity;
    return kinds[one].like === wanted[other].like ? 1 : 1.5;
  };
  // From each pair of places to the ends; what goes or comes costs 1.
  const costs = Array.from({ length: was.length + 1 }, () => new Array(now.length + 1).fill(0));
  for (let one = was.length; one >= 0; one--) {
    for (let other = now.length; other >= 0; other--) {
      if (one === was.length || other === now.length) costs[one][other] = was.length - one + now.length - other;
      else costs[one][other] = Math.min(change(one, other) + costs[one + 1][other + 1], 1 + costs[one + 1][other], 1 + costs[one][other + 1]);
    }
  }
  /** @type {[number | null, number | null][]} */
  const found = [];
  let [one, other] = [0, 0];
  while (one < was.length || other < now.length) {
    const both = one < was.length && other < now.length;
    if (both && costs[one][other] === change(one, other) + costs[one + 1][other + 1]) found.push([one++, other++]);
    else if (one < was.length && costs[one][other] === 1 + costs[one + 1][other]) found.push([one++, null]);
    else found.push([null, other++]);
  }
  return found;
}

/** The node of a part, as it would stand in an element. @param {Element} element @param {Part} part */
function made(element, part) {
  const place = /** @type {Element} */ (element.cloneNode(false));
  place.innerHTML = regionHTML(part.source);
  return place.firstChild;
}

/**
 * Make an element that shows `was` show `now`; false if it does not show `was`, and then it may show anything.
 * @param {Element} element @param {Part} was @param {Part} now
 */
export function patch(element, was, now) {
  const nodes = [...element.childNodes];
  if (nodes.length !== was.parts.length || was.parts.length * now.parts.length > MOST) return false;
  /** @type {ChildNode | null} */
  let next = null;
  for (const [one, other] of pairs(was.parts, now.parts).reverse()) {
    if (one === null || other === null) {
      if (one !== null) nodes[one].remove();
      if (other === null) continue;
      const come = made(element, now.parts[other]);
      if (!come) return false;
      element.insertBefore(come, next);
      next = come;
    } else {
      if (!patchOne(nodes[one], was.parts[one], now.parts[other])) return false;
      next = nodes[one];
    }
  }
  return true;
}

/** @param {ChildNode} node @param {Part} was @param {Part} now */
function patchOne(node, was, now) {
  if (was.source === now.source) return true;
  if (!was.name) {
    if (node.nodeType !== Node.TEXT_NODE) return false;
    node.nodeValue = plain(now.source);
    return true;
  }
  if (!(node instanceof Element) || node.localName !== was.name) return false;
  if (was.head !== now.head) changeAttributes(node, was, now);
  return patch(node, was, now);
}
