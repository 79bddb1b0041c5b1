// The camera's window: the live picture of the device's camera, a frame that turns green when a whole sheet is seen, and a
// button that takes it into the pile. Loaded when it is asked for. Nothing of the live picture is kept or sent.

import { Camera } from "./camera-stream.js";
import { Watch } from "./camera-watch.js";
import { hide, need, write } from "./elements.js";
import { showDialog } from "./layers.js";

/** @import { CameraPile, GlanceReader, PileReply } from "../types/photos.js" */

const LONGER = 1600; // pixels of the picture that is looked at: a QR code needs some for each of its squares
const PAUSE = 120; // ms at least between two glances; as long as the last one took, if that was longer
const PATIENCE = 3000; // ms until watching is tried anew
/** States without a live picture. */
const WITHOUT = new Set(["refused", "missing", "busy", "lacking", "ended"]);
const SETTLING = 2; // glances in which a state must be seen before it is said; a whole sheet is said at once

const dialog = need("[data-camera]", HTMLDialogElement);
/** @param {string} name */
const find = (name) => need(`[data-camera-${name}]`, HTMLElement, dialog);
const byItself = need("[data-camera-by-itself]", HTMLInputElement, dialog);
const camera = new Camera(need("[data-camera-video]", HTMLVideoElement, dialog), () => {
  end();
  show("ended");
  lookOn(edition); // photographs of the camera app are counted still
});

/** @type {CameraPile} */
let pile;
/** @type {GlanceReader | null} */
let reader = null;
let watch = new Watch();
let edition = 0;
let number = 0; // of photographs taken, for the names of their files
let taking = false;
let inView = ""; // the text of the code that was seen last
/** @type {[string, number]} */
let upcoming = ["", 0]; // a state that is not said yet, and how often it was seen
/** @type {Set<string>} */
let before = new Set(); // rows that were there when the window was opened
/** @type {Map<string, PileReply | null>} */
const sheets = new Map(); // what pycore says of a code; null while it is asked
/** @type {Map<string, File>} */
const shots = new Map(); // the last photograph of each sheet that was taken here

/** Open the window over a pile of photographs. @param {CameraPile} asking */
export function open(asking) {
  pile = asking;
  before = new Set(pile.rows().map(({ id }) => id));
  for (const [text, file] of shots) if (!rowOf(file)) shots.delete(text);
  showDialog(dialog);
  begin();
}

/** @param {File | undefined} file */
const rowOf = (file) => pile.rows().find(({ id }) => pile.files.get(id) === file);

/** Whether a sheet is in the pile: as a row that was read, or as a photograph that is being read. @param {string} text */
function inPile(text) {
  const [shot, sheet] = [shots.get(text), sheets.get(text)];
  // Once it is read, its row says which sheet it was: another may have been laid there as the picture was taken.
  if (shot && [undefined, "waiting", "reading"].includes(rowOf(shot)?.state)) return true;
  const form = JSON.stringify(sheet?.form);
  return Boolean(sheet?.ok) && pile.rows().some((row) =>
    row.state !== "fault" && row.page === sheet?.page && row.code === sheet?.code && (row.code || JSON.stringify(row.form) === form));
}

/** What pycore says of a code, once it has said it. @param {string} text */
function sheetOf(text) {
  if (!text || sheets.has(text)) return sheets.get(text) ?? null;
  sheets.set(text, null);
  pile.ask({ move: "sheet", text }).then(
    (reply) => sheets.set(text, reply),
    () => setTimeout(() => sheets.delete(text), PATIENCE), // asked again then
  );
  return null;
}

/** Show what is seen, and say it once. @param {string} state @param {string} [said] in place of the state's own sentence */
function show(state, said = dialog.dataset[state] ?? "") {
  dialog.dataset.state = state;
  write(find("said"), said);
  hide(find("picture"), WITHOUT.has(state));
  const isLost = find("live").contains(document.activeElement) && WITHOUT.has(state);
  hide(find("live"), WITHOUT.has(state));
  if (isLost) need("[data-pile-file]", HTMLInputElement, dialog).focus();
}

