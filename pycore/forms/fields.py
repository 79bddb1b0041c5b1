"""The fields of a form: names, labels, kinds and options."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    pass

@dataclass(frozen=True, slots=True)
class Option:
    """One option of a choice field."""

    value: str
    label: str


@dataclass(frozen=True, slots=True)
class Field:
    """One form field. ``name`` is its key in links for ever.

    ``kind``: ``quantity`` (decimal keypad), ``readings`` (a quantity read once or repeatedly), ``length`` (a quantity,
    or its length on the sheet), ``angle`` (degrees, or a power factor such as ``0.85 lag``), ``phasor`` (``20 at 60``
    or ``10 + j17.3``), ``choice``, ``text``. ``group``: ``values`` and ``method`` (always visible), ``loads``,
    ``picture``, ``sheet``, ``words``. ``default``: "" for a field that may stay empty. ``opening``: the value of a page
    opened without a link, if it differs from ``default``, which links fix for ever. ``sample``: key of the phasor whose
    line is drawn beside the label. ``private``: never part of a link (a name, a date). ``shown_when``: pairs of field
    and value; the field is shown if one of them is chosen. ``folded``: rarely needed, so it is folded away.
    """

    name: str
    label: str
    kind: str
    group: str
    default: str = ""
    unit: str = ""
    help: str = ""
    sample: str = ""
    options: tuple[Option, ...] = ()
    private: bool = False
    shown_when: tuple[tuple[str, str], ...] = ()
    folded: bool = False
    opening: str = ""

    @property
    def example(self) -> str:
        """The value with which the page opens without a link."""
        return self.opening or self.default

    def counts(self, form: Mapping[str, str]) -> bool:
        """Return whether the field has a meaning with a form's choices."""
        return not self.shown_when or any(form.get(name) == value for name, value in self.shown_when)


def default_form(fields: Iterable[Field]) -> dict[str, str]:
    """Return the form that a link completes: the default of every field."""
    return {field.name: field.default for field in fields}


def opening_form(fields: Iterable[Field]) -> dict[str, str]:
    """The form of a page as it opens without a link: the values of its example."""
    return {field.name: field.example for field in fields}
