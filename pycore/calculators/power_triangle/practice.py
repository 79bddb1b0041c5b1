"""The power triangle as practice knows it: problems from codes, and what mistakes give."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from pycore import phasor, quantity
from pycore.accuracy.hand import Spread
from pycore.calculators.power_triangle.case import P, PowerCase
from pycore.calculators.power_triangle.fields import FIELDS
from pycore.constructions.construction import Arm
from pycore.constructions.methods import FIRST_PAIR, TIP_TO_TAIL
from pycore.forms.coded import form_before
from pycore.practice.catalogue import mistake
from pycore.practice.codes import Code
from pycore.practice.generator import first_accepted
from pycore.practice.long_answers import extent_of, filling, is_long
from pycore.practice.seeded_integers import SeededIntegers, integers_of_code
from pycore.practice.sums import of_scale
from pycore.practice.task import Mistake, Slips, Task
from pycore.sums.circuit_practice import BOTH, ONLY_CALCULATED, with_code_choices
from pycore.sums.task import drawn_sum
from pycore.sums.task import task_of as sum_task


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's load."""
    load = correction_of(code)
    form = form_before(code, FIELDS) | dict(choices or {})
    form["power"] = quantity.plain(load.tenths / 10.0) + " kW"
    form["factor"] = quantity.plain(load.factor / 100.0) + " lag"
    form["target"] = quantity.plain(load.target / 100.0) if load.target else ""
    form["voltage"], form["phases"] = str(load.volts), str(load.phases)
    return with_code_choices(form, code)


def _of_the_triangle(power: complex) -> Iterator[tuple[str, tuple[str, ...], complex]]:
    """What slips give for the apparent power as a phasor."""
    active, reactive = power.real, power.imag
    size = phasor.magnitude(power)
    if not active or not reactive:
        return
    unit = power / size
    yield "apparent-for-active", ONLY_CALCULATED, unit * active
    yield "factor-multiplied", ONLY_CALCULATED, unit * (active * active / size)
    yield "powers-as-numbers", ONLY_CALCULATED, unit * (active + math.fabs(reactive))
    yield "sine-of-phi", BOTH, complex(active, active * active / reactive)
    yield "angle-turned", BOTH, complex(active, 0.0 - reactive)


def mistakes(case: PowerCase) -> tuple[Mistake, ...]:
    """What slips give for the drawn apparent power, where no correction is asked for."""
    if case.corrected:
        return ()
    turned = phasor.polar(1.0, -case.picture.reference)
    return tuple(mistake(key, how, value * turned) for key, how, value in _of_the_triangle(case.entered.load.power))


def _of_the_correction(case: PowerCase) -> Iterator[tuple[str, float]]:
    """What slips give for the capacitor's reactive power, in vars."""
    before, after = case.entered.load.power, case.total
    sizes = phasor.magnitude(before), phasor.magnitude(after)
    yield "whole-corrected", before.imag
    yield "remaining-taken", after.imag
    yield "apparent-subtracted", sizes[0] - sizes[1]
    yield "cosines-subtracted", before.real * (after.real / sizes[1] - before.real / sizes[0])
    # P taken for S: both reactive powers from the sine of the active one.
    yield "apparent-for-active", before.real * (before.imag / sizes[0] - after.imag / sizes[1])


SEEN_ON_PAPER = {"whole-corrected": (1.0, 0.0), "remaining-taken": (0.0, 1.0)}
"""Slips with the correction that give an arrow of the drawing, so that they are measured too; and which of its two
points each uses."""


def _scatter_of(case: PowerCase, factor: float, before: float = 1.0, after: float = 1.0) -> float:
    """How far a hand scatters (var) that finds a reactive power between two angles, both marked at the start from P:
    an error of an angle φ moves a point of the perpendicular by P (1 + tan² φ); then the ruler at P and at both
    points. ``before`` and ``after``: 0 where that point is not used."""
    hand, active = case.hand, case.entered.load.power.real
    shares = before, after
    moved = [value.imag / active for value in (case.entered.load.power, case.total)]
    turns = [share * hand.angle * math.tau / 360.0 * active * (1.0 + tangent * tangent)
             for share, tangent in zip(shares, moved, strict=True)]  # fmt: skip
    # An error in the length of P makes both reactive powers longer in the same share.
    ruler = hand.length / factor
    parts = [*turns, ruler, ruler, ruler * (before * moved[0] - after * moved[1])]
    return math.sqrt(math.fsum(part * part for part in parts))


def _by_hand(case: PowerCase, factor: float) -> Spread:
    """The scatter of the correction as it is drawn."""
    deviation = _scatter_of(case, factor)
    return Spread(((0.0, 0.0), (0.0, deviation * deviation)), deviation, 0.0, (), sampled=False)


