"""What a drawing on axes says of an arrow by its sum: the result less the other arrows.

A learner adds what was read at the feet of the perpendiculars, so the sum is taken from there: a perpendicular that is
half a degree off moves its foot by a millimetre, and the point above it not at all.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pycore import geometry
from pycore.constructions.construction import Construction
from pycore.constructions.moves import DropPerpendicular
from pycore.constructions.names import AXIS_UP
from pycore.geometry import ORIGIN, Point
from pycore.practice.strokes import BEYOND, OUT, PencilStroke, StrokeSheet

AXIAL = 0.06
"""Sine of the largest angle between an axis and a stroke along it or across it."""
PASSES = 1.2
"""How near a perpendicular passes to its point, mm."""
SUMMED, SKEW, BESIDE_AXIS = 0.8, 0.011, 12.0
"""Standard error of such a sum that is read at feet, mm (measured on made-up drawings); of the direction of a
perpendicular, as a sine; so near an axis a point needs no foot, mm."""

OVER_ARROW, NOTHING = 3.0, 1e-9
"""A perpendicular that ends nearer the start (mm) lies over an arrow along an axis: nobody draws it; a length of none,
in the construction's unit."""


def is_axial(stroke: PencilStroke) -> bool:
    """Whether a stroke runs across the paper or up it."""
    return min(math.fabs(stroke.way.x), math.fabs(stroke.way.y)) < AXIAL


@dataclass(frozen=True, slots=True)
class Measured:
    """A length along an axis as it was read on the paper, and its standard error by the perpendicular, mm."""

    value: float
    error: float


@dataclass(frozen=True, slots=True)
class Said:
    """Where the sum says that a point is, and the standard errors across the paper and up it, mm."""

    place: Point
    across: float
    up: float

    def error(self, way: Point) -> float:
        """The standard error along a way (unit), mm."""
        return math.hypot(way.x * self.across, way.y * self.up)


def read_at_feet(sheet: StrokeSheet, place: Point) -> tuple[Measured, Measured]:
    """How far across the paper and up it from the start a point was read, where its perpendiculars meet the axes."""
    return _at_foot(sheet, place, up=False), _at_foot(sheet, place, up=True)


def _at_foot(sheet: StrokeSheet, place: Point, *, up: bool) -> Measured:
    step = place.minus(sheet.origin)
    value, aside = (step.y, math.fabs(step.x)) if up else (step.x, math.fabs(step.y))
    if aside < BESIDE_AXIS:
        return Measured(value, 0.0)
    longest, found = 0.0, Measured(value, SKEW * aside)
    for drop in sheet.others:
        if not is_axial(drop) or (math.fabs(drop.way.x) > 0.5) != up or math.fabs(drop.across(place)) > PASSES:
            continue
        start = sheet.origin.minus(drop.start)
        foot = drop.at(start.x / drop.way.x if up else start.y / drop.way.y)
        if drop.beyond(foot) < BEYOND and drop.beyond(place) < OUT and drop.length > longest:
            off = foot.minus(sheet.origin)
            longest, found = drop.length, Measured(off.y if up else off.x, 0.0)
    return found


def drawn_feet(sheet: StrokeSheet, right: Construction, places: Mapping[str, Point]) -> dict[str, Point]:
    """Where the perpendiculars of a construction on axes were drawn to, from the places of its points (mm); those that
    are not seen are left out. An arrow that belongs along an axis, and lies there, counts nothing along the other."""
    feet: dict[str, Point] = {}
    for move in right.moves:
        if not isinstance(move, DropPerpendicular) or move.start not in places:
            continue
        up = move.line == AXIS_UP
        read = _at_foot(sheet, places[move.start], up=up)
        is_over = geometry.distance(right.figure.points[move.foot], ORIGIN) < NOTHING
        if is_over and math.fabs(read.value) < OVER_ARROW:
            feet[move.foot] = sheet.origin
        elif read.error == 0.0:
            feet[move.foot] = sheet.origin.plus(Point(0.0, read.value) if up else Point(read.value, 0.0))
    return feet


Read = tuple[Measured, Measured]


def said_by_sum(sheet: StrokeSheet, plus: Sequence[Read], minus: Sequence[Read]) -> Said:
    """Where a point is that is the sum of some less others: the components of a sum are the sums of the components."""
    across, up = (
        math.fsum(one[axis].value for one in plus) - math.fsum(one[axis].value for one in minus) for axis in (0, 1)
    )
    errors = (math.hypot(SUMMED, *(one[axis].error for one in (*plus, *minus))) for axis in (0, 1))
    return Said(sheet.origin.plus(Point(across, up)), *errors)
