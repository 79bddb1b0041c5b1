"""Finds which functions of Pyodide's WebAssembly are called by what learners and lecturers do: `build.py profile`.

Every function is marked (wasm/marking.py); then all flows run under Node (tests/host/flows.py), whole, and in Chromium
the pages. What either calls is in the list (called.py): a function that is not costs whoever calls it a wait, no more.
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
from making.splitting import COLD, GLUE, WASM
from making.wasm.marking import keeping, marked

CALLED = "globalThis.calledSoFar?.() ?? []"
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
START_LIMIT, EDIT_LIMIT = 120.0, 8.0
MAIN = "neutral-current/"
MEMORY = 15.0
"""Seconds after which a page that nobody touches has made a memory of its Python."""


def profile(add: bool) -> int:
    """Make the list for the Pyodide that is installed, or `add` to the one that is there; gives the exit code."""
    wasm = (PYODIDE / WASM).read_bytes()
    found = set(called.called_in(wasm) or ()) if add else set()
    with tempfile.TemporaryDirectory() as temporary:
        site = Path(temporary) / "site"
        _lay_out(site, wasm)
        with step("running every flow under Node (minutes)"):
            found |= set(_flows(site, Path(temporary) / "runtime"))
        with step("visiting every page with Python in Chromium"):
            found |= _visits(site)
    path = called.keep(wasm, found)
    say(f"{len(found)} functions are called; kept in {path}")
    return 0


def _lay_out(site: Path, wasm: bytes) -> None:
    """The built site with marks in its WebAssembly."""
    shutil.copytree(DIST, site, ignore=shutil.ignore_patterns("*.br", "*.gz", COLD))
    folder = next((site / "py").iterdir())
    (folder / WASM).write_bytes(marked(wasm))
    (folder / GLUE).write_text(keeping((PYODIDE / GLUE).read_text("utf-8")), encoding="utf-8")


def _flows(site: Path, runtime: Path) -> list[int]:
    """What all flows call under Node."""
    runtime.mkdir()
    for path in (*(site / "py").glob("*/*"), *(site / "lib").glob("*/*")):
        shutil.copyfile(path, runtime / path.name)
    places = map(str, (TESTS / "host" / "flows.mjs", runtime, TESTS))
    told = run(["node", *places, json.dumps(_slugs()), "whole", ""], "Which flow failed stands above.")
    functions: list[int] = json.loads(told.splitlines()[-1])["called"]
    return functions


def _slugs() -> list[str]:
    """The pages of all calculators."""
    from pycore.calculators.registry import CALCULATORS

    return list(CALCULATORS)


def _visits(site: Path) -> set[int]:
    """What all pages with Python call in Chromium: where nobody has been, and from the memory of an earlier visit."""
    texts = {index: index.read_text("utf-8") for index in sorted(site.rglob("index.html"))}
    names = [index.relative_to(site).as_posix().removesuffix("index.html") for index, text in texts.items()
             if "data-worker" in text]  # fmt: skip
    found: set[int] = set()
    with serving(site) as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=os.environ["PHASOR_FOLIO_CHROMIUM"], args=CHROMIUM_OPTIONS
        )
        for name in names:
            with browser.new_context(service_workers="block") as context:
                found |= _visit(context, address + name)
        with browser.new_context(service_workers="block") as context:
            found |= _visit(context, address + MAIN, 1000 * MEMORY)
            for name in names:
                found |= _visit(context, address + name)
        browser.close()
    return found


def _visit(context: BrowserContext, address: str, pause: float = 1000) -> set[int]:
    """What one page calls as it starts, is edited and then left alone for so many ms."""
    page = context.new_page()
    page.goto(address, wait_until="commit")
    _settle(page, START_LIMIT)
    page.evaluate(TYPE)
    page.wait_for_timeout(pause)
    _settle(page, EDIT_LIMIT)
    found = _called(page)
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


def _called(page: Page) -> set[int]:
    """What the workers of a page have called so far."""
    found: set[int] = set()
    for worker in page.workers:
        with suppress(PlaywrightError):  # one that has ended meanwhile
            found |= set(worker.evaluate(CALLED))
    return found
