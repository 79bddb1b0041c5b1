"""The answer checker: its form, which no answer replaces, and what of it follows the sheet's conventions."""

from typing import Any

from pycore.practice.task import AnswerRequest
from pycore.render.draw_way import draw_way_html, practice_way_html
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.words import checking as words
from pycore.words import codes, furniture
from pycore.words.phrase import Phrase

FORM = "check"
CODE_FORM = "find-code"


def labels_of(asked: AnswerRequest) -> dict[str, Phrase | str]:
    """The label of every field that the problem asks for; a field without one is not shown."""
    labels: dict[str, Phrase | str] = {"answer": words.answer_label(asked.symbol)}
    if asked.angled:
        labels["answer-angle"] = words.angle_label(asked.origin, signed=asked.signed)
    if asked.angled and not asked.signed:
        labels["answer-side"] = words.SIDE
    fixed = {"across": words.ACROSS, "up": words.UP}
    for key, symbol in asked.earlier:
        labels[f"answer-{key}"] = fixed[key] if key in fixed else words.first_label(symbol)
        if key == "first":
            labels["answer-first-angle"] = words.FIRST_ANGLE
            if not asked.signed:
                labels["answer-first-side"] = words.FIRST_SIDE
    return labels


def asked_reply(asked: AnswerRequest) -> dict[str, Any]:
    """What the page needs so that the checker's fields follow the problem."""
    labels = {name: str(phrase_html(label)) for name, label in labels_of(asked).items()}
    return {"labels": labels, "units": list(asked.units), "scale": words.judged_by(asked.scale)}


def task_html(asked: AnswerRequest) -> Markup:
    """The problem in words: the task, then what must be known before drawing."""
    return join(h("p", {"class": "task"}, phrase_html(asked.question)),
                [h("p", {"class": "help"}, phrase_html(note)) for note in asked.notes])  # fmt: skip


def _entry(name: str, unit: str = "") -> Markup:
    control = h("input", {
        "id": f"f-{name}", "name": name, "form": FORM, "type": "text", "value": "", "inputmode": "decimal",
        "autocomplete": "off", "autocapitalize": "off", "spellcheck": "false", "enterkeyhint": "done",
        "aria-describedby": f"m-{name}", "maxlength": 200,
    })  # fmt: skip
    shown = h("span", {"class": "unit", "data-unit-of-answer": unit != "°" and unit != "%"}, unit) if unit else None
    return h("div", {"class": "entry"}, control, _marks(name), shown)


def _marks(name: str) -> Markup:
    """The place of the line under what is wrong in a field."""
    return h("span", {"class": "marks", "aria-hidden": "true", "data-marks-for": name})


def _select(name: str, label: str, options: list[tuple[str, str]], *, hidden: bool = False) -> Markup:
    options_html = [
        h("option", {"value": value, "selected": index == 0}, said) for index, (value, said) in enumerate(options)
    ]
    control = h("select", {"id": f"f-{name}", "name": name, "form": FORM, "autocomplete": "off"}, options_html)
    return _labelled(name, label, h("div", {"class": "entry"}, control), hidden=hidden)


def _labelled(
    name: str, label: Phrase | str, control: Markup, *, hidden: bool = False, message: bool = False
) -> Markup:
    title = h("label", {"for": f"f-{name}"}, h("span", {"data-label-for": name}, phrase_html(label)))
    slot = _message(name) if message else None
    return h("div", {"class": "field", "data-field": name, "hidden": hidden}, title, control, slot)


def _message(name: str) -> Markup:
    return h("p", {"class": "message", "id": f"m-{name}", "data-message-for": name, "hidden": True})


def _how() -> Markup:
    """Drawn or calculated: asked first, with nothing chosen."""
    options = []
    for index, (value, label, unit) in enumerate(words.HOWS):
        control = h("input", {
            "type": "radio", "id": f"f-answer-how-{index}", "name": "answer-how", "form": FORM, "value": value,
            "autocomplete": "off", "data-unit": unit,
        })  # fmt: skip
        options.append(h("label", None, control, h("span", None, label)))
    return h("fieldset", {"class": "choose-one"}, h("legend", None, words.HOW), h("div", {"class": "options"}, options))


def _pair(first: Markup, second: Markup, *names: str) -> Markup:
    return h("div", {"class": "pair"}, first, second, [_message(name) for name in names])


def _found(labels: dict[str, Phrase | str], units: tuple[str, ...], scale: str) -> Markup:
    """Size with its unit and the scale by which it is judged, angle with its side."""
    size = _labelled("answer", labels["answer"], _entry("answer"))
    unit = _select("answer-unit", words.UNIT, [(unit, unit) for unit in units])
    angle = _labelled("answer-angle", labels.get("answer-angle", ""), _entry("answer-angle", "°"),
                      hidden="answer-angle" not in labels)  # fmt: skip
    side = _select("answer-side", words.SIDE, list(words.SIDES), hidden="answer-side" not in labels)
    sentence = words.judged_by(scale)
    judged = h("p", {"class": "help judged-by", "data-judged-by": True, "hidden": not sentence}, sentence)
    return join(_pair(size, unit, "answer"), judged, _pair(angle, side, "answer-angle"))


