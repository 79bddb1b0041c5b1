// The threads that read photographs: started with the first photograph, each works at one at a time.

import { readerAddress, scriptURL } from "./trusted.js";

/** @import { FromReader, ToReader } from "../types/photos.js" */

const MOST = 2; // threads: each holds a photograph, which is large
const codes = new URL(`${document.documentElement.dataset.codes ?? ""}codes.js`, document.baseURI).href;

/** How many photographs can be read at the same time. */
export const atOnce = Math.max(1, Math.min(MOST, navigator.hardwareConcurrency || 2));

export class Reader {
  #worker = new Worker(scriptURL(readerAddress), { type: "module" });
  #count = 0;
  /** @type {Map<number, { kept: (reply: any) => void, broken: (error: Error) => void }>} */
  #asked = new Map();

  constructor() {
    this.#worker.addEventListener("message", (/** @type {MessageEvent<FromReader>} */ { data: { id, reply, failed } }) => {
      const waiting = this.#asked.get(id);
      this.#asked.delete(id);
      if (failed === undefined) waiting?.kept(reply);
      else waiting?.broken(new Error(failed));
    });
    this.#worker.addEventListener("error", () => this.#fail("the reader could not be started"));
  }

  /** @param {string} reason */
  #fail(reason) {
    for (const { broken } of this.#asked.values()) broken(new Error(reason));
    this.#asked.clear();
  }

  /** @param {Omit<ToReader, "id">} message @param {Transferable[]} [handedOver] @returns {Promise<any>} */
  #ask(message, handedOver = []) {
    const id = (this.#count += 1);
    return new Promise((kept, broken) => {
      this.#asked.set(id, { kept, broken });
      this.#worker.postMessage({ ...message, id }, handedOver);
    });
  }

  /** Open a photograph: its size as it is measured, the texts of its QR codes. @param {File} file */
  open = (file) => this.#ask({ do: "open", file, codes });

  /** The marks of the photograph in hand. @param {import("../types/shared.js").Pair[][]} editions */
  marks = (editions) => this.#ask({ do: "marks", editions });

  /** The straight strokes on the photograph in hand. @param {unknown} ground */
  strokes = (ground) => this.#ask({ do: "strokes", ground });

  /**
   * What is seen in a camera's live picture. It is handed over, and no photograph is in hand for it.
   * @param {ImageBitmap} bitmap @param {{ text: string, editions: import("../types/shared.js").Pair[][] } | null} sheet
   */
  glance = (bitmap, sheet) => this.#ask({ do: "glance", bitmap, codes, sheet }, [bitmap]);

  end() {
    this.#worker.terminate();
    this.#fail("stopped");
  }
}
