"""Uncertainty carried through any function: J V J-transposed, the Jacobian by central differences.

Source: JCGM 100:2008 (GUM), clauses 5.1 and 5.2. The oracle of pycore's own shorter ways.
"""

import math
from collections.abc import Callable, Sequence

from pycore.accuracy.propagation import Matrix, Vector


def jacobian(function: Callable[[Vector], Vector], at: Vector, steps: Vector) -> Matrix:
    """Return the partial derivatives, one row for each result, by central differences with these steps."""
    columns: list[Vector] = []
    for index, step in enumerate(steps):
        ahead = tuple(value + (step if place == index else 0.0) for place, value in enumerate(at))
        behind = tuple(value - (step if place == index else 0.0) for place, value in enumerate(at))
        difference = zip(function(ahead), function(behind), strict=True)
        columns.append(tuple((high - low) / (2 * step) for high, low in difference))
    return tuple(zip(*columns, strict=True))


def carried(derivatives: Matrix, covariance: Matrix) -> Matrix:
    """Return the covariance of results from their derivatives and the covariance of the inputs."""
    half = [
        [math.fsum(row[k] * covariance[k][j] for k in range(len(row))) for j in range(len(covariance))]
        for row in derivatives
    ]
    return tuple(
        tuple(math.fsum(left[k] * row[k] for k in range(len(row))) for row in derivatives) for left in half
    )


def diagonal(deviations: Sequence[float]) -> Matrix:
    """Return the covariance of independent inputs with these standard uncertainties."""
    return tuple(
        tuple(value * value if row == column else 0.0 for column in range(len(deviations)))
        for row, value in enumerate(deviations)
    )


def correlation(covariance: Matrix, first: int, second: int) -> float:
    """Return the correlation coefficient of two quantities; 0 if one has no uncertainty."""
    product = covariance[first][first] * covariance[second][second]
    return covariance[first][second] / math.sqrt(product) if product > 0 else 0.0
