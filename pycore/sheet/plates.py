"""Numbers of an instrument that a line of the drawing would strike through: set again over it, on a small plate."""

import math
from collections.abc import Iterator, Sequence

from pycore import lettering
from pycore.drawing import Group, Ink, Item, Shape, Text, walk
from pycore.geometry import ORIGIN, Box, Point
from pycore.sheet.labels import Segment
from pycore.sheet.tools import PlacedTool

MARGIN = 0.25
"""From a number to the edge of its plate, units."""


def _half(number: Text) -> tuple[float, float]:
    """Return half the width and half the height of a number."""
    run = number.runs[0]
    return lettering.width(run.text, run.face, run.size) / 2, lettering.capital_height(run.face, run.size) / 2


def middle_of(number: Text) -> Point:
    """Return the middle of a number that is turned about it."""
    return number.at.moved(_half(number)[1], number.turn + 90.0)


def is_struck(number: Text, lines: Sequence[Segment], margin: float) -> bool:
    """Return whether a line runs over a turned number."""
    middle = middle_of(number)
    wide, high = _half(number)
    near = [line for line in lines if _is_near(middle, line, wide + high + 2.0 * math.fabs(margin + line.half_width))]
    if not near:
        return False
    box = Box(-wide, -high, wide, high)
    along, up = ORIGIN.moved(1.0, number.turn), ORIGIN.moved(1.0, number.turn + 90.0)

    def own(point: Point) -> Point:
        """The place as the number sees it, upright about its middle."""
        away = point.minus(middle)
        return Point(away.x * along.x + away.y * along.y, away.x * up.x + away.y * up.y)

    return any(
        box.grown(margin + line.half_width).meets_segment(own(line.start), own(line.end)) for line in near
    )


def _is_near(middle: Point, line: Segment, reach: float) -> bool:
    """Return whether a line comes within reach of a place, across and up: most are far off, and need no closer look.
    """
    (x, y), (from_x, from_y), (to_x, to_y) = middle, line.start, line.end
    left, right = (from_x, to_x) if from_x < to_x else (to_x, from_x)
    low, top = (from_y, to_y) if from_y < to_y else (to_y, from_y)
    return left - reach < x < right + reach and low - reach < y < top + reach


def _holds(corners: Sequence[Point], place: Point) -> bool:
    """Return whether a polygon holds a place."""
    inside = False
    for one, other in zip(corners, (*corners[1:], corners[0]), strict=True):
        if (one.y > place.y) != (other.y > place.y):
            across = one.x + (place.y - one.y) / (other.y - one.y) * (other.x - one.x)
            inside = inside != (place.x < across)
    return inside


def _plates(numbers: Sequence[Item], tinted: Sequence[Item], lines: Sequence[Segment]) -> Iterator[Item]:
    shapes = [item for item in tinted if isinstance(item, Shape)]
    for number in walk(tuple(numbers)):
        if not isinstance(number, Text) or not is_struck(number, lines, 0.0):
            continue
        middle, (wide, high) = middle_of(number), _half(number)
        corners = tuple(
            middle.moved(across * (wide + MARGIN), number.turn).moved(up * (high + MARGIN), number.turn + 90.0)
            for across, up in ((1, 1), (-1, 1), (-1, -1), (1, -1))
        )
        ground: Ink = "tint-2" if any(_holds(shape.points, middle) for shape in shapes) else "tint"
        yield Shape(corners, 0.0, "accent", ground)
        yield number


def plates(laid: PlacedTool, lines: Sequence[Segment]) -> tuple[Group, ...]:
    """Return the struck numbers over the drawing: as they are with the reading, and for a class that is asked."""
    known, asked = tuple(_plates(laid.known, laid.tinted, lines)), tuple(_plates(laid.asked, (), lines))
    both = (("known", known), ("asked", asked)) if laid.asked != laid.known else (("tool", known),)
    return tuple(Group(items, name=name, hidden=name == "asked") for name, items in both if items)
