// The buttons of the drawing, its judgement by pycore, and files.

import { regionHTML, Superseded } from "./bridge.js";
import { download } from "./download.js";
import { isArc } from "./draw-arcs.js";
import * as keep from "./draw-kept.js";
import { printPicture } from "./draw-print.js";
import { around } from "./elements.js";

/** @import { Desk } from "./draw-desk.js" */
/** @import { LineKind, ToolName, Verb } from "../types/draw.js" */

const MOST_FILE = 2_000_000; // bytes
const CLOSER = 1.4;

// Judged by pycore.

/** What was not asked for does not lie over the paper: there its first words stand beside that. @param {Desk} desk */
async function judge(desk, isAsked = true) {
  const mine = ++desk.edition;
  const lines = desk.drawing.strokes();
  const sent = lines.map((one) => (isArc(one) ? [one.kind, one.x, one.y, one.x1, one.y1, one.sweep] : [one.kind, one.x1, one.y1, one.x2, one.y2, one.name]));
  desk.say("waiting");
  const judged = await desk.page.bridge.ask({ do: "draw", ...desk.problem, lines: sent }, { topic: "draw" });
  if (mine !== desk.edition) return;
  if (!judged.ok) {
    desk.prompt(judged.announce);
    return;
  }
  const result = desk.find("result");
  result.removeAttribute("data-old");
  result.toggleAttribute("data-aside", !isAsked);
  result.innerHTML = regionHTML(judged.regions["draw-result"]);
  desk.bands = new Map(judged.bands.map(([place, band]) => [lines[place].id, band]));
  desk.right = judged.true;
  desk.button("true").hidden = !judged.true.length;
  desk.view.draw(desk.drawing.items(), desk.bands);
  const unknown = lines[judged.ask[0]];
  if (unknown) desk.askName(unknown.id, `${desk.words.listed(unknown)}. ${desk.words.said("asked")}`);
  if (judged.done) desk.unfold("all", "read");
  desk.speak(judged.announce);
  const headline = desk.find("band");
  if (!result.checkVisibility()) desk.prompt((headline.querySelector("strong") ?? headline).textContent);
  result.scrollIntoView({ block: "nearest" });
}

// On a phone it lies over the paper: whoever goes on with the drawing has read it.
/** @param {Desk} desk */
const putAside = (desk) => desk.find("result").toggleAttribute("data-aside", true);

// Files.

/** @param {Desk} desk @param {string} text @param {string} kind @param {string} type */
function saveFile(desk, text, kind, type) {
  download({ blob: new Blob([text]), type, filename: `${desk.problem.page}-drawing.${kind}` });
  desk.say("saved", {}, true);
}

// A picture takes its lettering along: another device has none of its fonts. Without Python it is saved all the same.
/** @param {Desk} desk */
async function savePicture(desk) {
  const picture = desk.view.picture();
  const asked = desk.page.bridge.ask({ do: "draw", ...desk.problem, text: picture.textContent }, { topic: "lettering" });
  const lettering = await asked.catch(() => null);
  if (lettering?.ok) {
    const style = document.createElementNS(picture.namespaceURI, "style");
    style.textContent = lettering.faces ?? "";
    picture.prepend(style);
  }
  saveFile(desk, new XMLSerializer().serializeToString(picture), "svg", "image/svg+xml");
}

/** @param {Desk} desk @param {File} file */
async function openFile(desk, file) {
  const read = file.size < MOST_FILE ? keep.fromFile(await file.text()) : null;
  if (!desk.dialog.open) return;
  if (!read) desk.say("not-ours", {}, true);
  else if (read.page !== desk.problem.page || read.problem !== desk.reply.problem) desk.say("other-problem", {}, true);
  else {
    desk.replace(read);
    desk.say("opened", {}, true);
  }
}

/** @param {Desk} desk @param {number} factor */
function zoom(desk, factor) {
  desk.view.zoom(factor);
  desk.saySize();
}

/** @param {Desk} desk @param {number} by */
function turn(desk, by) {
  desk.tools.turn(desk.tools.pose.deg + by);
  desk.lay();
  desk.settled();
}

