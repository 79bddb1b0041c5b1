"""Problems drawn on the screen by a robot hand that only presses and drags, as tests/browser/drawn_by_hand.py does.

The lines are those of bench/drawn_here.py, with a hand's slips of 0.5 mm and 0.5 degrees: the ruler is laid, turned
and drawn along for each, and an arrow that is asked for is named by a press. What the pointer adds, whole pixels and
the gentle catching on points, is in what is counted. A drawing that leaves the paper is none. One page draws
all problems of a calculator: a new problem is a new link in its address.
"""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from bench.drawn_here import Mistake, lines_of, mistakes, problems
from browser.asking import wait_until
from browser.drawn_by_hand import Hand
from making.progress import say
from playwright.sync_api import Page

from pycore.calculators.registry import CALCULATORS
from pycore.constructions.moves import ConstructionError
from pycore.forms import links
from pycore.sums.drawn_here import drawing_task

EDGE = 3.0
"""Millimetres from the paper's edge within which nobody presses."""


@dataclass(frozen=True)
class Problem:
    """A problem with its lines ([kind, x1, y1, x2, y2, ""]) and the key that each has; the mistake in them, if any, and
    the place of its line."""

    link: str
    lines: list[list[Any]]
    keys: list[str]
    mistake: Mistake | None
    wrong: int


def drawn_problems(count: int, seed: int) -> Iterator[Problem]:
    """Problems whose lines lie on the paper; every other one has a usual mistake."""
    made = 0
    for number, (slug, form, rng) in enumerate(problems(20 * count, seed)):
        task = drawing_task(CALCULATORS[slug], form)
        mistake = rng.choice(mistakes(task) or [None]) if number % 2 else None
        try:
            lines, wanted = lines_of(task, rng, {mistake.key: mistake.size} if mistake else {})
        except ConstructionError:
            continue
        wide, high = task.page.width - EDGE, task.page.height - EDGE
        if not all(EDGE < x < wide and EDGE < y < high for _, *ends, _ in lines for x, y in (ends[:2], ends[2:])):
            continue
        wrong = wanted.index(mistake.line) if mistake else -1
        link = f"{slug}/#{links.fragment(task.case.link(task.plan, 'problem'))}&view=draw"
        yield Problem(link, lines, [line.key for line in wanted], mistake, wrong)
        made += 1
        if made == count:
            return


def draw(hand: Hand, lines: list[list[Any]]) -> None:
    """Draw every line along the ruler; no arrow is named."""
    for kind, x1, y1, x2, y2, _ in lines:
        far, deg = math.dist((x1, y1), (x2, y2)), math.degrees(math.atan2(y1 - y2, x2 - x1))
        hand.place("ruler", (x1, y1))
        hand.turn("ruler", deg)
        hand.line(kind, 0.0, far)


def verdict(hand: Hand, keys: list[str]) -> dict[int, str]:
    """What is said of each line, once every arrow that was asked for has its name."""
    for _ in keys:
        said = hand.judge()
        if "no name yet" not in said:
            break
        asked = hand.page.inner_text("[data-draw-asked]")
        hand.name(keys[int(asked.split(".")[0]) - 1])
    rows = hand.page.eval_on_selector_all(
        "[data-draw-line]", "rows => rows.map(row => [Number(row.dataset.drawLine), row.dataset.band])"
    )
    return dict(rows)


COUNT, SEED = 200, 11


def opened(page: Page, address: str, link: str) -> Hand:
    """A hand on the view of a link, such as ``neutral-current/#v=3&i1=...``; the page may have another one open."""
    slug, _, fragment = link.partition("#")
    if page.url.partition("#")[0] == address + slug:
        page.click('dialog.draw [data-draw-do="close"]')
        # The page goes back in its history: until it has, another address would be left again.
        wait_until(page, "!document.querySelector('dialog.draw[open]') && !location.hash.includes('view=draw')")
        page.evaluate("fragment => { location.hash = fragment; }", fragment)
    else:
        page.goto(address + link)
    return Hand(page).opened()


def count(page: Page, address: str, number: int = COUNT, seed: int = SEED) -> Counter[str]:
    """How many right drawings are accepted, to look at or called wrong; how many mistakes are found at their line."""
    counts: Counter[str] = Counter()
    for problem in sorted(drawn_problems(number, seed), key=lambda one: one.link.partition("#")[0]):
        hand = opened(page, address, problem.link)
        draw(hand, problem.lines)
        _tally(counts, problem, verdict(hand, problem.keys))
    return counts


def _tally(counts: Counter[str], problem: Problem, bands: dict[int, str]) -> None:
    if problem.mistake:
        counts["mistakes"] += 1
        first = next((place for place, band in bands.items() if band == "wrong"), -1)
        counts["found at their line"] += first == problem.wrong
        if first != problem.wrong:
            say(f"{problem.mistake.name} in line {problem.wrong}, said {bands}: {problem.link}")
        return
    worst = "wrong" if "wrong" in bands.values() else "look" if "look" in bands.values() else "accept"
    counts[f"right: {worst}"] += 1
    counts["lines not judged"] += len(problem.lines) - len(bands)
    if worst != "accept" or len(bands) < len(problem.lines):
        say(f"right, said {bands}: {problem.link}")
