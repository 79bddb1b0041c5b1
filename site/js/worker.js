// Python on a thread of its own. Knows nothing of the page: text and bytes in, text and bytes out.

const PART_LIMIT = 10_000; // ms; without the part the answer is complete but for what the part makes

let python = null;
let handle = null;
let home = "";

self.addEventListener("message", async ({ data }) => {
  try {
    if (data.start) await start(data.start);
    else if (data.part) await load(data.part);
    else answer(data);
  } catch (error) {
    self.postMessage({ id: data.id ?? null, failed: String(error) });
  }
});

// A copy of each response is counted as it arrives; the response itself stays the browser's own,
// so that compiled code can be kept with it.
function countFetches(report) {
  const fetchFirst = self.fetch.bind(self);
  self.fetch = async (...request) => {
    const response = await fetchFirst(...request);
    if (response.ok && response.body) count(response.clone(), report);
    return response;
  };
}

async function count(copy, report) {
  const total = Number(copy.headers.get("content-length"));
  const packed = copy.headers.get("content-encoding");
  const reader = copy.body.getReader();
  let bytes = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    bytes += value.length;
    if (total && !packed && total > 1e6) report(Math.min(1, bytes / total));
  }
}

async function start(runtime) {
  let shown = -1;
  countFetches((share) => {
    const percent = Math.floor(share * 100);
    if (percent === shown) return;
    shown = percent;
    self.postMessage({ stage: "fetching", share: percent });
  });
  home = runtime;
  const { loadPyodide } = await import(runtime + "pyodide.mjs");
  python = await loadPyodide({ indexURL: runtime, stdLibURL: runtime + "library.zip" });
  self.postMessage({ stage: "starting" });
  handle = python.pyimport("pycore.api").handle;
  self.postMessage({ stage: "ready" });
}

// A lazy part is an archive beside the library. It is written anew in each worker, because a restored memory
// holds modules but no files. Answers go on meanwhile; a part that cannot be had is reported, and pycore does without.
async function load(part) {
  try {
    const response = await fetch(`${home}${part}.zip`, { signal: AbortSignal.timeout(PART_LIMIT) });
    if (!response.ok) throw new Error(`${response.status}`);
    const place = `/lib/${part}.zip`;
    python.FS.writeFile(place, new Uint8Array(await response.arrayBuffer()));
    const path = python.pyimport("sys").path;
    path.append(place);
    path.destroy();
    self.postMessage({ part, loaded: true });
  } catch (error) {
    self.postMessage({ part, loaded: false, reason: String(error) });
  }
}

function answer({ id, text, blob }) {
  // JavaScript's null would not be None.
  const result = blob ? handle(text, python.toPy(blob)) : handle(text);
  const reply = result.get(0);
  const bytes = result.get(1);
  let body = null;
  if (bytes) {
    // What toJs gives is a view into Python's memory only until the proxy goes: take a copy along.
    body = bytes.toJs ? bytes.toJs().slice() : bytes;
    bytes.destroy?.();
  }
  result.destroy();
  self.postMessage({ id, text: reply, blob: body }, body ? [body.buffer] : []);
}
