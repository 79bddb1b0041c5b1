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
    INNER_FIGURES,
    OUTER_FIGURES,
    RADIUS,
    RULER_BEFORE_ZERO,
    RULER_WIDTH,
    WINDOW,
    Pose,
    figure,
    figure_middle,
    screen_figures,
    screen_numbers,
    stamped_figures,
    stamped_numbers,
    stamped_protractor,
    stamped_ruler,
)
from pycore.words.phrase import Phrase

SQUARE_SIDE = 80.0
SQUARE_BACK = 10.0
NARROW, MARK = 0.25, 0.5
"""Widths of a tool's edge and of its reading (units)."""
FIGURE_IS_NEAR = 2.6
"""Within this many mm of a number on the ruler, that number is shown reversed."""
BESIDE = 1.15
"""From a line to the edge of the ruler along it, mm."""
BESIDE_LINE = 2.0
"""From a line to where the leader of a reading begins, units."""
MARK_REACH = 6.6
"""How far the marks of zero and reading go into the ruler: to the end of its long graduations, short of its numbers."""
TEN_IS_NEAR = 4.0
"""Within this many degrees of a number, the line of the reading would cross it."""


@dataclass(frozen=True, slots=True)
class ToolNote:
    """Words to place beside an anchor, preferably in this direction (degrees)."""

    words: Phrase | str
    anchor: Point
    degrees: float


