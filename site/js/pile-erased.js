// The rows that were erased last, with their photographs, until others are erased or the page is left.

/** @import { PileRow } from "../types/photos.js" */
/** @typedef {{ row: PileRow, file: File }} Waiting a row whose photograph is to be read */

/** @type {{ row: PileRow, at: number, file: File | undefined, waits: boolean }[]} */
let erased = [];

export const isAny = () => erased.length > 0;

/**
 * Take rows out of the pile, and keep them.
 * @param {PileRow[]} gone @param {PileRow[]} rows @param {Map<string, File>} files @param {Waiting[]} queue
 */
export function takeOut(gone, rows, files, queue) {
  const waiting = new Set(queue.map(({ row }) => row));
  erased = gone.map((row) => ({ row, at: rows.indexOf(row), file: files.get(row.id), waits: waiting.has(row) }));
  for (const row of gone) {
    rows.splice(rows.indexOf(row), 1);
    files.delete(row.id);
  }
  queue.splice(0, queue.length, ...queue.filter(({ row }) => !gone.includes(row)));
}

/**
 * Put them back where they were; gives the first of them, null if the pile has no room.
 * @param {PileRow[]} rows @param {Map<string, File>} files @param {Waiting[]} queue @param {number} most rows of a pile
 */
export function putBack(rows, files, queue, most) {
  if (rows.length + erased.length > most) return null;
  for (const { row, at, file, waits } of erased) {
    rows.splice(at, 0, row);
    if (file) files.set(row.id, file);
    if (file && waits) queue.push({ row, file });
  }
  const [first] = erased;
  erased = [];
  return first.row;
}
