// The site's Pyodide under Node. Its archives are joined to it as the page's worker does.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const ours = (name) => {
  const script = readFileSync(new URL(`../../site/js/${name}`, import.meta.url), "utf8");
  return import(`data:text/javascript,${encodeURIComponent(script)}`);
};
const { joinPart } = await ours("part.js");
const { COLD, joinCold } = await ours("cold.js");

/** The slots for whose sake the cold module was asked for: in a flow of learners and lecturers there is none. */
export const coldLoads = [];

/** Join archives of the built runtime in `folder` to a Python that runs. */
export function join(pyodide, folder, parts) {
  for (const part of parts) {
    pyodide.FS.writeFile(`/lib/${part}.zip`, readFileSync(`${folder}/${part}.zip`));
    joinPart(pyodide, `/lib/${part}.zip`);
  }
}

/** Python started from the built runtime in `folder`, with all of pycore or with `parts` alone. */
export async function start(folder, { parts = ["later"], ...more } = {}) {
  const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.mjs`).href);
  const { default: asm } = await import(pathToFileURL(`${folder}/pyodide.asm.mjs`).href);
  const bring = (slot) => {
    coldLoads.push(slot);
    return new WebAssembly.Module(readFileSync(`${folder}/${COLD}`));
  };
  const createPyodideModule = (settings) => {
    joinCold(settings, bring);
    return asm(settings);
  };
  const files = { indexURL: `${folder}/`, stdLibURL: `${folder}/library.zip` };
  const pyodide = await loadPyodide({ ...files, createPyodideModule, ...more });
  join(pyodide, folder, parts);
  return pyodide;
}
