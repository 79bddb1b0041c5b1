"""The closed set of moves, and the one function that carries them out.

A construction works in the unit of its quantity (amperes, volts); angles are in degrees, anticlockwise positive. Only
``carry_out`` calculates points. The drawing, the sentences, the positions of the instruments, the errors of a hand and
the catalogued mistakes are all derived from it. The kinds of error of each move are in ``DEVIATIONS``.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from pycore import geometry
from pycore.constructions import deviations
from pycore.constructions.roles import GIVEN
from pycore.geometry import ORIGIN, Point, Ray
from pycore.phasor import wrap


@dataclass(frozen=True, slots=True)
class Supplement:
    """An angle of 180 degrees minus an earlier reading, turned in the given sense (+1 anticlockwise, -1 clockwise)."""

    reading: str
    sense: int


@dataclass(frozen=True, slots=True)
class SumOf:
    """A length that is the sum of earlier readings."""

    readings: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Start:
    """Mark the starting point."""

    point: str


@dataclass(frozen=True, slots=True)
class Direction:
    """Draw a faint line in a chosen direction, from which angles are measured."""

    line: str
    at: str
    degrees: float


@dataclass(frozen=True, slots=True)
class TurnAngle:
    """Protractor centred on ``at``, its zero along the line ``zero`` (backwards if ``back``); mark the angle ``turn``,
    in degrees."""

    line: str
    at: str
    zero: str
    turn: float | Supplement
    back: bool = False


@dataclass(frozen=True, slots=True)
class SetOff:
    """Ruler along ``line`` from ``start`` (backwards if ``back``); mark ``length``.

    Draws the phasor with the key ``phasor``; ``copy``: it is already drawn elsewhere. ``role``: see ``roles``.
    """

    point: str
    start: str
    line: str
    length: float | SumOf
    phasor: str = ""
    copy: bool = False
    back: bool = False
    role: str = GIVEN


@dataclass(frozen=True, slots=True)
class DrawParallel:
    """Set squares: a line through the point ``through``, parallel to the line ``to``."""

    line: str
    through: str
    to: str


@dataclass(frozen=True, slots=True)
class Intersect:
    """Mark ``point`` where two lines cross."""

    point: str
    first: str
    second: str


@dataclass(frozen=True, slots=True)
class CrossArcs:
    """Compasses: arcs around two centres, each radius taken between two points. They cross in ``point``, on the side
    away from ``opposite``."""

    point: str
    first: str
    first_radius: tuple[str, str]
    second: str
    second_radius: tuple[str, str]
    opposite: str


@dataclass(frozen=True, slots=True)
class DropPerpendicular:
    """Set square: a perpendicular from ``start`` to ``line``, meeting it in ``foot``."""

    foot: str
    start: str
    line: str


@dataclass(frozen=True, slots=True)
class Join:
    """Draw a line between two points. ``role``: see ``roles``. ``phasor``: the key of an arrow. ``like``: the phasor
    that a parallel copies."""

    line: str
    start: str
    end: str
    role: str
    phasor: str = ""
    like: str = ""


@dataclass(frozen=True, slots=True)
class ReadLength:
    """Ruler between two points; along ``line`` the reading is signed."""

    reading: str
    start: str
    end: str
    line: str = ""


@dataclass(frozen=True, slots=True)
class ReadAngle:
    """Protractor centred on ``at``: the size of the angle between two lines."""

    reading: str
    at: str
    first: str
    second: str


Move = (
    Start
    | Direction
    | TurnAngle
    | SetOff
    | DrawParallel
    | Intersect
    | CrossArcs
    | DropPerpendicular
    | Join
    | ReadLength
    | ReadAngle
)

DEVIATIONS: dict[type, tuple[str, ...]] = {
    TurnAngle: (deviations.ANGLE,),
    SetOff: (deviations.LENGTH,),
    DrawParallel: (deviations.PARALLEL,),
    CrossArcs: deviations.LENGTHS,
    DropPerpendicular: (deviations.PARALLEL,),
    ReadLength: (deviations.LENGTH,),
    ReadAngle: (deviations.ANGLE,),
}
"""The errors that a hand can make in each kind of move; the key of a deviation is ``<index>:<kind>``."""


@dataclass(slots=True)
class _Board:
    """What is drawn so far while moves are carried out."""

    points: dict[str, Point] = field(default_factory=dict)
    lines: dict[str, Ray] = field(default_factory=dict)
    readings: dict[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Figure:
    """All points, lines and readings of a construction."""

    points: Mapping[str, Point]
    lines: Mapping[str, Ray]
    readings: Mapping[str, float]


class ConstructionError(ValueError):
    """Raised if a move is impossible: parallel lines do not meet, or arcs miss each other."""


def turn_of(move: TurnAngle, readings: Mapping[str, float]) -> float:
    """Return the signed angle in degrees that a protractor move marks."""
    if isinstance(move.turn, Supplement):
        return move.turn.sense * (180.0 - readings[move.turn.reading])
    return move.turn


def zero_of(move: TurnAngle, lines: Mapping[str, Ray]) -> float:
    """Return the direction of the protractor's zero, in degrees."""
    return lines[move.zero].degrees + (180.0 if move.back else 0.0)


