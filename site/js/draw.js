// Drawing the construction by one's own hand on the screen: loaded only when it is asked for. It knows paper, instruments
// and lines in mm; pycore gets the lines and says what is right.

import { regionHTML } from "./bridge.js";
import { listen as listenToButtons } from "./draw-buttons.js";
import { Desk } from "./draw-desk.js";
import { listen as listenToHand } from "./draw-hand.js";
import { listen as listenToKeys } from "./draw-keys.js";
import * as form from "./form.js";
import { showDialog } from "./layers.js";
import { showWay } from "./practice-way.js";
import * as veil from "./veil.js";

/** @import { DrawPage } from "../types/draw-page.js" */

const NEEDS = ["photo", "draw"]; // the lazy parts of pycore that measure and that judge
const STYLES = ["draw", "draw-bar", "draw-paper", "draw-small"];
const WIDE = "(min-width: 75em)"; // as in draw.css: words stand beside the paper
const slug = document.documentElement.dataset.slug ?? "";
const dialog = document.createElement("dialog");
/** @type {Desk | null} */
let desk = null;
/** @type {() => void} */
let changed = () => {};
/** @type {DrawPage["readOff"]} */
let readOff = () => {};

/** @param {string} name */
function style(name) {
  return new Promise((resolve) => {
    const link = document.createElement("link");
    link.rel = "stylesheet";
    link.href = new URL(`../css/${name}.css`, import.meta.url).href;
    link.onload = link.onerror = resolve;
    document.head.append(link);
  });
}

/**
 * Open the view for the form as it stands.
 * @param {DrawPage} page
 */
export async function open(page) {
  const problem = { page: slug, form: form.read(), needs: NEEDS, ...veil.asked() };
  const [reply] = await Promise.all([
    page.bridge.ask({ do: "draw", ...problem }, { topic: "draw" }),
    ...(dialog.isConnected ? [] : STYLES.map(style)),
  ]);
  if (!reply.ok) {
    page.said(reply.announce);
    return;
  }
  if (dialog.open) return;
  if (!dialog.isConnected) {
    dialog.className = "draw over-page";
    dialog.setAttribute("aria-labelledby", "draw-title");
    document.body.append(dialog);
    dialog.addEventListener("close", closed);
  }
  ({ changed, readOff } = page);
  dialog.innerHTML = regionHTML(reply.regions.draw);
  showDialog(dialog);
  desk = new Desk(dialog, page, reply, problem);
  listenToHand(desk);
  listenToKeys(desk, listenToButtons(desk));
  begin(desk);
  changed();
}

/** @param {Desk} opened */
function begin(opened) {
  const { view, drawing, board } = opened;
  view.fit();
  if (matchMedia(WIDE).matches) opened.unfold("all");
  opened.lay();
  opened.showAll(false);
  opened.setVerb("place");
  opened.redraw();
  showWay(opened.dialog, opened.problem.form.code);
  if (drawing.ops.length) opened.prompt(opened.words.said("back"));
  board.focus({ preventScroll: true });
}

/** Whether the view is open. */
export const isOpen = () => desk !== null;

/** Close it, as a link to elsewhere does. */
export const close = () => dialog.open && dialog.close();

function closed() {
  if (desk) readOff(desk.reading.values, desk.reading.isNew);
  desk?.leave();
  desk = null;
  dialog.replaceChildren();
  changed();
  if (document.activeElement !== document.body) return;
  /** @type {NodeListOf<HTMLElement>} */
  const ways = document.querySelectorAll('[data-action="draw"]');
  [...ways].find((way) => way.checkVisibility())?.focus();
}
