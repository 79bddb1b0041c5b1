// Types of what reads photographs beside the page (js/photo-worker.js), and of the pile that they make.

import type { Pair, Reply, Values } from "./shared.js";

export interface ToReader {
  id: number;
  do: "open" | "marks" | "strokes" | "glance";
  [value: string]: unknown;
}

export interface FromReader {
  id: number;
  reply?: any;
  failed?: string;
}

/** What pycore is told of a photograph: pixels as it is measured. */
export interface Seen {
  photo: { width: number; height: number; tap: number };
  ground: string;
  byHand: boolean;
  printed: string;
  marks: (number[] | null)[];
  rings: (number[] | null)[] | null;
  untouched: number[];
  [value: string]: unknown;
}

/** A photograph of the pile: what was found of it, and what a person has decided. */
export interface PileRow {
  id: string;
  file: string;
  state: "waiting" | "reading" | "fault" | "press" | "asked" | "judged";
  digest?: string;
  /** How many pages of a PDF are not read; the others have rows of their own. */
  unread?: number;
  said?: string;
  /** The code that a person typed. */
  typed?: string;
  page?: string;
  form?: Values;
  code?: string;
  group?: string;
  seen?: Seen;
  /** How many quarters the photograph is turned clockwise, so that the sheet stands upright in it. */
  turned?: number;
  /** Its straight strokes in mm, and what a person has answered of their reading. */
  strokes?: unknown[];
  answers?: { method: string; points: Record<string, number[] | null> };
  taps?: Record<string, number[] | null>;
  drawing?: unknown;
  points?: unknown;
  accepted?: boolean;
  settled?: number;
}

export interface PileReply extends Reply {
  [value: string]: any;
}

export type PileAsk = (more: Record<string, unknown>) => Promise<PileReply>;

/** What the panel for a photograph is opened with by another page than the sheet's own. */
export interface PhotoTask {
  slug: string;
  form: Values;
  file: File;
  judged: (found: { seen: Seen; taps: Record<string, number[] | null>; turned: number }) => void;
  closed: () => void;
}

/** What is seen in one picture of a camera: the texts of QR codes, how many marks, and where, if all of a sheet are. */
export interface Glance {
  texts: string[];
  seen: number;
  places: Pair[] | null;
}

/** A thread that looks at the live picture of a camera. */
export interface GlanceReader {
  glance: (bitmap: ImageBitmap, sheet: { text: string; editions: Pair[][] } | null) => Promise<Glance>;
  end: () => void;
}

/** What the camera's window needs of the pile. */
export interface CameraPile {
  ask: PileAsk;
  take: (file: File) => unknown;
  rows: () => PileRow[];
  files: Map<string, File>;
  isFull: () => boolean;
  /** A thread of its own that reads; handed over, so that the page waits for no more files than without the window. */
  reader: () => GlanceReader;
}
