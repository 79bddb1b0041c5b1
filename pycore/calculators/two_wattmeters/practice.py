"""Practice: problems from codes, and what mistakes give."""

from dataclasses import dataclass

from pycore import trig
from pycore.calculators.neutral_current.practice import FLAT, TRIES
from pycore.practice.codes import TIERS, Code
from pycore.practice.dice import NoProblem, dice_of


@dataclass(frozen=True, slots=True)
class Watts:
    """What both wattmeters read, in whole tens of watts."""

    first: int
    second: int


def watts_of(code: Code) -> Watts:
    """Both readings of a code: support at 0.5 or better, core anywhere, stretch with one reading below zero."""
    dice = dice_of(code.version, code.topic, TIERS.index(code.tier), code.seed, code.number)
    least, most = {"support": (15, 50), "core": (15, 58), "stretch": (63, 80)}[code.tier]
    for _ in range(TRIES):
        whole, lag = 100.0 * dice.between(10, 80), float(dice.between(least, most))
        first = round(whole * trig.cosine(30.0 + lag) / 10.0) * 10
        second = round(whole * trig.cosine(30.0 - lag) / 10.0) * 10
        # A reading near nothing could not be told from nothing on paper, nor an angle near a quarter turn.
        if -FLAT * 10 < first < FLAT * 10 or first == second:
            continue
        return Watts(first, second)
    raise NoProblem(str(code))
