// What a person can do with a sheet: print it, save it as PDF, share its link.

import * as device from "./device.js";
import { download } from "./download.js";
import * as form from "./form.js";

const said = document.querySelector("[data-said]");
const linkRow = document.querySelector("[data-link]");
const slug = document.documentElement.dataset.slug;

/** The page's address without its fragment: where the site was built for, or else where it is. */
export const base = () => document.documentElement.dataset.base ?? location.href.replace(/[?#].*$/, "");

/** Say a sentence of pycore's below the buttons. */
export function say(sentence) {
  said.textContent = "";
  said.textContent = sentence;
}

async function pdf(bridge, live, kinds) {
  const correction = device.factors(document.querySelector("[data-region=sheet] .paper")?.dataset.page);
  const asked = { do: "pdf", page: slug, form: form.read(), base: base(), code: true, needs: ["codes"] };
  const reply = await bridge.ask({ ...asked, correction, kinds });
  if (!reply.ok) return;
  download(reply);
  say(said.dataset.saved);
  live(said.dataset.saved);
}

function showLink(link) {
  const field = linkRow.querySelector("input");
  linkRow.hidden = false;
  field.value = link;
  field.focus();
  field.select();
}

async function share(bridge, live) {
  const reply = await bridge.ask({ do: "share", page: slug, form: form.read(), base: base() });
  if (!reply.ok) return;
  linkRow.hidden = true;
  try {
    if (navigator.share && matchMedia("(pointer: coarse)").matches) {
      await navigator.share({ title: document.title, url: reply.link });
      return;
    }
    await navigator.clipboard.writeText(reply.link);
    say(said.dataset.copied);
    live(said.dataset.copied);
  } catch (error) {
    if (error.name !== "AbortError") showLink(reply.link);
  }
}

async function print(_bridge, _live, complete) {
  if (await complete()) window.print();
}

const actions = {
  pdf: (bridge, live) => pdf(bridge, live),
  "pdf-all": (bridge, live) => pdf(bridge, live, ["problem", "construction", "overlay"]),
  share,
  print,
};

/** Say what was done, by the name of its sentence. */
export function told(name) {
  say(said.dataset[name]);
}

/** Let the button `name` do something more than this module knows; `run(bridge, live, complete)`. */
export function add(name, run) {
  actions[name] = run;
}

/**
 * Carry out the buttons; `live(sentence)` announces. What must wait says why instead. `complete()` brings what
 * would be printed up to date, and gives whether it may be printed.
 */
export function listen(bridge, live, failed, complete = async () => true) {
  document.addEventListener("click", async (event) => {
    const button = event.target.closest("[data-action]");
    if (!button) return;
    if (button.getAttribute("aria-disabled") === "true") {
      live(document.querySelector("[data-waiting]").textContent);
      return;
    }
    if (button.ariaBusy === "true") return;
    button.ariaBusy = "true";
    try {
      await actions[button.dataset.action]?.(bridge, live, complete);
    } catch (error) {
      failed(error);
    } finally {
      button.ariaBusy = null;
    }
  });
}

/** Take back what was said of an earlier action: it holds no longer. */
export function forget() {
  say("");
  linkRow.hidden = true;
}

/** Let the buttons wait (with the sentence that says for what), or not; the actions `but` never. */
export function wait(sentence, but = []) {
  for (const button of document.querySelectorAll("[data-action]")) {
    if (sentence && !but.includes(button.dataset.action)) {
      button.setAttribute("aria-disabled", "true");
      button.setAttribute("aria-describedby", "waiting");
    } else {
      button.removeAttribute("aria-disabled");
      button.removeAttribute("aria-describedby");
    }
  }
  document.querySelector("[data-waiting]").textContent = sentence;
  document.getElementById("waiting").hidden = !sentence;
}
