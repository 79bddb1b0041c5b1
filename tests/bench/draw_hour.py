"""An hour of drawing on the screen, at a robot's pace: what the page holds at first, half way and at the end.

An hour has some 600 gestures of six seconds each: instruments laid and turned, lines and marks, names, what is undone,
brought back and rubbed out, the paper moved and enlarged, verdicts. At each weighing the sheet is begun afresh, so that
the same is on it.
"""

import random
from dataclasses import dataclass

from browser.drawn_by_hand import Hand, moved
from playwright.sync_api import Page

GESTURES, SEED = 600, 22
FIRST = 60
"""Gestures after which the page is weighed first: by then all its parts are loaded."""


@dataclass(frozen=True)
class Weight:
    """What a page holds: megabytes of its script's memory after what is free is collected, elements and texts,
    listeners."""

    heap: float
    nodes: float
    listeners: float


def weighed(page: Page) -> Weight:
    """Weigh a page."""
    session = page.context.new_cdp_session(page)
    session.send("Performance.enable")
    session.send("HeapProfiler.enable")
    for _ in range(3):
        session.send("HeapProfiler.collectGarbage")
    found = {one["name"]: float(one["value"]) for one in session.send("Performance.getMetrics")["metrics"]}
    session.detach()
    return Weight(found["JSHeapUsedSize"] / 1e6, found["Nodes"], found["JSEventListeners"])


def _line(hand: Hand, rng: random.Random) -> None:
    """An arrow with its name, or a dashed line, from somewhere near the start."""
    hand.place("ruler", moved(hand.start(), rng.uniform(0.0, 40.0), rng.uniform(0.0, 360.0)))
    hand.turn("ruler", rng.uniform(-180.0, 180.0))
    kind = rng.choice(("arrow", "dashed"))
    hand.line(kind, 0.0, rng.uniform(15.0, 60.0))
    if kind == "arrow" and hand.page.is_visible("[data-draw-names]"):
        hand.name(rng.choice(("i1", "i2", "i3", "sum")))


def _mark(hand: Hand, rng: random.Random) -> None:
    hand.place("protractor", hand.start())
    hand.mark("protractor", rng.uniform(20.0, 160.0))


def _there_and_back(hand: Hand, _rng: random.Random) -> None:
    for does in ("undo", "undo", "redo"):
        hand.press(does)


def _rub(hand: Hand, rng: random.Random) -> None:
    drawn = hand.page.locator("[data-draw-lines] [data-draw-do=rub]")
    if drawn.count():
        drawn.nth(rng.randrange(drawn.count())).click()


def _look(hand: Hand, _rng: random.Random) -> None:
    for does in ("closer", "farther", "whole"):
        hand.press(does)


def _judge(hand: Hand, _rng: random.Random) -> None:
    hand.judge()


WAYS = ((_line, 10), (_mark, 3), (_there_and_back, 4), (_rub, 4), (_look, 2), (_judge, 1))
"""What is done, and how often beside the others."""


def draw(hand: Hand, gestures: int, rng: random.Random) -> None:
    """Do so many things, then begin afresh with one line and its verdict."""
    ways, shares = zip(*WAYS, strict=True)
    for way in rng.choices(ways, shares, k=gestures):
        way(hand, rng)
    hand.press("afresh")
    hand.choose("tool", "ruler")
    hand.choose("verb", "place")
    hand.press("onto")
    hand.press("along")
    hand.line("arrow", 0.0, 46.0)
    hand.name("i1")
    hand.judge()


def hour(hand: Hand, gestures: int = GESTURES) -> tuple[Weight, Weight, Weight]:
    """What the page holds at first, half way and at the end."""
    rng = random.Random(SEED)
    hand.page.evaluate("for (const fold of document.querySelectorAll('[data-draw-fold]')) fold.open = true")
    weights = []
    for share in (FIRST, gestures // 2 - FIRST, gestures - gestures // 2):
        draw(hand, share, rng)
        weights.append(weighed(hand.page))
    return weights[0], weights[1], weights[2]
