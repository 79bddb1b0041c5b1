// Types that scripts share: what pages, workers and pycore's api say to one another. For the checks alone; the site
// carries none of it.

import type { DrawReply } from "./draw.js";
import type { PileReply } from "./photos.js";

/** A form's values by the names of its controls. */
export type Values = Record<string, string>;

/** A control of a form. Only a select has options. */
export type InputControl = HTMLInputElement & { options?: undefined };
export type TextControl = HTMLTextAreaElement & { options?: undefined; checked?: undefined; defaultChecked?: undefined };
export type SelectControl = HTMLSelectElement & {
  checked?: undefined;
  defaultChecked?: undefined;
  defaultValue?: undefined;
};
export type Control = InputControl | SelectControl | TextControl;

/** Says a sentence: to everybody, or to a screen reader alone. */
export type Say = (sentence: string) => void;

/** A value that would do, as a button beside the message. */
export interface Offer {
  label: string;
  set: Values;
}

/** What is wrong with one field. */
export interface Fault {
  field: string;
  message: string;
  part?: string;
  offers?: Offer[];
  /** Nothing was typed yet: what to type is said beside the buttons, and the field shows no fault. */
  awaited?: boolean;
  /** It can be used, and may be meant otherwise: it is asked which. */
  question?: boolean;
}

/** How pycore understood one input. */
export type Echo = Partial<Record<string, string>>;

/** What a problem asks for: the labels of the answer's fields, its units, the scale that judges it. */
export interface Asked {
  labels: Partial<Record<string, string>>;
  units: string[];
  scale: string;
}

// The api of pycore: one request, one reply, by the word in `do`.

/** The words that a request of the api can begin with. */
export type Doing =
  | "answer" | "begin" | "code" | "draw" | "easy" | "finish" | "handout" | "hint" | "lesson" | "mark" | "next" | "open" | "pdf"
  | "photo" | "pile" | "practice" | "set-again" | "setup" | "share" | "stop";

/** A request. `needs` names the lazy parts without which its reply would be incomplete. */
export interface Request<D extends Doing = Doing> {
  do: D;
  needs?: string[];
  [value: string]: unknown;
}

/** A piece of a name that pycore's own faces cannot set; `rtl`: it is read from the right. */
export interface Piece {
  key: string;
  text: string;
  script: string;
  rtl: boolean;
}

/** The characters of a glyph, its advance and its outline, in thousandths of an em. */
export type Glyph = [string, number, string];

/** What a request knows of letters that pycore's own faces lack; null for a piece that no font has. */
export interface Letters {
  glyphs: Glyph[];
  runs: Record<string, number[] | null>;
}

/** What every reply may have. Where `ok` is false, the rest of a reply's own type is missing. */
export interface Reply {
  ok: boolean;
  announce?: string;
  errors?: Fault[];
  waiting?: string;
  /** Modules were missing: the rest of pycore has not come yet. */
  missing?: boolean;
  /** Pieces of names that have to be shaped first. */
  unlettered?: Piece[];
  /** The bytes of a file, beside the reply. */
  blob: Uint8Array<ArrayBuffer> | null;
}

/** A reply that brings a file. */
export interface FileReply extends Reply {
  type: string;
  filename: string;
}

export interface AnswerReply extends Reply {
  regions: Values;
  fragment: string;
  code: string;
  problem?: string;
  asked?: Asked;
  echo?: Record<string, Echo>;
  inks?: Values;
  labels?: Values;
  options?: Record<string, Values>;
  scenario?: string;
  /** Of a college's settings: what is chosen, by field. */
  chosen?: Values;
  /** Of a question paper: what each question is worth, as a whole and by part. */
  totals?: string[];
  parts?: string[];
}

export interface OpenReply extends Reply {
  form: Values;
  fragment: string;
  page?: string;
  notices?: string[];
  /** The link or its code gives the values: none of them is the example's. */
  own?: boolean;
  /** A code that cannot be used; `errors` says why. */
  typed?: string;
  /** It checks values that are still to be typed: their answer is held back. */
  held?: boolean;
}

export interface LessonReply extends Reply {
  announce: string;
  asked: string;
  blanked?: string;
  explained: boolean;
  hidden: boolean;
  measured: boolean;
  notice?: string;
  progress: string;
  regions: Values;
  step: number | string;
  steps: number;
  turned: number;
  view: string;
  views: string[];
  why: string;
}

