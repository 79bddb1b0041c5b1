"""Digits that are printed and carried on: results of a working that follow from the digits it prints."""

import math
from collections.abc import Callable

from pycore import quantity

TIE = 1e-9
"""Share of half a digit by which a value may miss a rounding limit: a tie may be rounded either way."""


def as_printed(value: float, decimals: int) -> float:
    """A value as a reader takes it from the page, printed with this many ``decimals``."""
    return float(f"{value:.{max(0, decimals)}f}")


def number_of(text: str) -> float:
    """A printed number without a unit, whatever its decimal mark."""
    return float(text.replace(",", ".").replace(quantity.MINUS, "-"))


def agrees(value: float, text: str) -> bool:
    """Whether a value, rounded to the decimals of a printed number without a unit, gives that number."""
    half = float(f"5e{-1 - quantity.decimals_of(text)}")
    return math.fabs(value - number_of(text)) <= half * (1.0 + TIE)


def fewest(least: int, most: int, holds: Callable[[int], bool]) -> int | None:
    """The least number of decimals from ``least`` to ``most`` for which ``holds`` is true, or None."""
    return next((decimals for decimals in range(least, most + 1) if holds(decimals)), None)
