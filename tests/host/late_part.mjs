// Runs inside Node: starts the site's Pyodide from its library, answers a request without the lazy part, then adds
// the part as the page's worker does, and prints what both gave. Arguments: the folder of the built runtime, a module
// with the texts and digests.
import { readFileSync } from "node:fs";

import { join, start } from "./started.mjs";

const [folder, module] = process.argv.slice(2);
const pyodide = await start(folder);
pyodide.FS.writeFile("/home/pyodide/codes.py", readFileSync(module, "utf8"));
const without = pyodide.runPython("import codes; codes.sheet()");
join(pyodide, folder, ["codes"]);
console.log(pyodide.runPython(`
import importlib, json, zipimport
names = sorted(name for name in zipimport.zipimporter("/lib/codes.zip")._get_files() if name.endswith(".pyc"))
for name in names:
    importlib.import_module(name.removesuffix(".pyc").removesuffix("/__init__").replace("/", "."))
json.dumps({"names": names, "digests": codes.digests(), "sheet": codes.sheet()})
`));
console.log(JSON.stringify(without));
