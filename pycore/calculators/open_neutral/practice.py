"""Practice problems of the open neutral from codes, and the star points that typical mistakes give."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from pycore import phasor
from pycore.calculators.open_neutral import words
from pycore.calculators.open_neutral.case import OpenCase
from pycore.calculators.open_neutral.circuit import solve
from pycore.calculators.open_neutral.construction import METHOD
from pycore.calculators.open_neutral.fields import FIELDS
from pycore.circuits.supply import VOLTAGE_ANGLES
from pycore.constructions.construction import Arm
from pycore.constructions.methods import FIRST_PAIR
from pycore.constructions.names import SUM_KEY
from pycore.forms.coded import form_before
from pycore.practice import sums
from pycore.practice.catalogue import mistake
from pycore.practice.codes import Code
from pycore.practice.generator import first_accepted
from pycore.practice.miscalculated import of_the_result
from pycore.practice.misplaced import in_the_instruments
from pycore.practice.seeded_integers import SeededIntegers
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Slips, Task
from pycore.sums.task import basic_task, drawn_sum
from pycore.sums.task import task_of as sum_task
from pycore.trig import ROOT_THREE

BOTH = (DRAWN, CALCULATED)


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's loads; ``choices`` are a class's own (scale, names ...)."""
    form = form_before(code, FIELDS) | dict(choices or {})
    for number, (resistance, reactance) in enumerate(loads_of(code), start=1):
        text = str(resistance)
        if reactance:
            text += f" {'+' if reactance > 0 else '-'} j{reactance if reactance > 0 else -reactance}"
        form[f"z{number}"] = text
    form["paper"] = code.paper
    return form


def _mistakes(case: OpenCase) -> Iterator[Mistake]:
    """What goes wrong between the loads and the star point, and with the protractor."""
    star, turned = case.solution.star, phasor.polar(1.0, -case.picture.reference)
    shift = case.solution.displacement * turned
    for number, admittance in enumerate(star.admittances):
        if admittance == 0:
            continue
        left = tuple(0j if place == number else value for place, value in enumerate(star.admittances))
        if phasor.total(left) != 0:
            one, two, three = left
            point = solve(replace(star, admittances=(one, two, three))).displacement * turned
            yield mistake("load-left-out", BOTH, point, None, words.MISTAKES, a=case.lines[number])
    if all(star.admittances):
        one, two, three = (1.0 / value for value in star.admittances)
        if phasor.total((one, two, three)) != 0:
            point = solve(replace(star, admittances=(one, two, three))).displacement * turned
            yield mistake("impedance-for-admittance", (CALCULATED, DRAWN), point, None, words.MISTAKES)
        sizes = tuple(complex(phasor.magnitude(value)) for value in star.admittances)
        if sizes != star.admittances:
            one, two, three = sizes
            point = solve(replace(star, admittances=(one, two, three))).displacement * turned
            yield mistake("angles-ignored", BOTH, point, None, words.MISTAKES)
    yield mistake("line-for-phase", BOTH, shift * ROOT_THREE, None, words.MISTAKES)
    yield from of_the_result(shift)
    angle, size = phasor.angle(shift), phasor.magnitude(shift)
    other = 180.0 - angle if angle > 0 else -180.0 - angle
    name = case.notation.tags["sum"]
    yield mistake("other-scale", (DRAWN,), phasor.polar(size, other), a=name)
    yield mistake("wrong-way", (DRAWN,), phasor.polar(size, -angle), a=name)
    yield mistake("arrow-reversed", (DRAWN,), -shift)


