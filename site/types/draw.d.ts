// What the drawing on the screen passes between its modules. Lengths are mm from the left and from the top of the sheet.

import type { Point, Reply, Values } from "./shared.js";

export type LineKind = "arrow" | "full" | "dashed";
export type Verb = "place" | "turn" | "mark" | "draw";
export type ToolName = "ruler" | "protractor" | "square-60" | "square-45" | "compasses";

/** What the hand did. */
export type DrawOp =
  | { do: "line"; id: number; kind: LineKind; x1: number; y1: number; x2: number; y2: number }
  | { do: "arc"; id: number; x: number; y: number; r: number; deg: number; sweep: number }
  | { do: "mark"; id: number; x1: number; y1: number; deg: number }
  | { do: "name"; id: number; name: string }
  | { do: "rub"; id: number }
  | { do: "clear" };

/** A line or a mark on the paper. `deg`: the direction of a mark's tick. */
export interface DrawItem {
  id: number;
  kind: LineKind | "mark" | "arc";
  x1: number;
  y1: number;
  x2: number;
  y2: number;
  name: string;
  deg?: number;
}

/** An arc: its centre, its radius, where it begins and how far it goes (degrees, anticlockwise). */
export interface DrawArc extends DrawItem {
  kind: "arc";
  x: number;
  y: number;
  r: number;
  deg: number;
  sweep: number;
}

export interface DrawPoint extends Point {
  what: "start" | "zero" | "tip" | "tail" | "mark" | "crossing";
  item?: DrawItem;
}

/** Where an instrument lies: its zero point, and the direction of its edge (degrees, anticlockwise from the right). `open`:
 * how far compasses are open (mm). */
export interface ToolPose extends Point {
  deg: number;
  open?: number;
}

/** Where the instruments lie that are on the paper. */
export type ToolPoses = Partial<Record<ToolName, ToolPose>>;

/** An instrument in true size as pycore draws it; `at`: its zero in the picture. */
export interface ToolPicture {
  svg: string;
  at: [number, number];
  length?: number;
  before?: number;
  width?: number;
  radius?: number;
  base?: number;
  circle?: boolean;
  /** The two edges at the right angle of a set square. */
  legs?: [number, number];
  /** How far compasses open, and how far they are open at first. */
  most?: number;
  open?: number;
}

export interface DrawName {
  plain: string;
  label: string;
  ink: string;
}

export interface TruePath {
  role: string;
  points: [number, number][];
}

export interface DrawReply extends Reply {
  announce: string;
  regions: Values;
  paper: { svg: string; width: number; height: number; page: string };
  start: [number, number];
  /** The mark that the sheet has in its first direction; null if it has none. */
  zero: [number, number] | null;
  /** The arrows that the sheet has drawn already. */
  printed: Omit<DrawItem, "id">[];
  tools: Record<ToolName, ToolPicture>;
  /** The instruments that the sheet's own construction needs. */
  front: ToolName[];
  names: Record<string, DrawName>;
  problem: string;
  /** The lettering of a text, as rules of a style sheet. */
  faces?: string;
  bands: [number, string][];
  ask: number[];
  done: boolean;
  true: TruePath[];
}

/** What every request of the view says of its problem. */
export interface DrawProblem {
  page: string;
  form: Values;
  needs: string[];
  veiled?: boolean;
}
