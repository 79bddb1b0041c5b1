"""The chosen plan, and the faults of scales that do not fit the paper, each with an offer of what fits."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Protocol

from pycore import quantity
from pycore.errors import Fault, Offer
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.media import ORIENTATIONS
from pycore.sheet.plan import Plan, fits_paper, papers_that_take
from pycore.sheet.scale import Fit
from pycore.sheet.styles import OWN_PAPER
from pycore.sums.planner import Drawable
from pycore.sums.problem import SheetProblem
from pycore.sums.wording import Notation
from pycore.words import answers as words
from pycore.words import sums as sum_words

SECOND = "second-scale"
"""The form field and link key of the companions' scale."""


@dataclass(frozen=True, slots=True)
class ChosenPlan:
    """The plan of the drawing on the sheet, and the faults of scales that do not fit."""

    plan: Plan
    misfit: tuple[Fault, ...] = ()


class Scalable(Drawable, Protocol):
    """What a case says of its drawing and of the scale that was typed for it."""

    problem: SheetProblem
    notation: Notation
    method: str

    @property
    def on_own_paper(self) -> bool:
        """Whether the learner draws on blank paper of their own."""

    def plans(
        self, method: str, order: str = "", scale: float | None = None, second: float | None = None
    ) -> tuple[Plan, ...]:
        """A plan for each order of a method, the best first."""


def chosen_plan(case: Scalable) -> ChosenPlan:
    """Return the drawing on the sheet at the scales that were chosen; at one that fits, with a fault, for one that does
    not."""
    problem, method = case.problem, case.method
    scale, second, order = problem.scale, problem.second, problem["order"]
    misfit: tuple[Fault, ...] = ()
    plans = case.plans(method, order, scale, second)
    plan = plans[0]
    if scale is not None and not plan.fit.fits:
        misfit, scale = (_too_large(case, plans, case.plans(method, order)[0]),), None
        plan = case.plans(method, order, None, second)[0]
    if not plan.second_fits:
        fitting = case.plans(method, order, scale)[0]
        misfit += (_second_too_large(case.notation, problem.typed[SECOND], plan, fitting),)
        plan = fitting
    return ChosenPlan(plan, misfit)


def over_text(fit: Fit) -> str:
    """Return by how much a drawing exceeds its paper, in words."""
    over = [f"{math.ceil(side)}{NO_BREAK_SPACE}mm" if side > 1e-3 else "" for side in fit.over]
    return words.too_wide(*over)


def _too_large(case: Scalable, plans: Sequence[Plan], fitting: Plan) -> Fault:
    """Return the fault of a scale that does not fit: by how much, and what fits.

    ``plans``: those of the scale. ``fitting``: the plan with a scale that fits.
    """
    plan, own = plans[0], case.on_own_paper
    scale_text, fits = (case.notation.writing.scale(one.scale) for one in (plan, fitting))
    offers = [Offer(words.use_scale(fits), (("scale", quantity.exact(fitting.scale)),))]
    turned = next(_turned(case, plans), "") if own else ""
    if turned:
        offers.append(Offer(words.turn_paper(turned), (("own-way", turned),)))
    paper = plan.layout.paper
    papers = papers_that_take(plan.construction, case.picture, plan.scale, paper, case.ways(), case.printed)
    larger = papers[0] if papers else ""
    blank = not own and any(
        fits_paper(one.construction, case.picture, one.scale, paper, ORIENTATIONS, OWN_PAPER) for one in plans
    )
    if blank:
        offers.append(Offer(words.draw_on_own(paper), (("own-paper", paper),)))
    if larger:
        offers.append(Offer(words.use_paper(larger), (("own-paper" if own else "paper", larger),)))
    fits_on = words.takers(paper, turned, larger, blank=blank)
    message = words.does_not_fit(scale_text, paper, over_text(plan.fit), fits, fits_on)
    return Fault("scale", case.problem.typed["scale"], message, offers=tuple(offers))


def _turned(case: Scalable, plans: Sequence[Plan]) -> Iterator[str]:
    """Yield the orientations, other than the chosen one, in which a drawing fits its paper at its scale."""
    for way in ORIENTATIONS:
        drawings = (plan.construction for plan in plans)
        shape = plans[0].scale, plans[0].layout.paper, (way,), case.printed
        if way not in case.ways() and any(fits_paper(drawing, case.picture, *shape) for drawing in drawings):
            yield way


def _second_too_large(notation: Notation, typed: str, plan: Plan, fitting: Plan) -> Fault:
    """Return the fault of a companions' scale that does not fit, with one that fits. Raises TypeError without
    companions."""
    if notation.companions is None:
        raise TypeError("there are no companions")
    writing = notation.companions.writing
    scale_text, fits = writing.scale(plan.second), writing.scale(fitting.second)
    offer = Offer(words.use_scale(fits), ((SECOND, quantity.exact(fitting.second)),))
    message = sum_words.second_does_not_fit(scale_text, fits, notation.companions.words.plural)
    return Fault(SECOND, typed, message, offers=(offer,))
