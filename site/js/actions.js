// What a person can do with a sheet: print it, save it as PDF, share its link.

import * as device from "./device.js";
import { download } from "./download.js";
import { around, hide, need, write } from "./elements.js";
import { byItself } from "./embedded.js";
import * as form from "./form.js";
import * as linkRow from "./link-row.js";
import * as spoken from "./said.js";

/** @import { Say } from "../types/shared.js" */
/** @import { Bridge } from "./bridge.js" */

/** @typedef {(bridge: Bridge, live: Say, complete: () => Promise<boolean>) => unknown} Action */

const said = need("[data-said]");
const slug = document.documentElement.dataset.slug ?? "";

/** The page's address without its fragment: where the site was built for, or else where it is, by itself. */
export const base = () => document.documentElement.dataset.base ?? byItself(location.href.replace(/[?#].*$/, ""));

/**
 * Say a sentence of pycore's below the buttons.
 * @param {string} sentence
 */
export function say(sentence) {
  said.textContent = "";
  said.textContent = sentence;
}

/**
 * Say a sentence beside the buttons and to screen readers.
 * @param {string} sentence
 */
export function announce(sentence) {
  say(sentence);
  spoken.live(sentence);
}

/**
 * Save the sheet as PDF; gives whether there was one. `more`: which kinds of sheet, or that it is given as a problem.
 * @param {Bridge} bridge
 * @param {{ kinds?: string[], problem?: boolean }} more
 */
export async function savePDF(bridge, more = {}) {
  const correction = device.factors(document.querySelector("[data-region=sheet] .paper")?.dataset.page);
  const asked = { page: slug, form: form.read(), base: base(), code: true, needs: ["codes"] };
  const reply = await bridge.ask({ do: "pdf", ...asked, correction, ...more });
  if (reply.ok) download(reply);
  return reply.ok;
}

/** @param {Bridge} bridge @param {Say} live @param {string[] | undefined} kinds */
async function pdf(bridge, live, kinds = undefined) {
  if (!(await savePDF(bridge, { kinds }))) return;
  told("saved");
  live(said.dataset.saved ?? "");
}

/** @param {Bridge} bridge @param {Say} live */
async function share(bridge, live) {
  const reply = await bridge.ask({ do: "share", page: slug, form: form.read(), base: base() });
  if (!reply.ok) return;
  linkRow.hide();
  try {
    if (navigator.share && matchMedia("(pointer: coarse)").matches) {
      await navigator.share({ title: document.title, url: reply.link });
      return;
    }
    await navigator.clipboard.writeText(reply.link);
    told("copied");
    live(said.dataset.copied ?? "");
  } catch (error) {
    if (!(error instanceof Error && error.name === "AbortError")) linkRow.show(reply.link);
  }
}

/** @param {Bridge} _bridge @param {Say} _live @param {() => Promise<boolean>} complete */
async function print(_bridge, _live, complete) {
  if (await complete()) window.print();
}

/** @type {Record<string, Action>} */
const actions = {
  pdf: (bridge, live) => pdf(bridge, live),
  "pdf-all": (bridge, live) => pdf(bridge, live, ["problem", "construction", "overlay"]),
  share,
  print,
};

/**
 * Say what was done, by the name of its sentence.
 * @param {string} name
 */
export function told(name) {
  say(said.dataset[name] ?? "");
}

/**
 * Let the button `name` do something more than this module knows; `run(bridge, live, complete)`.
 * @param {string} name
 * @param {Action} run
 */
export function add(name, run) {
  actions[name] = run;
}

/**
 * Carry out the buttons; `live(sentence)` announces. What must wait says why instead. `bringSheet()` brings the sheet
 * up to date, null where it is; `complete()` does with all that is printed, and gives whether it may be printed.
 * @param {Bridge} bridge
 * @param {Say} live
 * @param {(error: unknown) => void} failed
 * @param {{ complete?: () => Promise<boolean>, bringSheet?: () => Promise<void> | null }} sheet
 */
export function listen(bridge, live, failed, { complete = async () => true, bringSheet = () => null } = {}) {
  document.addEventListener("click", async (event) => {
    const button = around(event, "[data-action]");
    if (!button) return;
    if (button.getAttribute("aria-disabled") === "true") {
      live(need("[data-waiting]").textContent ?? "");
      return;
    }
    if (button.ariaBusy === "true") return;
    button.ariaBusy = "true";
    try {
      const coming = bringSheet();
      if (coming) await coming; // what need not wait begins with the press
      await actions[button.dataset.action ?? ""]?.(bridge, live, complete);
    } catch (error) {
      failed(error);
    } finally {
      button.ariaBusy = null;
    }
  });
}

/** Take back what was said of an earlier action: it holds no longer. */
export function forget() {
  say("");
  linkRow.hide();
}

/**
 * Let the buttons wait (with the sentence that says for what), or not; the actions `but` never.
 * @param {string} sentence
 * @param {string[]} but
 */
export function wait(sentence, but = []) {
  for (const button of document.querySelectorAll("[data-action]")) {
    if (sentence && !but.includes(button.dataset.action ?? "")) {
      button.setAttribute("aria-disabled", "true");
      button.setAttribute("aria-describedby", "waiting");
    } else {
      button.removeAttribute("aria-disabled");
      button.removeAttribute("aria-describedby");
    }
  }
  write(need("[data-waiting]"), sentence);
  hide(need("#waiting"), !sentence);
}
