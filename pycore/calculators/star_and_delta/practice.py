"""Problems of star and delta, drawn from a code: the same for ever.

Version 1 uses only the seeded integers and phasor arithmetic. Support: a star, the line voltage from two phase
voltages; core: a delta of three resistances, one line current; stretch: a delta of impedances in either sequence.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pycore import phasor
from pycore.calculators.star_and_delta import words
from pycore.calculators.star_and_delta.case import StarDeltaCase
from pycore.calculators.star_and_delta.fields import BEFORE, BY_NAME, FIELDS, NAMES
from pycore.forms.coded import form_before
from pycore.phasor import wrap
from pycore.practice.catalogue import mistake
from pycore.practice.codes import Code
from pycore.practice.generator import LEAST_CROSSING, first_accepted, sizes_apart
from pycore.practice.long_answers import reads_well
from pycore.practice.seeded_integers import SeededIntegers
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Task
from pycore.sums.task import task_of as sum_task
from pycore.trig import ROOT_THREE

VOLTAGES = (110, 190, 208, 220, 230, 380, 400, 415, 440, 480, 500, 660, 690)
PAIRS = (
    (8, 6), (6, 8), (12, 9), (9, 12), (12, 16), (16, 12), (15, 20), (20, 15), (24, 7), (24, 18), (30, 40), (40, 30),
)  # fmt: skip
"""Resistance and reactance of whole ohms with a size of whole ohms."""
CLEAR, LEAST_SIZE, LEAST_APART, LEAST_SUM = 0.13, 0.3, 0.08, 0.4


@dataclass(frozen=True, slots=True)
class ThreeLoadValues:
    """A connection on whole volts between lines: loads in whole ohms (resistance, reactance), which line is asked
    for, and the sequence."""

    connection: str
    volts: int
    loads: tuple[tuple[int, int], tuple[int, int], tuple[int, int]]
    line: int
    sequence: str = "123"

    @property
    def drawn(self) -> tuple[complex, complex]:
        """The two branch currents that are drawn, the second turned round, from the first line voltage."""
        second = -120.0 if self.sequence == "123" else 120.0
        angles = (0.0, second, -second)
        flows = [
            phasor.polar(float(self.volts), angle) / complex(*load)
            for angle, load in zip(angles, self.loads, strict=True)
        ]
        return flows[self.line - 1], -flows[BEFORE[self.line] - 1]


def _drawn(draw: SeededIntegers, tier: str) -> ThreeLoadValues:
    volts, line = VOLTAGES[draw.below(len(VOLTAGES))], draw.between(1, 3)
    if tier == "support":
        load = (5 * draw.between(2, 20), 0)
        return ThreeLoadValues("star", volts, (load, load, load), line)
    if tier == "core":
        one, two, three = ((draw.between(10, 80), 0) for _ in range(3))
        return ThreeLoadValues("delta", volts, (one, two, three), line)
    loads = []
    for _ in range(3):
        resistance, reactance = PAIRS[draw.below(len(PAIRS))]
        loads.append((resistance, (1, 1, -1, 0)[draw.below(4)] * reactance))
    return ThreeLoadValues("delta", volts, (loads[0], loads[1], loads[2]), line, ("123", "132")[draw.below(2)])


def accepted(problem: ThreeLoadValues) -> bool:
    """Whether a problem may be set: in delta both currents fit a sheet, cross well, and mistakes lie clear."""
    if problem.connection == "star":
        return True
    first, second = problem.drawn
    sizes = [phasor.magnitude(first), phasor.magnitude(second)]
    largest, total = max(sizes), first + second
    if not sizes_apart(sizes, LEAST_SIZE, LEAST_APART):
        return False
    turn = math.fabs(wrap(phasor.angle(second) - phasor.angle(first)))
    if not LEAST_CROSSING <= turn <= 180.0 - LEAST_CROSSING or phasor.magnitude(total) < LEAST_SUM * largest:
        return False
    ends = [first - second, second - first, first, second]
    for part in (first, second):
        angle, size = phasor.angle(part), phasor.magnitude(part)
        if math.fabs(angle) > 1.0:
            ends.append(total - part + phasor.polar(size, -angle))
    ends.append(phasor.polar(sizes[1], phasor.angle(first)) + phasor.polar(sizes[0], phasor.angle(second)))
    return all(phasor.magnitude(end - total) >= CLEAR * largest for end in ends)


def accepted_2(problem: ThreeLoadValues) -> bool:
    """Whether a problem of version 2 may be set: in delta the line current reads well too."""
    return accepted(problem) and (problem.connection == "star" or reads_well(problem.drawn))


def three_of(code: Code) -> ThreeLoadValues:
    """The loads of a code. Raises NoProblemError."""
    return first_accepted(code, _drawn, accepted if code.generator == 1 else accepted_2)


def _ohms(load: tuple[int, int]) -> str:
    resistance, reactance = load
    if reactance == 0:
        return str(resistance)
    return f"{resistance} {'-' if reactance < 0 else '+'} j{reactance if reactance > 0 else -reactance}"


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's problem; ``choices`` are a class's own (scale, names ...). Raises NoProblemError."""
    problem = three_of(code)
    form = form_before(code, FIELDS) | {name: value for name, value in (choices or {}).items() if name in BY_NAME}
    form |= {name: _ohms(load) for name, load in zip(NAMES, problem.loads, strict=True)}
    form |= {"volts": str(problem.volts), "connection": problem.connection, "line": str(problem.line), "known": "line"}
    form |= {"sequence": problem.sequence, "paper": code.paper}
    return form if code.method == "any" else form | {"method": code.method}


