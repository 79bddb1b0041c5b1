"""Measures the site beside stock Pyodide, and its sheets beside matplotlib, each pair in alternation in the same run.

Every measurement shows and keeps its rows when it is done; one that fails is told, and the others stand. What sheets
cost is measured by tests/bench/sheets.py, which shares the tests' problems and their eye for collisions.
"""

import importlib
import os
import shutil
import sys
import tempfile
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from types import ModuleType

from playwright.sync_api import Browser, sync_playwright
from playwright.sync_api import Error as PlaywrightError

from making import bench_drawing, bench_start, bench_typing, bench_weight
from making.bench_rows import Finding, Record, Result, Row
from making.compress import compress_site
from making.lighthouse import GOALS
from making.paths import DIST, PYODIDE, ROOT, SITE, WORKSHOP
from making.programs import CHROMIUM_OPTIONS
from making.progress import BuildError, say, step
from making.serve import serving

STOCK_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "pyodide-lock.json")
KEPT = WORKSHOP / "bench.json"
FLAT_GOAL = 1.1
TRIES = 2
"""A measurement that fails is tried once more: a browser may be slow to start on a busy machine."""


@dataclass(frozen=True)
class Stage:
    """What measurements need: a browser, the address of the site with stock Pyodide's page beside it, its folder."""

    browser: Browser
    address: str
    folder: Path


def _from_tests(name: str) -> ModuleType:
    """A module of tests/bench: it shares the tests' problems."""
    folder = str(ROOT / "tests")
    if folder not in sys.path:
        sys.path.insert(0, folder)
    return importlib.import_module(f"bench.{name}")


def _sheets(_stage: Stage) -> Iterable[Result]:
    """One sheet, many and the placing of labels beside matplotlib; collisions on random sheets."""
    sheets = _from_tests("sheets")
    with step("making sheets, and matplotlib the same"):
        rows = [Row(*measured()) for measured in (sheets.one_sheet, sheets.many_sheets, sheets.placing)]
    with step(f"looking for collisions on {sheets.PROBLEMS} sheets"):
        counted = dict(sheets.counts())
    wrong = tuple(name for name in ("touching", "outside") if counted[name])
    return [*rows, Finding("random problems", counted, wrong)]


def _learners(_stage: Stage) -> Iterable[Result]:
    """Simulated learners' mistakes named, and honest drawings failed, per cent; shows the neutral current's table."""
    learners = _from_tests("learners")
    with step(f"marking {learners.COUNT} simulated learners"):
        outcome = learners.simulate("neutral-current", learners.COUNT)
    say("\nsimulated learners, neutral current\n" + learners.table(outcome))
    return [Finding("simulated learners", dict(outcome.shares()))]


def _photographs(_stage: Stage) -> Iterable[Result]:
    """How often marks are found in made-up photographs, and how near lines come."""
    photographs = _from_tests("photographs")
    with step(f"looking for marks in {photographs.COUNT} photographs"):
        return [Finding("marks in photographs", dict(photographs.count()))]


def _pencil(_stage: Stage) -> Iterable[Result]:
    """How well drawings are read from photographs, by the method by which they are drawn."""
    pencil = _from_tests("pencil")
    with step(f"reading {pencil.COUNT} photographs of drawings"):
        found = pencil.count()
    return [Finding(f"read, {method}", *pencil.figures(tally, method)) for method, tally in found.items()]


def _pile(stage: Stage) -> Iterable[Result]:
    """How long a class's photographs take and what they hold, and whether twice as many hold more."""
    pile = _from_tests("pile")
    with tempfile.TemporaryDirectory() as folder:
        with step(f"making {pile.TWICE} photographs"):
            pictures = pile.make_pictures(Path(folder), pile.TWICE)
        with step("reading them in the browser"):
            (one, held), (two, held_by_two) = (
                pile.read_in(stage.browser, stage.address, pictures[:count], bench_weight.peak)
                for count in (pile.CLASS, pile.TWICE)
            )
    codes = 100.0 * (one.codes + two.codes) / (pile.CLASS + pile.TWICE)
    shown = {"seconds": round(one.seconds, 1), "MB": round(held), "codes read %": round(codes, 1), **one.states}
    missed = {"seconds": one.seconds > pile.SECONDS, "MB": held > pile.MEGABYTES, "codes read %": codes < pile.CODES}
    yield Finding(f"a pile of {pile.CLASS} photographs", shown, tuple(name for name, short in missed.items() if short))
    beside = f"one of {pile.CLASS}"
    yield Row(f"memory of a pile of {pile.TWICE}", held_by_two, held, "MB", beside, FLAT_GOAL)
    yield Row("  its time for each photograph", two.seconds / pile.TWICE, one.seconds / pile.CLASS, "s", beside)


