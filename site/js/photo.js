// Checking a drawing by photograph: loaded only when it is asked for. The photo stays in this page's memory and is gone
// when the panel is closed; pycore gets points and gives sentences, a table and the true drawing's lines.

import { regionHTML, Superseded } from "./bridge.js";
import { download } from "./download.js";
import { around, need } from "./elements.js";
import * as form from "./form.js";
import { showDialog } from "./layers.js";
import { MEASURED, opened, turned, turnsToUpright } from "./photo-file.js";
import { findMarks } from "./photo-marks.js";
import { Picture } from "./photo-picture.js";
import { styled } from "./photo-style.js";
import * as veil from "./veil.js";

/** @import { Pair, Path, PhotoReply, Point, Say, SheetMark, Tap, Values } from "../types/shared.js" */
/** @import { Bridge } from "./bridge.js" */
/** @import { Handle } from "./photo-picture.js" */
/** @import { PhotoTask } from "../types/photos.js" */

const LEAST = 500;
const MARK_INSET = 0.16;
const NEEDS = ["photo"]; // the lazy part of pycore that measures
const SURE = 1.2; // pixels: how well a point is set at best
const SOME = 4; // so many marks are those of some sheet

let slug = document.documentElement.dataset.slug ?? "";
/** @param {string} name */
const find = (name) => need(`[data-photo-${name}]`, HTMLElement, dialog);
/** @param {string} name */
const button = (name) => need(`[data-photo-do="${name}"]`, HTMLButtonElement, dialog);
/** @param {string} name */
const sentence = (name) => find("panel").dataset[name] ?? "";
/** @param {string} name */
const choice = (name) => need(`[data-photo-set="${name}"]`, HTMLSelectElement, dialog).value;

const dialog = document.createElement("dialog");
/** @type {{ bridge: Bridge, failed: (error: unknown) => void, said: Say }} */
let page;
/** @type {PhotoReply} */
let asked; // pycore's reply: marks, corners, taps
let task = /** @type {PhotoTask | null} */ (null); // what another page than the sheet's own wants checked
/** @type {Values} */
let problem; // the form that is being checked
/** @type {Picture | null} */
let shown = null; // the picture, while the panel is open
/** @type {(Point | null)[]} */
let marks = []; // { x, y } or null, as `places` has them
/** @type {(Pair | null)[] | null} */
let rings = null; // width and height of the ring of each mark that was found and stands where it was found
/** @type {Set<number>} */
let untouched = new Set(); // marks whose rings lie where they were laid
/** @type {(Handle | null)[]} */
let taps = []; // handles, in the order of asked.taps; null for what is not drawn yet
let byHand = false;
/** @type {Path[]} */
let overlay = [];
let edition = 0;
/** @type {"marks" | "older" | ""} */
let printed = ""; // which marks the sheet has: those of today, those of before, or not known

function picture() {
  if (!shown) throw new Error("the panel is closed");
  return shown;
}

const ground = () => choice("ground");
const dragging = () => sentence(ground() === "marks" ? "drag" : "corners");
const places = () => (ground() !== "marks" ? asked.corners : printed === "older" ? asked.older : asked.marks);

/**
 * Open the panel for the form as it stands, or for what another page wants checked.
 * @param {Bridge} bridge
 * @param {(error: unknown) => void} failed
 * @param {Say} said
 * @param {PhotoTask | null} wanted
 */
export async function open(bridge, failed, said, wanted = null) {
  page = { bridge, failed, said };
  task = wanted;
  [slug, problem] = task ? [task.slug, task.form] : [slug, form.read()];
  const [reply] = await Promise.all([
    bridge.ask({ do: "photo", page: slug, form: problem, needs: NEEDS }, { topic: "photo" }),
    dialog.isConnected ? null : styled(),
  ]);
  if (!reply.ok) {
    page.said(reply.announce);
    return;
  }
  asked = reply;
  if (!dialog.isConnected) {
    dialog.className = "photo over-page";
    dialog.setAttribute("aria-labelledby", "photo-title");
    document.body.append(dialog);
    dialog.addEventListener("click", pressed);
    dialog.addEventListener("change", changed);
    dialog.addEventListener("close", forget);
  }
  dialog.innerHTML = regionHTML(reply.regions.photo);
  shown = new Picture(find("panel"));
  find("picture").tabIndex = 0;
  stage("choose");
  changed();
  showDialog(dialog);
  if (task) attended(take(task.file));
}

// The photo is not kept: closing the panel lets go of every pixel of it.
function forget() {
  edition += 1;
  dialog.replaceChildren();
  shown = null;
  marks = taps = overlay = [];
  task?.closed();
  task = null;
}

