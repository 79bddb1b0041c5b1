"""Tip to tail: each phasor begins where the one before it ends.

The protractor stands on the tip, its zero back along the line just drawn; at equal power
factor it reads 60 degrees, in general 180 degrees less the turn.
"""

from pycore.constructions import step_kinds
from pycore.constructions.construction import (
    Arm,
    Construction,
    Step,
    arm_line,
    closing_steps,
    nearly_zero,
    reference_step,
    sum_of,
)
from pycore.constructions.methods import THE_SUM, TIP_TO_TAIL
from pycore.constructions.moves import Direction, SetOff, Start, TurnAngle
from pycore.constructions.names import FIRST_DIRECTION, RESULTANT, START_POINT
from pycore.phasor import wrap

SEQUENCES = {"12": (1, 2, 3), "13": (1, 3, 2), "23": (2, 3, 1)}
"""Which phasor follows which, by the pair that is named first."""


def chain_of(arms: tuple[Arm, ...], order: str) -> tuple[Arm, ...]:
    """The arms in the order in which they follow one another: beyond three, as they are numbered."""
    early = SEQUENCES[order]
    placed = {number: place for place, number in enumerate(early)}
    return tuple(sorted(arms, key=lambda arm: placed.get(arm.number, arm.number)))


def listed_order(arms: tuple[Arm, ...], order: str) -> str:
    """The order in which two arms follow one another as they are listed, where ``order`` is the other way round; ""
    where it is not, or where there are more of them: then sheets name the order."""
    if len(arms) != 2 or chain_of(arms, order) == arms:
        return ""
    return next(one for one in SEQUENCES if chain_of(arms, one) == arms)


def _first(arm: Arm, reference: float, point: str) -> tuple[Step, ...]:
    set_off = SetOff(point, START_POINT, arm_line(arm), arm.size, arm.key)
    if arm.angle == reference:
        direction = Direction(arm_line(arm), START_POINT, arm.angle)
        return (Step(step_kinds.DRAW_FIRST, (Start(START_POINT), direction, set_off), (arm.number,)),)
    turn = TurnAngle(arm_line(arm), START_POINT, FIRST_DIRECTION, wrap(arm.angle - reference))
    return (
        *reference_step(arm, reference),
        Step(step_kinds.DRAW, (turn, set_off), (arm.number,)),
    )


def _next(before: Arm, arm: Arm, start: str, point: str) -> Step:
    turn = wrap(arm.angle - before.angle - 180.0)
    moves = (
        TurnAngle(arm_line(arm), start, arm_line(before), turn, back=True),
        SetOff(point, start, arm_line(arm), arm.size, arm.key),
    )
    return Step(step_kinds.FOLLOW, moves, (before.number, arm.number))


def tip_to_tail(
    arms: tuple[Arm, ...], order: str, reference: float, resultant: str = THE_SUM
) -> Construction:
    """The construction for one arm or more, of non-zero size.

    ``order`` names the two that come first; ``reference`` is the direction drawn first, in
    degrees.
    """
    chain = chain_of(arms, order)
    points = [f"P{index}" for index in range(1, len(chain))] + [RESULTANT]
    steps = [Step(step_kinds.SCALE), *_first(chain[0], reference, points[0])]
    for index in range(1, len(chain)):
        steps.append(_next(chain[index - 1], chain[index], points[index - 1], points[index]))
    closed = nearly_zero(sum_of(arms), arms)
    line = arm_line(chain[0]) if chain[0].angle == reference else FIRST_DIRECTION
    steps += closing_steps(RESULTANT, line, resultant, closed=closed, tip_to_tail=True)
    return Construction(TIP_TO_TAIL, order, arms, tuple(steps), RESULTANT, closed, resultant)
