"""The power triangle as practice knows it: problems from codes, and what mistakes give."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace

from pycore import phasor, quantity
from pycore.calculators.circuit_practice import BOTH, ONLY_CALCULATED, chosen
from pycore.calculators.interface import default_form
from pycore.calculators.power_triangle import FIELDS, PowerCase
from pycore.calculators.sum_practice import task_of
from pycore.practice.codes import Code
from pycore.practice.generator_circuits import correction_of
from pycore.practice.sums import made
from pycore.practice.task import Mistake, Task


def power_form(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's load."""
    load = correction_of(code)
    form = default_form(FIELDS) | dict(choices or {})
    form["power"] = quantity.plain(load.tenths / 10.0) + " kW"
    form["factor"] = quantity.plain(load.factor / 100.0) + " lag"
    form["target"] = quantity.plain(load.target / 100.0) if load.target else ""
    form["voltage"], form["phases"] = str(load.volts), str(load.phases)
    return chosen(form, code)


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


def power_mistakes(case: PowerCase) -> tuple[Mistake, ...]:
    """What slips give for the drawn apparent power, where no correction is asked for."""
    if case.corrected:
        return ()
    turned = phasor.polar(1.0, -case.picture.reference)
    return tuple(made(key, how, value * turned) for key, how, value in _of_the_triangle(case.given.load.power))


def _of_the_correction(case: PowerCase) -> Iterator[tuple[str, float]]:
    """What slips give for the capacitor's reactive power, in vars."""
    before, after = case.given.load.power, case.total
    sizes = phasor.magnitude(before), phasor.magnitude(after)
    yield "whole-corrected", before.imag
    yield "remaining-taken", after.imag
    yield "apparent-subtracted", sizes[0] - sizes[1]
    yield "cosines-subtracted", before.real * (after.real / sizes[1] - before.real / sizes[0])
    # P taken for S: both reactive powers from the sine of the active one.
    yield "apparent-for-active", before.real * (before.imag / sizes[0] - after.imag / sizes[1])
    yield "ten-too-many", 10.0 * (before.imag - after.imag)
    yield "ten-too-few", 0.1 * (before.imag - after.imag)


def power_task(case: PowerCase) -> Task:
    """What is to be found: the apparent power, or the reactive power that reaches the target."""
    task = task_of(case)
    correction = case.correction
    if correction is None or not case.corrected:
        return task
    unit = case.telling.writing.unit.removesuffix("VA") + "var"
    mistakes = tuple(
        made(key, ONLY_CALCULATED, complex(0.0, 0.0 - math.copysign(math.fabs(value), correction.vars)))
        for key, value in _of_the_correction(case)
        if value
    )
    return replace(
        task, result=complex(0.0, 0.0 - correction.vars), symbol=case.telling.tags["i3"],
        writing=replace(case.telling.writing, unit=unit), factor=0.0, spread=None, mistakes=mistakes, earlier=(),
    )  # fmt: skip