/** @param {...string} sentences */
function prompt(...sentences) {
  const line = find("prompt");
  // A shorter sentence leaves its place as high as it was: the picture must not move from under the finger.
  if (dialog.dataset.stage === "marks") line.style.minHeight = getComputedStyle(line).height;
  line.textContent = sentences.join(" ");
}

/**
 * Ask for a point of the drawing, its symbol set as it is on the sheet.
 * @param {Tap | undefined} tap
 */
function ask(tap) {
  if (tap) find("prompt").innerHTML = regionHTML(tap.ask);
}

/** @param {string} name */
function stage(name) {
  dialog.dataset.stage = name;
  find("prompt").style.minHeight = "";
  for (const part of dialog.querySelectorAll("[data-photo-stage]")) {
    part.hidden = (part.dataset.photoStage === "choose") !== (name === "choose");
  }
  button("marks-done").hidden = button("turn").hidden = name !== "marks";
  button("not-drawn").hidden = name !== "taps" || taps.length >= asked.taps.length;
  button("move-marks").hidden = name !== "taps" && name !== "result";
  button("back").hidden = name !== "taps" || taps.length === 0;
  button("whole").hidden = name !== "taps" && name !== "result";
  button("again").hidden = name === "choose" || task !== null;
  button("overlay").hidden = button("save").hidden = name !== "result" || veil.isDown();
  find("help").hidden = name !== "taps";
  find("help").textContent = sentence(byHand ? "steer" : "found");
  if (name !== "result") find("result").replaceChildren();
}

// The photo.

/** @param {Event | undefined} event */
function changed(event = undefined) {
  for (const part of dialog.querySelectorAll("[data-photo-for]")) part.hidden = part.dataset.photoFor !== ground();
  const file = event?.target instanceof HTMLInputElement ? event.target.files?.[0] : null;
  if (file) attended(take(file));
}

/** @param {File} file */
async function take(file) {
  const mine = ++edition;
  prompt(sentence("looking"));
  const bitmap = await opened(file);
  if (mine !== edition) {
    bitmap?.close();
    return;
  }
  /** @type {NodeListOf<HTMLInputElement>} */
  const inputs = dialog.querySelectorAll("[data-photo-file]");
  for (const input of inputs) input.value = "";
  if (!bitmap || Math.max(bitmap.width, bitmap.height) < LEAST) {
    prompt(sentence(bitmap ? "small" : "unreadable"));
    bitmap?.close();
    return;
  }
  stage("looking");
  const pixels = picture().show(bitmap, MEASURED);
  bitmap.close();
  // The sentence and the picture are to be seen before the search takes the thread.
  await new Promise((resolve) => setTimeout(resolve, 60));
  if (mine !== edition) return;
  /** @type {("marks" | "older")[]} */
  const editions = ["marks", "older"];
  /** @param {SheetMark} mark @returns {Pair} */
  const place = ({ x, y }) => [x ?? 0, y ?? 0];
  const found = ground() === "marks" ? findMarks(pixels, editions.map((name) => asked[name].map(place))) : null;
  marks = found?.marks ?? [];
  rings = found?.marks?.map((mark) => mark && [mark.wide, mark.high]) ?? null;
  printed = found?.marks ? editions[found.edition] : "";
  byHand = !found?.marks;
  untouched = new Set();
  if (byHand) {
    startMarks(found ? sentence(found.seen < SOME ? "none" : "misfit") : sentence("corners"));
    return;
  }
  stand(places().map(place));
  const misfit = await whyNot();
  if (mine !== edition) return;
  if (misfit) startMarks(misfit);
  else startTaps();
}

/**
 * Turn the picture, its marks and their rings, so that the sheet stands upright.
 * @param {Pair[]} at the places of the marks on the sheet
 */
function stand(at) {
  const quarters = turnsToUpright(at, marks);
  const { width, height } = picture();
  marks = marks.map((mark) => mark && turned(mark, quarters, width, height));
  if (quarters % 2) rings = rings && rings.map((ring) => ring && [ring[1], ring[0]]);
  picture().turn(quarters);
}

// Marks.

/** @param {string} said */
function startMarks(said) {
  picture().clear();
  picture().look(null);
  taps = [];
  /** @type {{ index: number, handle: Handle }[]} */
  const handles = [];
  places().forEach((place, index) => {
    const known = marks[index];
    if (!known && !place.hand) return;
    const [right, down] = (place.hand ?? [0, 0]).map((end) => MARK_INSET + end * (1 - 2 * MARK_INSET));
    const at = known ?? { x: right * picture().width, y: down * picture().height };
    handles.push({ index, handle: picture().add(at.x, at.y, place.name, place.sign, "mark") });
  });
  picture().onPress = () => null;
  // No more than the name: a longer sentence would push the picture away under the finger.
  picture().onMove = ({ name }) => prompt(name);
  untouched = new Set(handles.map(({ index }) => index).filter((index) => !marks[index] || untouched.has(index)));
  /** @param {Handle | undefined} moved */
  const noteMarks = (moved = undefined) => {
    byHand = true;
    const mine = handles.find((one) => one.handle === moved)?.index;
    if (mine !== undefined) {
      untouched.delete(mine);
      if (rings) rings[mine] = null;
    }
    marks = places().map((_, index) => {
      const set = handles.find((one) => one.index === index)?.handle;
      return set ? { x: set.x, y: set.y } : null;
    });
  };
  picture().onDrop = noteMarks;
  noteMarks();
  stage("marks");
  prompt(said);
}

