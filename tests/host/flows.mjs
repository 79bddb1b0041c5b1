// Runs inside Node: all flows (flows.py) in the site's Pyodide, from the first answers to a memory made and restored.
// Arguments: the folder of the built runtime, the folder of the tests, as JSON the pages, "whole" or "part", and "odd"
// for what no flow asks, at the end. Prints as JSON: a digest by flow, what was asked of the cold module until the odd
// (none where it is right), what all was asked of it, and, of a marked WebAssembly, the functions called.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";

import { coldLoads, join, start } from "./started.mjs";

const [folder, tests, pages, share, odd] = process.argv.slice(2);
const slugs = JSON.parse(pages);
const whole = share === "whole" ? "True" : "False";
const FORGET = `
import sys
for name in [name for name in sys.modules if name.split(".")[0] == "pycore"]:
    del sys.modules[name]
sys.path[:] = [place for place in sys.path if not place.endswith("/PART.zip")]
`;
const ODD = `
import json, math
found = [str(complex(1, 2) ** 2.5), "Ω ß".casefold(), repr(memoryview(b"abc").cast("c").tolist()), "%a" % "é",
         bytes.fromhex("00ff").hex(":"), math.lgamma(3.3), math.erf(0.3), int("9" * 60) // 7 ** 30,
         {1, 2} ^ {2, 3} == {1, 3}, "abc".translate({97: "z"}), (1 << 90).bit_count(), b"a,b".rpartition(b","),
         float.fromhex("0x1.8p3"), "x".join(reversed(["a", "b"])).swapcase().zfill(9), round(12345.678, -2)]
repr(found)
`;
const digests = {};

function firstAnswers(python) {
  python.FS.writeFile("/home/pyodide/first_answers.py", readFileSync(`${tests}/host/first_answers.py`, "utf8"));
  let last = "";
  for (const slug of slugs) {
    python.runPython(FORGET.replace("PART", last));
    join(python, folder, [slug]);
    const shown = python.runPython(`import first_answers; first_answers.first("${slug}")`);
    digests[`first ${slug}`] = createHash("sha256").update(shown).digest("hex").slice(0, 20);
    last = slug;
  }
  // What is there now is asked for before the rest has come, as by a hasty reader.
  python.runPython(`first_answers.pdf("${last}")`);
}

/** As the worker asks: through proxies, with bytes back and forth. */
function byProxy(python) {
  const { handle } = python.pyimport("pycore.api");
  const form = { learners: "2", seed: "4711" };
  const request = JSON.stringify({ do: "pdf", page: slugs[0], form: {}, base: "https://www.folio.example/a/" });
  for (const result of [handle(request), handle(JSON.stringify({ form }), python.toPy(new Uint8Array(9))), handle("{}")]) {
    result.get(0);
    const bytes = result.get(1);
    bytes?.toJs?.().slice();
    bytes?.destroy?.();
    result.destroy();
  }
  try {
    handle(1, 2, 3, 4);
  } catch (error) {
    digests.refused = error.message.includes("TypeError");
  }
}

function flows(python, names) {
  for (const name of ["tests", "site"]) python.mountNodeFS(`/${name}`, `${tests}/../${name}`);
  python.runPython(`
import sys
sys.dont_write_bytecode = True
sys.path.insert(0, "/tests")
from host import flows`);
  for (const name of names ?? python.runPython("list(flows.FLOWS)").toJs()) {
    digests[name] = python.runPython(`flows.digest("${name}", ${whole})`);
  }
}

const plain = await start(folder, { parts: [] });
firstAnswers(plain);
join(plain, folder, ["later", "codes", "photo"]);
byProxy(plain);
flows(plain);
const maker = await start(folder, { parts: [], _makeSnapshot: true });
maker.runPython("import pycore.api");
const memory = maker.makeMemorySnapshot();
const restored = await start(folder, { parts: [], _loadSnapshot: memory });
firstAnswers(restored);
join(restored, folder, ["later", "codes"]);
byProxy(restored);
restored.runPython("import json, pycore.api, pycore.writers.pdf; json.loads(pycore.api.handle('{}')[0])");
const cold = [...coldLoads];
if (odd) digests.odd = restored.runPython(ODD);
console.log(JSON.stringify({ digests, cold, coldAtLast: coldLoads, called: globalThis.calledSoFar?.() ?? [] }));
