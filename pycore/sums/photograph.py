"""What is needed to judge a photograph of a drawing: the right drawing, and the marks of its sheet."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pycore.constructions.names import SUM_KEY
from pycore.geometry import Point
from pycore.practice.drawn import ReferenceDrawing
from pycore.sheet import compose, marks
from pycore.sums.page import SumPage
from pycore.sums.sheet import look_of
from pycore.sums.wording import Notation
from pycore.words.phrase import Phrase


@dataclass(frozen=True, slots=True)
class PhotoTask:
    """A drawing to be judged: the symbol of its result, the places (mm) of the sheet's marks by number, those that
    sheets printed before had, that of the common point, and the number format."""

    drawing: ReferenceDrawing
    symbol: Phrase
    numbered: tuple[tuple[int, Point], ...]
    older: tuple[tuple[int, Point], ...]
    origin: Point
    notation: Notation
    paper: tuple[str, str]
    """Its size and orientation."""
    ring: float
    older_ring: float
    """How wide a mark is (mm), of today and of before."""
    own: bool
    """Whether the paper is the learner's own: it has no marks."""

    @property
    def marks(self) -> tuple[Point, ...]:
        """The places of the marks, clockwise from the upper left."""
        return tuple(place for _, place in self.numbered)


def photo_task(page: SumPage[Any], form: Mapping[str, str]) -> PhotoTask:
    """Return what a page's form asks to be drawn. Raises InputError."""
    case = page.case(form)
    plan = case.sheet_plan()
    stand, _ = compose.settled(plan, look_of(case))
    tags = {**case.notation.tags, "reference": case.notation.reference}
    drawing = ReferenceDrawing(
        plan.construction, plan.picture, plan.factor, plan.scale, case.hand,
        plan.factor * case.scatter(plan).half_width, tags,
    )  # fmt: skip
    ring, older_ring = (2.0 * size.reach for size in (marks.size_of_marks(plan.layout), marks.LARGE))
    paper, own = (plan.layout.paper, plan.layout.orientation), case.on_own_paper
    places, older = (
        () if own else marks.numbered(plan.layout, stand.origin, edition) for edition in marks.EDITIONS
    )
    symbol, notation = case.notation.tags[SUM_KEY], case.notation
    return PhotoTask(drawing, symbol, places, older, stand.origin, notation, paper, ring, older_ring, own)
