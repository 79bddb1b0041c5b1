"""Values for practice problems, generated from a code: the same for ever, whatever else changes.

Version 1 uses only the seeded integers and phasor arithmetic: no paper, no labels, no tolerance code. What
it promises is tested against those. Version 2 is a second function: its neutral current is long enough on A4 to be
read well (``practice/long_answers.py``). Each is kept.

A problem of three line currents is accepted when its sum is neither small nor beyond a sheet, no line is
tiny, no two are alike, a parallelogram can be drawn in at least one order, and what the commonest mistakes
of setting off give (a line left out, reversed, by the protractor's other scale, turned the wrong way, two
exchanged) lies clear of the right answer.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations

from pycore import phasor, quantity
from pycore.calculators.neutral_current.case import NeutralCase
from pycore.calculators.neutral_current.fields import FIELDS
from pycore.circuits.supply import VOLTAGE_ANGLES
from pycore.forms.coded import form_before
from pycore.phasor import wrap
from pycore.practice.codes import Code
from pycore.practice.generator import LEAST_CROSSING, first_accepted, sizes_apart
from pycore.practice.long_answers import drawn, filling, reads_well, unequal_shares
from pycore.practice.seeded_integers import SeededIntegers
from pycore.practice.task import Task
from pycore.sums.task import task_of as sum_task

CLEAR = 0.13
"""Share of the largest current by which a mistake's point keeps clear of the right one."""
LEAST_SUM, LEAST_LINE, LEAST_APART = 0.25, 0.3, 0.1


@dataclass(frozen=True, slots=True)
class LineCurrentValues:
    """Three line currents in tenths of an ampere and whole degrees of lag."""

    tenths: tuple[int, int, int]
    lags: tuple[int, int, int]

    @property
    def angles(self) -> tuple[float, float, float]:
        """Angles from the L1 phase voltage, sequence L1, L2, L3."""
        one, two, three = (wrap(v - lag) for v, lag in zip(VOLTAGE_ANGLES["123"], self.lags, strict=True))
        return one, two, three

    @property
    def phasors(self) -> tuple[complex, ...]:
        """The currents in tenths of an ampere."""
        return tuple(phasor.polar(float(size), angle) for size, angle in zip(self.tenths, self.angles, strict=True))


def _drawn(draw: SeededIntegers, tier: str) -> LineCurrentValues:
    """Values that read naturally: whole amperes, tenths, or tenths with power factors of their own."""
    if tier == "support":
        sizes = [10 * draw.between(4, 20) for _ in range(3)]
        return LineCurrentValues((sizes[0], sizes[1], sizes[2]), (0, 0, 0))
    sizes = [draw.between(50, 300) for _ in range(3)]
    lags = [0, 0, 0]
    if tier == "stretch":
        lags = [5 * draw.between(-2, 11) for _ in range(3)]
    return LineCurrentValues((sizes[0], sizes[1], sizes[2]), (lags[0], lags[1], lags[2]))


def _slipped(lines: LineCurrentValues) -> Iterator[complex]:
    """The wrong results of the commonest mistakes, in tenths of an ampere."""
    currents = lines.phasors
    total = phasor.total(currents)
    first = lines.angles[0]
    for index, current in enumerate(currents):
        yield total - current
        yield total - current - current
        turn = wrap(lines.angles[index] - first)
        size = float(lines.tenths[index])
        if index:
            other = 180.0 - turn if turn > 0 else -180.0 - turn
            yield total - current + phasor.polar(size, first + other)
            yield total - current + phasor.polar(size, first - turn)
    for one, two in combinations(range(3), 2):
        exchanged = list(lines.tenths)
        exchanged[one], exchanged[two] = exchanged[two], exchanged[one]
        yield phasor.total(
            phasor.polar(float(size), angle) for size, angle in zip(exchanged, lines.angles, strict=True)
        )
    lag = first
    yield phasor.total(
        phasor.polar(float(size), 2.0 * lag - angle) for size, angle in zip(lines.tenths, lines.angles, strict=True)
    )
    # Tip to tail with the protractor's other scale at a tip, which drags what follows.
    for order in ((0, 1, 2), (0, 2, 1), (1, 2, 0)):
        yield from _dragged(lines, order)


