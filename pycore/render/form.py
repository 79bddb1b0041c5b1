"""The form: labels, fields, help, and the places of messages.

The form is the only state of a page. Its fields are outside of every region that a new answer replaces, so that focus
and typing are not disturbed.
"""

from collections.abc import Mapping, Sequence

from pycore.forms.fields import IN_VIEW, LONGEST_VALUE, VALUE_GROUPS, VERSION, Field
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.render.sample import sample
from pycore.words import circuits, furniture

FORM = "problem"
"""Id of the form element, named as owner by fields outside of it."""

Echo = Mapping[str, Mapping[str, str]]


LONG_CHOICE = 14
"""A choice field with more letters than this gets the full width, so that it can be read on a phone."""

COLUMNS = 3
LETTERS = (6, 9, 12)
"""From one of these numbers of letters to the next a value has more of its row."""

ECHOED = ("angle", "phasor", "readings", "length")
"""Kinds of field that show how the text was understood."""
SCALE = "scale"
"""Group of the fields beside the method, and name of the first of them: what stands below them is its echo."""
APART = ("values", SCALE)
"""Groups whose messages stand below the whole row."""
ON_KEYPAD = ("quantity", "readings")


def _described(field: Field) -> str:
    slots = [f"m-{field.name}"]
    if field.unit and field.kind != "choice":
        slots.append(f"u-{field.name}")
    if field.help:
        slots.append(_help_id(field.help))
    if field.kind in ECHOED or field.name == SCALE:
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


def _sentences(field: Field, value: str) -> Markup:
    """Return a field for sentences, which may be longer than a line."""
    control = h("textarea", {
        "id": f"f-{field.name}", "name": field.name, "form": FORM, "rows": 2, "autocomplete": "off",
        "aria-describedby": _described(field), "maxlength": field.longest + 1,
    }, value)  # fmt: skip
    return h("div", {"class": "entry"}, control)


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
    return field.longest > LONGEST_VALUE or any(len(choice.label) > LONG_CHOICE for choice in field.options)


def field_html(
    field: Field, value: str, echo: Mapping[str, str], *, helped: bool = True, idle: bool = False
) -> Markup:
    """Return one field with label, control, help (if ``helped``) and place for a message."""
    is_long = field.longest > LONGEST_VALUE
    control = (_select if field.kind == "choice" else _sentences if is_long else _text_input)(field, value)
    extra = None
    if field.kind in ECHOED:
        heard: Marks = {"class": "echo", "id": f"e-{field.name}", "data-echo-for": field.name}
        # In a row there is no room for it: a power factor is typed there, such as 0.85 lag.
        factor = _factor(field, echo) if field.kind == "angle" and not _in_row(field) else None
        extra = (h("p", heard, echo.get("said", "")), factor)
    about = _help(field) if field.help and helped else None
    slot = None if field.group in APART else _message(field)
    kind = f"field {field.kind}{' wide' if _is_wide(field) else ''}{_share(field)}"
    marks: Marks = {"class": kind, "data-field": field.name, "data-only": _only(field), "hidden": idle}
    return h("div", marks, _label(field), control, extra, about, slot)


def _share(field: Field) -> str:
    """Return the class that gives a value of the row as much of it as its letters need."""
    if not in_strip(field):
        return ""
    letters = max(len(field.default) + len(field.unit), int(0.7 * len(field.label)))
    share = 1 + len([least for least in LETTERS if letters > least])
    return f" share-{share}{' long' if len(field.default) > LETTERS[-1] else ''}"


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


def in_strip(field: Field) -> bool:
    """Whether a field stands in the row of values beside the answer; a meter's readings have a place of their own."""
    return _in_row(field) and field.kind != "readings"


def counted(fields: Sequence[Field], form: Mapping[str, str]) -> int:
    """Return how many values stand in the row beside the answer."""
    return len([field for field in fields if in_strip(field) and field.counts(form)])


