import { loadPyodide } from "./pyodide.mjs";

const pyodide = await loadPyodide();
postMessage(pyodide.runPython("1 + 1"));
