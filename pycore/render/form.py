"""The form: labels, fields, help, and the places of messages.

The form is the only state of a page. Its fields are outside of every region that a new answer replaces, so that focus
and typing are not disturbed.
"""

from collections.abc import Mapping, Sequence

from pycore.forms.fields import IN_VIEW, VALUE_GROUPS, Field
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.render.sample import sample
from pycore.words import circuits, furniture

FORM = "problem"
"""Id of the form element, named as owner by fields outside of it."""

Echo = Mapping[str, Mapping[str, str]]


LONG_CHOICE = 14
"""A choice field with more letters than this gets the full width, so that it can be read on a phone."""

SHORT_VALUE = 5
"""Phasors with more letters than this are not put three in a row on a phone."""
COLUMNS = 3

ECHOED = ("angle", "phasor", "readings", "length")
"""Kinds of field that show how the text was understood."""
ON_KEYPAD = ("quantity", "readings")


def _described(field: Field) -> str:
    slots = [f"m-{field.name}"]
    if field.unit and field.kind != "choice":
        slots.append(f"u-{field.name}")
    if field.help:
        slots.append(_help_id(field.help))
    if field.kind in ECHOED:
        slots.append(f"e-{field.name}")
    return " ".join(slots)


def _message(field: Field, column: int | None = None) -> Markup:
    """Return the place of a field's message; ``column``: the field of a row to which its pointer points."""
    marks: Marks = {"class": "message", "id": f"m-{field.name}", "data-message-for": field.name}
    return h("p", marks | {"data-column": column, "hidden": True})


def _label(field: Field) -> Markup:
    line = sample(field.sample) if field.sample else None
    return h("label", {"for": f"f-{field.name}"}, _name(field), line)


def _name(field: Field) -> Markup:
    """Return the words of the label, which follow the chosen names of lines."""
    return h("span", {"id": f"n-{field.name}", "data-label-for": field.name}, phrase_html(field.label))


def _help_id(text: str) -> str:
    """Return an id shared by fields with the same help: it is written once, below the last of them."""
    letters = "".join(letter if letter.isascii() and letter.isalnum() else "-" for letter in text.lower())
    return f"h-{letters[:60]}"


def _help(field: Field, *, form: Mapping[str, str] | None = None) -> Markup:
    """Return a field's help; with a form it is separate from its field, and shown only with it."""
    marks: Marks = {"class": "help", "id": _help_id(field.help)}
    if form is not None:
        marks |= {"data-only": _only(field), "hidden": _idle(field, form)}
    return h("p", marks, phrase_html(field.help))


def _text_input(field: Field, value: str) -> Markup:
    decimal = field.kind in ON_KEYPAD
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
        for choice in field.options
    ]
    control = h("select", {
        "id": f"f-{field.name}", "name": field.name, "form": FORM, "autocomplete": "off",
        "aria-describedby": _described(field),
    }, options)  # fmt: skip
    return h("div", {"class": "entry"}, control)


def _factor(field: Field, echo: Mapping[str, str]) -> Markup:
    """Return power factor and side: nameless fields that write into the field itself."""
    name, sense = field.name, echo.get("sense", "lag")
    control = h("input", {
        "id": f"pf-{name}", "type": "text", "inputmode": "decimal", "autocomplete": "off", "form": FORM,
        "data-factor-of": name, "value": echo.get("factor", ""), "maxlength": 200, "aria-describedby": f"m-{name}",
    })  # fmt: skip
    # Each side carries the text that turns the field to it, as pycore writes it.
    options = [
        h("option", {"value": side, "selected": sense == side, "data-text": echo.get(f"as_{side}", "")}, words)
        for side, words in (("lag", circuits.LAGGING), ("lead", circuits.LEADING))
    ]
    turn = h("select", {
        "data-sense-of": name, "form": FORM, "autocomplete": "off", "aria-labelledby": f"n-{name} s-{name}",
    }, options)  # fmt: skip
    label = h("label", {"for": f"pf-{name}"}, furniture.POWER_FACTOR)
    about = h("span", {"class": "away", "id": f"s-{name}"}, furniture.SENSE)
    entries = [h("div", {"class": "entry"}, entry) for entry in (control, turn)]
    return h("div", {"class": "factor"}, label, about, entries)


def _is_wide(field: Field) -> bool:
    return any(len(choice.label) > LONG_CHOICE for choice in field.options)


def field_html(
    field: Field, value: str, echo: Mapping[str, str], *, helped: bool = True, idle: bool = False
) -> Markup:
    """Return one field with label, control, help (if ``helped``) and place for a message."""
    control = _select(field, value) if field.kind == "choice" else _text_input(field, value)
    extra = None
    if field.kind in ECHOED:
        heard: Marks = {"class": "echo", "id": f"e-{field.name}", "data-echo-for": field.name}
        # In a row there is no room for it: a power factor is typed there, such as 0.85 lag.
        factor = _factor(field, echo) if field.kind == "angle" and not _in_row(field) else None
        extra = (h("p", heard, echo.get("said", "")), factor)
    about = _help(field) if field.help and helped else None
    slot = None if _in_row(field) else _message(field)
    kind = f"field {field.kind}{' wide' if _is_wide(field) else ''}"
    marks: Marks = {"class": kind, "data-field": field.name, "data-only": _only(field), "hidden": idle}
    return h("div", marks, _label(field), control, extra, about, slot)


def _only(field: Field) -> str | None:
    """Return the choices with which the field is shown, as ``name=value`` pairs."""
    return " ".join(f"{name}={value}" for name, value in field.shown_when) or None


def _idle(field: Field, form: Mapping[str, str]) -> bool:
    """Return whether a field has no meaning with a form's choices and is not shown."""
    return not field.counts(form)


def _in_row(field: Field) -> bool:
    return field.group == "values"


