// A lazy part of pycore and its libraries, joined to a Python that runs already.

// What a part holds of pycore is found beside what the library holds of it, package by package.
const JOIN = `
import importlib, sys
sys.path.append("PLACE")
for name in ("calculators", "constructions", "practice", "render", "words"):
    importlib.import_module("pycore." + name).__path__.append("PLACE/pycore/" + name)
sys.modules["pycore"].__path__.append("PLACE/pycore")
`;

/** Let Python find the modules of the archive at `place` in its own file system. */
export function joinPart(python, place) {
  python.runPython(JOIN.replaceAll("PLACE", place));
}