def _blank_paper(_stage: Stage) -> Iterable[Result]:
    """How many problems a robot draws right on blank paper by the sentences alone."""
    blank = _from_tests("blank_paper")
    with step(f"drawing {blank.COUNT} problems on blank paper"):
        counts = dict(blank.count())
    return [Finding("drawn on blank paper", counts, tuple({"look", "not drawn", "wrong"} & counts.keys()))]


def _drawn_here(_stage: Stage) -> Iterable[Result]:
    """How lines drawn on the screen are judged: right drawings called wrong, mistakes found at their line."""
    drawn = _from_tests("drawn_here")
    found = []
    for parallels in ("", *drawn.PARALLELS):
        with step(f"judging {drawn.COUNT} drawings" + (f" by {parallels}" if parallels else "")):
            counts = dict(drawn.count(parallels=parallels))
        name = "drawn on the screen" + (f", parallels by {parallels}" if parallels else "")
        found.append(Finding(name, counts, _short(counts)))
    return found


def _short(counts: Mapping[str, int]) -> tuple[str, ...]:
    """Where judged drawings are short of their goals."""
    right = sum(number for name, number in counts.items() if name.startswith("right"))
    looked = {
        "found at their line": counts["found at their line"] < 0.98 * counts["mistakes"],
        "right: accept": counts.get("right: accept", 0) < 0.95 * right,
        "right: wrong": counts.get("right: wrong", 0) > 0,
    }
    return tuple(name for name, is_short in looked.items() if is_short)


def _drawn_by_pointer(stage: Stage) -> Iterable[Result]:
    """The same, each line drawn in the browser by presses and drags alone."""
    pointer = _from_tests("drawn_by_pointer")
    page = stage.browser.new_page(viewport={"width": 1920, "height": 1080})
    with step(f"drawing {pointer.COUNT} problems by pointer"):
        counts = dict(pointer.count(page, stage.address))
    return [Finding("drawn by pointer", counts, _short(counts))]


def _draw_hour(stage: Stage) -> Iterable[Result]:
    """What the page holds after an hour of drawing, beside what it held after some minutes."""
    hour, hands = _from_tests("draw_hour"), importlib.import_module("browser.drawn_by_hand")
    page = stage.browser.new_page(viewport={"width": 1920, "height": 1080})
    page.goto(stage.address + bench_drawing.LINK)
    with step(f"drawing an hour: {hour.GESTURES} gestures"):
        first, half, last = hour.hour(hands.Hand(page).opened())
    yield Row("memory after an hour of drawing", last.heap, first.heap, "MB", "after six minutes", FLAT_GOAL)
    yield Row("  in its second half", last.heap, half.heap, "MB", "after half an hour", FLAT_GOAL)
    yield Row("  elements and texts", last.nodes, first.nodes, "", "after six minutes", FLAT_GOAL)
    yield Row("  listeners", last.listeners, first.listeners, "", "after six minutes", FLAT_GOAL)


def _draw_kills(stage: Stage) -> Iterable[Result]:
    """Whether a drawing is there again whose page ended at any moment of it."""
    killed = _from_tests("draw_killed")
    with step(f"ending {killed.MOMENTS} pages in the middle of a drawing"):
        counts = dict(killed.count(stage.browser, stage.address))
    return [Finding("drawings whose page ended", counts, tuple({"lost"} & counts.keys()))]


def _lighthouse(stage: Stage) -> Iterable[Result]:
    """Lighthouse's scores of every page; a page that cannot be scored is named and leaves the others standing."""
    for name, scored in bench_start.lighthouse(stage.address, stage.folder):
        short = ("not scored",) if not scored else tuple(c for c, goal in GOALS.items() if scored.get(c, 0) < goal)
        yield Finding(f"Lighthouse {name}", scored, short)


