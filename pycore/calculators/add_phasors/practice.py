"""Problems of phasors that are entered one by one, drawn from a code: the same for ever.

Like ``generator``, version 1 uses only the seeded integers and phasor arithmetic. Support: two currents, whole
amperes, angles of a set square; core: three, tenths of an ampere, angles to 5 degrees; stretch: three, the
first minus the others, whole degrees.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations

from pycore import phasor, quantity
from pycore.calculators.add_phasors import words
from pycore.calculators.add_phasors.case import AddCase
from pycore.calculators.add_phasors.fields import BY_NAME, FIELDS
from pycore.forms.coded import form_before
from pycore.phasor import wrap
from pycore.practice.catalogue import mistake
from pycore.practice.codes import Code
from pycore.practice.generator import LEAST_CROSSING, first_accepted, sizes_apart
from pycore.practice.long_answers import reads_well
from pycore.practice.seeded_integers import SeededIntegers
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Task
from pycore.sums.task import task_of as sum_task

CLEAR = 0.13
"""Share of the largest phasor by which a mistake's point keeps clear of the right one."""
LEAST_SUM, MOST_SUM, LEAST_SIZE, LEAST_APART = 0.4, 2.5, 0.3, 0.08
SET_SQUARE = (30, 45, 60, 90, 120, 135, 150, -30, -45, -60, -90, -120)
"""Angles that a pair of set squares gives."""
LEAST_TURN = 20.0
"""Degrees between any two phasors and from one line, at the least."""


@dataclass(frozen=True, slots=True)
class PhasorValues:
    """Phasors in tenths of a unit and whole degrees; ``difference``: the first minus the others."""

    tenths: tuple[int, ...]
    angles: tuple[int, ...]
    difference: bool = False

    @property
    def turned(self) -> tuple[float, ...]:
        """Angles as they are added: those subtracted are turned by 180 degrees."""
        return tuple(
            wrap(float(angle) + (180.0 if self.difference and place else 0.0))
            for place, angle in enumerate(self.angles)
        )

    @property
    def parts(self) -> tuple[complex, ...]:
        """The phasors as they are added."""
        return tuple(phasor.polar(float(size), angle) for size, angle in zip(self.tenths, self.turned, strict=True))


def _drawn(draw: SeededIntegers, tier: str) -> PhasorValues:
    if tier == "support":
        sizes = tuple(10 * draw.between(4, 20) for _ in range(2))
        return PhasorValues(sizes, (0, SET_SQUARE[draw.below(len(SET_SQUARE))]))
    sizes = tuple(draw.between(50, 300) for _ in range(3))
    if tier == "core":
        return PhasorValues(sizes, (0, *(5 * draw.between(-35, 35) for _ in range(2))))
    return PhasorValues(sizes, tuple(draw.between(-175, 175) for _ in range(3)), difference=True)


def _swung(problem: PhasorValues) -> Iterator[complex]:
    """Where the commonest mistakes end, in tenths of a unit."""
    parts, turned = problem.parts, problem.turned
    total = phasor.total(parts)
    for part, size, angle in zip(parts, problem.tenths, turned, strict=True):
        yield total - part
        yield total - part - part
        if angle not in (0.0, 180.0):
            other = 180.0 - angle if angle > 0 else -180.0 - angle
            yield total - part + phasor.polar(float(size), -angle)
            if angle not in (90.0, -90.0):
                yield total - part + phasor.polar(float(size), other)
    for one, two in combinations(range(len(parts)), 2):
        sizes = list(problem.tenths)
        sizes[one], sizes[two] = sizes[two], sizes[one]
        yield phasor.total(phasor.polar(float(size), angle) for size, angle in zip(sizes, turned, strict=True))
    yield phasor.total(phasor.polar(float(size), -angle) for size, angle in zip(problem.tenths, turned, strict=True))
    if problem.difference:
        yield parts[0] + parts[0] - total
    yield from _dragged(problem)


def _dragged(problem: PhasorValues) -> Iterator[complex]:
    """Tip to tail with the protractor's other scale at one tip, which drags what follows."""
    for tip in range(1, len(problem.tenths)):
        end, swung = 0j, 0.0
        for place, angle in enumerate(problem.turned):
            if place == tip:
                turn = wrap(angle - problem.turned[place - 1])
                swung = (180.0 - turn if turn > 0 else -180.0 - turn) - turn
            end += phasor.polar(float(problem.tenths[place]), angle + swung)
        yield end


