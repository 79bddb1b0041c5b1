"""The handout: one file with the problem, every step of the drawing, and the sheet to print at exact size.

A learner's handout of a problem has the values, the question and the blank sheet, and nothing of the solution.

It needs neither Python nor a network: style, JavaScript and lettering are embedded, and its own policy allows them only
by their hashes (W3C Content Security Policy Level 3, "hash-source"). Without JavaScript all steps are shown in order.
An instrument is written once and referred to. The lettering contains only the characters used.
"""

import binascii
import hashlib
import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Protocol

from pycore.forms.links import fragment
from pycore.forms.opening import ReopenInfo
from pycore.lettering.embedded import faces_css
from pycore.render.elements import Marks, Markup, document, h, join, raw_script, raw_style
from pycore.render.lesson import place_of
from pycore.render.phrase import phrase_html
from pycore.sums.answer import Answer
from pycore.sums.lesson_frame import LessonFrame
from pycore.words import classroom, furniture, give, plain
from pycore.words.phrase import Phrase
from pycore.writers import svg

COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)


class HandoutTopic(Protocol):
    """What a handout needs from a calculator."""

    @property
    def title(self) -> str:
        """The page's heading."""

    @property
    def cautions(self) -> Sequence[Phrase | str]:
        """The cautions of the page."""

    def answer(self, form: Mapping[str, str], parts: tuple[str, ...], opening: ReopenInfo) -> Answer:
        """Return the answer to a form. Raises InputError."""

    def lesson(self, form: Mapping[str, str], view: str, step: int) -> LessonFrame:
        """Return one step of a view. Raises InputError."""


def _hash_of(text: str) -> str:
    """Return the hash source of a text for the policy: base64 of its SHA-256."""
    digest = hashlib.sha256(text.encode()).digest()
    return f"'sha256-{binascii.b2a_base64(digest, newline=False).decode()}'"


def policy(style: str, script: str) -> str:
    """Return the policy of a handout: its own style and JavaScript, and the fonts in its style."""
    parts = {
        "default-src": "'none'", "style-src": _hash_of(style), "font-src": "data:",
        "script-src": _hash_of(script) if script else "'none'",
        "base-uri": "'none'", "form-action": "'none'", "require-trusted-types-for": "'script'",
    }  # fmt: skip
    return "; ".join(f"{name} {value}" for name, value in parts.items())


def _step(frame: LessonFrame, units: svg.Units) -> Markup:
    """Return one step: its words and its picture."""
    picture = Markup.trusted(
        svg.write(frame.picture, prefix=f"step-{frame.number}", role="view", view="lesson", units=units)
    )
    words_of_step = [h("h3", None, place_of(frame)),
            h("p", {"class": "said"}, phrase_html(frame.sentence))]  # fmt: skip
    if frame.reading:
        words_of_step.append(h("p", {"class": "reading"}, phrase_html(frame.reading)))
    words_of_step += [h("p", {"class": "why"}, phrase_html(why)) for why in frame.why]
    return h("li", {"data-player-step": frame.number}, h("div", {"class": "words"}, words_of_step), picture)


def _player(steps: Sequence[Markup]) -> Markup:
    """Return all steps in order, and the buttons that show them one at a time with JavaScript."""
    ways = (
        ("back", classroom.BACK, None), ("next", classroom.NEXT, "first"), ("all", classroom.HANDOUT_ALL, None)
    )  # fmt: skip
    buttons = [
        h("button", {"type": "button", "data-player-do": do, "class": kind,
                     "data-one": classroom.HANDOUT_ONE if do == "all" else None,
                     "data-all": classroom.HANDOUT_ALL if do == "all" else None}, label)
        for do, label, kind in ways
    ]  # fmt: skip
    bar = h("div", {"class": "bar", "data-player-bar": True, "hidden": True}, buttons)
    live = h("p", {"class": "live", "aria-live": "polite", "data-player-live": True})
    head = h("h2", {"id": "steps"}, classroom.HANDOUT_STEPS)
    return h("section", {"class": "steps", "aria-labelledby": "steps"}, head, bar, h("ol", None, steps), live)


