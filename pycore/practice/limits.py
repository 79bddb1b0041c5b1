"""The tolerances that a lecturer may set: their fields, units and bounds, read in one place."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from pycore import quantity
from pycore.errors import Fault
from pycore.practice.task import Limits
from pycore.quantity import QuantityError


@dataclass(frozen=True, slots=True)
class Allowance:
    """One tolerance: its field, its unit, and the least and most that may be set."""

    name: str
    unit: str
    least: float
    most: float

    @property
    def bounds(self) -> tuple[str, str]:
        """The least and the most as text."""
        return quantity.plain(self.least), quantity.plain(self.most)


ALLOWANCES = (Allowance("allow-percent", "%", 0.1, 50.0), Allowance("allow-degrees", "°", 0.1, 45.0))
"""Of the size, then of the angle."""


def read_limits(
    form: Mapping[str, str], message_of: Callable[[Allowance, str], str]
) -> tuple[Limits, tuple[Fault, ...]]:
    """Return a lecturer's own limits, None for an empty field, and a fault for each text that cannot be used;
    ``message_of`` an allowance and its text is the fault's sentence."""
    values: list[float | None] = []
    faults: list[Fault] = []
    for allowance in ALLOWANCES:
        text = form.get(allowance.name, "").strip()
        value = _value_of(text, allowance) if text else None
        if text and value is None:
            faults.append(Fault(allowance.name, text, message_of(allowance, text)))
        values.append(value)
    return Limits(values[0], values[1]), tuple(faults)


def _value_of(text: str, allowance: Allowance) -> float | None:
    try:
        value = quantity.read(text, allowance.unit)
    except QuantityError:
        return None
    return value if allowance.least <= value <= allowance.most else None
