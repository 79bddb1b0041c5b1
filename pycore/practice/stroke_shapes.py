"""Shapes among the strokes of a sheet: parallelograms chained to one another, chains of strokes that close on the
start. Every point is where two strokes cross; ends of lone strokes stand in where none does.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from pycore import geometry
from pycore.geometry import Point
from pycore.practice.strokes import CLEAR_HEAD, OUT, PencilStroke, StrokeSheet, crossing

MOST = 60
"""So many shapes are looked at more closely."""
Pair = tuple[PencilStroke, PencilStroke]


@dataclass(frozen=True)
class Shape:
    """Points by name, the strokes that cross in each, the ways that are drawn, what it counts (mm), the indices of the
    strokes from the start that it uses, and the points that are ends of lone strokes: whether an arrowhead agrees."""

    kind: str
    points: dict[str, Point]
    corners: dict[str, Pair]
    ways: tuple[tuple[Point, Point], ...]
    score: float
    used: frozenset[int]
    lone: dict[str, bool]

    @property
    def length(self) -> float:
        """All ways together, mm."""
        return math.fsum(geometry.distance(one, other) for one, other in self.ways)


@dataclass(frozen=True, slots=True)
class _Quad:
    """A parallelogram: two strokes that leave the start, two sides from them to a corner, the diagonal's index."""

    score: float
    first: int
    a: Point
    second: int
    b: Point
    diagonal: int | None
    corner: Point
    sides: Pair


def ranked(sheet: StrokeSheet, shapes: Sequence[Shape]) -> list[Shape]:
    """The best shapes, less what they leave unexplained, the best first."""
    best = sorted(shapes, key=lambda shape: -shape.score)[:MOST]
    less = [_lessened(shape, sheet.unexplained(shape.ways)[0]) for shape in best]
    return sorted(less, key=lambda shape: -shape.score)


def _lessened(shape: Shape, lost: float) -> Shape:
    return Shape(shape.kind, shape.points, shape.corners, shape.ways, shape.score - lost, shape.used, shape.lone)


def arm_worth(sheet: StrokeSheet, index: int, tip: Point) -> float:
    """What an arrow from the start to a tip counts; a stroke that runs on far beyond is another one."""
    ray = sheet.leaving[index]
    over = max(0.0, ray.end - geometry.distance(sheet.origin, tip))
    return sheet.worth(ray.stroke, sheet.origin, tip, solid=True) - (0.15 * over if over < 32.0 else 0.5 * over)


# Parallelograms.


def _quads(sheet: StrokeSheet) -> list[_Quad]:
    sides = [(stroke, sheet.attached(stroke)) for stroke in sheet.others]
    found: list[_Quad] = []
    for (one, at_one), (other, at_other) in combinations([side for side in sides if side[1]], 2):
        corner = crossing(one, other)
        if corner is None or one.beyond(corner) > OUT or other.beyond(corner) > OUT:
            continue
        if geometry.distance(corner, sheet.origin) < 4.0:
            continue
        found += _quads_at(sheet, corner, (one, at_one), (other, at_other))
    return sorted(found, key=lambda quad: -quad.score)[:MOST]


def _through(sheet: StrokeSheet, corner: Point) -> list[int | None]:
    """The strokes from the start that pass through a corner, or None."""
    found: list[int | None] = [
        index for index, ray in enumerate(sheet.leaving)
        if math.fabs(geometry.cross(ray.way, corner.minus(sheet.origin))) < 2.5
        and 4.0 < ray.distance(sheet.origin, corner) < ray.end + OUT
    ]  # fmt: skip
    return found or [None]


def _quads_at(
    sheet: StrokeSheet, corner: Point, one: tuple[PencilStroke, list[tuple[int, Point]]],
    other: tuple[PencilStroke, list[tuple[int, Point]]],
) -> Iterator[_Quad]:  # fmt: skip
    origin = sheet.origin
    for first, a in one[1]:
        if geometry.distance(corner, a) < 6.0 or sheet.covered(one[0], a, corner)[0] < 0.2:
            continue
        side = sheet.worth(one[0], a, corner, solid=False)
        for second, b in other[1]:
            if second == first or geometry.distance(corner, b) < 6.0 or sheet.covered(other[0], b, corner)[0] < 0.2:
                continue
            whole = side + sheet.worth(other[0], b, corner, solid=False)
            miss = geometry.distance(corner, a.plus(b).minus(origin))
            for diagonal in _through(sheet, corner):
                if diagonal in (first, second):
                    continue
                along = -0.25 * geometry.distance(corner, origin) if diagonal is None else (
                    sheet.worth(sheet.leaving[diagonal].stroke, origin, corner, solid=True)
                )
                score = whole + along - 0.3 * max(0.0, miss - 3.0)
                yield _Quad(score, first, a, second, b, diagonal, corner, (one[0], other[0]))


