"""A construction as somebody drew it: each move carried out from the points and lines that they drew before."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pycore import geometry
from pycore.constructions.moves import (
    ConstructionError,
    CrossArcs,
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
    """One point of a construction that somebody drew: the move that makes it, where it should be going by
    what was drawn before it, and all that was drawn till then (this move made rightly)."""

    index: int
    expected: Point
    so_far: Figure


def _leading(move: SetOff | Intersect | CrossArcs | Start) -> tuple[str, ...]:
    """The lines that a point ends."""
    if isinstance(move, SetOff):
        return (move.line,)
    return (move.first, move.second) if isinstance(move, Intersect) else ()


def _as_drawn(so_far: Figure, move: SetOff | Intersect | CrossArcs | Start, place: Point) -> Figure:
    """The figure with a point where somebody drew it, and the lines that lead to it."""
    lines = dict(so_far.lines)
    for line in _leading(move):
        start = so_far.points[move.start] if isinstance(move, SetOff) else lines[line].start
        if start != place:
            lines[line] = Ray(start, geometry.direction(start, place))
    return Figure({**so_far.points, move.point: place}, lines, so_far.readings)


def retrace(moves: tuple[Move, ...], drawn: Mapping[str, Point]) -> Iterator[RetracedPoint]:
    """Carry out a construction over the points that somebody drew, in the construction's own unit and as it
    counts angles. Ends early where their lines do not meet."""
    so_far = Figure({}, {}, {})
    for index, move in enumerate(moves):
        try:
            # Made on top of what is drawn already, exactly.
            so_far = carry_out((move,), _NOTHING_OFF, exact=so_far)
        except ConstructionError:
            return
        if isinstance(move, SetOff | Intersect | CrossArcs | Start) and move.point in drawn:
            yield RetracedPoint(index, so_far.points[move.point], so_far)
            so_far = _as_drawn(so_far, move, drawn[move.point])
