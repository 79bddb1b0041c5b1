// Runs inside Node: makes library.zip, later.zip and all other archives by the very Pyodide that the site carries, so that their
// .pyc files fit it. Arguments: the folder of pyodide, the standard library's archive that it is to start from, the
// folder of the scripts, the folder to write to, and as JSON the folders of the packages that the library holds and
// those of the lazy parts, each by name.
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [pyodideFolder, standard, scripts, outputFolder, folders] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(`${pyodideFolder}/pyodide.mjs`).href);

/** @param {string} script @param {string} path */
async function start(script, path) {
  // A fixed hash seed: the order of a set in compiled code depends on it.
  const env = { HOME: "/home", PYTHONHASHSEED: "0" };
  const pyodide = await loadPyodide({ indexURL: `${pyodideFolder}/`, stdLibURL: standard, env });
  for (const [place, named] of Object.entries(JSON.parse(folders))) {
    for (const [name, folder] of Object.entries(named)) {
      pyodide.FS.mkdirTree(`/${place}/${name}`);
      pyodide.FS.mount(pyodide.FS.filesystems.NODEFS, { root: folder }, `/${place}/${name}`);
    }
  }
  pyodide.runPython(`import sys; sys.path.insert(0, "${path}")`);
  pyodide.runPython(readFileSync(`${scripts}/${script}`, "utf8"));
  return pyodide;
}

/** @typedef {import("pyodide").PyodideInterface} Pyodide */

// What the page's worker does with Pyodide, done once, so that the modules behind it are seen as needed.
/** @param {Pyodide} pyodide */
function use(pyodide) {
  pyodide.runPython("1 + 1");
  const made = pyodide.toPy({ values: [1, 2.5, "text", new Uint8Array(2)] });
  made.toJs();
  made.destroy();
  try {
    pyodide.runPython("raise ValueError('wanted')");
  } catch (error) {
    if (!String(error).includes("wanted")) throw error;
  }
}

try {
  const compiler = await start("library.py", "/tools");
  const asIs = await start("needed.py", "/ours.zip");
  asIs.FS.writeFile("/ours.zip", compiler.globals.get("our_archive")().toJs());
  use(asIs);
  const needed = asIs.globals.get("needed")(compiler.globals.get("modules_wanted")());
  const archives = compiler.globals.get("make_archives")(needed).toJs({ dict_converter: Object.fromEntries });
  for (const [name, archive] of Object.entries(archives)) writeFileSync(`${outputFolder}/${name}.zip`, archive);
} catch (error) {
  // Node would print the whole of Pyodide's one-line source above the message.
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}