def _slip(case: PowerCase, key: str, point: complex, factor: float) -> Mistake:
    """What a slip with the correction gives; one that is read off the drawing scatters in its own way."""
    if key not in SEEN_ON_PAPER:
        return mistake(key, ONLY_CALCULATED, point)
    widening = _scatter_of(case, factor, *SEEN_ON_PAPER[key]) / _scatter_of(case, factor)
    return replace(mistake(key, BOTH, point), widening=widening)


def task_of(case: PowerCase) -> Task:
    """What is to be found.

    Without a target (support) that is the apparent power, size and angle. With one (core, stretch) it is the
    reactive power that reaches it: what a capacitor is ordered by, and what the printed sheet tells a learner to
    find first. The apparent power that is left would be P over the target, which asks nothing of the correction.
    It is worked out or measured along its arrow; its direction is known beforehand, so no angle is asked for.
    """
    task = sum_task(case, mistakes(case))
    correction = case.correction
    if correction is None or not case.corrected:
        return task
    result, name = complex(0.0, 0.0 - correction.vars), case.notation.tags["i3"]
    unit = case.notation.writing.unit.removesuffix("VA") + "var"
    slips = tuple(
        _slip(case, key, complex(0.0, 0.0 - math.copysign(math.fabs(value), correction.vars)), task.factor)
        for key, value in _of_the_correction(case)
        if value
    )
    arm = Arm("i3", 3, math.fabs(correction.vars), phasor.angle(result))
    alone = drawn_sum(
        case, case.sheet_plan(), (arm,), reference=0.0, method=TIP_TO_TAIL, order=FIRST_PAIR, unit=unit, voltages={},
        factor=0.0,
    )  # fmt: skip
    return replace(
        task, result=result, symbol=name, writing=replace(case.notation.writing, unit=unit),
        spread=_by_hand(case, task.factor), mistakes=(*slips, *of_scale(alone)), earlier=(), angled=False,
        turn=0.0, origin=(P,), in_steps=False, turn_back=1.0, slips=Slips((result,)),
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class CorrectionValues:
    """Tenths of a kilowatt, hundredths of the power factor, hundredths of the target (0: none), volts and phases."""

    tenths: int
    factor: int
    target: int
    volts: int
    phases: int


    @property
    def powers(self) -> tuple[float, float, float]:
        """Active power, reactive power and the capacitor's, in tenths of a kilowatt, kilovar and kilovar."""
        reactive, left = (
            self.tenths * math.sqrt(10000.0 - share * share) / share for share in (self.factor, self.target)
        )
        return float(self.tenths), reactive, reactive - left


SCALES_2 = {"core": (2.0, 2.5, 5.0, 10.0), "stretch": (5.0, 10.0, 20.0, 25.0)}
"""Tenths of a kilovoltampere for each centimetre, by tier, in version 2."""


def _drawn_2(draw: SeededIntegers, tier: str) -> CorrectionValues:
    """A load whose drawing nearly fills the paper; with a small power factor the capacitor's power is long."""
    factor, target = draw.between(60, 75), 91 + draw.below(8)
    volts, phases = (230, 1) if tier == "core" else (400, 3)
    share = CorrectionValues(1, factor, target, volts, phases)
    tenths = round(filling(draw, _extent(share), SCALES_2[tier]))
    return replace(share, tenths=tenths)


def _extent(load: CorrectionValues) -> float:
    """The extent by the method that takes the most room: both reactive powers from one point."""
    active, reactive, capacitor = load.powers
    return extent_of([complex(active, reactive), complex(active, -capacitor)])


def accepted_2(load: CorrectionValues) -> bool:
    """Whether a problem of version 2 may be set: the capacitor's reactive power reads well."""
    return is_long(complex(0.0, load.powers[2]), _extent(load))


def correction_of(code: Code) -> CorrectionValues:
    """The load of a code: support without a capacitor, core with one, stretch on three phases with one. Raises
    NoProblemError."""
    if code.generator > 1 and code.tier != "support":
        return first_accepted(code, _drawn_2, accepted_2)
    draw = integers_of_code(code)
    if code.tier == "support":
        return CorrectionValues(5 * draw.between(2, 12), 5 * draw.between(12, 18), 0, 230, 1)
    one_phase = code.tier == "core"
    tenths, factor = draw.between(10, 70) if one_phase else draw.between(40, 250), draw.between(60, 82)
    target = (90, 92, 95, 98)[draw.below(4)]
    return CorrectionValues(tenths, factor, target, 230 if one_phase else 400, 1 if one_phase else 3)
