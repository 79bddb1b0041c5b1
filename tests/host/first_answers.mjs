// Runs inside Node: gives the first answer of each page from the library and the page's own archive alone, then with the
// archive for codes the problem of a code, then asks the last page for its PDF before and after the rest of pycore has
// been joined. Arguments: the folder of the built runtime, the module that asks, and as JSON a code for each page. Prints
// what each answer shows, and both replies.
import { readFileSync } from "node:fs";

import { join, start } from "./started.mjs";

const [folder, module, codes] = process.argv.slice(2);
const pyodide = await start(folder, { parts: [] });
pyodide.FS.writeFile("/home/pyodide/first_answers.py", readFileSync(module, "utf8"));
const FORGET = `
import sys
for name in [name for name in sys.modules if name.split(".")[0] == "pycore"]:
    del sys.modules[name]
sys.path[:] = [place for place in sys.path if not place.endswith(("/PART.zip", "/coded.zip"))]
`;
const found = { answers: {}, coded: {} };
let last = "";
for (const [slug, code] of Object.entries(JSON.parse(codes))) {
  pyodide.runPython(FORGET.replace("PART", last));
  join(pyodide, folder, [slug]);
  found.answers[slug] = JSON.parse(pyodide.runPython(`import first_answers; first_answers.first("${slug}")`));
  join(pyodide, folder, ["coded"]);
  found.coded[slug] = JSON.parse(pyodide.runPython(`first_answers.coded("${slug}", "${code}")`));
  last = slug;
}
found.without = JSON.parse(pyodide.runPython(`first_answers.pdf("${last}")`));
join(pyodide, folder, ["later"]);
found.with = JSON.parse(pyodide.runPython(`first_answers.pdf("${last}")`));
console.log(JSON.stringify(found));
