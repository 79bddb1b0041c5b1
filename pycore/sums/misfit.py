"""The chosen plan, and the faults of scales that do not fit the paper, each with an offer of what fits."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pycore import quantity
from pycore.errors import Fault, Offer
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.plan import Plan
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


def too_large(notation: Notation, typed: str, plan: Plan, fitting: Plan, papers: Sequence[str]) -> Fault:
    """Return the fault of a scale that does not fit: by how much, and what fits.

    ``fitting``: the plan with a scale that fits. ``papers``: other sizes that take the scale, the nearest first.
    """
    over = [f"{math.ceil(side)}{NO_BREAK_SPACE}mm" if side > 1e-3 else "" for side in plan.fit.over]
    scale_text, fits = notation.writing.scale(plan.scale), notation.writing.scale(fitting.scale)
    offers = [Offer(words.use_scale(fits), (("scale", quantity.exact(fitting.scale)),))]
    offers += [Offer(words.use_paper(paper), (("paper", paper),)) for paper in papers[:1]]
    message = words.does_not_fit(
        scale_text, plan.layout.paper, words.too_wide(*over), fits, papers[0] if papers else ""
    )
    return Fault("scale", typed, message, offers=tuple(offers))


def second_too_large(notation: Notation, typed: str, plan: Plan, fitting: Plan) -> Fault:
    """Return the fault of a companions' scale that does not fit, with one that fits. Raises TypeError without
    companions."""
    if notation.companions is None:
        raise TypeError("there are no companions")
    writing = notation.companions.writing
    scale_text, fits = writing.scale(plan.second), writing.scale(fitting.second)
    offer = Offer(words.use_scale(fits), ((SECOND, quantity.exact(fitting.second)),))
    message = sum_words.second_does_not_fit(scale_text, fits, notation.companions.words.plural)
    return Fault(SECOND, typed, message, offers=(offer,))
