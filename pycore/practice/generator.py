"""Problems made from a code: a code gives the same problem for ever.

A calculator's generator uses only the seeded integers and phasor arithmetic: no paper, no labels, no tolerance. Tests
check its problems against those. A later version of a generator is a second function; the first one is kept.
"""

from collections.abc import Callable, Sequence
from functools import lru_cache
from itertools import pairwise
from typing import Any, TypeVar

from pycore.practice.codes import Code
from pycore.practice.seeded_integers import SeededIntegers, integers_of_code

TRIES = 500
LEAST_CROSSING = 25.0
"""Degrees between two lines of a parallelogram that cross, at the least."""
Problem = TypeVar("Problem")


class NoProblemError(ValueError):
    """Raised when no acceptable problem is found: it never is for a code that ``codes.read`` gives."""


def first_accepted(
    code: Code, draw: Callable[[SeededIntegers, str], Problem], accepted: Callable[[Problem], bool]
) -> Problem:
    """The first problem of the code's tier, in the order of its integers, that may be set. Raises NoProblemError."""
    found: Problem = _first_accepted(code, draw, accepted)
    return found


@lru_cache(maxsize=16)
def _first_accepted(code: Code, draw: Callable[..., Any], accepted: Callable[..., bool]) -> Any:
    # A class set asks several times for the problem of one code: for the sheet, and for the short link on each page.
    integers = integers_of_code(code)
    for _ in range(TRIES):
        problem = draw(integers, code.tier)
        if accepted(problem):
            return problem
    raise NoProblemError(str(code))


def sizes_apart(sizes: Sequence[float], least: float, apart: float) -> bool:
    """Whether no size is tiny, and no two are nearly alike; ``least``, ``apart``: shares of the largest."""
    ordered = sorted(sizes)
    largest = ordered[-1]
    return ordered[0] >= least * largest and all(two - one >= apart * largest for one, two in pairwise(ordered))
