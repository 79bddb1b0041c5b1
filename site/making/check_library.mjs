// Runs inside Node: starts Pyodide from the library as the page does, imports every module in it and reads a traceback.
// Argument: the folder of the built runtime. Prints a JSON list of the modules that could not be imported, with the reason.
import { pathToFileURL } from "node:url";

const folder = process.argv[2];
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`).href);
const pyodide = await loadPyodide({ indexURL: `${folder}/`, stdLibURL: `${folder}/library.zip` });
const result = pyodide.runPython(`
import importlib, json, sys, traceback, zipimport

files = sorted(zipimport.zipimporter(sys.path[1])._get_files())
names = [name.removesuffix(".pyc").removesuffix("/__init__").replace("/", ".") for name in files if name.endswith(".pyc")]
failed = {}
for name in names:
    try:
        importlib.import_module(name)
    except BaseException:
        failed[name] = traceback.format_exc()
json.dumps({"modules": names, "failed": failed})
`);
console.log(result);
