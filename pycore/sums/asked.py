"""What a page that adds phasors asks a learner for, taken from the task that will judge it, without its answer."""

from pycore.practice.answers import units
from pycore.practice.task import AnswerRequest, IntermediateValue, Task
from pycore.sheet.kinds import PROBLEM
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.sentences import StepSentences
from pycore.sums.sheet import question_of
from pycore.words import checking as words
from pycore.words.phrase import Phrase, with_symbols


def _name(earlier: IntermediateValue) -> Phrase:
    """Return the symbol of an intermediate value; a sum of components has none."""
    return earlier.label if earlier.axis == 0 else ()


def _question(case: SumCase, plan: Plan) -> tuple[str, tuple[str, ...]]:
    """Return the question of the problem's sheet, and what else must be known."""
    written = case.sheet_words(plan, PROBLEM, case.method_words(plan)).notes
    question, _ = question_of(case, plan, PROBLEM, written)
    return question, tuple(note for note in case.known(plan) if not note.startswith(question))


def _how(case: SumCase, plan: Plan, task: Task) -> Phrase:
    """Return what the answer is called, the method if the question does not name it, and the scale."""
    method, scale = case.method_words(plan), case.notation.scale(plan.scale)
    named = case.method_in_task and not plan.layout.small
    return words.result_by(task.symbol, "" if named else method, scale)


def asked_of(case: SumCase, plan: Plan, task: Task) -> AnswerRequest:
    """Return what a learner is asked for, in the conventions of this sheet."""
    known = all(case.typed(arm.key) for arm in case.arms)
    place = (StepSentences(plan, case.notation).own_paper(longest=known),) if case.on_own_paper else ()
    question, notes = _question(case, plan)
    return AnswerRequest(
        symbol=task.symbol,
        units=units(task),
        origin=task.origin,
        signed=task.signed,
        angled=task.angled,
        scale=task.scale_words if task.factor > 0 else "",
        question=(*with_symbols(question), " ", *_how(case, plan, task)),
        notes=(*place, *(with_symbols(note) for note in notes)),
        earlier=tuple((earlier.key, _name(earlier)) for earlier in task.earlier),
    )