def _dragged(lines: LineCurrentValues, order: tuple[int, ...]) -> Iterator[complex]:
    for tip in (1, 2):
        end, turned = 0j, 0.0
        for place, index in enumerate(order):
            if place == tip:
                turn = wrap(lines.angles[index] - lines.angles[order[place - 1]])
                other = 180.0 - turn if turn > 0 else -180.0 - turn
                turned += other - turn
            end += phasor.polar(float(lines.tenths[index]), lines.angles[index] + turned)
        yield end


def _sharp(lines: LineCurrentValues) -> bool:
    """Whether some order lets both parallelograms be drawn without a flat crossing."""
    currents = lines.phasors
    for one, two in combinations(range(3), 2):
        three = 3 - one - two
        first = math.fabs(wrap(lines.angles[two] - lines.angles[one]))
        second = math.fabs(wrap(lines.angles[three] - phasor.angle(currents[one] + currents[two])))
        if all(LEAST_CROSSING <= angle <= 180.0 - LEAST_CROSSING for angle in (first, second)):
            return True
    return False


def accepted(lines: LineCurrentValues) -> bool:
    """Whether a problem may be set."""
    largest = max(lines.tenths)
    if not sizes_apart(lines.tenths, LEAST_LINE, LEAST_APART):
        return False
    total = phasor.total(lines.phasors)
    size = phasor.magnitude(total)
    if not LEAST_SUM * largest <= size <= 1.6 * largest or not _sharp(lines):
        return False
    return all(phasor.magnitude(end - total) >= CLEAR * largest for end in _slipped(lines))


SCALES = (1.0, 2.0, 2.5)
"""Amperes for each centimetre in version 2."""


def _drawn_2(draw: SeededIntegers, tier: str) -> LineCurrentValues:
    """Values as in version 1, the largest so that the drawing nearly fills the paper."""
    shares = unequal_shares(draw)
    lags = (0, 0, 0)
    if tier == "stretch":
        one, two, three = (5 * draw.between(-2, 11) for _ in range(3))
        lags = one, two, three
    step = 10 if tier == "support" else 1
    factor = 10.0 * filling(draw, drawn(from_first(LineCurrentValues(shares, lags)))[0], SCALES) / step
    one, two, three = (step * round(factor * share) for share in shares)
    return LineCurrentValues((one, two, three), lags)


def from_first(lines: LineCurrentValues) -> tuple[complex, ...]:
    """The currents as they are drawn, with the first in the first direction."""
    turn = phasor.polar(1.0, -lines.angles[0])
    return (complex(float(lines.tenths[0]), 0.0), *(current * turn for current in lines.phasors[1:]))


def accepted_2(lines: LineCurrentValues) -> bool:
    """Whether a problem of version 2 may be set."""
    return reads_well(from_first(lines)) and accepted(lines)


def lines_of(code: Code) -> LineCurrentValues:
    """The three line currents of a code. Raises NoProblemError."""
    if code.generator == 1:
        return first_accepted(code, _drawn, accepted)
    return first_accepted(code, _drawn_2, accepted_2)


OF_TIER = {"support": {"start": "two"}, "core": {}, "stretch": {"further": "zero"}}
"""What a tier's problem sheets have, unless a class has choices of its own."""


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's problem; ``choices`` are a class's own (scale, names ...)."""
    lines = lines_of(code)
    form = form_before(code, FIELDS) | OF_TIER[code.tier] | dict(choices or {})
    for number, (tenths, lag) in enumerate(zip(lines.tenths, lines.lags, strict=True), start=1):
        form[f"i{number}"] = quantity.plain(tenths / 10.0)
        form[f"a{number}"] = quantity.plain(float(lag)).replace(quantity.MINUS, "-")
    form["paper"] = code.paper
    if code.method != "any":
        form["method"] = code.method
    return form

def task_of(case: NeutralCase) -> Task:
    """A solved case as a task: the sum that is drawn, and what mistakes give."""
    return sum_task(case, ())
