"""Parallel circuits as practice knows them: problems from codes, and what mistakes give."""

import math
from collections.abc import Iterator, Mapping

from pycore import phasor, quantity
from pycore.calculators.parallel_circuit.case import ParallelCase
from pycore.calculators.parallel_circuit.fields import FIELDS
from pycore.circuits.elements import CAPACITOR, COIL
from pycore.forms.coded import form_before
from pycore.practice.catalogue import mistake
from pycore.practice.codes import Code
from pycore.practice.generator import first_accepted
from pycore.practice.long_answers import reads_well
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
    """The form that holds a code's parallel circuit: the voltage is given, the supply current is to be found."""
    circuit = parallel_of(code)
    form = form_before(code, FIELDS) | dict(choices or {})
    form["b1"] = f"{circuit.ohms} Ω"
    coil = f"j{circuit.coil} Ω" if circuit.in_ohms else milli(circuit.coil)
    form["b2"] = f"{circuit.own} Ω + {coil}" if circuit.own else coil
    form["b3"] = f"{circuit.capacitor} µF" if circuit.capacitor else ""
    form["b4"] = ""
    form["supply"] = f"{circuit.supply} V"
    form["frequency"] = quantity.plain(float(circuit.hertz))
    return with_code_choices(form, code)


def _slipped(case: ParallelCase) -> Iterator[tuple[str, tuple[str, ...], tuple[complex, ...], str]]:
    """Key, ways of answering, the branches' impedances, and the number of the branch it is about, of each slip."""
    right, hertz = case.solution.impedances, case.entered.circuit.hertz
    by_key: dict[str, list[complex]] = {}
    for place, branch in enumerate(case.entered.typed):
        for key, values in changed(branch, hertz):
            by_key.setdefault(key, list(right))[place] = phasor.total(values)
    # Between branches it is the currents that work against each other, not the reactances.
    for key, slipped in by_key.items():
        yield key, BOTH, tuple(slipped), ""
    for place, value in enumerate(right):
        if value.real and value.imag:
            number = str(case.entered.numbers[place])
            size = value.real + (-value.imag if value.imag < 0 else value.imag)
            for key, other in (
                ("branch-as-numbers", phasor.polar(size, phasor.angle(value))),
                ("branch-reactance-only", complex(0.0, value.imag)),
            ):
                yield key, BOTH, (*right[:place], other, *right[place + 1 :]), number


def _added(case: ParallelCase) -> complex | None:
    """The total admittance with the reactive currents of coils and capacitors added."""
    kinds = {one.element.kind for branch in case.entered.typed for one in branch}
    if not {COIL, CAPACITOR} <= kinds:
        return None
    return phasor.total(complex(value.real, -math.fabs(value.imag)) for value in case.solution.admittances)


def slips(case: ParallelCase) -> Iterator[tuple[str, tuple[str, ...], complex, str]]:
    """Key, ways of answering, the total admittance that each mistake gives, and the number of its branch."""
    for key, how, values, number in _slipped(case):
        if all(value != 0 for value in values):
            yield key, how, phasor.total(1.0 / value for value in values), number
    added = _added(case)
    if added is not None:
        yield "reactive-currents-added", BOTH, added, ""
    in_series = phasor.total(case.solution.impedances)
    if len(case.solution.impedances) > 1 and in_series != 0:
        yield "impedances-in-series", ONLY_CALCULATED, 1.0 / in_series, ""


def mistakes(case: ParallelCase) -> tuple[Mistake, ...]:
    """What mistakes with the branches give for the supply current."""
    turned = phasor.polar(1.0, -case.picture.reference)
    slipped: list[Mistake] = []
    for key, how, admittance, number in slips(case):
        named = {"a": number} if number else {}
        slipped.append(mistake(key, how, case.solution.volts * admittance * turned, **named))
    return tuple(slipped)


def task_of(case: ParallelCase) -> Task:
    """The supply current to be found, or the voltage if the current is known."""
    task = sum_task(case, mistakes(case) if case.typed_companions else ())
    if case.typed_companions:
        return task
    amperes = phasor.magnitude(case.solution.current)
    slipped = []
    for key, _, admittance, number in slips(case):
        if admittance != 0:
            named = {"a": number} if number else {}
            slipped.append(mistake(key, ONLY_CALCULATED, amperes / admittance, **named))
    return calculated_task(task, amperes / case.solution.total_admittance, case, slipped)


VOLTS = (24, 48, 120, 230, 240)


def _parallel(draw: SeededIntegers, tier: str) -> CircuitValues:
    volts = VOLTS[draw.below(len(VOLTS))]
    if tier == "support":
        return CircuitValues(4 * draw.between(5, 25), 4 * draw.between(4, 25), 0, True, 0, 50, volts)
    own = draw.between(4, 30) if tier == "stretch" else 0
    return CircuitValues(draw.between(20, 99), 10 * draw.between(5, 40), 5 * draw.between(4, 40), False, own, 50, volts)


def currents_of(circuit: CircuitValues, share: float = math.tau) -> tuple[complex, ...]:
    """Currents of a resistor, a coil (with its own resistance in series) and a capacitor in parallel."""
    coil, capacitor = circuit.reactances(share)
    volts = complex(float(circuit.supply), 0.0)
    currents = [volts / complex(float(circuit.ohms), 0.0), volts / complex(float(circuit.own), coil)]
    return (*currents, volts / complex(0.0, -capacitor)) if capacitor else tuple(currents)


def may_be_set(circuit: CircuitValues) -> bool:
    """Whether a parallel circuit may be set."""
    currents = currents_of(circuit)
    total = phasor.total(currents)
    size = phasor.magnitude(total)
    if min(phasor.magnitude(part) for part in currents) < 0.15 * max(phasor.magnitude(part) for part in currents):
        return False
    if not 0.25 * total.real <= math.fabs(total.imag) <= 2.0 * total.real:
        return False
    slips = [total - part for part in currents]
    slips += [total - part - part for part in currents]
    slips.append(complex(total.real, -total.imag))
    if not circuit.in_ohms:
        slips.append(phasor.total(currents_of(circuit, 1.0)))
    return all(phasor.magnitude(slip - total) >= CLEAR * size for slip in slips)


def may_be_set_2(circuit: CircuitValues) -> bool:
    """Whether a parallel circuit of version 2 may be set: its supply current reads well too."""
    return may_be_set(circuit) and reads_well(currents_of(circuit))


def parallel_of(code: Code) -> CircuitValues:
    """The parallel circuit of a code, its supply in volts. Raises NoProblemError."""
    return first_accepted(code, _parallel, may_be_set if code.generator == 1 else may_be_set_2)
