"""A sum of phasors as practice knows it: what is asked, the right answer, and what mistakes give."""

from pycore import phasor
from pycore.constructions.methods import COMPONENTS
from pycore.constructions.names import DIAGONAL_LENGTH, SUM_KEY, arm_key
from pycore.practice import reckoning, sums
from pycore.practice.sums import DrawnSum
from pycore.practice.task import IntermediateValue, Mistake, Task
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.words import marking as words
from pycore.words.phrase import say


def _sum(case: SumCase, plan: Plan) -> DrawnSum:
    return DrawnSum(
        arms=case.arms,
        reference=case.picture.reference,
        method=plan.construction.method,
        order=plan.construction.order,
        names={arm.key: case.notation.tags[arm.key] for arm in case.arms},
        unit=case.notation.writing.unit,
        scale=plan.scale / case.notation.writing.factor,
        scale_words=case.notation.scale(plan.scale),
        voltages=case.voltages(),
    )


def _mistakes(problem: DrawnSum) -> tuple[Mistake, ...]:
    return (
        *sums.in_moves(problem),
        *sums.in_stages(problem),
        *sums.of_lags(problem),
        *sums.of_scale(problem),
        *reckoning.calculated(problem),
    )


def _earlier(case: SumCase, plan: Plan) -> tuple[IntermediateValue, ...]:
    """What is found on the way: the first diagonal, or the two sums of parts."""
    reference = case.picture.reference
    lines = {arm.number: phasor.polar(arm.size, arm.angle - reference) for arm in case.arms}
    if plan.construction.method == COMPONENTS:
        line_sum = phasor.total(lines.values())
        values = []
        for key, degrees in (("across", 0.0), ("up", 90.0)):
            axis = phasor.polar(1.0, case.picture.reckoned_angle(degrees) - reference)
            along = line_sum.real * axis.real + line_sum.imag * axis.imag
            values.append(IntermediateValue(key, say(words.EARLIER[key]), complex(along, 0.0), axis=axis))
        return tuple(values)
    if DIAGONAL_LENGTH not in plan.construction.figure.readings:
        return ()
    first, second = (int(number) for number in plan.construction.order)
    rest = phasor.total(value for number, value in lines.items() if number not in (first, second))
    tag = case.notation.tags[arm_key(f"{first}{second}")]
    return (IntermediateValue("first", tag, phasor.total((lines[first], lines[second])), rest),)


def task_of(case: SumCase, further: tuple[Mistake, ...] = ()) -> Task:
    """A solved case as a task: what is asked, the right answer, its tolerance and what mistakes give; ``further`` are
    the mistakes of its own page."""
    plan = case.sheet_plan()
    mistakes = (*_mistakes(_sum(case, plan)), *further)
    reference = case.picture.reference
    polar = case.notation.polar
    return Task(
        slug=case.slug,
        form=dict(case.problem.typed),
        result=case.total * phasor.polar(1.0, -reference),
        symbol=case.notation.tags[SUM_KEY],
        writing=case.notation.writing,
        factor=plan.factor,
        scale_words=case.notation.scale(plan.scale),
        spread=case.scatter(plan),
        hand_angle=case.hand.angle,
        mistakes=mistakes,
        earlier=_earlier(case, plan),
        sense=case.picture.sense,
        origin=case.notation.voltage if polar else case.notation.reference,
        turn=-reference if polar else 0.0,
        signed=polar,
        link=case.link(plan),
        further=case.beyond(),
    )
