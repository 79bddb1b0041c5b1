// Runs inside Node: starts Pyodide from the library as the page does, imports every module in it and reads a traceback.
// Argument: the folder of the built runtime. Prints a JSON list of the modules that could not be imported, with the reason.
import { pathToFileURL } from "node:url";

const folder = process.argv[2];
const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`).href);
const pyodide = await loadPyodide({ indexURL: `${folder}/`, stdLibURL: `${folder}/library.zip` });
const result = await pyodide.runPythonAsync(`
import importlib, json, sys, traceback, zipfile

with zipfile.ZipFile(sys.path[1]) as archive:
    names = [name.removesuffix(".pyc").removesuffix("/__init__").replace("/", ".") for name in archive.namelist()]
failed = {}
for name in names:
    try:
        importlib.import_module(name)
    except BaseException:
        failed[name] = traceback.format_exc()
json.dumps({"modules": names, "failed": failed})
`);
console.log(result);
