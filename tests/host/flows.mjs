// Runs inside Node: all flows (flows.py) in the site's Pyodide, from the first answers to a memory made and restored.
// Arguments: the folder of the built runtime, the folder of the tests, as JSON the pages, "whole" or "part", and "odd"
// for what no flow asks, at the end. Prints as JSON: a digest by flow, what was asked of the cold module until the odd
// (none where it is right), what all was asked of it, and, of a marked WebAssembly, the functions called and, of a
// traced one, the pieces of static data touched.
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";

import { coldLoads, fill, join, start } from "./started.mjs";

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
/** @type {number[][] | null} */
let wrong = null;

function firstAnswers(python) {
  python.FS.writeFile("/home/pyodide/first_answers.py", readFileSync(`${tests}/host/first_answers.py`, "utf8"));
  let last = "";
  for (const slug of slugs) {
    python.runPython(FORGET.replace("PART", last));
    join(python, folder, [slug]);
    const shown = python.runPython(`import gc, first_answers; gc.collect(); first_answers.first("${slug}")`);
    python.runPython("gc.collect()");
    digests[`first ${slug}`] = createHash("sha256").update(shown).digest("hex").slice(0, 20);
    last = slug;
  }
  spoilt(python);
  fill(python, folder);
  // What is there now is asked for before the rest has come, as by a hasty reader.
  python.runPython(`first_answers.pdf("${last}")`);
}

/** Note where something was written before the data that belongs there has come, if the test says where that is. */
function spoilt(python) {
  if (!existsSync(`${folder}/later.json`) || wrong) return;
  const { poison, parts } = JSON.parse(readFileSync(`${folder}/later.json`, "utf8"));
  const bytes = python._module.HEAPU8;
  const changed = ([at, length]) => bytes.subarray(at, at + length).some((byte) => byte !== poison);
  wrong = parts.filter(changed);
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

/** Copied and not mounted: memory that is watched is none that Node's files can be read into. */
function copy(python, place) {
  python.FS.mkdirTree(`/${place}`);
  for (const one of readdirSync(`${tests}/../${place}`, { withFileTypes: true })) {
    const inside = `${place}/${one.name}`;
    if (one.isDirectory()) copy(python, inside);
    else if (/\.(?:py|css|js)$/.test(one.name)) python.FS.writeFile(`/${inside}`, readFileSync(`${tests}/../${inside}`));
  }
}

function flows(python, names) {
  for (const place of ["tests", "site/css", "site/js"]) copy(python, place);
  python.runPython(`
import sys
sys.dont_write_bytecode = True
sys.path.insert(0, "/tests")
from host import flows`);
  for (const name of names ?? python.runPython("list(flows.FLOWS)").toJs()) {
    digests[name] = python.runPython(`flows.digest("${name}", ${whole})`);
  }
}

const plain = await start(folder, { parts: [], early: true });
firstAnswers(plain);
join(plain, folder, ["later", "codes", "photo", "strokes"]);
byProxy(plain);
flows(plain);
// When the collector runs depends on all before it: here it does, while what it seldom meets is alive.
plain.runPython("import gc, itertools; runs = itertools.groupby('aab'); run = next(runs); gc.collect()");
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
const called = globalThis.calledSoFar?.() ?? [];
const touched = globalThis.touchedSoFar?.() ?? [];
const told = { digests, cold, coldAtLast: coldLoads, called, touched, spoilt: wrong };
console.log(JSON.stringify(told));
