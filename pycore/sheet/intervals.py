"""Results as intervals on one axis: a marker for each value, a bar for its uncertainty.

A small picture for the screen, 120 units wide. Every result has its own row with its label above its bar, so that
labels cannot collide; colour and marker both identify the rows.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pycore import quantity
from pycore.drawing import Circle, Group, Ink, Item, Line, Page, Shape
from pycore.geometry import Point
from pycore.sheet.lettered import text, width_of

WIDTH = 120.0
LEFT, RIGHT = 5.0, 115.0
ROW, FOOT, TOP = 14.0, 13.0, 1.5
CAPITALS = 3.4
STEPS = (1.0, 2.0, 5.0)
MOST_TICKS = 6


@dataclass(frozen=True, slots=True)
class Interval:
    """One result: label, value and half-width in the displayed unit, ink and marker."""

    label: str
    value: float
    half: float
    ink: Ink
    marker: str


def _span(rows: Sequence[Interval]) -> tuple[float, float]:
    """Return the range of the axis: every bar and a little more."""
    low, high = min(row.value - row.half for row in rows), max(row.value + row.half for row in rows)
    room = 0.06 * (high - low) or 0.05 * math.fabs(high) or 1.0
    return low - room, high + room


def tick_values(low: float, high: float) -> tuple[tuple[float, ...], int]:
    """Return round values on an axis, 3 to 6 of them if possible, and the decimals they need."""
    wide = (high - low) / MOST_TICKS
    order = quantity.order_of_magnitude(wide)
    power = float(f"1e{order}")
    step = next((factor * power for factor in STEPS if factor * power >= wide), 10.0 * power)
    first = math.ceil(low / step)
    count = math.floor(high / step) - first + 1
    return tuple((first + index) * step for index in range(count)), max(0, -quantity.order_of_magnitude(step))


def _marker(row: Interval, at: Point) -> Item:
    if row.marker == "circle":
        return Circle(at, 1.7, 0.5, row.ink, "sheet")
    turn = 45.0 if row.marker == "square" else 0.0
    reach = 2.2 if row.marker == "square" else 2.4
    corners = tuple(at.moved(reach, turn + 90.0 * corner) for corner in range(4))
    return Shape(corners, 0.5, row.ink, "sheet")


def _row(row: Interval, base: float, place: "_Axis") -> Group:
    at = Point(place.x(row.value), base)
    left, right = place.x(row.value - row.half), place.x(row.value + row.half)
    items: list[Item] = []
    if row.half > 0.0:
        items.append(Line(Point(left, base), Point(right, base), 0.9, row.ink))
        items += [Line(Point(x, base - 1.5), Point(x, base + 1.5), 0.9, row.ink) for x in (left, right)]
    items.append(_marker(row, at))
    width = width_of(row.label, CAPITALS)
    start = min(max(at.x - width / 2, LEFT), RIGHT - width)
    items.append(text(row.label, Point(start, base + 3.6), CAPITALS))
    return Group(tuple(items), name=f"interval-{row.marker}")


@dataclass(frozen=True, slots=True)
class _Axis:
    """Maps values to places across the picture."""

    low: float
    high: float

    def x(self, value: float) -> float:
        return LEFT + (RIGHT - LEFT) * (value - self.low) / (self.high - self.low)


def _foot(place: _Axis, mark: str, unit: str, top: float) -> Group:
    """The axis with its round values and the unit at its end."""
    items: list[Item] = [Line(Point(LEFT, FOOT - 4.0), Point(RIGHT, FOOT - 4.0), 0.3, "ink-2")]
    values, decimals = tick_values(place.low, place.high)
    written = [quantity.fixed(value, decimals, mark) for value in values]
    room = RIGHT - width_of(unit, CAPITALS) - 3.0
    end = LEFT
    for value, words in zip(values, written, strict=True):
        x, half = place.x(value), width_of(words, CAPITALS) / 2
        items.append(Line(Point(x, FOOT - 4.0), Point(x, top), 0.15, "rule"))
        items.append(Line(Point(x, FOOT - 5.5), Point(x, FOOT - 4.0), 0.3, "ink-2"))
        if x - half < end or x + half > room:
            continue
        items.append(text(words, Point(x, FOOT - 10.5), CAPITALS, "middle", "ink-2"))
        end = x + half + 2.5
    items.append(text(unit, Point(RIGHT, FOOT - 10.5), CAPITALS, "end", "ink-2"))
    return Group(tuple(items), name="axis")


def intervals(rows: Sequence[Interval], unit: str, mark: str, title: str, description: str) -> Page:
    """Results on one axis, the first at the top; ``description``: the picture in words."""
    low, high = _span(rows)
    place = _Axis(low, high)
    height = FOOT + ROW * len(rows) + TOP
    top = FOOT + ROW * len(rows) - 4.0
    drawn = [_row(row, FOOT + ROW * (len(rows) - 1 - index) + 2.5, place) for index, row in enumerate(rows)]
    return Page(WIDTH, height, (_foot(place, mark, unit, top), *drawn), title, description)
