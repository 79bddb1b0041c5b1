"""A page that ends at any moment of a drawing: what was drawn before is there again.

A robot hand draws a problem until a random one of its events, a press, a move or a release, is the last. Then the page
is closed, loaded anew, or its process is ended, each without a word to the page; and the drawing is opened again, with
a network or without.
"""

import random
from collections import Counter
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field

from bench.drawn_by_pointer import Problem, draw, drawn_problems
from browser.drawn_by_hand import SHEET, Hand, Place
from browser.kept import keeping, visit
from playwright.sync_api import Browser, BrowserContext, Page
from playwright.sync_api import Error as PlaywrightError

MOMENTS, PROBLEMS, SEED = 24, 4, 8
EVENTS = 20
"""What a line takes, about: presses of buttons, presses, moves and releases on the paper."""
LINES = f"{SHEET} ~ .draw-lines [data-id]"
WIDE = {"width": 1920, "height": 1080}


def lines_of(hand: Hand) -> list[tuple[Place, Place]]:
    """The lines that are kept of the drawing in view."""
    return [((op["x1"], op["y1"]), (op["x2"], op["y2"])) for op in hand.items() if op["do"] == "line"]


class EndedError(Exception):
    """The last event is over."""


@dataclass
class MortalHand(Hand):
    """A hand that stops after so many events; it counts the lines that it has ended."""

    left: int = 0
    drawn: list[tuple[Place, Place]] = field(default_factory=list)

    def _event(self) -> None:
        self.left -= 1
        if self.left < 0:
            raise EndedError

    def press(self, does: str, value: str = "") -> None:
        """Press a button."""
        self._event()
        super().press(does, value)

    def drag(self, first: Place, last: Place) -> None:
        """Press at one place of the sheet and let go at another."""
        one, other = self.pixel(first), self.pixel(last)
        mouse = self.page.mouse
        mouse.move(*one)
        middle = (one[0] + other[0]) / 2, (one[1] + other[1]) / 2
        for does, place in ((mouse.down, ()), (mouse.move, middle), (mouse.move, other), (mouse.up, ())):
            self._event()
            does(*place)

    def line(self, kind: str, first: float, last: float) -> None:
        """Draw along the ruler from one reading to another."""
        super().line(kind, first, last)
        self.drawn.append(lines_of(self)[-1])


@dataclass(frozen=True)
class Moment:
    """When a page ends, how, and whether there is a network afterwards."""

    problem: Problem
    events: int
    end: str
    offline: bool


def moments(count: int, seed: int = SEED, problems: int = PROBLEMS) -> Iterator[Moment]:
    """Random moments of so many problems, each in turn."""
    rng, drawn = random.Random(seed), tuple(drawn_problems(problems, seed))
    for number in range(count):
        problem = drawn[number % problems]
        end = rng.choice(("closed", "reloaded", "crashed"))
        yield Moment(problem, rng.randrange(EVENTS * len(problem.lines)), end, rng.random() < 0.5)


def _end(context: BrowserContext, page: Page, moment: Moment, address: str) -> Page:
    """End the page, and open the problem again."""
    context.set_offline(moment.offline)
    if moment.end == "reloaded":
        page.reload()
        return page
    if moment.end == "crashed":
        with suppress(PlaywrightError):
            page.goto("chrome://crash", timeout=5000)
    page.close()
    again = context.new_page()
    again.goto(address + moment.problem.link)
    return again


def difference(context: BrowserContext, moment: Moment, address: str) -> str:
    """What is missing of the drawing when it is opened again; "" if nothing is."""
    page = context.new_page()
    page.goto(address + moment.problem.link)
    MortalHand(page).opened()
    hand = MortalHand(page, left=moment.events)
    with suppress(EndedError):
        draw(hand, moment.problem.lines)
    # Where nothing is drawn yet nothing is kept; what is still held is not laid.
    is_laid = bool(hand.drawn) and not page.locator(".draw-board[data-moves]").count()
    laid = hand.pose("ruler") if is_laid else None
    again = _end(context, page, moment, address)
    found = Hand(again).opened()
    lines = lines_of(found)
    seen, pose = again.locator(LINES).count(), found.pose("ruler")
    again.evaluate("localStorage.removeItem('phasor-folio-drawings')")
    again.close()
    context.set_offline(False)
    if not len(hand.drawn) == len(lines) == seen:
        return f"{len(hand.drawn)} lines drawn, {len(lines)} kept, {seen} seen"
    if lines != hand.drawn:
        return f"{hand.drawn} drawn, {lines} kept"
    if laid and max(abs(one - other) for one, other in zip(laid, pose, strict=True)) > 0.1:
        return f"the ruler lay at {laid} and lies at {pose}"
    return ""


def count(
    browser: Browser, address: str, number: int = MOMENTS, seed: int = SEED, problems: int = PROBLEMS
) -> Counter[str]:
    """How many drawings were there again, and how many not, with what was lost."""
    counts: Counter[str] = Counter()
    tried = list(moments(number, seed, problems))
    with keeping(browser, address, faults=True, viewport=WIDE) as context:
        for slug in dict.fromkeys(moment.problem.link.partition("#")[0] for moment in tried):
            visit(context, address + slug, whole=True).close()
        for moment in tried:
            lost = difference(context, moment, address)
            counts[f"{moment.end}{', offline' if moment.offline else ''}"] += 1
            counts["lost" if lost else "there again"] += 1
            if lost:
                counts[f"{moment.end} after {moment.events} events: {lost}"] += 1
    return counts
