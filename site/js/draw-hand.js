// Finger, pen and mouse on the paper: one leads the instrument or the pencil, two turn and move the instrument that they
// hold, or else move and enlarge the paper. Nothing is asked of Python while one moves.

import { SHORTEST } from "./draw-desk.js";
import { apart, direction, wrap } from "./draw-tools.js";

/** @import { Desk } from "./draw-desk.js" */
/** @import { Drawing } from "./draw-strokes.js" */
/** @import { Tools } from "./draw-tools.js" */
/** @import { DrawOp, ToolName } from "../types/draw.js" */

const CATCH = 0.8; // mm within which instrument and pencil catch on what was drawn
const CATCH_PIXELS = { mouse: 5, touch: 9 }; // and the same where a mm is small
const MOST_CATCH = 2.5; // mm
const TAP = { mouse: 3, touch: 7 }; // px within which a press is no drag
const SLOW = 0.25; // how far the pencil goes for a finger that all but rests, which is thicker than what it points at
const FAST = 0.06; // px for each ms from which it keeps up with the finger
const CATCHING_UP = 0.3; // the share of what it lags behind that it catches up with each move of a fast finger
const RUB = 12; // px about a line within which the rubber finds it
const WHEEL = 0.0016; // of the wheel's way, as a power of e

/** @typedef {{ x: number, y: number }} Place */
/**
 * A finger that leads something. `first` and `last`: px; `at`: the place that is led, in mm; `held`: the instrument under
 * it, with `offset` and `turn` from the finger to its zero; `isDrag`: whether it has gone beyond a press.
 * @typedef {{ id: number, at: Place, first: Place, last: Place, time: number, lag: Place, kind: "mouse" | "touch", held: ToolName | null, isDrag: boolean, turn: number, offset: Place }} Finger
 */

