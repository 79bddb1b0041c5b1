"""How far each line of a drawing may be off: what its hand allows, for all that is measured of the drawing together."""

import math
from dataclasses import dataclass

from pycore import geometry
from pycore.accuracy.hand import Hand
from pycore.constructions.moves import (
    DrawParallel,
    Figure,
    Join,
    Move,
    SetOff,
    Supplement,
    TurnAngle,
    carry_out,
    deviations_of,
)
from pycore.geometry import ORIGIN, Point
from pycore.practice.marking import ACCEPT

PENCIL = 0.25
"""Standard uncertainty in mm of where the end of a pencil line is."""
DOT = 4.0
"""A line shorter than this (mm) has no direction that anybody could draw, and need not be drawn."""
ASTRAY = 15.0
"""Degrees by which an arc's other crossing is out of the way, and no slip of its radius is."""
COVERAGE_OF_ALL = (
    1.960, 2.236, 2.388, 2.491, 2.569, 2.631, 2.683, 2.727, 2.766, 2.800, 2.830, 2.858,
    2.883, 2.906, 2.928, 2.948, 2.966, 2.984, 3.000, 3.016, 3.031, 3.045, 3.058, 3.071,
)  # fmt: skip
"""Coverage factors (JCGM 100:2008): the standard deviations between which so many normal values, 1, 2, 3 ..., all lie
in 95 of 100 cases (Šidák)."""


def coverage_of(measured: int) -> float:
    """The coverage factor that keeps all of so many values within their limits in 95 of 100 drawings.

    A limit of 95 % for each length and each angle alone leaves something to look at in three of ten right drawings:
    with six lines there are some ten of them."""
    return COVERAGE_OF_ALL[min(max(measured, 1), len(COVERAGE_OF_ALL)) - 1]


def bands_of_dashed(bands: tuple[str, str], length: float, off: float, *, arc: bool) -> tuple[str, str]:
    """The bands of length and direction that count for a dashed side of this right length (mm), ``off`` by so many
    degrees. It runs on until it meets the other: only its direction is drawn, of a dot only where it ends. Of an arc
    only the radius is, but both arcs cross at another place too."""
    in_length, in_direction = bands
    if arc:
        return in_length, in_direction if math.fabs(off) > ASTRAY else ACCEPT
    return in_length if length < DOT else ACCEPT, in_direction


def length_along(moves: tuple[Move, ...], figure: Figure, line: str) -> float:
    """Length of the line that an instrument is laid along to draw ``line``; infinite if it has no ends."""
    laid = next((move.zero if isinstance(move, TurnAngle) else move.to for move in moves
                 if isinstance(move, (TurnAngle, DrawParallel)) and move.line == line), "")  # fmt: skip
    for move in moves:
        if isinstance(move, (SetOff, Join)) and move.line == laid:
            end = move.point if isinstance(move, SetOff) else move.end
            return geometry.distance(figure.points[move.start], figure.points[end])
    return math.inf


@dataclass(frozen=True, slots=True)
class AllowedByHand:
    """What a hand allows: ``coverage`` times its standard deviations, at ``factor`` mm for each unit."""

    hand: Hand
    factor: float
    coverage: float

    def line(
        self, length: float, turned: TurnAngle | None = None, *, parallel: bool = False, along: float = math.inf
    ) -> tuple[float, float]:
        """Half-widths of a line's length (mm) and direction (degrees). An angle that is ``turned`` may have been
        read at another place first, and be off by both. ``along``: length of the line that the instrument was laid
        along: the shorter, the less it tells of its direction."""
        turn = self.hand.parallel if parallel else self.hand.angle
        if turned and isinstance(turned.turn, Supplement):
            turn = math.hypot(turn, self.hand.angle)
        ends = math.hypot(_degrees(PENCIL, length), _degrees(PENCIL, along))
        return self.coverage * self.hand.length, self.coverage * math.hypot(turn, ends)

    def end(self, moves: tuple[Move, ...], done: Figure, point: str) -> tuple[float, float]:
        """The same of a point from the start, to which ``moves`` led that nobody showed: the errors of all of them are
        carried on to it. ``done``: the figure with them made exactly."""
        exact = done.points[point]
        length = geometry.distance(ORIGIN, exact)
        way = exact.times(1.0 / length) if length > 0.0 else Point(1.0, 0.0)
        along, across = PENCIL, PENCIL
        for key in deviations_of(moves):
            off = self.hand.deviation(key.partition(":")[2], self.factor)
            moved = carry_out(moves, {key: off}, exact=done).points[point].minus(exact).times(self.factor)
            along, across = math.hypot(along, geometry.dot(moved, way)), math.hypot(across, geometry.cross(way, moved))
        return self.coverage * along, self.coverage * _degrees(across, self.factor * length)


def _degrees(off: float, length: float) -> float:
    """The angle by which a line is turned whose end is off to the side; both in mm."""
    return off / max(length, 1.0) * 360.0 / math.tau
