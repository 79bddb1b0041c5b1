"""Places labels clear of every line, arc and text, as near as possible to what they name.

Candidates are tried in the order of their cost; the first clear one is used. A label without a place near its line gets
a leader that crosses no line with another name, if there is any; a label without any place is left to the table.
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
LEANS = (0.0, 40.0, -40.0, 75.0, -75.0)
CLEARANCE = 0.6
BESIDE_ANOTHER = 2.0
"""Nearer than this many mm to a line that bears another name, a label on a leader reads as that line's."""
OF_NAME, OF_ANGLE = 60, 4
"""How many places on leaders are compared: the leader of an angle's size ends on its arc, whatever it crosses."""
OFF = 0.4
"""How far from its anchor a leader may meet other lines, mm: some end at the same tip."""


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
    places: int = OF_NAME
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
    """A straight piece, its upright rectangle with the clearance that labels keep from it, and what else
    is wanted to tell whether a text comes nearer: how far the piece goes across and up, and ``off``, the clearance
    from its line times its length in the measure of ``LabelArea.clear``."""

    left: float
    bottom: float
    right: float
    top: float
    segment: Segment
    across: float
    up: float
    off: float


class LabelArea:
    """The drawing area and all that stands in it."""

    def __init__(self, area: Box, segments: Iterable[Segment] = (), boxes: Iterable[Box] = ()) -> None:
        self.area = area
        self.boxes = list(boxes)
        self.pieces: list[_Piece] = []
        self.bearing: dict[str, None] = {}
        """The owners of the lines that bear names."""
        self.owned: list[_Piece] = []
        self.named: dict[str, list[_Piece]] = {}
        for segment in segments:
            self.add(segment)

    def add(self, segment: Segment) -> None:
        """One more straight piece to keep clear of."""
        (ax, ay), (bx, by), owner, half_width = segment
        margin = CLEARANCE + half_width
        left, right = (ax, bx) if ax <= bx else (bx, ax)
        low, high = (ay, by) if ay <= by else (by, ay)
        off = margin * (right - left + high - low)
        edges = left - margin, low - margin, right + margin, high + margin
        piece = tuple.__new__(_Piece, (*edges, segment, bx - ax, by - ay, off))
        self.pieces.append(piece)
        if owner:
            self.owned.append(piece)
            self.named.setdefault(owner, []).append(piece)

    def clear(self, box: Box) -> bool:
        """Whether a text's rectangle touches nothing and stays inside."""
        left, bottom, right, top = box
        area_left, area_bottom, area_right, area_top = self.area
        if left < area_left or bottom < area_bottom or right > area_right or top > area_top:
            return False
        # ``Box.meets``, written out: asked four hundred times for each sheet.
        low_x, low_y, high_x, high_y = left - CLEARANCE, bottom - CLEARANCE, right + CLEARANCE, top + CLEARANCE
        for other_left, other_bottom, other_right, other_top in self.boxes:
            if low_x < other_right and other_left < high_x and low_y < other_top and other_bottom < high_y:
                return False
        return not self._meets_piece(left, bottom, right, top)

    def _meets_piece(self, left: float, bottom: float, right: float, top: float) -> bool:
        """Whether a text's rectangle comes too near to a piece. The piece that is in the way comes first next time: a
        label is tried again and again a little further along the same line."""
        x, y, width, height = (left + right) / 2, (bottom + top) / 2, right - left, top - bottom
        for number, (low_x, low_y, high_x, high_y, segment, across, up, off) in enumerate(self.pieces):
            if left < high_x and low_x < right and bottom < high_y and low_y < top:
                at_x, at_y = segment[0]
                # Their rectangles meet: the text's is near the piece unless all of it is on one side of its line.
                aside = across * (y - at_y) - up * (x - at_x)
                if math.fabs(aside) <= off + (math.fabs(across) * height + math.fabs(up) * width) / 2:
                    if number:
                        self.pieces.insert(0, self.pieces.pop(number))
                    return True
        return False

    def _close_to(self, box: Box) -> list[_Piece]:
        """The pieces of something whose rectangles meet another: few do, and only those are worth a closer look."""
        left, bottom, right, top = box
        return [
            piece
            for piece in self.owned
            if left < piece[2] and piece[0] < right and bottom < piece[3] and piece[1] < top
        ]

    def nearest(self, box: Box, owner: str) -> tuple[bool, bool]:
        """Whether the text is nearer to its own line than to any other, and than to any other that bears a name."""
        limit = self._to_own(box, owner)
        of_all = of_named = True
        if limit < math.inf:
            for piece in self._close_to(box.grown(limit)):
                other = piece.segment.owner
                if other != owner and _box_to_segment(box, piece.segment) <= limit - 1e-9:
                    of_all = False
                    if other in self.bearing:
                        return False, False
        return of_all, of_named

    def crossed(self, start: Point, end: Point, owner: str) -> int:
        """How many lines that bear other names a leader crosses."""
        off = start.plus(end.minus(start).times(min(1.0, OFF / geometry.distance(start, end))))
        return len(dict.fromkeys(
            other for other, segment in self._others(geometry.bounds((off, end)), owner) if _cross(off, end, segment)
        ))  # fmt: skip

    def beside(self, box: Box, owner: str) -> int:
        """How many lines that bear other names a text on a leader is near."""
        return len(dict.fromkeys(
            other for other, segment in self._others(box.grown(BESIDE_ANOTHER), owner)
            if _box_to_segment(box, segment) < BESIDE_ANOTHER
        ))  # fmt: skip

    def _others(self, box: Box, owner: str) -> list[tuple[str, Segment]]:
        """The pieces near a rectangle of lines that bear other names."""
        return [
            (piece[4].owner, piece[4])
            for piece in self._close_to(box)
            if piece[4].owner != owner and piece[4].owner in self.bearing
        ]

    def _to_own(self, box: Box, owner: str) -> float:
        """Distance from a text's rectangle to the nearest piece of its own line; infinite if that has none."""
        limit = math.inf
        left, bottom, right, top = box
        for low_x, low_y, high_x, high_y, segment, *_rest in self.named.get(owner, ()):
            # A piece is no nearer than the rectangle that it lies in.
            if max(left - high_x, low_x - right, bottom - high_y, low_y - top) < limit:
                limit = min(limit, _box_to_segment(box, segment))
        return limit

    def free_line(self, start: Point, end: Point) -> bool:
        """Whether a leader passes every text with the clearance that lines keep from it."""
        return not any(box.grown(CLEARANCE).meets_segment(start, end) for box in self.boxes)


