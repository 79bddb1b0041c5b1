// Runs inside Node: the value of a Python expression, as JSON, in the site's own Pyodide, where the tests' own modules
// can be imported. Arguments: the folder of the built runtime, the folder of the tests, the expression.
import { start } from "./started.mjs";

const [folder, tests, wanted] = process.argv.slice(2);
const pyodide = await start(folder);
pyodide.mountNodeFS("/tests", tests);
console.log(pyodide.runPython(`
import json, sys
sys.dont_write_bytecode = True
sys.path.insert(0, "/tests")
json.dumps(${wanted})
`));