def _sheet(answer: Answer, button: Markup | None = None) -> Markup:
    """Return the sheet with the same elements as on a page, so that the same style prints it."""
    drawing = Markup.trusted(svg.write(answer.sheet, prefix="sheet", role="sheet"))
    marks: Marks = {"class": "paper-scroll", "tabindex": 0, "role": "group", "aria-label": classroom.HANDOUT_SHEET}
    paper = h("div", marks, h("div", {"class": "paper", "data-page": answer.page_key}, drawing))
    return h("div", {"class": "figure"}, h("h2", None, classroom.HANDOUT_SHEET), button,
             h("div", {"class": "sheet"}, paper, h("p", None, phrase_html(answer.caption))))  # fmt: skip


def _print_button() -> Markup:
    return h("button", {"type": "button", "data-player-do": "print", "hidden": True}, classroom.HANDOUT_PRINT)


def _head(answer: Answer, title: str, lead: str, *more: Markup) -> Markup:
    values = h("p", {"class": "given"}, phrase_html(answer.values_text))
    return h("header", None, h("h1", None, title), values, h("p", None, lead), more)


def _foot(cautions: Iterable[Phrase | str]) -> Markup:
    listed = [h("li", None, phrase_html(caution)) for caution in cautions]
    return h("footer", None, h("ul", None, listed), h("p", None, furniture.NAME))


def handout(calculator: HandoutTopic, form: Mapping[str, str], opening: ReopenInfo, style: str, script: str) -> str:
    """Return the complete file. ``style`` and ``script``: those of the page.

    Raises InputError for a form that cannot be used, and ValueError for a style or script that would end its own
    element.
    """
    answer = calculator.answer(form, ("answer", "sheet"), opening)
    first = calculator.lesson(form, "lesson", 1)
    frames = [first, *(calculator.lesson(form, "lesson", number) for number in range(2, first.count + 1))]
    units: svg.Units = {}
    steps = [_step(one, units) for one in frames]
    body = h("main", {"class": "sheet-page handout"}, _head(answer, calculator.title, classroom.HANDOUT_LEAD),
             _player(steps), _sheet(answer, _print_button()), _foot(calculator.cautions))  # fmt: skip
    drawn = Markup.trusted(svg.write_units(units))
    return _file(calculator, answer, join(drawn, body), style, script.replace("\r", ""))


def problem_handout(calculator: HandoutTopic, form: Mapping[str, str], opening: ReopenInfo, style: str) -> str:
    """Return the learner's file of a problem, whose form is that of a blank sheet with its code.

    It has no script: there is nothing to go through. Raises as ``handout`` does.
    """
    answer = calculator.answer(form, ("answer", "sheet", "check"), opening)
    asked = answer.answer_request
    said = (asked.question, *asked.notes) if asked else ()
    notes = h("ul", None, [h("li", None, phrase_html(one)) for one in said]) if said else join()
    head = _head(answer, calculator.title, give.HANDOUT_LEAD, notes, _where_to_check(answer, opening))
    body = h("main", {"class": "sheet-page handout"}, head, _sheet(answer), _foot(calculator.cautions))
    return _file(calculator, answer, body, style, "")


def _where_to_check(answer: Answer, opening: ReopenInfo) -> Markup:
    """Return how a learner checks an answer: by a link, or by typing the values and the code."""
    if not opening.reachable:
        return h("p", None, give.check_by_code(answer.title, answer.code))
    link = f"{opening.base}#{fragment(answer.link)}"
    return h("p", None, h("a", {"href": link}, give.CHECK_BY_LINK))


def _file(calculator: HandoutTopic, answer: Answer, body: Markup, style: str, script: str) -> str:
    """Return the whole file around its body; without a script if there is none."""
    title = f"{calculator.title}: {plain(answer.values_text)}"
    whole_style = f"{faces_css(body)}\n{COMMENT.sub('', style)}".replace("\r", "")
    head = join(
        h("meta", {"http-equiv": "Content-Security-Policy", "content": policy(whole_style, script)}),
        h("meta", {"charset": "utf-8"}),
        h("meta", {"name": "viewport", "content": "width=device-width, initial-scale=1"}),
        h("meta", {"name": "color-scheme", "content": "light dark"}),
        h("title", None, title),
        raw_style(whole_style),
    )
    return document(furniture.LANGUAGE, head, join(body, raw_script(script)) if script else body)
