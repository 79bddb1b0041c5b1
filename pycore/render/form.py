"""The form: labels, controls, help and the slots where messages appear.

The form is the only state of a page. Its controls stand outside every region that a new
answer replaces, so that focus and what is being typed survive.
"""

from collections.abc import Iterable, Mapping, Sequence

from pycore.calculators.interface import Field
from pycore.render.elements import Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.render.sample import sample
from pycore.words import furniture

FORM = "problem"
"""Id of the form element, which controls outside it name as their owner."""

Echo = Mapping[str, Mapping[str, str]]


def _described(field: Field) -> str:
    slots = [f"m-{field.name}"]
    if field.unit:
        slots.append(f"u-{field.name}")
    if field.help:
        slots.append(f"h-{field.name}")
    if field.kind == "angle":
        slots.append(f"e-{field.name}")
    return " ".join(slots)


def _message(field: Field) -> Markup:
    return h("p", {"class": "message", "id": f"m-{field.name}", "data-message-for": field.name, "hidden": True})


def _label(field: Field) -> Markup:
    line = sample(field.sample) if field.sample else None
    return h("label", {"for": f"f-{field.name}"}, phrase_html(field.label), line)


def _help(field: Field) -> Markup | None:
    return h("p", {"class": "help", "id": f"h-{field.name}"}, phrase_html(field.help)) if field.help else None


def _text_input(field: Field, value: str) -> Markup:
    decimal = field.kind == "quantity"
    control = h("input", {
        "id": f"f-{field.name}", "name": field.name, "form": FORM, "type": "text", "value": value,
        "inputmode": "decimal" if decimal else "text", "autocomplete": "off", "autocapitalize": "off",
        "spellcheck": "false", "enterkeyhint": "done", "aria-describedby": _described(field), "maxlength": 200,
    })  # fmt: skip
    unit = h("span", {"class": "unit", "id": f"u-{field.name}"}, field.unit) if field.unit else None
    marks = h("span", {"class": "marks", "aria-hidden": "true", "data-marks-for": field.name})
    return h("div", {"class": "entry"}, control, marks, unit)


def _select(field: Field, value: str) -> Markup:
    options = [
        h("option", {"value": choice.value, "selected": choice.value == value}, choice.label)
        for choice in field.choices
    ]
    control = h("select", {
        "id": f"f-{field.name}", "name": field.name, "form": FORM, "autocomplete": "off",
        "aria-describedby": _described(field),
    }, options)  # fmt: skip
    return h("div", {"class": "entry"}, control)


def _factor(field: Field, echo: Mapping[str, str]) -> Markup:
    """Power factor and sense: nameless controls that write into the field itself."""
    name, sense = field.name, echo.get("sense", "lag")
    control = h("input", {
        "id": f"pf-{name}", "type": "text", "inputmode": "decimal", "autocomplete": "off", "form": FORM,
        "data-factor-of": name, "value": echo.get("factor", ""), "maxlength": 200, "aria-describedby": f"m-{name}",
    })  # fmt: skip
    options = [
        h("option", {"value": "lag", "selected": sense == "lag"}, furniture.LAGGING),
        h("option", {"value": "lead", "selected": sense == "lead"}, furniture.LEADING),
    ]
    turn = h("select", {
        "data-sense-of": name, "form": FORM, "autocomplete": "off",
        "aria-label": f"{field.label}: {furniture.SENSE}",
    }, options)  # fmt: skip
    label = h("label", {"for": f"pf-{name}"}, furniture.POWER_FACTOR)
    entries = [h("div", {"class": "entry"}, entry) for entry in (control, turn)]
    return h("div", {"class": "factor"}, label, entries)


def field_html(field: Field, value: str, echo: Mapping[str, str]) -> Markup:
    """One field with its label, control, help and message slot."""
    control = _select(field, value) if field.kind == "choice" else _text_input(field, value)
    extra = None
    if field.kind == "angle":
        heard = h("p", {"class": "echo", "id": f"e-{field.name}", "data-echo-for": field.name}, echo.get("degrees", ""))
        extra = (heard, _factor(field, echo))
    marks = {"class": f"field {field.kind}", "data-field": field.name}
    return h("div", marks, _label(field), control, extra, _help(field), None if _in_row(field) else _message(field))


def _in_row(field: Field) -> bool:
    return field.group == "values"


def fields_html(fields: Iterable[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """Fields one after another, filled with ``form`` (defaults where it says nothing)."""
    return join([field_html(field, form.get(field.name, field.default), echo.get(field.name, {})) for field in fields])


def values_html(fields: Sequence[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """The form with the row of values that is always in view; messages come below the row."""
    row = [field for field in fields if _in_row(field)]
    messages = [_message(field) for field in row]
    return h("form", {"id": FORM, "novalidate": True, "autocomplete": "off", "aria-label": furniture.GROUPS["values"]},
             h("div", {"class": "values", "data-count": len(row)}, fields_html(row, form, echo), messages))  # fmt: skip


def options_html(fields: Sequence[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """The groups of choices, each folded away under its heading."""
    groups = []
    for group, title in furniture.GROUPS.items():
        members = [field for field in fields if field.group == group]
        if group == "values" or not members:
            continue
        body = h("div", {"class": "fields"}, fields_html(members, form, echo))
        groups.append(h("details", {"class": "group", "data-group": group}, h("summary", None, title), body))
    return join(groups)
