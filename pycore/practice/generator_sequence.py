"""Problems of sequence components, drawn from a code: the same for ever.

Version 1 reads nothing but the dice and phasor arithmetic. Support: zero sequence of whole amperes 120 degrees
apart; core: zero or negative sequence, tenths, angles to 10 degrees; stretch: any component, angles to 5 degrees.
"""

import math
from dataclasses import dataclass
from itertools import combinations

from pycore import phasor
from pycore.phasor import wrap
from pycore.practice.codes import Code
from pycore.practice.dice import Dice, dice_of_code
from pycore.practice.generator import NoProblem

PARTS = ("zero", "positive", "negative")
TURNS = {"zero": (0.0, 0.0, 0.0), "positive": (0.0, 120.0, -120.0), "negative": (0.0, -120.0, 120.0)}
CLEAR, LEAST_SIZE, LEAST_APART, LEAST_SUM, TRIES = 0.13, 0.3, 0.08, 0.3, 500
LEAST_TURN = 12.0
"""Degrees between any two phasors as they are added, at the least, unless they lie along one line."""


@dataclass(frozen=True, slots=True)
class Sequence:
    """Three phasors in tenths of a unit and whole degrees, and the component asked for."""

    tenths: tuple[int, int, int]
    angles: tuple[int, int, int]
    part: str

    def ends(self, part: str) -> complex:
        """Three times a component."""
        return phasor.total(
            phasor.polar(float(size), float(angle) + turn)
            for size, angle, turn in zip(self.tenths, self.angles, TURNS[part], strict=True)
        )


def _drawn(dice: Dice, tier: str) -> Sequence:
    if tier == "support":
        one, two, three = (10 * dice.between(4, 24) for _ in range(3))
        return Sequence((one, two, three), (0, -120, 120), "zero")
    one, two, three = (dice.between(50, 300) for _ in range(3))
    if tier == "core":
        lags = [10 * dice.between(-3, 3) for _ in range(2)]
        return Sequence((one, two, three), (0, -120 - lags[0], 120 - lags[1]), ("zero", "negative")[dice.below(2)])
    lags = [5 * dice.between(-12, 12) for _ in range(2)]
    return Sequence((one, two, three), (0, -120 - lags[0], 120 - lags[1]), PARTS[dice.below(3)])


def accepted(problem: Sequence) -> bool:
    """Whether a problem may be set: nothing tiny or alike, a component worth drawing, the others clear of it."""
    largest, sizes = max(problem.tenths), sorted(problem.tenths)
    if sizes[0] < LEAST_SIZE * largest:
        return False
    if any(two - one < LEAST_APART * largest for one, two in zip(sizes, sizes[1:])):  # noqa: B905, RUF007
        return False
    seen = [float(angle) + turn for angle, turn in zip(problem.angles, TURNS[problem.part], strict=True)]
    for one, two in combinations(seen, 2):
        between = math.fabs(wrap(two - one))
        if 1e-9 < between < LEAST_TURN or between > 180.0 - LEAST_TURN:
            return False
    whole = problem.ends(problem.part)
    parts = [phasor.polar(float(size), angle) for size, angle in zip(problem.tenths, seen, strict=True)]
    ends = [problem.ends(part) for part in PARTS if part != problem.part]
    ends += [whole - part for part in parts] + [whole - part - part for part in parts]
    if phasor.magnitude(whole) < LEAST_SUM * largest:
        return False
    return all(phasor.magnitude(end - whole) >= CLEAR * largest for end in ends)


def sequence_of(code: Code) -> Sequence:
    """The three phasors of a code. Raises NoProblem."""
    dice = dice_of_code(code)
    for _ in range(TRIES):
        problem = _drawn(dice, code.tier)
        if accepted(problem):
            return problem
    raise NoProblem(str(code))
