// Python's WebAssembly is three modules. The hot one has all that the pages call, and the data of their first answers.
// The warm one brings the other data and follows by itself; until it is there, nothing else is asked of Python. The cold
// one has what no page calls: it is fetched the moment it is needed, while the call waits.

/** @import { Done, Settings } from "./memory.js" */

/** The names of the warm and the cold module beside the hot one's. */
export const WARM = "pyodide.warm.wasm";
export const COLD = "pyodide.cold.wasm";

const FLAG = "~warm"; // what the hot module calls the place in memory that says whether the warm data is there

/**
 * Let a hot module that is about to be made find what belongs to it. `bring(name, slot)` gives a compiled module at
 * once, or throws; `slot` says which function was called. Gives what tells whether all data `isThere`, and what `put`s
 * it there: a kept memory has it, and so has a module that is not split.
 * @param {Settings} settings
 * @param {(name: string, slot: number) => WebAssembly.Module} bring
 */
export function joinCold(settings, bring) {
  const instantiate = settings.instantiateWasm;
  /** @type {WebAssembly.Instance} */
  let hot;
  /** @param {WebAssembly.Module} module @param {WebAssembly.Imports} imports */
  const join = (module, imports = {}) => new WebAssembly.Instance(module, { ...imports, hot: hot.exports });
  const data = {
    isThere() {
      const { [FLAG]: flag, memory } = /** @type {Record<string, any>} */ (hot.exports);
      return !flag || new Uint32Array(memory.buffer, flag.value, 1)[0] === 1;
    },
    /** @param {WebAssembly.Module} module */
    put(module) {
      join(module);
    },
  };
  settings.instantiateWasm = (imports, done) => {
    /** @param {number} slot */
    const load = (slot) => {
      if (!data.isThere()) data.put(bring(WARM, slot));
      join(bring(COLD, slot), imports);
    };
    /** @type {Done} */
    const joined = (instance, module) => {
      hot = instance;
      done(instance, module);
    };
    return instantiate({ ...imports, cold: { load } }, joined);
  };
  return data;
}
