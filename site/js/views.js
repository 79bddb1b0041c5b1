// What can lie over a calculator's page by a link's `view`: the lesson, or the drawing on the screen, which is loaded only
// when it is asked for.

import { lack } from "./bridge.js";
import * as kept from "./kept.js";
import * as lesson from "./lesson.js";

/** @import { DrawPage } from "../types/draw-page.js" */

/** @type {DrawPage} */
let page;
/** @type {typeof import("./draw.js") | null} */
let part = null;
let asked = false; // by a link whose problem is still to be read

/** Join the page to the drawing. @param {Omit<DrawPage, "kept">} joined */
export function join(joined) {
  /** @param {string} sentence */
  const said = (sentence) => {
    joined.said(sentence);
    lesson.refused(sentence); // which lies over the page, if it is open
  };
  page = { ...joined, kept, said };
}

/** Open the drawing for the form as it stands. */
export async function openDrawing() {
  part = await import("./draw.js").catch(lack);
  await part.open(page);
}

/** What the address says of what is open, the uppermost of it, to stand behind the problem. */
export const suffix = () => (part?.isOpen() || asked ? "&view=draw" : lesson.suffix());

/** Open or close as a link says, once the page has answered the link's problem. @param {string} hash */
export function follow(hash) {
  lesson.follow(hash);
  asked = new URLSearchParams(hash.replace(/^#/, "")).get("view") === "draw";
  if (!asked) part?.close();
}

/** The page has answered the form as it stands. */
export function answered() {
  lesson.answered();
  if (!asked) return;
  asked = false;
  openDrawing().catch(page.failed);
}
