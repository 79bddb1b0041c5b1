"""A college's settings: what pages start with on a device where they are used. They change no link and no code.

Every field may stay empty: each page then has its own. Fields are those of the pages, with their names and options.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from pycore.calculators.registry import CALCULATORS
from pycore.errors import Fault, InputError
from pycore.forms import links
from pycore.forms.fields import Field, Option, default_form
from pycore.forms.reading import Reader
from pycore.pages import class_set, question_paper
from pycore.practice.limits import ALLOWANCES, read_limits
from pycore.words import class_set as set_words
from pycore.words import college as words

GROUPED: Mapping[str, tuple[str, ...]] = {
    "lines": ("names", "colours"),
    "angles": ("angles", "first", "rotation", "resultant", "decimal"),
    "drawing": ("protractor", "parallels", "paper", "print"),
    "meter": ("percent", "digits", "digit"),
    "marking": ("allow-percent", "allow-degrees", "marks-first", "marks-length", "marks-angle"),
    "parts": tuple(f"marks-{key}" for key in question_paper.MARKS),
}
"""The names of the fields by their group, as the pages have them."""
LONGEST_COLLEGE = question_paper.LONGEST["college"]
SHOWN = "neutral-current"
"""The calculator whose sheet shows the settings."""


def _found() -> dict[str, Field]:
    """The fields of all pages by name; of a question paper's those of its first question, for every one."""
    fields = [field for page in CALCULATORS.values() for field in page.fields]
    parts = (
        replace(field, name=field.name.removeprefix("q1-"))
        for field in question_paper.QUESTION_FIELDS[0] if field.name.startswith("q1-marks-")
    )  # fmt: skip
    return {field.name: field for field in (*parts, *class_set.FIELDS, *reversed(fields))}


def _open_field(field: Field, group: str) -> Field:
    """A page's field that may stay empty."""
    options = (Option("", words.AS_PAGE), *(one for one in field.options if one.value)) if field.options else ()
    label = words.RESULTANT if field.name == "resultant" else field.label
    return Field(field.name, label, field.kind, group, "", field.unit, options=options)


def _fields() -> tuple[Field, ...]:
    found = _found()
    listed = [_open_field(found[name], group) for group, names in GROUPED.items() for name in names]
    return (Field("college", words.COLLEGE, "text", "college", help=words.COLLEGE_HELP), *listed)


FIELDS = _fields()
BY_NAME = {field.name: field for field in FIELDS}


@dataclass(frozen=True, slots=True)
class CollegeSettings:
    """Settings that can be used: what is chosen by field, empty ones left out, and the pairs of their link."""

    chosen: Mapping[str, str]
    link: tuple[tuple[str, str], ...]

    def for_page(self, fields: Iterable[Field]) -> dict[str, str]:
        """A page's form as it starts with these settings."""
        listed = tuple(fields)
        names = {field.name for field in listed}
        return default_form(listed) | {name: text for name, text in self.chosen.items() if name in names}


def _read_marks(reader: Reader, name: str) -> None:
    typed = reader.text(name)
    if typed and not (typed.isascii() and typed.isdigit() and int(typed[:6]) <= question_paper.MOST_MARKS):
        reader.fault(name, words.bad_marks(reader.label(name), typed, question_paper.MOST_MARKS))


def _read_limits(reader: Reader) -> None:
    texts = {one.name: reader.text(one.name) for one in ALLOWANCES}
    reader.faults += read_limits(
        texts, lambda one, text: set_words.bad_limit(reader.label(one.name), text, *one.bounds)
    )[1]


def _meter_faults(chosen: Mapping[str, str]) -> tuple[Fault, ...]:
    """What the main calculator says of the meter's fields."""
    page = CALCULATORS[SHOWN]
    form = default_form(page.fields) | {name: chosen[name] for name in GROUPED["meter"] if name in chosen}
    try:
        found = page.faults(page.case(form))
    except InputError as error:
        found = error.faults
    return tuple(fault for fault in found if fault.field in GROUPED["meter"])


def read_settings(form: Mapping[str, str]) -> CollegeSettings:
    """The settings of a form. Raises InputError with every fault found."""
    reader = Reader(form, BY_NAME)
    chosen: dict[str, str] = {}
    for field in FIELDS:
        text = reader.choice(field.name) if field.kind == "choice" else reader.text(field.name)
        chosen |= {field.name: " ".join(text.split())} if text else {}
    if len(chosen.get("college", "")) > LONGEST_COLLEGE:
        reader.fault("college", words.too_long(words.COLLEGE, LONGEST_COLLEGE))
    for name in (*GROUPED["parts"], "marks-first", "marks-length", "marks-angle"):
        _read_marks(reader, name)
    _read_limits(reader)
    reader.faults += _meter_faults(chosen)
    reader.finish()
    return CollegeSettings(chosen, links.form_pairs(chosen, FIELDS))
