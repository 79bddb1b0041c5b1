"""Phasors as complex numbers: magnitude, angle in degrees (anticlockwise positive), sums.

A magnitude is an r.m.s. value in SI units. Library functions that differ between
platforms (``abs`` and ``cmath`` of a complex number, ``sum`` of floats) are not used.
"""

import math
from collections.abc import Iterable

from pycore import trig

ZERO_SHARE = 1e-12
"""A sum below this share of the sum of magnitudes counts as zero: the rest is rounding."""


def polar(magnitude: float, degrees: float) -> complex:
    """Return the phasor with this magnitude and angle (degrees)."""
    return complex(magnitude * trig.cosine(degrees), magnitude * trig.sine(degrees))


def magnitude(phasor: complex) -> float:
    """Return the magnitude of a phasor, in its unit."""
    return math.hypot(phasor.real, phasor.imag)


def angle(phasor: complex) -> float:
    """Angle in degrees, -180 < angle <= 180; 0 for the zero phasor."""
    return trig.angle_of(phasor.real, phasor.imag)


def total(phasors: Iterable[complex]) -> complex:
    """Return the phasor sum; exactly 0 if the rest is only rounding."""
    terms = tuple(phasors)
    added = complex(
        math.fsum(term.real for term in terms), math.fsum(term.imag for term in terms)
    )
    size = math.fsum(magnitude(term) for term in terms)
    return 0j if magnitude(added) <= ZERO_SHARE * size else added


def wrap(degrees: float) -> float:
    """Return the equivalent angle with -180 < angle <= 180."""
    turned = math.fmod(degrees, 360.0)
    if turned > 180.0:
        return turned - 360.0
    return turned + 360.0 if turned <= -180.0 else turned
