"""The instruments of a drawing on the screen: pictures in true size, and which of them a construction needs."""

from collections.abc import Mapping
from typing import Any

from pycore.constructions.construction import Construction
from pycore.constructions.moves import CrossArcs, DrawParallel, DropPerpendicular, ReadAngle, TurnAngle
from pycore.drawing import Group, Page
from pycore.geometry import ORIGIN, Point, distance
from pycore.sheet.instruments import (
    BASE,
    RADIUS,
    RULER_BEFORE_ZERO,
    RULER_LENGTH,
    RULER_WIDTH,
    Pose,
    protractor,
    ruler,
)
from pycore.sheet.laying import LONG_RULER
from pycore.sheet.set_squares import EQUAL, LONGER, SHARP, set_square
from pycore.sums.drawn_here import DrawingTask
from pycore.writers import svg

MARGIN = 6.0
"""Round an instrument in its own picture, mm."""
RULER, PROTRACTOR, SQUARE_60, SQUARE_45, COMPASSES = "ruler", "protractor", "square-60", "square-45", "compasses"
NEEDED_FOR: dict[str, tuple[type, ...]] = {
    PROTRACTOR: (TurnAngle, ReadAngle),
    SQUARE_60: (DrawParallel, DropPerpendicular),
    COMPASSES: (CrossArcs,),
}
WIDEST, OPENED = 250.0, 40.0
"""How far (mm) the compasses open, and how far at first."""


def needed(construction: Construction) -> tuple[str, ...]:
    """The instruments that a construction needs; the others are one press away."""
    kinds = {type(move) for move in construction.moves}
    return (RULER, *(name for name, moves in NEEDED_FOR.items() if any(kind in kinds for kind in moves)))


def instruments(task: DrawingTask, form: Mapping[str, str]) -> dict[str, dict[str, Any]]:
    """Every instrument as a picture in true size, and where its zero is in it (mm from the left and from the top)."""
    points = task.plan.construction.figure.points.values()
    long = max(distance(ORIGIN, point) for point in points) * task.plan.factor > RULER_LENGTH
    return {
        RULER: _ruler(LONG_RULER if long else RULER_LENGTH),
        PROTRACTOR: _protractor(circle=form.get("protractor") == "360"),
        SQUARE_60: _square(SHARP, 30, LONGER if long else 1.0),
        SQUARE_45: _square(EQUAL, 45, LONGER if long else 1.0),
        # Its picture changes as it opens: the page draws its legs.
        COMPASSES: {"svg": "", "at": [0.0, 0.0], "most": WIDEST, "open": OPENED},
    }


def _tool(drawn: Group, page: tuple[float, float], zero: Point, **more: Any) -> dict[str, Any]:
    width, height = page
    picture = svg.write(Page(width, height, (drawn,)), prefix="draw-tool", role="view", view="tool")
    return {"svg": picture, "at": [zero.x, height - zero.y], **more}


def _ruler(length: float) -> dict[str, Any]:
    zero = Point(RULER_BEFORE_ZERO + MARGIN, RULER_WIDTH + MARGIN)
    size = length + 2 * (RULER_BEFORE_ZERO + MARGIN), RULER_WIDTH + 2 * MARGIN
    return _tool(ruler(Pose(zero, 0.0), length, tint=True), size, zero, length=length, before=RULER_BEFORE_ZERO,
                 width=RULER_WIDTH)  # fmt: skip


def _protractor(*, circle: bool) -> dict[str, Any]:
    side = 2 * (RADIUS + MARGIN)
    height = side if circle else RADIUS + BASE + 2 * MARGIN
    zero = Point(side / 2, side / 2 if circle else BASE + MARGIN)
    drawn = protractor(Pose(zero, 0.0), circle=circle, tint=True)
    return _tool(drawn, (side, height), zero, radius=RADIUS, base=BASE, circle=circle)


def _square(legs: tuple[float, float], sharp: int, larger: float) -> dict[str, Any]:
    legs = legs[0] * larger, legs[1] * larger
    size = legs[0] + 2 * MARGIN, legs[1] + 2 * MARGIN
    zero = Point(MARGIN, legs[1] + MARGIN)
    return _tool(set_square(Pose(zero, 0.0), legs, sharp), size, zero, legs=list(legs))
