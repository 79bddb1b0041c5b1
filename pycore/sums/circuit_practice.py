"""Series and parallel circuits as practice knows them: problems from codes, and what mistakes give."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import TYPE_CHECKING

from pycore import phasor, quantity
from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, Element, impedance
from pycore.practice.codes import Code
from pycore.practice.sums import made
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Task
from pycore.sums.answer import default_form
from pycore.sums.case import SumCase
from pycore.sums.circuit_problems import series_of
from pycore.sums.task import task_of

if TYPE_CHECKING:
    from pycore.calculators.series_circuit.page import SeriesCase
    from pycore.forms.elements import Typed

BOTH = (DRAWN, CALCULATED)
ONLY_CALCULATED = (CALCULATED,)


def milli(value: int) -> str:
    """Thousandths as they are typed: 120 mH."""
    return f"{value} mH"


def chosen(form: dict[str, str], code: Code) -> dict[str, str]:
    """The form with what the code says of paper and method."""
    form["paper"] = code.paper
    if code.method != "any":
        form["method"] = code.method
    return form


def series_form(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's series circuit: the current is given, the supply is to be found."""
    # Its fields are only needed here; the page imports this module when it is asked for practice.
    from pycore.calculators.series_circuit.page import FIELDS

    circuit = series_of(code)
    form = default_form(FIELDS) | dict(choices or {})
    form["r"] = f"{circuit.ohms} + {circuit.own}" if circuit.own else str(circuit.ohms)
    form["l"] = f"{circuit.coil} Ω" if circuit.in_ohms else milli(circuit.coil)
    form["c"] = ""
    if circuit.capacitor:
        form["c"] = f"{circuit.capacitor} Ω" if circuit.in_ohms else f"{circuit.capacitor} µF"
    form["supply"] = quantity.plain(circuit.supply / 10.0) + " A"
    form["frequency"] = str(circuit.hertz)
    return chosen(form, code)


def changed(typed: "tuple[Typed, ...]", hertz: float) -> Iterator[tuple[str, tuple[complex, ...]]]:
    """Impedances as slips with single elements give them, by the slip's key; those that change nothing are left out."""
    elements = [one.element for one in typed]
    right = tuple(impedance(one, hertz) for one in elements)

    def each(change: dict[str, float], whose: list[bool]) -> tuple[complex, ...]:
        return tuple(
            complex(value.real, value.imag * change.get(one.kind, 1.0)) if mine else value
            for value, one, mine in zip(right, elements, whose, strict=True)
        )

    everyone = [True] * len(elements)
    from_henries = [not one.in_ohms for one in elements]
    slips = {
        "two-pi-forgotten": each({COIL: 1.0 / math.tau, CAPACITOR: math.tau}, from_henries),
        "reactances-added": each({CAPACITOR: -1.0}, everyone),
        "kinds-exchanged": each({COIL: -1.0, CAPACITOR: -1.0}, everyone),
        "milli-forgotten": each({COIL: 1000.0}, [one.unit == "mH" for one in typed]),
        "micro-as-milli": each({CAPACITOR: 0.001}, [one.unit == "µF" for one in typed]),
        "reactance-inverted": tuple(_inverted(one, hertz) for one in elements),
    }
    kinds = {one.kind for one in elements}
    for key, values in slips.items():
        if values != right and (key != "reactances-added" or {COIL, CAPACITOR} == kinds - {RESISTOR}):
            yield key, values


def _inverted(element: Element, hertz: float) -> complex:
    value = impedance(element, hertz)
    if element.kind == CAPACITOR and not element.in_ohms:
        return complex(0.0, 1.0 / value.imag)
    return value


def _slipped(case: "SeriesCase") -> Iterator[tuple[str, tuple[str, ...], complex]]:
    """Key, ways of answering, and the whole impedance that each slip gives."""
    given, whole = case.given, case.solution.whole
    for key, values in changed(given.typed, given.circuit.hertz):
        yield key, BOTH, phasor.total(values)
    resistance, reactance = whole.real, whole.imag
    if resistance and reactance:
        size = resistance + (-reactance if reactance < 0 else reactance)
        yield "impedances-as-numbers", ONLY_CALCULATED, phasor.polar(size, phasor.angle(whole))
        yield "resistance-only", ONLY_CALCULATED, complex(resistance, 0.0)
        yield "reactance-only", ONLY_CALCULATED, complex(0.0, reactance)


def series_mistakes(case: "SeriesCase") -> tuple[Mistake, ...]:
    """What slips with the elements give for the drawn sum."""
    turned = phasor.polar(1.0, -case.picture.reference)
    # On a given voltage a slip changes the current too, and the drawn sum comes out as the supply all the same.
    if case.volts_drawn and not case.typed_companions:
        return ()
    share = case.solution.current if case.volts_drawn else 1.0
    return tuple(made(key, how, value * share * turned) for key, how, value in _slipped(case))


def series_task(case: "SeriesCase") -> Task:
    """What is to be found: the drawn sum, or the current where the voltage was given."""
    task = task_of(case)
    if not case.volts_drawn or case.typed_companions or case.companions is None:
        return task
    whole, volts = case.solution.whole, phasor.magnitude(case.solution.supply)
    result = volts / whole
    mistakes = [made(key, ONLY_CALCULATED, volts / value) for key, _, value in _slipped(case) if value != 0]
    mistakes.append(made("multiplied-not-divided", ONLY_CALCULATED, phasor.polar(volts * phasor.magnitude(whole),
                                                                               -phasor.angle(whole))))  # fmt: skip
    if whole.imag:
        mistakes.append(made("angle-turned", ONLY_CALCULATED, complex(result.real, -result.imag)))
    return found_by_calculation(task, result, case, mistakes)


def found_by_calculation(task: Task, result: complex, case: SumCase, mistakes: list[Mistake]) -> Task:
    """The task with a result of the companions' quantity, which no drawing of this sheet shows."""
    if case.companions is None:
        raise TypeError("there are no companions")
    return replace(
        task, result=result, symbol=case.telling.tags["c1"], writing=case.companions.writing, factor=0.0, spread=None,
        mistakes=tuple(mistakes), earlier=(), origin=case.telling.tags["sum"], turn=0.0, sense=1,
    )  # fmt: skip
