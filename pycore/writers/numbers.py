"""The one way in which writers write a number, so that equal drawings give equal bytes."""

import math
from functools import lru_cache

from pycore.errors import DrawingError

_ZEROS = frozenset(("-0.0000", "0.0000"))


@lru_cache(maxsize=8192)
def coordinate(value: float) -> str:
    """A length in mm (or an angle in degrees) to 4 decimals, without idle zeros or "-0".

    Exact within 0.00005. Raises DrawingError for NaN and infinities, which no file may hold.
    Most of a sheet's numbers stay from one edit to the next, so the last ones are kept.
    """
    if not math.isfinite(value):
        raise DrawingError(f"a drawing holds {value!r} where a finite number belongs")
    text = f"{value:.4f}"
    if text in _ZEROS:
        return "0"
    return text.rstrip("0").rstrip(".")


def coarse(value: float) -> str:
    """As ``coordinate``, to 2 decimals: for drawings that nobody measures with a ruler."""
    return coordinate(round(value, 2))


def extent(value: float) -> str:
    """A radius, line width or page size: as ``coordinate``, and never below zero."""
    if value < 0.0:
        raise DrawingError(f"a drawing holds the size {value!r}, which is below zero")
    return coordinate(value)


def factor(value: float) -> str:
    """A pure number, such as a cosine, to 8 decimals; otherwise as ``coordinate``."""
    if not math.isfinite(value):
        raise DrawingError(f"a drawing holds {value!r} where a finite number belongs")
    text = f"{value:.8f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
