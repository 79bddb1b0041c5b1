"""Places labels clear of every line, arc and text, as near as possible to what they name.

Candidates are tried in the order of their cost; the first clear one is used. A label without a place near its line gets
a leader; a label without any place is left to the table.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from pycore import geometry, trig
from pycore.drawing import Line, Text
from pycore.geometry import ORIGIN, Box, Point
from pycore.sheet.lettered import box_of, text
from pycore.words.phrase import Phrase

FRACTIONS = (0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2, 0.9, 0.1)
TIP_LEANS = (0.0, 30.0, -30.0, 60.0, -60.0)
GAPS = (1.6, 2.8, 4.4, 6.5)
LEADER_GAPS = (9.0, 13.0, 18.0, 25.0, 34.0)
CLEARANCE = 0.6


class Segment(NamedTuple):
    """A straight segment that no label may touch; ``owner`` identifies what it belongs to."""

    start: Point
    end: Point
    owner: str = ""
    half_width: float = 0.25


@dataclass(frozen=True, slots=True)
class LabelRequest:
    """A label to place along a segment or around the middle of an arc.

    ``owner``: the segment that it names. ``anchors``: (point on it, direction away from it) in order of preference,
    gone through more than once. ``capitals``: height of the capitals.
    """

    owner: str
    phrase: Phrase
    capitals: float
    anchors: Iterable[tuple[Point, float]]
    step: int
    leaders: bool = True
    optional: bool = False
    """Left out where there is no room near its line."""


@dataclass(frozen=True, slots=True)
class PlacedLabel:
    """A label in its place, with its leader if it had to stand off."""

    request: LabelRequest
    text: Text
    box: Box
    leader: Line | None = None


class _Piece(NamedTuple):
    """A straight piece, the clearance that labels keep from it, and the upright rectangle with that."""

    left: float
    bottom: float
    right: float
    top: float
    segment: Segment
    margin: float


def _piece(segment: Segment) -> _Piece:
    (ax, ay), (bx, by), _owner, half_width = segment
    margin = CLEARANCE + half_width
    left, right = (ax, bx) if ax <= bx else (bx, ax)
    low, high = (ay, by) if ay <= by else (by, ay)
    return _Piece(left - margin, low - margin, right + margin, high + margin, segment, margin)


class LabelArea:
    """The drawing area and all that stands in it."""

    def __init__(self, area: Box, segments: Iterable[Segment] = (), boxes: Iterable[Box] = ()) -> None:
        self.area = area
        self.boxes = list(boxes)
        self.pieces: list[_Piece] = []
        self.named: dict[str, list[_Piece]] = {}
        for segment in segments:
            self.add(segment)

    def add(self, segment: Segment) -> None:
        """One more straight piece to keep clear of."""
        piece = _piece(segment)
        self.pieces.append(piece)
        self.named.setdefault(segment.owner, []).append(piece)

    def clear(self, box: Box) -> bool:
        """Whether a text's rectangle touches nothing and stays inside."""
        if not self.area.holds(box):
            return False
        left, bottom, right, top = box.grown(CLEARANCE)
        # ``Box.meets``, written out: asked four hundred times for each sheet.
        for other_left, other_bottom, other_right, other_top in self.boxes:
            if left < other_right and other_left < right and bottom < other_top and other_bottom < top:
                return False
        return not self._meets_piece(box)

    def _meets_piece(self, box: Box) -> bool:
        """Whether a text's rectangle comes too near to a piece. The piece that is in the way comes first next time: a
        label is tried again and again a little further along the same line."""
        left, bottom, right, top = box
        for number, (low_x, low_y, high_x, high_y, segment, margin) in enumerate(self.pieces):
            if left < high_x and low_x < right and bottom < high_y and low_y < top and (
                box.grown(margin).meets_segment(segment.start, segment.end)
            ):
                if number:
                    self.pieces.insert(0, self.pieces.pop(number))
                return True
        return False

    def _close_to(self, box: Box) -> list[_Piece]:
        """The pieces whose rectangles meet another: few do, and only those are worth a closer look."""
        left, bottom, right, top = box
        return [
            piece
            for piece in self.pieces
            if left < piece[2] and piece[0] < right and bottom < piece[3] and piece[1] < top
        ]

    def nearest(self, box: Box, owner: str) -> bool:
        """Whether the text is nearer to its own line than to any other that bears a name."""
        limit = self._to_own(box, owner)
        if limit == math.inf:
            return True
        return not any(
            piece.segment.owner not in ("", owner) and _box_to_segment(box, piece.segment) <= limit - 1e-9
            for piece in self._close_to(box.grown(limit))
        )

    def _to_own(self, box: Box, owner: str) -> float:
        """Distance from a text's rectangle to the nearest piece of its own line; infinite if that has none."""
        limit = math.inf
        left, bottom, right, top = box
        for low_x, low_y, high_x, high_y, segment, _margin in self.named.get(owner, ()):
            # A piece is no nearer than the rectangle that it lies in.
            if max(left - high_x, low_x - right, bottom - high_y, low_y - top) < limit:
                limit = min(limit, _box_to_segment(box, segment))
        return limit

    def free_line(self, start: Point, end: Point) -> bool:
        """Whether a leader passes every text with the clearance that lines keep from it."""
        return not any(box.grown(CLEARANCE).meets_segment(start, end) for box in self.boxes)


