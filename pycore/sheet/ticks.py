"""Ticks across a line, by which lines can be told apart in a grey print."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from pycore import geometry
from pycore.drawing import Ink, Line
from pycore.geometry import ORIGIN, Point
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
_ROUNDING = 1e-6


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
    half = ORIGIN.moved(style.tick / 2, degrees + TICK_SLANT)
    for index in range(count):
        at = middle.moved((index - (count - 1) / 2) * style.tick_gap, degrees)
        lines.append(Line(at.minus(half), at.plus(half), width, ink))
    return lines


def tip_cross(tip: Point) -> tuple[Line, Line]:
    """On an overlay the tip of a phasor that is set off has a cross, by which it is compared."""
    level, upright = geometry.cross_strokes(tip, CROSS)
    return Line(*level), Line(*upright)


def near_strokes(start: Point, end: Point, drawn: Iterable[Segment]) -> list[Segment]:
    """Return the strokes that come near a line, however far it were drawn: most lie wholly to one side."""
    length = geometry.distance(start, end)
    x, y = start
    step_x, step_y = (end.x - x) / length, (end.y - y) / length
    own = y * step_x - x * step_y
    above, below = own + NEAR + _ROUNDING, own - NEAR - _ROUNDING
    near = []
    # Written out: it is asked often.
    for piece in drawn:
        (ax, ay), (bx, by), _owner, _half_width = piece
        one, other = ay * step_x - ax * step_y, by * step_x - bx * step_y
        if (one < above and other > below) or (other < above and one > below):
            near.append(piece)
    return near


def free_shares(
    start: Point, end: Point, near: Iterable[Segment], owner: str, *, label: bool = False
) -> tuple[float, ...]:
    """Return the middles of the pieces of a line that nothing crosses or ends in, the longest piece first: there its
    ticks stand, and where these are drawn, its ``label``.

    ``near``: ``near_strokes`` of the line, or more; of them the line's own piece has ``owner``.
    """
    length = geometry.distance(start, end)
    cuts = [0.0, length]
    x, y = start
    step_x, step_y = (end.x - x) / length, (end.y - y) / length
    for (ax, ay), (bx, by), of, _half_width in near:
        if of == owner:
            continue
        high = (ay - y) * step_x - (ax - x) * step_y
        low = (by - y) * step_x - (bx - x) * step_y
        if (high > NEAR and low > NEAR) or (high < -NEAR and low < -NEAR):
            continue
        first, second = (ax - x) * step_x + (ay - y) * step_y, (bx - x) * step_x + (by - y) * step_y
        # Where the stroke ends near the line, and where it meets it.
        if 0.0 < first < length and -NEAR <= high <= NEAR:
            cuts.append(first)
        if 0.0 < second < length and -NEAR <= low <= NEAR:
            cuts.append(second)
        if high * low < 0.0 and 0.0 < (met := first + (second - first) * high / (high - low)) < length:
            cuts.append(met)
    cuts.sort()
    pieces = [(high - low, (low + high) / 2) for low, high in pairwise(cuts)]
    pieces = [piece for piece in pieces if piece[0] >= LONG_ENOUGH] or pieces
    # Of pieces that are alike, the one nearer to the middle; for a label all are that have room for it.
    most = ROOM_FOR_LABEL if label else length
    pieces.sort(key=lambda one: (-round(min(one[0], most)), math.fabs(one[1] - length / 2)))
    longest = pieces[0][0]
    return tuple([at / length for _, at in (pieces if longest >= LONG_ENOUGH else pieces[:1])])