const seen = () => ({
  ground: ground(), byHand, printed, paper: choice("paper"), way: choice("way"),
  photo: { width: picture().width, height: picture().height, tap: Math.max(SURE, 0.35 * picture().coarseness) },
  marks: marks.map((mark) => mark && [mark.x, mark.y]),
  rings,
  untouched: byHand ? [...untouched] : [],
});

const request = () => ({
  do: /** @type {const} */ ("photo"), page: slug, form: problem, needs: NEEDS, ...seen(), ...veil.asked(),
});

/** Why the marks do not fit the sheet; "" if they do. */
async function whyNot() {
  const reply = await page.bridge.ask(request(), { topic: "photo" });
  return reply.ok ? "" : reply.announce;
}

const setMarks = () => marks.filter((mark) => mark !== null);

// Points of the drawing.

function startTaps() {
  picture().clear();
  picture().look(setMarks());
  button("whole").setAttribute("aria-pressed", "false");
  taps = [];
  picture().onPress = (x, y) => {
    const tap = asked.taps[taps.length];
    if (!tap) return null;
    const handle = picture().add(x, y, tap.label, String(taps.length + 1));
    taps.push(handle);
    return handle;
  };
  picture().onMove = () => {};
  picture().onDrop = () => next();
  stage("taps");
  ask(asked.taps[0]);
}

function next() {
  const tap = asked.taps[taps.length];
  if (tap) {
    stage("taps");
    ask(tap);
  } else attended(judge());
}

async function judge() {
  const mine = ++edition;
  const set = Object.fromEntries(asked.taps.map(({ name }, index) => {
    const tap = taps[index];
    return [name, tap && [tap.x, tap.y]];
  }));
  const reply = await page.bridge.ask({ ...request(), taps: set }, { topic: "photo" });
  if (mine !== edition) return;
  stage(reply.ok ? "result" : "taps");
  prompt(reply.announce);
  if (!reply.ok) return;
  task?.judged({ seen: seen(), taps: set, turned: picture().quarters });
  find("result").innerHTML = regionHTML(reply.regions["photo-result"]);
  overlay = reply.overlay;
  showOverlay(true);
}

/** @param {boolean} visible */
function showOverlay(visible) {
  button("overlay").setAttribute("aria-pressed", String(visible));
  picture().draw(visible ? overlay : []);
}

async function save() {
  const mine = edition;
  download({ blob: await picture().saved(overlay), type: "image/png", filename: `${slug}-photo.png` });
  if (mine === edition) prompt(sentence("saved"));
}

/** @type {Record<string, () => unknown>} */
const actions = {
  close() {
    // At once: the engine tells of it in a task of its own, before which a reply may come.
    forget();
    dialog.close();
  },
  again() {
    edition += 1;
    picture().clear();
    stage("choose");
    prompt();
  },
  async "marks-done"() {
    const mine = ++edition;
    const misfit = await whyNot();
    if (mine !== edition) return;
    if (misfit) prompt(misfit);
    else startTaps();
  },
  "move-marks"() {
    edition += 1;
    startMarks(dragging());
  },
  turn() {
    edition += 1;
    picture().turn(1);
    marks = [];
    rings = null;
    startMarks(dragging());
  },
  "not-drawn"() {
    edition += 1;
    taps.push(null);
    next();
  },
  back() {
    edition += 1;
    picture().remove(taps.pop() ?? undefined);
    stage("taps");
    ask(asked.taps[taps.length]);
  },
  whole() {
    const whole = button("whole").getAttribute("aria-pressed") !== "true";
    button("whole").setAttribute("aria-pressed", String(whole));
    picture().look(whole ? null : setMarks());
  },
  overlay: () => showOverlay(button("overlay").getAttribute("aria-pressed") !== "true"),
  save,
};

/**
 * See to what fails, other than by a later request that took its place.
 * @param {Promise<unknown>} work
 */
function attended(work) {
  work.catch((error) => {
    if (!(error instanceof Superseded)) page.failed(error);
  });
}

/** @param {Event} event */
function pressed(event) {
  const name = around(event, "[data-photo-do]")?.dataset.photoDo;
  if (name) attended(Promise.resolve(actions[name]?.()));
}
