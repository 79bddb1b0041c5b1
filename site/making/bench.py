"""Measures the site beside stock Pyodide, and its sheets beside matplotlib, each pair in the same run: one table.

What sheets cost is measured by tests/bench/sheets.py, which shares the tests' problems and their eye for collisions.
"""

import hashlib
import importlib
import json
import os
import shutil
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import asdict, dataclass
from functools import cache, partial
from pathlib import Path

import brotli
from playwright.sync_api import Browser, sync_playwright

from making import bench_start
from making.compress import compress_site
from making.pages import REST
from making.paths import DIST, PYODIDE, ROOT, SITE, WORKSHOP
from making.programs import CHROMIUM_OPTIONS
from making.progress import BuildError, say, step
from making.serve import Server, serving

ROUNDS = 5
OURS, STOCK = "neutral-current/", "stock/"
STOCK_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json")
TIME_LIMIT = 60.0
COMPRESSED_ALREADY = (".woff2", ".png")


@dataclass(frozen=True)
class Row:
    """One line of the table: our figure beside another's (`beside` says whose), in `unit`."""

    name: str
    ours: float
    other: float
    unit: str
    beside: str = "stock Pyodide"

    @property
    def ratio(self) -> float:
        """Ours divided by the other's."""
        return self.ours / self.other


class RecordingServer(Server):
    """A server that remembers which files were asked for."""

    requested: list[str]

    def note(self, path: str) -> None:
        """Remember one request."""
        self.requested.append(path)


def measure() -> int:
    """Measure every row, print the table, keep it as JSON in the workshop; gives the exit code."""
    with tempfile.TemporaryDirectory() as temporary:
        folder = Path(temporary) / "site"
        _lay_out(folder)
        RecordingServer.requested = []
        with serving(folder, RecordingServer) as address, sync_playwright() as playwright:
            path = os.environ["PHASOR_FOLIO_CHROMIUM"]
            browser = playwright.chromium.launch(executable_path=path, args=CHROMIUM_OPTIONS)
            rows = [_start_row(browser, address), *_bytes_rows(browser, address, folder)]
            rows += _later_rows(browser, address)
            browser.close()
            scored_pages = bench_start.lighthouse(address, folder)
    counted = _sheets(rows)
    _show(rows)
    say("\nrandom problems: " + ", ".join(f"{name} {count}" for name, count in counted.items()))
    kept = WORKSHOP / "bench.json"
    malformed = bench_start.fuzz()
    for name, scored in scored_pages.items():
        say(f"Lighthouse {name:24} " + ", ".join(f"{category} {mark}" for category, mark in scored.items()))
    say(f"malformed links: {malformed}")
    learners = _learners()
    photographs = _photographs()
    say("marks in photographs: " + ", ".join(f"{name} {count}" for name, count in photographs.items()))
    marks = [{**asdict(row), "ratio": row.ratio} for row in rows]
    results = {"rows": marks, "random problems": counted, "lighthouse": scored_pages, "malformed links": malformed,
             "photographs": photographs, "learners": learners}  # fmt: skip
    kept.write_text(json.dumps(results, indent=2), encoding="utf-8")
    say(f"kept in {kept}")
    return 0


def measure_class_sets() -> int:
    """Measure what class sets take, and print that alone; gives the exit code."""
    with serving(DIST) as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=os.environ["PHASOR_FOLIO_CHROMIUM"], args=CHROMIUM_OPTIONS
        )
        rows = [Row(*row) for row in bench_start.class_sets(browser, address)]
        browser.close()
    _show(rows)
    return 0


def _later_rows(browser: Browser, address: str) -> list[Row]:
    """Rows about coming back, typing, class sets and memory."""
    measured = [bench_start.return_visit(browser, address), *bench_start.keystrokes(browser, address)]
    measured += bench_start.class_sets(browser, address)
    if sys.platform == "linux":
        measured.append(bench_start.memory(browser, address))
    return [Row(*row) for row in measured]


def _sheets(rows: list[Row]) -> dict[str, int]:
    """Add the rows about sheets; gives what random problems showed: labels, leaders, collisions."""
    sys.path.insert(0, str(ROOT / "tests"))
    sheets = importlib.import_module("bench.sheets")
    with step("making sheets, and matplotlib the same"):
        rows += [Row(*measured()) for measured in (sheets.one_sheet, sheets.many_sheets, sheets.placing)]
    with step(f"looking for collisions on {sheets.PROBLEMS} sheets"):
        return dict(sheets.counts())


