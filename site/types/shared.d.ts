// Types that scripts share: what pages, workers and pycore's api say to one another. For the checks alone; the site
// carries none of it.

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
  | "answer" | "begin" | "code" | "finish" | "handout" | "lesson" | "mark" | "next" | "open" | "pdf" | "photo"
  | "practice" | "set-again" | "setup" | "share" | "stop";

/** A request. `needs` names the lazy parts without which its reply would be incomplete. */
export interface Request<D extends Doing = Doing> {
  do: D;
  needs?: string[];
  [value: string]: unknown;
}

/** What every reply may have. Where `ok` is false, the rest of a reply's own type is missing. */
export interface Reply {
  ok: boolean;
  announce?: string;
  errors?: Fault[];
  waiting?: string;
  /** Modules were missing: the rest of pycore has not come yet. */
  missing?: boolean;
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
}

export interface OpenReply extends Reply {
  form: Values;
  fragment: string;
  page?: string;
  notices?: string[];
  /** The link or its code gives the values: none of them is the example's. */
  own?: boolean;
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
}

export interface CodeReply extends Reply {
  page: string;
  fragment: string;
}

export interface ShareReply extends Reply {
  link: string;
  note: string;
  regions: Values;
}

export interface SetupReply extends Reply {
  regions?: Values;
  correction?: PrinterSetup | null;
  scaling?: boolean;
  type: string;
  filename: string;
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
}

/** A record of practice: what it holds, pycore alone knows. */
export type PracticeRecord = Record<string, unknown>;

export interface PracticeReply extends Reply {
  asked: Asked;
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

export interface Replies {
  answer: AnswerReply;
  begin: WorkReply;
  code: CodeReply;
  finish: WorkReply;
  handout: FileReply;
  lesson: LessonReply;
  mark: MarkReply;
  next: WorkReply;
  open: OpenReply;
  pdf: FileReply;
  photo: PhotoReply;
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
}

/** What a page sends to its worker: one of start, make, part, or a request with its number. */
export interface ToWorker {
  start?: Places & { anew: boolean; withCold: boolean };
  make?: Places;
  part?: string;
  id?: number;
  text?: string;
  blob?: Uint8Array | null;
}

/** What a worker sends back. */
export interface FromWorker {
  stage?: "fetching" | "restoring" | "starting" | "ready" | "cold";
  /** The number of the function for whose sake the cold module is fetched. */
  slot?: number;
  /** How far fetching is, in per cent. */
  share?: number;
  restored?: boolean;
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
}

/** What a bridge says of the start. */
export type State = "fetching" | "starting" | "ready" | "failed" | "again";
