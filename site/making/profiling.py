"""Finds what of Pyodide's WebAssembly is used by what learners and lecturers do: `build.py profile`.

Every function is marked (wasm/marking.py); then all flows run under Node (tests/host/flows.py), whole, and in Chromium
the pages. What either calls is in the list (called.py): a function that is not costs whoever calls it a wait, no more.
Then every access to memory is marked too (wasm/tracing.py), which takes several times as long: so of each flow only a
part runs, from whose first answers on the static data that is touched is noted.
"""

import json
import os
import shutil
import tempfile
import time
from contextlib import suppress
from pathlib import Path

from playwright.sync_api import BrowserContext, Page, sync_playwright
from playwright.sync_api import Error as PlaywrightError

from making import called
from making.paths import DIST, PYODIDE, TESTS
from making.programs import CHROMIUM_OPTIONS, run
from making.progress import BuildError, say, step
from making.serve import serving
from making.splitting import COLD, GLUE, PLACED, WASM
from making.wasm.marking import keeping, marked
from making.wasm.tracing import telling, traced

SEEN = "[globalThis.calledSoFar?.() ?? [], globalThis.touchedSoFar?.() ?? []]"
STATE = "[document.documentElement.dataset.python, document.documentElement.dataset.answer]"
TYPE = """() => {
  const fields = [...document.querySelectorAll("form input")].filter((one) => /^[0-9.]+$/.test(one.value));
  for (const field of fields.slice(0, 2)) {
    field.value = String((Number(field.value) * 1.07).toFixed(2));
    field.dispatchEvent(new Event("input", { bubbles: true }));
    field.dispatchEvent(new Event("change", { bubbles: true }));
  }
  for (const name of ["lesson", "share", "photo"]) document.querySelector(`[data-action="${name}"]`)?.click();
}"""
Seen = tuple[set[int], set[int]]
"""Functions called and pieces of data touched."""

START_LIMIT, EDIT_LIMIT = 240.0, 20.0
MAIN = "neutral-current/"
MEMORY = 15.0
"""Seconds after which a page that nobody touches has made a memory of its Python."""


def profile(add: bool) -> int:
    """Make the lists for the Pyodide that is installed, or `add` to those that are there; gives the exit code."""
    wasm = (PYODIDE / WASM).read_bytes()
    before = called.used_in(wasm) if add else None
    functions, pieces = set(before.called if before else ()), set(before.touched or () if before else ())
    glue = keeping((PYODIDE / GLUE).read_text("utf-8"))
    for share, script, data in (("whole", glue, marked(wasm)), ("part", telling(glue, wasm), traced(marked(wasm)))):
        with tempfile.TemporaryDirectory() as temporary:
            site = Path(temporary) / "site"
            _lay_out(site, script, data)
            with step(f"running every flow under Node, {share} (minutes)"):
                found = [_flows(site, Path(temporary) / "runtime", share)]
            with step("visiting every page with Python in Chromium"):
                found += _visits(site)
            functions.update(*(one for one, _ in found))
            pieces.update(*(one for _, one in found))
    path = called.keep(wasm, called.Used(frozenset(functions), frozenset(pieces)))
    say(f"{len(functions)} functions are called, {len(pieces)} pieces of data touched; kept beside {path}")
    return 0


def _lay_out(site: Path, script: str, wasm: bytes) -> None:
    """The built site with another script and WebAssembly of Pyodide's."""
    shutil.copytree(DIST, site, ignore=shutil.ignore_patterns("*.br", "*.gz", COLD))
    folder = next((site / "py").iterdir())
    (folder / WASM).write_bytes(wasm)
    (folder / PLACED[GLUE]).write_text(script, encoding="utf-8")


def _flows(site: Path, runtime: Path, share: str) -> Seen:
    """What all flows, or this share of them, use under Node."""
    runtime.mkdir()
    for path in (*(site / "py").glob("*/*"), *(site / "lib").glob("*/*")):
        shutil.copyfile(path, runtime / path.name)
    places = map(str, (TESTS / "host" / "flows.mjs", runtime, TESTS))
    told = run(["node", *places, json.dumps(_slugs()), share, ""], "Which flow failed stands above.")
    seen = json.loads(told.splitlines()[-1])
    return set(seen["called"]), set(seen["touched"])


def _slugs() -> list[str]:
    """The pages of all calculators."""
    from pycore.calculators.registry import CALCULATORS

    return list(CALCULATORS)


def _visits(site: Path) -> list[Seen]:
    """What all pages with Python use in Chromium: where nobody has been, and from the memory of an earlier visit."""
    texts = {index: index.read_text("utf-8") for index in sorted(site.rglob("index.html"))}
    names = [index.relative_to(site).as_posix().removesuffix("index.html") for index, text in texts.items()
             if "data-worker" in text]  # fmt: skip
    found: list[Seen] = []
    with serving(site) as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=os.environ["PHASOR_FOLIO_CHROMIUM"], args=CHROMIUM_OPTIONS
        )
        for name in names:
            with browser.new_context(service_workers="block") as context:
                found += _visit(context, address + name)
        with browser.new_context(service_workers="block") as context:
            found += _visit(context, address + MAIN, 1000 * MEMORY)
            for name in names:
                found += _visit(context, address + name)
        browser.close()
    return found


def _visit(context: BrowserContext, address: str, pause: float = 1000) -> list[Seen]:
    """What one page uses as it starts, is edited and then left alone for so many ms."""
    page = context.new_page()
    page.goto(address, wait_until="commit")
    _settle(page, START_LIMIT)
    page.evaluate(TYPE)
    page.wait_for_timeout(pause)
    _settle(page, EDIT_LIMIT)
    found = _seen(page)
    page.close()
    return found


def _settle(page: Page, seconds: float) -> None:
    """Wait until Python is ready and the answer is that of the form."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        with suppress(PlaywrightError):  # the page is on its way
            python, answer = page.evaluate(STATE)
            if python == "idle" or (python == "ready" and answer in (None, "fresh", "old")):
                return
        time.sleep(0.05)
    if seconds == START_LIMIT:
        raise BuildError(f"{page.url} was not ready after {seconds:.0f} s: open it and read the console.")


def _seen(page: Page) -> list[Seen]:
    """What each worker of a page has used so far."""
    found: list[Seen] = []
    for worker in page.workers:
        with suppress(PlaywrightError):  # one that has ended meanwhile
            functions, pieces = worker.evaluate(SEEN)
            found.append((set(functions), set(pieces)))
    return found
