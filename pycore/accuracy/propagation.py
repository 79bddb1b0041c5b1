"""The uncertainty of repeated readings (type A).

Source: JCGM 100:2008 (GUM), clauses 4.2 and 5.2; its example H.2 is a test of this module.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

Vector = tuple[float, ...]
Matrix = tuple[Vector, ...]


class TooFewReadingsError(ValueError):
    """Raised for fewer than two readings."""


@dataclass(frozen=True, slots=True)
class RepeatedReadings:
    """Repeated readings of several quantities taken together: means, and covariance of the means."""

    means: Vector
    covariance: Matrix

    @property
    def deviations(self) -> Vector:
        """Standard uncertainties of the means."""
        return tuple(math.sqrt(self.covariance[index][index]) for index in range(len(self.means)))


def type_a(*series: Sequence[float]) -> RepeatedReadings:
    """Type A evaluation (GUM 4.2 and 5.2.3): series of equal length, read together.

    Raises TooFewReadingsError for fewer than two readings, ValueError for unequal lengths.
    """
    count = len(series[0])
    if count < 2:
        raise TooFewReadingsError("a scatter needs at least two readings")
    if any(len(one) != count for one in series):
        raise ValueError("the series are of unequal length")
    means = tuple(math.fsum(one) / count for one in series)
    covariance = tuple(
        tuple(
            math.fsum((a - mean_a) * (b - mean_b) for a, b in zip(one, other, strict=True)) / (count * (count - 1))
            for other, mean_b in zip(series, means, strict=True)
        )
        for one, mean_a in zip(series, means, strict=True)
    )
    return RepeatedReadings(means, covariance)
