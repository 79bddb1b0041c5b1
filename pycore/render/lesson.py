"""One step of the lesson view as regions of its shell (render/lesson_shell.py)."""

from pycore.drawing import Page
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.sums.lesson_frame import LessonFrame
from pycore.words import classroom, plain
from pycore.words import lesson as words
from pycore.words.phrase import Phrase
from pycore.writers import svg

LONG, LONGER = 150, 260
"""From these numbers of characters on, the words of a step are set smaller, so that all of them are in view."""


def place_of(frame: LessonFrame) -> str:
    """Return where a lesson is, in words: the step as it is numbered on the page, and the move within it."""
    where = frame.place
    if frame.heading:
        return frame.heading
    if where is None:
        return words.step_of(frame.number, frame.count)
    return words.step_of(where.step, where.steps, where.part, where.parts)


def _length_of(phrases: tuple[Phrase, ...]) -> str | None:
    """Return how the words of a step are set: ``long``, ``longer``, or as usual."""
    size = len(" ".join(plain(phrase) for phrase in phrases))
    return "longer" if size > LONGER else "long" if size > LONG else None


def sentence_html(frame: LessonFrame) -> Markup:
    """Return step, sentence, reading on its own line, the question that can replace it, and reasons.

    ``data-answer-part`` marks what reveals the answer, ``data-asked-part`` what reveals a reading that the class is
    asked for.
    """
    answer = "" if frame.answers else None
    question = "" if frame.question else None
    only = answer if not frame.reading else None
    hides_all = "" if frame.asks_scale else None
    lines = [
        h("p", {"class": "lesson-step", "data-frame": frame.number}, place_of(frame)),
        h("p", {"class": "lesson-sentence", "data-answer-part": only, "data-asked-part": hides_all},
          phrase_html(frame.sentence)),
    ]  # fmt: skip
    if frame.reading:
        marks = {"class": "lesson-reading", "data-reading": "", "data-answer-part": answer, "data-asked-part": question}
        lines.append(h("p", marks, phrase_html(frame.reading)))
    if frame.question:
        marks = {"class": "lesson-question", "data-question": ""}
        lines.append(h("p", marks, phrase_html(frame.question)))
    for index, why in enumerate(frame.why):
        is_meaning = frame.diagonal and index == len(frame.why) - 1
        kind = "lesson-why lesson-meaning" if is_meaning else "lesson-why"
        marks = {"class": kind, "data-answer-part": answer, "data-asked-part": question}
        lines.append(h("p", marks, phrase_html(why)))
    if frame.answers:
        lines.append(h("p", {"class": "lesson-hidden"}, classroom.HIDDEN))
    length = _length_of((frame.sentence, frame.reading, *frame.why))
    return h("div", {"class": "lesson-said", "data-length": length}, lines)


def scale_html(frame: LessonFrame) -> Markup:
    """Return progress as a row of ticks, the current one longest, one within a step short: a picture only; the step is
    also given in words."""
    ticks = []
    for number in range(1, frame.count + 1):
        within = "within" if frame.begins and number not in frame.begins else ""
        passed = "now" if number == frame.number else "done" if number < frame.number else ""
        ticks.append(h("li", {"class": " ".join(filter(None, (within, passed))) or None}))
    return h("ol", {"class": "lesson-scale", "aria-hidden": "true"}, ticks)


def values_html(frame: LessonFrame) -> Markup:
    """Return the values of the problem in a strip: each phasor's name, its line, its amount; and the scale."""
    listed = [
        h("li", None, phrase_html(value.tag),
          h("span", {"class": "lesson-line", "aria-hidden": "true"},
            Markup.trusted(svg.write(value.line, prefix=f"value-{value.key}", role="view", view="line"))),
          h("span", None, value.amount))
        for value in frame.values
    ]  # fmt: skip
    marks = {"class": "lesson-here", "data-asked-part": "" if frame.asks_scale else None}
    scale = h("p", marks, frame.scale) if frame.scale else ""
    size = "many" if len(frame.values) > 4 else None
    return h("div", {"class": "lesson-strip", "data-size": size}, h("ul", None, listed), scale)


def why_html(frame: LessonFrame) -> Markup:
    """Return the words beside the picture of why; empty if a step has none."""
    reason = frame.reason
    if reason is None:
        return join()
    lines = [
        h("p", {"class": "lesson-step"}, words.why_at(place_of(frame))),
        h("p", {"class": "lesson-sentence"}, phrase_html(reason.sentence)),
        h("p", {"class": "lesson-why"}, phrase_html(reason.why)),
        h("p", {"class": "lesson-reading"}, phrase_html(reason.calculation)),
    ]
    return h("div", {"class": "lesson-said", "data-length": _length_of((reason.sentence, reason.why))}, lines)


def _figure(page: Page, prefix: str, marks: Marks) -> Markup:
    return h("div", {"class": "lesson-figure", **marks},
             Markup.trusted(svg.write(page, prefix=prefix, role="view", view="lesson")))  # fmt: skip


def lesson_regions(frame: LessonFrame) -> dict[str, Markup]:
    """Return the regions of one step: words, progress, values, picture, and both parts of why."""
    marks: Marks = {
        "data-answers": "" if frame.answers else None,
        "data-reads": "" if frame.reads else None,
        "data-stage": frame.stage or None,
    }
    reason = frame.reason
    return {
        "lesson-text": sentence_html(frame),
        "lesson-scale": scale_html(frame),
        "lesson-values": values_html(frame),
        "lesson-picture": _figure(frame.picture, "lesson", marks),
        "lesson-why": why_html(frame),
        "lesson-why-picture": _figure(reason.picture, "why", {}) if reason else join(),
    }


def code_html(page: Page) -> Markup:
    """Return a large QR code for the back row."""
    return Markup.trusted(svg.write(page, prefix="code", role="view", view="code"))
