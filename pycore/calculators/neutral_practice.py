"""The neutral current as practice knows it: problems from codes, and one form as a task to be marked."""

from collections.abc import Mapping

from pycore import phasor, quantity
from pycore.calculators.interface import default_form
from pycore.calculators.neutral_accuracy import NeutralAccuracy
from pycore.calculators.neutral_case import NeutralCase
from pycore.calculators.neutral_fields import FIELDS
from pycore.calculators.neutral_problem import read_problem
from pycore.circuits.star import VOLTAGE_ANGLES
from pycore.practice import reckoning, sums
from pycore.practice.codes import Code
from pycore.practice.generator import lines_of
from pycore.practice.sums import Sum
from pycore.practice.task import Earlier, Mistake, Task
from pycore.sheet.plan import Plan
from pycore.words import marking as words
from pycore.words import say


def form_of(code: Code, choices: Mapping[str, str] | None = None) -> dict[str, str]:
    """The form that holds a code's problem; ``choices`` are a class's own (scale, names ...)."""
    lines = lines_of(code)
    form = default_form(FIELDS) | dict(choices or {})
    for number, (tenths, lag) in enumerate(zip(lines.tenths, lines.lags, strict=True), start=1):
        form[f"i{number}"] = quantity.plain(tenths / 10.0)
        form[f"a{number}"] = quantity.plain(float(lag)).replace(quantity.MINUS, "-")
    form["paper"] = code.paper
    if code.method != "any":
        form["method"] = code.method
    return form


def _sum(case: NeutralCase, plan: Plan) -> Sum:
    voltages = VOLTAGE_ANGLES[case.problem["sequence"]]
    return Sum(
        arms=case.arms,
        reference=case.picture.reference,
        method=plan.construction.method,
        order=plan.construction.order,
        names={arm.key: case.telling.tags[arm.key] for arm in case.arms},
        unit=case.telling.writing.unit,
        scale=plan.scale / case.telling.writing.factor,
        scale_words=case.telling.scale(plan.scale),
        voltages={arm.key: voltages[arm.number - 1] for arm in case.arms},
    )


def _mistakes(problem: Sum) -> tuple[Mistake, ...]:
    return (
        *sums.in_moves(problem),
        *sums.in_stages(problem),
        *sums.of_lags(problem),
        *sums.of_scale(problem),
        *reckoning.calculated(problem),
    )


def _earlier(case: NeutralCase, plan: Plan) -> tuple[Earlier, ...]:
    """What is found on the way: the first diagonal, or the two sums of parts."""
    reference = case.picture.reference
    lines = {arm.number: phasor.polar(arm.size, arm.angle - reference) for arm in case.arms}
    if plan.construction.method == "components":
        whole = phasor.total(lines.values())
        made = []
        for key, degrees in (("across", 0.0), ("up", 90.0)):
            axis = phasor.polar(1.0, case.picture.reckoned_angle(degrees) - reference)
            along = whole.real * axis.real + whole.imag * axis.imag
            made.append(Earlier(key, say(words.EARLIER[key]), complex(along, 0.0), axis=axis))
        return tuple(made)
    if "r" not in plan.construction.figure.readings:
        return ()
    first, second = (int(number) for number in plan.construction.order)
    rest = phasor.total(value for number, value in lines.items() if number not in (first, second))
    tag = case.telling.tags[f"i{first}{second}"]
    return (Earlier("first", tag, phasor.total((lines[first], lines[second])), rest),)


def task_of(case: NeutralCase) -> Task:
    """A solved case as a task: what is asked, the right answer, its tolerance and what mistakes give."""
    plan = case.shown()
    accuracy = NeutralAccuracy(case)
    reference = case.picture.reference
    polar = case.telling.polar
    solution = case.solution
    return Task(
        slug="neutral-current",
        form=dict(case.problem.typed),
        result=solution.neutral * phasor.polar(1.0, -reference),
        symbol=case.telling.tags["sum"],
        writing=case.telling.writing,
        factor=plan.factor,
        scale_words=case.telling.scale(plan.scale),
        spread=case.spread(plan),
        hand_angle=accuracy.who.angle,
        mistakes=_mistakes(_sum(case, plan)),
        earlier=_earlier(case, plan),
        sense=case.picture.sense,
        origin=case.telling.voltage if polar else case.telling.reference,
        turn=-reference if polar else 0.0,
        signed=polar,
        link=case.link(plan),
    )


def task(form: Mapping[str, str]) -> Task:
    """A form as a task. Raises InputError."""
    return task_of(NeutralCase(read_problem(form)))
