// Runs inside Node: makes class sets in the site's own Pyodide, codes and all. Arguments: the folder of the built
// runtime, the module that asks for them, and the expression whose value is printed as JSON.
import { readFileSync } from "node:fs";

import { join, start } from "./started.mjs";

const [folder, module, wanted] = process.argv.slice(2);
const pyodide = await start(folder);
pyodide.FS.writeFile("/home/pyodide/class_sets.py", readFileSync(module, "utf8"));
join(pyodide, folder, ["codes"]);
console.log(pyodide.runPython(`import json, class_sets; json.dumps(class_sets.${wanted})`));
