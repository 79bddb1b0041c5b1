"""Where a function of one number is zero: the size of an error that would explain a reading."""

import math
from collections.abc import Callable

_HALVINGS = 44


def _root(function: Callable[[float], float], low: float, high: float) -> float | None:
    """Return a sign change of a function between two places, by bisection; None if there is none."""
    at_low, at_high = function(low), function(high)
    if at_low == 0.0:
        return low
    if math.isnan(at_low) or math.isnan(at_high) or (at_low < 0.0) == (at_high < 0.0):
        return None
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        value = function(middle)
        if (value < 0.0) == (at_low < 0.0):
            low = middle
        else:
            high = middle
    return (low + high) / 2


def roots(function: Callable[[float], float], reach: float) -> tuple[float, ...]:
    """Return the root nearest to zero on either side within ±reach, searched in steps of a fortieth of it."""
    step = reach / 40.0
    solutions: list[float] = []
    for sign in (1.0, -1.0):
        for index in range(40):
            root = _root(function, sign * index * step, sign * (index + 1) * step)
            if root is not None:
                solutions.append(root)
                break
    return tuple(solutions)
