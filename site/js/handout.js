// The handout: what pycore makes of the form, with the style and the player that stand on this site, as one file.

import { base } from "./actions.js";
import { download } from "./download.js";
import * as form from "./form.js";

/** @import { Bridge } from "./bridge.js" */

const STYLES = ["tokens", "drawing", "print", "handout"];

/** @param {string} place */
async function text(place) {
  const response = await fetch(new URL(place, import.meta.url));
  if (!response.ok) throw new Error(`${place}: ${response.status}`);
  return response.text();
}

/**
 * Save the handout of the form as it stands, or a learner's, without the solution; gives whether there was one.
 * @param {Bridge} bridge
 * @param {{ problem?: boolean }} more
 */
export async function save(bridge, more = {}) {
  const [script, ...styles] = await Promise.all([
    text("./handout-player.js"),
    ...STYLES.map((name) => text(`../css/${name}.css`)),
  ]);
  const page = document.documentElement.dataset.slug;
  const asked = { page, form: form.read(), base: base(), code: true, needs: ["codes"] };
  const reply = await bridge.ask({ do: "handout", ...asked, script, style: styles.join("\n"), ...more });
  if (reply.ok) download(reply);
  return reply.ok;
}
