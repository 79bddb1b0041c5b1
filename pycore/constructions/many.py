"""The moves of a construction carried out for many drawings at once.

The arithmetic is that of ``moves.carry_out``, over columns of numbers with one entry for each drawing, and gives the
same bits (held by a test). Move by move, a sample of 800 drawings takes a quarter of the time. Units and angles as in
``moves``.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from pycore import geometry, trig
from pycore.constructions import deviations
from pycore.constructions.moves import (
    DEVIATIONS,
    CrossArcs,
    Direction,
    DrawParallel,
    DropPerpendicular,
    Intersect,
    Join,
    Move,
    ReadAngle,
    ReadLength,
    SetOff,
    Start,
    SumOf,
    Supplement,
    TurnAngle,
)
from pycore.geometry import Point

Column = list[float]
"""One number for each drawing."""
Places = tuple[Column, Column]
"""One point in each drawing: across, up."""
Deviations = Mapping[str, Column]
NOTHING: Mapping[int, Column] = {}


@dataclass(slots=True)
class _LineSet:
    """A line in each drawing; its direction is calculated only when it is needed."""

    start: Places
    turned: Column | None = None
    end: Places | None = None
    heading: Places | None = None

    def degrees(self) -> Column:
        """The direction in each drawing, degrees."""
        if self.turned is None:
            (x, y), (to_x, to_y) = self.start, self.end or self.start
            across = [end - start for start, end in zip(x, to_x, strict=True)]
            up = [end - start for start, end in zip(y, to_y, strict=True)]
            self.turned = trig.angles(across, up)
        return self.turned

    def along(self) -> Places:
        """Cosine and sine of each direction."""
        if self.heading is None:
            self.heading = trig.directions(self.degrees())
        return self.heading


@dataclass(slots=True)
class DrawingBatch:
    """The points and lines of many drawings, and which drawings failed because lines or arcs do not meet."""

    count: int
    points: dict[str, Places] = field(default_factory=dict)
    lines: dict[str, _LineSet] = field(default_factory=dict)
    readings: dict[str, Column] = field(default_factory=dict)
    lost: set[int] = field(default_factory=set)
    instead: Column | None = None

    def of_valid(self, column: Column) -> Column:
        """Return the values of the drawings that did not fail."""
        return [number for place, number in enumerate(column) if place not in self.lost] if self.lost else column


def carry_out_many(
    moves: tuple[Move, ...], deviations: Deviations, count: int, instead: Mapping[int, Column] = NOTHING
) -> DrawingBatch:
    """Carry out a construction ``count`` times. ``deviations`` has a column for each key of ``moves.carry_out``.

    ``instead``: by index of a move, the turn in degrees or the length that each drawing uses in place of the exact one
    (a negative length: backwards along the line).
    """
    many = DrawingBatch(count)
    for place, move in enumerate(moves):
        many.instead = instead.get(place)
        slips = {name: deviations.get(f"{place}:{name}") for name in DEVIATIONS.get(type(move), ())}
        _MAKERS[type(move)](many, move, slips)
    return many


def crossing_columns(moves: tuple[Move, ...], many: DrawingBatch) -> list[Column]:
    """Return the acute angle of each crossing as a column, as ``construction.crossing_angles`` does; undefined for
    failed drawings."""
    columns: list[Column] = []
    for move in moves:
        if isinstance(move, Intersect):
            first, second = many.lines[move.first].degrees(), many.lines[move.second].degrees()
        elif isinstance(move, CrossArcs):
            met = many.points[move.point]
            first, second = (_LineSet(many.points[name], end=met).degrees() for name in (move.first, move.second))
        else:
            continue
        between = _wrapped([one - other for one, other in zip(first, second, strict=True)])
        sizes = [math.fabs(angle) for angle in between]
        columns.append([min(size, 180.0 - size) for size in sizes])
    return columns


Slips = Mapping[str, Column | None]
"""The columns of one move's deviations by name, None where it has none."""


def _added(column: Column, slips: Column | None) -> Column:
    return column if slips is None else [number + slip for number, slip in zip(column, slips, strict=True)]


def _wrapped(column: Column) -> Column:
    """Return equivalent angles with -180 < angle <= 180, as ``phasor.wrap``, which is written out here."""
    return [
        angle - 360.0 if angle > 180.0 else angle + 360.0 if angle <= -180.0 else angle
        for angle in [math.fmod(degrees, 360.0) for degrees in column]
    ]


def _set_off(many: DrawingBatch, move: SetOff, slips: Slips) -> None:
    if isinstance(move.length, SumOf):
        readings = [many.readings[name] for name in move.length.readings]
        lengths = [math.fsum(row) for row in zip(*readings, strict=True)]
    else:
        lengths = [move.length] * many.count
    lengths = _added(lengths, slips[deviations.LENGTH])
    if many.instead is not None:
        lengths = many.instead
    elif move.back:
        lengths = [-length for length in lengths]
    (x, y), (across, up) = many.points[move.start], many.lines[move.line].along()
    many.points[move.point] = (
        [at + length * share for at, length, share in zip(x, lengths, across, strict=True)],
        [at + length * share for at, length, share in zip(y, lengths, up, strict=True)],
    )