def _box_to_segment(box: Box, piece: Segment) -> float:
    """Distance from a text's rectangle to a straight piece outside it: from a corner, or from an end of the piece.

    The corners' distances are ``geometry.segment_distance``, written out: this is asked fifty times for each sheet.
    """
    left, bottom, right, top = box
    (ax, ay), (bx, by), _owner, _half_width = piece
    step_x, step_y = bx - ax, by - ay
    square = step_x * step_x + step_y * step_y
    least = math.inf
    for x, y in ((left, bottom), (right, bottom), (left, top), (right, top)):
        to_x, to_y = x - ax, y - ay
        if square > 0.0:
            along = (to_x * step_x + to_y * step_y) / square
            along = 0.0 if along < 0.0 else 1.0 if along > 1.0 else along
            to_x, to_y = to_x - along * step_x, to_y - along * step_y
        distance = math.hypot(to_x, to_y)
        least = distance if distance < least else least
    for x, y in ((ax, ay), (bx, by)):
        across = left - x if x < left else x - right if x > right else 0.0
        up = bottom - y if y < bottom else y - top if y > top else 0.0
        distance = math.hypot(across, up)
        least = distance if distance < least else least
    return least


@dataclass(frozen=True, slots=True)
class Along:
    """Anchors along a segment: the shares of it that come ``first``, then its middle, then outwards on both ``sides``,
    then around its end. Most labels find room at one of the first, so each is calculated when it is asked for.

    For a short arrow the only room is often beyond its tip.
    """

    start: Point
    end: Point
    first: Sequence[float] = ()
    sides: Sequence[int] = (1, -1)

    def __iter__(self) -> Iterator[tuple[Point, float]]:
        degrees = geometry.direction(self.start, self.end)
        step = self.end.minus(self.start)
        for share in (*self.first, *FRACTIONS):
            at = self.start.plus(step.times(share))
            for side in self.sides:
                yield at, degrees + 90.0 * side
        for lean in TIP_LEANS:
            yield self.end, degrees + lean


class _LabelShape:
    """A label's text and rectangle about its own middle, made once and moved."""

    def __init__(self, request: LabelRequest) -> None:
        self.trial = text(request.phrase, ORIGIN, request.capitals, "middle")
        self.box = box_of(self.trial, request.capitals)
        self.width, self.height = self.box.width, self.box.height

    def off(self, anchor: Point, degrees: float, gap: float) -> Box:
        """Return the rectangle with its nearest side ``gap`` from the anchor in a direction."""
        along, up = trig.direction(degrees)
        width, height = self.width, self.height
        reach = gap + (math.fabs(along) * width + math.fabs(up) * height) / 2
        x, y = anchor.x + along * reach, anchor.y + up * reach
        return Box(x - width / 2, y - height / 2, x + width / 2, y + height / 2)

    def at(self, box: Box) -> Text:
        """Return the text that fills a rectangle."""
        trial = self.trial
        return Text(trial.runs, Point(box.centre.x, box.bottom - self.box.bottom), trial.anchor, trial.ink)


def _near(ground: LabelArea, request: LabelRequest, shape: _LabelShape) -> PlacedLabel | None:
    for gap in GAPS:
        for anchor, degrees in request.anchors:
            box = shape.off(anchor, degrees, gap)
            if ground.clear(box) and ground.nearest(box, request.owner):
                return PlacedLabel(request, shape.at(box), box)
    return None


def _on_leader(ground: LabelArea, request: LabelRequest, shape: _LabelShape) -> PlacedLabel | None:
    for gap in LEADER_GAPS:
        for anchor, degrees in request.anchors:
            for lean in (0.0, 40.0, -40.0, 75.0, -75.0):
                box = shape.off(anchor, degrees + lean, gap)
                if not ground.clear(box):
                    continue
                end = _edge(box, anchor)
                if ground.free_line(anchor, end):
                    leader = Line(anchor, end, 0.18, "ink-2")
                    return PlacedLabel(request, shape.at(box), box, leader)
    return None


def _edge(box: Box, towards: Point) -> Point:
    """Return the point just outside a text's rectangle that is nearest to a place."""
    outside = box.grown(0.4)
    return Point(
        min(max(towards.x, outside.left), outside.right),
        min(max(towards.y, outside.bottom), outside.top),
    )


def place(ground: LabelArea, requests: list[LabelRequest]) -> tuple[list[PlacedLabel], list[LabelRequest]]:
    """Place labels in order; return those placed, and those left to the table."""
    placed: list[PlacedLabel] = []
    left: list[LabelRequest] = []
    for request in requests:
        shape = _LabelShape(request)
        label = _near(ground, request, shape)
        if label is None and request.optional:
            continue
        if label is None and request.leaders:
            label = _on_leader(ground, request, shape)
        if label is None:
            left.append(request)
            continue
        placed.append(label)
        ground.boxes.append(label.box)
        if label.leader:
            ground.add(Segment(label.leader.start, label.leader.end))
    return placed, left
