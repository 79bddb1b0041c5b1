// The site's Pyodide under Node. Its archives are joined to it as the page's worker does.
import { readFileSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const ours = (name) => {
  const script = readFileSync(new URL(`../../site/js/${name}`, import.meta.url), "utf8");
  return import(`data:text/javascript,${encodeURIComponent(script)}`);
};
const { joinPart } = await ours("part.js");
const { COLD, WARM, joinCold } = await ours("cold.js");

/** The slots for whose sake the cold module was asked for: in a flow of learners and lecturers there is none. */
export const coldLoads = [];

const data = new WeakMap(); // of each Python that was started

/** Join archives of the built runtime in `folder` to a Python that runs. */
export function join(pyodide, folder, parts) {
  for (const part of parts) {
    pyodide.FS.writeFile(`/lib/${part}.zip`, readFileSync(`${folder}/${part}.zip`));
    joinPart(pyodide, `/lib/${part}.zip`);
  }
}

/** Bring what a Python that was started early has not yet of its data. */
export function fill(pyodide, folder) {
  const its = data.get(pyodide);
  if (!its.isThere()) its.put(new WebAssembly.Module(readFileSync(`${folder}/${WARM}`)));
}

/**
 * Python started from the built runtime in `folder`, with all of pycore or with `parts` alone. `early`: with the data
 * alone that a page's first answer needs.
 */
export async function start(folder, { parts = ["later"], early = false, ...more } = {}) {
  // Or else Node would take what ends in .js for no module.
  writeFileSync(`${folder}/package.json`, '{ "type": "module" }');
  const { loadPyodide } = await import(pathToFileURL(`${folder}/pyodide.js`).href);
  const { default: asm } = await import(pathToFileURL(`${folder}/pyodide.asm.js`).href);
  const bring = (name, slot) => {
    if (name === COLD) coldLoads.push(slot);
    return new WebAssembly.Module(readFileSync(`${folder}/${name}`));
  };
  let its;
  const createPyodideModule = (settings) => {
    its = joinCold(settings, bring);
    return asm(settings);
  };
  const files = { indexURL: `${folder}/`, stdLibURL: `${folder}/library.zip` };
  const pyodide = await loadPyodide({ ...files, createPyodideModule, ...more });
  data.set(pyodide, its);
  if (!early) fill(pyodide, folder);
  join(pyodide, folder, parts);
  return pyodide;
}
