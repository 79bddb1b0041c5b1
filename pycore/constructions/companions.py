"""Phasors of a second quantity on the same sheet, such as a current among voltages, with a scale of their own.

Each is drawn with ruler and protractor and has an open arrowhead and a double line. A companion in the first direction
is drawn first, and angles are measured from it; the others follow after the sum has been read.
"""

from dataclasses import replace

from pycore.constructions import step_kinds
from pycore.constructions.construction import Arm, Construction, DrawingConvention, Step, arm_line
from pycore.constructions.methods import COMPONENTS
from pycore.constructions.moves import Direction, Move, SetOff, Start, TurnAngle
from pycore.constructions.names import AXIS_ACROSS, AXIS_UP, FIRST_DIRECTION, START_POINT
from pycore.constructions.roles import COMPANION
from pycore.phasor import wrap


def leads(construction: Construction) -> SetOff | None:
    """Return the companion that is drawn in place of the faint first direction; None if there is none."""
    return next((move for move in construction.companions if move.line == FIRST_DIRECTION), None)


def _zero(construction: Construction, picture: DrawingConvention) -> str:
    """Return the name of the line in the first direction."""
    if construction.method == COMPONENTS:
        return AXIS_UP if picture.first == "up" else AXIS_ACROSS
    if FIRST_DIRECTION in construction.figure.lines:
        return FIRST_DIRECTION
    return next(arm_line(arm) for arm in construction.arms if arm.angle == picture.reference)


def _step(arm: Arm, length: float, zero: str, reference: float) -> Step:
    turn = wrap(arm.angle - reference)
    line = zero if turn == 0.0 else f"K{arm.number}"
    turned: tuple[Move, ...] = () if turn == 0.0 else (TurnAngle(line, START_POINT, zero, turn),)
    set_off = SetOff(f"K{arm.number}", START_POINT, line, length, arm.key, role=COMPANION)
    return Step(step_kinds.COMPANION, (*turned, set_off), (arm.number,))


def _led(steps: list[Step], arm: Arm, length: float, reference: float) -> list[Step]:
    """Return the steps with a companion drawn first, in place of the faint first direction."""
    set_off = SetOff(f"K{arm.number}", START_POINT, FIRST_DIRECTION, length, arm.key, role=COMPANION)
    direction = Direction(FIRST_DIRECTION, START_POINT, reference)
    first = Step(step_kinds.COMPANION, (Start(START_POINT), direction, set_off), (arm.number,))
    kept = [
        replace(step, moves=tuple(move for move in step.moves if not isinstance(move, Start)))
        for step in steps
        if step.name != step_kinds.REFERENCE
    ]
    place = next(index for index, step in enumerate(kept) if step.moves)
    return [*kept[:place], first, *kept[place:]]


def accompanied(
    construction: Construction, companions: tuple[Arm, ...], ratio: float, picture: DrawingConvention
) -> Construction:
    """Return the construction with its companions.

    ``ratio``: how many units of the sum's quantity are as long on paper as one unit of the companions' quantity.
    """
    steps = list(construction.steps)
    after: list[Step] = []
    zero = _zero(construction, picture)
    for index, arm in enumerate(companions):
        length = arm.size * ratio
        if index or arm.angle != picture.reference:
            after.append(_step(arm, length, zero, picture.reference))
        elif construction.method == COMPONENTS:
            steps.insert(2, _step(arm, length, zero, picture.reference))
        else:
            steps, zero = _led(steps, arm, length, picture.reference), FIRST_DIRECTION
    return replace(construction, steps=(*steps, *after))
