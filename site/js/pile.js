// The page of a pile of photographs: files in, rows out. pycore says what stands in the rows; this reads the photographs,
// shows the one in hand, and keeps the rows. The photographs stay files on the device.

import { Bridge, regionHTML, Stuck, Superseded } from "./bridge.js";
import { actOnPress, hide, need } from "./elements.js";
import { follow } from "./kept.js";
import { kept } from "./kept-class.js";
import * as store from "./kept-pile.js";
import { saveTable } from "./long-work.js";
import { afterQuiet } from "./pace.js";
import { Reader } from "./photo-readers.js";
import { onFiles, photographsOf, rowOfFile } from "./pile-drop.js";
import * as erased from "./pile-erased.js";
import * as sheets from "./pile-feedback.js";
import { onKeys } from "./pile-keys.js";
import * as papers from "./pile-papers.js";
import { marksOf, Shown } from "./pile-picture.js";
import { findSheet, judge, readAgain, readAll, takeAnswer, whatIsKnown } from "./pile-reading.js";
import { say, sayReading, showReading, tell } from "./pile-said.js";
import * as progress from "./progress.js";
import * as regions from "./regions.js";
import { live } from "./said.js";
import { markAnswer } from "./state.js";
import * as toRegister from "./to-register.js";

/** @import { PileAsk, PileReply, PileRow } from "../types/photos.js" */

const page = "photographs";
const NEEDS = ["photo", "strokes"];
const MOST = 200; // photographs in one pile, as pycore has it
const SETTLED = 120; // ms after the last change until the table follows
const root = document.documentElement;
const look = need("[data-look]");
const shown = new Shown(look);
const bridge = new Bridge((state, detail) => {
  root.dataset.python = state === "ready" || state === "failed" ? state : "starting";
  progress.show(state, detail);
});
/** @type {PileRow[]} */
let rows = store.rows();
/** @type {Map<string, File>} */
const files = new Map(); // by row
/** @type {{ row: PileRow, file: File }[]} */
const queue = [];
let [stopped, isOver] = [false, false]; // `isOver`: files were left out of a full pile
let reading = false;
/** @type {PileReply | null} */
let question = null; // what is asked of the row in hand
let inHand = ""; // the row whose photograph is shown
/** @type {PileReply | null} */
let told = null; // pycore's last reply on the rows
let edition = 0;

/** @param {unknown} error */
function failed(error) {
  if (error instanceof Superseded) return;
  markAnswer("old");
  live(progress.stuck(error));
  if (!(error instanceof Stuck)) reportError(error);
}

const keeps = () => ({ set: kept("set"), roll: kept("roll"), papers: papers.told() });
const about = () => ({ ...keeps(), rows });

/** @type {PileAsk} */
const ask = (more) => bridge.ask({ do: "pile", needs: NEEDS, ...keeps(), ...more });

const rowOf = (id = inHand) => rows.find((one) => one.id === id);

async function update() {
  const mine = ++edition;
  markAnswer("pending");
  try {
    const reply = await bridge.ask({ do: "answer", page, form: {}, ...about() }, { topic: "answer" });
    if (mine !== edition) return;
    markAnswer(reply.ok ? "fresh" : "old");
    if (!reply.ok) return;
    told = /** @type {PileReply} */ (/** @type {unknown} */ (reply));
    regions.replace("pile", told.regions.pile);
    showButtons();
    mark();
  } catch (error) {
    failed(error);
  }
}

const updateSoon = afterQuiet(SETTLED, update);

function changed() {
  store.keep(rows);
  updateSoon();
}

/** @param {string} name */
const button = (name) => need(`.pile-actions [data-do="${name}"]`);

function showButtons() {
  const sure = told?.sure.length ?? 0;
  button("accept-sure").textContent = (button("accept-sure").dataset.label ?? "").replace("{count}", String(sure));
  const hidden = {
    "accept-sure": !sure, next: !told?.asked.length, stop: !reading || stopped, "go-on": reading || !queue.length,
    register: !told?.entry, feedback: !told?.accepted, "to-papers": !told?.ofPapers, "save-table": !rows.length, print: !rows.length, erase: !rows.length,
    undo: !erased.isAny(),
  };
  for (const [name, is] of Object.entries(hidden)) hide(button(name), is);
  hide(need("[data-keys]"), !rows.length);
}

/** Which row is in hand. */
function mark() {
  for (const line of document.querySelectorAll("tr[data-row]")) {
    if (line.dataset.row === inHand) line.setAttribute("aria-current", "true");
    else line.removeAttribute("aria-current");
  }
}

// Reading.

