"""Harmonics of three line currents and of the neutral that they share.

Order h turns h times as fast: the angle of its phasor in a line is h times the line's angle, plus its own phase.
Orders divisible by three (triplen) have one direction in all lines and add up in the neutral when they are
equal and in phase; of the others h mod 3 = 1 follows the sequence and h mod 3 = 2 goes against it
(common practice). R.m.s. values of different orders add by their squares (Parseval).
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from pycore import phasor
from pycore.circuits.supply import VOLTAGE_ANGLES
from pycore.phasor import wrap

SEQUENCES = {1: "positive", 2: "negative", 0: "zero"}


@dataclass(frozen=True, slots=True)
class DistortedCurrents:
    """Three fundamental line currents (A, r.m.s.), their lags (degrees), and the harmonics as shares of each
    line's own fundamental by order; ``phases`` the angle of an order against the fundamental of its line
    (degrees at the harmonic's own frequency)."""

    currents: tuple[float, float, float]
    lags: tuple[float, float, float]
    shares: Mapping[int, float]
    phases: Mapping[int, float]


@dataclass(frozen=True, slots=True)
class HarmonicOrder:
    """One order: its sequence, the phasors of the three lines and their sum in the neutral (A, r.m.s.)."""

    number: int
    sequence: str
    lines: tuple[complex, complex, complex]
    neutral: complex


@dataclass(frozen=True, slots=True)
class Spectrum:
    """All orders, and the r.m.s. values of lines and neutral (A)."""

    orders: tuple[HarmonicOrder, ...]
    lines: tuple[float, float, float]
    neutral: float


def fundamental_from_total(total: float, shares: Mapping[int, float], *, of_total: bool) -> float:
    """Return the fundamental (A) of a line whose r.m.s. total (A) is known; shares are of the total or of the
    fundamental.

    Raises ValueError if shares of the total leave nothing for the fundamental.
    """
    squares = math.fsum(share * share for share in shares.values())
    if of_total:
        left = 1.0 - squares
        if left <= 0.0:
            raise ValueError("the harmonics are as large as the total")
        return total * math.sqrt(left)
    return total / math.sqrt(1.0 + squares)


def solve(load: DistortedCurrents) -> Spectrum:
    """Return the phasors of every order in lines and neutral (A, r.m.s.; degrees from the L1 phase voltage)."""
    orders: list[HarmonicOrder] = []
    for number in (1, *sorted(load.shares)):
        share = 1.0 if number == 1 else load.shares[number]
        turned = 0.0 if number == 1 else load.phases.get(number, 0.0)
        one, two, three = (
            phasor.polar(share * size, wrap(number * (angle - lag) + turned))
            for size, angle, lag in zip(load.currents, VOLTAGE_ANGLES["123"], load.lags, strict=True)
        )
        orders.append(HarmonicOrder(number, SEQUENCES[number % 3], (one, two, three), phasor.total((one, two, three))))
    return Spectrum(
        tuple(orders),
        (_root([o.lines[0] for o in orders]), _root([o.lines[1] for o in orders]), _root([o.lines[2] for o in orders])),
        _root([o.neutral for o in orders]),
    )


def _root(phasors: list[complex]) -> float:
    """The r.m.s. value of phasors of different orders."""
    return math.sqrt(math.fsum(p.real * p.real + p.imag * p.imag for p in phasors))


