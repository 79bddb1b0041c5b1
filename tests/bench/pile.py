"""A class's photographs in the browser, all chosen at once: how many codes and drawings are read by themselves, how
long it takes, and what the page's process holds.

`build.py bench pile` runs it.
"""

import json
import re
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from browser.asking import wait_until
from pencilled import METHODS
from piled import learners, pencilled_sheet
from playwright.sync_api import Browser, Page

CLASS, TWICE = 30, 60
"""Photographs in a pile, and in one of twice as many."""
FIRST, SEED = 720_000, 77
"""The number of the first photograph, and the class set's."""
SECONDS, MEGABYTES, CODES = 90.0, 600.0, 98.0
"""Goals for one class: the time on two quiet processors, the page's memory, codes read, per cent."""
PATIENCE = 900.0
SETTLED = "document.querySelectorAll('tr[data-kind]:not([data-kind=waiting], [data-kind=reading])').length"
KINDS = "[...document.querySelectorAll('tr[data-kind]')].map((row) => [row.dataset.kind, row.innerText])"
SET = "v=3&learners={count}&method=parallelogram&seed={seed}"


@dataclass(frozen=True)
class Pile:
    """What came of a pile: seconds, rows by their state, rows whose learner was found by the code in the picture."""

    seconds: float
    states: Counter[str]
    codes: int


def make_pictures(folder: Path, count: int, first: int = FIRST) -> list[Path]:
    """Photographs of a class set's sheets, each drawn on by its learner by one of the methods."""
    paths = []
    for place, learner in enumerate(learners(SEED, count)):
        path = folder / f"{place + 1}.jpg"
        data, _ = pencilled_sheet(learner, first + place, METHODS[place % len(METHODS)])
        path.write_bytes(data)
        paths.append(path)
    return paths


def read_pile(page: Page, address: str, paths: list[Path]) -> Pile:
    """Choose photographs of that class set, and wait until every row is read."""
    names = [f"Learner {place:03d}" for place in range(1, len(paths) + 1)]
    kept = {"version": 1, "roll": "\n".join(names), "results": "", "set": SET.format(count=len(paths), seed=SEED)}
    page.goto(f"{address}licences.txt")
    page.evaluate("([key, text]) => localStorage.setItem(key, text)", ["phasor-folio-class", json.dumps(kept)])
    page.goto(f"{address}photographs/")
    wait_until(page, "document.documentElement.dataset.python === 'ready'", 60.0)
    began = time.monotonic()
    page.set_input_files("#pile-choose", paths)
    wait_until(page, f"{SETTLED} === {len(paths)}", PATIENCE)
    seconds = time.monotonic() - began
    rows = page.evaluate(KINDS)
    found = {name for _, text in rows for name in re.findall(r"Learner \d{3}", text)}
    return Pile(seconds, Counter(kind for kind, _ in rows), len(found & set(names)))


def read_in(browser: Browser, address: str, paths: list[Path], peak: Callable[..., float]) -> tuple[Pile, float]:
    """What came of a pile, and the most MB that its page's process held; ``peak(browser, work)`` weighs."""
    done: list[Pile] = []
    held = peak(browser, lambda page: done.append(read_pile(page, address, paths)))
    return done[0], held