@dataclass(frozen=True, slots=True)
class PlacedTool:
    """A tool in place: its body, what is tinted on it, its graduation and numbers, and what lies over the drawing.

    What ``tinted``, ``known`` and ``reading`` hold tells the reading; for a class that is asked for it, ``asked``
    stands for ``known``. ``mark``: the place that is read. ``busy``: straight segments that no text may cross.
    """

    body: tuple[Item, ...] = ()
    tinted: tuple[Item, ...] = ()
    scale: tuple[Item, ...] = ()
    known: tuple[Item, ...] = ()
    asked: tuple[Item, ...] = ()
    over: tuple[Item, ...] = ()
    reading: tuple[Item, ...] = ()
    mark: Point | None = None
    zero: ToolNote | None = None
    read: ToolNote | None = None
    busy: tuple[tuple[Point, Point], ...] = ()

    @property
    def under(self) -> tuple[Item, ...]:
        """All that lies under the drawing."""
        return (*self.body, *self.tinted, *self.scale, *self.known)


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
    start, end = pose.degrees + zero, pose.degrees + zero + sweep
    swing = _swing(pose.at, 0.62 * WINDOW * f, start, sweep)
    rays = ((pose.at, pose.place(RADIUS + 6.0, zero + sweep)), (pose.at, pose.place(RADIUS, zero)))
    counts = "inner" if inner else "outer"
    return PlacedTool(
        body=(body(pose, circle=circle),),
        tinted=(sector,),
        scale=(Line(pose.at, pose.place(RADIUS, zero), 3.4 * f, "tint-2"), stamped_protractor(pose, circle=circle)),
        known=(stamped_numbers(pose, screen_numbers(f, counts), circle=circle),),
        asked=(stamped_numbers(pose, screen_numbers(f, "neither"), circle=circle),),
        over=(Circle(pose.at, 1.6, 0.4, "accent"),),
        reading=(*swing, *_ray(pose, inner, zero, sweep)),
        mark=pose.place(RADIUS, zero + sweep),
        zero=ToolNote("0°", pose.place(RADIUS + 2.0, zero), start - 50.0 * (1 if sweep > 0 else -1)),
        read=ToolNote(words, pose.place(RADIUS + 6.0, zero + sweep), end) if words else None,
        busy=(*rays, *_arc_pieces(pose.at, 0.62 * WINDOW * f, start, sweep), *_protractor_busy(pose, circle)),
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
        capitals = screen_numbers(pose.factor, "inner").inner[0]
        turn = pose.degrees + angle - 90.0
        yield from _reversed(str(ten), pose.place(own, angle), turn, capitals, pose.factor)


def _reversed(words: str, at: Point, turn: float, capitals: float, f: float) -> Iterable[Item]:
    """A number of an instrument about a place, turned, light on a dark ground."""
    wide, high = (0.4 + 0.3 * len(words)) * capitals * f, 0.72 * capitals * f
    corners = tuple(
        at.moved(wide * across, turn).moved(high * along, turn + 90.0)
        for across, along in ((1, 1), (-1, 1), (-1, -1), (1, -1))
    )
    yield Shape(corners, 0.0, "accent", "accent")
    yield figure(words, at, capitals * f, turn, "bold", "sheet")


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
    body: tuple[Item, ...] = (Shape(case, 0.0, "accent", "tint"),)
    scale: tuple[Item, ...] = (stamped_ruler(pose, full_length),)
    every = stamped_figures(pose, full_length, screen_figures(pose.factor, int(full_length)))
    if not words:
        return PlacedTool(body=body, scale=scale, known=(every,), asked=(every,), busy=busy)
    stretch = (pose.xy(0.0, 0.0), pose.xy(length, 0.0), pose.xy(length, -RULER_WIDTH), pose.xy(0.0, -RULER_WIDTH))
    zero, read = (_mark(pose, place) for place in (0.0, length))
    free = pose.degrees + 90.0
    counted = screen_figures(pose.factor, int(length / 10.0 + 0.5))
    return PlacedTool(
        body=body,
        tinted=(Shape(stretch, 0.0, "accent", "tint-2"),),
        scale=scale,
        known=(stamped_figures(pose, full_length, counted),),
        asked=(every,),
        over=(Line(*zero, MARK, "accent"),),
        reading=(Line(*read, MARK, "accent"), *_nearest_figure(pose, full_length, length)),
        mark=read[0],
        zero=ToolNote("0", zero[0].moved(BESIDE_LINE, free + 50.0), free + 50.0),
        read=ToolNote(words, read[0].moved(BESIDE_LINE, free), free),
        busy=(*busy, zero, read),
    )


def _nearest_figure(pose: Pose, full_length: float, length: float) -> Iterable[Item]:
    """The centimetre number beside a reading, light on a dark ground."""
    nearest, figures = int(length / 10.0 + 0.5), screen_figures(pose.factor, 0)
    if nearest % figures.every or math.fabs(length - 10.0 * nearest) >= FIGURE_IS_NEAR:
        return
    if 0 < nearest <= full_length / 10.0:
        middle = figure_middle(pose, nearest, figures.capitals)
        yield from _reversed(str(nearest), middle, pose.degrees, figures.capitals, pose.factor)


def _mark(pose: Pose, place: float) -> tuple[Point, Point]:
    """A mark at a place of the ruler's scale: from the line beside the ruler to the end of a long graduation."""
    return pose.xy(place, BESIDE), pose.xy(place, -MARK_REACH)


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
        return PlacedTool(scale=(square(pose, back),), busy=busy)
    return PlacedTool(scale=(square_before(before), guide(before, pose), square(pose, back)), busy=busy)


def compasses_laid(centre: Point, met: Point, words: str) -> PlacedTool:
    """The compasses, open from a centre to the arc, and the arc."""
    radius, towards = geometry.distance(centre, met), geometry.direction(centre, met)
    middle = geometry.middle(centre, met)
    hinge = middle.moved(max(12.0, 0.45 * radius), towards + 90.0)
    legs: tuple[Item, ...] = (
        Line(centre, hinge, 1.0, "accent"), Line(hinge, met, 1.0, "accent"),
        Circle(hinge, 1.8, 0.4, "accent", "tint"), Circle(centre, 0.8, 0.0, "accent", "accent"),
    )  # fmt: skip
    drawn = (Group(legs, name="compasses", instrument="compasses"),)
    arc = Arc(centre, radius, towards - 14.0, 28.0, 0.4, "ink")
    opened = (Line(centre, met, NARROW, "accent", (1.2, 1.2)),) if words else ()
    return PlacedTool(
        known=drawn,
        reading=(arc, *opened),
        read=ToolNote(words, middle, towards - 90.0) if words else None,
        busy=((centre, hinge), (hinge, met), (centre, met), *_arc_pieces(centre, radius, towards - 14.0, 28.0)),
    )
