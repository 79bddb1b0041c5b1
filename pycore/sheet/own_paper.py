"""A drawing on blank paper of the learner's own: where the common point goes, and what shows that on the screen. In mm.

The drawing may take the whole paper but a margin (``media.OWN_MARGIN``). Its common point, or its start, is a whole or
half number of centimetres from two edges, so that a ruler finds it at once.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import chain

from pycore import quantity
from pycore.drawing import Group, Item, Line
from pycore.geometry import Box, Point
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.labels import Segment
from pycore.sheet.lettered import text, width_of
from pycore.sheet.media import OWN_MARGIN, Layout
from pycore.sheet.plan import Plan
from pycore.sheet.skeleton import is_free
from pycore.sheet.strokes import figure_box

STEPS = (10.0, 5.0)
"""Distances from the edges are multiples of the first if the drawing has room for that, else of the second."""


def _on_ruler(low: float, high: float) -> float:
    """Return the multiple of 10 mm, or of 5 mm, that is nearest the middle of an interval and inside it.

    In an interval that holds none it is the nearest multiple of 5 mm: at most a quarter of the margin is lost.
    """
    middle = (low + high) / 2
    near = [step * math.floor(middle / step + 0.5) for step in STEPS]
    return next((place for place in near if low - 1e-6 <= place <= high + 1e-6), near[-1])


def common_point(plan: Plan) -> Point:
    """Return where the common point, or the start, of a drawing is put: mm from the left and from the lower edge."""
    box, area, factor = figure_box(plan.construction, plan.picture), plan.layout.area, plan.factor
    return Point(
        _on_ruler(area.left - box.left * factor, area.right - box.right * factor),
        _on_ruler(area.bottom - box.bottom * factor, area.top - box.top * factor),
    )


def distances(plan: Plan, mark: str) -> tuple[str, str]:
    """Return how far the common point is from the left and from the lower edge, as text."""
    at = common_point(plan)
    return distance_text(at.x, mark), distance_text(at.y, mark)


def distance_text(millimetres: float, mark: str) -> str:
    """Return a distance from an edge in whole or half centimetres: 12.5 cm."""
    return quantity.plain(millimetres / 10.0, mark) + f"{NO_BREAK_SPACE}cm"


def edge_marks(
    paper: Box, at: Point, distances: tuple[str, str], note: float, drawn: Sequence[Segment],
    title: tuple[Box, ...] = (),
) -> tuple[Group, tuple[Box, ...]]:
    """Return marks on the left and the lower edge of a paper that show where its common point is, with its distances
    from them, and the rectangles that labels keep out of. A distance stands where no line of the drawing is
    (``drawn``), on the paper and below its ``title``, if there is such a place."""
    (left, low), (across, upward), stub = (paper.left, paper.bottom), distances, 2.0 * note
    wide, high = width_of(across, note), width_of(upward, note)
    aside = [1.5 + step * note for step in range(3)]
    # Made one by one: mostly the first is free, and each edit asks twice.
    on_lower = (
        Point(x, low + 1.5 + up * note)
        for beside in aside for up in range(5) for x in (at.x + beside, at.x - beside - wide)
    )  # fmt: skip
    on_left = (
        Point(left + 1.5 + along * note, y)
        for beside in aside for along in range(9) for y in (at.y + beside, at.y - beside - note)
    )  # fmt: skip

    def free(places: Iterator[Point], width: float, kept: tuple[Box, ...]) -> Box:
        every = (Box(one.x, one.y, one.x + width, one.y + note) for one in places)
        boxes = (box for box in every if paper.holds(box))
        first = next(boxes)
        return next((box for box in chain((first,), boxes) if is_free(box, drawn, kept)), first)

    lower = free(on_lower, wide, title)
    side = free(on_left, high, (*title, lower))
    items: tuple[Item, ...] = (
        Line(Point(at.x, low), Point(at.x, low + stub), 0.35), text(across, Point(lower.left, lower.bottom), note),
        Line(Point(left, at.y), Point(left + stub, at.y), 0.35), text(upward, Point(side.left, side.bottom), note),
    )  # fmt: skip
    stubs = (Box(at.x - 1.0, low, at.x + 1.0, low + stub), Box(left, at.y - 1.0, left + stub, at.y + 1.0))
    return Group(items, name="edges"), (*stubs, lower.grown(0.5), side.grown(0.5))


def heading(layout: Layout, title: str) -> tuple[Group, Box]:
    """Return what a drawing is, in the upper margin of its paper, and the rectangle that labels keep out of."""
    note, room = layout.style.note, layout.width - 2 * OWN_MARGIN
    size = min(note, note * room / max(width_of(title, note), 1.0))
    words = text(title, Point(OWN_MARGIN, layout.height - 3.0 - note), size, ink="ink-2")
    return Group((words,), name="title"), Box(0.0, layout.height - 4.0 - note, layout.width, layout.height)
