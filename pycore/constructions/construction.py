"""A construction: steps of moves over arms that start at one point, and how they are placed on paper."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache

from pycore import geometry, phasor
from pycore.constructions import roles, step_kinds
from pycore.constructions.methods import THE_RETURNING, THE_SUM
from pycore.constructions.moves import (
    CrossArcs,
    Direction,
    DrawParallel,
    DropPerpendicular,
    Figure,
    Intersect,
    Join,
    Move,
    ReadAngle,
    ReadLength,
    SetOff,
    Start,
    SumOf,
    TurnAngle,
    carry_out,
)
from pycore.constructions.names import (
    FIRST_DIRECTION,
    RESULT_ANGLE,
    RESULT_LENGTH,
    RESULTANT,
    RETURN_KEY,
    START_POINT,
    SUM_KEY,
    line_of,
    tip_of,
)
from pycore.geometry import Point
from pycore.phasor import wrap

COLLINEAR = 2.0
"""Two arms within this angle of one line, in degrees, make no parallelogram that can be drawn by hand."""
FLAT_CROSSING = 15.0
"""Below this angle in degrees, lines cross too flatly to be drawn by hand reliably (common practice), and errors of
hand are not carried through to first order."""


@dataclass(frozen=True, slots=True)
class Arm:
    """One phasor to be drawn: key (``i1``), number, size, and angle in degrees."""

    key: str
    number: int
    size: float
    angle: float


@dataclass(frozen=True, slots=True)
class Step:
    """One numbered step of a construction: a name that chooses its sentence, its moves, and the numbers of the arms
    concerned."""

    name: str
    moves: tuple[Move, ...] = ()
    arm_numbers: tuple[int, ...] = ()


@dataclass(frozen=True)
class Construction:
    """A method applied to arms.

    ``order``: the pair that is combined first (``12``). ``end``: the name of the point where the sum ends. ``closed``:
    whether no drawing tells that from the start (``nearly_zero``). ``resultant``: ``sum`` or ``returning``.
    ``further``: how many further results are read off the drawing.
    """

    method: str
    order: str
    arms: tuple[Arm, ...]
    steps: tuple[Step, ...]
    end: str = RESULTANT
    closed: bool = False
    resultant: str = THE_SUM
    further: int = 0

    @property
    def numbered(self) -> Iterator[tuple[int, Step]]:
        """Every step with its number: that of the page's list, drawing, lesson, sheet and feedback."""
        return enumerate(self.steps, start=1)

    @cached_property
    def moves(self) -> tuple[Move, ...]:
        """All moves in drawing order."""
        return tuple([move for step in self.steps for move in step.moves])

    @cached_property
    def figure(self) -> Figure:
        """All points of the exact construction."""
        return carry_out(self.moves)

    @cached_property
    def companions(self) -> tuple[SetOff, ...]:
        """The moves that draw companions: phasors of a second quantity."""
        return tuple(move for move in self.moves if isinstance(move, SetOff) and move.role == roles.COMPANION)

    @cached_property
    def drawn_ends(self) -> tuple[tuple[str, str], ...]:
        """The ends of every straight stroke that is drawn, by the names of their points."""
        ends = []
        for move in self.moves:
            if isinstance(move, SetOff):
                ends.append((move.start, move.point))
            elif isinstance(move, Join) and move.role != roles.HIDDEN:
                ends.append((move.start, move.end))
        return tuple(ends)

    @cached_property
    def crossings(self) -> tuple[float, ...]:
        """The acute angle in degrees at which each pair of lines or arcs crosses."""
        return crossing_angles(self.moves, self.figure)

    @cached_property
    def moves_to_end(self) -> tuple[Move, ...]:
        """The moves up to the one that determines the tip of the sum; later moves do not shift it."""
        made_by = [index for index, move in enumerate(self.moves) if _marked(move) == self.end]
        return self.moves[: made_by[-1] + 1]

    @property
    def end_point(self) -> Point:
        """The tip of the phasor sum, in the unit of the arms."""
        return self.figure.points[self.end]


