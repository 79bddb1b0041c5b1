const policy = trustedTypes.createPolicy("phasor-folio", { createScriptURL: (/** @type {string} */ url) => url });
const worker = new Worker(policy.createScriptURL("worker.js"), { type: "module" });
worker.addEventListener("message", () => {
  document.documentElement.dataset.python = "ready";
});
