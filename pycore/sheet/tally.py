"""A small bar chart of counts: filled for certain, open for possible. All in mm."""

from collections.abc import Sequence

from pycore.drawing import Group, Item, Page, Shape
from pycore.geometry import Box, Point
from pycore.sheet.lettered import text, width_of, wrapped

WIDTH = 110.0
LETTERS = 3.0
STEP, BAR, UNDER = 4.6, 4.4, 1.8
MOST = 12

Counted = tuple[str, int, int]
"""A label, the certain count, the possible further count."""


def _row(label: str, sure: int, perhaps: int, unit: float, top: float) -> tuple[Group, float]:
    """Return one label with its bar below it, and the height they use."""
    items: list[Item] = []
    y = top
    for line in wrapped(label, LETTERS, WIDTH):
        y -= STEP
        items.append(text(line, Point(0.0, y), LETTERS))
    y -= BAR + UNDER
    end = sure * unit
    if sure:
        items.append(Shape(Box(0.0, y, end, y + BAR).corners, 0.3, "ink", "ink"))
    if perhaps:
        items.append(Shape(Box(end, y, end + perhaps * unit, y + BAR).corners, 0.3, "ink", "sheet"))
    numbers = f"{sure}" if not perhaps else f"{sure} + {perhaps}"
    items.append(text(numbers, Point(end + perhaps * unit + 1.6, y + 0.7), LETTERS, face="bold"))
    return Group(tuple(items), name="tally"), y - 2.2


def chart(counted: Sequence[Counted], title: str, description: str) -> Page:
    """Return the chart of the commonest labels in the given order. Raises ValueError if nothing is counted."""
    rows = counted[:MOST]
    longest = max(sure + perhaps for _, sure, perhaps in rows)
    unit = min(8.0, (WIDTH - width_of("00 + 00", LETTERS) - 3.0) / longest)
    height = _height(rows)
    items: list[Item] = []
    y = height
    for label, sure, perhaps in rows:
        group, y = _row(label, sure, perhaps, unit, y)
        items.append(group)
    return Page(WIDTH, height, tuple(items), title, description)


def _height(rows: Sequence[Counted]) -> float:
    lines = len([line for label, _, _ in rows for line in wrapped(label, LETTERS, WIDTH)])
    return lines * STEP + len(rows) * (BAR + UNDER + 2.2) + 1.0
