// Runs inside Node: starts Pyodide from the library as the page does, plainly or from a kept memory, imports every
// module of every archive and reads a traceback. Arguments: the folder of the built runtime, "plain" or "restored",
// and as JSON the names of the archives. Prints the modules, and those that could not be imported, with the reason.
import { join, start } from "./started.mjs";

const [folder, way, archives] = process.argv.slice(2);

async function restored() {
  const maker = await start(folder, { parts: [], _makeSnapshot: true });
  maker.runPython("import pycore.api");
  return start(folder, { parts: [], _loadSnapshot: maker.makeMemorySnapshot() });
}

const pyodide = way === "restored" ? await restored() : await start(folder, { parts: [] });
const importAll = (place) => pyodide.runPython(`
import importlib, json, sys, traceback, zipimport

files = sorted(zipimport.zipimporter(${place})._get_files())
names = [name.removesuffix(".pyc").removesuffix("/__init__").replace("/", ".") for name in files if name.endswith(".pyc")]
failed = {}
for name in names:
    try:
        importlib.import_module(name)
    except BaseException:
        failed[name] = traceback.format_exc()
json.dumps({"modules": names, "failed": failed})
`);
const found = { library: JSON.parse(importAll('next(place for place in sys.path if place.endswith(".zip"))')) };
for (const part of JSON.parse(archives)) {
  join(pyodide, folder, [part]);
  found[part] = JSON.parse(importAll(`"/lib/${part}.zip"`));
}
console.log(JSON.stringify(found));
