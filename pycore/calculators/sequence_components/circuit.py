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
    """The zero, positive and negative sequence component of the first phasor, and the sum of all three (3 I0)."""

    zero: complex
    positive: complex
    negative: complex
    together: complex


def turned(given: Three, part: str) -> Three:
    """The three phasors as they are added for a component. KeyError for none of ours."""
    one, two, three = (
        value * phasor.polar(1.0, turn) if turn else value for value, turn in zip(given, TURNS[part], strict=True)
    )
    return one, two, three


def threefold(given: Three, part: str) -> complex:
    """Three times a component of the first phasor: exactly 0 where only rounding is left."""
    return phasor.total(turned(given, part))


def components(given: Three) -> Components:
    """All three components."""
    zero, positive, negative = (threefold(given, part) for part in TURNS)
    return Components(zero / 3.0, positive / 3.0, negative / 3.0, zero)
