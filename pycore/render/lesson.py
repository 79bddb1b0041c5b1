"""The classroom view: its empty shell in a page, and one step of it as regions."""

from collections.abc import Sequence

from pycore.drawing import Page
from pycore.forms.fields import Field
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.sums.lesson import LessonFrame
from pycore.words import classroom, furniture
from pycore.words import lesson as words
from pycore.writers import svg

CHOICES = ("method", "order", "parallels", "protractor")
"""Fields that a lecturer changes in front of a class."""


def sentence_html(frame: LessonFrame) -> Markup:
    """Return step, sentence, reading on its own line, the question that can replace it, and reasons.

    ``data-answer-part`` marks what reveals the answer, ``data-asked-part`` what reveals a reading that the class is
    asked for.
    """
    answer = "" if frame.answers else None
    question = "" if frame.question else None
    only = answer if not frame.reading else None
    lines = [
        h("p", {"class": "lesson-step"}, words.step_of(frame.number, frame.count)),
        h("p", {"class": "lesson-sentence", "data-answer-part": only}, phrase_html(frame.sentence)),
    ]
    if frame.reading:
        marks = {"class": "lesson-reading", "data-reading": "", "data-answer-part": answer, "data-asked-part": question}
        lines.append(h("p", marks, phrase_html(frame.reading)))
    if frame.question:
        marks = {"class": "lesson-question", "data-question": ""}
        lines.append(h("p", marks, phrase_html(frame.question)))
    marks = {"class": "lesson-why", "data-answer-part": answer, "data-asked-part": question}
    lines += [h("p", marks, phrase_html(why)) for why in frame.why]
    if frame.answers:
        lines.append(h("p", {"class": "lesson-hidden"}, classroom.HIDDEN))
    return h("div", {"class": "lesson-said"}, lines)


def scale_html(frame: LessonFrame) -> Markup:
    """Return progress as a row of ticks, the current one longer: a picture only; the step is also given in words."""
    ticks = [
        h("li", {"class": "now" if number == frame.number else ("done" if number < frame.number else None)})
        for number in range(1, frame.count + 1)
    ]
    return h("ol", {"class": "lesson-scale", "aria-hidden": "true"}, ticks)


def lesson_regions(frame: LessonFrame) -> dict[str, Markup]:
    """Return the regions ``lesson-text``, ``lesson-scale`` and ``lesson-picture`` of one step."""
    picture = Markup.trusted(svg.write(frame.picture, prefix="lesson", role="view", view="lesson"))
    marks = {"class": "lesson-figure", "data-answers": "" if frame.answers else None}
    return {
        "lesson-text": sentence_html(frame),
        "lesson-scale": scale_html(frame),
        "lesson-picture": h("div", marks, picture),
    }


def code_html(page: Page) -> Markup:
    """Return a large QR code for the back row."""
    return Markup.trusted(svg.write(page, prefix="code", role="view", view="code"))


# The shell.


def _button(do: str, label: str, kind: str = "", **marks: str) -> Markup:
    pressed = {name.replace("_", "-"): value for name, value in marks.items()}
    return h("button", {"type": "button", "class": kind or None, "data-lesson-do": do, **pressed}, label)


def _select(name: str, label: str, options: Sequence[tuple[str, str]], mark: str) -> Markup:
    control = h("select", {"id": f"lesson-{name}", mark: name, "autocomplete": "off"},
                [h("option", {"value": value}, words) for value, words in options])  # fmt: skip
    title = h("label", {"for": f"lesson-{name}"}, label)
    return h("p", {"class": "lesson-choice", "data-lesson-choice": name}, title, control)


def _choices(fields: Sequence[Field]) -> Markup:
    """Return the view and the form's own choices; JavaScript keeps them equal to the form."""
    listed = [field for name in CHOICES for field in fields if field.name == name]
    selects = [
        _select(field.name, field.label, [(c.value, c.label) for c in field.options], "data-lesson-set")
        for field in listed
    ]
    return join(_select("view", classroom.VIEW, tuple(classroom.VIEWS.items()), "data-lesson-view"), selects)


def _jump() -> Markup:
    control: Marks = {
        "id": "lesson-jump", "type": "text", "inputmode": "numeric", "autocomplete": "off", "maxlength": 3,
        "data-lesson-jump": True,
    }  # fmt: skip
    return h("p", {"class": "lesson-choice"}, h("label", {"for": "lesson-jump"}, classroom.GO_TO),
             h("span", {"class": "lesson-jump"}, h("input", control), _button("jump", classroom.GO)))  # fmt: skip


def _keys() -> Markup:
    rows = [h("div", None, h("dt", None, keys), h("dd", None, meaning)) for keys, meaning in classroom.KEYS]
    return join(h("h3", None, classroom.KEYS_TITLE), h("dl", {"class": "lesson-keys"}, rows))


