// What the live picture of a camera means: whether a whole sheet is seen, and whether it is to be taken by itself. Knows of
// a sheet only the text of its QR code and where its marks are seen.

/** @import { Pair } from "../types/shared.js" */
/** @import { Glance } from "../types/photos.js" */

const SOME = 4; // so many marks are those of some sheet
const TWICE = 2; // glances that must agree
const STILL = 0.02; // of the picture's longer side: how far marks may move between two glances

/** @param {Pair[]} some @param {Pair[]} others where the same marks were seen before */
function isStill(some, others) {
  return some.length === others.length && some.every(([x, y], at) => Math.hypot(x - others[at][0], y - others[at][1]) <= STILL);
}

export class Watch {
  /** @type {Pair[]} */
  #places = []; // of the marks of a whole sheet, as they were seen last
  #text = ""; // of the code that was seen last with all marks
  #times = 0; // how often running
  /** @type {string | null} */
  #taken = null; // the code of the sheet that was taken and is still in view, "" if its code is not known
  #away = 0; // glances without any sheet

  /**
   * What is seen now, and whether the sheet is to be taken: it was seen twice running, it was still, it is not in the pile.
   * @param {Glance} seen @param {{ foreign: boolean, inPile: boolean }} sheet what is known of the sheet of its code
   */
  see({ texts, seen, places }, { foreign, inPile }) {
    const text = texts.length === 1 ? texts[0] : "";
    this.#leave(text, seen);
    const isWhole = text !== "" && !foreign && places !== null;
    this.#times = isWhole && text === this.#text && isStill(places, this.#places) ? this.#times + 1 : Number(isWhole);
    [this.#text, this.#places] = isWhole ? [text, places] : ["", []];
    const state = this.#state(texts, seen, isWhole, foreign, inPile);
    return { state, isDue: state === "ready" && this.#times >= TWICE };
  }

  /**
   * A sheet that was taken is out of view once another is in it, or none. Where its code was not seen, the code that is
   * seen next may be another sheet's: one that is taken twice is told in its row, one that is never taken is lost.
   * @param {string} text @param {number} seen
   */
  #leave(text, seen) {
    this.#away = text || seen >= SOME ? 0 : this.#away + 1;
    if (this.#away >= TWICE || (text && text !== this.#taken)) this.#taken = null;
  }

  /**
   * @param {string[]} texts @param {number} seen @param {boolean} isWhole @param {boolean} foreign @param {boolean} inPile
   */
  #state(texts, seen, isWhole, foreign, inPile) {
    if (texts.length > 1) return "several";
    if (this.#taken !== null) return "taken";
    if (foreign) return "foreign";
    if (isWhole) return inPile ? "known" : "ready";
    if (texts.length) return inPile ? "known" : "code";
    return seen >= SOME ? "marks" : "none";
  }

  /** What is in view was taken. @param {string} text of its code, "" if it is not known */
  took(text) {
    this.#taken = text;
    this.#away = 0;
  }
}
