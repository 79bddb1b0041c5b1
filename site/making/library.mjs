// Runs inside Node: makes library.zip by the very Pyodide that the site carries, so that its .pyc files fit it.
// Arguments: the folder of pyodide, the folder of pycore, the folder of pydyf, library.py, the file to write.
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [pyodideFolder, pycoreFolder, pydyfFolder, scriptFile, outputFile] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${pyodideFolder}/pyodide.mjs`).href);

// A fixed hash seed: the order of a set in compiled code depends on it.
const pyodide = await loadPyodide({ indexURL: `${pyodideFolder}/`, env: { HOME: "/home", PYTHONHASHSEED: "0" } });
for (const [name, folder] of Object.entries({ pycore: pycoreFolder, pydyf: pydyfFolder })) {
  pyodide.FS.mkdirTree(`/sources/${name}`);
  pyodide.FS.mount(pyodide.FS.filesystems.NODEFS, { root: folder }, `/sources/${name}`);
}

// What the page's worker does with Pyodide, done once, so that the modules behind it are seen as needed.
pyodide.runPython("import sys; sys.path.insert(0, '/sources')");
await pyodide.runPythonAsync("1 + 1");
const made = pyodide.toPy({ values: [1, 2.5, "text", new Uint8Array(2)] });
made.toJs();
made.destroy();
try {
  pyodide.runPython("raise ValueError('wanted')");
} catch (error) {
  if (!String(error).includes("wanted")) throw error;
}

try {
  pyodide.runPython(readFileSync(scriptFile, "utf8"));
  const archive = pyodide.globals.get("make_library")();
  writeFileSync(outputFile, archive.toJs());
} catch (error) {
  // Node would print the whole of Pyodide's one-line source above the message.
  console.error(error.message);
  process.exit(1);
}
