// Files that are chosen, or dropped anywhere on the page: photographs, and PDFs of scanned pages.

import { digestOf, isPDF } from "./photo-file.js";

/** @import { PileRow } from "../types/photos.js" */

/**
 * The photographs in a file that may be a PDF. What keeps one PDF from being read must not cost the other files.
 * @param {File} file
 */
async function pagesOf(file) {
  try {
    if (isPDF(file)) return await (await import("./pile-pdf.js")).photographsIn(file);
  } catch (error) {
    reportError(error);
  }
  return { found: [], unread: 0 };
}

/**
 * Files, in the place of each PDF the photographs in it. One without any stays itself, and so does one with pages that are
 * not read: its row says so.
 * @param {Iterable<File>} files
 */
export async function photographsOf(files) {
  /** @type {{ file: File, unread?: number }[]} */
  const all = [];
  for (const file of files) {
    const { found, unread } = await pagesOf(file);
    all.push(...found.map((page) => ({ file: page })));
    if (!found.length) all.push({ file });
    else if (unread) all.push({ file, unread });
  }
  return all;
}

/**
 * The row to which a file belongs, of those whose photograph is not here: by what is in it. By its name only if the row's
 * photograph was never opened, and was not taken now: phones call all of these the same, and scanners their PDFs.
 * @param {PileRow[]} rows @param {File} file @param {boolean} taken now, with the camera
 */
export async function rowOfFile(rows, file, taken) {
  if (!rows.length) return undefined;
  const digest = await digestOf(file);
  return rows.find((row) => row.digest === digest) ?? rows.find((row) => !taken && !row.digest && row.file === file.name);
}

/**
 * Take files that are chosen, or dropped on the page.
 * @param {(files: File[], taken: boolean) => unknown} take `taken`: now, with the camera
 */
export function onFiles(take) {
  document.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement) || !target.matches("[data-pile-file]")) return;
    const taken = target.hasAttribute("capture");
    take([...(target.files ?? [])], taken);
    const label = taken && target.labels?.[0];
    if (label) label.textContent = label.dataset.next ?? "";
    target.value = "";
  });
  document.addEventListener("dragover", (event) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  });
  document.addEventListener("drop", (event) => {
    const dropped = [...(event.dataTransfer?.files ?? [])];
    if (!dropped.length) return;
    event.preventDefault();
    take(dropped, false);
  });
}
