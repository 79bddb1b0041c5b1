// Runs as the first of a page's modules, once all that they import is there: fields and buttons, which the build gives
// turned off, are turned on.

const root = document.documentElement;

if (root.dataset.script === "stopped") throw new Error("the page has said why it does not start");
if (root.dataset.script) root.dataset.script = "begun";
for (const control of document.querySelectorAll("[data-off]")) {
  control.removeAttribute("disabled");
  control.removeAttribute("data-off");
}

export {};
