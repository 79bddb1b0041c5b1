"""A phasor as people type it: size and angle, or rectangular form with j."""

import re

from pycore import phasor, quantity
from pycore.quantity import QuantityError

_BETWEEN = re.compile(r"\s*(?:∠|<|@|\bat\b|/_)\s*", re.IGNORECASE)
_PARTS = re.compile(r"([^jJiI]*?[^\s+\-−jJiI])?\s*([+\-−]?)\s*[jJiI]\s*(.*)", re.DOTALL)


def read_phasor(text: str, unit: str) -> tuple[float, float]:
    """Return the size (SI, 0 or more) and angle in degrees of a text such as ``20 at 60``, ``20 V ∠ -30°`` or ``10 +
    j17.3``.

    A number alone has the angle 0; a negative size is turned by 180 degrees. Raises QuantityError.
    """
    pieces = _BETWEEN.split(text.strip())
    if len(pieces) > 2:
        raise QuantityError("number", text)
    if len(pieces) == 2:
        return _polar(quantity.read(pieces[0], unit), quantity.read(pieces[1], "°"))
    if any(letter in text for letter in "jJiI"):
        return _rectangular(text, unit)
    return _polar(quantity.read(text, unit), 0.0)


def read_complex(text: str, unit: str) -> complex:
    """The same text as a complex number (SI): of a rectangular form the very parts that were typed.

    Raises QuantityError.
    """
    return complex(*_parts(text, unit)) if is_rectangular(text) else phasor.polar(*read_phasor(text, unit))


def is_polar(text: str) -> bool:
    """Whether a phasor that could be read was typed as size and angle."""
    return len(_BETWEEN.split(text.strip())) == 2


def is_rectangular(text: str) -> bool:
    """Return whether a readable phasor was typed in rectangular form."""
    return len(_BETWEEN.split(text.strip())) == 1 and any(letter in text for letter in "jJiI")


def _polar(size: float, degrees: float) -> tuple[float, float]:
    if not -3600.0 <= degrees <= 3600.0:
        raise QuantityError("number", quantity.plain(degrees))
    return (-size, phasor.wrap(degrees + 180.0)) if size < 0 else (size + 0.0, phasor.wrap(degrees) + 0.0)


def _rectangular(text: str, unit: str) -> tuple[float, float]:
    value = complex(*_parts(text, unit))
    return phasor.magnitude(value), phasor.angle(value)


def _parts(text: str, unit: str) -> tuple[float, float]:
    """Real and imaginary part of a rectangular form. Raises QuantityError."""
    match = _PARTS.fullmatch(text.strip())
    if match is None:
        raise QuantityError("number", text)
    real, sign, imaginary = match.group(1), match.group(2), match.group(3).strip()
    if real and not sign:
        raise QuantityError("number", text)
    x = quantity.read(real, unit) if real else 0.0
    y = quantity.read(imaginary, unit) if imaginary else 1.0
    return x, -y if sign in ("-", "−") else y
