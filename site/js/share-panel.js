// The large code for the back row, and the link behind it: copied, or given to the device's own share sheet. While the
// values are given as a problem also its sheet and its handout; pycore leaves the answer out of all of them.

import { base, savePDF } from "./actions.js";
import { regionHTML } from "./bridge.js";
import { around, need } from "./elements.js";
import * as form from "./form.js";
import * as handout from "./handout.js";
import { addQuestion, MOST_QUESTIONS } from "./kept-papers.js";
import { showDialog } from "./layers.js";

/** @import { Values } from "../types/shared.js" */
/** @import { Bridge } from "./bridge.js" */

const dialog = need("[data-share-panel]", HTMLDialogElement);
const link = need("input", HTMLInputElement, dialog);
const [note, said, told] = ["note", "said", "told"].map((mark) => need(`[data-share-${mark}]`, HTMLElement, dialog));
const drawn = need('[data-lesson-region="code"]', HTMLElement, dialog);
const paperLink = need("[data-share-paper]", HTMLElement, dialog);
const copied = need("[data-said]").dataset.copied ?? "";

async function copy() {
  try {
    await navigator.clipboard.writeText(link.value);
    said.textContent = copied;
  } catch {
    link.focus(); // Selected, it can be copied by hand.
    link.select();
  }
}

async function send() {
  try {
    await navigator.share({ title: document.title, url: link.value });
  } catch (error) {
    if (!(error instanceof Error && error.name === "AbortError")) await copy();
  }
}

/**
 * Save a file of the problem, and say so.
 * @param {(bridge: Bridge, more: { problem: boolean }) => Promise<boolean>} saved
 * @param {string} name of the sentence
 */
async function file(saved, name) {
  if (!giver) return;
  said.textContent = "";
  try {
    if (await saved(giver.bridge, { problem: true })) said.textContent = said.dataset[name] ?? "";
  } catch (error) {
    giver.failed(error);
  }
}

/** Put the problem at the end of the question paper that is being put together on this device. */
function toPaper() {
  const number = addQuestion(document.documentElement.dataset.slug ?? "", link.value);
  const words = number ? said.dataset.inPaper : said.dataset.paperFull;
  said.textContent = (words ?? "").replace("{number}", String(number)).replace("{most}", String(MOST_QUESTIONS));
  paperLink.hidden = false;
}

/** @type {{ bridge: Bridge, failed: (error: unknown) => void } | null} */
let giver = null; // while the values are given as a problem

/** @type {Record<string, () => unknown>} */
const doings = {
  copy, send, close: () => dialog.close(),
  sheet: () => file(savePDF, "saved"), handout: () => file(handout.save, "handed"),
  paper: toPaper,
};

need('[data-share-do="send"]', HTMLElement, dialog).hidden = !navigator.share;
dialog.addEventListener("click", (event) => doings[around(event, "[data-share-do]")?.dataset.shareDo ?? ""]?.());

/** The words and buttons of a problem, or the usual ones. */
function dress() {
  for (const one of dialog.querySelectorAll("[data-giving]")) {
    one.textContent = (giver ? one.dataset.giving : one.dataset.usual) ?? "";
  }
  need("[data-share-files]", HTMLElement, dialog).hidden = !giver;
  dialog.toggleAttribute("data-gives", Boolean(giver));
}

/**
 * Open for the form as it stands, and for a place in the lesson if there is one.
 * @param {Bridge} bridge
 * @param {Values | null} lesson
 */
export function open(bridge, lesson = null) {
  giver = null;
  return show(bridge, { lesson });
}

/**
 * Give the values of the form as a problem.
 * @param {Bridge} bridge
 * @param {(error: unknown) => void} failed
 */
export function give(bridge, failed) {
  giver = { bridge, failed };
  return show(bridge, { problem: true });
}

/** @param {Bridge} bridge @param {Record<string, unknown>} more */
async function show(bridge, more) {
  const page = document.documentElement.dataset.slug;
  const asked = { do: /** @type {const} */ ("share"), page, form: form.read(), base: base(), code: true, needs: ["codes"] };
  const reply = await bridge.ask({ ...asked, ...more });
  if (!reply.ok) return;
  dress();
  drawn.innerHTML = regionHTML(reply.regions.code);
  dialog.toggleAttribute("data-no-code", !reply.regions.code);
  note.textContent = reply.note;
  note.hidden = !reply.note;
  told.textContent = reply.told ?? "";
  told.hidden = !reply.told;
  link.value = reply.link;
  said.textContent = "";
  paperLink.hidden = true;
  showDialog(dialog);
}