def length_of(move: SetOff, readings: Mapping[str, float]) -> float:
    """Return the length that a ruler move marks (negative: backwards along the line)."""
    if isinstance(move.length, SumOf):
        return math.fsum(readings[name] for name in move.length.readings)
    return move.length


def _set_off(board: _Board, move: SetOff, deviation: Mapping[str, float]) -> None:
    length = length_of(move, board.readings) + deviation.get(deviations.LENGTH, 0.0)
    start = board.points[move.start]
    degrees = board.lines[move.line].degrees
    board.points[move.point] = start.moved(-length if move.back else length, degrees)


def _turn(board: _Board, move: TurnAngle, deviation: Mapping[str, float]) -> None:
    degrees = zero_of(move, board.lines) + turn_of(move, board.readings)
    at = board.points[move.at]
    board.lines[move.line] = Ray(at, wrap(degrees + deviation.get(deviations.ANGLE, 0.0)))


def _parallel(board: _Board, move: DrawParallel, deviation: Mapping[str, float]) -> None:
    degrees = board.lines[move.to].degrees + deviation.get(deviations.PARALLEL, 0.0)
    board.lines[move.line] = Ray(board.points[move.through], degrees)


def _intersect(board: _Board, move: Intersect, _deviation: Mapping[str, float]) -> None:
    met = geometry.intersection(board.lines[move.first], board.lines[move.second])
    if met is None:
        raise ConstructionError(f"{move.first} and {move.second} do not meet")
    board.points[move.point] = met


def _cross_arcs(board: _Board, move: CrossArcs, deviation: Mapping[str, float]) -> None:
    points = board.points
    first, second = points[move.first], points[move.second]
    opposite = points[move.opposite]
    radius = geometry.distance(*(points[name] for name in move.first_radius))
    other = geometry.distance(*(points[name] for name in move.second_radius))
    met = geometry.circles_meet(
        first,
        radius + deviation.get(deviations.LENGTH, 0.0),
        second,
        other + deviation.get(deviations.SECOND_LENGTH, 0.0),
        first.plus(second).minus(opposite),
    )
    if met is None:
        raise ConstructionError(f"the arcs round {move.first} and {move.second} do not cross")
    points[move.point] = met


def _drop(board: _Board, move: DropPerpendicular, deviation: Mapping[str, float]) -> None:
    line, start = board.lines[move.line], board.points[move.start]
    slope = deviation.get(deviations.PARALLEL, 0.0)
    if slope == 0.0:
        board.points[move.foot] = geometry.foot(start, line)
        return
    dropped = geometry.intersection(Ray(start, line.degrees + 90.0 + slope), line)
    if dropped is None:
        raise ConstructionError(f"the perpendicular from {move.start} misses {move.line}")
    board.points[move.foot] = dropped


