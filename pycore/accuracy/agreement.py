"""Whether two results agree: E_n = |x1 - x2| / U(x1 - x2), with U at 95 % of the difference.

Source: ISO 13528 and ISO/IEC 17043 (E_n for independent results, U the root of the sum of squares). Errors that two
results share are removed from the uncertainty of their difference first.
"""

import math
from dataclasses import dataclass

COVERAGE = 2.0
"""Coverage factor of an expanded uncertainty at about 95 % (JCGM 100:2008, 6.3.3)."""
_STUDENT = (
    13.97, 4.53, 3.31, 2.87, 2.65, 2.52, 2.43, 2.37, 2.32, 2.28, 2.25, 2.23, 2.21, 2.20, 2.18, 2.17, 2.16, 2.15, 2.14,
    2.13,
)  # fmt: skip
"""Student's t for 95.45 % and 1 to 20 degrees of freedom (JCGM 100:2008, table G.2, from memory)."""
_SLOWER = ((25, 2.11), (30, 2.09), (35, 2.07), (40, 2.06), (50, 2.05), (100, 2.025))


def coverage_factor(freedom: float) -> float:
    """Return the coverage factor for a number of effective degrees of freedom: few readings need a wider interval.

    Source: JCGM 100:2008, G.4.1 (rounded down) and table G.2.
    """
    if freedom < len(_STUDENT) + 1:
        return _STUDENT[max(1, int(freedom)) - 1]
    coverage = _STUDENT[-1]
    for least, factor in _SLOWER:
        if freedom >= least:
            coverage = factor
    return coverage if freedom < 1000.0 else COVERAGE


def effective_freedom(combined: float, scatter: float, count: int) -> float:
    """Return the degrees of freedom of a ``combined`` standard uncertainty, of which ``scatter`` comes from ``count``
    readings.

    The rest has infinite degrees of freedom (Welch-Satterthwaite, JCGM 100:2008, G.4.1). Infinite without scatter.
    """
    if scatter <= 0.0 or count < 2:
        return math.inf
    share = scatter / combined
    return (count - 1) / (share * share * share * share)


@dataclass(frozen=True, slots=True)
class Verdict:
    """The comparison of two results: their difference, its expanded uncertainty, E_n (None if the uncertainty is zero)
    and whether they agree."""

    difference: float
    expanded: float
    number: float | None
    agree: bool


def verdict(first: float, second: float, standard: float, factor: float = COVERAGE) -> Verdict:
    """Compare two results: their difference has this standard uncertainty; use this coverage factor.

    Raises ValueError for an uncertainty that is negative or not finite.
    """
    if not standard >= 0.0 or math.isinf(standard):
        raise ValueError(f"{standard} is no uncertainty")
    apart = first - second
    expanded = factor * standard
    if expanded == 0.0:
        return Verdict(apart, 0.0, None, apart == 0.0)
    number = math.fabs(apart) / expanded
    return Verdict(apart, expanded, number, number <= 1.0)
