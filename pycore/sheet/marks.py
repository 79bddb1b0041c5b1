"""Registration marks: small ringed discs at known places, by which a photograph of a sheet is measured.

They surround the figure's area, clear of everything printed. Their order is asymmetric on purpose, so that a sheet
photographed upside down is recognised. A printer that loses 5 mm at the edges, or 17 mm at the foot, loses none of
them.
"""

from pycore import geometry
from pycore.drawing import Circle, Group, Item
from pycore.geometry import Point
from pycore.sheet.media import PRINTABLE_EDGE, Layout

DISC = 1.2
RING = 2.6
RING_WIDTH = 0.7
REACH = RING + RING_WIDTH / 2
"""Radius of a complete mark."""
CLEAR = REACH + 1.0
FROM_START = 12.0
"""A mark nearer than this to the starting point is left out: an arrow would run through it."""
BAR_WORDS = 14.0
"""How far the words of the horizontal bar extend beyond it, mm."""


def _all_places(layout: Layout) -> tuple[Point, ...]:
    """The eight places, clockwise from the upper left corner."""
    frame, (upright_x, upright_y, level_x, level_y) = layout.frame, layout.bars
    left = max(upright_x + 2.0, PRINTABLE_EDGE + REACH)
    top = frame.top - CLEAR - 0.2
    # Beside a column of words the area ends 2 mm before them; at the frame the frame itself is in the way.
    beside = layout.area.right + 1.0 < frame.right
    right = layout.area.right - (1.0 if beside else CLEAR - 0.5)
    bottom = level_y + 3.5
    bar_end = level_x + layout.bar + BAR_WORDS * layout.style.note / 2.5
    return (
        Point(left, top),
        Point(left + 0.35 * (right - left), top),
        Point(right, top),
        Point(right, (layout.area.bottom + top) / 2 + 12.0),
        Point(right, bottom),
        Point((bar_end + right) / 2, bottom),
        Point(left, bottom),
        Point(left, (upright_y + layout.bar + top) / 2),
    )


def numbered(layout: Layout, start: Point) -> tuple[tuple[int, Point], ...]:
    """Return the places of a sheet's marks with their numbers.

    Places in mm from the sheet's lower left corner, clockwise from the upper left; 0, 2, 4 and 6 are the corners.
    ``start``: the starting point of the drawing.
    """
    return tuple(
        (number, place)
        for number, place in enumerate(_all_places(layout))
        if geometry.distance(place, start) > FROM_START
    )


def places(layout: Layout, start: Point) -> tuple[Point, ...]:
    """Return the places of a sheet's marks without their numbers."""
    return tuple(place for _, place in numbered(layout, start))


def marks(layout: Layout, start: Point) -> tuple[Group, ...]:
    """The marks as they are drawn."""
    items: list[Item] = []
    for place in places(layout, start):
        items += [Circle(place, DISC, 0.0, fill="ink"), Circle(place, RING, RING_WIDTH)]
    return (Group(tuple(items), name="registration"),)