/** Show what a glance has seen, once it lasts. @param {string} state @param {string | undefined} said */
function showSoon(state, said) {
  upcoming = [state, upcoming[0] === state ? upcoming[1] + 1 : 1];
  if (state === "ready" || upcoming[1] >= SETTLING) show(state, said);
}

function count() {
  const mine = pile.rows().filter(({ id }) => !before.has(id));
  const unread = mine.filter(({ state }) => state === "fault").length;
  const read = mine.filter(({ state }) => state !== "waiting" && state !== "reading").length - unread;
  const { count: words = "", unread: more = "" } = dialog.dataset;
  const text = (unread ? words + more : words).replace("{taken}", String(mine.length)).replace("{read}", String(read));
  write(find("count"), mine.length ? text.replace("{unread}", String(unread)) : "");
}

/** @param {number} time in ms */
const pause = (time) => new Promise((resolve) => setTimeout(resolve, time));

async function begin() {
  end();
  const mine = edition;
  watch = new Watch();
  show("starting");
  const reason = await camera.start();
  if (mine !== edition || reason === null) return;
  if (reason) show(reason);
  await lookOn(mine);
}

/** Give up the camera, and what looks at its picture. */
function end() {
  edition += 1;
  camera.stop();
  reader?.end();
  reader = null;
  taking = false;
}

/** Look at the picture a few times a second, never at two at once. @param {number} mine */
async function lookOn(mine) {
  while (mine === edition) {
    const began = performance.now();
    let took = PATIENCE; // if it fails
    try {
      count();
      if (camera.isSeen && !taking) await look(mine);
      took = performance.now() - began;
    } catch (error) {
      if (mine !== edition) return;
      reportError(error);
      reader?.end();
      reader = null;
      show("blind");
    }
    await pause(Math.max(PAUSE, took));
  }
}

/** @param {number} mine */
async function look(mine) {
  if (pile.isFull()) {
    show("full");
    return;
  }
  reader ??= pile.reader();
  const known = sheets.get(inView);
  const sheet = known?.ok ? { text: inView, editions: known.editions } : null;
  const seen = await reader.glance(await camera.glance(LONGER), sheet);
  if (mine !== edition || taking) return;
  inView = seen.texts.length === 1 ? seen.texts[0] : "";
  const reply = sheetOf(inView);
  if (inView && !reply) {
    showSoon("code", dialog.dataset.asked); // what its marks are is not known yet
    return;
  }
  const foreign = reply ? !reply.ok : false;
  const { state, isDue } = watch.see(seen, { foreign, inPile: inPile(inView) });
  showSoon(state, foreign ? reply?.announce : undefined);
  if (isDue && byItself.checked) await take();
}

async function take() {
  if (taking || !camera.isSeen || pile.isFull()) return;
  const [mine, text] = [edition, inView];
  taking = true;
  show("taking");
  try {
    number += 1;
    const file = await camera.take(`camera-${number}.jpg`);
    if (mine !== edition) return;
    if (file) {
      if (text) shots.set(text, file);
      pile.take(file);
      watch.took(text);
    }
    upcoming = [file ? "taken" : "untaken", 0];
    show(upcoming[0]);
  } finally {
    if (mine === edition) taking = false;
  }
}

dialog.addEventListener("click", ({ target }) => {
  const pressed = target instanceof Element && target.closest("[data-camera-do]");
  if (!(pressed instanceof HTMLElement)) return;
  if (pressed.dataset.cameraDo === "close") dialog.close();
  else take().catch(reportError);
});
dialog.addEventListener("close", end);
addEventListener("pagehide", end);
document.addEventListener("visibilitychange", () => {
  if (!dialog.open) return;
  if (document.hidden) end();
  else begin();
});
