"""Hints while an answer is held back, one step of the page's list at a time: which instrument and from where, then the
move, then the lesson that shows the move done. What the problem says itself is passed over; the step that gives the
answer is left to the learner."""

from collections.abc import Mapping
from typing import Any

from pycore.constructions.moves import SetOff
from pycore.forms import links
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.lesson import place_of
from pycore.render.phrase import phrase_html
from pycore.sums.lesson_frame import LessonFrame
from pycore.sums.page import SumPage
from pycore.words import checking as words
from pycore.words import plain
from pycore.words.phrase import Phrase

LOOK, MOVE = 1, 2
"""The rungs that are told here; the third is the lesson itself."""
FARTHEST = 999


def _whole(value: object, most: int) -> int:
    """A whole number of a request, from 1 to ``most``."""
    return min(max(value, 1), most) if isinstance(value, int) and not isinstance(value, bool) else 1


def _is_told(page: SumPage[Any], form: Mapping[str, str], frame: LessonFrame) -> bool:
    """Whether the problem itself says what a step brings: its scale, or a phasor that its sheet has drawn already."""
    if frame.asks_scale or frame.place is None:
        return frame.asks_scale
    case = page.case(form)
    plan = case.sheet_plan()
    begun = case.begun_keys(plan)
    step = dict(plan.construction.numbered).get(frame.place.step)
    return step is not None and any(
        isinstance(move, SetOff) and move.phasor in begun and not move.copy for move in step.moves
    )


def _frame(page: SumPage[Any], form: Mapping[str, str], step: int) -> LessonFrame:
    """The frame of a step, or of the first step after it of which something is to be told."""
    while True:
        frame = page.lesson(form, "lesson", page.lesson_number(form, step))
        if not _is_told(page, form, frame):
            return frame
        step += 1


def _sentences(frame: LessonFrame) -> tuple[Phrase, ...]:
    """What is told, rung by rung: which instrument and from where, with what to ask oneself; then the move."""
    if frame.answers:
        return (words.HINT_LAST,)
    if frame.reading:
        asks = (" ", *frame.question) if frame.question else ()
        return ((*frame.sentence, *asks), frame.reading)
    look = frame.question or (frame.why[0] if frame.why else ())
    return (look, frame.sentence) if look else (frame.sentence,)


def _next(step: int, rung: int, label: str) -> Markup:
    marks: Marks = {"type": "button", "class": "go", "data-hint-step": step, "data-hint-rung": rung}
    return h("button", marks, label)


def reply(page: SumPage[Any], form: Mapping[str, str], request: Mapping[str, Any]) -> dict[str, Any]:
    """Answer ``{"do": "hint", "step", "rung"}``. Raises InputError."""
    step, rung = _whole(request.get("step"), FARTHEST), _whole(request.get("rung"), MOVE)
    frame = _frame(page, form, step)
    step, steps = (frame.place.step, frame.place.steps) if frame.place else (frame.number, frame.count)
    sentences = _sentences(frame)
    told = sentences[:rung]
    ways = []
    if rung < len(sentences):
        ways.append(_next(step, MOVE, words.HINT_MOVE))
    elif not frame.answers:
        task = page.task(form)
        address = f"../{task.slug}/#{links.fragment(task.link)}&view=lesson&step={frame.number}"
        ways.append(h("a", {"href": address, "data-to-step": frame.number, "data-done": True}, words.HINT_DONE))
    if step < steps:
        ways.append(_next(step + 1, LOOK, words.HINT_NEXT))
    lines = [h("p", None, phrase_html(one)) for one in told]
    html = h("div", {"class": "hints"}, h("h3", None, place_of(frame)), lines, h("p", {"class": "way"}, join(*ways)))
    return {"ok": True, "regions": {"hint": str(html)}, "announce": " ".join(plain(one) for one in told)}
