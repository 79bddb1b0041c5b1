"""Practice problems of harmonics and of two wattmeters, drawn from a code: the same for ever (version 1)."""

from dataclasses import dataclass

from pycore import phasor, trig
from pycore.phasor import wrap
from pycore.practice.codes import Code
from pycore.practice.dice import Dice, dice_of_code
from pycore.practice.generator import FLAT, TRIES, VOLTAGES, NoProblem

SHARES = (10, 15, 20, 25, 30, 40)
LEAST_SUM, MOST_SUM, LEAST_LINE = 0.3, 2.2, 0.3


@dataclass(frozen=True, slots=True)
class Distortion:
    """Fundamentals in tenths of an ampere, lags in whole degrees, per cent of third harmonic, the order asked for."""

    tenths: tuple[int, int, int]
    lags: tuple[int, int, int]
    third: int
    order: int

    @property
    def phasors(self) -> tuple[complex, ...]:
        """The phasors of the order asked for, in tenths of an ampere of the fundamental."""
        return tuple(
            phasor.polar(float(size), wrap(self.order * (angle - lag)))
            for size, angle, lag in zip(self.tenths, VOLTAGES, self.lags, strict=True)
        )


def _distortion(dice: Dice, tier: str) -> Distortion:
    if tier == "support":
        sizes = [10 * dice.between(5, 25) for _ in range(3)]
        return Distortion((sizes[0], sizes[1], sizes[2]), (0, 0, 0), SHARES[dice.below(len(SHARES))], 3)
    sizes = [dice.between(50, 250) for _ in range(3)]
    lags = [0, 0, 0] if tier == "core" else [5 * dice.between(0, 8) for _ in range(3)]
    order = 1 if tier == "core" else 3
    return Distortion(
        (sizes[0], sizes[1], sizes[2]), (lags[0], lags[1], lags[2]), SHARES[dice.below(len(SHARES))], order
    )


def may_be_set(problem: Distortion) -> bool:
    """Whether a problem of harmonics may be set."""
    largest, least = max(problem.tenths), min(problem.tenths)
    if least < LEAST_LINE * largest or len(set(problem.tenths)) < 3:
        return False
    if problem.order == 3 and any(problem.lags) and len(set(problem.lags)) < 3:
        return False
    size = phasor.magnitude(phasor.total(problem.phasors))
    most = 3.0 if problem.order == 3 and not any(problem.lags) else MOST_SUM
    return LEAST_SUM * largest <= size <= most * largest


def distortion_of(code: Code) -> Distortion:
    """The problem of harmonics that a code stands for. Raises NoProblem."""
    dice = dice_of_code(code)
    for _ in range(TRIES):
        problem = _distortion(dice, code.tier)
        if may_be_set(problem):
            return problem
    raise NoProblem(str(code))


@dataclass(frozen=True, slots=True)
class Watts:
    """What both wattmeters read, in whole tens of watts."""

    first: int
    second: int


def watts_of(code: Code) -> Watts:
    """Both readings of a code: support at 0.5 or better, core anywhere, stretch with one reading below zero."""
    dice = dice_of_code(code)
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
