"""Starting: first and return visits, the first paint, what Lighthouse and malformed links give."""

import os
import re
import statistics
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Browser, BrowserContext, Page

from making.bench_rows import Row
from making.editions import files_of
from making.lighthouse import scores
from making.paths import ROOT
from making.progress import BuildError, say, step

OURS, STOCK, STATIC = "neutral-current/", "stock/", "static/"
ROUNDS = 5
TIME_LIMIT = 60.0
START_GOAL, RETURN_GOAL, PAINT_GOAL = 0.28, 0.14, 1.1
ANSWERED = "document.documentElement.dataset.answer === 'fresh' && document.documentElement.dataset.python === 'ready'"
PYTHON_READY = "document.documentElement.dataset.python === 'ready'"
KEPT = "document.documentElement.dataset.offline === 'ready' && Number(document.documentElement.dataset.memoryMade) > 0"
PAINTED = "performance.getEntriesByName('first-contentful-paint').length > 0"
PAINTED_AT = "performance.getEntriesByName('first-contentful-paint')[0].startTime"
SCRIPT = re.compile(r"<script\b.*?</script>|<link rel=\"(?:modulepreload|preload)\"[^>]*>", re.DOTALL)


def wait(page: Page, expression: str, seconds: float = TIME_LIMIT) -> None:
    """Poll from outside until `expression` holds. Raises BuildError when it does not in time."""
    end = time.monotonic() + seconds
    while not page.evaluate(expression):
        if time.monotonic() > end:
            raise BuildError(f"{page.url}: not within {seconds:.0f} s: {expression}")
        time.sleep(0.005)


def _again(context: BrowserContext, address: str, seconds: float = TIME_LIMIT) -> float:
    """The seconds from navigation to Python ready, in a context that may have been there before."""
    page = context.new_page()
    began = time.monotonic()
    page.goto(address, wait_until="commit")
    wait(page, PYTHON_READY, seconds)
    taken = time.monotonic() - began
    page.close()
    return taken


def visit(browser: Browser, address: str, seconds: float = TIME_LIMIT) -> float:
    """Visit a page for the first time, with an empty cache; gives the seconds until its Python is ready."""
    context = browser.new_context()
    try:
        return _again(context, address, seconds)
    finally:
        context.close()


def start_row(browser: Browser, address: str) -> Row:
    """Medians of first visits, taken in alternation so that a slow spell of the machine meets both."""
    with step(f"starting both {ROUNDS} times"):
        pairs = [(visit(browser, address + OURS), visit(browser, address + STOCK)) for _ in range(ROUNDS)]
    ours, stock = (statistics.median(times) for times in zip(*pairs, strict=True))
    return Row("first visit to Python ready", ours, stock, "s", goal=START_GOAL)


def return_visit(browser: Browser, address: str) -> Row:
    """Visits after a first one that was long enough for the browser to keep site and memory."""
    with step(f"coming back to both {ROUNDS} times"):
        ours, stock = browser.new_context(), browser.new_context()
        page = ours.new_page()
        page.goto(address + OURS)
        wait(page, KEPT)
        page.close()
        _again(stock, address + STOCK)
        pairs = [(_again(ours, address + OURS), _again(stock, address + STOCK)) for _ in range(ROUNDS)]
        ours.close()
        stock.close()
    first, second = (statistics.median(times) for times in zip(*pairs, strict=True))
    return Row("return visit to Python ready", first, second, "s", goal=RETURN_GOAL)


def lay_static(folder: Path) -> None:
    """Lay our page without its scripts beside it: what a browser would paint of the same HTML and styles."""
    html = (folder / OURS / "index.html").read_text("utf-8")
    (folder / STATIC).mkdir()
    (folder / STATIC / "index.html").write_text(SCRIPT.sub("", html), encoding="utf-8")


def first_paint(browser: Browser, address: str) -> Row:
    """Medians of the first paint of a first visit, in alternation with the same page without scripts."""
    with step(f"painting both {2 * ROUNDS} times"):
        pairs = [(_painted(browser, address + OURS), _painted(browser, address + STATIC)) for _ in range(2 * ROUNDS)]
    ours, plain = (statistics.median(times) for times in zip(*pairs, strict=True))
    return Row("first paint", ours, plain, "ms", "the same HTML without scripts", PAINT_GOAL)


def _painted(browser: Browser, address: str) -> float:
    """The milliseconds from navigation to the first contentful paint, by the browser's own clock."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(address)
    wait(page, PAINTED)
    painted = float(page.evaluate(PAINTED_AT))
    context.close()
    return painted


def lighthouse(address: str, folder: Path) -> Iterator[tuple[str, dict[str, int]]]:
    """Lighthouse's scores of every page on its mobile setting, each as it comes; none for a page that it twice could
    not score."""
    others = (STOCK, STATIC)
    pages = [name for name in files_of(folder) if (name == "" or name.endswith("/")) and name not in others]
    chromium = Path(os.environ["PHASOR_FOLIO_CHROMIUM"])
    with step(f"Lighthouse on {len(pages)} pages"):
        for name in pages:
            yield name or "home", _scored(address + name, chromium)


def _scored(address: str, chromium: Path, tries: int = 2) -> dict[str, int]:
    """The scores of one page; empty when Lighthouse does not run to its end."""
    for _ in range(tries):
        try:
            return scores(address, chromium)[0]
        except (BuildError, ValueError, KeyError, TypeError) as error:
            say(f"  Lighthouse on {address}: {str(error).splitlines()[0]}")
    return {}


def fuzz(count: int = 5000) -> str:
    """Open that many malformed links as the tests do; gives pytest's last line."""
    with step(f"opening {count} malformed links"):
        command = [sys.executable, "-m", "pytest", "-q", "tests/browser/test_fuzz.py"]
        done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True,
                              env={**os.environ, "PHASOR_FOLIO_FUZZ": str(count)})  # fmt: skip
    return done.stdout.strip().splitlines()[-1]