def fields_html(fields: Sequence[Field], form: Mapping[str, str], echo: Echo, *, help_apart: bool = False) -> Markup:
    """Return fields in order, filled from ``form`` (else their defaults); ``help_apart``: their help is elsewhere."""
    blocks = []
    for index, field in enumerate(fields):
        helped = not help_apart and all(later.help != field.help for later in fields[index + 1 :])
        value = form.get(field.name, field.default)
        blocks.append(field_html(field, value, echo.get(field.name, {}), helped=helped, idle=_idle(field, form)))
    return join(blocks)


def values_html(fields: Sequence[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """Return the form with the values that are always visible, each with its message below it."""
    members = [field for field in fields if _in_row(field)]
    marks: Marks = {"id": FORM, "novalidate": True, "autocomplete": "off", "aria-label": furniture.GROUPS["values"]}
    if any(field.kind == "phasor" and len(field.default) > SHORT_VALUE for field in members):
        return h("form", marks, _lines(members, form, echo))
    return h("form", marks, h("div", {"class": "values"}, _rows(members, form, echo)))


def _rows(members: Sequence[Field], form: Mapping[str, str], echo: Echo) -> list[tuple[Markup, ...]]:
    """Return values three in a row, with the messages of a row below it."""
    rows: list[tuple[Markup, ...]] = []
    for start in range(0, len(members), COLUMNS):
        row = members[start : start + COLUMNS]
        last = start > 0 and len(row) == 1
        messages = [_message(field, COLUMNS if last else index + 1) for index, field in enumerate(row)]
        # Help that one column would squeeze has the row's whole width, below it.
        apart = len(row) > 1
        helped = {field.help: field for field in row if field.help} if apart else {}
        helps = [_help(field, form=form) for field in helped.values()]
        rows.append((fields_html(row, form, echo, help_apart=apart), join(helps), join(messages)))
    return rows


def _lines(members: Sequence[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """Return values one below another, for texts too long for three in a row.

    Rarely needed ones are folded away; the fold is open while one of them is filled.
    """
    open_fields, folded = ([field for field in members if field.folded == is_folded] for is_folded in (False, True))
    help_text = next((field.help for field in members if field.help), "")
    about = h("p", {"class": "help", "id": _help_id(help_text)}, help_text) if help_text else None
    blocks = [h("div", {"class": "values in-lines"}, [_line(field, form, echo) for field in members_shown], note)
            for members_shown, note in ((open_fields, about), (folded, None))]  # fmt: skip
    filled = any(form.get(field.name, field.default) for field in folded)
    if not folded:
        return blocks[0]
    more = h("details", {"class": "more-values", "data-more-values": True, "open": filled},
             h("summary", None, furniture.MORE_VALUES), blocks[1])  # fmt: skip
    return join(blocks[0], more)


def _line(field: Field, form: Mapping[str, str], echo: Echo) -> Markup:
    value = form.get(field.name, field.default)
    return join(field_html(field, value, echo.get(field.name, {}), helped=False), _message(field))


def has_lags(fields: Sequence[Field]) -> bool:
    """Return whether a page has fields for angles of lag."""
    return any(field.kind == "angle" for field in fields)


def _title(group: str, title: str, members: Sequence[Field]) -> str:
    """Return the heading of a group, by its fields."""
    if group == "loads" and has_lags(members):
        return furniture.LAGS
    return furniture.METERS if any(field.name == "percent" for field in members) else title


def options_html(fields: Sequence[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """Return the groups of choices, each folded away under its heading."""
    groups = []
    for group, title in furniture.GROUPS.items():
        members = [field for field in fields if field.group == group]
        if group in IN_VIEW or not members:
            continue
        body = h("div", {"class": "fields"}, fields_html(members, form, echo))
        heading = h("summary", None, _title(group, title, members))
        marks: Marks = {"class": "group", "data-group": group, "data-holds-values": group in VALUE_GROUPS}
        groups.append(h("details", marks, heading, body))
    return join(groups)


def example_html() -> Markup:
    """The way to clear what is left of the example, once a value of one's own stands in the form.

    Its sentences stand in attributes; it takes the place of the example's story, so that no field moves.
    """
    button = h("button", {"type": "button", "class": "go", "data-clear-example": True, "hidden": True},
               furniture.CLEAR_EXAMPLE)  # fmt: skip
    marks: Marks = {"class": "example-left", "role": "status", "data-example": True,
                    "data-left": furniture.EXAMPLE_LEFT, "data-cleared": furniture.EXAMPLE_CLEARED}  # fmt: skip
    return h("p", marks, h("span", {"class": "away"}), button)


def _radios(field: Field, value: str) -> Markup:
    """Return a choice with all options visible."""
    described = " ".join(
        reference for reference in (f"m-{field.name}", _help_id(field.help) if field.help else "") if reference
    )
    options = []
    for index, choice in enumerate(field.options):
        control = h("input", {
            "type": "radio", "id": f"f-{field.name}-{index}", "name": field.name, "form": FORM,
            "value": choice.value, "checked": choice.value == value, "autocomplete": "off",
        })  # fmt: skip
        options.append(h("label", None, control, h("span", {"data-option": choice.value}, choice.label)))
    legend = h("legend", None, _name(field))
    about = _help(field) if field.help else None
    marks: Marks = {"class": "choose-one", "data-field": field.name, "aria-describedby": described}
    return h("fieldset", marks, legend, h("div", {"class": "options"}, options), about, _message(field))


def method_html(fields: Sequence[Field], form: Mapping[str, str]) -> Markup:
    """Return the choice above the drawing, which a lecturer looks for first: the method."""
    members = [field for field in fields if field.group == "method"]
    return join([_radios(field, form.get(field.name, field.default)) for field in members])
