"""Draws a phasor of a second quantity: a double line of long dashes with an open arrowhead.

It can be told from the sum's phasors without colours, and is visible on both sides of an arrow on top of it.
"""

from pycore import geometry
from pycore.constructions.roles import COMPANION
from pycore.drawing import Arrow, Group, Ink, Item, Line, Shape
from pycore.geometry import Point
from pycore.sheet.labels import Segment
from pycore.sheet.styles import Style

OPEN_HEAD, OPEN_HALF = 1.3, 22.0
"""An open arrowhead: its length as a share of a filled one, and half its opening angle in degrees."""
LONG_DASH = (6.0, 1.5)


def companion_strokes(start: Point, tip: Point, key: str, ink: Ink, style: Style) -> tuple[Group, list[Segment]]:
    """Return the group of the phasor ``key``, with a thin line from its tail to exactly its tip, and the segments that
    labels must avoid, mm."""
    degrees = geometry.direction(start, tip)
    size = min(OPEN_HEAD * style.head, 0.6 * geometry.distance(start, tip))
    barbs = [tip.moved(-size, degrees + side * OPEN_HALF) for side in (1, -1)]
    parts: list[Item] = [
        Arrow(start, tip, 0.1, ink, 0.0),
        Shape((barbs[0], tip, barbs[1]), style.open_wide, ink, None, closed=False),
    ]
    pieces = [Segment(start, tip, key, 0.1)]
    neck = tip.moved(-size, degrees)
    for side, barb in zip((1, -1), barbs, strict=True):
        ends = [end.moved(side * style.rail, degrees + 90.0) for end in (start, neck)]
        parts.append(Line(ends[0], ends[1], style.narrow, ink, LONG_DASH))
        pieces += [
            Segment(ends[0], ends[1], "", style.narrow / 2),
            Segment(barb, tip, "", style.open_wide / 2),
        ]
    return Group(tuple(parts), phasor=key, name=COMPANION), pieces
