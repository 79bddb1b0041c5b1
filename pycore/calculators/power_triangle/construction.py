"""The construction that finds the reactive power of a correction: the target's angle is marked at the start, and where
its line meets the perpendicular at the tip of P, the corrected apparent power ends (any textbook of electrical
principles: active power does not change)."""

from dataclasses import replace

from pycore.constructions import roles, step_kinds
from pycore.constructions.construction import Construction, Step
from pycore.constructions.moves import Intersect, Join, Move, ReadLength, TurnAngle
from pycore.constructions.names import RESULTANT, START_POINT, arm_key, line_of

PERPENDICULAR, TARGET_ANGLE, CORRECTION, READ_CORRECTION, TARGET_SUM = (
    "perpendicular", "target-angle", "correction", "read-correction", "target-sum",
)  # fmt: skip
"""The kinds of step that this construction alone has."""
ACTIVE, REACTIVE, CORRECTING = 1, 2, 3
"""Numbers of the arms: P, Q and the reactive power of the correction."""
TIP_OF_P, TIP_OF_Q = "P1", "P2"
"""Points of tip to tail."""


def _before(reactive: bool) -> Step:
    """The apparent power before the correction, or the perpendicular of a load without reactive power."""
    if reactive:
        apparent = Join("before", START_POINT, TIP_OF_Q, roles.PARTIAL, "i12")
        return Step(step_kinds.ON_THE_WAY, (apparent,), (ACTIVE, REACTIVE))
    turn = TurnAngle(line_of(CORRECTING), TIP_OF_P, line_of(ACTIVE), 90.0, back=True)
    return Step(PERPENDICULAR, (turn,), (ACTIVE,))


def correction_found(chain: Construction, target: float) -> Construction:
    """Return a tip to tail of P, Q (if any) and the correction, in which the correction is found and measured.

    ``chain`` is the tip to tail of these arms in their own order, P along the first direction; ``target`` is the angle
    of lag at the target power factor in degrees, anticlockwise from P. Every phasor ends where it does in ``chain``.
    """
    reactive = any(arm.number == REACTIVE for arm in chain.arms)
    start, upright = (TIP_OF_Q, line_of(REACTIVE)) if reactive else (TIP_OF_P, line_of(CORRECTING))
    key = arm_key(CORRECTING)
    find: tuple[Move, ...] = (
        TurnAngle(RESULTANT, START_POINT, line_of(ACTIVE), target),
        Intersect(RESULTANT, RESULTANT, upright),
    )
    place = next(index for index, step in enumerate(chain.steps) if step.arm_numbers[-1:] == (CORRECTING,))
    closing = tuple(
        replace(step, name=TARGET_SUM) if step.name == step_kinds.RESULT else step for step in chain.steps[place + 1 :]
    )
    found = (
        _before(reactive),
        Step(TARGET_ANGLE, find, (ACTIVE,)),
        Step(CORRECTION, (Join(line_of(CORRECTING), start, RESULTANT, roles.PARTIAL, key),), (CORRECTING,)),
        Step(READ_CORRECTION, (ReadLength(key, start, RESULTANT),), (CORRECTING,)),
    )
    return replace(chain, steps=(*chain.steps[:place], *found, *closing))


def is_found(construction: Construction) -> bool:
    """Whether a construction finds the correction."""
    return any(step.name == TARGET_ANGLE for step in construction.steps)
