// A link that is opened: its own values stand in the fields at once, and until its problem is answered nothing of the
// example stands beside them. `<html data-opening>` says so: "unread" before the fields are filled (watch.js),
// "read" while Python is awaited.

import * as form from "./form.js";
import * as progress from "./progress.js";

const root = document.documentElement;
const LONGEST = 200; // of one value; pycore cuts there too

/** What a link may fill before pycore has read it. */
const OWN = "#problem, [data-holds-values], .method, [data-field=sheet]";

/** @param {string} name @param {Record<string, string>} built */
const isNeeded = (name, built) => Boolean(built[name]) && Boolean(form.control(name)?.closest("#problem .values"));

/** Whether Python has still to come: with it, a problem follows another before anybody could read a word. */
const isAwaited = () => root.dataset.python !== "ready";

/**
 * Fill the fields with the values that a link names, and say what is awaited.
 * @param {string} link
 */
export function begin(link) {
  if (!isAwaited()) return;
  const named = Object.fromEntries(new URLSearchParams(link.replace(/^#/, "")));
  const built = form.initial();
  const needed = Object.keys(built).filter((name) => isNeeded(name, built));
  const own = needed.some((name) => name in named);
  const code = named.code?.trim() ?? "";
  if (!own && !code) {
    end();
    return;
  }
  const listed = form.controls().filter((one) => one.name in named && one.closest(OWN) && one.name !== "code");
  const values = listed.map(({ name }) => [name, named[name].replace(/\p{C}/gu, "").slice(0, LONGEST)]);
  form.fill({ ...Object.fromEntries(needed.map((name) => [name, ""])), ...Object.fromEntries(values) });
  const version = document.getElementById("problem")?.dataset.linkVersion;
  if (!code && named.v === version && JSON.stringify(form.read()) === JSON.stringify(built)) {
    end(); // The example itself was linked to.
    return;
  }
  root.dataset.opening = "read";
  progress.expect(own ? (code ? "problem" : "values") : "code", code);
}

/** On a page without values: what the link asks for is not here yet. */
export function wait() {
  if (!isAwaited()) return;
  if (root.dataset.opening) root.dataset.opening = "read";
  progress.expect("link");
}

/** The page shows what the link asks for, or never had another's values. Its moves follow. */
export function end() {
  if (root.dataset.opening === "read") root.dataset.follows = "workings";
  delete root.dataset.opening;
  progress.expect();
}
