// The page of the register: what this device keeps of marked papers goes to pycore, tables come back.

import { Bridge, Stuck, Superseded } from "./bridge.js";
import * as college from "./college.js";
import { actOnPress, need } from "./elements.js";
import { follow, saveFile } from "./kept.js";
import * as kept from "./kept-register.js";
import { saveTable } from "./long-work.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import { live } from "./said.js";
import { markAnswer } from "./state.js";

/** @import { RegisterEntry } from "../types/shared.js" */

const page = "register";
const root = document.documentElement;
const said = need("[data-said]");
const file = need("[data-register-file]", HTMLInputElement);
const bridge = new Bridge((state, detail) => {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
});
/** @type {RegisterEntry | null} */
let erased = null;

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Superseded) return;
  markAnswer("old");
  live(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

/** @param {string} name */
function say(name) {
  said.textContent = said.dataset[name] ?? "";
}

const request = () => ({ page, form: {}, papers: kept.asked() });

async function update() {
  markAnswer("pending");
  try {
    const reply = await bridge.ask({ do: "answer", ...request() }, { topic: "answer" });
    markAnswer(reply.ok ? "fresh" : "old");
    if (reply.ok) regions.replace("register", reply.regions.register);
  } catch (error) {
    failed(error);
  }
}

function show() {
  need('[data-do="undo"]').hidden = !erased;
  return update();
}

/** @type {Record<string, (button: HTMLElement) => unknown>} */
const actions = {
  erase: ({ dataset }) => {
    erased = kept.papers().find(({ paper, group }) => paper === dataset.code && group === dataset.group) ?? null;
    if (erased) kept.erase(erased);
    say("erased");
    return show().then(() => need('[data-do="undo"]').focus());
  },
  undo: () => {
    if (erased) kept.putBack(erased);
    erased = null;
    say("back");
    return show();
  },
  "save-file": () => saveFile({ name: "phasor-folio-register.json", text: kept.fileText() }),
  "save-table": async () => {
    const tableSaid = await saveTable(bridge, { do: "begin", work: "table", college: college.chosen(), ...request() });
    if (tableSaid !== null) said.textContent = tableSaid;
  },
};

actOnPress(actions, failed);

file.addEventListener("change", async () => {
  const [chosen] = file.files ?? [];
  if (!chosen) return;
  say(kept.load(await chosen.text()) ? "loaded" : "badFile");
  file.value = "";
  await show();
});

function start() {
  root.dataset.python = "starting";
  progress.begin(() => {
    start();
    update();
  });
  bridge.start();
}

follow("register", show);
show();
start();