/** @param {Iterable<File>} chosen @param {boolean} [taken] now, with the camera */
async function take(chosen, taken = false) {
  isOver = false;
  for (const { file, unread } of await photographsOf(chosen)) {
    // A row whose photograph is no longer here takes it up again, and is read if it was not.
    const before = await rowOfFile(rows.filter(({ id, state }) => !files.has(id) && state !== "waiting"), file, taken);
    if ((isOver = !before && rows.length >= MOST)) break;
    const row = before ?? /** @type {PileRow} */ ({ id: crypto.randomUUID(), file: file.name.slice(0, 100), unread });
    files.set(row.id, file);
    if (!before) rows.push(row);
    if (!row.digest || row.said === "failed") {
      row.state = "waiting";
      queue.push({ row, file });
    } else if (row.id === inHand) select(inHand).catch(failed);
  }
  changed();
  await read();
  if (isOver && !reading) say("full");
}

async function read() {
  if (reading || !queue.length) return;
  reading = true;
  stopped = false;
  const began = performance.now();
  const before = rows.length - queue.length;
  let done = 0;
  showReading(true);
  try {
    await readAll(queue, ask, (row) => {
      if (row.state !== "reading") done += 1;
      const left = done ? Math.ceil(((performance.now() - began) / done / 1000) * queue.length) : 0;
      const which = { number: Math.min(before + done + 1, rows.length), count: rows.length };
      sayReading(which, done / Math.max(1, queue.length + done), left);
      changed();
      if (row.id === inHand) select(inHand).catch(failed);
    }, () => stopped);
  } finally {
    reading = false;
    showReading(false);
    say(stopped && queue.length ? "stopped" : isOver ? "full" : "");
    changed();
  }
  if (!stopped && queue.length) await read(); // what came while the last was put away
  if (stopped || inHand || !rows.length) return;
  await update();
  if (inHand) return; // Somebody has chosen a row since.
  await select(told?.asked[0] ?? rows[0].id);
  shown.bringIntoView();
}

// The row in hand.

/** @param {string} id */
async function select(id) {
  const before = inHand;
  inHand = id;
  mark();
  const row = rowOf();
  look.hidden = !row;
  if (!row) return;
  const reply = await ask({ move: "look", row: id, rows, ...whatIsKnown(row) });
  if (id !== inHand || !reply.ok) return;
  await shown.show(row, files.get(id) ?? null, reply.frame);
  if (id !== inHand) return;
  need('[data-region="look"]').innerHTML = regionHTML(reply.regions.look);
  question = reply;
  shown.draw(reply.overlay, reply.lines ?? [], marksOf(reply));
  if (before !== id) look.scrollTop = 0;
}

/** Take an answer to what is asked of the row in hand. @param {number} choice */
async function choose(choice) {
  const row = rowOf();
  if (!row || !question) return;
  takeAnswer(row, question, choice);
  await readAgain(row, ask);
  changed();
  await go(row.id);
}

/** @param {string} id */
async function go(id) {
  await select(id);
  document.getElementById("pile-row")?.focus({ preventScroll: true });
  shown.bringIntoView();
}

/** Press the points of the row in hand in the panel for a photograph. */
async function press() {
  const row = rowOf();
  const file = row && files.get(row.id);
  if (!row?.page || !row.form || !file) return;
  const panel = await import("./photo.js");
  await panel.open(bridge, failed, live, {
    slug: row.page, form: row.form, file,
    judged: (found) => {
      Object.assign(row, found);
      delete row.strokes; // what was pressed counts
      judge(row, ask).then(changed).catch(failed);
    },
    closed: () => go(row.id).catch(failed),
  });
}

async function useCode() {
  const row = rowOf();
  const field = document.getElementById("pile-code");
  const file = row && files.get(row.id);
  if (!row || !(field instanceof HTMLInputElement) || !field.value.trim()) return;
  row.typed = field.value.trim();
  if (file) {
    queue.push({ row, file });
    row.state = "waiting";
    await read();
  } else await findSheet(row, row.typed, ask);
  changed();
  await go(row.id);
}

async function takeAway() {
  const row = rowOf();
  if (!row) return;
  const at = rows.indexOf(row);
  erased.takeOut([row], rows, files, queue);
  say("takenAway", { number: at + 1 });
  inHand = "";
  changed();
  await (rows.length ? go(rows[Math.min(at, rows.length - 1)].id) : select(""));
}

