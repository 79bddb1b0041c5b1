"""Components: every phasor dropped square on to two axes, the parts added, the sum joined.

The axes are the paper's own, to the right and up, so that the working's sines and cosines
match the picture.
"""

from pycore import phasor
from pycore.constructions.construction import (
    Arm,
    Construction,
    Picture,
    Step,
    arm_line,
    closing_steps,
    tip,
)
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
from pycore.phasor import wrap


def _draw(arm: Arm, zero: str, reference: float) -> Step:
    turn = wrap(arm.angle - reference)
    moves = (
        TurnAngle(arm_line(arm), "O", zero, turn),
        SetOff(tip(arm), "O", arm_line(arm), arm.size, arm.key),
    )
    return Step("draw-along" if turn == 0 else "draw", moves, (arm.number,))


def _drop(arm: Arm) -> Step:
    number, end = arm.number, tip(arm)
    moves: tuple[Move, ...] = (
        DropPerpendicular(f"X{number}", end, "X"),
        Join(f"drop-x{number}", end, f"X{number}", "drop", like=arm.key),
        ReadLength(f"x{number}", "O", f"X{number}", "X"),
        DropPerpendicular(f"Y{number}", end, "Y"),
        Join(f"drop-y{number}", end, f"Y{number}", "drop", like=arm.key),
        ReadLength(f"y{number}", "O", f"Y{number}", "Y"),
    )
    return Step("drop", moves, (number,))


def _add(arms: tuple[Arm, ...]) -> tuple[Step, Step]:
    across = SumOf(tuple(f"x{arm.number}" for arm in arms))
    upward = SumOf(tuple(f"y{arm.number}" for arm in arms))
    sums: tuple[Move, ...] = (
        SetOff("X", "O", "X", across, role="mark"),
        SetOff("Y", "O", "Y", upward, role="mark"),
    )
    corner: tuple[Move, ...] = (
        DrawParallel("up-from-x", "X", "Y"),
        DrawParallel("across-from-y", "Y", "X"),
        Intersect("N", "up-from-x", "across-from-y"),
        Join("up-from-x", "X", "N", "parallel"),
        Join("across-from-y", "Y", "N", "parallel"),
    )
    return Step("add"), Step("corner", sums + corner)


def components(
    arms: tuple[Arm, ...], picture: Picture, resultant: str = "sum"
) -> Construction:
    """The construction for one arm or more, of non-zero size, on the axes of a picture."""
    axes: tuple[Move, ...] = (
        Start("O"),
        Direction("X", "O", picture.reckoned_angle(0.0)),
        Direction("Y", "O", picture.reckoned_angle(90.0)),
    )
    zero = "Y" if picture.first == "up" else "X"
    steps = [Step("scale"), Step("axes", axes)]
    steps += [_draw(arm, zero, picture.reference) for arm in arms]
    steps += [_drop(arm) for arm in arms]
    closed = phasor.total(phasor.polar(arm.size, arm.angle) for arm in arms) == 0
    add, corner = _add(arms)
    steps += [add] if closed else [add, corner]
    steps += closing_steps("N", zero, resultant, closed=closed, tip_to_tail=False)
    return Construction("components", "12", arms, tuple(steps), "O" if closed else "N", closed, resultant)
