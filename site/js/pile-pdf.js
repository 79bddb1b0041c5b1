// The photographs in a PDF: scanners write each page as one JPEG, which stands in the file as it is. What else a PDF may
// hold is not read: a library that draws every page is 0.45 MB after compression, 0.59 with all its picture formats
// (pdfjs-dist 5.6, brotli 9), and this is 1 KB.

const LEAST_PIXELS = 500_000; // smaller pictures are letterheads and thumbnails
const LONGEST = 2.2; // a page's longer side by its shorter one: what is longer is a strip of a page
const HEAD = 4000; // letters before a picture's bytes, in which its description stands
const END = "endstream";

/** A number of a description; 0 if it is not there, or stands elsewhere in the file. @param {string} words @param {string} name */
const number = (words, name) => Number(new RegExp(`/${name}\\s+(\\d+)(?!\\s+\\d+\\s+R)(?=\\D)`).exec(words)?.[1] ?? 0);

/** Whether a description is of a page's picture. @param {string} words */
function isPage(words) {
  if (!/\/Subtype\s*\/Image\b/.test(words) || !/\/DCTDecode\b/.test(words)) return false;
  const [wide, high] = [number(words, "Width"), number(words, "Height")];
  return wide * high >= LEAST_PIXELS && Math.max(wide, high) <= LONGEST * Math.min(wide, high);
}

/**
 * Where the bytes of a stream end.
 * @param {string} text of the file, a letter for each byte
 * @param {number} start
 * @param {number} length as the description says
 */
function endOf(text, start, length) {
  if (length && text.slice(start + length, start + length + END.length + 2).trimStart().startsWith(END)) return start + length;
  const end = text.indexOf(END, start);
  return end < 0 ? text.length : end;
}

/**
 * The photographs in a PDF, as files named after it; none if it is protected or has none.
 * @param {File} pdf
 * @returns {Promise<File[]>}
 */
export async function photographsIn(pdf) {
  const text = new TextDecoder("latin1").decode(await pdf.arrayBuffer());
  /** @type {File[]} */
  const found = [];
  if (/\/Encrypt\b/.test(text)) return found; // its bytes are in cipher
  for (const start of text.matchAll(/>>\s*stream\r?\n/g)) {
    const first = start.index + start[0].length;
    const before = text.slice(Math.max(0, start.index - HEAD), start.index + 2);
    const words = before.slice(before.lastIndexOf(" obj"));
    if (!isPage(words)) continue;
    const bytes = pdf.slice(first, endOf(text, first, number(words, "Length")));
    const packed = /\/FlateDecode\b/.test(words);
    const picture = packed ? await new Response(bytes.stream().pipeThrough(new DecompressionStream("deflate"))).blob() : bytes;
    found.push(new File([picture], `${pdf.name}, page ${found.length + 1}`, { type: "image/jpeg" }));
  }
  return found;
}