export interface MarkReply extends Reply {
  regions: Values;
  /** The answer itself is right, not only what was found on the way to it. */
  solved?: boolean;
}

export interface CodeReply extends Reply {
  page: string;
  fragment: string;
}

export interface ShareReply extends Reply {
  link: string;
  note: string;
  /** What the code of a problem that is given is for. */
  told?: string;
  regions: Values;
}

export interface SetupReply extends Reply {
  regions?: Values;
  correction?: PrinterSetup | null;
  scaling?: boolean;
  type: string;
  filename: string;
}

/** A question paper as it is kept and as a file holds it: its form and its list of names. */
export interface PaperText {
  form: Values;
  roll: string;
  /** Of the one being put together: the links that it had last. */
  links?: string[];
  /** And the space for working that the page took away, by the name of its field. */
  spaces?: Values;
}

/** A question paper that was made: its code, its number of learners, the day. */
export interface MadePaper extends PaperText {
  id: string;
  code: string;
  learners: number;
  day: number;
}

/** Marks that were chosen from a range, for the answers as they were typed: of all parts together, or of single parts by their keys. */
export interface SettledMarks {
  place: number;
  question: number;
  marks?: number;
  parts?: Record<string, number>;
  drawn: string;
  calculated: string;
}

/** The answers to a paper as they were typed, and what was chosen from ranges of marks. */
export interface PaperAnswers {
  text: string;
  settled: SettledMarks[];
}

/** Marks from and to. */
export interface MarksRange {
  low: number;
  high: number;
}

/** A learner's marks of one question. */
export interface QuestionMarks extends MarksRange {
  number: number;
  mistakes: string[];
}

/** A learner's marks of a paper; earlier versions kept them without its questions. */
export interface LearnerMarks extends MarksRange {
  place: number;
  name: string;
  mistakes: string[];
  questions?: QuestionMarks[];
}

/** A marked paper as the register keeps it; `day` (its own, or that of its marking) and `marked` count from 1970. */
export interface RegisterEntry {
  paper: string;
  group: string;
  day: number;
  marked?: number;
  date?: string;
  learners?: number;
  questions?: { number: number, of: number }[];
  marks: LearnerMarks[];
  [value: string]: unknown;
}

/** Marks in the register that others would take the place of: of a question, or of a whole paper. */
export interface MarksChange {
  place: number;
  name: string;
  question?: number;
  before: MarksRange;
  after?: MarksRange;
}

/** Long work: the first reply, those on the way, and the last, which may bring a file. */
export interface WorkReply extends FileReply {
  announce: string;
  ended?: boolean;
  gone?: boolean;
  job: number;
  regions: Values;
  said: string;
  share: number;
  told: string;
  /** What the register keeps of a paper that was marked. */
  entry?: Omit<RegisterEntry, "day">;
  /** How many lines could not be used. */
  count?: number;
  /** How many marked lines the register keeps nothing of. */
  left?: number;
  /** How many answers nobody can read: they have 0 marks. */
  unread?: number;
  /** The code of the paper whose file it is. */
  code?: string;
}

/** The last reply of long work, with its whole file. */
export type WorkResult = Omit<WorkReply, "blob"> & { blob: BlobPart | null };

/** What the register is told of a marking. */
export type Marked = Partial<Pick<WorkResult, "entry" | "count" | "left" | "unread">>;

/** A record of practice: what it holds, pycore alone knows. */
export type PracticeRecord = Record<string, unknown>;

/** What this device keeps, by kind. */
export type Thing = "practice" | "taken" | "drawings" | "class" | "papers" | "register" | "pile" | "college" | "lesson" | "device" | "theme" | "store";

/** What a reader knows of what is kept: its name, what can be counted in it, its file, and how it is erased alone. */
export interface KeptRow {
  name: string;
  entry: Entry;
  counts: Record<string, number>;
  readable: boolean;
  file: { name: string; text: string };
  erase: () => void;
}

/** One kept text: of what kind, of which learner ("" the first), under which key, and the day of its last change since 1970. */
export interface Entry {
  thing: Thing;
  who: string;
  key: string;
  text: string;
  day: number;
}

