// What the checks must know of workers beside what TypeScript knows.

interface ErrorConstructor {
  /** How many calls an error remembers; not in every engine. */
  stackTraceLimit: number;
}

interface WorkerNavigator {
  /** Not in every engine. */
  readonly connection?: { readonly saveData?: boolean; readonly effectiveType?: string };
}

/**
 * What the build writes above the service worker: this edition's name, policy, files with their digests, and the bytes of
 * the large ones.
 */
declare const EDITION: { name: string; policy: string; files: Record<string, string>; bytes: Partial<Record<string, number>> };

/** Pyodide's own script, which the bench lays beside its worker. */
declare module "*/pyodide.mjs" {
  export function loadPyodide(): Promise<{ runPython(code: string): unknown }>;
}
