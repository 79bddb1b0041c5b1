"""Rows of the bench about starting, typing and memory, and what Lighthouse and malformed links give.

Each row is (name, ours, the other's, unit, beside whom): two things measured in alternation in the same run.
"""

import os
import re
import statistics
import subprocess
import sys
import time
from collections.abc import Iterable
from pathlib import Path

from playwright.sync_api import Browser, BrowserContext, Page

from making.editions import files_of
from making.lighthouse import scores
from making.paths import ROOT
from making.progress import BuildError, step

Row = tuple[str, float, float, str, str]
OURS, STOCK = "neutral-current/", "stock/"
ROUNDS, EDITS = 5, 100
FRAME = 1000 / 60
SLOWED_GOAL = 50.0
SLOWING = 4
SHEETS_EACH = 2
CLASSES, CLASS_GOAL, CLASS_LIMIT = (60, 600), 1.0, 600_000
CLASS_LINK = "class-set/#v=1&topic=neutral-current&tier=core&learners={}&method=any&paper=A4&seed=77"
ANSWERED = "document.documentElement.dataset.answer === 'fresh' && document.documentElement.dataset.python === 'ready'"
PYTHON_READY = "document.documentElement.dataset.python === 'ready'"
KEPT = "document.documentElement.dataset.offline === 'ready' && Number(document.documentElement.dataset.memoryMade) > 0"

OVERHEARD = """window.workerTimes = [];
window.Worker = class extends Worker {
  constructor(...given) {
    super(...given);
    this.addEventListener("message", ({ data }) => data.text && window.workerTimes.push(data.took));
  }
};"""
TIMED = """() => {
  let began = 0;
  const { get } = Object.getOwnPropertyDescriptor(MessageEvent.prototype, "data");
  const read = function () { began = performance.now(); return get.call(this); };
  Object.defineProperty(MessageEvent.prototype, "data", { get: read });
  const send = self.postMessage.bind(self);
  self.postMessage = (message, ...more) => send({ ...message, took: performance.now() - began }, ...more);
}"""
"""What a worker takes for a reply, by its own clock: the page's, slowed, would count its own delay as the worker's."""
TYPE = """async (edits) => {
  const root = document.documentElement;
  const field = document.querySelector("[name=i1]");
  const quiet = (pause) => new Promise((resolve) => setTimeout(resolve, pause));
  const times = [];
  const workers = [];
  for (let edit = 0; edit < edits; edit++) {
    await quiet(30);
    const before = window.workerTimes.length;
    const began = performance.now();
    field.value = (10 + edit / 7).toFixed(2);
    field.dispatchEvent(new Event("input", { bubbles: true }));
    await new Promise((resolve) => {
      const observer = new MutationObserver(() => {
        if (root.dataset.answer !== "fresh") return;
        observer.disconnect();
        resolve();
      });
      observer.observe(root, { attributeFilter: ["data-answer"] });
    });
    document.body.getBoundingClientRect();
    times.push(performance.now() - began);
    workers.push(window.workerTimes[before] ?? 0);
  }
  return { times, workers };
}"""


def wait(page: Page, expression: str, seconds: float = 60.0) -> None:
    """Poll from outside until `expression` holds. Raises BuildError when it does not in time."""
    end = time.monotonic() + seconds
    while not page.evaluate(expression):
        if time.monotonic() > end:
            raise BuildError(f"{page.url}: not within {seconds:.0f} s: {expression}")
        time.sleep(0.005)


def _visit(context: BrowserContext, address: str) -> float:
    """The seconds from navigation to Python ready, in a context that may have been there before."""
    page = context.new_page()
    began = time.monotonic()
    page.goto(address, wait_until="commit")
    wait(page, PYTHON_READY)
    taken = time.monotonic() - began
    page.close()
    return taken


def return_visit(browser: Browser, address: str) -> Row:
    """Visits after a first one that was long enough for the browser to keep site and memory."""
    with step(f"coming back to both {ROUNDS} times"):
        ours, stock = browser.new_context(), browser.new_context()
        page = ours.new_page()
        page.goto(address + OURS)
        wait(page, KEPT)
        page.close()
        _visit(stock, address + STOCK)
        pairs = [(_visit(ours, address + OURS), _visit(stock, address + STOCK)) for _ in range(ROUNDS)]
        ours.close()
        stock.close()
    first, second = (statistics.median(times) for times in zip(*pairs, strict=True))
    return "return visit to Python ready", first, second, "s", "stock Pyodide"


