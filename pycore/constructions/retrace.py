"""A construction with the points that somebody drew: each move is carried out from the points and lines drawn before.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pycore import geometry
from pycore.constructions.moves import (
    ConstructionError,
    CrossArcs,
    DropPerpendicular,
    Figure,
    Intersect,
    Move,
    SetOff,
    Start,
    carry_out,
)
from pycore.geometry import Point, Ray

_NOTHING_OFF = {"0:": 0.0}


@dataclass(frozen=True, slots=True)
class RetracedPoint:
    """One drawn point: the move that makes it, where it should be by what was drawn before it and the figure up to it
    with this move done correctly. ``crossing``: whether the lines cross that should do so in it; where they do not,
    nobody knows where it should be."""

    index: int
    expected: Point
    so_far: Figure
    crossing: bool = True


def _leading(move: SetOff | Intersect | CrossArcs | Start) -> tuple[str, ...]:
    """Return the lines that end in a point."""
    if isinstance(move, SetOff):
        return (move.line,)
    return (move.first, move.second) if isinstance(move, Intersect) else ()


def _as_drawn(so_far: Figure, move: SetOff | Intersect | CrossArcs | Start, place: Point) -> Figure:
    """Return the figure with a point at its drawn place, and the lines that lead to it."""
    lines = dict(so_far.lines)
    for line in _leading(move):
        start = so_far.points[move.start] if isinstance(move, SetOff) else lines[line].start
        if start != place:
            lines[line] = Ray(start, geometry.direction(start, place))
    return Figure({**so_far.points, move.point: place}, lines, so_far.readings)


def _with_foot(so_far: Figure, move: Move, drawn: Mapping[str, Point]) -> Figure:
    """Return the figure with the foot of a perpendicular where it was drawn, if it was."""
    if isinstance(move, DropPerpendicular) and move.foot in drawn:
        return Figure({**so_far.points, move.foot: drawn[move.foot]}, so_far.lines, so_far.readings)
    return so_far


def retrace(moves: tuple[Move, ...], drawn: Mapping[str, Point]) -> Iterator[RetracedPoint]:
    """Carry out a construction with the points that somebody drew, in the construction's own unit and angles. Ends
    early where lines do not meet, and nothing is drawn where they should."""
    so_far = Figure({}, {}, {})
    for index, move in enumerate(moves):
        try:
            # Made on top of what is drawn already, exactly.
            so_far = carry_out((move,), _NOTHING_OFF, exact=so_far)
        except ConstructionError:
            if not isinstance(move, Intersect | CrossArcs) or move.point not in drawn:
                return
            yield RetracedPoint(index, drawn[move.point], so_far, crossing=False)
            so_far = _as_drawn(so_far, move, drawn[move.point])
            continue
        so_far = _with_foot(so_far, move, drawn)
        if isinstance(move, SetOff | Intersect | CrossArcs | Start) and move.point in drawn:
            yield RetracedPoint(index, so_far.points[move.point], so_far)
            so_far = _as_drawn(so_far, move, drawn[move.point])


def continued(moves: tuple[Move, ...], drawn: Mapping[str, Point]) -> Figure:
    """Return the figure with the points that somebody drew where they are, and all that follows from them carried out
    exactly; it ends where lines do not meet."""
    so_far = Figure({}, {}, {})
    for move in moves:
        try:
            so_far = carry_out((move,), _NOTHING_OFF, exact=so_far)
        except ConstructionError:
            if not isinstance(move, Intersect | CrossArcs) or move.point not in drawn:
                return so_far
        so_far = _with_foot(so_far, move, drawn)
        if isinstance(move, SetOff | Intersect | CrossArcs | Start) and move.point in drawn:
            so_far = _as_drawn(so_far, move, drawn[move.point])
    return so_far
