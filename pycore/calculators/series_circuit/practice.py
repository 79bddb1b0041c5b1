"""Practice: problems from codes, and what mistakes give."""

import math
from collections.abc import Iterator, Mapping

from pycore import phasor, quantity
from pycore.calculators.series_circuit.case import SeriesCase
from pycore.calculators.series_circuit.fields import FIELDS
from pycore.forms.coded import form_before
from pycore.practice.catalogue import mistake
from pycore.practice.codes import Code
from pycore.practice.generator import first_accepted
from pycore.practice.long_answers import extent_of, is_long
from pycore.practice.seeded_integers import SeededIntegers
from pycore.practice.task import Mistake, Task
from pycore.sums.circuit_practice import (
    BOTH,
    CLEAR,
    ONLY_CALCULATED,
    CircuitValues,
    calculated_task,
    changed,
    milli,
    with_code_choices,
)
from pycore.sums.task import task_of as sum_task


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's series circuit: the current is given, the supply is to be found."""
    circuit = series_of(code)
    form = form_before(code, FIELDS) | dict(choices or {})
    form["r"] = f"{circuit.ohms} + {circuit.own}" if circuit.own else str(circuit.ohms)
    form["l"] = f"{circuit.coil} Ω" if circuit.in_ohms else milli(circuit.coil)
    form["c"] = ""
    if circuit.capacitor:
        form["c"] = f"{circuit.capacitor} Ω" if circuit.in_ohms else f"{circuit.capacitor} µF"
    form["supply"] = quantity.plain(circuit.supply / 10.0) + " A"
    form["frequency"] = str(circuit.hertz)
    return with_code_choices(form, code)


def _slipped(case: SeriesCase) -> Iterator[tuple[str, tuple[str, ...], complex]]:
    """Key, ways of answering, and the total impedance that each mistake gives."""
    entered, total = case.entered, case.solution.total_impedance
    for key, values in changed(entered.typed, entered.circuit.hertz):
        yield key, BOTH, phasor.total(values)
    resistance, reactance = total.real, total.imag
    if resistance and reactance:
        size = resistance + (-reactance if reactance < 0 else reactance)
        yield "impedances-as-numbers", ONLY_CALCULATED, phasor.polar(size, phasor.angle(total))
        yield "resistance-only", ONLY_CALCULATED, complex(resistance, 0.0)
        yield "reactance-only", ONLY_CALCULATED, complex(0.0, reactance)


def mistakes(case: SeriesCase) -> tuple[Mistake, ...]:
    """What slips with the elements give for the drawn sum."""
    turned = phasor.polar(1.0, -case.picture.reference)
    # On a given voltage a slip changes the current too, and the drawn sum comes out as the supply all the same.
    if case.volts_drawn and not case.typed_companions:
        return ()
    share = case.solution.current if case.volts_drawn else 1.0
    return tuple(mistake(key, how, value * share * turned) for key, how, value in _slipped(case))


def task_of(case: SeriesCase) -> Task:
    """What is to be found: the drawn sum, or the current where the voltage was given."""
    task = sum_task(case, mistakes(case))
    if not case.volts_drawn or case.typed_companions or case.companions is None:
        return task
    total, volts = case.solution.total_impedance, phasor.magnitude(case.solution.supply)
    result = volts / total
    slips = [mistake(key, ONLY_CALCULATED, volts / value) for key, _, value in _slipped(case) if value != 0]
    slips.append(mistake("multiplied-not-divided", ONLY_CALCULATED, phasor.polar(volts * phasor.magnitude(total),
                                                                               -phasor.angle(total))))  # fmt: skip
    if total.imag:
        slips.append(mistake("angle-turned", ONLY_CALCULATED, complex(result.real, -result.imag)))
    return calculated_task(task, result, case, slips)


def _series(draw: SeededIntegers, tier: str) -> CircuitValues:
    if tier == "support":
        return CircuitValues(5 * draw.between(4, 16), 5 * draw.between(3, 24), 5 * draw.between(0, 12), True, 0, 50,
                       10 * draw.between(1, 5))  # fmt: skip
    own = draw.between(2, 12) if tier == "stretch" else 0
    hertz = (50, 60)[draw.below(2)] if tier == "stretch" else 50
    return CircuitValues(draw.between(15, 90), 10 * draw.between(5, 45), 5 * draw.between(6, 50), False, own, hertz,
                   5 * draw.between(2, 10))  # fmt: skip


def _slips(circuit: CircuitValues) -> Iterator[complex]:
    """What the usual slips give for the impedance."""
    ohms = float(circuit.ohms + circuit.own)
    coil, capacitor = circuit.reactances()
    yield complex(ohms, 0.0)
    yield complex(0.0, coil - capacitor)
    yield complex(ohms, capacitor - coil)
    if capacitor:
        yield complex(ohms, coil)
        yield complex(ohms, -capacitor)
        yield complex(ohms, coil + capacitor)
    if circuit.own:
        yield complex(float(circuit.ohms), coil - capacitor)
    if not circuit.in_ohms:
        slow_coil, slow_capacitor = circuit.reactances(1.0)
        yield complex(ohms, slow_coil - slow_capacitor)


def may_be_set(circuit: CircuitValues) -> bool:
    """Whether a series circuit may be set."""
    ohms = float(circuit.ohms + circuit.own)
    coil, capacitor = circuit.reactances()
    total = complex(ohms, coil - capacitor)
    size = phasor.magnitude(total)
    if not 0.3 * ohms <= math.fabs(total.imag) <= 3.0 * ohms or max(coil, capacitor) > 4.0 * size:
        return False
    least = CLEAR * size
    return all(phasor.magnitude(slip - total) >= least for slip in _slips(circuit))


def may_be_set_2(circuit: CircuitValues) -> bool:
    """Whether a series circuit of version 2 may be set: its supply voltage reads well too. Coil and capacitor are drawn
    from one point by the method that takes the most room."""
    ohms = float(circuit.ohms + circuit.own)
    coil, capacitor = circuit.reactances()
    total = complex(ohms, coil - capacitor) * circuit.supply
    points = [complex(ohms, coil) * circuit.supply, complex(ohms, -capacitor) * circuit.supply]
    return is_long(total, extent_of(points)) and may_be_set(circuit)


def series_of(code: Code) -> CircuitValues:
    """The series circuit of a code, its supply in tenths of an ampere. Raises NoProblemError."""
    return first_accepted(code, _series, may_be_set if code.generator == 1 else may_be_set_2)