/** @param {Desk} desk */
export function listen(desk) {
  const { board, view, tools, drawing } = desk;
  /** @type {Map<number, Place>} */
  const down = new Map();
  /** @type {Finger | null} */
  let one = null;
  /** @type {{ onTool: boolean, far: number, turn: number, middle: Place } | null} */
  let pair = null;
  let panning = -1;
  let frame = 0;

  // Where a line begins and an instrument is laid, a coarse finger is helped; where it ends, its length is the learner's.
  const reach = (kind = one?.kind ?? "mouse") => Math.min(MOST_CATCH, Math.max(CATCH, view.mm(CATCH_PIXELS[kind])));
  const places = () => [...down.values()];
  const isSteering = () => !desk.rubs && (desk.verb === "place" || desk.verb === "turn");

  /** @param {PointerEvent} event */
  function press(event) {
    if (event.button === 1 || (event.pointerType === "mouse" && event.button === 2)) {
      panning = event.pointerId;
    } else if (event.button || down.size > 1) return;
    event.preventDefault();
    if (document.activeElement !== board) board.focus({ preventScroll: true });
    board.setPointerCapture(event.pointerId);
    view.measure();
    down.set(event.pointerId, { x: event.clientX, y: event.clientY });
    if (panning === event.pointerId) view.moves("paper");
    else if (down.size === 2) startPair();
    else startOne(event);
  }

  /** @param {PointerEvent} event */
  function startOne(event) {
    const at = view.at(event);
    const place = { x: event.clientX, y: event.clientY };
    const held = isSteering() ? tools.at(at.x, at.y) : null;
    one = {
      id: event.pointerId, at, first: place, last: place, time: event.timeStamp, lag: { x: 0, y: 0 }, held, isDrag: false,
      kind: event.pointerType === "mouse" ? "mouse" : "touch", turn: 0, offset: { x: 0, y: 0 },
    };
    if (desk.rubs) return;
    hold(one, held ?? tools.inHand);
    view.moves(isSteering() ? "tool" : "hand");
    if (desk.verb === "mark" || desk.verb === "draw") beginAt(at);
    lead();
  }

  /** The pencil comes to the edge nearest to a place; a line begins there. @param {Place} at */
  function beginAt(at) {
    const { edge } = desk;
    if (!desk.begun) tools.pick(edge, at.x, at.y);
    if (desk.verb !== "draw" || desk.begun) return;
    tools.lead(edge, tools.reading(edge, at.x, at.y), reach());
    tools.turned = 0;
    desk.begun = tools.tip(edge);
  }

  /** On an instrument the finger holds it where it is; beside it, its zero comes to the finger. @param {Finger} finger @param {ToolName} name */
  function hold(finger, name) {
    const pose = tools.poseOf(name);
    // Compasses are opened by their pencil.
    const led = name === "compasses" && desk.verb === "turn" ? tools.tip("compasses", 0) : pose;
    if (finger.held) finger.offset = { x: led.x - finger.at.x, y: led.y - finger.at.y };
    finger.turn = pose.deg - direction(pose, finger.at);
  }

  function startPair() {
    const [first, second] = places().map(({ x, y }) => view.at({ clientX: x, clientY: y }));
    const under = isSteering() ? tools.at(first.x, first.y) ?? tools.at(second.x, second.y) : null;
    if (under && under !== tools.inHand) desk.take(under);
    one = null;
    desk.rest();
    view.moves(under ? "tool" : "paper");
    pair = { onTool: Boolean(under), ...spread() };
  }

  function spread() {
    const [first, second] = places();
    return {
      far: Math.max(1, apart(first, second)),
      turn: direction(first, second),
      middle: { x: (first.x + second.x) / 2, y: (first.y + second.y) / 2 },
    };
  }

  function followPair() {
    if (!pair || down.size < 2) return;
    const now = spread();
    const [before, after] = [pair.middle, now.middle].map(({ x, y }) => view.at({ clientX: x, clientY: y }));
    if (pair.onTool) {
      const turned = wrap(now.turn - pair.turn);
      const { x, y, deg } = tools.pose;
      const [dx, dy, turn] = [x - before.x, y - before.y, (turned * Math.PI) / 180];
      // The instrument turns about the middle of both fingers, and goes with it.
      Object.assign(tools.pose, {
        x: after.x + dx * Math.cos(turn) + dy * Math.sin(turn),
        y: after.y - dx * Math.sin(turn) + dy * Math.cos(turn),
        deg: wrap(deg + turned),
      });
      desk.moved();
    } else {
      view.pan(before.x - after.x, before.y - after.y);
      view.zoom(now.far / pair.far, { clientX: now.middle.x, clientY: now.middle.y });
    }
    pair = { onTool: pair.onTool, ...now };
  }

  /** @param {PointerEvent} event */
  function move(event) {
    const before = down.get(event.pointerId);
    if (!before) return;
    const now = { x: event.clientX, y: event.clientY };
    down.set(event.pointerId, now);
    if (panning === event.pointerId) {
      view.pan(view.mm(before.x - now.x), view.mm(before.y - now.y));
      return;
    }
    if (one && one.id === event.pointerId) follow(one, now, event.timeStamp);
    frame ||= requestAnimationFrame(() => {
      frame = 0;
      if (pair) followPair();
      else if (one && !desk.rubs) lead();
    });
  }

  /** The place that is led goes slower than a slow finger. @param {Finger} led @param {Place} now @param {number} time */
  function follow(led, now, time) {
    const [across, high] = [view.mm(now.x - led.last.x), view.mm(now.y - led.last.y)];
    const speed = Math.hypot(now.x - led.last.x, now.y - led.last.y) / Math.max(1, time - led.time);
    const gain = led.kind === "touch" ? Math.min(1, Math.max(SLOW, speed / FAST)) : 1;
    const lag = { x: led.lag.x + across, y: led.lag.y + high };
    const share = gain < 1 ? 0 : CATCHING_UP;
    const step = { x: across * gain + (lag.x - across * gain) * share, y: high * gain + (lag.y - high * gain) * share };
    led.lag = { x: lag.x - step.x, y: lag.y - step.y };
    led.at = { x: led.at.x + step.x, y: led.at.y + step.y };
    Object.assign(led, { last: now, time });
  }

  /** Whether a finger on an instrument drags it; from then on that instrument is in hand. @param {Finger} finger */
  function drags(finger) {
    if (finger.isDrag || apart(finger.first, finger.last) < TAP[finger.kind]) return finger.isDrag;
    finger.isDrag = true;
    if (finger.held && finger.held !== tools.inHand) desk.take(finger.held);
    return true;
  }

  /** Let instrument or pencil follow the place that is led. */
  function lead() {
    if (!one) return;
    const isDrag = drags(one);
    const { at, offset } = one;
    const verb = desk.verb;
    if (verb === "place") {
      if (one.held && !isDrag) return;
      tools.place(at.x + offset.x, at.y + offset.y, reach());
      desk.moved();
      view.look(tools.pose);
    } else if (verb === "turn" && tools.kind === "compasses") {
      if (one.held && !isDrag) return;
      tools.openOnto({ x: at.x + offset.x, y: at.y + offset.y }, reach());
      desk.moved();
      view.look(tools.tip("compasses", 0));
    } else if (verb === "turn") {
      if (isDrag && apart(at, tools.pose) > 2) tools.turn(direction(tools.pose, at) + one.turn, reach());
      desk.moved();
      view.look(tools.tip(tools.inHand, tools.reading(tools.inHand, at.x, at.y)));
    } else {
      // A press alone is helped as where a line begins; what is dragged ends where the learner reads.
      tools.lead(desk.edge, tools.reading(desk.edge, at.x, at.y), isDrag ? CATCH : reach());
      const tip = tools.tip(desk.edge);
      if (desk.edge === "compasses") desk.moved();
      view.pencil(tip, desk.line(tip));
      view.look(tip);
    }
  }

  /** @param {PointerEvent} event */
  function lift(event) {
    if (!down.delete(event.pointerId)) return;
    view.moves("");
    if (panning === event.pointerId) {
      panning = -1;
      return;
    }
    if (pair) {
      // The finger that stays leads nothing: it would jump.
      pair = null;
      desk.settled();
      return;
    }
    if (!one || one.id !== event.pointerId) return;
    if (event.type === "pointerup") finish(one);
    else if (desk.isBegun) view.pencil(desk.begun); // by a press before this one, as it still is
    else desk.rest();
    one = null;
    view.look(null);
  }

  /** @param {Finger} led */
  function finish(led) {
    cancelAnimationFrame(frame);
    frame = 0;
    if (desk.rubs) {
      const item = drawing.under(led.at.x, led.at.y, view.mm(RUB));
      if (item) desk.did({ do: "rub", id: item.id });
      else desk.say("nothing-there", {}, true);
      return;
    }
    const isCompasses = tools.kind === "compasses";
    if (isSteering() && led.held && !drags(led) && (isCompasses || (desk.verb === "place" && led.held !== tools.inHand))) {
      // Pressed on another instrument, or on a leg of the compasses: that lies over the place which is meant.
      if (isCompasses && desk.verb === "turn") tools.openOnto(led.at, reach());
      else tools.place(led.at.x, led.at.y, reach());
      desk.moved();
    } else lead();
    if (desk.verb === "mark") {
      view.pencil(null);
      desk.did(mark(tools, drawing));
    } else if (desk.verb === "draw") endLine();
    else desk.settled();
  }

  /** A line ends where the finger is lifted; after a press without a drag, where the next one is. */
  function endLine() {
    const tip = tools.tip(desk.edge);
    // Once round a centre the pencil is where it began.
    const far = desk.edge === "compasses" ? (tools.open * Math.abs(tools.turned) * Math.PI) / 180 : apart(desk.begun ?? tip, tip);
    if (desk.begun && !desk.isBegun && far < SHORTEST) desk.begin(tip);
    else desk.end(tip);
  }

  /** @param {WheelEvent} event */
  function wheel(event) {
    event.preventDefault();
    if (event.shiftKey) view.pan(view.mm(event.deltaX || event.deltaY), 0);
    else view.zoom(Math.exp(-WHEEL * event.deltaY * (event.ctrlKey ? 6 : 1)), event);
  }

  board.addEventListener("pointerdown", press);
  board.addEventListener("pointermove", move);
  for (const end of ["pointerup", "pointercancel"]) board.addEventListener(end, (event) => lift(/** @type {PointerEvent} */ (event)));
  board.addEventListener("wheel", wheel, { passive: false });
  board.addEventListener("contextmenu", (event) => event.preventDefault());
}

/** A mark where the pencil is, across the edge. @param {Tools} tools @param {Drawing} drawing @returns {DrawOp} */
export function mark(tools, drawing) {
  const { x, y } = tools.tip();
  return { do: "mark", id: drawing.next(), x1: x, y1: y, deg: tools.across() };
}
