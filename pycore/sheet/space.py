"""The space that a construction takes of a sheet.

That of a simple method follows from sums of its phasors alone, so that a scale which suits every method costs no
constructions that nobody sees.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from pycore import geometry
from pycore.constructions.construction import Arm, Construction, DrawingConvention, flattest, nearly_zero, sum_of
from pycore.constructions.methods import COMPONENTS, THE_RETURNING, TIP_TO_TAIL
from pycore.constructions.tip_to_tail import chain_of
from pycore.geometry import ORIGIN, Box, Point
from pycore.sheet.strokes import REFERENCE_SHARE, figure_box

UPRIGHT = 90.0
"""The flattest crossing of a method whose lines cross at right angles, or not at all."""


@dataclass(frozen=True, slots=True)
class Space:
    """What a construction takes: its rectangle on paper (in the quantity's unit), rows of the sheet's table, and its
    flattest crossing in degrees."""

    box: Box
    rows: int
    sharpness: float


def table_rows(construction: Construction) -> int:
    """Return the number of rows of a sheet's table: arms, first diagonal if there is one, sum, returning phasor."""
    returning = construction.resultant == THE_RETURNING and not construction.closed
    more = len(construction.companions) + construction.further
    return len(construction.arms) + 1 + ("r" in construction.figure.readings) + returning + more


COMPANION_SHARE = 0.6
"""The room for the longest companion, as a share of the longest arm."""


def space_of(construction: Construction, picture: DrawingConvention, companions: Sequence[Arm] = ()) -> Space:
    """Return the space of a construction with room for companions, whose scale is chosen later."""
    box, rows = figure_box(construction, picture), table_rows(construction) + len(companions)
    if companions:
        longest = max(arm.size for arm in construction.arms)
        largest = max(arm.size for arm in companions)
        tips = [
            ORIGIN.moved(COMPANION_SHARE * longest * arm.size / largest, picture.paper_angle(arm.angle))
            for arm in companions
        ]
        box = geometry.bounds([*box.corners, *tips])
    return Space(box, rows, flattest(construction))


def known_spaces(
    method: str, orders: Iterable[str], arms: tuple[Arm, ...], picture: DrawingConvention, resultant: str
) -> tuple[Space, ...]:
    """Return the space of each order of a method; empty for one that must be carried out to know it."""
    if method not in (TIP_TO_TAIL, COMPONENTS):
        return ()
    closed = nearly_zero(sum_of(arms), arms)
    returning = resultant == THE_RETURNING and not closed
    arrows = {arm: ORIGIN.moved(arm.size, picture.paper_angle(arm.angle)) for arm in arms}
    if method == TIP_TO_TAIL:
        drawn = [_chain(arrows, chain_of(arms, order), picture) for order in orders]
    else:
        drawn = [_on_axes(arrows.values(), closed=closed, returning=returning) for _ in orders]
    return tuple(Space(geometry.bounds(points), len(arms) + 1 + returning, UPRIGHT) for points in drawn)


def _chain(arrows: Mapping[Arm, Point], chain: tuple[Arm, ...], picture: DrawingConvention) -> list[Point]:
    """Return the tips of phasors that follow one another, and of the first direction where it is drawn."""
    tips = [ORIGIN]
    for arm in chain:
        tips.append(tips[-1].plus(arrows[arm]))
    if chain[0].angle != picture.reference:
        longest = max(arm.size for arm in chain)
        tips.append(ORIGIN.moved(longest * REFERENCE_SHARE, picture.paper_angle(picture.reference)))
    return tips


def _on_axes(arrows: Iterable[Point], *, closed: bool, returning: bool) -> list[Point]:
    """Return the tips of phasors from one point, and of their sum; what is marked on the axes lies within them."""
    tips, end = list(arrows), ORIGIN
    for arrow in tips:
        end = end.plus(arrow)
    ends = [] if closed else [end, end.times(-1.0)] if returning else [end]
    return [ORIGIN, *tips, *ends]
