"""Hints while an answer is held back, one step of the page's list at a time: which instrument and from where, then the
move, then the lesson that shows the move done. What the problem says itself is passed over; the step that gives the
answer is left to the learner."""

from collections.abc import Mapping
from typing import Any

from pycore.constructions import step_kinds
from pycore.constructions.construction import Step
from pycore.constructions.moves import SetOff
from pycore.forms import links
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.lesson import place_of
from pycore.render.phrase import phrase_html
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.lesson_frame import LessonFrame
from pycore.sums.page import SumPage
from pycore.sums.sentences import StepSentences
from pycore.words import checking as words
from pycore.words import components, plain
from pycore.words.phrase import Phrase

LOOK, MOVE = 1, 2
"""The rungs that are told here; the third is the lesson itself."""
FARTHEST = 999


def _whole(value: object, most: int) -> int:
    """A whole number of a request, from 1 to ``most``."""
    return min(max(value, 1), most) if isinstance(value, int) and not isinstance(value, bool) else 1


def _step(frame: LessonFrame, plan: Plan) -> Step | None:
    """The step of the page's list that a frame belongs to."""
    return dict(plan.construction.numbered).get(frame.place.step) if frame.place else None


def _is_told(case: SumCase, frame: LessonFrame) -> bool:
    """Whether the problem itself says what a step brings: its scale, or a phasor that its sheet has drawn already. On
    their own paper learners measure where the drawing begins, and lay it out to scale themselves."""
    if frame.asks_scale:
        return not case.on_own_paper
    plan = case.sheet_plan()
    begun, step = case.begun_keys(plan), _step(frame, plan)
    return step is not None and any(
        isinstance(move, SetOff) and move.phasor in begun and not move.copy for move in step.moves
    )


def _frame(page: SumPage[Any], form: Mapping[str, str], case: SumCase, step: int) -> LessonFrame:
    """The frame of a step, or of the first step after it of which something is to be told."""
    while True:
        frame = page.lesson(form, "lesson", page.lesson_number(form, step))
        if not _is_told(case, frame):
            return frame
        step += 1


def _which_way(plan: Plan, case: SumCase) -> Phrase:
    """Which components lie to which side, and which are subtracted."""
    sentences, readings = StepSentences(plan, case.notation), plan.construction.figure.readings

    def of(letter: str, side: int) -> list[Phrase]:
        return [case.notation.tags[arm.key] for arm in plan.construction.arms
                if sentences.side_of(readings[f"{letter}{arm.number}"]) == side]  # fmt: skip

    return components.which_way(of("x", 1), of("x", -1), of("y", 1), of("y", -1))


def _sentences(case: SumCase, frame: LessonFrame) -> tuple[Phrase, ...]:
    """What is told, rung by rung: which instrument and from where, with what to ask oneself; then the move."""
    plan = case.sheet_plan()
    step = _step(frame, plan)
    if frame.answers:
        return (words.HINT_LAST,)
    if frame.asks_scale:
        return ((*words.HINT_PAPER, " ", *frame.why[0]), (*frame.sentence, " ", *frame.reading))
    if step is not None and step.name == step_kinds.ADD:
        return (_which_way(plan, case), frame.sentence)
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
    case = page.case(form)
    frame = _frame(page, form, case, step)
    step, steps = (frame.place.step, frame.place.steps) if frame.place else (frame.number, frame.count)
    sentences = _sentences(case, frame)
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
