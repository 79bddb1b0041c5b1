// Runs inside Node: makes class sets in the site's own Pyodide, codes and all. Arguments: the folder of the built
// runtime, the module that asks for them, and the expression whose value is printed as JSON.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [folder, module, wanted] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`).href);
const pyodide = await loadPyodide({ indexURL: `${folder}/`, stdLibURL: `${folder}/library.zip` });
pyodide.FS.writeFile("/home/pyodide/class_sets.py", readFileSync(module, "utf8"));
pyodide.FS.writeFile("/lib/codes.zip", readFileSync(`${folder}/codes.zip`));
pyodide.pyimport("sys").path.append("/lib/codes.zip");
console.log(pyodide.runPython(`import json, class_sets; json.dumps(class_sets.${wanted})`));
