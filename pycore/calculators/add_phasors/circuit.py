"""Phasors given one by one, and their sum, or the first less all others."""

from dataclasses import dataclass

from pycore import phasor
from pycore.phasor import wrap


@dataclass(frozen=True, slots=True)
class EnteredPhasor:
    """One phasor as it was given: size (SI), angle in degrees, its number from 1, and whether it was given by its
    two rectangular parts."""

    number: int
    size: float
    angle: float
    rectangular: bool = False


@dataclass(frozen=True, slots=True)
class PhasorSum:
    """The phasors that are added (those taken off are turned by 180 degrees), and what they come to."""

    parts: tuple[EnteredPhasor, ...]
    total: complex


def add(given: tuple[EnteredPhasor, ...], *, difference: bool = False) -> PhasorSum:
    """The sum of phasors, or number 1 less all others, even where number 1 is nothing and so is not among them.
    Raises ValueError for none."""
    if not given:
        raise ValueError("there is nothing to add")
    turned = tuple(
        EnteredPhasor(one.number, one.size, wrap(one.angle + (180.0 if difference and one.number != 1 else 0.0)))
        for one in given
    )
    return PhasorSum(turned, phasor.total(phasor.polar(one.size, one.angle) for one in turned))
