// What the checks must know of workers beside what TypeScript knows.

interface ErrorConstructor {
  /** How many calls an error remembers; not in every engine. */
  stackTraceLimit: number;
}

/** What the build writes above the service worker: this edition's name, policy, and files with their digests. */
declare const EDITION: { name: string; policy: string; files: Record<string, string> };

/** Pyodide's own script, which the bench lays beside its worker. */
declare module "*/pyodide.mjs" {
  export function loadPyodide(): Promise<{ runPython(code: string): unknown }>;
}
