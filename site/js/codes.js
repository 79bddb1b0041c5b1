// Reads QR codes in a picture: zxing's reader, as WebAssembly. Stands in a folder of its own, which no page asks for until
// a photograph is to be read.

import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";

const address = new URL("zxing_reader.wasm", import.meta.url).href;
prepareZXingModule({ overrides: { locateFile: () => address } });

/**
 * The texts of the QR codes in a picture.
 * @param {ImageData} picture
 * @returns {Promise<string[]>}
 */
export async function codesIn(picture) {
  const found = await readBarcodes(picture, { formats: ["QRCode"], tryHarder: true, maxNumberOfSymbols: 4 });
  return found.filter(({ isValid }) => isValid).map(({ text }) => text);
}
