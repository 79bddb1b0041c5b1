// Runs inside Node: makes the scattered drawings in the site's own Pyodide and prints the digests of their files.
// Arguments: the folder of the built runtime, the module that makes the drawings.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [folder, module] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`).href);
const pyodide = await loadPyodide({ indexURL: `${folder}/`, stdLibURL: `${folder}/library.zip` });
pyodide.FS.writeFile("/home/pyodide/scatter.py", readFileSync(module, "utf8"));
console.log(pyodide.runPython("import json, scatter; json.dumps(scatter.digests())"));
