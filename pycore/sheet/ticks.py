"""Ticks across a line, by which lines can be told apart in a grey print."""

from collections.abc import Iterable, Sequence

from pycore import geometry
from pycore.drawing import Ink, Line
from pycore.geometry import Point
from pycore.sheet.labels import Segment
from pycore.sheet.media import Style

TICK_SLANT = 62.0
SHARES = (0.46, 0.56, 0.36, 0.66, 0.28, 0.76)
"""Where along a line its ticks may be, in order of preference."""


def ticks(
    start: Point, end: Point, count: int, width: float, ink: Ink, style: Style, share: float = SHARES[0]
) -> list[Line]:
    """Slanted ticks across a line, near its middle: one for the first phasor, two for the second."""
    degrees = geometry.direction(start, end)
    middle = start.plus(end.minus(start).times(share))
    lines: list[Line] = []
    for index in range(count):
        at = middle.moved((index - (count - 1) / 2) * style.tick_gap, degrees)
        half = style.tick / 2
        slant = degrees + TICK_SLANT
        lines.append(Line(at.moved(-half, slant), at.moved(half, slant), width, ink))
    return lines


def free_share(start: Point, end: Point, drawn: Sequence[Segment], margin: float) -> float:
    """Return where along a line its ticks are clear, by a margin (mm), of the lines that cross it."""
    step = end.minus(start)
    return next((share for share in SHARES if _is_clear(start.plus(step.times(share)), drawn, margin)), SHARES[0])


def _is_clear(at: Point, drawn: Iterable[Segment], margin: float) -> bool:
    """Return whether a place is further than a margin from all strokes."""
    left, right, low, high = at.x - margin, at.x + margin, at.y - margin, at.y + margin
    for piece in drawn:
        (ax, ay), (bx, by) = piece.start, piece.end
        # Most pieces lie wholly to one side, and need no closer look.
        aside = (ax < left and bx < left) or (ax > right and bx > right)
        if aside or (ay < low and by < low) or (ay > high and by > high):
            continue
        if geometry.segment_distance(at, piece.start, piece.end) <= margin:
            return False
    return True