export interface PracticeReply extends Reply {
  /** The page and the problem under which a drawing on the screen is kept. */
  drawing: { page: string; problem: string };
  asked: Asked;
  echo: AnswerReply["echo"];
  labels: Values;
  incoming?: PracticeRecord;
  record: PracticeRecord;
  regions: Values;
  said?: string;
  state: string;
  way: string;
}

/** A mark on the sheet: its name, its sign, where it is (mm), and about where in a photograph if it is set by hand. */
export interface SheetMark {
  name: string;
  sign: string;
  hand?: Pair | null;
  x?: number;
  y?: number;
}

/** A point of the drawing to be set; `ask` is HTML. */
export interface Tap {
  name: string;
  label: string;
  ask: string;
}

/** A line of the true drawing over the photograph, in pixels of the whole picture. */
export interface Path {
  role: string;
  points: Pair[];
}

export interface PhotoReply extends Reply {
  announce: string;
  corners: SheetMark[];
  marks: SheetMark[];
  older: SheetMark[];
  overlay: Path[];
  regions: Values;
  taps: Tap[];
}

/** The reply to a request for the moves for easy reading. */
export interface EasyReply extends Reply {
  regions: Values;
}

export interface Replies {
  answer: AnswerReply;
  begin: WorkReply;
  code: CodeReply;
  draw: DrawReply;
  easy: EasyReply;
  finish: WorkReply;
  handout: FileReply;
  lesson: LessonReply;
  hint: MarkReply;
  mark: MarkReply;
  next: WorkReply;
  open: OpenReply;
  pdf: FileReply;
  photo: PhotoReply;
  pile: PileReply;
  practice: PracticeReply;
  "set-again": OpenReply;
  setup: SetupReply;
  share: ShareReply;
  stop: Reply;
}

// What a device keeps.

/** A printer's correction as pycore worked it out: factors along and across its feed, and by page across and up. */
export interface PrinterSetup {
  along: number;
  across: number;
  lead: number;
  edge: string;
  pages: Partial<Record<string, Pair>>;
}

export interface ScreenSetup {
  pxPerMm: number;
  pixelRatio: number;
}

// Points.

export type Pair = [number, number];

export interface Point {
  x: number;
  y: number;
}

// Between page and worker.

/** Where Python's files are: addresses, the parts to start with, the name of a kept memory, the WebAssembly's bytes. */
export interface Places {
  root: string;
  runtime: string;
  library: string;
  parts: string[];
  memory: string;
  size: number;
  /** Bytes of the WebAssembly and of all archives that the start fetches. */
  whole: number;
  /** Bytes of the warm module, which follows. */
  warm: number;
  /** Whether the page was opened with a link, or asks for something of its own, so that its answer waits for that. */
  asked: boolean;
}

/** How far fetching is: the share of it, and its bytes as they come over the network. */
export interface Fetched {
  share: number;
  bytes: number;
  whole: number;
}

/** What a page sends to its worker: one of start, make, part, or a request with its number. */
export interface ToWorker {
  start?: Places & { anew: boolean; withCold: boolean };
  make?: Places;
  part?: string;
  id?: number;
  text?: string;
  blob?: Uint8Array | null;
  /** Whether the request is for a page's first answer, which needs no warm data. */
  early?: boolean;
}

/** What a worker sends back. */
export interface FromWorker {
  stage?: "fetching" | "restoring" | "starting" | "ready" | "warm" | "cold";
  /** The number of the function for whose sake the cold module is fetched. */
  slot?: number;
  fetched?: Fetched;
  restored?: boolean;
  /** Whether all of Python's data is there. */
  filled?: boolean;
  /** Bytes a second of what came for the start over the network; 0 if that is not known. */
  pace?: number;
  /** The name of the lock that the worker holds as long as it lives. */
  life?: string;
  part?: string;
  loaded?: boolean;
  /** Bytes of a memory that was made; 0 for none. */
  made?: number;
  reason?: string;
  id?: number | null;
  text?: string;
  blob?: Uint8Array<ArrayBuffer> | null;
  failed?: string;
  /** Whether it failed for want of the cold module: that Python can do nothing more. */
  lacking?: boolean;
  /** Whether it failed because the warm data could not be had: the next request tries anew. */
  absent?: boolean;
}

/** What a bridge says of the start. */
export type State = "fetching" | "starting" | "ready" | "failed" | "again";
