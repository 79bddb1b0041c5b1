"""The tools of a lesson in place: protractor, ruler, set square, compasses.

All lengths are in units of the view. A tool has strokes below the drawing (body and graduation), strokes above it
(zero, sense of measuring), and a reading that can be hidden. Its words are placed later, when all lines are known.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from pycore import geometry
from pycore.drawing import Arc, Arrow, Circle, Group, Item, Line, Shape, Stamp
from pycore.geometry import Point
from pycore.sheet.instruments import (
    BASE,
    COUNT_INNER,
    COUNT_OUTER,
    INNER_FIGURES,
    OUTER_FIGURES,
    RADIUS,
    RULER_BEFORE_ZERO,
    RULER_FIGURES,
    RULER_WIDTH,
    WINDOW,
    Pose,
    figure,
    stamped_protractor,
    stamped_ruler,
    stands_on_head,
)

SQUARE_SIDE = 80.0
SQUARE_BACK = 10.0
NARROW, MARK = 0.25, 0.5
"""Widths of a tool's edge and of its reading (units)."""
FIGURE_IS_NEAR = 2.6
"""Within this many mm of a number on the ruler, the line of the reading would cross it."""
TEN_IS_NEAR = 4.0
"""Within this many degrees of a number, the line of the reading would cross it."""


@dataclass(frozen=True, slots=True)
class ToolNote:
    """Words to place beside an anchor, preferably in this direction (degrees)."""

    words: str
    anchor: Point
    degrees: float


@dataclass(frozen=True, slots=True)
class PlacedTool:
    """A tool in place. ``busy``: straight segments that no text may cross."""

    under: tuple[Item, ...] = ()
    over: tuple[Item, ...] = ()
    reading: tuple[Item, ...] = ()
    zero: ToolNote | None = None
    read: ToolNote | None = None
    busy: tuple[tuple[Point, Point], ...] = ()


# The protractor.


def _rim(pose: Pose, radius: float, start: float, sweep: float, step: float = 3.0) -> list[Point]:
    """Return points along a ring of the protractor, from ``start`` degrees of its own through ``sweep``."""
    pieces = max(2, int(math.fabs(sweep) / step))
    return [pose.place(radius, start + sweep * n / pieces) for n in range(pieces + 1)]


def body(pose: Pose, *, circle: bool) -> Group:
    """The body of a protractor, with the stamp by which a writer may write it once."""
    stamp = Stamp(f"body-{360 if circle else 180}", _unit_body(circle), pose.at, pose.degrees, pose.factor)
    return Group((_body(pose, circle),), name="protractor-body", stamp=stamp)


@lru_cache(maxsize=2)
def _unit_body(circle: bool) -> Group:
    return Group((_body(Pose(geometry.ORIGIN, 0.0), circle),))


def _body(pose: Pose, circle: bool) -> Shape:
    """The outline of a protractor; its window is left open so that the drawing is visible."""
    if circle:
        return Shape((*_rim(pose, RADIUS, 0.0, 360.0), *_rim(pose, WINDOW, 360.0, -360.0)), 0.0, "accent", "tint")
    foot = [pose.xy(-RADIUS, 0.0), pose.xy(-RADIUS, -BASE), pose.xy(RADIUS, -BASE), pose.xy(RADIUS, 0.0)]
    corners = (*_rim(pose, RADIUS, 0.0, 180.0), *foot, pose.xy(WINDOW, 0.0), *_rim(pose, WINDOW, 180.0, -180.0))
    return Shape(corners, 0.0, "accent", "tint")


def protractor_laid(pose: Pose, inner: bool, sweep: float, words: str, *, circle: bool = False) -> PlacedTool:
    """The protractor on its point, the measured sector, the zero and the reading.

    ``sweep``: the signed angle on the screen from the zero in use: the right-hand zero with the inner scale and on a
    full circle, else the left-hand one.
    """
    f = pose.factor
    zero = 0.0 if inner or circle else 180.0
    sector = Shape(
        (*_rim(pose, RADIUS, zero, sweep), *_rim(pose, WINDOW, zero + sweep, -sweep)), 0.0, "accent", "tint-2"
    )
    under: tuple[Item, ...] = (
        body(pose, circle=circle),
        sector,
        Line(pose.at, pose.place(RADIUS, zero), 3.4 * f, "tint-2"),
        stamped_protractor(pose, COUNT_INNER if inner else COUNT_OUTER, circle=circle),
    )
    start, end = pose.degrees + zero, pose.degrees + zero + sweep
    swing = _swing(pose.at, 0.62 * WINDOW * f, start, sweep)
    rays = ((pose.at, pose.place(RADIUS + 6.0, zero + sweep)), (pose.at, pose.place(RADIUS, zero)))
    return PlacedTool(
        under,
        (Circle(pose.at, 1.6, 0.4, "accent"), *swing),
        tuple(_ray(pose, inner, zero, sweep)),
        ToolNote("0°", pose.place(RADIUS + 2.0, zero), start - 50.0 * (1 if sweep > 0 else -1)),
        ToolNote(words, pose.place(RADIUS + 6.0, zero + sweep), end) if words else None,
        (*rays, *_arc_pieces(pose.at, 0.62 * WINDOW * f, start, sweep), *_protractor_busy(pose, circle)),
    )