def _mistakes(case: StarDeltaCase) -> Iterator[Mistake]:
    turn, both = phasor.polar(1.0, -case.picture.reference), (DRAWN, CALCULATED)
    first, second = case.values[case.line - 1], case.values[case.other - 1]
    yield mistake("added", both, (first + second) * turn, None, words.MISTAKES)
    yield mistake("first-turned", both, (second - first) * turn, None, words.MISTAKES)
    for number, value in ((case.line, first), (case.other, second)):
        if value != 0:
            # It is where a drawing ends that leaves the other out.
            yield mistake("branch-for-line", both, value * turn, None, words.MISTAKES, a=case.own[number])
    if case.star:
        return
    yield mistake("star-voltage", both, case.total * turn / ROOT_THREE, None, words.MISTAKES)
    if not case.solution.balanced and first != 0:
        root = ROOT_THREE * phasor.magnitude(first)
        yield mistake("root-three-unbalanced", both, None, root, words.MISTAKES, a=case.own[case.line])
    yield from _of_loads(case, turn)


def _of_loads(case: StarDeltaCase, turn: complex) -> Iterator[Mistake]:
    """What comes of loads whose size or angle was taken wrongly."""
    loads = case.solution.circuit.loads
    if all(load is None or load.imag == 0 for load in loads):
        return
    sizes = [0.0 if load is None else 1.0 / phasor.magnitude(load) for load in loads]
    added = [0.0 if load is None else 1.0 / (load.real + math.fabs(load.imag)) for load in loads]
    angles = [0.0 if load is None else phasor.angle(load) for load in loads]
    across = [value * phasor.polar(1.0, -phasor.angle(case.solution.between[0])) for value in case.solution.between]
    straight = tuple(volt * size for volt, size in zip(across, sizes, strict=True))
    yield mistake("angles-of-loads", (DRAWN, CALCULATED), case.difference(straight) * turn, None, words.MISTAKES)
    slipped = tuple(
        volt * phasor.polar(share, -angle) for volt, share, angle in zip(across, added, angles, strict=True)
    )
    yield mistake("size-by-adding", (DRAWN, CALCULATED), case.difference(slipped) * turn, None, words.MISTAKES)


def mistakes(case: StarDeltaCase) -> tuple[Mistake, ...]:
    """Added instead of subtracted, a branch for the line, the root of three where loads differ, slips of impedance."""
    return tuple(_mistakes(case))


def task_of(case: StarDeltaCase) -> Task:
    """A solved case as a task: the sum that is drawn, and what mistakes give."""
    return sum_task(case, mistakes(case))
