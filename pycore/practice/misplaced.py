"""Ruler and protractor laid wrongly: a ruler from its edge, a protractor by its base edge or from the wrong point.

How far each leads astray depends on the instrument in the learner's hand, so each is carried out for several.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import replace

from pycore import phasor
from pycore.constructions.construction import Arm, Construction, arm_line
from pycore.constructions.moves import Move, SetOff, TurnAngle
from pycore.practice.sums import Change, DrawnSum, arm_of, base, carried_out, turning_moves, with_turns
from pycore.practice.task import Mistake

EDGES = (3.0, 3.75, 4.5, 5.25, 6.0)
"""Millimetres from a ruler's edge to its zero mark (common practice: 3 to 6)."""
GAPS = (4.0, 5.0, 6.0, 7.0, 8.0)
"""Millimetres from a protractor's base edge to its zero line (common practice: 4 to 8)."""
RADII = (40.0, 45.0, 50.0, 55.0, 60.0)
"""Millimetres from a protractor's centre to its marks (common practice: 40 to 60)."""
RADIUS = RADII[2]


def _longer(extra: float) -> Callable[[Move], Move]:
    def change(move: Move) -> Move:
        if isinstance(move, SetOff) and move.phasor and isinstance(move.length, float):
            return replace(move, length=move.length + extra)
        return move

    return change


def _by_base_edge(gap: float) -> Callable[[float], float]:
    return lambda turn: phasor.angle(complex(0.0, math.copysign(gap, turn)) + phasor.polar(RADIUS, turn))


def _from_far_end(along: float, radius: float) -> Callable[[float], float]:
    """The turn that results from a centre at the far end of the zero line, ``along`` mm away."""
    return lambda turn: phasor.angle(complex(along, 0.0) + phasor.polar(radius, turn))


def _zero_line(problem: DrawnSum, move: TurnAngle) -> Arm | None:
    """The phasor along which the protractor's zero lies; None where it lies on a faint line."""
    for arm in problem.arms:
        if move.back and arm_line(arm) == move.zero:
            return arm
    head = problem.arms[0]
    return head if not move.back and head.angle == problem.reference else None


def _changes(problem: DrawnSum, construction: Construction) -> Iterator[Change]:
    for edge in EDGES:
        extra = edge / problem.factor
        yield Change("ruler-edge", _longer(extra), omitted=extra, family="edge")
    turning = turning_moves(construction)
    lines = tuple(move.line for move in turning)
    for gap in GAPS if lines else ():
        yield Change("base-edge", with_turns(lines, _by_base_edge(gap)), family="gap")
    tips = any(move.back for move in turning)
    for move in turning:
        zero = _zero_line(problem, move) if move.back or not tips else None
        if zero is None:
            continue
        for radius in RADII:
            far = _from_far_end(zero.size * problem.factor, radius)
            named = {"a": arm_of(problem, move.line).key}
            yield Change("centre-off", with_turns((move.line,), far), named, family=f"centre {move.line}")


def in_the_instruments(problem: DrawnSum) -> Iterator[Mistake]:
    """What ruler and protractor give that are laid wrongly throughout, or for one line."""
    if problem.factor > 0.0:
        construction = base(problem)
        yield from carried_out(problem, construction, tuple(_changes(problem, construction)))
