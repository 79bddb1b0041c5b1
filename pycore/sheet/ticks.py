"""Ticks across a line, by which lines can be told apart in a grey print."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from pycore import geometry
from pycore.drawing import Ink, Line
from pycore.geometry import Point
from pycore.sheet.labels import Segment
from pycore.sheet.styles import Style

TICK_SLANT = 62.0
CROSS = 1.4
"""Half the cross at a tip on an overlay, mm."""
MIDDLE = 0.5
ROOM_FOR_LABEL = 15.0
LONG_ENOUGH = 9.0
"""A shorter piece of a line, mm, is no place for a label."""
NEAR = 2.2
"""A stroke that ends this near a line, mm, is one that its ticks keep away from."""


@dataclass(frozen=True, slots=True)
class TickedLine:
    """A line that gets its ticks when everything is drawn: its step and its place among that step's items."""

    step: int
    place: int
    start: Point
    end: Point
    count: int
    width: float
    ink: Ink
    owner: str
    before: int
    """How many segments were on the paper before it."""


def ticks(
    start: Point, end: Point, count: int, width: float, ink: Ink, style: Style, share: float = MIDDLE
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


def tip_cross(tip: Point) -> tuple[Line, Line]:
    """On an overlay the tip of a phasor that is set off has a cross, by which it is compared."""
    level, upright = geometry.cross_strokes(tip, CROSS)
    return Line(*level), Line(*upright)


def free_shares(
    start: Point, end: Point, drawn: Iterable[Segment], owner: str, *, label: bool = False
) -> tuple[float, ...]:
    """Return the middles of the pieces of a line that nothing crosses or ends in, the longest piece first: there its
    ticks stand, and where these are drawn, its ``label``.

    ``drawn``: everything on the sheet; of it the line's own piece has ``owner``.
    """
    length = geometry.distance(start, end)
    cuts = [0.0, length]
    x, y = start
    step_x, step_y = (end.x - x) / length, (end.y - y) / length
    for piece in drawn:
        (ax, ay), (bx, by), of = piece.start, piece.end, piece.owner
        # Written out: asked two thousand times for each sheet, and most strokes lie wholly to one side.
        high = (ay - y) * step_x - (ax - x) * step_y
        low = (by - y) * step_x - (bx - x) * step_y
        if (high > NEAR and low > NEAR) or (high < -NEAR and low < -NEAR) or of == owner:
            continue
        first, second = (ax - x) * step_x + (ay - y) * step_y, (bx - x) * step_x + (by - y) * step_y
        cuts += [at for at in _cuts(first, high, second, low) if 0.0 < at < length]
    cuts.sort()
    pieces = [(high - low, (low + high) / 2) for low, high in pairwise(cuts)]
    # Of pieces that are alike, the one nearer to the middle; for a label all are that have room for it.
    most = ROOM_FOR_LABEL if label else length
    pieces.sort(key=lambda one: (-round(min(one[0], most)), math.fabs(one[1] - length / 2)))
    return tuple(at / length for long, at in pieces if long >= LONG_ENOUGH) or (pieces[0][1] / length,)


def _cuts(first: float, high: float, second: float, low: float) -> list[float]:
    """Return where a stroke meets a line or comes near it; its ends are given along the line and off it, mm."""
    found = [at for at, off in ((first, high), (second, low)) if math.fabs(off) <= NEAR]
    if high * low < 0.0:
        found.append(first + (second - first) * high / (high - low))
    return found
