"""A sum of phasors as a task for practice: question, right answer, and results of mistakes."""

import math
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Any

from pycore import phasor
from pycore.constructions.construction import Arm
from pycore.constructions.methods import COMPONENTS, THE_RETURNING, TIP_TO_TAIL
from pycore.constructions.names import DIAGONAL_LENGTH, RETURN_KEY, SUM_KEY, arm_key
from pycore.constructions.tip_to_tail import chain_of
from pycore.phasor import wrap
from pycore.practice import miscalculated, misplaced, sums
from pycore.practice.sums import DrawnSum
from pycore.practice.task import IntermediateValue, Mistake, OtherOrigin, Slips, Task
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.parts_of_task import as_tasks
from pycore.words import constructions as construction_words
from pycore.words import marking as words
from pycore.words.phrase import say

SAME_LINE = 0.05
"""Degrees within which two lines are one for a protractor."""


def drawn_sum(case: SumCase, plan: Plan, arms: tuple[Arm, ...], **changes: Any) -> DrawnSum:
    """Return phasors at a plan's scale as mistakes are made with them; ``changes``: fields that differ from the
    case's."""
    writing = case.notation.writing
    drawn = DrawnSum(
        arms=arms,
        reference=case.picture.reference,
        method=plan.construction.method,
        order=plan.construction.order,
        names={arm.key: case.notation.tags[arm.key] for arm in arms},
        unit=writing.unit,
        scale=plan.scale / writing.factor,
        scale_words=case.notation.scale(plan.scale),
        voltages=case.voltages(),
        factor=plan.factor,
        say_scale=lambda scale: case.notation.scale(scale * writing.factor),
        say_size=writing.amount,
    )
    return replace(drawn, **changes)


def _mistakes(problem: DrawnSum) -> tuple[Mistake, ...]:
    return (
        *sums.in_moves(problem),
        *sums.in_stages(problem),
        *sums.of_lags(problem),
        *sums.of_scale(problem),
        *sums.of_the_arrow(problem),
        *misplaced.in_the_instruments(problem),
        *miscalculated.calculated(problem),
    )


def _earlier(case: SumCase, plan: Plan) -> tuple[IntermediateValue, ...]:
    """Return the intermediate results: the first diagonal, or both sums of components."""
    reference = case.picture.reference
    lines = {arm.number: phasor.polar(arm.size, arm.angle - reference) for arm in case.arms}
    if plan.construction.method == COMPONENTS:
        line_sum = phasor.total(lines.values())
        values = []
        for key, degrees in (("across", 0.0), ("up", 90.0)):
            axis = phasor.polar(1.0, case.picture.phasor_angle(degrees) - reference)
            along = line_sum.real * axis.real + line_sum.imag * axis.imag
            values.append(IntermediateValue(key, say(words.EARLIER[key]), complex(along, 0.0), axis=axis))
        return tuple(values)
    if DIAGONAL_LENGTH not in plan.construction.figure.readings:
        return ()
    first, second = (int(number) for number in plan.construction.order)
    remainder = phasor.total(value for number, value in lines.items() if number not in (first, second))
    tag = case.notation.tags[arm_key(f"{first}{second}")]
    return (IntermediateValue("first", tag, phasor.total((lines[first], lines[second])), remainder),)


def _slips(case: SumCase, plan: Plan, turn_back: float) -> Slips:
    """What one slip moves: each phasor, and tip to tail all that follow it."""
    reference = case.picture.reference
    lines = {arm.number: turn_back * phasor.polar(arm.size, arm.angle - reference) for arm in case.arms}
    if plan.construction.method != TIP_TO_TAIL:
        return Slips(tuple(lines.values()), tuple(lines.values()))
    chain = [arm.number for arm in chain_of(case.arms, plan.construction.order)]
    tails = [phasor.total(lines[number] for number in chain[place:]) for place in range(len(chain))]
    return Slips(tuple(lines.values()), tuple(tails))


def _origins(case: SumCase, turn_back: float) -> tuple[OtherOrigin, ...]:
    """Return from what else the page counts angles: the other direction of its tables, each phasor, and the horizontal
    axis of its components; and the arrow that points the other way, where that is on the sheet."""
    reference, notation = case.picture.reference, case.notation
    other = notation.reference if notation.polar else notation.voltage
    found = [OtherOrigin(other, 0.0 if notation.polar else -reference)]
    found += [OtherOrigin(notation.tags[arm.key], arm.angle - reference) for arm in case.arms]
    found.append(OtherOrigin(construction_words.LEVEL_AXIS, case.picture.phasor_angle(0.0) - reference, acute=True))
    if turn_back < 0:
        found.append(OtherOrigin(notation.tags[SUM_KEY], 180.0, opposite=True))
    here = -reference if notation.polar else 0.0
    # An axis along the line that angles are counted from is no other line.
    turns = (wrap((2.0 if one.acute else 1.0) * (one.degrees - here)) for one in found)
    lines = tuple(one for one, turn in zip(found, turns, strict=True) if math.fabs(turn) > SAME_LINE)
    return lines if notation.polar else (*lines, OtherOrigin(notation.reference, 0.0, other_scale=True))


def basic_task(
    case: SumCase, plan: Plan, result: complex, mistakes: tuple[Mistake, ...], slips: Slips, **changes: Any
) -> Task:
    """Return a task with what every page's has from its case and plan; ``changes``: its other fields."""
    polar = case.notation.polar
    task = Task(
        slug=case.slug,
        form=dict(case.problem.typed),
        result=result,
        symbol=case.notation.tags[SUM_KEY],
        writing=case.notation.writing,
        factor=plan.factor,
        scale_words=case.notation.scale(plan.scale),
        spread=case.scatter(plan),
        hand_angle=case.hand.angle,
        mistakes=mistakes,
        sense=case.picture.sense,
        origin=case.notation.voltage if polar else case.notation.reference,
        turn=-case.picture.reference if polar else 0.0,
        signed=polar,
        link=case.link(plan),
        slips=slips,
    )
    return replace(task, **changes)


def task_of(case: SumCase, further: tuple[Mistake, ...] = ()) -> Task:
    """Return a solved case as a task; ``further``: the mistakes of its own page."""
    plan = case.sheet_plan()
    turn_back = -1.0 if plan.construction.resultant == THE_RETURNING else 1.0
    drawn = drawn_sum(case, plan, case.arms)
    mistakes = (*further, *_mistakes(drawn))
    task = basic_task(
        case,
        plan,
        turn_back * case.total * phasor.polar(1.0, -case.picture.reference),
        tuple(one.turned_back(turn_back) for one in mistakes),
        _slips(case, plan, turn_back),
        symbol=case.notation.tags[SUM_KEY if turn_back > 0 else RETURN_KEY],
        further=case.beyond(),
        largest=max((arm.size for arm in case.arms), default=0.0),
        turn_back=turn_back,
        origins=_origins(case, turn_back),
    )
    return replace(task, earlier=as_tasks(case, plan, _earlier(case, plan), lambda: task, drawn))


def task_of_form(page: Any, form: Mapping[str, str]) -> Task:
    """Return the task of a page's form. The last ones stand ready: several answers to one problem are marked one after
    another. Raises InputError."""
    found: Task = _task_of_form(page, tuple(form.items()))
    return found


@lru_cache(maxsize=4)
def _task_of_form(page: Any, typed: tuple[tuple[str, str], ...]) -> Task:
    task: Task = page.task_of_case(page.case(dict(typed)))
    return task