def _shared(stroke: PencilStroke, one: tuple[Point, Point], other: tuple[Point, Point]) -> float:
    """How many mm two ways on one stroke share: they are not counted twice."""
    (a, b), (c, d) = (sorted(stroke.along(place) for place in way) for way in (one, other))
    return max(0.0, min(b, d) - max(a, c))


def parallelograms(sheet: StrokeSheet, count: int) -> list[Shape]:
    """Shapes of one parallelogram (points A, B, R), and for three arms of two (C and N too)."""
    quads, shapes = _quads(sheet), []
    rays = sheet.leaving
    for quad in quads:
        base = quad.score + arm_worth(sheet, quad.first, quad.a) + arm_worth(sheet, quad.second, quad.b)
        corners = {"A": (rays[quad.first].stroke, quad.sides[0]), "B": (rays[quad.second].stroke, quad.sides[1]),
                   "R": quad.sides}  # fmt: skip
        points = {"A": quad.a, "B": quad.b, "R": quad.corner}
        o = sheet.origin
        ways = ((o, quad.a), (o, quad.b), (quad.a, quad.corner), (quad.b, quad.corner), (o, quad.corner))
        used = frozenset(k for k in (quad.first, quad.second, quad.diagonal) if k is not None)
        shapes.append(Shape("one", points, corners, ways, base, used, {}))
        if count == 3 and quad.diagonal is not None:
            shapes += _chained(sheet, quad, quads, Shape("two", points, corners, ways, base, used, {}))
    return ranked(sheet, shapes)


def _chained(sheet: StrokeSheet, quad: _Quad, quads: Sequence[_Quad], base: Shape) -> Iterator[Shape]:
    """A second parallelogram on the diagonal of the first."""
    o = sheet.origin
    for second in quads:
        either = ((second.first, second.a, second.sides[0], second.second, second.b, second.sides[1]),
                  (second.second, second.b, second.sides[1], second.first, second.a, second.sides[0]))  # fmt: skip
        for one, foot, near_side, three, tip, far_side in either:
            if one != quad.diagonal or math.fabs(near_side.across(quad.corner)) > 1.7:
                continue
            if geometry.distance(foot, quad.corner) > 8.0:
                continue
            if three in (quad.first, quad.second) or second.diagonal in (quad.first, quad.second):
                continue
            end = second.corner
            twice = math.fsum(
                _shared(stroke, (start, quad.corner), (begin, end))
                for stroke, start in zip(quad.sides, (quad.a, quad.b), strict=True)
                for again, begin in ((near_side, quad.corner), (far_side, tip)) if again is stroke
            )  # fmt: skip
            used = base.used | {k for k in (three, second.diagonal) if k is not None}
            yield Shape(
                "two", {**base.points, "C": tip, "N": end},
                {**base.corners, "C": (sheet.leaving[three].stroke, far_side), "N": second.sides},
                (*base.ways, (quad.corner, end), (tip, end), (o, tip), (o, end)),
                base.score + second.score + arm_worth(sheet, three, tip) - twice, frozenset(used), {},
            )  # fmt: skip


# Tip to tail.

BEGUN_AT_START, OPEN_CHAIN = "begun at start", 12.0
"""A chain whose third arrow begins at the start, and what it counts less because it does not close, mm."""
RARELY_FOLDED = 12.0
"""What a chain counts less whose last arrow lies back along the second, mm: few sheets have one. Half of it where an
arrowhead is at the far end."""
ASIDE, HEAD_AT_END = 1.8, 1.6
"""How near a stroke passes to the tip that it leaves, and an arrowhead is to the end that it agrees with, mm."""


def chains(sheet: StrokeSheet, count: int) -> list[Shape]:
    """Chains of ``count`` or ``count`` - 1 strokes from the start that close on it: points 1, 2 ... in their order."""
    shapes: list[Shape] = []
    for links in sorted({count, max(2, count - 1)}):
        if links == 2:
            shapes += _triangles(sheet)
        elif links == 3:
            shapes += _loops(sheet)
    if count == 3:
        shapes += _begun_at_start(sheet)
        shapes += _folded_back(sheet)
    return ranked(sheet, shapes)


def _begun_at_start(sheet: StrokeSheet) -> Iterator[Shape]:
    """Two arrows tip to tail, and a third that begins at the start again: the ends of both are lone arrowheads."""
    o, rays = sheet.origin, sheet.leaving
    for stroke in sheet.others:
        for first, a in sheet.attached(stroke):
            far = max((stroke.start, stroke.end), key=lambda end: geometry.distance(end, a))
            head = stroke.head_off(far)
            if geometry.distance(a, far) < 10.0 or head is None or head > 1.6:
                continue
            base = sheet.worth(stroke, a, far, solid=True) + arm_worth(sheet, first, a) - OPEN_CHAIN
            for third, ray in enumerate(rays):
                tip, agreed = sheet.tip(ray)
                if third == first or not agreed:
                    continue
                yield Shape(
                    BEGUN_AT_START, {"1": a, "2": far, "3": tip},
                    {"1": (rays[first].stroke, stroke), "2": (stroke, stroke), "3": (ray.stroke, ray.stroke)},
                    ((o, a), (a, far), (o, tip)), base + arm_worth(sheet, third, tip), frozenset((first, third)),
                    {"2": True, "3": True},
                )  # fmt: skip


