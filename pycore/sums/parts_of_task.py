"""Intermediate values of a drawn sum as tasks of their own: a first diagonal, or one of two sums of components, is
judged and explained as a whole answer is."""

import math
from collections.abc import Callable
from dataclasses import replace

from pycore import phasor
from pycore.accuracy import hand as hands
from pycore.constructions.parallelogram import parallelogram
from pycore.practice import miscalculated, misplaced, sums
from pycore.practice.sums import DrawnSum
from pycore.practice.task import IntermediateValue, Mistake, Slips, Task
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase

AFTER_THE_PARTS = (
    "across-only", "up-only", "parts-added", "complement", "turned-round", "arrow-reversed", "angle-at-tip",
    "times-root-three", "over-root-three", "stopped", "other-diagonal", "two-diagonals",
)  # fmt: skip
"""Mistakes that are made only after the intermediate values are found."""


def as_tasks(
    case: SumCase, plan: Plan, earlier: tuple[IntermediateValue, ...], whole: Callable[[], Task], drawn: DrawnSum
) -> tuple[IntermediateValue, ...]:
    """Return intermediate values that can make the task of each; ``whole`` makes the task of the sum, whose mistakes
    are ``drawn``."""
    return tuple(
        replace(one, as_task=_maker(case, plan, one, whole, drawn)) for one in earlier
    )


def _maker(
    case: SumCase, plan: Plan, value: IntermediateValue, whole: Callable[[], Task], drawn: DrawnSum
) -> Callable[[], Task]:
    if value.axis != 0:
        return lambda: _along_an_axis(whole(), value)
    return lambda: _first_diagonal(case, plan, value, whole(), drawn)


def _first_diagonal(case: SumCase, plan: Plan, value: IntermediateValue, whole: Task, drawn: DrawnSum) -> Task:
    """The sum of the two phasors that are combined first."""
    numbers = tuple(int(number) for number in plan.construction.order)
    arms = tuple(arm for number in numbers for arm in case.arms if arm.number == number)
    # Mistakes are counted from the direction drawn first, whichever two are combined.
    two = replace(drawn, arms=arms)
    construction = parallelogram(arms, plan.construction.order, case.picture.reference, case.problem["parallels"])
    mistakes = (
        *sums.in_moves(two), *sums.of_lags(two), *sums.of_scale(two), *sums.of_the_arrow(two),
        *misplaced.in_the_instruments(two), *miscalculated.calculated(two),
    )  # fmt: skip
    sizes = tuple(phasor.polar(arm.size, arm.angle - case.picture.reference) for arm in arms)
    return replace(
        whole, result=value.value, symbol=value.label, mistakes=mistakes, earlier=(), further=None, turn_back=1.0,
        spread=hands.spread(construction, plan.factor, case.hand), slips=Slips(sizes, sizes),
        largest=max(arm.size for arm in arms),
    )  # fmt: skip


def _along_an_axis(whole: Task, value: IntermediateValue) -> Task:
    """A sum of components: a number with its sign, counted along its axis."""
    mistakes = tuple(
        _component(mistake.turned_back(whole.turn_back), value.axis)
        for mistake in whole.mistakes
        if mistake.point is not None and mistake.key not in AFTER_THE_PARTS
    )
    slips = Slips(tuple(_along(part, value.axis) for part in whole.slips.lengths))
    return replace(
        whole, result=value.value, symbol=value.label, mistakes=mistakes, earlier=(), further=None, turn_back=1.0,
        spread=None, slips=slips,
    )  # fmt: skip


def _along(point: complex, axis: complex) -> complex:
    return complex(point.real * axis.real + point.imag * axis.imag, 0.0)


def _component(mistake: Mistake, axis: complex) -> Mistake:
    points = tuple(_along(point, axis) for point in mistake.points)
    along = _along(mistake.point or 0j, axis)
    return replace(mistake, point=along, points=points, size=math.fabs(along.real))
