// What the checks must know of the browser beside what TypeScript knows. A page's scripts look for HTML elements only.

interface ParentNode {
  querySelector<K extends keyof HTMLElementTagNameMap>(selectors: K): HTMLElementTagNameMap[K] | null;
  querySelector<E extends Element = HTMLElement>(selectors: string): E | null;
  querySelectorAll<K extends keyof HTMLElementTagNameMap>(selectors: K): NodeListOf<HTMLElementTagNameMap[K]>;
  querySelectorAll<E extends Element = HTMLElement>(selectors: string): NodeListOf<E>;
}

interface Element {
  closest<K extends keyof HTMLElementTagNameMap>(selectors: K): HTMLElementTagNameMap[K] | null;
  closest<E extends Element = HTMLElement>(selectors: string): E | null;
}

interface Navigator {
  /** Not in every engine. */
  readonly connection?: { readonly saveData?: boolean; readonly effectiveType?: string };
  readonly deviceMemory?: number;
}

/** Where an engine has none, the scripts ask first. */
declare var trustedTypes: {
  createPolicy<R extends { createScriptURL(address: string): string }>(name: string, rules: R): R;
};
