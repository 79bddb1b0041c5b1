// What the drawing on the screen needs of the page that it lies over.

import type { Bridge } from "../js/bridge.js";
import type { Say, Values } from "./shared.js";

/** The site's one way to keep things. */
export type DrawKept = Pick<typeof import("../js/kept.js"), "read" | "write">;

/** What the view needs of its page; `changed`: the address must follow. */
export interface DrawPage {
  bridge: Bridge;
  failed: (error: unknown) => void;
  said: Say;
  changed: () => void;
  /** The view is closed: what was read off the drawing, and whether that was done just now. */
  readOff: (reading: Values, isNew: boolean) => void;
  kept: DrawKept;
}
