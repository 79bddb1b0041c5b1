"""Phasors of a second quantity beside a sum: a current among voltages, at a scale of its own.

Each is one more line set off by ruler (and protractor), told apart by an open arrowhead and a double
line. One that lies in the direction drawn first is drawn first, and angles are counted from it; the
others follow once the sum has been read.
"""

from dataclasses import replace

from pycore.constructions import step_kinds
from pycore.constructions.construction import Arm, Construction, DrawingConvention, Step, arm_line
from pycore.constructions.methods import COMPONENTS
from pycore.constructions.moves import Direction, Move, SetOff, Start, TurnAngle
from pycore.constructions.names import AXIS_ACROSS, AXIS_UP, FIRST_DIRECTION, START_POINT
from pycore.constructions.roles import COMPANION
from pycore.phasor import wrap


def companion_moves(construction: Construction) -> tuple[SetOff, ...]:
    """The moves that draw companions."""
    return tuple(move for move in construction.moves if isinstance(move, SetOff) and move.role == COMPANION)


def leads(construction: Construction) -> SetOff | None:
    """The companion that stands in the place of the faint direction drawn first, if one does."""
    return next((move for move in companion_moves(construction) if move.line == FIRST_DIRECTION), None)


def _zero(construction: Construction, picture: DrawingConvention) -> str:
    """The line that lies in the direction drawn first."""
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
    """The steps with a companion drawn first, in place of the faint direction."""
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
    """The construction with its companions, ``ratio`` units of the sum's quantity being as long on the
    paper as one unit of theirs."""
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
