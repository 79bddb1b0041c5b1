"""Ticks across a line, by which a grey print tells the lines apart."""

from pycore import geometry
from pycore.drawing import Ink, Line
from pycore.geometry import Point
from pycore.sheet.media import Style

TICK_SLANT = 62.0


def ticks(
    start: Point, end: Point, count: int, width: float, ink: Ink, style: Style, share: float = 0.46
) -> list[Line]:
    """Slanted ticks across a line, near its middle: one for the first phasor, two for the second."""
    degrees = geometry.direction(start, end)
    middle = start.plus(end.minus(start).times(share))
    made: list[Line] = []
    for index in range(count):
        at = middle.moved((index - (count - 1) / 2) * style.tick_gap, degrees)
        half = style.tick / 2
        slant = degrees + TICK_SLANT
        made.append(Line(at.moved(-half, slant), at.moved(half, slant), width, ink))
    return made
