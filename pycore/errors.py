"""What can be wrong with what somebody typed: said by field, never by accident."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Offer:
    """A way out of a fault: what it is called, and the form values that bring it."""

    label: str
    values: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Fault:
    """One unusable input.

    ``field`` is the form control's name, ``given`` what was typed, ``message`` a whole
    sentence naming both and what is accepted, ``part`` the stretch of ``given`` that is
    at fault (empty when all of it is), ``offers`` what would do instead. ``awaited``: nothing was typed yet, so the
    page says what to type and shows no fault.
    """

    field: str
    typed: str
    message: str
    fragment: str = ""
    offers: tuple[Offer, ...] = ()
    awaited: bool = False


class InputError(ValueError):
    """Raised when a form cannot be used; carries every fault found, not only the first."""

    def __init__(self, *faults: Fault) -> None:
        self.faults = faults
        super().__init__("; ".join(fault.message for fault in faults))


class DrawingError(ValueError):
    """Raised when a drawing holds a number that no writer may write (NaN, infinity)."""
