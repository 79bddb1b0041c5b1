"""The construction of the displaced star point: draw the phase voltages from the common point, join their tips to
the triangle of line voltages, find or draw the load's star point, and measure each load's voltage from there.

Where all connected loads have one phase angle, the star point is found by drawing. Two loads alone divide the side
between their corners in the ratio of their impedances; the third moves the star point on a line to its own corner. Two
such lines cross at the star point (the weights of Millman's theorem, as Ceva's theorem has them). Elsewhere the
displacement is calculated and drawn with protractor and ruler.
"""

import math
from collections.abc import Sequence

from pycore import geometry, phasor
from pycore.constructions import roles, step_kinds
from pycore.constructions.construction import (
    Arm,
    Construction,
    Step,
    arm_line,
    draw_arm,
    nearly_zero,
    reference_step,
    tip,
)
from pycore.constructions.methods import FIRST_PAIR
from pycore.constructions.moves import Intersect, Join, Move, ReadLength, SetOff, TurnAngle
from pycore.constructions.names import FIRST_DIRECTION, RESULTANT, START_POINT, SUM_KEY
from pycore.geometry import ORIGIN
from pycore.phasor import wrap

METHOD = "displacement"
TRIANGLE, SHIFT, NO_SHIFT, LOAD = "triangle", "shift", "no-shift", "load"
DIVIDE, CUT, STAR_POINT = "divide", "cut", "star-point"
"""The kinds of step that this construction alone has."""
SAME_ANGLE = 1e-9
"""Tangent of the angle up to which two loads have one phase angle."""
LOADS = ("u1", "u2", "u3")
"""Keys of the loads' voltages, and of their readings."""


def _triangle(arms: tuple[Arm, ...]) -> Step:
    tips = [tip(arm) for arm in arms]
    pairs = zip(tips, (*tips[1:], tips[0]), strict=True)
    joins: tuple[Move, ...] = tuple(Join(f"side-{start}", start, end, roles.PARALLEL) for start, end in pairs)
    return Step(TRIANGLE, joins)


def _shift(arms: tuple[Arm, ...], shift: complex, reference: float) -> Step:
    zero = arm_line(arms[0]) if arms[0].angle == reference else FIRST_DIRECTION
    moves: tuple[Move, ...] = (
        TurnAngle("S", START_POINT, zero, wrap(phasor.angle(shift) - reference)),
        SetOff(RESULTANT, START_POINT, "S", phasor.magnitude(shift), SUM_KEY),
    )
    return Step(SHIFT, moves)


def ohms_of_one_angle(loads: Sequence[complex | None]) -> tuple[float, ...]:
    """Return the sizes (ohms) of three loads if all have one phase angle, 0.0 for one that is not connected.

    Empty if their phase angles differ, or if fewer than two are connected.
    """
    connected = [load for load in loads if load is not None]
    first = connected[0] if connected else 1 + 0j
    for load in connected:
        across = load.imag * first.real - load.real * first.imag
        along = load.real * first.real + load.imag * first.imag
        if along <= 0.0 or math.fabs(across) > SAME_ANGLE * along:
            return ()
    return tuple(0.0 if load is None else phasor.magnitude(load) for load in loads) if len(connected) > 1 else ()


def _divide(arms: tuple[Arm, ...], ohms: Sequence[float], pair: tuple[int, int], point: str) -> Step:
    """Mark on the side between two tips where the star point of their two loads alone is; ``pair``: places of the
    arms, the first the one to measure from."""
    start, end = (arms[place] for place in pair)
    forward = pair[1] == (pair[0] + 1) % len(arms)
    side = geometry.distance(*(ORIGIN.moved(arm.size, arm.angle) for arm in (start, end)))
    length = side * ohms[pair[0]] / (ohms[pair[0]] + ohms[pair[1]])
    line = f"side-{tip(start if forward else end)}"
    mark = SetOff(point, tip(start), line, length, back=not forward, role=roles.MARK)
    return Step(DIVIDE, (mark,), (start.number, end.number))


def _star_point(arms: tuple[Arm, ...], ohms: Sequence[float]) -> list[Step]:
    """Find the star point by drawing. Lines from two corners through the marks cross at 60° or more, because the marks
    are on the sides of the corner of the smallest impedance."""
    draw = Join(RESULTANT, START_POINT, RESULTANT, roles.RESULTANT, SUM_KEY)
    connected = [place for place, size in enumerate(ohms) if size > 0.0]
    if len(connected) == 2:
        pair = (connected[0], connected[1])
        return [_divide(arms, ohms, pair, RESULTANT), Step(STAR_POINT, (draw,))]
    least = min(connected, key=lambda place: ohms[place])
    others = [place for place in connected if place != least]
    steps: list[Step] = []
    for other, third in (others, others[::-1]):
        point = f"P{arms[other].number}"
        steps.append(_divide(arms, ohms, (least, other), point))
        cut = Join(f"cut-{point}", tip(arms[third]), point, roles.PARALLEL)
        steps.append(Step(CUT, (cut,), (arms[third].number,)))
    first, second = (f"cut-P{arms[other].number}" for other in others)
    return [*steps, Step(STAR_POINT, (Intersect(RESULTANT, first, second), draw))]


def displacement(
    arms: tuple[Arm, ...], shift: complex, reference: float, ohms: Sequence[float] = ()
) -> Construction:
    """Return the construction for three phase voltages and the displacement of the star point (V).

    ``reference`` is the direction drawn first, in degrees. With ``ohms``, the sizes of loads of one phase angle
    (``ohms_of_one_angle``), the star point is found by drawing. The point ``N`` is the load's star point.
    """
    head = arms[0]
    steps = [Step(step_kinds.SCALE), *reference_step(head, reference)]
    steps += [draw_arm(arm, head, reference, arm is head) for arm in arms]
    steps.append(_triangle(arms))
    moved = not nearly_zero(shift, arms)
    if moved and ohms:
        steps += _star_point(arms, ohms)
    elif moved:
        steps.append(_shift(arms, shift, reference))
    else:
        steps.append(Step(NO_SHIFT))
    start = RESULTANT if moved else START_POINT
    for arm, key in zip(arms, LOADS, strict=True):
        read: tuple[Move, ...] = (ReadLength(key, start, tip(arm)),)
        join: tuple[Move, ...] = (Join(key, start, tip(arm), roles.PARTIAL, key),) if moved else ()
        steps.append(Step(LOAD, join + read, (arm.number,)))
    return Construction(METHOD, FIRST_PAIR, arms, tuple(steps), start, not moved, further=len(LOADS))
