// Runs inside Node: starts the site's Pyodide from its library, asks for a photograph without the part, joins the part
// as the page's worker does, and prints what both gave. Arguments: the folder of the built runtime, a module with the
// digests.
import { readFileSync } from "node:fs";

import { join, start } from "./started.mjs";

const [folder, module] = process.argv.slice(2);
const pyodide = await start(folder);
pyodide.FS.writeFile("/home/pyodide/photographs_by_points.py", readFileSync(module, "utf8"));
const ask = `json.loads(api.handle(json.dumps({"do": "photo", "page": "neutral-current", "form": {}}))[0])`;
const without = pyodide.runPython(`import json; from pycore import api; json.dumps(${ask})`);
join(pyodide, folder, ["photo"]);
const found = pyodide.runPython("import photographs_by_points; json.dumps(photographs_by_points.digests())");
console.log(`[${without}, ${found}]`);