def _ray(pose: Pose, inner: bool, zero: float, sweep: float) -> Iterable[Item]:
    """The line through the graduation that is read, broken at numbers that it would cross; the number that is read is
    reversed."""
    own = INNER_FIGURES if inner else OUTER_FIGURES
    size, angle = math.fabs(sweep), zero + sweep
    ten = int(size / 10.0 + 0.5) * 10
    apart = math.fabs(size - ten)
    begin = 0.0
    for ring in (INNER_FIGURES, OUTER_FIGURES) if apart < TEN_IS_NEAR else ():
        half = 3.4 if ring == own else 2.4
        yield Line(pose.place(begin, angle), pose.place(ring - half, angle), MARK, "accent")
        begin = ring + half
    yield Line(pose.place(begin, angle), pose.place(RADIUS + 6.0, angle), MARK, "accent")
    if apart < 0.05 and 0 < ten < 180:
        yield from _reversed_figure(pose, own, angle, str(ten))


def _reversed_figure(pose: Pose, ring: float, angle: float, words: str) -> Iterable[Item]:
    """A number of a scale, light on a dark ground."""
    yield from _reversed(words, pose.place(ring, angle), pose.degrees + angle - 90.0, pose.factor)


def _reversed(words: str, at: Point, turn: float, f: float) -> Iterable[Item]:
    """A number 3.6 mm high about a place, turned, light on a dark ground."""
    wide, high = (1.5 + 1.0 * len(words)) * f, 2.9 * f
    corners = tuple(
        at.moved(wide * across, turn).moved(high * along, turn + 90.0)
        for across, along in ((1, 1), (-1, 1), (-1, -1), (1, -1))
    )
    yield Shape(corners, 0.0, "accent", "accent")
    yield figure(words, at, 3.6 * f, turn, "bold", "sheet")


def _swing(centre: Point, radius: float, start: float, sweep: float) -> tuple[Item, ...]:
    """An arrow from zero to the reading in the sense of measuring; none if it would not be visible."""
    head = 3.0
    turned = head / radius * 180.0 / math.pi
    if math.fabs(sweep) < turned + 6.0:
        return ()
    sign = 1.0 if sweep > 0 else -1.0
    tip = centre.moved(radius, start + sweep)
    tail = centre.moved(radius, start + sweep - sign * turned * 1.05)
    return (
        Arc(centre, radius, start, sweep - sign * turned * 0.8, MARK, "accent"),
        Arrow(tail, tip, MARK, "accent", head),
    )


def _arc_pieces(centre: Point, radius: float, start: float, sweep: float) -> list[tuple[Point, Point]]:
    """An arc as straight pieces."""
    pieces = max(2, int(math.fabs(sweep) / 12.0))
    places = [centre.moved(radius, start + sweep * n / pieces) for n in range(pieces + 1)]
    return list(pairwise(places))


def _protractor_busy(pose: Pose, circle: bool) -> list[tuple[Point, Point]]:
    """Return straight segments over the graduations and numbers."""
    rings = (WINDOW, 52.0, 58.0, 64.0, 70.0, RADIUS)
    pieces = [
        (pose.place(radius, degrees), pose.place(radius, degrees + 15.0))
        for radius in rings
        for degrees in range(0, 360 if circle else 180, 15)
    ]
    pieces.append((pose.xy(-RADIUS, 0.0), pose.xy(RADIUS, 0.0)))
    return pieces if circle else [*pieces, (pose.xy(-RADIUS, -BASE), pose.xy(RADIUS, -BASE))]


# The ruler.


def ruler_laid(pose: Pose, full_length: float, length: float, words: str) -> PlacedTool:
    """A ruler ``full_length`` mm long beside a line of ``length`` mm: the measured stretch tinted, zero and reading
    marked.

    Without ``words``, only its edge is used.
    """
    far = full_length + RULER_BEFORE_ZERO
    case = (
        pose.xy(-RULER_BEFORE_ZERO, 0.0), pose.xy(far, 0.0),
        pose.xy(far, -RULER_WIDTH), pose.xy(-RULER_BEFORE_ZERO, -RULER_WIDTH),
    )  # fmt: skip
    rows = (2.0, 6.0, 10.0, 14.0, 18.0, 22.0, RULER_WIDTH)
    busy = tuple((pose.xy(-RULER_BEFORE_ZERO, -down), pose.xy(full_length, -down)) for down in rows)
    under: tuple[Item, ...] = (Shape(case, 0.0, "accent", "tint"), stamped_ruler(pose, full_length))
    if not words:
        return PlacedTool(under, busy=busy)
    stretch = (pose.xy(0.0, 0.0), pose.xy(length, 0.0), pose.xy(length, -RULER_WIDTH), pose.xy(0.0, -RULER_WIDTH))
    zero, read = (_across(pose, place) for place in (0.0, length))
    outward = pose.degrees - 90.0
    return PlacedTool(
        (under[0], Shape(stretch, 0.0, "accent", "tint-2"), under[1]),
        (Line(*zero, MARK, "accent"),),
        (Line(*read, MARK, "accent"), *_nearest_figure(pose, full_length, length)),
        ToolNote("0", zero[1], outward),
        ToolNote(words, read[1], outward),
        (*busy, zero, read),
    )


