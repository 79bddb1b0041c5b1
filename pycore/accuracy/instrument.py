"""The limit of error of a clamp meter, and what follows for readings and for results calculated from them.

A limit is "± (a % of reading + n digits)" over a range. It is taken as a rectangular distribution unless the maker says
otherwise (common practice); its standard uncertainty is the limit divided by root three (JCGM 100:2008, 4.3.7). All
readings of one meter share its gain error.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pycore import phasor
from pycore.trig import ROOT_THREE

ROUND = 1.224
"""Half of 2.448: the 95 % circle of two equal errors, as an uncertainty that is expanded by 2."""


@dataclass(frozen=True, slots=True)
class Meter:
    """The limit of error of a meter: per cent of reading, digits, and the value of one digit (SI unit)."""

    percent: float = 2.0
    digits: float = 5.0
    digit: float = 0.01

    def limit(self, reading: float) -> float:
        """Return the limit of error of a reading."""
        return self.percent / 100.0 * math.fabs(reading) + self.digits * self.digit

    def standard(self, reading: float) -> float:
        """Return the standard uncertainty of a reading."""
        return self.limit(reading) / ROOT_THREE

    def gain(self) -> float:
        """Return the standard uncertainty of the part that grows with the reading, as a share of it."""
        return self.percent / 100.0 / ROOT_THREE

    def offset(self) -> float:
        """Return the standard uncertainty of the part in digits."""
        return self.digits * self.digit / ROOT_THREE


@dataclass(frozen=True, slots=True)
class ComputedSum:
    """A sum calculated from readings: its size, the sensitivity to each reading, and its standard uncertainty."""

    size: float
    sensitivities: tuple[float, ...]
    standard: float


def sensitivities(phasors: Sequence[complex], angles: Sequence[float]) -> tuple[float, ...]:
    """Return how the size of a phasor sum changes with the size of each phasor, directions unchanged.

    Zero for a sum of zero, which has no derivative.
    """
    total = phasor.total(phasors)
    size = phasor.magnitude(total)
    if size == 0.0:
        return tuple(0.0 for _ in phasors)
    unit = complex(total.real / size, total.imag / size)
    directions = [phasor.polar(1.0, angle) for angle in angles]
    return tuple(unit.real * one.real + unit.imag * one.imag for one in directions)


def computed(
    phasors: Sequence[complex], angles: Sequence[float], meter: Meter, *, one_meter: bool = False
) -> ComputedSum:
    """Return the size of a phasor sum of readings of this kind of meter, with its uncertainty.

    ``one_meter``: one meter took all readings, so its gain error is common to all. A sum of zero has no derivative; its
    uncertainty is the radius of the circle in which the errors end.
    """
    coefficients = sensitivities(phasors, angles)
    size = phasor.magnitude(phasor.total(phasors))
    sizes = [phasor.magnitude(one) for one in phasors]
    if size == 0.0:
        each = [meter.offset() if one_meter else meter.standard(value) for value in sizes if value > 0.0]
        return ComputedSum(0.0, coefficients, ROUND * math.sqrt(math.fsum(share * share for share in each) / 2))
    if not one_meter:
        parts = [c * meter.standard(value) for c, value in zip(coefficients, sizes, strict=True)]
    else:
        common = meter.gain() * math.fsum(c * value for c, value in zip(coefficients, sizes, strict=True))
        parts = [common, *(c * meter.offset() for c in coefficients)]
    return ComputedSum(size, coefficients, math.sqrt(math.fsum(share * share for share in parts)))


def difference(
    read: float,
    phasors: Sequence[complex],
    angles: Sequence[float],
    meter: Meter,
    *,
    one_meter: bool = False,
    scatter: float = 0.0,
) -> float:
    """Return the standard uncertainty of (calculated sum - reading of the sum), shared errors included.

    ``scatter``: of the mean, if the sum was read repeatedly (type A); the meter's limit remains (type B).
    """
    result = computed(phasors, angles, meter, one_meter=one_meter)
    if not one_meter or result.size == 0.0:
        return math.sqrt(math.fsum(share * share for share in (result.standard, meter.standard(read), scatter)))
    sizes = [phasor.magnitude(one) for one in phasors]
    grown = math.fsum(c * value for c, value in zip(result.sensitivities, sizes, strict=True))
    offsets = [c * meter.offset() for c in result.sensitivities]
    parts = [scatter, meter.gain() * (grown - read), meter.offset(), *offsets]
    return math.sqrt(math.fsum(share * share for share in parts))
