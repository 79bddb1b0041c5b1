// Files that are chosen, or dropped anywhere on the page: photographs, and PDFs of scanned pages.

import { digestOf, isPDF } from "./photo-file.js";

/** @import { PileRow } from "../types/photos.js" */

/**
 * Files, in the place of each PDF the photographs in it. One without any stays itself: its row says what it lacks.
 * @param {Iterable<File>} files
 */
export async function photographsOf(files) {
  /** @type {File[]} */
  const found = [];
  for (const file of files) {
    const pages = isPDF(file) ? await (await import("./pile-pdf.js")).photographsIn(file) : [];
    found.push(...(pages.length ? pages : [file]));
  }
  return found;
}

/**
 * The row to which a file belongs, of those whose photograph is not here: by what is in it, else by its name. Some phones
 * call every photograph that is taken now the same.
 * @param {PileRow[]} rows @param {File} file @param {boolean} taken now, with the camera
 */
export async function rowOfFile(rows, file, taken) {
  if (!rows.length) return undefined;
  const digest = await digestOf(file);
  return rows.find((row) => row.digest === digest) ?? rows.find((row) => !taken && row.file === file.name);
}

/** Take files that are dropped on the page. @param {(files: File[]) => unknown} take */
export function onDrop(take) {
  document.addEventListener("dragover", (event) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  document.addEventListener("drop", (event) => {
    const dropped = [...(event.dataTransfer?.files ?? [])];
    if (!dropped.length) return;
    event.preventDefault();
    take(dropped);
  });
}