def _folded_back(sheet: StrokeSheet) -> Iterator[Shape]:
    """Three arrows of which the last lies back along the second, too flat to cross it: both are found as one stroke, or
    as two that leave the second's tip. That is a lone end."""
    o, rays = sheet.origin, sheet.leaving
    pairs = [(stroke, back) for stroke in sheet.others for back in sheet.others
             if back is stroke or crossing(stroke, back) is None]  # fmt: skip
    for stroke, back in pairs:
        ways = [(one, other, sense) for one in sheet.attached(stroke) for other in sheet.attached(back)
                for sense in (1, -1)]  # fmt: skip
        for (first, a), (second, b), sense in ways:
            far, agreed = _far_end(stroke, sense)
            long, short = (geometry.distance(place, far) for place in (a, b))
            if first == second or long < 10.0 or short < 6.0 or geometry.distance(a, b) < 6.0:
                continue
            if math.fabs(back.across(far)) > ASIDE or back.beyond(far) > OUT:
                continue
            if geometry.dot(a.minus(far), b.minus(far)) < 0.0:
                continue
            score = sheet.worth(stroke, a, far, solid=True) + arm_worth(sheet, first, a) + arm_worth(sheet, second, b)
            score -= RARELY_FOLDED * (0.5 if agreed else 1.0)
            score += max(0.0, short - long) if back is stroke else sheet.worth(back, far, b, solid=True)
            yield Shape(
                "folded back", {"1": a, "2": far, "3": b},
                {"1": (rays[first].stroke, stroke), "2": (stroke, stroke), "3": (back, rays[second].stroke)},
                ((o, a), (a, far), (far, b), (o, b)), score, frozenset((first, second)), {"2": agreed},
            )  # fmt: skip


def _far_end(stroke: PencilStroke, sense: int) -> tuple[Point, bool]:
    """Where a stroke ends on one side (1: its last end), by its arrowhead if there is one, and whether both agree."""
    end = stroke.length if sense > 0 else 0.0
    heads = [at for at, way, clear in stroke.heads
             if way == sense and clear > CLEAR_HEAD and math.fabs(at - end) < OUT]  # fmt: skip
    if not heads:
        return stroke.at(end), False
    head = min(heads, key=lambda at: math.fabs(at - end))
    agreed = math.fabs(head - end) < HEAD_AT_END
    return stroke.at((head + end) / 2.0 if agreed else head), agreed


def _triangles(sheet: StrokeSheet) -> Iterator[Shape]:
    o, rays = sheet.origin, sheet.leaving
    for stroke in sheet.others:
        for (first, a), (second, b) in combinations(sheet.attached(stroke), 2):
            if geometry.distance(a, b) < 6.0 or sheet.covered(stroke, a, b)[0] < 0.25:
                continue
            beyond = max(0.0, stroke.length - geometry.distance(a, b))
            score = sheet.worth(stroke, a, b, solid=True) + arm_worth(sheet, first, a) + arm_worth(sheet, second, b)
            yield Shape(
                "triangle", {"1": a, "2": b}, {"1": (rays[first].stroke, stroke), "2": (rays[second].stroke, stroke)},
                ((o, a), (a, b), (o, b)), score - 0.15 * beyond, frozenset((first, second)), {},
            )  # fmt: skip


def _loops(sheet: StrokeSheet) -> Iterator[Shape]:
    o, rays = sheet.origin, sheet.leaving
    for one, other in combinations(sheet.others, 2):
        at_one, at_other = sheet.attached(one), sheet.attached(other)
        met = crossing(one, other) if at_one and at_other else None
        if met is None or one.beyond(met) > OUT or other.beyond(met) > OUT:
            continue
        for first, a in at_one:
            if geometry.distance(a, met) < 6.0 or sheet.covered(one, a, met)[0] < 0.25:
                continue
            for second, b in at_other:
                if second == first or geometry.distance(b, met) < 6.0 or sheet.covered(other, b, met)[0] < 0.25:
                    continue
                beyond = max(0.0, one.length - geometry.distance(a, met)) + max(
                    0.0, other.length - geometry.distance(b, met)
                )
                score = (
                    sheet.worth(one, a, met, solid=True) + sheet.worth(other, b, met, solid=True)
                    + arm_worth(sheet, first, a) + arm_worth(sheet, second, b) - 0.15 * beyond
                )  # fmt: skip
                yield Shape(
                    "loop", {"1": a, "2": met, "3": b},
                    {"1": (rays[first].stroke, one), "2": (one, other), "3": (rays[second].stroke, other)},
                    ((o, a), (a, met), (met, b), (o, b)), score, frozenset((first, second)), {},
                )  # fmt: skip
