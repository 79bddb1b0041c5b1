"""The neutral current’s drawing as a photograph is judged: what was to be drawn, where its sheet has marks."""

from collections.abc import Mapping
from dataclasses import dataclass

from pycore.calculators.neutral_case import HANDS, NeutralCase
from pycore.calculators.neutral_problem import read_problem
from pycore.calculators.neutral_sheet import look_of
from pycore.calculators.written import Telling
from pycore.geometry import Point
from pycore.practice.drawn import Drawing
from pycore.sheet import compose, marks
from pycore.words import Phrase


@dataclass(frozen=True, slots=True)
class Wanted:
    """A drawing to be judged, its result's symbol and amount, the places of its sheet's marks and of the star
    point (mm), and how numbers are written."""

    drawing: Drawing
    symbol: Phrase
    marks: tuple[Point, ...]
    origin: Point
    telling: Telling


def wanted(form: Mapping[str, str]) -> Wanted:
    """What a form asks to be drawn. Raises InputError."""
    case = NeutralCase(read_problem({**form, "sheet": compose.PROBLEM}))
    plan = case.shown()
    stand, _ = compose.settled(plan, look_of(case))
    tags = {**case.telling.tags, "reference": case.telling.reference}
    drawing = Drawing(
        plan.construction, plan.picture, plan.factor, plan.scale, HANDS[case.problem["hand"]],
        plan.factor * case.spread(plan).half_width, tags,
    )  # fmt: skip
    places = marks.places(plan.layout, stand.origin)
    return Wanted(drawing, case.telling.tags["sum"], places, stand.origin, case.telling)
