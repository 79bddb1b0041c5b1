"""What a page that adds phasors asks a learner for: read off a solved case, and nothing of its answer."""

from pycore.calculators.sum_case import SumCase
from pycore.practice.answers import LENGTHS
from pycore.practice.task import Asked
from pycore.sheet.plan import Plan
from pycore.words import Phrase, say
from pycore.words import checking as words


def earlier_of(case: SumCase, plan: Plan) -> tuple[tuple[str, Phrase], ...]:
    """What is found on the way by key: the first diagonal with its name, or the two sums of parts."""
    if plan.construction.method == "components":
        return (("across", ()), ("up", ()))
    if "r" not in plan.construction.figure.readings:
        return ()
    return (("first", case.telling.tags[f"i{plan.construction.order}"]),)


def asked_of(case: SumCase, plan: Plan) -> Asked:
    """What a learner is asked, by the conventions of this sheet."""
    telling = case.telling
    found = words.to_find(telling.tags["sum"], case.method_words(plan), telling.scale(plan.scale))
    return Asked(
        symbol=telling.tags["sum"],
        units=(telling.writing.unit, *(LENGTHS if plan.factor > 0 else ())),
        origin=telling.voltage if telling.polar else telling.reference,
        signed=telling.polar,
        notes=(found, *(say(known) for known in case.known(plan))),
        earlier=earlier_of(case, plan),
    )