def _marked(move: Move) -> str:
    """Return the name of the point that a move determines; "" if there is none."""
    if isinstance(move, DropPerpendicular):
        return move.foot
    return move.point if isinstance(move, (Start, SetOff, Intersect, CrossArcs)) else ""


@dataclass(frozen=True, slots=True)
class DrawingConvention:
    """How a construction is placed on paper.

    ``first``: where the first direction points, ``up`` or ``right``. ``rotation``: ``anticlockwise`` (positive angles
    turn anticlockwise on paper, as in the calculation) or ``clockwise`` (mirrored). ``reference``: the calculated
    angle, in degrees, that points in the first direction.
    """

    first: str = "up"
    rotation: str = "anticlockwise"
    reference: float = 0.0

    @property
    def sense(self) -> int:
        """+1 if positive angles turn anticlockwise on paper, -1 if they turn clockwise."""
        return -1 if self.rotation == "clockwise" else 1

    def paper_angle(self, degrees: float) -> float:
        """Return the angle on paper (from +x, anticlockwise, degrees) of a calculated angle."""
        base = 90.0 if self.first == "up" else 0.0
        return wrap(base + self.sense * (degrees - self.reference))

    def phasor_angle(self, paper_degrees: float) -> float:
        """Return the calculated angle of an angle on paper, in degrees."""
        base = 90.0 if self.first == "up" else 0.0
        return wrap(self.reference + self.sense * (paper_degrees - base))

    def place(self, point: Point, factor: float = 1.0) -> Point:
        """Return a point of the construction on paper: ``factor`` mm for each unit, origin at (0, 0)."""
        right, up = _axes(self)
        return Point(
            factor * (right.x * point.x + up.x * point.y),
            factor * (right.y * point.x + up.y * point.y),
        )

    def places(self, points: Iterable[Point], factor: float = 1.0) -> list[Point]:
        """Return several points on paper, as ``place`` does: every construction that may be drawn asks it."""
        (right_x, right_y), (up_x, up_y) = _axes(self)
        return [
            tuple.__new__(Point, (factor * (right_x * x + up_x * y), factor * (right_y * x + up_y * y)))
            for x, y in points
        ]


@lru_cache(maxsize=16)
def _axes(picture: DrawingConvention) -> tuple[Point, Point]:
    """Return the directions of the calculation's two axes on paper; exact if they lie along the paper's axes."""
    return (
        geometry.ORIGIN.moved(1.0, picture.paper_angle(0.0)),
        geometry.ORIGIN.moved(1.0, picture.paper_angle(90.0)),
    )


ROUNDING = 1e-12
"""Share of a figure's size below which a length is a rounding error."""


def crossing_angles(moves: tuple[Move, ...], figure: Figure) -> tuple[float, ...]:
    """Return the acute angle, 0 to 90 degrees, of each crossing of two lines or arcs."""
    angles: list[float] = []
    parallel_to = {move.line: move.to for move in moves if isinstance(move, DrawParallel)}
    reach = max([math.fabs(part) for point in figure.points.values() for part in point])

    def direction(line: str, met: Point) -> float:
        """A line that ends where it starts, but for rounding, has the direction of the one that it is parallel to."""
        drawn = figure.lines[line]
        if line in parallel_to and geometry.distance(drawn.start, met) <= ROUNDING * reach:
            return figure.lines[parallel_to[line]].degrees
        return drawn.degrees

    for move in moves:
        if isinstance(move, Intersect):
            met = figure.points[move.point]
            angle = direction(move.first, met) - direction(move.second, met)
        elif isinstance(move, CrossArcs):
            met = figure.points[move.point]
            first, second = (geometry.direction(figure.points[name], met) for name in (move.first, move.second))
            angle = first - second
        else:
            continue
        size = math.fabs(wrap(angle))
        angles.append(min(size, 180.0 - size))
    return tuple(angles)


