// The site's Pyodide under Node. Its archives are joined to it as the page's worker does.
import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const script = readFileSync(new URL("../../site/js/part.js", import.meta.url), "utf8");
const { joinPart } = await import(`data:text/javascript,${encodeURIComponent(script)}`);

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
  const pyodide = await loadPyodide({ indexURL: `${folder}/`, stdLibURL: `${folder}/library.zip`, ...more });
  join(pyodide, folder, parts);
  return pyodide;
}
