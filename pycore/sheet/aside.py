"""Phasors that lie on others are drawn beside them, so that each can be seen. In mm.

The exact line of such a phasor stays at its true place, where nothing shows of it below the other; its shaft and head
stand aside, and two thin lines carry its ends over.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from pycore import geometry
from pycore.drawing import Arrow, Circle, Group, Item, Line
from pycore.geometry import Box, Point
from pycore.writers.parts import arrow_parts

ON_ONE_LINE = 0.6
"""Two phasors lie on one line if the ends of one are at most this far from the other's line."""
OVERLAP = 2.0
"""Phasors that share less of a line are drawn where they are."""
BEYOND = 2.0
"""How far a thin line reaches beyond the arrow whose end it carries over."""
RING = 0.9
HIDDEN = 0.02
"""Width of the exact line, which lies on the other phasor."""


@dataclass(slots=True)
class Lanes:
    """The arrows drawn so far, each with the lane in which it stands: 0 at its true place, 1 and more aside.

    ``points``: all points of the figure, from which arrows stand away; ``room``: in which they should stay.
    """

    points: Sequence[Point]
    room: Box | None
    step: float
    drawn: list[tuple[Point, Point, int]] = field(default_factory=list)

    def shift(self, start: Point, tip: Point) -> Point | None:
        """Note an arrow; return by how much it stands aside, or None if it is drawn at its true place."""
        taken = {lane for low, high, lane in self.drawn if overlap(start, tip, low, high) > OVERLAP}
        lane = next(number for number in range(len(taken) + 1) if number not in taken)
        self.drawn.append((start, tip, lane))
        if lane == 0:
            return None
        across = Point(-(tip.y - start.y), tip.x - start.x).times(1.0 / geometry.distance(start, tip))
        weight = math.fsum(geometry.dot(point.minus(start), across) for point in self.points)
        away = across.times(-1.0 if weight > 1e-6 else 1.0)
        shift = away.times(self.step * lane)
        other = shift.times(-1.0)
        return other if self._leaves(start, tip, shift) and not self._leaves(start, tip, other) else shift

    def _leaves(self, start: Point, tip: Point, shift: Point) -> bool:
        return self.room is not None and not self.room.grown(-BEYOND).holds(
            geometry.bounds([start.plus(shift), tip.plus(shift)])
        )


def overlap(start: Point, tip: Point, low: Point, high: Point) -> float:
    """Return how long two arrows lie on each other, mm; 0 if they are not on one line."""
    length, other = geometry.distance(start, tip), geometry.distance(low, high)
    if min(length, other) <= OVERLAP:
        return 0.0
    # The longer one's line is the better known.
    if other > length:
        start, tip, low, high, length = low, high, start, tip, other
    # Written out: asked of every pair of arrows.
    (x, y), share = start, 1.0 / length
    along, up = (tip[0] - x) * share, (tip[1] - y) * share
    shares = []
    for end_x, end_y in (low, high):
        if math.fabs((end_x - x) * -up + (end_y - y) * along) > ON_ONE_LINE:
            return 0.0
        shares.append((end_x - x) * along + (end_y - y) * up)
    return max(0.0, min(length, max(shares)) - max(0.0, min(shares)))


def aside(arrow: Arrow, shift: Point, key: str, *, copy: bool) -> Group:
    """Return the group of a phasor with its exact line at its true place and all that is seen of it aside."""
    moved = Arrow(arrow.tail.plus(shift), arrow.tip.plus(shift), arrow.width, arrow.ink, arrow.head, arrow.cased)
    exact = Arrow(arrow.tail, arrow.tip, HIDDEN, arrow.ink, 0.0)
    return Group((exact, *arrow_parts(moved).visible), phasor=key, copy=copy)


def carried(arrow: Arrow, shift: Point) -> tuple[Item, ...]:
    """Return the thin lines that carry a phasor's ends over, and the ring at its true tip."""
    reach = geometry.distance(Point(0.0, 0.0), shift)
    beyond = shift.times((reach + BEYOND) / reach)
    lines = tuple(Line(end, end.plus(beyond), 0.18, "ink-2") for end in (arrow.tail, arrow.tip))
    return (*lines, Circle(arrow.tip, RING, 0.25, "ink"))
