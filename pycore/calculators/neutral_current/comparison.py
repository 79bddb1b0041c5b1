"""Two answers as the page prints them: difference, limit and E_n follow from the printed digits."""

import math
from dataclasses import dataclass

from pycore import quantity
from pycore.accuracy.agreement import Verdict
from pycore.quantity import NO_BREAK_SPACE, NumberFormat
from pycore.sums.carried import as_printed
from pycore.sums.workings import share_text

MOST_DECIMALS = 4
"""Decimals beyond the first ones with which two amounts that differ are told apart, at most."""
NUMBER_DECIMALS = 2
"""Decimals of E_n."""


@dataclass(frozen=True, slots=True)
class PrintedComparison:
    """Two answers, their difference and the most that is normal, as text with units; E_n ("" if there is none); the
    difference as a share of the second answer ("" if that is zero)."""

    first: str
    second: str
    apart: str
    normal: str
    number: str
    share: str


def printed(
    first: float, second: float, comparison: Verdict, writing: NumberFormat, finest: int = 0, *,
    with_number: bool = False,
) -> PrintedComparison:
    """Print two answers (A) and their comparison, each line from the printed digits of the lines before it.

    There is at least one decimal more than in the problem, and as many as ``finest``. There are more if the verdict
    would not follow from the printed ones. ``with_number``: E_n is printed too; there is one decimal more if E_n is
    then that of the unrounded numbers.
    """
    start = max(writing.decimals + 1, finest)
    tried = [_rounded(first, second, comparison, writing, start + more) for more in range(MOST_DECIMALS)]
    sound = [one for one in tried if one.follows(comparison)] or tried[-1:]
    exact = [one for one in sound[:2] if one.number(comparison) == _number(comparison.number, comparison)]
    return (exact if with_number and exact else sound)[0].written(comparison, writing)


@dataclass(frozen=True, slots=True)
class _Rounded:
    """Two answers, their difference and its expanded uncertainty, in the written unit with this many decimals."""

    first: float
    second: float
    apart: float
    normal: float
    decimals: int

    def follows(self, comparison: Verdict) -> bool:
        """Whether the verdict follows from these numbers."""
        return (self.apart <= self.normal) is comparison.agree and (self.normal > 0.0 or comparison.expanded == 0.0)

    def number(self, comparison: Verdict) -> str:
        """E_n of these numbers."""
        return _number(self.apart / self.normal if self.normal else comparison.number, comparison)

    def written(self, comparison: Verdict, writing: NumberFormat) -> PrintedComparison:
        one, two, apart, normal = (
            quantity.fixed(value, self.decimals, writing.mark) + NO_BREAK_SPACE + writing.unit
            for value in (self.first, self.second, self.apart, self.normal)
        )
        share = share_text(self.apart / self.second, writing.mark) if self.second else ""
        return PrintedComparison(
            one, two, apart, normal, self.number(comparison).replace(".", writing.mark), share
        )


def _rounded(first: float, second: float, comparison: Verdict, writing: NumberFormat, decimals: int) -> _Rounded:
    one, two, normal = (
        as_printed(value / writing.factor, decimals) for value in (first, second, comparison.expanded)
    )
    return _Rounded(one, two, as_printed(math.fabs(one - two), decimals), normal, decimals)


def _number(ratio: float | None, comparison: Verdict) -> str:
    """E_n with so many decimals that it is on the right side of 1; "" if there is none."""
    if ratio is None:
        return ""
    for decimals in range(NUMBER_DECIMALS, NUMBER_DECIMALS + MOST_DECIMALS):
        if (as_printed(ratio, decimals) <= 1.0) is comparison.agree:
            break
    return quantity.fixed(ratio, decimals)