def _on_the_way(labels: dict[str, Phrase | str], unit: str) -> Markup:
    """Values found on the way, folded: those that the method has. Sizes are in the unit that is chosen above."""
    names = ("answer-first", "answer-first-angle", "answer-across", "answer-up")
    fields = [
        _labelled(name, labels.get(name, ""), _entry(name, "°" if name.endswith("angle") else unit),
                  hidden=name not in labels, message=True)
        for name in names
    ]  # fmt: skip
    side = "answer-first-side"
    fields.insert(2, _select(side, words.FIRST_SIDE, list(words.SIDES), hidden=side not in labels))
    marks: Marks = {"class": "group", "data-on-the-way": True, "hidden": not any(name in labels for name in names)}
    return h("details", marks, h("summary", None, words.ON_THE_WAY),
             h("p", {"class": "help"}, words.ON_THE_WAY_HELP), h("div", {"class": "fields"}, fields))  # fmt: skip


def _own_tolerance() -> Markup:
    fields = (
        _labelled("allow-percent", words.PERCENT, _entry("allow-percent", "%"), message=True),
        _labelled("allow-degrees", words.DEGREES, _entry("allow-degrees", "°"), message=True),
    )
    return h("details", {"class": "group"}, h("summary", None, words.OWN), h("p", {"class": "help"}, words.OWN_HELP),
             h("div", {"class": "fields"}, fields))  # fmt: skip


def marked_region() -> Markup:
    """Where the page says what it thinks of an answer, and that this was of an earlier one."""
    old = h("p", {"class": "marked-old"}, words.EARLIER_ANSWER)
    return h("div", {"class": "marked-place"}, old, h("div", {"data-region": "marked", "tabindex": -1}))


def form_html(asked: AnswerRequest) -> Markup:
    """The checker's form; all but its first question stays away until that is answered."""
    labels = labels_of(asked)
    button = h("button", {"type": "submit", "data-action": "check", "class": "go-on"}, words.CHECK)
    filled = h("p", {"class": "help", "data-filled-in": True, "hidden": True}, words.FILLED_IN)
    rest = h("div", {"data-check-rest": True, "hidden": True}, filled,
             _found(labels, asked.units, asked.scale), _on_the_way(labels, asked.units[0]), button, marked_region(),
             _own_tolerance())  # fmt: skip
    marks: Marks = {"id": FORM, "class": "check-form", "novalidate": True, "autocomplete": "off",
                    "aria-label": words.TITLE}  # fmt: skip
    return h("form", marks, _how(), rest)


def code_html(button: str = codes.OPEN, label: str = codes.LABEL, example: str = "") -> Markup:
    """A code as it stands on a printed sheet, to be typed; ``example``: shown while the field is empty."""
    control = h("input", {
        "id": "f-typed-code", "name": "typed-code", "type": "text", "value": "", "autocomplete": "off",
        "autocapitalize": "characters", "spellcheck": "false", "enterkeyhint": "go", "maxlength": 40,
        "aria-describedby": "m-typed-code h-typed-code", "placeholder": example or None,
    })  # fmt: skip
    label = h("label", {"for": "f-typed-code"}, label)
    go = h("button", {"type": "submit", "data-action": "find-code"}, button)
    row = h("div", {"class": "code-row"}, h("div", {"class": "entry"}, control, _marks("typed-code")), go)
    about = h("p", {"class": "help", "id": "h-typed-code"}, codes.HELP)
    return h("form", {"id": CODE_FORM, "class": "code-form", "novalidate": True, "autocomplete": "off"},
             label, row, _message("typed-code"), about)  # fmt: skip


def _veil() -> Markup:
    """What stands in the answer's place on a page that a printed problem opened, until it is solved and then."""
    button = h("button", {"type": "button", "data-action": "unveil", "class": "plain"}, words.SHOW)
    asks: Marks = {"type": "button", "class": "plain unsolved", "data-hint-step": 1, "data-hint-rung": 1}
    buttons = h("p", {"class": "ways-out"}, h("button", asks, words.HINT), button)
    said = [h("div", {"class": name}, h("h2", None, title), h("p", None, why)) for name, title, why in (
        ("unsolved", words.HIDDEN, words.HIDDEN_WHY), ("solved", words.SOLVED, words.SOLVED_WHY))]  # fmt: skip
    return h("div", {"class": "veil"}, said, buttons,
             h("div", {"data-region": "hint", "tabindex": -1}))  # fmt: skip


def check_html(asked: AnswerRequest) -> Markup:
    """The section of the answer checker; and the field that holds a link's code."""
    kept = h("input", {"name": "code", "form": "problem", "type": "text", "value": "", "hidden": True,
                       "autocomplete": "off", "aria-label": codes.LABEL})  # fmt: skip
    number = h("p", {"class": "problem-code", "data-problem-code": True, "hidden": True})
    task = h("div", {"class": "asked", "data-region": "task"}, task_html(asked))
    lead = h("p", {"class": "help"}, words.LEAD)
    hide = h("button", {"type": "button", "class": "go", "data-action": "veil"}, words.HIDE)
    photo = h("button", {"type": "button", "class": "plain", "data-action": "photo"}, furniture.PHOTO)
    by_photo = h("p", {"class": "by-photo"}, draw_way_html(), photo, practice_way_html())
    body = h("div", {"class": "check-body"}, number, task, lead, hide, form_html(asked), by_photo, code_html())
    form = h("section", {"data-check": True}, h("h2", {"class": "away"}, words.TITLE), body)
    return join(form, _veil(), kept)