def keystrokes(browser: Browser, address: str) -> list[Row]:
    """From an edit to answer and sheet in the document, layout forced; slowed: the worker's time counted four times."""
    with step(f"typing {EDITS} times, and {EDITS} times slowed"):
        context = browser.new_context(viewport={"width": 1440, "height": 900})
        context.add_init_script(OVERHEARD)
        page = context.new_page()
        page.goto(address + OURS)
        wait(page, ANSWERED)
        page.workers[0].evaluate(TIMED)
        page.evaluate(TYPE, 10)
        plain = page.evaluate(TYPE, EDITS)
        context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWING})
        slow = page.evaluate(TYPE, EDITS)
        context.close()
    slowed = [total + (SLOWING - 1) * worker for total, worker in zip(slow["times"], slow["workers"], strict=True)]
    return [
        ("keystroke to sheet, p50", statistics.median(plain["times"]), FRAME, "ms", "one frame at 60 Hz"),
        ("keystroke to sheet, p95", _high(plain["times"]), FRAME, "ms", "one frame at 60 Hz"),
        ("of it in the worker, p50", statistics.median(plain["workers"]), FRAME, "ms", "one frame at 60 Hz"),
        ("keystroke, four times slower, p95", _high(slowed), SLOWED_GOAL, "ms", "the goal"),
    ]


def _high(times: Iterable[float]) -> float:
    """The time that 95 in 100 keep under."""
    return statistics.quantiles(times, n=20)[-1]


def memory(browser: Browser, address: str) -> Row:
    """The most that a page's process has held by the time Python is ready (Linux only: what the kernel counted)."""
    with step("weighing the memory of both"):
        ours, stock = (
            statistics.median(_peak(browser, address + page) for _ in range(3)) for page in (OURS, STOCK)
        )
    return "peak memory of the page's process", ours, stock, "MB", "stock Pyodide"


def _peak(browser: Browser, address: str) -> float:
    """The peak resident memory of the process that shows one page, in MB."""
    session = browser.new_browser_cdp_session()

    def renderers() -> set[int]:
        listed = session.send("SystemInfo.getProcessInfo")["processInfo"]
        return {entry["id"] for entry in listed if entry["type"] == "renderer"}

    before = renderers()
    context = browser.new_context()
    page = context.new_page()
    page.goto(address)
    wait(page, PYTHON_READY)
    peaks = [_kernel_peak(process) for process in renderers() - before]
    context.close()
    session.detach()
    return max(peaks)


def _kernel_peak(process: int) -> float:
    """What Linux says was the most that a process held, in MB; 0 for one that has ended."""
    try:
        status = Path(f"/proc/{process}/status").read_text()
    except OSError:
        return 0.0
    peak = re.search(r"VmHWM:\s+(\d+) kB", status)
    return int(peak[1]) * 1024 / 1e6 if peak else 0.0


def class_sets(browser: Browser, address: str) -> list[Row]:
    """From the press of the button to the PDF of a class set, a problem sheet and an overlay for each learner: what 60
    sheets take, and a large class beside a small one, sheet for sheet."""
    few, many = CLASSES
    with step(f"making class sets of {few} and {many}, {ROUNDS} times"):
        pairs = [(_class_set(browser, address, few), _class_set(browser, address, many)) for _ in range(ROUNDS)]
    small, large = (statistics.median(times) for times in zip(*pairs, strict=True))
    per_few, per_many = small / (SHEETS_EACH * few), large / (SHEETS_EACH * many)
    return [
        (f"60 sheets of a class set of {few}", 60 * per_few, CLASS_GOAL, "s", "the goal"),
        (f"a sheet of a class set of {many}", 1000 * per_many, 1000 * per_few, "ms", f"one of {few}"),
    ]


def _class_set(browser: Browser, address: str, learners: int) -> float:
    """The seconds that one class set takes in a window of its own."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(f"{address}{CLASS_LINK.format(learners)}")
    wait(page, ANSWERED)
    # Sheets have codes to open only where another device can open the address.
    page.evaluate("document.documentElement.dataset.base = 'https://www.folio.example/class-set/'")
    with page.expect_download(timeout=CLASS_LIMIT) as saved:
        began = time.monotonic()
        page.click('[data-do="make"]')
    saved.value.path()
    taken = time.monotonic() - began
    context.close()
    return taken


def lighthouse(address: str, folder: Path) -> dict[str, dict[str, int]]:
    """Lighthouse's scores of every page on its mobile setting."""
    pages = [name for name in files_of(folder) if (name == "" or name.endswith("/")) and name != STOCK]
    chromium = Path(os.environ["PHASOR_FOLIO_CHROMIUM"])
    with step(f"Lighthouse on {len(pages)} pages"):
        return {name or "home": scores(address + name, chromium)[0] for name in pages}


def fuzz(count: int = 5000) -> str:
    """Open that many malformed links as the tests do; gives pytest's last line."""
    with step(f"opening {count} malformed links"):
        command = [sys.executable, "-m", "pytest", "-q", "tests/browser/test_fuzz.py"]
        done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True,
                              env={**os.environ, "PHASOR_FOLIO_FUZZ": str(count)})  # fmt: skip
    return done.stdout.strip().splitlines()[-1]