def _join(board: _Board, move: Join, _deviation: Mapping[str, float]) -> None:
    start, end = board.points[move.start], board.points[move.end]
    board.lines[move.line] = Ray(start, geometry.direction(start, end))


def _read_length(board: _Board, move: ReadLength, deviation: Mapping[str, float]) -> None:
    start, end = board.points[move.start], board.points[move.end]
    if move.line:
        unit = ORIGIN.moved(1.0, board.lines[move.line].degrees)
        length = geometry.dot(end.minus(start), unit)
    else:
        length = geometry.distance(start, end)
    board.readings[move.reading] = length + deviation.get(deviations.LENGTH, 0.0)


def _read_angle(board: _Board, move: ReadAngle, deviation: Mapping[str, float]) -> None:
    between = wrap(board.lines[move.second].degrees - board.lines[move.first].degrees)
    size = -between if between < 0 else between
    board.readings[move.reading] = size + deviation.get(deviations.ANGLE, 0.0)


def _start(board: _Board, move: Start, _deviation: Mapping[str, float]) -> None:
    board.points[move.point] = ORIGIN


def _direct(board: _Board, move: Direction, _deviation: Mapping[str, float]) -> None:
    board.lines[move.line] = Ray(board.points[move.at], move.degrees)


_MAKERS: dict[type, Callable[[_Board, Any, Mapping[str, float]], None]] = {
    Start: _start,
    Direction: _direct,
    TurnAngle: _turn,
    SetOff: _set_off,
    DrawParallel: _parallel,
    Intersect: _intersect,
    CrossArcs: _cross_arcs,
    DropPerpendicular: _drop,
    Join: _join,
    ReadLength: _read_length,
    ReadAngle: _read_angle,
}
_NONE: Mapping[str, float] = {}


def _taken_up(moves: tuple[Move, ...], first: int) -> int:
    """The move from which all is made anew, so that none after ``first`` reads a line that a later one has drawn over:
    a line set off along is joined to its end afterwards, where a line of no length points elsewhere."""
    drawn: dict[str, int] = {}
    for place, move in enumerate(moves):
        line = "" if isinstance(move, SetOff | ReadLength | DropPerpendicular) else getattr(move, "line", "")
        if line and drawn.setdefault(line, place) < first <= place:
            return _taken_up(moves, drawn[line])
    return first


def carry_out(
    moves: tuple[Move, ...], deviations: Mapping[str, float] | None = None, exact: Figure | None = None
) -> Figure:
    """Carry out a construction, exactly or with the errors of a hand.

    ``deviations`` maps ``<index of the move>:<kind>`` to degrees or to the quantity's unit. ``exact``: the figure of
    the same moves without deviations; everything before the first deviation is taken from it. Raises ConstructionError
    if lines or arcs do not meet.
    """
    by_move: dict[int, dict[str, float]] = {}
    for key, amount in (deviations or {}).items():
        index, _, name = key.partition(":")
        by_move.setdefault(int(index), {})[name] = amount
    board, first = _Board(), 0
    if exact is not None:
        # What later moves drew lies on the board too: each makes its own anew before anything reads it.
        board = _Board(dict(exact.points), dict(exact.lines), dict(exact.readings))
        first = _taken_up(moves, min(by_move, default=len(moves)))
    for place in range(first, len(moves)):
        move = moves[place]
        _MAKERS[type(move)](board, move, by_move.get(place, _NONE))
    return Figure(board.points, board.lines, board.readings)


def deviations_of(moves: tuple[Move, ...]) -> tuple[str, ...]:
    """Return the keys of all errors that a hand can make in a construction."""
    return tuple(
        f"{index}:{name}"
        for index, move in enumerate(moves)
        for name in DEVIATIONS.get(type(move), ())
    )
