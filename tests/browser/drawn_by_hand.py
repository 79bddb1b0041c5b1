"""A robot hand on the drawing view, by mouse as a learner uses it. Places are mm from the left and from the top of the
sheet, angles degrees anticlockwise from the right."""

import json
import math
import re
from dataclasses import dataclass

from browser.asking import wait_until
from playwright.sync_api import Page

PATIENCE = 60.0
SHEET = ".draw-board > .draw-scene > .draw-paper"
OPEN = f"document.querySelector('dialog.draw[open] {SHEET}') !== null"
Place = tuple[float, float]


@dataclass
class Hand:
    """One hand on an open view."""

    page: Page

    def opened(self) -> "Hand":
        """Wait until the view is there."""
        wait_until(self.page, OPEN, PATIENCE)
        return self

    def press(self, does: str, value: str = "") -> None:
        """Press a button."""
        chosen = f'[data-value="{value}"]' if value else ""
        self.page.click(f'dialog.draw [data-draw-do="{does}"]{chosen}')

    def choose(self, group: str, value: str) -> None:
        """Press one button of a group, unless it is pressed."""
        button = f'dialog.draw [data-draw-do="{group}"][data-value="{value}"]'
        if self.page.get_attribute(button, "aria-pressed") != "true":
            self.press(group, value)

    def pixel(self, place: Place) -> Place:
        """Where a place of the sheet is on the screen."""
        left, top, wide, width = self.page.eval_on_selector(
            SHEET,
            """sheet => { const { left, top, width } = sheet.getBoundingClientRect();
                          return [left, top, width, Number(sheet.getAttribute('viewBox').split(' ')[2])]; }""",
        )
        scale = wide / width
        return left + place[0] * scale, top + place[1] * scale

    def is_seen(self, place: Place) -> bool:
        """Whether a place of the sheet is on the board, where a hand can press."""
        x, y = self.pixel(place)
        box = self.page.locator(".draw-board").bounding_box()
        assert box is not None
        return 2 < x - box["x"] < box["width"] - 2 and 2 < y - box["y"] < box["height"] - 2

    def pose(self, tool: str) -> tuple[float, float, float]:
        """Where an instrument lies: its zero and the direction of its edge."""
        scale, text = self.page.eval_on_selector(
            SHEET,
            """(sheet, tool) => { const [,, width] = sheet.getAttribute('viewBox').split(' ').map(Number);
                                  const { transform } = sheet.parentElement.querySelector(`.draw-tool.${tool}`).style;
                                  return [parseFloat(sheet.style.width) / width, transform]; }""",
            tool,
        )
        x, y, turn = map(float, re.findall(r"-?[\d.]+", text))
        return x / scale, y / scale, -turn

    def start(self) -> Place:
        """The start that is printed on the sheet."""
        x, y = map(float, (self.page.get_attribute(".draw-board", "data-start") or "").split())
        return x, y

    def drag(self, first: Place, last: Place) -> None:
        """Press at one place of the sheet and let go at another."""
        one, other = self.pixel(first), self.pixel(last)
        self.page.mouse.move(*one)
        self.page.mouse.down()
        self.page.mouse.move((one[0] + other[0]) / 2, (one[1] + other[1]) / 2)
        self.page.mouse.move(*other)
        self.page.mouse.up()

    def on_tool(self, tool: str, along: float, up: float) -> Place:
        """A place on an instrument."""
        x, y, deg = self.pose(tool)
        return moved(moved((x, y), along, deg), up, deg + 90.0)

    def place(self, tool: str, place: Place) -> None:
        """Take an instrument and lay its zero on a place."""
        self.choose("tool", tool)
        self.choose("verb", "place")
        x, y, _ = self.pose(tool)
        # Where the instrument can be held so that the hand stays on the paper.
        for along in (12.0, 50.0, 90.0, 130.0, -4.0):
            held = self.on_tool(tool, along, 6.0 if tool == "protractor" else -6.0)
            to = (held[0] + place[0] - x, held[1] + place[1] - y)
            if self.is_seen(held) and self.is_seen(to):
                break
        self.drag(held, to)

    def turn(self, tool: str, deg: float) -> None:
        """Turn an instrument about its zero."""
        self.choose("tool", tool)
        self.choose("verb", "turn")
        x, y, before = self.pose(tool)
        for far in (90.0, 60.0, 40.0, 25.0, 15.0, 8.0):
            held, to = moved((x, y), far, before - 4.0), moved((x, y), far, deg - 4.0)
            if self.is_seen(held) and self.is_seen(to):
                break
        self.drag(held, to)

    def mark(self, tool: str, value: float) -> None:
        """Mark at a reading of an instrument: mm on the ruler, degrees from the protractor's zero line."""
        self.choose("tool", tool)
        self.choose("verb", "mark")
        self.drag(self.edge(tool, value - 5.0 if value > 5.0 else value + 5.0), self.edge(tool, value))

    def edge(self, tool: str, value: float) -> Place:
        """Where a reading is."""
        x, y, deg = self.pose(tool)
        return moved((x, y), value, deg) if tool == "ruler" else moved((x, y), 75.0, deg + value)

    def line(self, kind: str, first: float, last: float) -> None:
        """Draw along the ruler from one reading to another."""
        self.choose("verb", "draw")
        self.choose("kind", kind)
        self.drag(self.edge("ruler", first), self.edge("ruler", last))

    def name(self, key: str) -> None:
        """Give the arrow just drawn its name."""
        self.press("name", key)

    def items(self) -> list[dict]:
        """What is kept on the device of the drawing in view: its ops that hold."""
        kept = json.loads(self.page.evaluate("localStorage.getItem('phasor-folio-drawings')") or '{"drawings": []}')
        return kept["drawings"][0]["ops"][: kept["drawings"][0]["at"]] if kept["drawings"] else []

    def judge(self) -> str:
        """Ask how it is so far; returns what is said."""
        self.page.evaluate("document.querySelector('[data-draw-result]').replaceChildren()")
        self.press("judge")
        wait_until(self.page, "document.querySelector('[data-draw-result]').childElementCount > 0", PATIENCE)
        return self.page.inner_text("[data-draw-result]")


