"""The method of components: perpendiculars from every phasor to two axes; the components are added and the sums joined.

The axes point right and up on the paper, so that the sines and cosines of the working match the drawing.
"""

from pycore.constructions import roles, step_kinds
from pycore.constructions.construction import (
    Arm,
    Construction,
    DrawingConvention,
    Step,
    arm_line,
    closing_steps,
    nearly_zero,
    sum_of,
    tip,
)
from pycore.constructions.methods import COMPONENTS, FIRST_PAIR, THE_SUM
from pycore.constructions.moves import (
    Direction,
    DrawParallel,
    DropPerpendicular,
    Intersect,
    Join,
    Move,
    ReadLength,
    SetOff,
    Start,
    SumOf,
    TurnAngle,
)
from pycore.constructions.names import AXIS_ACROSS, AXIS_UP, RESULTANT, START_POINT
from pycore.phasor import wrap


def _draw(arm: Arm, zero: str, reference: float) -> Step:
    turn = wrap(arm.angle - reference)
    moves = (
        TurnAngle(arm_line(arm), START_POINT, zero, turn),
        SetOff(tip(arm), START_POINT, arm_line(arm), arm.size, arm.key),
    )
    return Step(step_kinds.DRAW_ALONG if turn == 0 else step_kinds.DRAW, moves, (arm.number,))


def _drop(arm: Arm) -> Step:
    number, end = arm.number, tip(arm)
    moves: tuple[Move, ...] = (
        DropPerpendicular(f"X{number}", end, AXIS_ACROSS),
        Join(f"drop-x{number}", end, f"X{number}", roles.DROP, like=arm.key),
        ReadLength(f"x{number}", START_POINT, f"X{number}", AXIS_ACROSS),
        DropPerpendicular(f"Y{number}", end, AXIS_UP),
        Join(f"drop-y{number}", end, f"Y{number}", roles.DROP, like=arm.key),
        ReadLength(f"y{number}", START_POINT, f"Y{number}", AXIS_UP),
    )
    return Step(step_kinds.DROP, moves, (number,))


def _add(arms: tuple[Arm, ...]) -> tuple[Step, Step]:
    across = SumOf(tuple(f"x{arm.number}" for arm in arms))
    upward = SumOf(tuple(f"y{arm.number}" for arm in arms))
    sums: tuple[Move, ...] = (
        SetOff(AXIS_ACROSS, START_POINT, AXIS_ACROSS, across, role=roles.MARK),
        SetOff(AXIS_UP, START_POINT, AXIS_UP, upward, role=roles.MARK),
    )
    corner: tuple[Move, ...] = (
        DrawParallel("up-from-x", AXIS_ACROSS, AXIS_UP),
        DrawParallel("across-from-y", AXIS_UP, AXIS_ACROSS),
        Intersect(RESULTANT, "up-from-x", "across-from-y"),
        Join("up-from-x", AXIS_ACROSS, RESULTANT, roles.PARALLEL),
        Join("across-from-y", AXIS_UP, RESULTANT, roles.PARALLEL),
    )
    return Step(step_kinds.ADD), Step(step_kinds.CORNER, sums + corner)


def components(
    arms: tuple[Arm, ...], picture: DrawingConvention, resultant: str = THE_SUM
) -> Construction:
    """Return the construction for one or more arms of non-zero size, on the axes of a convention."""
    axes: tuple[Move, ...] = (
        Start(START_POINT),
        Direction(AXIS_ACROSS, START_POINT, picture.phasor_angle(0.0)),
        Direction(AXIS_UP, START_POINT, picture.phasor_angle(90.0)),
    )
    zero = AXIS_UP if picture.first == "up" else AXIS_ACROSS
    steps = [Step(step_kinds.SCALE), Step(step_kinds.AXES, axes)]
    steps += [_draw(arm, zero, picture.reference) for arm in arms]
    steps += [_drop(arm) for arm in arms]
    closed = nearly_zero(sum_of(arms), arms)
    add, corner = _add(arms)
    steps += [add] if closed else [add, corner]
    steps += closing_steps(RESULTANT, zero, resultant, closed=closed, tip_to_tail=False)
    return Construction(
        COMPONENTS, FIRST_PAIR, arms, tuple(steps), START_POINT if closed else RESULTANT, closed, resultant
    )
