// The photographs in a PDF: scanners write each page as one JPEG, which stands in the file as it is. What else a PDF may
// hold is not read: a library that draws every page is 0.45 MB after compression, 0.59 with all its picture formats
// (pdfjs-dist 5.6, brotli 9), and this is 1 KB.

const LEAST_PIXELS = 500_000; // smaller pictures are letterheads and thumbnails
const LONGEST = 2.2; // a page's longer side by its shorter one: what is longer is a strip of a page
const HEAD = 4000; // letters before a picture's bytes, in which its description stands
const END = "endstream";
const MOST_AFTER = 4; // bytes between a packed picture and that word: the end of a line, if not more

/** A number of a description; 0 if it is not there, or stands elsewhere in the file. @param {string} words @param {string} name */
const number = (words, name) => Number(new RegExp(`/${name}\\s+(\\d+)(?!\\s+\\d+\\s+R)(?=\\D)`).exec(words)?.[1] ?? 0);

/** Whether a description is of a picture as large as a page. @param {string} words */
function isPage(words) {
  if (!/\/Subtype\s*\/Image\b/.test(words)) return false;
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
 * A picture that was compressed once more; null if its bytes are damaged. A browser refuses bytes behind the compressed ones.
 * @param {Blob} bytes
 */
async function unpacked(bytes) {
  for (let after = 0; after <= MOST_AFTER; after += 1) {
    try {
      const packed = bytes.slice(0, Math.max(0, bytes.size - after));
      return await new Response(packed.stream().pipeThrough(new DecompressionStream("deflate"))).blob();
    } catch {
      // Too many bytes, or damaged ones.
    }
  }
  return null;
}

/**
 * The photographs in a PDF, as files named after it, and how many pages are pictures that are not read: those in black and
 * white, and damaged ones. Neither, if the PDF is protected.
 * @param {File} pdf
 */
export async function photographsIn(pdf) {
  const text = new TextDecoder("latin1").decode(await pdf.arrayBuffer());
  /** @type {File[]} */
  const found = [];
  let unread = 0;
  let stencils = 0; // pictures of black alone: a page in black and white, or the letters upon a photograph
  if (/\/Encrypt\b/.test(text)) return { found, unread }; // its bytes are in cipher
  const masks = new Set([...text.matchAll(/\/S?Mask\s+(\d+)\s+\d+\s+R\b/g)].map(([, object]) => object));
  for (const start of text.matchAll(/>>\s*stream\r?\n/g)) {
    const first = start.index + start[0].length;
    const before = text.slice(Math.max(0, start.index - HEAD), start.index + 2);
    const object = before.lastIndexOf(" obj");
    const words = before.slice(object);
    if (!isPage(words) || masks.has(/(\d+)\s+\d+$/.exec(before.slice(0, object))?.[1] ?? "")) continue;
    if (/\/ImageMask\s+true\b/.test(words)) {
      stencils += 1;
      continue;
    }
    const bytes = pdf.slice(first, endOf(text, first, number(words, "Length")));
    const picture = !/\/DCTDecode\b/.test(words) ? null : /\/FlateDecode\b/.test(words) ? await unpacked(bytes) : bytes;
    if (picture) found.push(new File([picture], `${pdf.name}, page ${found.length + unread + 1}`, { type: "image/jpeg" }));
    else unread += 1;
  }
  const pages = text.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  return { found, unread: unread + Math.min(stencils, Math.max(0, pages - found.length - unread)) };
}
