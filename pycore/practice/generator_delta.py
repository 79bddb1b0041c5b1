"""Problems of star and delta, drawn from a code: the same for ever.

Version 1 reads nothing but the dice and phasor arithmetic. Support: a star, the line voltage from two phase
voltages; core: a delta of three resistances, one line current; stretch: a delta of impedances in either sequence.
"""

import math
from dataclasses import dataclass

from pycore import phasor
from pycore.phasor import wrap
from pycore.practice.codes import Code
from pycore.practice.dice import Dice, dice_of_code
from pycore.practice.generator import NoProblem

VOLTAGES = (110, 190, 208, 220, 230, 380, 400, 415, 440, 480, 500, 660, 690)
PAIRS = (
    (8, 6), (6, 8), (12, 9), (9, 12), (12, 16), (16, 12), (15, 20), (20, 15), (24, 7), (24, 18), (30, 40), (40, 30),
)  # fmt: skip
"""Resistance and reactance of whole ohms with a size of whole ohms."""
CLEAR, LEAST_SIZE, LEAST_APART, LEAST_SUM, FLAT, TRIES = 0.13, 0.3, 0.08, 0.4, 25.0, 500
BEFORE = {1: 3, 2: 1, 3: 2}


@dataclass(frozen=True, slots=True)
class Three:
    """A connection on whole volts between lines: loads in whole ohms (resistance, reactance), which line is asked
    for, and the sequence."""

    connection: str
    volts: int
    loads: tuple[tuple[int, int], tuple[int, int], tuple[int, int]]
    line: int
    sequence: str = "123"

    @property
    def drawn(self) -> tuple[complex, complex]:
        """The two branch currents that are drawn, the second turned round, from the first line voltage."""
        second = -120.0 if self.sequence == "123" else 120.0
        angles = (0.0, second, -second)
        flows = [
            phasor.polar(float(self.volts), angle) / complex(*load)
            for angle, load in zip(angles, self.loads, strict=True)
        ]
        return flows[self.line - 1], -flows[BEFORE[self.line] - 1]


def _drawn(dice: Dice, tier: str) -> Three:
    volts, line = VOLTAGES[dice.below(len(VOLTAGES))], dice.between(1, 3)
    if tier == "support":
        load = (5 * dice.between(2, 20), 0)
        return Three("star", volts, (load, load, load), line)
    if tier == "core":
        one, two, three = ((dice.between(10, 80), 0) for _ in range(3))
        return Three("delta", volts, (one, two, three), line)
    made = []
    for _ in range(3):
        resistance, reactance = PAIRS[dice.below(len(PAIRS))]
        made.append((resistance, (1, 1, -1, 0)[dice.below(4)] * reactance))
    return Three("delta", volts, (made[0], made[1], made[2]), line, ("123", "132")[dice.below(2)])


def accepted(problem: Three) -> bool:
    """Whether a problem may be set: in delta both currents fit a sheet, cross well, and mistakes lie clear."""
    if problem.connection == "star":
        return True
    first, second = problem.drawn
    sizes = [phasor.magnitude(first), phasor.magnitude(second)]
    largest, whole = max(sizes), first + second
    if min(sizes) < LEAST_SIZE * largest or math.fabs(sizes[0] - sizes[1]) < LEAST_APART * largest:
        return False
    turn = math.fabs(wrap(phasor.angle(second) - phasor.angle(first)))
    if not FLAT <= turn <= 180.0 - FLAT or phasor.magnitude(whole) < LEAST_SUM * largest:
        return False
    ends = [first - second, second - first, first, second]
    for part in (first, second):
        angle, size = phasor.angle(part), phasor.magnitude(part)
        if math.fabs(angle) > 1.0:
            ends.append(whole - part + phasor.polar(size, -angle))
    ends.append(phasor.polar(sizes[1], phasor.angle(first)) + phasor.polar(sizes[0], phasor.angle(second)))
    return all(phasor.magnitude(end - whole) >= CLEAR * largest for end in ends)


def three_of(code: Code) -> Three:
    """The loads of a code. Raises NoProblem."""
    dice = dice_of_code(code)
    for _ in range(TRIES):
        problem = _drawn(dice, code.tier)
        if accepted(problem):
            return problem
    raise NoProblem(str(code))
