"""Phasors entered one by one, and their sum, or the first minus all others."""

from dataclasses import dataclass

from pycore import phasor
from pycore.phasor import wrap


@dataclass(frozen=True, slots=True)
class EnteredPhasor:
    """One phasor as it was entered: size (SI), angle in degrees, its number from 1, and whether it was entered by its
    two rectangular parts."""

    number: int
    size: float
    angle: float
    rectangular: bool = False


@dataclass(frozen=True, slots=True)
class PhasorSum:
    """The phasors that are added (those subtracted are turned by 180 degrees), and what they add to."""

    parts: tuple[EnteredPhasor, ...]
    total: complex


def add(phasors: tuple[EnteredPhasor, ...], *, difference: bool = False) -> PhasorSum:
    """The sum of phasors, or number 1 minus all others, even if number 1 is zero and so is not among them.
    Raises ValueError for none."""
    if not phasors:
        raise ValueError("there is nothing to add")
    turned = tuple(
        EnteredPhasor(one.number, one.size, wrap(one.angle + (180.0 if difference and one.number != 1 else 0.0)))
        for one in phasors
    )
    return PhasorSum(turned, phasor.total(phasor.polar(one.size, one.angle) for one in turned))
