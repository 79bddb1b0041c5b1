"""A judged answer in sentences: what the learner reads, and nothing that gives the right answer away."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from pycore import quantity
from pycore.practice.answers import AnswerJudgement
from pycore.practice.explaining import Cause
from pycore.practice.explaining import causes as causes_of
from pycore.practice.marking import ACCEPT, LOOK, MOST_NAMED, WRONG
from pycore.practice.task import CALCULATED, NO_LIMITS, Mistake, StepReference, Task
from pycore.practice.typed import LENGTHS, TypedSize, size_in
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


def _apart(task: Task, reply: AnswerJudgement) -> str:
    """How far an answer is from the calculated value, as the figures that the page shows of both differ; as it is where
    that rounds to more than is allowed."""
    digit = task.writing.last_digit(task.size)
    apart = digit * math.fabs(math.floor(task.size / digit + 0.5) - math.floor(reply.answer.size / digit + 0.5))
    if apart > reply.marked.size_tolerance:
        return _amount(task, reply.marked.size_off)
    return task.writing.apart(apart, task.size) + NO_BREAK_SPACE + task.writing.unit


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


def _each_inside(reply: AnswerJudgement) -> bool:
    """Whether size and angle are each inside their tolerance, of an answer that is not inside both together."""
    marked = reply.marked
    if marked.angle_off is None:
        return False
    return math.fabs(marked.size_off) <= marked.size_tolerance and math.fabs(marked.angle_off) <= marked.angle_tolerance


def _degrees(task: Task, degrees: float) -> str:
    """An angle's difference, to a tenth of a degree."""
    return quantity.fixed(math.fabs(degrees), 1, task.writing.mark) + "°"


def _headline(task: Task, reply: AnswerJudgement) -> Phrase:
    marked = reply.marked
    allowed = _amount(task, marked.size_tolerance)
    if reply.unit_meant:
        return words.meant(reply.unit_meant, reply.unit)
    if reply.missing:
        return words.which_side() if reply.missing == "side" else words.size_right(signed=task.signed)
    if reply.coarse:
        return words.three_figures()
    if marked.band == ACCEPT:
        if math.fabs(marked.size_off) < _half_a_digit(task):
            return words.exactly(allowed)
        return words.within(reply.answer.how, _apart(task, reply), allowed)
    if reply.follows:
        return words.FOLLOWS
    if reply.origin is not None and reply.origin.other_scale:
        return words.of_the_other_scale(task.origin)
    if reply.origin is not None:
        from_there = words.of_the_other_arrow if reply.origin.opposite else words.measured_from
        return from_there(reply.origin.name, task.symbol if reply.origin.opposite else task.origin)
    if _each_inside(reply):
        angle = _degrees(task, marked.angle_off or 0.0)
        return words.both_off(_amount(task, marked.size_off), angle, wrong=marked.band == WRONG)
    if marked.band == LOOK:
        side = _side(reply)
        is_angle = side == words.WRONG_ANGLE
        return words.near(words.wrong_by(_degrees(task, marked.angle_off or 0.0)) if is_angle else side)
    return words.far(_side(reply), words.times(_times(reply)))


def _typed(task: Task, number: float, unit: str) -> str:
    """A typed number with a unit, in as few figures as show it."""
    return (quantity.plain(number, task.writing.mark) if number else "0") + NO_BREAK_SPACE + unit


def _read_as(task: Task, reply: AnswerJudgement) -> Phrase:
    """How a length was read; () for an answer in the unit of the quantity."""
    entry = reply.entries.get("")
    if entry is None or entry.size.unit not in LENGTHS:
        return ()
    amount = _typed(task, reply.answer.size / task.writing.factor, task.writing.unit)
    return words.read_as(_typed(task, entry.size.number, entry.size.unit), amount)


def _in_other_unit(task: Task, reply: AnswerJudgement) -> Phrase:
    """The typical mistake that would give the same number in the other unit, where that is sure and nothing is sure of
    the number as it was read; else ()."""
    entry, own = reply.entries.get(""), reply.marked.causes
    if entry is None or task.factor <= 0 or reply.unit_meant or (own and own[0].sure):
        return ()
    is_length = entry.size.unit in LENGTHS
    if entry.size.unit_typed and not is_length:
        return ()
    unit = task.writing.unit if is_length else "mm"
    size = size_in(task, TypedSize(entry.size.number, unit, unit_typed=False))
    found = causes_of(task, replace(reply.answer, size=size), NO_LIMITS)
    if not found or not found[0].sure:
        return ()
    mistake = found[0].mistakes[0]
    return words.in_other_unit(_typed(task, entry.size.number, unit), unit, mistake.name, mistake.look,
                               written=entry.size.unit if entry.size.unit_typed else "")  # fmt: skip


def _cause(cause: Cause, *, alone: bool) -> Phrase:
    tell_it = words.one_cause if alone and cause.sure else words.perhaps
    return tell_it([(mistake.name, mistake.look) for mistake in cause.mistakes])


def _introduction(reply: AnswerJudgement, count: int) -> Phrase:
    if reply.unit_meant:
        return words.OR_ELSE
    return words.several(count) if count > 1 else ()