def _learners() -> dict[str, float]:
    """Simulated learners' mistakes named, and honest drawings failed, per cent; shows the neutral current's table."""
    learners = importlib.import_module("bench.learners")
    with step(f"marking {learners.COUNT} simulated learners"):
        outcome = learners.simulate("neutral-current", learners.COUNT)
    say("\nsimulated learners, neutral current\n" + learners.table(outcome))
    return dict(outcome.shares())


def _photographs() -> dict[str, float]:
    """How often marks are found in made-up photographs, and how near lines come."""
    photographs = importlib.import_module("bench.photographs")
    with step(f"looking for marks in {photographs.COUNT} photographs"):
        return dict(photographs.count())


def _lay_out(folder: Path) -> None:
    """Copy the built site, and beside it a page that starts stock Pyodide in a worker."""
    shutil.copytree(DIST, folder)
    compress_site(folder)
    shutil.copytree(SITE / "making" / "stock", folder / STOCK)
    for name in STOCK_FILES:
        shutil.copyfile(PYODIDE / name, folder / STOCK / name)


def _visit(browser: Browser, address: str) -> float:
    """Visit a page for the first time, with an empty cache; gives the seconds until its Python is ready."""
    context = browser.new_context()
    page = context.new_page()
    began = time.monotonic()
    page.goto(address, wait_until="commit")
    while page.evaluate("document.documentElement.dataset.python") != "ready":
        if time.monotonic() - began > TIME_LIMIT:
            raise BuildError(f"{address} was not ready after {TIME_LIMIT:.0f} s: open it and read the console.")
        time.sleep(0.005)
    taken = time.monotonic() - began
    context.close()
    return taken


def _start_row(browser: Browser, address: str) -> Row:
    """Medians of first visits, taken in alternation so that a slow spell of the machine meets both."""
    with step(f"starting both {ROUNDS} times"):
        pairs = [(_visit(browser, address + OURS), _visit(browser, address + STOCK)) for _ in range(ROUNDS)]
    ours, stock = (statistics.median(times) for times in zip(*pairs, strict=True))
    return Row("first visit to Python ready", ours, stock, "s")


def _bytes_rows(browser: Browser, address: str, folder: Path) -> list[Row]:
    """What a first visit transfers from a host that compresses with brotli: until its answer, and with what follows."""
    with step("weighing both first visits"):
        ours, stock = (_weigh(folder, partial(_visit, browser, address + page)) for page in (OURS, STOCK))
    later = next((folder / "lib").rglob(f"{REST}.zip"))
    # Asked for once Python is ready: whether this visit saw that or not is chance.
    first, later_bytes = sum(ours.values()) - ours.get(later, 0), _compressed_size(later)
    return [
        Row("first visit, brotli", first / 1e6, sum(stock.values()) / 1e6, "MB"),
        Row("  and what follows it", (first + later_bytes) / 1e6, sum(stock.values()) / 1e6, "MB"),
    ]


def _weigh(folder: Path, visit: Callable[[], float]) -> dict[Path, int]:
    """Every file that one visit asks for, and its size compressed."""
    RecordingServer.requested = []
    visit()
    paths = {path.split("?")[0].split("#")[0] for path in RecordingServer.requested}
    files = [folder / path.lstrip("/") / ("index.html" if path.endswith("/") else "") for path in sorted(paths)]
    return {path: _compressed_size(path) for path in files if path.is_file()}


def _compressed_size(path: Path) -> int:
    """The size of one file after brotli at its strongest; fonts and pictures are compressed already."""
    data = path.read_bytes()
    return len(data) if path.suffix in COMPRESSED_ALREADY else _brotli_size(hashlib.sha256(data).hexdigest(), path)


@cache
def _brotli_size(_digest: str, path: Path) -> int:
    """The brotli size of the file at `path`, found once for equal contents."""
    return len(brotli.compress(path.read_bytes()))


def _show(rows: list[Row]) -> None:
    """Print the table."""
    say(f"\n{'':32}{'ours':>12}{'other':>12}{'ours / other':>15}  beside")
    for row in rows:
        ours, other = f"{row.ours:.2f} {row.unit}", f"{row.other:.2f} {row.unit}"
        say(f"{row.name:32}{ours:>12}{other:>12}{row.ratio:>15.2f}  {row.beside}")