function accept() {
  const row = rowOf();
  if (!row || row.state !== "judged") return;
  if (!look.querySelector('[data-do="accept"]')) {
    document.getElementById("pile-mark")?.focus(); // a range is no mark
    return;
  }
  row.accepted = !row.accepted;
  changed();
  select(row.id).then(() => look.querySelector('[data-do="accept"]')?.focus()).catch(failed);
}

function next() {
  const asked = told?.asked ?? [];
  const after = rows.findIndex((one) => one.id === inHand);
  const id = rows.slice(after + 1).find((one) => asked.includes(one.id))?.id ?? asked[0];
  return id && go(id);
}

/** @param {number} step */
function beside(step) {
  const focused = document.activeElement?.closest("tr[data-row]");
  const at = rows.findIndex((one) => one.id === ((focused instanceof HTMLElement && focused.dataset.row) || inHand));
  const row = rows[Math.min(rows.length - 1, Math.max(0, at + step))];
  if (!row) return;
  select(row.id).catch(failed);
  document.querySelector(`tr[data-row="${row.id}"] button`)?.focus();
}

async function erase() {
  stopped = true;
  erased.takeOut([...rows], rows, files, queue);
  inHand = "";
  look.hidden = true;
  store.keep(rows);
  await update();
  say("erased");
  button("undo").focus();
}

async function undo() {
  const back = erased.putBack(rows, files, queue, MOST);
  say(back ? "back" : "full");
  if (!back) return;
  changed();
  await update();
  await go(back.id);
  if (!stopped) await read();
}

const forCamera = {
  ask, files, rows: () => rows, isFull: () => rows.length >= MOST, reader: () => new Reader(),
  take: (/** @type {File} */ file) => take([file], true).catch(failed),
};

/** @type {Record<string, (button: HTMLElement) => unknown>} */
const actions = {
  ...toRegister.actions,
  select: ({ dataset }) => {
    if (!reading) say("");
    return go(dataset.row ?? "");
  },
  press,
  accept,
  next,
  erase,
  undo,
  "use-code": useCode,
  camera: async () => (await import("./camera.js")).open(forCamera),
  choose: ({ dataset }) => choose(Number(dataset.choice)),
  "take-away": takeAway,
  "accept-sure": () => {
    const sure = told?.sure ?? [];
    for (const row of rows) if (sure.includes(row.id)) row.accepted = true;
    changed();
    say("accepted", { count: sure.length });
    if (sure.includes(inHand)) select(inHand).catch(failed);
  },
  stop: () => {
    stopped = true;
    showButtons();
  },
  "go-on": read,
  larger: () => shown.larger(),
  lines: ({ dataset }) => shown.toggle(dataset.lines ?? ""),
  print: () => print(),
  register: async () => {
    await update();
    toRegister.offer(told && { entry: told.entry }, true);
    return told?.entry ? toRegister.actions.register() : say("notAdded");
  },
  "to-papers": async () => {
    await update();
    const put = await papers.put(ask, rows);
    if (put) tell(put);
    else say("notPut");
  },
  feedback: async () => {
    const saidOf = await sheets.save(bridge, ask, { do: "begin", work: "feedback", page, form: {}, needs: NEEDS, ...about() }, files, say);
    if (saidOf) tell(saidOf);
  },
  "save-table": async () => {
    const tableSaid = await saveTable(bridge, { do: "begin", work: "table", page, form: {}, ...about() });
    if (tableSaid !== null) tell(tableSaid);
  },
};

actOnPress(actions, failed);

// How high the bar at the foot is, which is less to see above it.
const foot = need(".pile-actions");
new ResizeObserver(() => root.style.setProperty("--pile-foot", `${foot.offsetHeight}px`)).observe(foot);

document.addEventListener("change", ({ target }) => {
  const row = rowOf();
  if (target instanceof HTMLSelectElement && target.matches("[data-settle]") && row) {
    if (target.value) Object.assign(row, { settled: Number(target.value), accepted: true });
    changed();
    select(row.id).then(() => document.getElementById("pile-mark")?.focus()).catch(failed);
  }
});

onKeys({
  ArrowDown: () => beside(1), ArrowUp: () => beside(-1), n: next, a: accept, p: press,
  m: () => document.getElementById("pile-mark")?.focus(),
}, failed);

onFiles((chosen, taken) => take(chosen, taken).catch(failed));

function start() {
  root.dataset.python = "starting";
  progress.begin(() => {
    start();
    update();
  });
  bridge.start();
}

// What was being read when the page was left is not read any more.
for (const row of rows) if (row.state === "waiting" || row.state === "reading") Object.assign(row, { state: "fault", said: "failed" });
follow("pile", () => {
  if (reading) return;
  rows = store.rows();
  update();
});
follow("class", update);
update();
start();
