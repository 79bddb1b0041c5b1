// The large code for the back row, and the link behind it: copied, or given to the device's own share sheet.

import { base } from "./actions.js";
import { regionHTML } from "./bridge.js";
import { around, need } from "./elements.js";
import * as form from "./form.js";

/** @import { Values } from "../types/shared.js" */
/** @import { Bridge } from "./bridge.js" */

const dialog = need("[data-share-panel]", HTMLDialogElement);
const link = need("input", HTMLInputElement, dialog);
const [note, said] = ["note", "said"].map((mark) => need(`[data-share-${mark}]`, HTMLElement, dialog));
const drawn = need('[data-lesson-region="code"]', HTMLElement, dialog);
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

/** @type {Record<string, () => unknown>} */
const doings = { copy, send, close: () => dialog.close() };

need('[data-share-do="send"]', HTMLElement, dialog).hidden = !navigator.share;
dialog.addEventListener("click", (event) => doings[around(event, "[data-share-do]")?.dataset.shareDo ?? ""]?.());

/**
 * Open for the form as it stands, and for a place in the lesson if there is one.
 * @param {Bridge} bridge
 * @param {Values | null} lesson
 */
export async function open(bridge, lesson = null) {
  const page = document.documentElement.dataset.slug;
  const asked = { do: /** @type {const} */ ("share"), page, form: form.read(), base: base(), code: true, needs: ["codes"], lesson };
  const reply = await bridge.ask(asked);
  if (!reply.ok) return;
  drawn.innerHTML = regionHTML(reply.regions.code);
  dialog.toggleAttribute("data-no-code", !reply.regions.code);
  note.textContent = reply.note;
  note.hidden = !reply.note;
  link.value = reply.link;
  said.textContent = "";
  dialog.showModal();
}