def task_of(case: OpenCase) -> Task:
    """A solved case as a task: the star point's shift, or with the neutral whole its current."""
    if not case.open:
        return sum_task(case)
    plan = case.sheet_plan()
    arm = Arm("i1", 1, case.size, case.angle or 0.0)
    scaled = drawn_sum(
        case, plan, (arm,), method=METHOD, order=FIRST_PAIR, names={"i1": case.notation.tags[SUM_KEY]}, voltages={}
    )
    everywhere = (*sums.of_scale(scaled), *in_the_instruments(scaled))
    mistakes = () if case.closed else (*_mistakes(case), *everywhere)
    result = case.total * phasor.polar(1.0, -case.picture.reference)
    slips = Slips((result,), (result,))
    return basic_task(case, plan, result, mistakes, slips, in_steps=False, largest=case.size)



E12 = (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82, 100, 120)
LEAST_SHIFT, MOST_SHIFT = 0.2, 0.9
Load = tuple[int, int]
"""Resistance and reactance in whole ohms."""


def _drawn(draw: SeededIntegers, tier: str) -> tuple[Load, Load, Load]:
    loads: list[Load] = []
    for _ in range(3):
        resistance = 10 * draw.between(1, 12) if tier == "support" else E12[draw.below(len(E12))]
        loads.append((resistance, 0))
    if tier == "stretch":
        which = draw.below(3)
        loads[which] = (loads[which][0], (10 * draw.between(2, 9)) * (1 if draw.below(4) else -1))
    return loads[0], loads[1], loads[2]


def shift_of(loads: tuple[Load, Load, Load]) -> complex:
    """The star point's shift as a share of the phase voltage, sequence L1, L2, L3."""
    admittances = [1.0 / complex(resistance, reactance) for resistance, reactance in loads]
    angles = VOLTAGE_ANGLES["123"]
    above = phasor.total(phasor.polar(1.0, angle) * y for angle, y in zip(angles, admittances, strict=True))
    return above / phasor.total(admittances)


def accepted(loads: tuple[Load, Load, Load]) -> bool:
    """Whether these loads may be set."""
    if len({resistance for resistance, _ in loads}) < 3:
        return False
    return LEAST_SHIFT <= phasor.magnitude(shift_of(loads)) <= MOST_SHIFT


LEAST_SHIFT_2, MOST_SHIFT_2 = 0.66, 0.95
"""In version 2: at 400 V the line voltages fill A4 at 25 V for each centimetre, where 60 mm are 0.65 of a phase
voltage. Only one load that is much larger than both others moves the star point so far."""
E12_DECADES = tuple(ten * value for ten in (1, 10) for value in (10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82))


def _drawn_2(draw: SeededIntegers, tier: str) -> tuple[Load, Load, Load]:
    """One small resistance and two that are 6 to 12 times as large, in any order."""
    if tier == "support":
        tens = draw.between(1, 4)
        sizes = [10 * tens, *(10 * draw.between(7 * tens, 12 * tens) for _ in range(2))]
    else:
        place = draw.below(10)
        sizes = [E12_DECADES[place], *(E12_DECADES[place + draw.between(9, 14)] for _ in range(2))]
    first = sizes.pop(draw.below(3))
    second = sizes.pop(draw.below(2))
    loads = [(first, 0), (second, 0), (sizes[0], 0)]
    if tier == "stretch":
        which = draw.below(3)
        resistance = loads[which][0]
        reactance = 10 * max(1, (resistance * draw.between(5, 12) + 50) // 100)
        loads[which] = (resistance, reactance if draw.below(4) else -reactance)
    return loads[0], loads[1], loads[2]


def accepted_2(loads: tuple[Load, Load, Load]) -> bool:
    """Whether these loads may be set in version 2."""
    if len({resistance for resistance, _ in loads}) < 3:
        return False
    return LEAST_SHIFT_2 <= phasor.magnitude(shift_of(loads)) <= MOST_SHIFT_2


def loads_of(code: Code) -> tuple[Load, Load, Load]:
    """The loads of a code. Raises NoProblemError."""
    if code.generator == 1:
        return first_accepted(code, _drawn, accepted)
    return first_accepted(code, _drawn_2, accepted_2)
