"""The construction of the displaced star point: draw the phase voltages from the common point, join their tips to
the triangle of line voltages, draw the displacement, and measure each load's voltage from its tip."""

from pycore import phasor
from pycore.constructions import step_kinds
from pycore.constructions.construction import Arm, Construction, Step, arm_line, draw_arm, reference_step, tip
from pycore.constructions.moves import Join, Move, ReadLength, SetOff, TurnAngle
from pycore.constructions.names import FIRST_DIRECTION, RESULTANT, START_POINT
from pycore.phasor import wrap

METHOD = "displacement"
TRIANGLE, SHIFT, NO_SHIFT, LOAD = "triangle", "shift", "no-shift", "load"
"""The kinds of step that this construction alone has."""
LOADS = ("u1", "u2", "u3")
"""Keys of the loads' voltages, and of their readings."""


def _triangle(arms: tuple[Arm, ...]) -> Step:
    tips = [tip(arm) for arm in arms]
    pairs = zip(tips, (*tips[1:], tips[0]), strict=True)
    joins: tuple[Move, ...] = tuple(Join(f"side-{start}", start, end, "parallel") for start, end in pairs)
    return Step(TRIANGLE, joins)


def _shift(arms: tuple[Arm, ...], shift: complex, reference: float) -> Step:
    zero = arm_line(arms[0]) if arms[0].angle == reference else FIRST_DIRECTION
    moves: tuple[Move, ...] = (
        TurnAngle("S", START_POINT, zero, wrap(phasor.angle(shift) - reference)),
        SetOff(RESULTANT, START_POINT, "S", phasor.magnitude(shift), "sum"),
    )
    return Step(SHIFT, moves)


def displacement(arms: tuple[Arm, ...], shift: complex, reference: float) -> Construction:
    """Return the construction for three phase voltages and the displacement of the star point (V).

    ``reference`` is the direction drawn first, in degrees. The point ``N`` is the load's star point.
    """
    head = arms[0]
    steps = [Step(step_kinds.SCALE), *reference_step(head, reference)]
    steps += [draw_arm(arm, head, reference, arm is head) for arm in arms]
    steps.append(_triangle(arms))
    moved = shift != 0
    if moved:
        steps.append(_shift(arms, shift, reference))
    else:
        steps.append(Step(NO_SHIFT))
    start = RESULTANT if moved else START_POINT
    for arm, key in zip(arms, LOADS, strict=True):
        read: tuple[Move, ...] = (ReadLength(key, start, tip(arm)),)
        join: tuple[Move, ...] = (Join(key, start, tip(arm), "partial", key),) if moved else ()
        steps.append(Step(LOAD, join + read, (arm.number,)))
    return Construction(METHOD, "12", arms, tuple(steps), start, not moved, further=len(LOADS))