def tell(
    task: Task, reply: AnswerJudgement, place_of: Callable[[Mistake], StepReference | None], *,
    numbers_only: bool = False,
) -> JudgementText:
    """A judged answer in words; ``place_of`` finds where on the page a mistake belongs.

    ``numbers_only``: it was read off a drawing that nobody has judged.
    """
    judgement = _judgement(task, reply, place_of)
    if not numbers_only:
        return judgement
    return replace(judgement, lines=(*judgement.lines, words.NUMBERS_ONLY))


def _judgement(
    task: Task, reply: AnswerJudgement, place_of: Callable[[Mistake], StepReference | None]
) -> JudgementText:
    marked, lines = reply.marked, _lines(task, reply)
    if reply.partial:
        return _of_parts(task, reply, place_of)
    headline = _read_as(task, reply) + _headline(task, reply)
    settled = reply.missing or reply.coarse or reply.follows or reply.origin is not None
    if marked.band == ACCEPT or settled:
        return JudgementText(marked.band, headline, lines)
    causes = marked.causes[:MOST_NAMED]
    elsewhere = _in_other_unit(task, reply)
    if elsewhere and not causes:
        return JudgementText(marked.band, headline, (*lines, elsewhere))
    lines = (*lines, elsewhere) if elsewhere else lines
    if not causes:
        wrong = next((part for part in reply.parts if not part.right and part.marked.causes), None)
        if wrong is not None:
            told = _explained(task, wrong.marked.causes, place_of, alone=True)
            about = words.of_part(words.EARLIER[wrong.key])
            return JudgementText(marked.band, headline, lines, about, *told)
        further = () if reply.unit_meant else (words.NO_CAUSE, _next_check(task, reply))
        return JudgementText(marked.band, headline, (*lines, *further))
    alone = len(causes) == 1 and not reply.unit_meant
    named, places = _explained(task, causes, place_of, alone=alone)
    if len(causes) > 1 and reply.answer.angle is None and task.angled:
        named, places = (*named, words.ASK_ANGLE), (*places, None)
    return JudgementText(marked.band, headline, lines, _introduction(reply, len(causes)), named, places)


Explained = tuple[tuple[Phrase, ...], tuple[StepReference | None, ...]]


def _explained(
    task: Task, causes: Sequence[Cause], place_of: Callable[[Mistake], StepReference | None], *, alone: bool
) -> Explained:
    """Causes as sentences, and where each belongs."""
    shown = causes[:MOST_NAMED]
    named = tuple(_cause(cause, alone=alone and len(shown) == 1) for cause in shown)
    return named, tuple(place_of(cause.mistakes[0]) if task.in_steps else None for cause in shown)


def _lines(task: Task, reply: AnswerJudgement) -> tuple[Phrase, ...]:
    """What is said of values found on the way, and of an angle that was not typed."""
    lines = [words.wrong_before(words.EARLIER[key]) for key in reply.wrong_before]
    if reply.marked.band == WRONG:
        lines += [words.right_before(words.EARLIER[part.key]) for part in reply.parts if part.right]
    unchecked = reply.coarse or reply.follows or reply.unit_meant
    if unchecked and task.angled and task.angle is not None and reply.answer.angle is None:
        lines.append(words.ANGLE_TOO)
    return tuple(lines)


def _of_parts(
    task: Task, reply: AnswerJudgement, place_of: Callable[[Mistake], StepReference | None]
) -> JudgementText:
    """Values found on the way alone."""
    judged = next(part for part in reply.parts if part.marked is reply.marked)
    label = words.EARLIER[judged.key]
    if judged.right:
        return JudgementText(ACCEPT, words.part_right(label))
    others = tuple(words.right_before(words.EARLIER[part.key]) for part in reply.parts if part.right)
    near = math.fabs(judged.marked.size_off) <= judged.marked.size_tolerance
    side = words.WRONG_ANGLE if near else words.TOO_LARGE if judged.marked.size_off > 0 else words.TOO_SMALL
    headline = words.part_wrong(label, side)
    if not judged.marked.causes:
        check = words.CHECK_CALCULATION if judged.answer.how == CALCULATED else words.CHECK_DRAWING
        return JudgementText(WRONG, headline, (*others, words.NO_CAUSE, check))
    causes, places = _explained(task, judged.marked.causes, place_of, alone=True)
    introduction = words.several(len(causes)) if len(causes) > 1 else ()
    return JudgementText(WRONG, headline, others, introduction, causes, places)


def _next_check(task: Task, reply: AnswerJudgement) -> Phrase:
    """What to check next where no mistake of the catalogue explains an answer: never nothing."""
    typed = [part.key for part in reply.parts]
    if typed and not reply.wrong_before:
        return words.CHECK_AFTER
    calculated = reply.answer.how == CALCULATED
    for value in task.earlier:
        if value.key not in typed and not (calculated and value.axis == 0):
            return words.check_first(value.label) if value.axis == 0 else words.CHECK_SUMS
    return words.CHECK_CALCULATION if calculated else words.CHECK_DRAWING
