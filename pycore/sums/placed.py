"""Where the figure of a sheet stands on its page, for what is laid over it."""

from dataclasses import dataclass

from pycore.geometry import Box, Point
from pycore.quantity import NumberFormat
from pycore.sheet.kinds import CONSTRUCTION
from pycore.sums.case import SumCase
from pycore.sums.request import SheetRequest
from pycore.sums.sheet import composed_of


@dataclass(frozen=True, slots=True)
class PlacedFigure:
    """Where a figure stands on its page, mm from the lower left corner: its starting point, mm for each unit, the area
    that it has, the size of the page; and how its amounts are written."""

    start: Point
    factor: float
    area: Box
    page: Point
    writing: NumberFormat


def placed_in(case: SumCase) -> PlacedFigure:
    """Return where the figure of a case's sheet stands."""
    plan = case.sheet_plan()
    stand = composed_of(case, plan, SheetRequest(CONSTRUCTION)).stand
    size = Point(plan.layout.width, plan.layout.height)
    return PlacedFigure(stand.origin, plan.factor, plan.layout.area, size, case.notation.writing)
