"""Real roots of polynomials, with + - x / and square roots only: the same bits on every machine."""

import math
from collections.abc import Sequence
from itertools import pairwise

CANCELLED = 1e-13
"""A sum below this share of its terms' sizes is zero: the rest is rounding."""


def product(first: Sequence[float], second: Sequence[float]) -> list[float]:
    """Return the product of two polynomials; coefficients stand from the constant term upwards, here and below."""
    result = [0.0] * (len(first) + len(second) - 1)
    for place, one in enumerate(first):
        for other_place, other in enumerate(second):
            result[place + other_place] += one * other
    return result


def positive_roots(coefficients: Sequence[float]) -> tuple[float, ...]:
    """Return the positive real roots in ascending order, a multiple root once; none of the zero polynomial.

    Between neighbouring turning points (the roots of the derivative) a polynomial crosses zero at most once, so each
    root is bracketed before it is found by bisection: none is missed.
    """
    terms = list(coefficients)
    while terms and terms[-1] == 0.0:
        terms.pop()
    while terms and terms[0] == 0.0:
        terms.pop(0)
    if len(terms) < 2:
        return ()
    turning = positive_roots([place * value for place, value in enumerate(terms)][1:])
    # Cauchy's bounds on the size of a root, from above and from below.
    low = 0.5 / (1.0 + max(math.fabs(value / terms[0]) for value in terms[1:]))
    high = 2.0 * (1.0 + max(math.fabs(value / terms[-1]) for value in terms[:-1]))
    points = [low, *(value for value in turning if low < value < high), high]
    roots = [point for point in points if _sign(terms, point) == 0]
    for start, end in pairwise(points):
        if _sign(terms, start) * _sign(terms, end) < 0:
            roots.append(_bisect(terms, start, end))
    return tuple(sorted(roots))


def _sign(terms: Sequence[float], at: float) -> int:
    """The sign of a polynomial at a positive value; 0 where nothing but rounding is left."""
    # Above 1 the terms are taken in descending powers of 1 / x, so that nothing overflows.
    ordered, x = (terms, at) if at <= 1.0 else (terms[::-1], 1.0 / at)
    total = size = 0.0
    for value in reversed(ordered):
        total, size = total * x + value, size * x + math.fabs(value)
    if math.fabs(total) <= CANCELLED * size:
        return 0
    return 1 if total > 0 else -1


def _bisect(terms: Sequence[float], start: float, end: float) -> float:
    """The root between two values of opposite sign."""
    rising = _sign(terms, end)
    while True:
        middle = math.sqrt(start) * math.sqrt(end) if end > 2.0 * start else start + (end - start) / 2.0
        if not start < middle < end:
            return middle
        sign = _sign(terms, middle)
        if sign == 0:
            return _centre(terms, start, middle, end)
        start, end = (start, middle) if sign == rising else (middle, end)


def _centre(terms: Sequence[float], start: float, zero: float, end: float) -> float:
    """The middle of the values around ``zero`` at which nothing but rounding is left."""
    edges = []
    for outside in (start, end):
        inside = zero
        while True:
            middle = inside + (outside - inside) / 2.0
            if middle in (inside, outside):
                break
            inside, outside = (middle, outside) if _sign(terms, middle) == 0 else (inside, middle)
        edges.append(inside)
    return edges[0] + (edges[1] - edges[0]) / 2.0