def _panel(fields: Sequence[Field]) -> Markup:
    more = (
        _button("large", classroom.LARGE, "plain", aria_pressed="false"),
        _button("share", classroom.SHARE, "plain"),
    )
    return h("div", {"class": "lesson-panel", "id": "lesson-panel", "data-lesson-panel": True, "hidden": True},
             h("div", {"class": "lesson-choices"}, _choices(fields), _jump()),
             h("div", {"class": "lesson-more"}, more), _keys())  # fmt: skip


def _foot() -> Markup:
    """Return progress, which is also a slider, the buttons back and next, and the switches."""
    slider: Marks = {
        "type": "range", "min": 1, "max": 1, "value": 1, "step": 1, "autocomplete": "off",
        "aria-label": classroom.STEP, "data-lesson-slider": True,
    }  # fmt: skip
    scale = h("div", {"class": "lesson-progress"},
              h("div", {"data-lesson-region": "lesson-scale"}), h("input", slider))  # fmt: skip
    ways = h("div", {"class": "lesson-ways"}, _button("back", classroom.BACK),
             h("button", {"type": "button", "class": "first", "data-lesson-do": "next", "autofocus": True,
                          "data-next": classroom.NEXT, "data-show": classroom.SHOW_READING}, classroom.NEXT),
             _button("close", classroom.CLOSE))  # fmt: skip
    switches = h("div", {"class": "lesson-switches"},
                 _button("ask", classroom.ASK_FIRST, aria_pressed="false"),
                 _button("blank", classroom.HIDE_ANSWER, aria_pressed="false"),
                 _button("more", classroom.MORE, aria_expanded="false", aria_controls="lesson-panel"))  # fmt: skip
    line = h("p", {"class": "lesson-help", "aria-hidden": "true"}, classroom.KEYS_LINE)
    return h("div", {"class": "lesson-foot"}, scale, ways, switches, line)


def lesson_html(fields: Sequence[Field]) -> Markup:
    """Return the classroom view as part of a page: closed and empty, its sentences in attributes."""
    text = h("div", {"class": "lesson-text", "tabindex": 0, "role": "group", "aria-label": classroom.STEP},
             h("p", {"class": "lesson-notice", "data-lesson-notice": True, "role": "status", "hidden": True}),
             h("div", {"data-lesson-region": "lesson-text"},
               h("p", {"class": "lesson-sentence"}, classroom.WAITING)))  # fmt: skip
    title = h("h2", {"class": "away", "id": "lesson-title"}, classroom.TITLE)
    words_column = h("div", {"class": "lesson-words"}, title, text, _panel(fields), _foot())
    picture = h("div", {"class": "lesson-picture", "data-lesson-region": "lesson-picture"})
    typed = h("p", {"class": "lesson-typed", "data-lesson-typed": True, "data-words": classroom.TYPED, "hidden": True})
    live = h("p", {"class": "live", "aria-live": "polite", "data-lesson-live": True,
                   "data-hidden": classroom.HIDDEN, "data-waiting": classroom.WAITING})  # fmt: skip
    marks: Marks = {"class": "lesson", "data-lesson": True, "aria-labelledby": "lesson-title"}
    return join(h("dialog", marks, words_column, picture, typed, live), share_html())


def share_html() -> Markup:
    """Return the QR code and its link."""
    link = h("p", {"class": "code-link"}, h("label", {"for": "code-link"}, classroom.LINK),
             h("input", {"id": "code-link", "type": "text", "readonly": True, "autocomplete": "off"}))  # fmt: skip
    buttons = [
        h("button", {"type": "button", "class": "first" if do == "copy" else None, "data-share-do": do,
                     "autofocus": do == "copy", "hidden": do == "send"}, label)
        for do, label in (("copy", classroom.COPY), ("send", classroom.SEND), ("close", classroom.CLOSE))
    ]  # fmt: skip
    column = h("div", {"class": "code-words"}, h("h2", {"id": "code-title"}, classroom.SHARE_TITLE),
               h("p", None, classroom.SHARE_LEAD), h("p", {"class": "notice", "data-share-note": True, "hidden": True}),
               link, h("p", {"data-share-said": True, "role": "status"}),
               h("div", {"class": "lesson-ways"}, buttons))  # fmt: skip
    marks: Marks = {"class": "code-panel", "data-share-panel": True, "aria-labelledby": "code-title"}
    return h("dialog", marks, column, h("div", {"class": "code-large", "data-lesson-region": "code"}))


def more_actions_html() -> Markup:
    """Return the buttons for the QR code and the handout."""
    row = [
        h("button", {"type": "button", "class": "plain", "data-action": name}, label)
        for name, label in (("code", classroom.CODE), ("handout", classroom.HANDOUT), ("photo", furniture.PHOTO))
    ]
    return h("div", {"class": "more-actions"}, row)
