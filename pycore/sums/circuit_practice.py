"""Series and parallel circuits in practice: problems from codes, and the results of mistakes."""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, Element, impedance
from pycore.constructions.names import SUM_KEY
from pycore.practice.codes import Code
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Slips, Task
from pycore.sums.case import SumCase

if TYPE_CHECKING:
    from pycore.forms.elements import TypedElement

BOTH = (DRAWN, CALCULATED)
ONLY_CALCULATED = (CALCULATED,)


def milli(value: int) -> str:
    """Return thousandths as text to type: 120 mH."""
    return f"{value} mH"


def with_code_choices(form: dict[str, str], code: Code) -> dict[str, str]:
    """The form with what the code says of paper and method."""
    form["paper"] = code.paper
    if code.method != "any":
        form["method"] = code.method
    return form


def changed(typed: "tuple[TypedElement, ...]", hertz: float) -> Iterator[tuple[str, tuple[complex, ...]]]:
    """Return the impedances that result from mistakes with single elements, by the mistake's key; unchanged ones are
    left out."""
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


def calculated_task(task: Task, result: complex, case: SumCase, mistakes: list[Mistake]) -> Task:
    """The task with a result of the companions' quantity, which no drawing of this sheet shows."""
    if case.companions is None:
        raise TypeError("there are no companions")
    return replace(
        task, result=result, symbol=case.notation.tags["c1"], writing=case.companions.writing, factor=0.0, spread=None,
        mistakes=tuple(mistakes), earlier=(), origin=case.notation.tags[SUM_KEY], turn=0.0, sense=1, in_steps=False,
        largest=0.0, turn_back=1.0, slips=Slips(), origins=(), drawing=task,
    )  # fmt: skip


CLEAR = 0.12
"""The result of a mistake must differ from the right one by this share of it."""


@dataclass(frozen=True, slots=True)
class CircuitValues:
    """Ohms, millihenries and microfarads of a circuit (0: none), or whole ohms of reactance if ``in_ohms``; a coil's
    own resistance, hertz, and tenths of an ampere or whole volts of the supply."""

    ohms: int
    coil: int
    capacitor: int
    in_ohms: bool
    own: int
    hertz: int
    supply: int

    def reactances(self, share: float = math.tau) -> tuple[float, float]:
        """Return the reactances of coil and capacitor in ohms; ``share`` multiplies the frequency."""
        if self.in_ohms:
            return float(self.coil), float(self.capacitor)
        turning = share * self.hertz
        capacitor = 1e6 / (turning * self.capacitor) if self.capacitor else 0.0
        return turning * self.coil / 1000.0, capacitor