/** @type {Record<string, (desk: Desk, value: string) => unknown>} */
const actions = {
  close: (desk) => desk.dialog.close(),
  full: (desk) => (document.fullscreenElement ? document.exitFullscreen() : desk.find("panel").requestFullscreen()),
  tool(desk, value) {
    desk.take(/** @type {ToolName} */ (value));
    const cannot = desk.verb === "draw" ? value !== "ruler" : desk.verb === "mark" && value === "compasses";
    desk.setVerb(cannot ? "place" : desk.verb, desk.rubs && !cannot);
    desk.speak(`${desk.words.said("in-hand", { tool: desk.words.said(`tool-${value}`) })} ${desk.words.tool()}`);
  },
  verb(desk, value) {
    const verb = /** @type {Verb} */ (value);
    if (verb === "mark" && desk.tools.kind === "compasses") {
      desk.say("no-mark", {}, true);
      return;
    }
    if (verb === "draw" && desk.tools.inHand === "protractor") desk.take("ruler");
    desk.setVerb(verb);
    const opens = verb === "turn" && desk.tools.kind === "compasses";
    desk.say("verb", { verb: desk.words.said(`verb-${opens ? "open" : verb}`), prompt: desk.words.prompt(verb) });
  },
  kind(desk, value) {
    desk.kind = /** @type {LineKind} */ (value);
    desk.press("kind", value);
    desk.say(`kind-${value}`);
  },
  rubber(desk) {
    desk.setVerb(desk.verb, !desk.rubs);
    desk.speak(desk.words.prompt(desk.rubs ? "rubber" : desk.verb));
  },
  onto(desk) {
    desk.tools.onto();
    desk.lay();
    desk.view.reveal(desk.tools.pose);
    desk.settled();
  },
  along(desk) {
    if (!desk.tools.along()) {
      desk.say("no-line", {}, true);
      return;
    }
    desk.lay();
    desk.settled();
  },
  others: (desk) => desk.showAll(desk.button("others").getAttribute("aria-expanded") !== "true"),
  against(desk) {
    if (!desk.tools.against()) {
      desk.say("no-other", {}, true);
      return;
    }
    desk.lay();
    desk.settled();
  },
  less: (desk) => turn(desk, -1),
  more: (desk) => turn(desk, 1),
  undo: (desk) => desk.go(-1, "undone", "nothing-undone"),
  redo: (desk) => desk.go(1, "redone", "nothing-redone"),
  closer: (desk) => zoom(desk, CLOSER),
  farther: (desk) => zoom(desk, 1 / CLOSER),
  whole(desk) {
    desk.view.whole();
    desk.saySize();
  },
  name(desk, value) {
    const item = desk.drawing.items().find(({ id }) => id === desk.naming);
    if (item && value !== item.name) desk.did({ do: "name", id: item.id, name: value });
    desk.askName(0);
    desk.say(value ? "named" : "unnamed", { name: desk.reply.names[value]?.plain ?? "" });
    desk.board.focus({ preventScroll: true });
    if (item) desk.drawn();
  },
  rename(desk, value) {
    desk.askName(Number(value));
    desk.find("names").querySelector("button")?.focus();
  },
  rub: (desk, value) => desk.did({ do: "rub", id: Number(value) }),
  judge: (desk) => judge(desk),
  "judge-each": (desk) => judge(desk, false),
  aside: putAside,
  paper(desk) {
    putAside(desk);
    desk.board.focus({ preventScroll: true });
    desk.board.scrollIntoView({ block: "nearest" });
  },
  true(desk) {
    const is = desk.button("true").getAttribute("aria-pressed") !== "true";
    desk.button("true").setAttribute("aria-pressed", String(is));
    desk.view.layOver(is ? desk.right : []);
  },
  replay: (desk) => desk.replay(),
  save: (desk) => saveFile(desk, keep.fileOf(desk.save()), "json", "application/json"),
  "save-svg": savePicture,
  print: (desk) => printPicture(desk.view.picture(), desk.reply.paper.page),
  afresh(desk) {
    desk.did({ do: "clear" });
    desk.askName(0);
    desk.say("afresh", {}, true);
  },
};

/**
 * Let the buttons work; gives what does the same by their names.
 * @param {Desk} desk
 */
export function listen(desk) {
  /** @param {Promise<unknown>} work */
  const attended = (work) => work.catch((error) => error instanceof Superseded || desk.page.failed(error));
  /** @param {string} does @param {string} [value] */
  function run(does, value = "") {
    desk.stopReplay();
    attended(Promise.resolve(actions[does]?.(desk, value)));
  }
  const panel = desk.find("panel");
  panel.addEventListener("click", (event) => {
    const pressed = around(event, "[data-draw-do]");
    if (pressed) run(pressed.dataset.drawDo ?? "", pressed.dataset.value);
    // A link in what was marked leads away from here.
    else if (around(event, "a[href]:not([data-in-practice])")) desk.dialog.close();
  });
  panel.addEventListener("change", ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    if (target.matches("[data-draw-catch]")) desk.tools.catches = target.checked;
    if (target.matches("[data-draw-each]")) desk.judgesEach = target.checked;
    const file = target.matches("[data-draw-open]") && target.files?.[0];
    if (!file) return;
    attended(openFile(desk, file));
    target.value = "";
  });
  panel.addEventListener("input", ({ target }) => {
    const read = target instanceof Element && target.closest("[data-draw-read]");
    if (!read) return;
    desk.reading.typed();
    desk.save();
  });
  panel.addEventListener("submit", (event) => {
    event.preventDefault();
    if (event.target instanceof HTMLFormElement) attended(desk.reading.mark(desk, event.target));
  });
  const full = desk.button("full");
  full.hidden = !document.fullscreenEnabled;
  panel.addEventListener("fullscreenchange", () => full.setAttribute("aria-pressed", String(document.fullscreenElement === panel)));
  desk.drawn = () => desk.judgesEach && run("judge-each");
  desk.board.addEventListener("pointerdown", () => (desk.stopReplay(), putAside(desk)), { capture: true });
  desk.board.addEventListener("keydown", () => desk.stopReplay(), { capture: true });
  return run;
}
