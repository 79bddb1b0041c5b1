"""Three unequal loads for practice, drawn from a code: the same for ever (version 1).

Support: whole tens of ohms. Core: values of the E12 series (IEC 60063, from memory). Stretch: one load has
a reactance. Accepted when the star point moves by a fifth of the phase voltage or more and stays within it.
"""

from pycore import phasor
from pycore.practice.codes import Code
from pycore.practice.dice import Dice, dice_of_code
from pycore.practice.generator import TRIES, VOLTAGES, NoProblem

E12 = (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82, 100, 120)
LEAST_SHIFT, MOST_SHIFT = 0.2, 0.9

Load = tuple[int, int]
"""Resistance and reactance in whole ohms."""


def _drawn(dice: Dice, tier: str) -> tuple[Load, Load, Load]:
    made: list[Load] = []
    for _ in range(3):
        resistance = 10 * dice.between(1, 12) if tier == "support" else E12[dice.below(len(E12))]
        made.append((resistance, 0))
    if tier == "stretch":
        which = dice.below(3)
        made[which] = (made[which][0], (10 * dice.between(2, 9)) * (1 if dice.below(4) else -1))
    return made[0], made[1], made[2]


def shift_of(loads: tuple[Load, Load, Load]) -> complex:
    """The star point's shift as a share of the phase voltage, sequence L1, L2, L3."""
    admittances = [1.0 / complex(resistance, reactance) for resistance, reactance in loads]
    above = phasor.total(phasor.polar(1.0, angle) * y for angle, y in zip(VOLTAGES, admittances, strict=True))
    return above / phasor.total(admittances)


def accepted(loads: tuple[Load, Load, Load]) -> bool:
    """Whether these loads may be set."""
    if len({resistance for resistance, _ in loads}) < 3:
        return False
    return LEAST_SHIFT <= phasor.magnitude(shift_of(loads)) <= MOST_SHIFT


def loads_of(code: Code) -> tuple[Load, Load, Load]:
    """The loads of a code. Raises NoProblem."""
    dice = dice_of_code(code)
    for _ in range(TRIES):
        loads = _drawn(dice, code.tier)
        if accepted(loads):
            return loads
    raise NoProblem(str(code))
