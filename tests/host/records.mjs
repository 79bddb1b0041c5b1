// Runs inside Node: tells of pycore's records as the site's Pyodide has them. Arguments: the folder of the built
// runtime, the module that tells, and as JSON the modules to tell of.
import { readFileSync } from "node:fs";

import { start } from "./started.mjs";

const [folder, module, modules] = process.argv.slice(2);
const pyodide = await start(folder, { parts: ["later", "photo", "draw", "strokes"] });
pyodide.FS.writeFile("/home/pyodide/told.py", readFileSync(module, "utf8"));
pyodide.globals.set("modules", modules);
try {
  console.log(pyodide.runPython("import json, told; json.dumps(told.digests(json.loads(modules)))"));
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
