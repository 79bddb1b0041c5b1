// The page of a college's settings: what is its own beside set-page.js.

import * as college from "./college.js";
import { around, controlOf, need } from "./elements.js";
import * as form from "./form.js";
import { follow, saveFile, works } from "./kept.js";
import * as setPage from "./set-page.js";
import { failed, open, say, update } from "./set-page.js";

/** @import { AnswerReply, Values } from "../types/shared.js" */

const state = need("[data-state]");
const file = need("[data-settings-file]", HTMLInputElement);
/** @type {Values | null} */
let usable = null; // the settings of the form, if they can be used

/** @param {Values} values */
const asText = (values) => JSON.stringify(Object.entries(values).sort());

function showState() {
  const kept = college.chosen();
  const isNone = Object.keys(kept).length === 0;
  const isSame = usable !== null && asText(kept) === asText(usable);
  const name = isNone && (usable === null || isSame) ? "none" : isSame ? "inUse" : "notInUse";
  state.textContent = state.dataset[isNone || works("college") ? name : "notStored"] ?? "";
  need('[data-do="stop-using"]').hidden = isNone;
  need('[data-do="use"]', HTMLButtonElement).disabled = usable === null || isSame;
}

/** @param {Values} values */
function show(values) {
  form.fill({ ...form.initial(), ...values });
  return update();
}

/** @type {Record<string, () => unknown>} */
const actions = {
  use: () => {
    if (usable && college.use(usable)) say("used");
    showState();
  },
  "stop-using": () => {
    college.use(null);
    say("stopped");
    showState();
  },
  share: setPage.share,
  save: () => saveFile({ name: "college-settings.json", text: JSON.stringify({ ...college.FILE, chosen: usable ?? {} }, null, 1) }),
};

document.addEventListener("click", async (event) => {
  try {
    await actions[around(event, "[data-do]")?.dataset.do ?? ""]?.();
  } catch (error) {
    failed(error);
  }
});

document.addEventListener("input", (event) => {
  if (controlOf(event)?.form?.id !== "problem") return;
  say("");
  usable = null;
  showState();
  setPage.updateSoon();
});

file.addEventListener("change", async () => {
  const [chosen] = file.files ?? [];
  if (!chosen) return;
  const values = college.read(await chosen.text());
  file.value = "";
  if (!values) {
    say("badFile");
    return;
  }
  await show(values);
  say("opened");
});

follow("college", showState);

/** @param {AnswerReply} reply */
function answered(reply) {
  usable = reply.chosen ?? null;
  showState();
}

/** @param {string} hash */
function openOwn(hash) {
  (hash.length > 1 ? open(hash) : show(college.chosen())).catch(failed);
}

setPage.begin("college-settings", answered, openOwn);
