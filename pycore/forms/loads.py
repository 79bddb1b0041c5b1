"""Loads typed as impedances: ohms in either form, a power at a known voltage, or open."""

import math
from collections.abc import Callable

from pycore import phasor, quantity
from pycore.forms.phasor_text import read_complex
from pycore.forms.reading import Reader
from pycore.quantity import QuantityError
from pycore.words import loads as words

LEAST_OHMS, MOST_OHMS = 1e-3, 1e6
ROUNDING = 1e-9
"""A negative resistance below this share of the size is only rounding of the polar form."""
TIDY = 1e-12
"""A component below this share of the size is zero."""


def read_load(
    reader: Reader, name: str, bad: Callable[[str, str], str], volts: float | None = None
) -> complex | None:
    """Return an impedance in ohms; None if nothing is connected or a fault was noted.

    A power is taken at ``volts`` (r.m.s.), if known. ``bad`` words a text that cannot be read.
    """
    text, label = reader.text(name), reader.label(name)
    if text.lower() == words.OPEN:
        return None
    try:
        value = _impedance(text, volts)
    except QuantityError as problem:
        reader.fault(name, bad(label, text), problem.fragment)
        return None
    size = phasor.magnitude(value)
    if not LEAST_OHMS <= size <= MOST_OHMS or value.real < -ROUNDING * size:
        reader.fault(name, words.load_range(label, text))
        return None
    # In polar form a right angle leaves a part that is only rounding: it has no meaning.
    real, imaginary = (0.0 if math.fabs(one) < TIDY * size else one for one in (value.real, value.imag))
    return complex(real, imaginary)


def _impedance(text: str, volts: float | None) -> complex:
    """Return ohms, or a power as the resistance that takes it. Raises QuantityError."""
    try:
        return read_complex(text, "Ω")
    except QuantityError:
        if volts is None:
            raise
        watts = quantity.read(text, "W")
        return complex(volts * volts / watts, 0.0) if watts > 0 else 0j
