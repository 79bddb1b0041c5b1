"""Symmetrical components of three phasors, after C. L. Fortescue (Method of symmetrical co-ordinates, 1918).

With a = 1 at 120 degrees: 3 I0 = I1 + I2 + I3, 3 I+ = I1 + a I2 + a² I3, 3 I− = I1 + a² I2 + a I3.
"""

from dataclasses import dataclass

from pycore import phasor

TURNS = {"zero": (0.0, 0.0, 0.0), "positive": (0.0, 120.0, -120.0), "negative": (0.0, -120.0, 120.0)}
"""Degrees by which each phasor is turned before they are added, by component."""
Three = tuple[complex, complex, complex]


@dataclass(frozen=True, slots=True)
class Components:
    """The zero, positive and negative sequence component of the first phasor, and the sum of the phasors (3 I0),
    which for line currents is the neutral current."""

    zero: complex
    positive: complex
    negative: complex
    neutral_current: complex


def turned(phasors: Three, component: str) -> Three:
    """Return the three phasors as they are added for a component. Raises KeyError for an unknown component."""
    one, two, three = (
        value * phasor.polar(1.0, turn) if turn else value
        for value, turn in zip(phasors, TURNS[component], strict=True)
    )
    return one, two, three


def three_times(phasors: Three, component: str) -> complex:
    """Return three times a component of the first phasor: exactly 0 if only rounding errors are left."""
    return phasor.total(turned(phasors, component))


def components(phasors: Three) -> Components:
    """Return all three components of the first phasor, in the unit of the phasors."""
    zero, positive, negative = (three_times(phasors, component) for component in TURNS)
    return Components(zero / 3.0, positive / 3.0, negative / 3.0, zero)