def _nearest_figure(pose: Pose, full_length: float, length: float) -> Iterable[Item]:
    """The centimetre number beside a reading, light on a dark ground if the reading's line would cross it."""
    nearest = int(length / 10.0 + 0.5)
    if 0 < nearest <= full_length / 10.0 and math.fabs(length - 10.0 * nearest) < FIGURE_IS_NEAR:
        at = pose.xy(10.0 * nearest, -RULER_FIGURES)
        yield from _reversed(str(nearest), at, pose.degrees + (180.0 if stands_on_head(pose.degrees) else 0.0),
                             pose.factor)  # fmt: skip


def _across(pose: Pose, place: float) -> tuple[Point, Point]:
    """A line across the ruler at a place of its scale, a little longer than the ruler is wide."""
    return pose.xy(place, 3.0), pose.xy(place, -RULER_WIDTH - 4.0)


# Set square and compasses.


def square_corners(pose: Pose, back: float = SQUARE_BACK) -> tuple[Point, Point, Point]:
    """Return the corners of a set square with its long edge in the pose's direction, its right angle ``back`` mm behind
    the pose."""
    return pose.xy(-back, 0.0), pose.xy(SQUARE_SIDE, 0.0), pose.xy(-back, -0.6 * SQUARE_SIDE)


def square(pose: Pose, back: float) -> Group:
    """A set square in its pose."""
    shape = Shape(square_corners(pose, back), NARROW + 0.05, "accent", "tint")
    return Group((shape,), name="set-square", instrument="set-square")


def square_before(pose: Pose) -> Group:
    """The previous position of a set square, dashed like a hidden edge."""
    corners = square_corners(pose)
    sides = zip(corners, (*corners[1:], corners[0]), strict=True)
    return Group(tuple(Line(a, b, NARROW, "accent", (1.2, 1.2)) for a, b in sides), name="set-square-before")


def guide(first: Pose, last: Pose) -> Group:
    """The ruler along which the square slides: beside its short edge, from its first to its last position."""
    a, b = first.xy(-SQUARE_BACK, 8.0), last.xy(-SQUARE_BACK, 8.0)
    c, d = first.xy(-SQUARE_BACK, -0.6 * SQUARE_SIDE), last.xy(-SQUARE_BACK, -0.6 * SQUARE_SIDE)
    ends = max(((p, q) for p in (a, b, c, d) for q in (a, b, c, d)), key=lambda pair: geometry.distance(*pair))
    across = geometry.ORIGIN.moved(12.0 * first.factor, first.degrees + 180.0)
    shape = (ends[0], ends[1], ends[1].plus(across), ends[0].plus(across))
    return Group((Shape(shape, NARROW, "accent", None),), name="guide", instrument="ruler")


def square_laid(pose: Pose, before: Pose | None, back: float) -> PlacedTool:
    """A set square and, if it slides, its first position and its guide."""
    corners = square_corners(pose, back)
    busy = tuple(zip(corners, (*corners[1:], corners[0]), strict=True))
    if before is None:
        return PlacedTool((square(pose, back),), busy=busy)
    return PlacedTool((square_before(before), guide(before, pose), square(pose, back)), busy=busy)


def compasses_laid(centre: Point, met: Point, words: str) -> PlacedTool:
    """The compasses, open from a centre to the arc, and the arc."""
    radius, towards = geometry.distance(centre, met), geometry.direction(centre, met)
    middle = geometry.middle(centre, met)
    hinge = middle.moved(max(12.0, 0.45 * radius), towards + 90.0)
    legs: tuple[Item, ...] = (
        Line(centre, hinge, 1.0, "accent"), Line(hinge, met, 1.0, "accent"),
        Circle(hinge, 1.8, 0.4, "accent", "tint"), Circle(centre, 0.8, 0.0, "accent", "accent"),
    )  # fmt: skip
    return PlacedTool(
        (Group(legs, name="compasses", instrument="compasses"),),
        (Arc(centre, radius, towards - 14.0, 28.0, 0.4, "ink"),),
        (Line(centre, met, NARROW, "accent", (1.2, 1.2)),) if words else (),
        None,
        ToolNote(words, middle, towards - 90.0) if words else None,
        ((centre, hinge), (hinge, met), (centre, met), *_arc_pieces(centre, radius, towards - 14.0, 28.0)),
    )