def _turn(many: DrawingBatch, move: TurnAngle, slips: Slips) -> None:
    back, zero = 180.0 if move.back else 0.0, many.lines[move.zero].degrees()
    if many.instead is not None:
        degrees = [line + back + turn for line, turn in zip(zero, many.instead, strict=True)]
    elif isinstance(move.turn, Supplement):
        sense, taken = move.turn.sense, many.readings[move.turn.reading]
        degrees = [line + back + sense * (180.0 - read) for line, read in zip(zero, taken, strict=True)]
    else:
        turn = move.turn
        degrees = [line + back + turn for line in zero]
    turned = _wrapped(_added(degrees, slips[deviations.ANGLE]))
    many.lines[move.line] = _LineSet(many.points[move.at], turned)


def _parallel(many: DrawingBatch, move: DrawParallel, slips: Slips) -> None:
    degrees = _added(many.lines[move.to].degrees(), slips[deviations.PARALLEL])
    many.lines[move.line] = _LineSet(many.points[move.through], degrees)


def _intersect(many: DrawingBatch, move: Intersect, _slips: Slips) -> None:
    many.points[move.point] = _met(many, many.lines[move.first], many.lines[move.second])


def _met(many: DrawingBatch, first: _LineSet, second: _LineSet) -> Places:
    """Return where two lines meet in each drawing, as ``geometry.intersection``; drawings without a crossing fail."""
    (x, y), (other_x, other_y) = first.start, second.start
    columns = zip(x, y, *first.along(), other_x, other_y, *second.along(), strict=True)
    across, up = [], []
    for place, (from_x, from_y, a_x, a_y, to_x, to_y, b_x, b_y) in enumerate(columns):
        sine_between = a_x * b_y - a_y * b_x
        if math.fabs(sine_between) < 1e-12:
            many.lost.add(place)
            sine_between = 1.0
        along = ((to_x - from_x) * b_y - (to_y - from_y) * b_x) / sine_between
        across.append(from_x + a_x * along)
        up.append(from_y + a_y * along)
    return across, up


def _one_by_one(many: DrawingBatch, crossing: Callable[[int], Point | None]) -> Places:
    """Return a point calculated for one drawing after another; a drawing without one fails."""
    across, up = [], []
    for place in range(many.count):
        met = crossing(place)
        if met is None:
            many.lost.add(place)
        across.append(met.x if met else 0.0)
        up.append(met.y if met else 0.0)
    return across, up


def _at(many: DrawingBatch, name: str, place: int) -> Point:
    x, y = many.points[name]
    return Point(x[place], y[place])


def _cross_arcs(many: DrawingBatch, move: CrossArcs, slips: Slips) -> None:
    none = [0.0] * many.count
    longer, other_longer = slips[deviations.LENGTH] or none, slips[deviations.SECOND_LENGTH] or none

    def met(place: int) -> Point | None:
        first, second, opposite = (_at(many, name, place) for name in (move.first, move.second, move.opposite))
        radius = geometry.distance(*(_at(many, name, place) for name in move.first_radius))
        other = geometry.distance(*(_at(many, name, place) for name in move.second_radius))
        near = first.plus(second).minus(opposite)
        return geometry.circles_meet(first, radius + longer[place], second, other + other_longer[place], near)

    many.points[move.point] = _one_by_one(many, met)


def _drop(many: DrawingBatch, move: DropPerpendicular, slips: Slips) -> None:
    line, start, slopes = many.lines[move.line], many.points[move.start], slips[deviations.PARALLEL]
    square = [degrees + 90.0 for degrees in line.degrees()]
    dropped = _met(many, _LineSet(start, _added(square, slopes)), line)
    # Without a slip the foot is found by another formula, which differs in the last place.
    x, y = line.start
    across, up = line.along()
    for place in range(many.count):
        if slopes is None or slopes[place] == 0.0:
            point = Point(start[0][place], start[1][place])
            from_line = point.minus(Point(x[place], y[place]))
            far = geometry.dot(from_line, Point(across[place], up[place]))
            dropped[0][place], dropped[1][place] = x[place] + across[place] * far, y[place] + up[place] * far
    many.points[move.foot] = dropped


def _join(many: DrawingBatch, move: Join, _slips: Slips) -> None:
    many.lines[move.line] = _LineSet(many.points[move.start], end=many.points[move.end])


def _read_length(many: DrawingBatch, move: ReadLength, slips: Slips) -> None:
    (x, y), (to_x, to_y) = many.points[move.start], many.points[move.end]
    if move.line:
        columns = zip(x, y, to_x, to_y, *many.lines[move.line].along(), strict=True)
        lengths = [(c - a) * across + (d - b) * up for a, b, c, d, across, up in columns]
    else:
        lengths = [math.hypot(c - a, d - b) for a, b, c, d in zip(x, y, to_x, to_y, strict=True)]
    many.readings[move.reading] = _added(lengths, slips[deviations.LENGTH])


def _read_angle(many: DrawingBatch, move: ReadAngle, slips: Slips) -> None:
    first, second = many.lines[move.first].degrees(), many.lines[move.second].degrees()
    sizes = [math.fabs(angle) for angle in _wrapped([to - of for of, to in zip(first, second, strict=True)])]
    many.readings[move.reading] = _added(sizes, slips[deviations.ANGLE])


def _start(many: DrawingBatch, move: Start, _slips: Slips) -> None:
    many.points[move.point] = [0.0] * many.count, [0.0] * many.count


def _direct(many: DrawingBatch, move: Direction, _slips: Slips) -> None:
    many.lines[move.line] = _LineSet(many.points[move.at], [move.degrees] * many.count)


_MAKERS: dict[type, Callable[[DrawingBatch, Any, Slips], None]] = {
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