def values_html(fields: Sequence[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """Return the form with the values that are always visible, in one row, its messages below it."""
    members = [field for field in fields if in_strip(field)]
    marks: Marks = {"id": FORM, "novalidate": True, "autocomplete": "off", "aria-label": furniture.GROUPS["values"],
                    "data-link-version": VERSION}  # fmt: skip
    row = h("div", {"class": "values"}, fields_html(members, form, echo, help_apart=True))
    messages = [_message(field, index + 1) for index, field in enumerate(members)]
    return h("form", marks, row, h("div", {"class": "messages"}, messages))


def rows_html(fields: Sequence[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """Return a form with its values three in a row, each with its message below its row."""
    members = [field for field in fields if _in_row(field)]
    marks: Marks = {"id": FORM, "novalidate": True, "autocomplete": "off", "aria-label": furniture.GROUPS["values"]}
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


def how_to_html(fields: Sequence[Field], form: Mapping[str, str]) -> Markup:
    """Return how the values are written, folded: each sentence once."""
    helped = {field.help: field for field in fields if in_strip(field) and field.help}
    if not helped:
        return join()
    body = h("div", {"class": "how-to-body"}, [_help(field, form=form) for field in helped.values()])
    return h("details", {"class": "how-to"}, h("summary", None, furniture.HOW_TO), body)


def _is_compared(field: Field) -> bool:
    """Whether a field holds a result to be compared with the calculation: a meter's readings, or what was drawn."""
    return field.kind in ("readings", "length")


def compare_html(fields: Sequence[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """Return the fields of results that are compared with the calculation, where a page has them."""
    members = [field for field in fields if _is_compared(field)]
    messages = [_message(field) for field in members if field.group in APART]
    return h("div", {"class": "fields"}, fields_html(members, form, echo), messages) if members else join()


def has_lags(fields: Sequence[Field]) -> bool:
    """Return whether a page has fields for angles of lag."""
    return any(field.kind == "angle" for field in fields)


def _title(group: str, title: str, members: Sequence[Field]) -> str:
    """Return the heading of a group, by its fields."""
    if group == "loads" and has_lags(members):
        return furniture.LAGS
    return furniture.METERS if any(field.name == "percent" for field in members) else title


def options_html(fields: Sequence[Field], form: Mapping[str, str], echo: Echo) -> Markup:
    """Return the settings: the groups of choices, each below its heading."""
    groups = []
    for group, title in furniture.GROUPS.items():
        members = [field for field in fields if field.group == group and not _is_compared(field)]
        if group in IN_VIEW or not members:
            continue
        named = _title(group, title, members)
        body = h("div", {"class": "fields"}, fields_html(members, form, echo))
        holds = group in VALUE_GROUPS
        marks: Marks = {"class": "group", "data-group": group, "data-holds-values": holds, "data-also": holds}
        groups.append(h("section", marks, h("h2", None, named), body))
    return join(groups, _back_html()) if groups else join()


def _back_html() -> Markup:
    """Return the button that puts every setting back; its sentences stand in attributes."""
    marks: Marks = {"type": "button", "class": "go", "data-settings-back": furniture.SETTINGS_BACK,
                    "data-undo": furniture.SETTINGS_UNDO, "data-done": furniture.SETTINGS_ARE_BACK,
                    "data-none": furniture.SETTINGS_WERE}  # fmt: skip
    said = h("span", {"data-settings-said": True})
    return h("p", {"class": "settings-back"}, h("button", marks, furniture.SETTINGS_BACK), said)


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
    legend = h("legend", {"class": "away" if field.name == "method" else None}, _name(field))
    about = _help(field) if field.help else None
    marks: Marks = {"class": "choose-one", "data-field": field.name, "aria-describedby": described}
    return h("fieldset", marks, legend, h("div", {"class": "options"}, options), about, _message(field))


def scale_html(
    fields: Sequence[Field], form: Mapping[str, str], echo: Echo, beside: Markup | None = None
) -> Markup:
    """Return the row below the method: the scale, and the paper of the learner's own; below it the scale of the
    drawing, ``beside`` it, and what is wrong."""
    # By keyboard the ways out come straight after their field; they are seen below the row.
    members = [
        (fields_html((field,), form, echo, help_apart=True), _message(field))
        for field in fields if field.group == SCALE
    ]  # fmt: skip
    heard: Marks = {"class": "echo", "id": f"e-{SCALE}", "data-echo-for": SCALE}
    return h("div", {"class": "scale-row"}, members, h("p", heard, echo.get(SCALE, {}).get("said", "")), beside)


def to_paper_html() -> Markup:
    """Return the way from the scale to the paper that it is for, which stands among the settings."""
    return h("button", {"type": "button", "class": "go", "data-also-go": "paper"}, furniture.TO_PAPER)


def method_html(fields: Sequence[Field], form: Mapping[str, str]) -> Markup:
    """Return the choice above the drawing, which a lecturer looks for first: the method."""
    members = [field for field in fields if field.group == "method"]
    return join([_radios(field, form.get(field.name, field.default)) for field in members])
