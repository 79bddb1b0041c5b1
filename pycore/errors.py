"""Faults in what was typed, field by field, and the errors that carry them."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Offer:
    """A correction offered with a fault: its label, and the form values that apply it."""

    label: str
    values: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Fault:
    """One input that cannot be used.

    ``field``: name of the form control. ``typed``: the text. ``message``: a complete sentence with the text and what is
    accepted. ``fragment``: the wrong part of ``typed`` (empty: all of it). ``offers``: corrections to choose from.
    ``awaited``: nothing was typed yet, so the page says what to type and shows no fault. ``question``: it can be used,
    and may be meant otherwise: the page asks which, and marks nothing wrong.
    """

    field: str
    typed: str
    message: str
    fragment: str = ""
    offers: tuple[Offer, ...] = ()
    awaited: bool = False
    question: bool = False


class InputError(ValueError):
    """Raised if a form cannot be used; contains all faults, not only the first."""

    def __init__(self, *faults: Fault) -> None:
        self.faults = faults
        super().__init__("; ".join(fault.message for fault in faults))


class DrawingError(ValueError):
    """Raised if a drawing contains a number that cannot be written (NaN, infinity)."""
