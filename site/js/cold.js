// Python's WebAssembly is two modules. The hot one has all that the pages call; what it calls beside that is in the
// cold one, which is fetched the moment it is needed, while the call waits.

/** @import { Done, Settings } from "./memory.js" */

/** The cold module's name beside the hot one's. */
export const COLD = "pyodide.cold.wasm";

/**
 * Let a hot module that is about to be made find its cold one. `bring(slot)` gives the compiled cold module at once,
 * or throws; `slot` says which function was called.
 * @param {Settings} settings
 * @param {(slot: number) => WebAssembly.Module} bring
 */
export function joinCold(settings, bring) {
  const instantiate = settings.instantiateWasm;
  settings.instantiateWasm = (imports, done) => {
    /** @type {WebAssembly.Instance} */
    let hot;
    /** @param {number} slot */
    const load = (slot) => {
      new WebAssembly.Instance(bring(slot), { ...imports, hot: hot.exports });
    };
    /** @type {Done} */
    const joined = (instance, module) => {
      hot = instance;
      done(instance, module);
    };
    return instantiate({ ...imports, cold: { load } }, joined);
  };
}
