"""Whether two results agree: E_n = |x1 - x2| / U(x1 - x2), U at 95 % of the difference.

Source: ISO 13528 and ISO/IEC 17043 (E_n for independent results, U the root of the squares);
what two results share is taken out of the uncertainty of their difference first.
"""

import math
from dataclasses import dataclass

COVERAGE = 2.0
"""Coverage factor of an expanded uncertainty at about 95 % (JCGM 100:2008, 6.3.3)."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """Two results compared: their difference, its expanded uncertainty, E_n (None when the
    uncertainty is nothing) and whether they agree."""

    difference: float
    expanded: float
    number: float | None
    agree: bool


def verdict(first: float, second: float, standard: float) -> Verdict:
    """Compare two results whose difference has this standard uncertainty.

    Raises ValueError for an uncertainty below zero or not finite.
    """
    if not standard >= 0.0 or math.isinf(standard):
        raise ValueError(f"{standard} is no uncertainty")
    apart = first - second
    expanded = COVERAGE * standard
    if expanded == 0.0:
        return Verdict(apart, 0.0, None, apart == 0.0)
    number = math.fabs(apart) / expanded
    return Verdict(apart, expanded, number, number <= 1.0)
