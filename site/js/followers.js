// What follows an answer once nobody types: the long text below it, the sheet where that is out of view, and its QR code;
// and the problem's sheet, while that stands beside Check.

import { Stuck, Superseded } from "./bridge.js";
import * as check from "./check.js";
import { need } from "./elements.js";
import { afterQuiet, inIdle } from "./pace.js";
import * as regions from "./regions.js";
import * as veil from "./veil.js";

/** @import { AnswerReply } from "../types/shared.js" */

/**
 * What is used of the page: the number of its edits; `isFresh()`, whether the answer in view is the form's; `ask` and
 * `put` for more of it; `completed(edition)` hears that all of that edition's is there.
 * @typedef {{
 *   edition: () => number, isFresh: () => boolean, failed: (error: unknown) => void, completed: (edition: number) => void,
 *   ask: (topic: string, parts: string[], more?: Record<string, unknown>) => Promise<AnswerReply | { ok: false }>,
 *   put: (reply: AnswerReply) => void, isReady: () => boolean, hasCodes: () => boolean, showsAnswer: () => boolean,
 *   answering: () => Promise<void>,
 * }} FollowedPage
 */

const QUIET = [150, 600]; // ms without an edit before what follows is made: least and most
const ANSWERS = 4; // between them, as long as this many answers take here: an edit waits for what is being made
const CODE_PAUSE = 800; // ms of quiet before the sheet is made again with its QR code

const wide = matchMedia("(min-width: 48em)"); // as in calculator.css: the sheet itself is in view, not the phone's drawing
const figure = need(".figure");
const fold = need(".request", HTMLDetailsElement);

/** @type {FollowedPage} */
let page;
// The edition of which each is shown; of `code`: whose sheet is complete, with its code if it can have one.
const shown = { workings: 0, code: 0, problem: 0 };
let isBehind = false; // whether the sheet is an earlier answer's
let asked = 0; // when the latest answer was
let withSheet = true; // whether it was with the sheet
let quiet = QUIET[0];
/** @type {{ of: number, done: Promise<void> } | null} */
let completing = null;

const followSoon = afterQuiet(() => quiet, () => inIdle(follow));
const bringProblemSoon = afterQuiet(() => quiet, () => inIdle(bringProblem));
const followWithCode = afterQuiet(CODE_PAUSE, () => {
  if (!navigator.connection?.saveData) inIdle(complete);
});

const isSheetInView = () => wide.matches || fold.open || figure.hasAttribute("data-true-size");

/** What is asked for with an answer. What follows is not, unless `whole`. @param {boolean} whole */
export function parts(whole) {
  asked = performance.now();
  withSheet = whole || veil.isDown() || isSheetInView();
  return ["answer", ...(wide.matches ? [] : ["view"]), ...(withSheet ? ["sheet"] : []), ...veil.parts()];
}

/** An answer is shown; `isWhole`: the page shows all of it already. @param {boolean} isWhole */
export function answered(isWhole) {
  const mine = page.edition();
  const [least, most] = QUIET;
  quiet = Math.min(Math.max(least, ANSWERS * (performance.now() - asked)), most);
  if (!isWhole) isBehind = !withSheet;
  followWithCode();
  // The values have changed: out of view, the problem's sheet of those before goes.
  if (check.isAside()) bringProblemSoon();
  else regions.empty(["problem-sheet"]);
  if (isWhole || veil.isDown()) {
    shown.workings = mine;
    return;
  }
  regions.busy("workings", true);
  followSoon();
}

/** What of the answer in view is there. */
export const shownParts = () => ({ workings: shown.workings === page.edition(), sheet: !isBehind });

/** What was shown before is shown again. @param {ReturnType<typeof shownParts>} what */
export function recalled({ workings, sheet }) {
  regions.busy("workings", !workings);
  isBehind = !sheet;
}

// In view or not: it can be found, copied, printed and read aloud.
async function follow() {
  const mine = page.edition();
  if (shown.workings === mine || !page.isFresh()) return;
  try {
    const reply = await page.ask("workings", ["workings", "check", ...(isBehind ? ["sheet"] : [])]);
    if (mine !== page.edition() || !reply.ok) return;
    shown.workings = mine;
    isBehind = false;
    page.put(reply);
    check.follow(reply);
    regions.busy("workings", false);
    page.completed(mine);
  } catch (error) {
    page.failed(error);
  }
}

async function addSheet() {
  const mine = page.edition();
  const reply = await page.ask("sheet", ["sheet"]);
  if (mine !== page.edition() || !reply.ok) return;
  isBehind = false;
  page.put(reply);
}

/** The sheet of the answer in view, where it has not followed yet; null where it has. */
export const bringSheet = () => (isBehind && page.isFresh() && page.isReady() ? addSheet() : null);

/**
 * Make the sheet again with its QR code, which takes too long while someone types.
 * @param {number} mine
 */
async function addCode(mine) {
  const reply = await page.ask("code", ["sheet"], { code: true, needs: ["codes"] });
  if (mine !== page.edition() || !reply.ok) return;
  isBehind = false;
  page.put(reply);
  if (page.hasCodes()) shown.code = mine;
}

/** Bring the sheet up to date, code and all; gives whether it may be printed. */
export async function complete() {
  if (!page.isReady()) return page.showsAnswer() && !isBehind;
  await page.answering();
  if (!page.isFresh()) return false;
  const mine = page.edition();
  if (shown.code === mine) return true;
  if (completing?.of !== mine) completing = { of: mine, done: addCode(mine) };
  try {
    await completing.done;
  } catch (error) {
    // What is there is right, and lacks only its code.
    if (!(error instanceof Superseded || error instanceof Stuck)) reportError(error);
    await bringSheet()?.catch(() => {});
  }
  completing = null;
  return !isBehind;
}

/** The problem's sheet, as it is before anything is drawn: beside Check, where the answer's is out of view. */
export async function bringProblem() {
  const mine = page.edition();
  if (!wide.matches || !check.isAside() || shown.problem === mine || !page.isFresh()) return;
  shown.problem = mine;
  try {
    const reply = await page.ask("problem-sheet", ["problem-sheet"], { veiled: true });
    if (mine === page.edition() && reply.ok) page.put(reply);
  } catch (error) {
    if (shown.problem === mine) shown.problem = 0;
    if (!(error instanceof Superseded || error instanceof Stuck)) reportError(error);
  }
}

/** @param {FollowedPage} joined */
export function join(joined) {
  page = joined;
  fold.addEventListener("toggle", () => fold.open && bringSheet()?.catch(page.failed));
}
