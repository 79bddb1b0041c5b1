"""Registration marks: small ringed discs at known places, by which a photograph of a sheet is measured.

They stand on the frame of the drawing's field, whose line is cleared for them: its corners are the widest base there
is, and four marks at unequal shares of its sides say which way up the sheet lies. Sheets printed before had larger
marks inside the field; their places follow from the same layout, and photographs of them are read for ever.
"""

from dataclasses import dataclass

from pycore import geometry
from pycore.drawing import Circle, Group, Item
from pycore.geometry import Box, Point
from pycore.sheet.media import PRINTABLE_EDGE, Layout

MOST_CLEARED = 3.75
"""The largest radius, mm, within which the frame's line is cleared."""


@dataclass(frozen=True, slots=True)
class MarkSize:
    """Radius of a mark's disc, and radius and width of its ring."""

    disc: float
    ring: float
    width: float

    @property
    def reach(self) -> float:
        """Radius of a complete mark."""
        return self.ring + self.width / 2

    @property
    def cleared(self) -> float:
        """Within this radius the frame's line is cleared."""
        return min(self.reach + 1.0, MOST_CLEARED)


SMALL, LARGE = MarkSize(1.05, 2.3, 0.6), MarkSize(1.2, 2.6, 0.7)
LARGE_PAPER = 250.0
"""From this short side on marks are larger: a photograph of the whole sheet shows a millimetre in fewer pixels."""
TOP_SHARE, RIGHT_SHARE, BOTTOM_SHARE, LEFT_SHARE = 12 / 37, 47 / 76, 31 / 37, 4 / 19
"""Where a mark stands in each side of the field: from the left, or from the top."""
FROM_START = 12.0
"""A mark nearer than this to the starting point is left out: an arrow would run through it."""
OLD_REACH = 2.95
NOW, BEFORE = "now", "before"
EDITIONS = (NOW, BEFORE)
"""The marks that are printed, and those of sheets printed before."""


def _on_the_field(layout: Layout) -> tuple[Point, ...]:
    """The eight places, clockwise from the upper left corner."""
    left, bottom, right, top = layout.field
    wide, high = right - left, top - bottom
    return (
        Point(left, top),
        Point(left + TOP_SHARE * wide, top),
        Point(right, top),
        Point(right, top - RIGHT_SHARE * high),
        Point(right, bottom),
        Point(left + BOTTOM_SHARE * wide, bottom),
        Point(left, bottom),
        Point(left, top - LEFT_SHARE * high),
    )


def _inside_the_field(layout: Layout) -> tuple[Point, ...]:
    """The eight places of sheets printed before, clockwise from the upper left corner: from the check bars that these
    sheets had, round the figure's area."""
    frame, area, note = layout.frame, layout.area, layout.style.note
    short = layout.small or (0.0 < layout.style.column and area.width < 124.0 + 6.5 * note)
    bar = 50.0 if short else 100.0
    upright_y = min(area.bottom + 3.0, layout.height - PRINTABLE_EDGE - bar)
    level_x, level_y = min(area.left + 8.0, layout.width - PRINTABLE_EDGE - bar), area.bottom - max(6.0, 1.4 * note)
    left = max(frame.left + 6.0, PRINTABLE_EDGE + OLD_REACH)
    top = frame.top - OLD_REACH - 1.2
    # Beside a column of words the area ends 2 mm before them; at the frame the frame itself is in the way.
    right = area.right - (1.0 if area.right + 1.0 < frame.right else OLD_REACH + 0.5)
    bottom = level_y + 3.5
    bar_end = level_x + bar + 14.0 * note / 2.5
    return (
        Point(left, top),
        Point(left + 0.35 * (right - left), top),
        Point(right, top),
        Point(right, (area.bottom + top) / 2 + 12.0),
        Point(right, bottom),
        Point((bar_end + right) / 2, bottom),
        Point(left, bottom),
        Point(left, (upright_y + bar + top) / 2),
    )


def numbered(layout: Layout, start: Point, edition: str = NOW) -> tuple[tuple[int, Point], ...]:
    """Return the places of a sheet's marks with their numbers.

    Places in mm from the sheet's lower left corner, clockwise from the upper left; 0, 2, 4 and 6 are the corners.
    ``start``: the starting point of the drawing.
    """
    every = _on_the_field(layout) if edition == NOW else _inside_the_field(layout)
    return tuple(
        (number, place) for number, place in enumerate(every) if geometry.distance(place, start) > FROM_START
    )


def size_of_marks(layout: Layout) -> MarkSize:
    """Return the size of the marks on a paper."""
    return LARGE if min(layout.width, layout.height) > LARGE_PAPER else SMALL


def boxes(layout: Layout) -> tuple[Box, ...]:
    """Return the rectangles that marks take, with the clearing round them: other furniture keeps out of them on every
    kind of sheet."""
    return tuple(Box(*place, *place).grown(size_of_marks(layout).cleared) for place in _on_the_field(layout))


def marks(layout: Layout, start: Point) -> tuple[Group, ...]:
    """The marks as they are drawn, over the frame."""
    size, items = size_of_marks(layout), list[Item]()
    for _, place in numbered(layout, start):
        items += [
            Circle(place, size.cleared, 0.0, fill="sheet"), Circle(place, size.ring, size.width),
            Circle(place, size.disc, 0.0, fill="ink"),
        ]  # fmt: skip
    return (Group(tuple(items), name="registration"),)