def fingers(page: Page, first: list[Place], last: list[Place], *, stays: bool = False) -> None:
    """Fingers put down, led elsewhere in steps, and lifted, unless they stay."""
    session = page.context.new_cdp_session(page)
    for step in range(9):
        share = step / 8
        points = [{"x": a[0] + share * (b[0] - a[0]), "y": a[1] + share * (b[1] - a[1]), "id": k}
                  for k, (a, b) in enumerate(zip(first, last, strict=True))]  # fmt: skip
        if step == 0:
            for many in range(1, len(points) + 1):
                session.send("Input.dispatchTouchEvent", {"type": "touchStart", "touchPoints": points[:many]})
        else:
            session.send("Input.dispatchTouchEvent", {"type": "touchMove", "touchPoints": points})
            page.evaluate("new Promise((done) => requestAnimationFrame(() => done(0)))")
    if not stays:
        session.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    session.detach()


def moved(place: Place, far: float, deg: float) -> Place:
    """A place so far away in a direction."""
    return place[0] + far * math.cos(math.radians(deg)), place[1] - far * math.sin(math.radians(deg))


def assert_own_letters(page: Page, place: str) -> None:
    """The drawings in a place of the page have the site's letters, those of text and those of symbols."""
    faces, sans, symbol = page.evaluate(
        """(place) => {
          const first = (text) => text.split(",")[0].replaceAll('"', "").trim();
          const root = getComputedStyle(document.documentElement);
          const texts = [...document.querySelectorAll(`${place} svg :is(text, tspan)`)];
          return [[...new Set(texts.map((one) => first(getComputedStyle(one).fontFamily)))],
            first(root.getPropertyValue("--sans")), first(root.getPropertyValue("--symbol"))];
        }""",
        place,
    )
    assert sans in faces and {sans, symbol} >= set(faces), faces
