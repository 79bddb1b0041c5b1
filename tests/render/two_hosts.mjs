// Runs inside Node: makes the scattered drawings in the site's own Pyodide and prints the digests of their files.
// Arguments: the folder of the built runtime, the module that makes the drawings.
import { readFileSync } from "node:fs";

import { start } from "../host/started.mjs";

const [folder, module] = process.argv.slice(2);
const pyodide = await start(folder);
pyodide.FS.writeFile("/home/pyodide/scatter.py", readFileSync(module, "utf8"));
console.log(pyodide.runPython("import json, scatter; json.dumps(scatter.digests())"));
