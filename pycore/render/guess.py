"""A guess before drawing: a dashed arrow on the problem's sheet, from its starting point. It is never marked or kept.

The page's script moves the arrow's end, in mm from the starting point on the paper, y up; what that stands for is said
here.
"""

import math
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from pycore import trig
from pycore.drawing import Group, Page, walk
from pycore.geometry import ORIGIN, Box, Point, distance
from pycore.pages.codes import CodeProblem
from pycore.render.elements import Marks, Markup, h, join
from pycore.sums.placed import PlacedFigure
from pycore.words import practice as words
from pycore.writers import svg

FIRST = Point(18.0, 18.0)
"""mm; where the arrow's end lies before anybody has moved it."""
FARTHEST = 2000.0
NOTHING = 1.5
"""mm; a guess that ends so near to where it began means that nothing is left."""
START = "start"


def arrow_html(box: Box, start: Point, above: float) -> Markup:
    """Return the arrow over a drawing that shows ``box`` of the page, and the handle at its end; ``above``: where its
    name stands, mm."""
    x, y = start.x - box.left, box.top - start.y
    size: Marks = {"class": "guess", "viewBox": f"0 0 {box.width:.2f} {box.height:.2f}", "aria-hidden": "true",
                   "focusable": "false", "data-guess": True, "data-x": f"{x:.2f}", "data-y": f"{y:.2f}",
                   "data-first": f"{FIRST.x:g} {FIRST.y:g}"}  # fmt: skip
    ends: Marks = {"x1": f"{x:.2f}", "y1": f"{y:.2f}", "x2": f"{x + FIRST.x:.2f}", "y2": f"{y - FIRST.y:.2f}"}
    label: Marks = {"x": f"{x + FIRST.x:.2f}", "y": f"{y - FIRST.y - above:.2f}", "text-anchor": "middle",
                    "data-above": f"{above:g}"}  # fmt: skip
    head = h("path", {"d": "M0 0L-5 -1.3V1.3Z", "data-guess-head": True})
    drawing = h("svg", size, h("line", ends), head, h("text", label, words.YOUR_GUESS))
    marks: Marks = {"type": "button", "class": "guess-end", "data-guess-end": True, "aria-label": words.GUESS_KEYS}
    return join(drawing, h("button", marks))


def board_html(problem: CodeProblem, sheet: Page, view: Page | None) -> Markup:
    """Return the problem's sheet with the arrow of a guess on it, and what a phone shows in its place: the view of the
    drawing, or before that the sheet's empty drawing area."""
    placed: PlacedFigure = problem.page.placed(problem.form)
    whole = Box(0.0, 0.0, placed.page.x, placed.page.y)
    drawing = Markup.trusted(svg.write(sheet, prefix="sheet", role="sheet"))
    way = "level" if placed.page.x > placed.page.y else "upright"
    wide = h("div", {"class": f"board wide {way}"}, drawing, arrow_html(whole, placed.start, 8.0))
    if view is not None:
        figure = Markup.trusted(svg.write(view, prefix="view", role="view", view="phone"))
        return join(wide, h("div", {"class": "board narrow"}, figure))
    parts = tuple(one for one in walk(sheet.items) if isinstance(one, Group) and (one.step or one.name == START))
    begun = svg.write(replace(sheet, items=parts), prefix="start", role="view", view="start", window=placed.area)
    arrow = arrow_html(placed.area, placed.start, 11.0)
    return join(wide, h("div", {"class": "board narrow"}, Markup.trusted(begun), arrow))


def sentence_of(placed: PlacedFigure, end: Point) -> str:
    """Return what an arrow from the starting point to ``end`` (mm) stands for."""
    millimetres = distance(ORIGIN, end)
    if millimetres < NOTHING:
        return words.GUESSED_NOTHING
    size = millimetres / placed.factor
    rough = f"{size:.1e}"
    rounded = float(rough) if rough.startswith("1") else float(f"{size:.0e}")
    eighth = math.floor(trig.angle_of(end.x, end.y) / 45.0 + 0.5) % len(words.DIRECTIONS)
    return words.guessed(placed.writing.scale(rounded), words.DIRECTIONS[eighth])


def end_of(request: Mapping[str, Any]) -> Point:
    """Return the end of the arrow in a request, mm from the starting point; nothing where it names none."""
    at = request.get("at")
    if not isinstance(at, list) or len(at) != 2:
        return ORIGIN
    if not all(isinstance(one, (int, float)) and math.fabs(one) <= FARTHEST for one in at):
        return ORIGIN
    return Point(float(at[0]), float(at[1]))
