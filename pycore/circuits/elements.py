"""Resistors, coils and capacitors at one frequency.

Reactance of a coil: X = 2 pi f L; of a capacitor: X = 1 / (2 pi f C), counted negative (IEC 60050-131,
entries on reactance; any textbook of electrical principles).
"""

import math
from dataclasses import dataclass

RESISTOR, COIL, CAPACITOR = "R", "L", "C"


@dataclass(frozen=True, slots=True)
class Element:
    """One element. ``kind``: R, L or C. ``value``: in ohms, henries or farads, or if ``in_ohms``, its reactance in ohms
    at the circuit's frequency."""

    kind: str
    value: float
    in_ohms: bool = False


def impedance(element: Element, hertz: float, own: float | None = None) -> complex:
    """Return the impedance in ohms at ``hertz``; ``own`` is the frequency at which a reactance in ohms was given.

    Raises ValueError for a capacitor of 0 F, which carries no current.
    """
    if element.kind == RESISTOR:
        return complex(element.value, 0.0)
    omega = math.tau * hertz
    share = hertz / own if own else 1.0
    if element.kind == COIL:
        return complex(0.0, element.value * share if element.in_ohms else omega * element.value)
    if element.value == 0.0:
        raise ValueError("a capacitor of 0 F lets no current through")
    return complex(0.0, -element.value / share if element.in_ohms else -1.0 / (omega * element.value))


def inductance(element: Element, hertz: float) -> float:
    """Return the inductance of a coil in henries."""
    return element.value / (math.tau * hertz) if element.in_ohms else element.value


def elastance(element: Element, hertz: float) -> float:
    """Return 1 / capacitance of a capacitor, in 1/farad."""
    return element.value * math.tau * hertz if element.in_ohms else 1.0 / element.value
