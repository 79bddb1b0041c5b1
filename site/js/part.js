// An archive of pycore and its libraries, joined to a Python that runs already.

// What it holds of pycore is found beside what the library holds of it, package by package.
const JOIN = `
import importlib, sys, zipimport
sys.path.append("PLACE")
for name in zipimport.zipimporter("PLACE").get_data("packages").decode().split():
    importlib.import_module(name).__path__.append("PLACE/" + name.replace(".", "/"))
`;

/**
 * Let Python find the modules of the archive at `place` in its own file system.
 * @param {{ runPython(code: string): unknown }} python
 * @param {string} place
 */
export function joinPart(python, place) {
  python.runPython(JOIN.replaceAll("PLACE", place));
}