def _sharp(problem: PhasorValues) -> bool:
    """Whether some order lets every parallelogram be drawn without a flat crossing."""
    parts, turned = problem.parts, problem.turned
    for one, two in combinations(range(len(parts)), 2):
        turns = [math.fabs(wrap(turned[two] - turned[one]))]
        turns += [
            math.fabs(wrap(turned[three] - phasor.angle(parts[one] + parts[two])))
            for three in range(len(parts)) if three not in (one, two) and parts[one] + parts[two] != 0
        ]  # fmt: skip
        if all(LEAST_CROSSING <= turn <= 180.0 - LEAST_CROSSING for turn in turns):
            return True
    return False


def accepted(problem: PhasorValues) -> bool:
    """Whether a problem may be set: nothing tiny or alike, directions apart, and mistakes clear of the answer."""
    largest = max(problem.tenths)
    if not sizes_apart(problem.tenths, LEAST_SIZE, LEAST_APART):
        return False
    turns = [math.fabs(wrap(two - one)) for one, two in combinations(problem.turned, 2)]
    if any(not LEAST_TURN <= turn <= 180.0 - LEAST_TURN for turn in turns):
        return False
    total = phasor.total(problem.parts)
    if not LEAST_SUM * largest <= phasor.magnitude(total) <= MOST_SUM * largest or not _sharp(problem):
        return False
    return all(phasor.magnitude(end - total) >= CLEAR * largest for end in _swung(problem))


def accepted_2(problem: PhasorValues) -> bool:
    """Whether a problem of version 2 may be set: its sum reads well too."""
    return accepted(problem) and reads_well(problem.parts)


def phasors_of(code: Code) -> PhasorValues:
    """The phasors of a code. Raises NoProblemError."""
    return first_accepted(code, _drawn, accepted if code.generator == 1 else accepted_2)


def _mistakes(case: AddCase) -> Iterator[Mistake]:
    turn = phasor.polar(1.0, -case.picture.reference)
    values = {one.number: phasor.polar(one.size, one.angle) * turn for one in case.phasors}
    first = values.pop(1, 0j)
    others = phasor.total(values.values())
    if case.difference:
        yield mistake("added", (DRAWN, CALCULATED), first + others, None, words.MISTAKES)
        if first != 0:
            yield mistake("first-turned", (DRAWN, CALCULATED), others - first, None, words.MISTAKES)
    else:
        yield mistake("taken-off", (DRAWN, CALCULATED), first - others, None, words.MISTAKES)
    total = case.total * turn
    for one, arm in zip(case.phasors, case.arms, strict=True):
        if one.rectangular:
            part = phasor.polar(arm.size, arm.angle)
            named = case.entered_tags[f"i{one.number}"]
            swapped = complex(part.imag, part.real) - part
            yield mistake("parts-exchanged", (CALCULATED,), total + swapped * turn, None, words.MISTAKES, a=named)
            slipped = total + (part.conjugate() - part) * turn
            yield mistake("j-sign", (CALCULATED,), slipped, None, words.MISTAKES, a=named)


def mistakes(case: AddCase) -> tuple[Mistake, ...]:
    """Added instead of subtracted, and mistakes with the rectangular form."""
    return tuple(_mistakes(case))


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's problem, with a class's own choices. Raises NoProblemError."""
    problem = phasors_of(code)
    form = form_before(code, FIELDS) | {name: value for name, value in (choices or {}).items() if name in BY_NAME}
    for number, (tenths, angle) in enumerate(zip(problem.tenths, problem.angles, strict=True), start=1):
        form[f"p{number}"] = f"{quantity.plain(tenths / 10.0)} at {angle}"
    form |= {"paper": code.paper, "combine": "difference" if problem.difference else "sum"}
    return form if code.method == "any" else form | {"method": code.method}


def task_of(case: AddCase) -> Task:
    """A solved case as a task: the sum that is drawn, and what mistakes give."""
    return sum_task(case, mistakes(case))