def _links(_stage: Stage) -> Iterable[Result]:
    """Malformed links."""
    return [Finding("malformed links", {"pytest": bench_start.fuzz()})]


MEASUREMENTS: dict[str, Callable[[Stage], Iterable[Result]]] = {
    "bytes": lambda stage: bench_weight.bytes_rows(stage.browser, stage.address, stage.folder),
    "start": lambda stage: [bench_start.start_row(stage.browser, stage.address)],
    "return": lambda stage: [bench_start.return_visit(stage.browser, stage.address)],
    "slow-link": lambda stage: [bench_weight.slow_link(stage.browser, stage.folder)],
    "paint": lambda stage: [bench_start.first_paint(stage.browser, stage.address)],
    "keystrokes": lambda stage: bench_typing.keystrokes(stage.browser, stage.address),
    "class-sets": lambda stage: bench_typing.class_sets(stage.browser, stage.address),
    "question-papers": lambda stage: bench_typing.question_papers(stage.browser, stage.address),
    "memory": lambda stage: bench_weight.memory(stage.browser, stage.address),
    "sheets": _sheets,
    "lighthouse": _lighthouse,
    "links": _links,
    "learners": _learners,
    "photographs": _photographs,
    "blank-paper": _blank_paper,
    "pencil": _pencil,
    "pile": _pile,
    "drawn-here": _drawn_here,
    "drawn-by-pointer": _drawn_by_pointer,
    "draw-hour": _draw_hour,
    "draw-killed": _draw_kills,
    "draw-frames": lambda stage: bench_drawing.frames(stage.browser, stage.address),
}
"""By the name under which `build.py bench` runs it alone."""

LONG = ("pencil", "pile", "drawn-by-pointer", "draw-hour")
"""Those that take ten minutes to an hour: they run by their name alone."""


def check_names(names: Sequence[str]) -> None:
    """Raise BuildError for a name that stands for no measurement."""
    unknown = [name for name in names if name not in MEASUREMENTS]
    if unknown:
        raise BuildError(f"bench knows no {', '.join(unknown)}: choose from {', '.join(MEASUREMENTS)}.")


def measure(names: Sequence[str]) -> int:
    """Take the named measurements, or all; gives the exit code: 1 when a goal is missed or a measurement failed."""
    record = Record(KEPT)
    with tempfile.TemporaryDirectory() as temporary:
        folder = Path(temporary) / "site"
        _lay_out(folder)
        with serving(folder, bench_weight.RecordingServer) as address, sync_playwright() as playwright:
            path = os.environ["PHASOR_FOLIO_CHROMIUM"]
            for name in names or [name for name in MEASUREMENTS if name not in LONG]:
                launch = partial(playwright.chromium.launch, executable_path=path, args=CHROMIUM_OPTIONS)
                take(record, name, partial(_with_browser, name, launch, address, folder))
    say(f"kept in {KEPT}")
    say(f"MISSED: {', '.join(record.missed)}" if record.missed else "every goal is met")
    return 1 if record.missed else 0


def _with_browser(name: str, launch: Callable[[], Browser], address: str, folder: Path) -> list[Result]:
    """Take a measurement in a browser of its own: one that is gone spoils no other, nor the second try."""
    browser = launch()
    try:
        return list(MEASUREMENTS[name](Stage(browser, address, folder)))
    finally:
        browser.close()


def take(record: Record, name: str, measurement: Callable[[], Iterable[Result]]) -> None:
    """Take one measurement, twice if need be; a failure is told and leaves the others standing."""
    for attempt in range(1, TRIES + 1):
        try:
            record.keep(name, list(measurement()))
        except (BuildError, PlaywrightError, OSError, ValueError, ArithmeticError) as error:
            reason = str(error).strip().splitlines()[0] if str(error).strip() else type(error).__name__
            if attempt == TRIES:
                record.fail(name, reason)
            else:
                say(f"{name}: tried again after: {reason}")
        else:
            return


def _lay_out(folder: Path) -> None:
    """Copy the built site; beside it stock Pyodide's page, and ours without its scripts."""
    shutil.copytree(DIST, folder)
    compress_site(folder)
    shutil.copytree(SITE / "making" / "stock", folder / bench_start.STOCK)
    for name in STOCK_FILES:
        shutil.copyfile(PYODIDE / name, folder / bench_start.STOCK / name)
    bench_start.lay_static(folder)
