"""The one way in which writers write numbers, so that equal drawings give equal bytes."""

import math
from functools import lru_cache

from pycore.errors import DrawingError

_ZEROS = frozenset(("-0.0000", "0.0000"))


@lru_cache(maxsize=8192)
def coordinate(value: float) -> str:
    """Return a length in mm (or an angle in degrees) with at most 4 decimals, without trailing zeros or "-0".

    Exact within 0.00005. Raises DrawingError for NaN and infinities. Recent numbers are cached, because most of a sheet
    stays the same from one edit to the next.
    """
    if not math.isfinite(value):
        raise DrawingError(f"a drawing holds {value!r} where a finite number belongs")
    text = f"{value:.4f}"
    if text in _ZEROS:
        return "0"
    return text.rstrip("0").rstrip(".")


def coarse(value: float) -> str:
    """As ``coordinate`` with 2 decimals: for drawings that nobody measures with a ruler."""
    return coordinate(round(value, 2))


def extent(value: float) -> str:
    """Return a radius, line width or page size: as ``coordinate``, and never negative."""
    if value < 0.0:
        raise DrawingError(f"a drawing holds the size {value!r}, which is below zero")
    return coordinate(value)


def factor(value: float) -> str:
    """Return a pure number, such as a cosine, with at most 8 decimals; otherwise as ``coordinate``."""
    if not math.isfinite(value):
        raise DrawingError(f"a drawing holds {value!r} where a finite number belongs")
    text = f"{value:.8f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