def _cross(a: Point, b: Point, piece: Segment) -> bool:
    """Whether a line crosses a straight piece."""
    (ax, ay), (bx, by), ((cx, cy), (dx, dy), _owner, _half_width) = a, b, piece
    x, y, across, up = bx - ax, by - ay, dx - cx, dy - cy
    return (x * (cy - ay) - y * (cx - ax)) * (x * (dy - ay) - y * (dx - ax)) < 0.0 and (
        (across * (ay - cy) - up * (ax - cx)) * (across * (by - cy) - up * (bx - cx)) < 0.0
    )


def _box_to_segment(box: Box, piece: Segment) -> float:
    """Distance from a text's rectangle to a straight piece outside it: from an end of the piece, or from the corner
    that is nearest to its line.

    The corner's distance is ``geometry.segment_distance``, written out: this is asked forty times for each sheet.
    """
    left, bottom, right, top = box
    (ax, ay), (bx, by), _owner, _half_width = piece
    least = math.inf
    for x, y in ((ax, ay), (bx, by)):
        across = left - x if x < left else x - right if x > right else 0.0
        up = bottom - y if y < bottom else y - top if y > top else 0.0
        distance = math.hypot(across, up)
        least = distance if distance < least else least
    step_x, step_y = bx - ax, by - ay
    # Twice the middle of the rectangle tells on which side of the line it is.
    if step_x * (bottom + top - ay - ay) > step_y * (left + right - ax - ax):
        to_x, to_y = (right if step_y > 0.0 else left) - ax, (bottom if step_x > 0.0 else top) - ay
    else:
        to_x, to_y = (left if step_y > 0.0 else right) - ax, (top if step_x > 0.0 else bottom) - ay
    ahead, square = to_x * step_x + to_y * step_y, step_x * step_x + step_y * step_y
    if 0.0 < ahead < square:
        share = ahead / square
        distance = math.hypot(to_x - share * step_x, to_y - share * step_y)
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


@dataclass(frozen=True, slots=True)
class AlongArc:
    """Anchors on an arc, in some ``directions`` from its centre: outwards, then inwards. Each is calculated when it is
    asked for."""

    centre: Point
    radius: float
    directions: tuple[float, ...]

    def __iter__(self) -> Iterator[tuple[Point, float]]:
        for flip in (0.0, 180.0):
            for degrees in self.directions:
                yield self.centre.moved(self.radius, degrees), degrees + flip


