"""A lecturer's own values for a question: typed one after the other, or the link of a sheet that has them."""

import re
from collections.abc import Mapping
from typing import Any

from pycore.errors import InputError
from pycore.forms import links
from pycore.forms.fields import Field, default_form
from pycore.forms.reading import Reader
from pycore.pages.class_set import TOPICS
from pycore.words import question_paper as words

LONGEST_LINK = 1500
_NUMBERS = re.compile(r"[\d.,−-]+(?:\s+[\d.,−-]+)+")
_BETWEEN = re.compile(r"\s*[;\t\n]\s*|,\s+")
OwnValues = tuple[Any, Mapping[str, str]]
"""The calculator's page, and its form."""


def value_fields(page: Any) -> tuple[Field, ...]:
    """The fields of a calculator's values, in the order in which they are typed; those that its usual choices hide are
    not among them."""
    usual = default_form(page.fields)
    values = (field for field in page.fields if field.group == "values" and field.kind != "readings")
    return tuple(field for field in values if field.counts(usual))


def example_of(page: Any) -> str:
    """Which values a calculator needs, and those of its example."""
    needed = [field for field in value_fields(page) if field.default]
    return words.own_example([field.label for field in needed], [_with_unit(field) for field in needed])


def _with_unit(field: Field) -> str:
    """The example of a field with its unit."""
    bare = field.unit and field.unit != "°" and field.default[-1:].isdigit()
    return f"{field.default}\u00a0{field.unit}" if bare else field.default


def _split(text: str) -> list[str]:
    """Values one by one: a semicolon, a tab or a comma with a space is between two; between bare numbers a space."""
    parts = text.split() if _NUMBERS.fullmatch(text) and not _BETWEEN.search(text) else _BETWEEN.split(text)
    return [part.strip() for part in parts if part.strip()]


def _typed(reader: Reader, name: str, page: Any, chosen: Mapping[str, str]) -> Mapping[str, str] | None:
    """The form of values that were typed, drawn as the whole paper is; None where there are too few or too many."""
    fields, values = value_fields(page), _split(reader.text(name))
    needed = [field for field in fields if field.default]
    if not len(needed) <= len(values) <= len(fields):
        reader.fault(name, words.bad_count(reader.label(name), page.title, example_of(page), len(values)))
        return None
    drawn_as = {field.name: chosen[field.name] for field in page.fields
                if field.name in chosen and field.name not in ("scale", "method")}  # fmt: skip
    spare = [field for field in fields if not field.default][: len(values) - len(needed)]
    taken = (field.name for field in fields if field in needed or field in spare)
    empty = dict.fromkeys((field.name for field in fields), "")
    return {**default_form(page.fields), **drawn_as, **empty, **dict(zip(taken, values, strict=True))}


def _linked(reader: Reader, name: str, typed: str) -> OwnValues | None:
    """The calculator and the form of a link; None where it cannot be used, with a fault."""
    address, _, fragment = typed.partition("#")
    slug = next((part for part in reversed(address.partition("?")[0].split("/")) if part), "")
    if slug not in TOPICS or not fragment or len(typed) > LONGEST_LINK:
        reader.fault(name, words.bad_link(reader.label(name), typed))
        return None
    from pycore.pages.own_problem import fill

    page = TOPICS[slug]
    link = links.open_fragment(fragment, page.fields, links.RESERVED)
    opened = fill(page, link)
    if opened.fault or opened.page or not (link.has_values or opened.form.get("code")):
        message = opened.fault.message if opened.fault else words.NO_VALUES
        reader.fault(name, words.bad_values(reader.label(name), message))
        return None
    return page, opened.form


def is_link(typed: str) -> bool:
    """Whether the link of a sheet was typed, not values."""
    return "#" in typed or "/" in typed


def read_own(
    reader: Reader, name: str, topic: Any, chosen: Mapping[str, str], method: Mapping[str, str]
) -> OwnValues | None:
    """The calculator and the form of a field: of the link in it, else of values for ``topic``. ``chosen``: how the
    whole paper is drawn and written; ``method``: that of typed values, nothing for the calculator's usual one. None
    where the field is empty, or has a fault."""
    typed = reader.text(name).strip()
    if not typed:
        return None
    if is_link(typed):
        found = _linked(reader, name, typed)
    else:
        form = _typed(reader, name, topic, chosen)
        found = None if form is None else (topic, {**form, **method})
    if found is None:
        return None
    from pycore.pages.own_problem import as_problem

    page, form = found
    try:
        problem = as_problem(page, {**form, "decimal": chosen["decimal"]})
    except InputError as error:
        reader.fault(name, words.bad_values(reader.label(name), error.faults[0].message))
        return None
    return page, {**problem, "code": ""}
