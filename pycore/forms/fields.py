"""The fields of a form: names, labels, kinds and options."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

VERSIONS = ("1", "2", "3")
"""Versions of the links, the present one last. Each keeps its defaults for ever."""
VERSION = VERSIONS[-1]
LONGEST_VALUE = 200
"""How many characters a field takes, as a rule."""
IN_VIEW = ("values", "method", "scale")
"""Groups that are never folded away."""
VALUE_GROUPS = ("values", "more", "loads")
"""Groups that hold the values of a problem."""


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
    or ``10 + j17.3``), ``choice``, ``text``. ``group``: ``values``, ``method`` and ``scale`` (always visible),
    ``loads``, ``picture``, ``sheet``, ``words``. ``default``: "" for a field that may stay empty. ``before``: its
    default in earlier versions of links, as (version, default), where it differed. ``sample``: key of the phasor whose
    line is drawn beside the label. ``private``: never part of a link (a name, a date). ``shown_when``: pairs of
    field and value; the field is shown if one of them is chosen. ``longest``: how many characters it takes; more than
    usual for sentences.
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
    before: tuple[tuple[str, str], ...] = ()
    longest: int = LONGEST_VALUE

    def default_in(self, version: str) -> str:
        """What a link of a version means where it does not name the field."""
        return dict(self.before).get(version, self.default)

    def counts(self, form: Mapping[str, str]) -> bool:
        """Return whether the field has a meaning with a form's choices."""
        return not self.shown_when or any(form.get(name) == value for name, value in self.shown_when)


def default_form(fields: Iterable[Field], version: str = VERSION) -> dict[str, str]:
    """Return the form of a page as opened without a link: the default of every field, in a version of the links."""
    return {field.name: field.default_in(version) for field in fields}


def is_example(form: Mapping[str, str], fields: Iterable[Field]) -> bool:
    """Whether these fields hold the example of a page: the present one, or that of an earlier version."""
    listed = tuple(fields)
    return any(
        all(form[name] == default for name, default in default_form(listed, version).items()) for version in VERSIONS
    )
