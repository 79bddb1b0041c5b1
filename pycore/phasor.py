"""Phasors as complex numbers: magnitude, angle in degrees (anticlockwise positive), sums.

A magnitude is an r.m.s. value in SI units. Library functions that differ between
platforms (``abs`` and ``cmath`` of a complex number, ``sum`` of floats) are not used.
"""

import math
from collections.abc import Iterable

from pycore import trig

ZERO_SHARE = 1e-12
"""A sum smaller than this share of the sum of magnitudes is zero: the rest is rounding."""


def polar(magnitude: float, degrees: float) -> complex:
    """The phasor of this magnitude at this angle."""
    return complex(magnitude * trig.cosine(degrees), magnitude * trig.sine(degrees))


def magnitude(phasor: complex) -> float:
    """Length of a phasor, in its own unit."""
    return math.hypot(phasor.real, phasor.imag)


def angle(phasor: complex) -> float:
    """Angle in degrees, -180 < angle <= 180; 0 for the zero phasor."""
    return trig.angle_of(phasor.real, phasor.imag)


def total(phasors: Iterable[complex]) -> complex:
    """Phasor sum, exactly 0 when what is left is only rounding."""
    terms = tuple(phasors)
    added = complex(
        math.fsum(term.real for term in terms), math.fsum(term.imag for term in terms)
    )
    size = math.fsum(magnitude(term) for term in terms)
    return 0j if magnitude(added) <= ZERO_SHARE * size else added


def wrap(degrees: float) -> float:
    """The same direction with -180 < angle <= 180."""
    turned = math.fmod(degrees, 360.0)
    if turned > 180.0:
        return turned - 360.0
    return turned + 360.0 if turned <= -180.0 else turned
