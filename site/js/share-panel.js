// The large code for the back row, and the link behind it: copied, or given to the device's own share sheet.

import { base } from "./actions.js";
import { regionHTML } from "./bridge.js";
import * as form from "./form.js";

const dialog = document.querySelector("[data-share-panel]");
const link = dialog.querySelector("input");
const [note, said] = ["note", "said"].map((mark) => dialog.querySelector(`[data-share-${mark}]`));
const drawn = dialog.querySelector('[data-lesson-region="code"]');
const copied = document.querySelector("[data-said]").dataset.copied;

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
    if (error.name !== "AbortError") await copy();
  }
}

const doings = { copy, send, close: () => dialog.close() };

dialog.querySelector('[data-share-do="send"]').hidden = !navigator.share;
dialog.addEventListener("click", (event) => doings[event.target.closest("[data-share-do]")?.dataset.shareDo]?.());

/** Open for the form as it stands, and for a place in the lesson if there is one. */
export async function open(bridge, lesson = null) {
  const page = document.documentElement.dataset.slug;
  const asked = { do: "share", page, form: form.read(), base: base(), code: true, needs: ["codes"], lesson };
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
