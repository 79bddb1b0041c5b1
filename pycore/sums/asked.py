"""What a page that adds phasors asks a learner for, taken from the task that will judge it, without its answer."""

from pycore.practice.answers import units
from pycore.practice.task import AnswerRequest, IntermediateValue, Task
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.sentences import StepSentences
from pycore.words import checking as words
from pycore.words.phrase import Phrase, with_symbols


def _name(earlier: IntermediateValue) -> Phrase:
    """Return the symbol of an intermediate value; a sum of components has none."""
    return earlier.label if earlier.axis == 0 else ()


def asked_of(case: SumCase, plan: Plan, task: Task) -> AnswerRequest:
    """Return what a learner is asked for, in the conventions of this sheet."""
    task_note = words.to_find(task.symbol, case.method_words(plan), case.notation.scale(plan.scale))
    known = all(case.typed(arm.key) for arm in case.arms)
    place = (StepSentences(plan, case.notation).own_paper(longest=known),) if case.on_own_paper else ()
    return AnswerRequest(
        symbol=task.symbol,
        units=units(task),
        origin=task.origin,
        signed=task.signed,
        angled=task.angled,
        scale=task.scale_words if task.factor > 0 else "",
        notes=(task_note, *place, *(with_symbols(known) for known in case.known(plan))),
        earlier=tuple((earlier.key, _name(earlier)) for earlier in task.earlier),
    )
