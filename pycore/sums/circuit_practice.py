"""Series and parallel circuits as practice knows them: problems from codes, and what mistakes give."""

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

from pycore.circuits.elements import CAPACITOR, COIL, RESISTOR, Element, impedance
from pycore.constructions.names import SUM_KEY
from pycore.practice.codes import Code
from pycore.practice.task import CALCULATED, DRAWN, Mistake, Task
from pycore.sums.case import SumCase

if TYPE_CHECKING:
    from pycore.forms.elements import TypedElement
from dataclasses import dataclass

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


def changed(typed: "tuple[TypedElement, ...]", hertz: float) -> Iterator[tuple[str, tuple[complex, ...]]]:
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


def found_by_calculation(task: Task, result: complex, case: SumCase, mistakes: list[Mistake]) -> Task:
    """The task with a result of the companions' quantity, which no drawing of this sheet shows."""
    if case.companions is None:
        raise TypeError("there are no companions")
    return replace(
        task, result=result, symbol=case.notation.tags["c1"], writing=case.companions.writing, factor=0.0, spread=None,
        mistakes=tuple(mistakes), earlier=(), origin=case.notation.tags[SUM_KEY], turn=0.0, sense=1, in_steps=False,
    )  # fmt: skip


CLEAR = 0.12
"""Share of the right result by which a slip's keeps clear of it."""


@dataclass(frozen=True, slots=True)
class CircuitValues:
    """Ohms, millihenries and microfarads of a circuit (0: none), or reactances in whole ohms where ``in_ohms``; a
    coil's own resistance, hertz, and tenths of an ampere or whole volts of the supply."""

    ohms: int
    coil: int
    capacitor: int
    in_ohms: bool
    own: int
    hertz: int
    supply: int

    def reactances(self, share: float = math.tau) -> tuple[float, float]:
        """Of coil and capacitor, in ohms; ``share`` is what the frequency is multiplied by."""
        if self.in_ohms:
            return float(self.coil), float(self.capacitor)
        turning = share * self.hertz
        capacitor = 1e6 / (turning * self.capacitor) if self.capacitor else 0.0
        return turning * self.coil / 1000.0, capacitor