class _Way(NamedTuple):
    """From an anchor in a direction: the place of a text's middle is ``half`` and a gap from the anchor."""

    anchor: Point
    along: float
    up: float
    half: float


class _LabelShape:
    """A label's text and rectangle about its own middle, made once and moved."""

    def __init__(self, request: LabelRequest) -> None:
        self.trial = text(request.phrase, ORIGIN, request.capitals, "middle")
        self.box = box_of(self.trial, request.capitals)
        self.width, self.height = self.box.width, self.box.height

    def ways(self, anchors: Iterable[tuple[Point, float]], leans: Sequence[float]) -> Iterator[_Way]:
        """Yield the ways from anchors, each turned by some degrees, in that order."""
        for anchor, middle in anchors:
            for lean in leans:
                along, up = trig.direction(middle + lean)
                half = (math.fabs(along) * self.width + math.fabs(up) * self.height) / 2
                yield _Way(anchor, along, up, half)

    def off(self, way: _Way, gap: float) -> Box:
        """Return the rectangle with its nearest side ``gap`` from the anchor."""
        (x, y), along, up, half = way
        reach = gap + half
        return Box.around(x + along * reach, y + up * reach, self.width, self.height)

    def at(self, box: Box) -> Text:
        """Return the text that fills a rectangle."""
        trial = self.trial
        return Text(trial.runs, Point(box.centre.x, box.bottom - self.box.bottom), trial.anchor, trial.ink)


def _near(ground: LabelArea, request: LabelRequest, shape: _LabelShape) -> tuple[Box | None, bool]:
    """Return the first clear place near the line that is nearer to no other, and True; or else one that is nearer to
    none that bears a name, and False."""
    second: Box | None = None
    ways: Iterable[_Way] = shape.ways(request.anchors, (0.0,))
    for gap in GAPS:
        again = []
        for way in ways:
            again.append(way)
            box = shape.off(way, gap)
            if ground.clear(box):
                of_all, of_named = ground.nearest(box, request.owner)
                if of_all:
                    return box, True
                if of_named and second is None:
                    second = box
        ways = again
    return second, False


def _on_leader(ground: LabelArea, request: LabelRequest, shape: _LabelShape) -> tuple[Box, Line, int] | None:
    """Return the place on a leader that has the least against it, the nearest of those, its leader and how bad it is.
    """
    best: tuple[Box, Point, Point] | None = None
    least, tried = request.places, 0
    ways: Iterable[_Way] = shape.ways(request.anchors, LEANS)
    for gap in LEADER_GAPS:
        again = []
        for way in ways:
            box = shape.off(way, gap)
            if not ground.clear(box) or not ground.free_line(way.anchor, end := _edge(box, way.anchor)):
                again.append(way)
                continue
            cost = ground.crossed(way.anchor, end, request.owner)
            # A longer leader crosses what a shorter one does.
            if cost < least:
                again.append(way)
                cost += ground.beside(box, request.owner)
            if cost < least:
                best, least = (box, way.anchor, end), cost
            tried += 1
            if best and (not least or tried >= request.places):
                return best[0], Line(*best[1:], 0.18, "ink-2"), least
        ways = again
    return best and (best[0], Line(*best[1:], 0.18, "ink-2"), least)


def _label(ground: LabelArea, request: LabelRequest) -> PlacedLabel | None:
    """Return a label in the best place there is."""
    shape = _LabelShape(request)
    box, is_nearest = _near(ground, request, shape)
    # Nearer to a line that bears no name is better than a leader across another line.
    found = _on_leader(ground, request, shape) if request.leaders and not (is_nearest or request.optional) else None
    if found and not (box and found[2]):
        return PlacedLabel(request, shape.at(found[0]), found[0], found[1])
    if box is None or (request.optional and not is_nearest):
        return None
    return PlacedLabel(request, shape.at(box), box)


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
    ground.bearing = dict.fromkeys(request.owner for request in requests)
    for request in requests:
        label = _label(ground, request)
        if label is None:
            if not request.optional:
                left.append(request)
            continue
        placed.append(label)
        ground.boxes.append(label.box)
        if label.leader:
            ground.add(Segment(label.leader.start, label.leader.end))
    return placed, left
