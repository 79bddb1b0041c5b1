"""One step of a classroom view as two regions: what is said, and the picture."""

from pycore.calculators.lesson import Shown
from pycore.render.elements import Markup, h
from pycore.render.phrase import phrase_html
from pycore.words import lesson as words
from pycore.writers import svg


def _said(shown: Shown) -> Markup:
    """Step, sentence, reading on a line of its own, the question that can stand in its place, why."""
    answer = "" if shown.answers else None
    lines = [
        h("p", {"class": "lesson-step"}, words.step_of(shown.number, shown.count)),
        h("p", {"class": "lesson-sentence"}, phrase_html(shown.sentence)),
    ]
    if shown.reading:
        marks = {"class": "lesson-reading", "data-reading": "", "data-answer-part": answer}
        lines.append(h("p", marks, phrase_html(shown.reading)))
    if shown.question:
        lines.append(h("p", {"class": "lesson-question", "data-question": ""}, phrase_html(shown.question)))
    lines += [h("p", {"class": "lesson-why", "data-answer-part": answer}, phrase_html(why)) for why in shown.why]
    return h("div", {"class": "lesson-said"}, lines)


def _scale(shown: Shown) -> Markup:
    """Progress as a scale of ticks, today's long: a picture only, the step is said in words."""
    ticks = [
        h("li", {"class": "now" if number == shown.number else ("done" if number < shown.number else None)})
        for number in range(1, shown.count + 1)
    ]
    return h("ol", {"class": "lesson-scale", "aria-hidden": "true"}, ticks)


def lesson_regions(shown: Shown) -> dict[str, Markup]:
    """The regions ``lesson-text`` and ``lesson-picture`` of one step."""
    picture = Markup.trusted(svg.write(shown.picture, prefix="lesson", role="view", view="lesson"))
    marks = {"class": "lesson-figure", "data-answer-part": "" if shown.answers else None}
    return {
        "lesson-text": h("div", None, _said(shown), _scale(shown)),
        "lesson-picture": h("div", marks, picture),
    }
