// Runs inside Node: starts the site's Pyodide from its library, asks for a photograph without the part, joins the part
// as the page's worker does, and prints what both gave. Arguments: the folder of the built runtime, a module with the
// digests, the script that joins parts.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [folder, module, script] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`).href);
const { joinPart } = await import(`data:text/javascript,${encodeURIComponent(readFileSync(script, "utf8"))}`);
const pyodide = await loadPyodide({ indexURL: `${folder}/`, stdLibURL: `${folder}/library.zip` });
pyodide.FS.writeFile("/home/pyodide/photographs_by_points.py", readFileSync(module, "utf8"));
const ask = `json.loads(api.handle(json.dumps({"do": "photo", "page": "neutral-current", "form": {}}))[0])`;
const without = pyodide.runPython(`import json; from pycore import api; json.dumps(${ask})`);
pyodide.FS.writeFile("/lib/photo.zip", readFileSync(`${folder}/photo.zip`));
joinPart(pyodide, "/lib/photo.zip");
const found = pyodide.runPython("import photographs_by_points; json.dumps(photographs_by_points.digests())");
console.log(`[${without}, ${found}]`);