def flattest(construction: Construction) -> float:
    """Return the smallest crossing angle in degrees; 90 if nothing crosses."""
    return min((90.0, *construction.crossings))


def arm_line(arm: Arm) -> str:
    """Return the name of an arm's line."""
    return line_of(arm.number)


def tip(arm: Arm) -> str:
    """Return the name of an arm's tip if the arm starts at the common point."""
    return tip_of(arm.number)


@lru_cache(maxsize=32)
def reference_step(first: Arm, reference: float) -> tuple[Step, ...]:
    """Mark the start, and draw the first direction unless the first arm lies on it."""
    if first.angle == reference:
        return ()
    return (Step(step_kinds.REFERENCE, (Start(START_POINT), Direction(FIRST_DIRECTION, START_POINT, reference))),)


@lru_cache(maxsize=64)
def draw_arm(arm: Arm, first: Arm, reference: float, start: bool) -> Step:
    """Draw one arm from the common point, its angle marked from the first direction or the first arm. Cached: every
    order of a method draws it so."""
    set_off = SetOff(tip(arm), START_POINT, arm_line(arm), arm.size, arm.key)
    on_reference = first.angle == reference
    if start and on_reference:
        direction = Direction(arm_line(arm), START_POINT, arm.angle)
        return Step(step_kinds.DRAW_FIRST, (Start(START_POINT), direction, set_off), (arm.number,))
    zero = arm_line(first) if on_reference else FIRST_DIRECTION
    turn = TurnAngle(arm_line(arm), START_POINT, zero, wrap(arm.angle - reference))
    return Step(step_kinds.DRAW, (turn, set_off), (arm.number,))


NEARLY = 0.001
"""Share of the longest phasor below which no drawing shows a sum: a fifth of a millimetre where that one has 200 mm."""


def nearly_zero(total: complex, arms: tuple[Arm, ...]) -> bool:
    """Return whether a sum is zero, or too short to be seen beside its longest phasor."""
    return phasor.magnitude(total) <= NEARLY * max([arm.size for arm in arms], default=0.0)


@lru_cache(maxsize=32)
def sum_of(arms: tuple[Arm, ...]) -> complex:
    """Return the sum of phasors; exactly 0 if the rest is only rounding."""
    return phasor.total(phasor.polar(arm.size, arm.angle) for arm in arms)


@lru_cache(maxsize=32)
def closing_steps(
    end: str, first_line: str, resultant: str, *, closed: bool, tip_to_tail: bool
) -> tuple[Step, ...]:
    """Draw the sum (or the returning phasor), then read its length and angle."""
    if closed:
        return (Step(step_kinds.ZERO),)
    returning = resultant == THE_RETURNING
    reads: tuple[Move, ...] = (
        ReadLength(RESULT_LENGTH, START_POINT, end),
        ReadAngle(RESULT_ANGLE, START_POINT, first_line, RESULTANT),
    )
    if returning and tip_to_tail:
        join = Join("N-back", end, START_POINT, roles.RESULTANT, RETURN_KEY)
        line = Join(RESULTANT, START_POINT, end, roles.HIDDEN)
        return (Step(step_kinds.RETURN_CLOSE, (join, line)), Step(step_kinds.READ, reads))
    role = roles.PARTIAL if returning else roles.RESULTANT
    result = Step(step_kinds.RESULT, (Join(RESULTANT, START_POINT, end, role, SUM_KEY),))
    if not returning:
        return (result, Step(step_kinds.READ, reads))
    back = SetOff("M", START_POINT, RESULTANT, SumOf((RESULT_LENGTH,)), RETURN_KEY, back=True, role=roles.RESULTANT)
    return (result, Step(step_kinds.READ, reads), Step(step_kinds.RETURN, (back,)))
