"""Where a label can stand: clear of every line, arc and text, nearest to what it names.

Candidates are tried in the order of their cost and the first clear one is taken; what finds
no place near its line stands off on a leader; what finds none at all is left to the table.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, field

from pycore import geometry
from pycore.drawing import Line, Text
from pycore.geometry import ORIGIN, Box, Point
from pycore.sheet.lettered import box_of, text, width_of
from pycore.words import Phrase

FRACTIONS = (0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1)
GAPS = (1.6, 2.8, 4.4, 6.5)
LEADER_GAPS = (9.0, 13.0, 18.0, 25.0, 34.0)
CLEARANCE = 0.6


@dataclass(frozen=True, slots=True)
class Segment:
    """A drawn straight piece that no label may touch; ``owner`` names what it belongs to."""

    start: Point
    end: Point
    owner: str = ""
    half_width: float = 0.25


@dataclass(frozen=True, slots=True)
class Wanted:
    """A label that wants a place along a segment (or round an arc's middle).

    ``owner`` is the segment it names; ``anchors`` are (point on it, direction away from it)
    in order of preference; ``capitals`` the height of its capitals.
    """

    owner: str
    phrase: Phrase
    capitals: float
    anchors: tuple[tuple[Point, float], ...]
    step: int
    leaders: bool = True


@dataclass(frozen=True, slots=True)
class Placed:
    """A label in its place, with its leader if it had to stand off."""

    wanted: Wanted
    text: Text
    box: Box
    leader: Line | None = None


@dataclass(slots=True)
class Field:
    """The drawing area and all that stands in it."""

    area: Box
    segments: list[Segment] = field(default_factory=list)
    boxes: list[Box] = field(default_factory=list)

    def clear(self, box: Box) -> bool:
        """Whether a text's rectangle touches nothing and stays inside."""
        if not self.area.holds(box):
            return False
        room = box.grown(CLEARANCE)
        if any(room.meets(other) for other in self.boxes):
            return False
        return not any(
            box.grown(CLEARANCE + piece.half_width).meets_segment(piece.start, piece.end)
            for piece in self.segments
        )

    def nearest(self, box: Box, owner: str) -> bool:
        """Whether the text is nearer to its own line than to any other that bears a name."""
        own = other = math.inf
        for piece in self.segments:
            if not piece.owner:
                continue
            distance = _box_to_segment(box, piece)
            if piece.owner == owner:
                own = min(own, distance)
            else:
                other = min(other, distance)
        return own < other or own == math.inf

    def free_line(self, start: Point, end: Point) -> bool:
        """Whether a leader passes no text."""
        return not any(box.meets_segment(start, end) for box in self.boxes)


def _box_to_segment(box: Box, piece: Segment) -> float:
    corners = (
        Point(box.left, box.bottom),
        Point(box.right, box.bottom),
        Point(box.left, box.top),
        Point(box.right, box.top),
        box.centre,
    )
    to_line = min(geometry.segment_distance(place, piece.start, piece.end) for place in corners)
    ends = (_point_to_box(piece.start, box), _point_to_box(piece.end, box))
    return min(to_line, *ends)


def _point_to_box(point: Point, box: Box) -> float:
    dx = max(box.left - point.x, 0.0, point.x - box.right)
    dy = max(box.bottom - point.y, 0.0, point.y - box.top)
    return math.hypot(dx, dy)


def along(start: Point, end: Point, sides: tuple[int, ...] = (1, -1)) -> Iterator[tuple[Point, float]]:
    """Anchors along a straight piece: its middle first, then outwards, both sides."""
    degrees = geometry.direction(start, end)
    step = end.minus(start)
    for share in FRACTIONS:
        for side in sides:
            yield start.plus(step.times(share)), degrees + 90.0 * side


def _standing_off(wanted: Wanted, anchor: Point, degrees: float, gap: float) -> tuple[Text, Box]:
    unit = ORIGIN.moved(1.0, degrees)
    width = width_of(wanted.phrase, wanted.capitals)
    trial = text(wanted.phrase, ORIGIN, wanted.capitals, "middle")
    shape = box_of(trial, wanted.capitals)
    reach = (math.fabs(unit.x) * width + math.fabs(unit.y) * shape.height) / 2
    centre = anchor.plus(unit.times(gap + reach))
    at = Point(centre.x, centre.y - (shape.top + shape.bottom) / 2)
    placed = text(wanted.phrase, at, wanted.capitals, "middle")
    return placed, box_of(placed, wanted.capitals)


def _near(ground: Field, wanted: Wanted) -> Placed | None:
    for gap in GAPS:
        for anchor, degrees in wanted.anchors:
            set_text, box = _standing_off(wanted, anchor, degrees, gap)
            if ground.clear(box) and ground.nearest(box, wanted.owner):
                return Placed(wanted, set_text, box)
    return None


def _on_leader(ground: Field, wanted: Wanted) -> Placed | None:
    for gap in LEADER_GAPS:
        for anchor, degrees in wanted.anchors:
            for lean in (0.0, 40.0, -40.0, 75.0, -75.0):
                set_text, box = _standing_off(wanted, anchor, degrees + lean, gap)
                end = _edge(box, anchor)
                if ground.clear(box) and ground.free_line(anchor, end):
                    return Placed(wanted, set_text, box, Line(anchor, end, 0.18, "ink-2"))
    return None


def _edge(box: Box, towards: Point) -> Point:
    """The point of a text's rectangle nearest to a place, just outside it."""
    outside = box.grown(0.4)
    return Point(
        min(max(towards.x, outside.left), outside.right),
        min(max(towards.y, outside.bottom), outside.top),
    )


def place(ground: Field, wanted: list[Wanted]) -> tuple[list[Placed], list[Wanted]]:
    """Place labels one after the other; returns those placed, and those left to the table."""
    placed: list[Placed] = []
    left: list[Wanted] = []
    for request in wanted:
        found = _near(ground, request)
        if found is None and request.leaders:
            found = _on_leader(ground, request)
        if found is None:
            left.append(request)
            continue
        placed.append(found)
        ground.boxes.append(found.box)
        if found.leader:
            ground.segments.append(Segment(found.leader.start, found.leader.end))
    return placed, left
