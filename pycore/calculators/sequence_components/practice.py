"""Problems of sequence components, drawn from a code: the same for ever.

Version 1 uses only the seeded integers and phasor arithmetic. Support: zero sequence of whole amperes 120 degrees
apart; core: zero or negative sequence, tenths, angles to 10 degrees; stretch: any component, angles to 5 degrees.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import combinations

from pycore import phasor, quantity
from pycore.calculators.sequence_components import words
from pycore.calculators.sequence_components.case import SequenceCase
from pycore.calculators.sequence_components.circuit import TURNS, turned
from pycore.calculators.sequence_components.fields import BY_NAME, FIELDS, NAMES
from pycore.forms.coded import form_before
from pycore.phasor import wrap
from pycore.practice.catalogue import mistake
from pycore.practice.codes import Code
from pycore.practice.generator import first_accepted, sizes_apart
from pycore.practice.long_answers import drawn, filling, reads_well, unequal_shares
from pycore.practice.seeded_integers import SeededIntegers
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Task
from pycore.sums.task import task_of as sum_task

PARTS = ("zero", "positive", "negative")
CLEAR, LEAST_SIZE, LEAST_APART, LEAST_SUM = 0.13, 0.3, 0.08, 0.3
LEAST_TURN = 12.0
"""Degrees between any two phasors as they are added, at the least, unless they lie along one line."""


@dataclass(frozen=True, slots=True)
class SequenceValues:
    """Three phasors in tenths of a unit and whole degrees, and the component asked for."""

    tenths: tuple[int, int, int]
    angles: tuple[int, int, int]
    component: str

    def ends(self, component: str) -> complex:
        """Three times a component."""
        return phasor.total(
            phasor.polar(float(size), float(angle) + turn)
            for size, angle, turn in zip(self.tenths, self.angles, TURNS[component], strict=True)
        )


def _drawn(draw: SeededIntegers, tier: str) -> SequenceValues:
    if tier == "support":
        one, two, three = (10 * draw.between(4, 24) for _ in range(3))
        return SequenceValues((one, two, three), (0, -120, 120), "zero")
    one, two, three = (draw.between(50, 300) for _ in range(3))
    if tier == "core":
        lags = [10 * draw.between(-3, 3) for _ in range(2)]
        return SequenceValues(
            (one, two, three), (0, -120 - lags[0], 120 - lags[1]), ("zero", "negative")[draw.below(2)]
        )
    lags = [5 * draw.between(-12, 12) for _ in range(2)]
    return SequenceValues((one, two, three), (0, -120 - lags[0], 120 - lags[1]), PARTS[draw.below(3)])


def accepted(problem: SequenceValues) -> bool:
    """Whether a problem may be set: nothing tiny or alike, a component worth drawing, the others clear of it."""
    largest = max(problem.tenths)
    if not sizes_apart(problem.tenths, LEAST_SIZE, LEAST_APART):
        return False
    turned_angles = [float(angle) + turn for angle, turn in zip(problem.angles, TURNS[problem.component], strict=True)]
    for one, two in combinations(turned_angles, 2):
        between = math.fabs(wrap(two - one))
        if 1e-9 < between < LEAST_TURN or between > 180.0 - LEAST_TURN:
            return False
    total = problem.ends(problem.component)
    phasors = [phasor.polar(float(size), angle) for size, angle in zip(problem.tenths, turned_angles, strict=True)]
    ends = [problem.ends(component) for component in PARTS if component != problem.component]
    ends += [total - one for one in phasors] + [total - one - one for one in phasors]
    if phasor.magnitude(total) < LEAST_SUM * largest:
        return False
    return all(phasor.magnitude(end - total) >= CLEAR * largest for end in ends)


SCALES = (1.0, 2.0, 2.5)
"""Units for each centimetre in version 2."""


def as_drawn(problem: SequenceValues) -> tuple[complex, ...]:
    """The phasors as they are added."""
    turns = TURNS[problem.component]
    return tuple(
        phasor.polar(float(size), wrap(float(angle) + turn))
        for size, angle, turn in zip(problem.tenths, problem.angles, turns, strict=True)
    )


def _drawn_2(draw: SeededIntegers, tier: str) -> SequenceValues:
    """A problem as in version 1, of sizes that differ so much that the component asked for is long."""
    shares = unequal_shares(draw)
    like = _drawn(draw, tier)
    step = 10 if tier == "support" else 1
    factor = 10.0 * filling(draw, drawn(as_drawn(replace(like, tenths=shares)))[0], SCALES) / step
    one, two, three = (step * round(factor * share) for share in shares)
    return replace(like, tenths=(one, two, three))


def accepted_2(problem: SequenceValues) -> bool:
    """Whether a problem of version 2 may be set: three times the component reads well too. Phasors that lie on one line
    cross none."""
    return reads_well(as_drawn(problem)) and accepted(problem)


def sequence_of(code: Code) -> SequenceValues:
    """The three phasors of a code. Raises NoProblemError."""
    if code.generator == 1:
        return first_accepted(code, _drawn, accepted)
    return first_accepted(code, _drawn_2, accepted_2)


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's problem; ``choices`` are a class's own (scale, names ...). Raises NoProblemError."""
    problem = sequence_of(code)
    form = form_before(code, FIELDS) | {name: value for name, value in (choices or {}).items() if name in BY_NAME}
    for name, tenths, angle in zip(NAMES, problem.tenths, problem.angles, strict=True):
        form[name] = f"{quantity.plain(tenths / 10.0)} at {angle}"
    form |= {"part": problem.component, "paper": code.paper}
    return form if code.method == "any" else form | {"method": code.method}


BOTH = (DRAWN, CALCULATED)


def _mistakes(case: SequenceCase) -> Iterator[Mistake]:
    turn = phasor.polar(1.0, -case.picture.reference)
    ends = {component: phasor.total(turned(case.values, component)) * turn for component in TURNS}
    others = {"positive": "negative", "negative": "positive"}
    if case.component == "zero":
        for component in ("positive", "negative"):
            name = words.NAMES[component]
            yield mistake("turned", BOTH, ends[component], None, words.MISTAKES, a=(words.A,), other=name)
    else:
        yield mistake("not-turned", BOTH, ends["zero"], None, words.MISTAKES, a=(words.A,))
        other = others[case.component]
        end, name = ends[other], words.NAMES[other]
        yield mistake("a-exchanged", BOTH, end, None, words.MISTAKES, a=(words.A,), other=name)
        yield from _one_turned(case, turn)
    yield mistake("divided-already", BOTH, ends[case.component] / 3.0, None, words.MISTAKES, a=(words.A,))


def _one_turned(case: SequenceCase, turn: complex) -> Iterator[Mistake]:
    """The operator turned the wrong way for one phasor."""
    parts = turned(case.values, case.component)
    for number in (2, 3):
        own, angle = case.values[number - 1], TURNS[case.component][number - 1]
        if own != 0:
            end = phasor.total(parts) - parts[number - 1] + own * phasor.polar(1.0, -angle)
            yield mistake("wrong-way-a", BOTH, end * turn, None, words.MISTAKES, a=(words.A,), which=case.own[number])


def mistakes(case: SequenceCase) -> tuple[Mistake, ...]:
    """Another component for the one asked for, and dividing too soon."""
    return tuple(_mistakes(case))


def task_of(case: SequenceCase) -> Task:
    """A solved case as a task: the sum that is drawn, and what mistakes give."""
    return sum_task(case, mistakes(case))
