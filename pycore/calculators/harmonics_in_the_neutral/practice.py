"""Practice problems of harmonics, drawn from a code: the same for ever.

In version 2 the sum asked for is long enough on A4 to be read well (``practice/long_answers.py``).
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from pycore import phasor, quantity
from pycore.calculators.harmonics_in_the_neutral import words
from pycore.calculators.harmonics_in_the_neutral.case import NEAR, HarmonicCase
from pycore.calculators.harmonics_in_the_neutral.fields import FIELDS
from pycore.circuits.supply import VOLTAGE_ANGLES
from pycore.forms.coded import form_before
from pycore.phasor import wrap
from pycore.practice.catalogue import mistake
from pycore.practice.codes import Code
from pycore.practice.generator import first_accepted
from pycore.practice.long_answers import drawn, filling, reads_well, unequal_shares
from pycore.practice.seeded_integers import SeededIntegers
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Task
from pycore.sums.task import task_of as sum_task

SHARES = (10, 15, 20, 25, 30, 40)
LEAST_SUM, MOST_SUM, LEAST_LINE = 0.3, 2.2, 0.3


@dataclass(frozen=True, slots=True)
class HarmonicValues:
    """Fundamentals in tenths of an ampere, lags in whole degrees, per cent of third harmonic, the order asked for."""

    tenths: tuple[int, int, int]
    lags: tuple[int, int, int]
    third: int
    order: int

    @property
    def phasors(self) -> tuple[complex, ...]:
        """The phasors of the order asked for, in tenths of an ampere of the fundamental."""
        return tuple(
            phasor.polar(float(size), wrap(self.order * (angle - lag)))
            for size, angle, lag in zip(self.tenths, VOLTAGE_ANGLES["123"], self.lags, strict=True)
        )


def _distortion(draw: SeededIntegers, tier: str) -> HarmonicValues:
    if tier == "support":
        sizes = [10 * draw.between(5, 25) for _ in range(3)]
        return HarmonicValues((sizes[0], sizes[1], sizes[2]), (0, 0, 0), SHARES[draw.below(len(SHARES))], 3)
    sizes = [draw.between(50, 250) for _ in range(3)]
    lags = [0, 0, 0] if tier == "core" else [5 * draw.between(0, 8) for _ in range(3)]
    order = 1 if tier == "core" else 3
    return HarmonicValues(
        (sizes[0], sizes[1], sizes[2]), (lags[0], lags[1], lags[2]), SHARES[draw.below(len(SHARES))], order
    )


def may_be_set(problem: HarmonicValues) -> bool:
    """Whether a problem of harmonics may be set."""
    largest, least = max(problem.tenths), min(problem.tenths)
    if least < LEAST_LINE * largest or len(set(problem.tenths)) < 3:
        return False
    if problem.order == 3 and any(problem.lags) and len(set(problem.lags)) < 3:
        return False
    size = phasor.magnitude(phasor.total(problem.phasors))
    most = 3.0 if problem.order == 3 and not any(problem.lags) else MOST_SUM
    return LEAST_SUM * largest <= size <= most * largest


SCALES = (1.0, 2.0, 2.5)
"""Amperes for each centimetre of the fundamental in version 2."""


def _distortion_2(draw: SeededIntegers, tier: str) -> HarmonicValues:
    """A problem as in version 1; fundamentals 120 degrees apart have a long sum."""
    if tier != "core":
        return _distortion(draw, tier)
    shares = unequal_shares(draw)
    factor = 10.0 * filling(draw, drawn(HarmonicValues(shares, (0, 0, 0), 100, 1).phasors)[0], SCALES)
    one, two, three = (round(factor * share) for share in shares)
    return HarmonicValues((one, two, three), (0, 0, 0), SHARES[draw.below(len(SHARES))], 1)


def may_be_set_2(problem: HarmonicValues) -> bool:
    """Whether a problem of version 2 may be set: its sum reads well too, unless its phasors lie on one line."""
    share = 1.0 if problem.order == 1 else 0.01 * problem.third
    on_one_line = problem.order == 3 and not any(problem.lags)
    return (on_one_line or reads_well([share * one for one in problem.phasors])) and may_be_set(problem)


def distortion_of(code: Code) -> HarmonicValues:
    """The problem of harmonics that a code stands for. Raises NoProblemError."""
    if code.generator == 1:
        return first_accepted(code, _distortion, may_be_set)
    return first_accepted(code, _distortion_2, may_be_set_2)


def mistakes(case: HarmonicCase) -> tuple[Mistake, ...]:
    """The angles of the fundamental used for a higher order, and all orders given for the one asked for."""
    catalogue = []
    if len(case.spectrum.orders) > 1:
        catalogue.append(mistake("all-orders", (CALCULATED,), None, case.spectrum.neutral, words.MISTAKES))
    if case.order.number == 1:
        return tuple(catalogue)
    number, fundamental = case.order.number, case.spectrum.orders[0]
    unmultiplied: dict[str, complex] = {}
    for arm in case.arms:
        base = phasor.angle(fundamental.lines[arm.number - 1])
        # What the order turns by itself stays: only the line's own angle was not multiplied.
        unmultiplied[arm.key] = phasor.polar(arm.size, wrap(arm.angle - (number - 1) * base))
    head = case.arms[0]
    on_line = case.picture.reference == head.angle and case.problem["reference"] == "current"
    start = phasor.angle(unmultiplied[head.key]) if on_line else case.picture.reference
    point = phasor.total(unmultiplied.values()) * phasor.polar(1.0, -start)
    right = case.total * phasor.polar(1.0, -case.picture.reference)
    if phasor.magnitude(point - right) > NEAR * math.fsum(arm.size for arm in case.arms):
        both = (DRAWN, CALCULATED)
        catalogue.append(mistake("order-not-multiplied", both, point, None, words.MISTAKES, order=str(number)))
    return tuple(catalogue)


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's problem, with a class's own choices. Raises NoProblemError."""
    problem = distortion_of(code)
    form = form_before(code, FIELDS) | dict(choices or {}) | {"drawn": str(problem.order), "h3": str(problem.third)}
    for number, (tenths, lag) in enumerate(zip(problem.tenths, problem.lags, strict=True), start=1):
        form |= {f"i{number}": quantity.plain(tenths / 10.0), f"a{number}": str(lag)}
    return form | {"paper": code.paper} | ({} if code.method == "any" else {"method": code.method})

def task_of(case: HarmonicCase) -> Task:
    """A solved case as a task: the sum that is drawn, and what mistakes give."""
    return sum_task(case, mistakes(case))
