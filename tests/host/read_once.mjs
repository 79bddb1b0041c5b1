// Runs inside Node: counts how often modules are read from the archives while pycore is imported, and how many are.
// Argument: the folder of the built runtime.
import { start } from "./started.mjs";

const pyodide = await start(process.argv[2], { parts: ["later"] });
console.log(
  pyodide.runPython(`
import json, sys, zipimport
before, reads, read = set(sys.modules), [], zipimport._get_data
def counted(archive, entry):
    reads.append(entry[0])
    return read(archive, entry)
zipimport._get_data = counted
import pycore.api, pycore.writers.pdf
new = [sys.modules[name] for name in sys.modules if name not in before]
kept = [module for module in new if getattr(module, "__file__", None)]
specs = {module.__name__: (module.__spec__, module.__file__) for module in kept}
wrong = [name for name, (spec, file) in specs.items() if not spec.has_location or spec.origin != file]
packages = [module.__name__ for module in kept if hasattr(module, "__path__")]
files = sorted(module.__file__ for module in kept)
json.dumps({"reads": sorted(reads), "files": files, "wrong": wrong, "packages": packages})
`),
);
