"""A judged answer in sentences: what the learner reads, and nothing that gives the right answer away."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from pycore import quantity
from pycore.practice.answers import AnswerJudgement
from pycore.practice.explaining import Cause
from pycore.practice.marking import ACCEPT, LOOK, MOST_NAMED
from pycore.practice.task import Mistake, StepReference, Task
from pycore.quantity import NO_BREAK_SPACE
from pycore.words import marking as words
from pycore.words.phrase import Phrase


@dataclass(frozen=True, slots=True)
class JudgementText:
    """A judgement in words: its band, the headline, lines below it, and causes (each a sentence) under
    their own introduction, with the place in the steps that each belongs to."""

    band: str
    headline: Phrase
    lines: tuple[Phrase, ...] = ()
    introduction: Phrase = ()
    causes: tuple[Phrase, ...] = ()
    places: tuple[StepReference | None, ...] = ()

    @property
    def phrases(self) -> tuple[Phrase, ...]:
        """Everything, in the order in which it is read out."""
        whole = (self.headline, *self.lines, self.introduction, *self.causes)
        return tuple(phrase for phrase in whole if phrase)


def _amount(task: Task, value: float) -> str:
    """A difference: two figures, in the problem's unit."""
    shown = math.fabs(value) / task.writing.factor
    decimals = min(task.writing.decimals + 1, quantity.decimals_for(shown, 2)) if shown else 0
    return quantity.fixed(shown, decimals, task.writing.mark) + NO_BREAK_SPACE + task.writing.unit


def _half_a_digit(task: Task) -> float:
    """Half of the last digit that results are written with."""
    return float(f"5e-{task.writing.decimals + 1}") * task.writing.factor


def _side(reply: AnswerJudgement) -> str:
    marked = reply.marked
    if math.fabs(marked.size_off) <= marked.size_tolerance and marked.angle_off is not None:
        return words.WRONG_ANGLE
    return words.TOO_LARGE if marked.size_off > 0 else words.TOO_SMALL


def _times(reply: AnswerJudgement) -> int:
    """How many whole tolerances an answer is off, in size or in angle, whichever is more."""
    marked = reply.marked
    size = math.fabs(marked.size_off) / marked.size_tolerance if marked.size_tolerance > 0 else math.inf
    angle = 0.0
    if marked.angle_off is not None and marked.angle_tolerance > 0:
        angle = math.fabs(marked.angle_off) / marked.angle_tolerance
    return max(2, math.floor(min(99.0, max(size, angle))))


def _headline(task: Task, reply: AnswerJudgement) -> Phrase:
    marked = reply.marked
    allowed = _amount(task, marked.size_tolerance)
    if reply.unit_meant:
        return words.meant(reply.unit_meant, reply.unit)
    if reply.missing:
        return words.which_side() if reply.missing == "side" else words.size_right()
    if reply.coarse:
        return words.three_figures()
    if marked.band == ACCEPT:
        off = _amount(task, marked.size_off)
        if math.fabs(marked.size_off) < _half_a_digit(task):
            return words.exactly(allowed)
        return words.within(reply.answer.how, off, allowed)
    if reply.follows:
        return words.FOLLOWS
    if marked.band == LOOK:
        return words.near(_side(reply))
    return words.far(_side(reply), words.times(_times(reply)))


def _cause(cause: Cause, *, alone: bool) -> Phrase:
    tell_it = words.one_cause if alone and cause.sure else words.perhaps
    looks = dict.fromkeys(mistake.look for mistake in cause.mistakes[: words.MOST_TOGETHER])
    return tell_it([mistake.name for mistake in cause.mistakes], list(looks))


def _introduction(reply: AnswerJudgement, count: int) -> Phrase:
    if reply.unit_meant:
        return words.OR_ELSE
    return words.several(count) if count > 1 else ()


def tell(task: Task, reply: AnswerJudgement, place_of: Callable[[Mistake], StepReference | None]) -> JudgementText:
    """A judged answer in words; ``place_of`` finds where on the page a mistake belongs."""
    marked = reply.marked
    labels = {earlier.key: words.EARLIER[earlier.key] for earlier in task.earlier}
    lines = [words.wrong_before(labels[key]) for key in reply.wrong_before]
    headline = _headline(task, reply)
    if marked.band == ACCEPT or reply.missing or reply.coarse or reply.follows:
        return JudgementText(marked.band, headline, tuple(lines))
    causes = marked.causes[:MOST_NAMED]
    if not causes:
        return JudgementText(marked.band, headline, (*lines, *(() if reply.unit_meant else (words.NO_CAUSE,))))
    alone = len(causes) == 1 and not reply.unit_meant
    named = [_cause(cause, alone=alone) for cause in causes]
    places: list[StepReference | None] = [place_of(cause.mistakes[0]) if task.in_steps else None for cause in causes]
    if len(causes) > 1 and reply.answer.angle is None and task.angled:
        named.append(words.ASK_ANGLE)
        places.append(None)
    return JudgementText(
        marked.band, headline, tuple(lines), _introduction(reply, len(causes)), tuple(named), tuple(places)
    )
