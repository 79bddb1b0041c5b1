"""Straight strokes on a sheet as they were found in its photograph, in mm (y up): where they cross, how much of a way
on one is drawn, which of them leave the starting point. Nothing here knows what they mean.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from pycore import geometry
from pycore.geometry import Box, Point

BIN = 0.5
"""Length in mm of the pieces in which a stroke is drawn, bare or not known."""
BEYOND = 32.0
"""So far beyond a stroke's ends is known whether something is drawn."""
FLAT = 0.156
"""Sine of the flattest crossing that is looked for: 9 degrees."""
OUT = 14.0
"""How far a crossing may lie beyond the end of a stroke, mm."""
NEAR_START = 1.7
"""How near a stroke must pass to the starting point to leave it, mm."""
CLEAR_HEAD = 2.2
"""How clear an arrowhead must be to count."""
FAINT_HEAD = 1.2
"""How clear an arrowhead must be to be taken for one beside other signs."""
HEAD_SHORT = 0.5
"""By how much the wings of a head meet before its tip, mm (measured on made-up photographs)."""
ALONG_GUIDE = 0.05
"""Sine of the largest angle between a thin line and where it belongs."""
AT_EDGE, STRAIGHT = 2.0, 0.06
"""How near the edges of what was read a fold ends, mm; the sine of its largest angle with them."""
DRAWN, BARE, UNKNOWN = 1, 0, 2


@dataclass(frozen=True, slots=True)
class PencilStroke:
    """A straight stroke: its ends, its direction (unit) and length, how dark it is, which share of it is drawn;
    ``pieces`` says of each half millimetre from ``BEYOND`` before its start whether it is drawn; ``heads`` are the
    places along it where the wings of an arrow meet, with the way they point (1: to its end) and how clear they are."""

    start: Point
    end: Point
    way: Point
    length: float
    dark: float
    cover: float
    pieces: tuple[int, ...]
    heads: tuple[tuple[float, int, float], ...]
    beside: tuple[tuple[float, int, float], ...] = ()
    """Arrowheads a little beside it: of an arrow that lies along it at a flat angle."""
    number: int = 0
    """Its place among the strokes of a sheet."""

    def along(self, place: Point) -> float:
        """How far along the stroke a place lies, mm from its start."""
        return (place.x - self.start.x) * self.way.x + (place.y - self.start.y) * self.way.y

    def across(self, place: Point) -> float:
        """How far to the left of the stroke a place lies, mm."""
        return (place.y - self.start.y) * self.way.x - (place.x - self.start.x) * self.way.y

    def at(self, along: float) -> Point:
        """The place so far along the stroke."""
        return Point(self.start.x + along * self.way.x, self.start.y + along * self.way.y)

    def beyond(self, place: Point) -> float:
        """How far a place lies beyond the nearer end, mm; below 0 between the ends."""
        along = self.along(place)
        return max(-along, along - self.length)

    def bare(self, one: float, other: float) -> float:
        """How many mm between two places along the stroke, the second at an end of it, are known to be bare."""
        first, last = sorted(max(0, round((along + BEYOND) / BIN)) for along in (one, other))
        return BIN * self.pieces[first:last].count(BARE)

    def head_off(self, place: Point) -> float | None:
        """How far the nearest arrowhead is from a place, mm; one beside the stroke counts half. None without one."""
        along = self.along(place)
        heads = (*self.heads, *((at, way, clear / 2.0) for at, way, clear in self.beside))
        return min((math.fabs(at - along) for at, _, clear in heads if clear > CLEAR_HEAD), default=None)


def stroke_of(
    start: Point, end: Point, dark: float, runs: Sequence[tuple[float, float]], blind: Sequence[tuple[float, float]],
    heads: Sequence[tuple[float, int, float]], beside: Sequence[tuple[float, int, float]] = (),
) -> PencilStroke | None:  # fmt: skip
    """A stroke from its ends and stretches (mm from its start); None where it has no length."""
    length = geometry.distance(start, end)
    if length < 1.0:
        return None
    pieces = [BARE] * int((length + 2.0 * BEYOND) / BIN + 1.0)
    for stretches, kind in ((blind, UNKNOWN), (runs, DRAWN)):
        for low, high in stretches:
            first, last = (round((mm + BEYOND) / BIN) for mm in (low, high))
            for piece in range(max(0, first), min(len(pieces), last)):
                pieces[piece] = kind
    own = pieces[int(BEYOND / BIN) : int((BEYOND + length) / BIN)]
    cover = own.count(DRAWN) / max(1, len(own) - own.count(UNKNOWN))
    way = end.minus(start).times(1.0 / length)
    tips, aside = (
        tuple((at + HEAD_SHORT * sense, sense, clear) for at, sense, clear in some) for some in (heads, beside)
    )
    return PencilStroke(start, end, way, length, dark, min(1.0, cover), tuple(pieces), tips, aside)


def sine_between(one: PencilStroke, other: PencilStroke) -> float:
    """The sine of the angle at which two strokes cross."""
    return math.fabs(geometry.cross(one.way, other.way))


def crossing(one: PencilStroke, other: PencilStroke) -> Point | None:
    """Where two strokes cross when they are drawn on; None where they are nearly parallel."""
    sine = geometry.cross(one.way, other.way)
    if math.fabs(sine) < FLAT:
        return None
    return one.at(geometry.cross(other.start.minus(one.start), other.way) / sine)


@dataclass(frozen=True, slots=True)
class LeavingStroke:
    """A stroke that leaves the starting point: the way it goes (unit), and how far from there it ends, mm."""

    stroke: PencilStroke
    way: Point
    end: float

    def distance(self, origin: Point, place: Point) -> float:
        """How far along the way from the starting point a place lies."""
        return geometry.dot(place.minus(origin), self.way)


class StrokeSheet:
    """All strokes of one sheet and its starting point; remembers what it was asked."""

    def __init__(
        self, strokes: Sequence[PencilStroke], origin: Point, guides: Sequence[Point] = (), box: Box | None = None
    ) -> None:
        """``guides``: the ways (unit) of thin lines through the start that may be drawn and end nowhere; ``box``: the
        part of the paper that was read, mm."""
        self.origin, self.guides = origin, tuple(guides)
        strokes = [stroke for stroke in strokes if box is None or not self._is_fold(stroke, box)]
        strokes = [replace(stroke, number=number) for number, stroke in enumerate(strokes)]
        strong = sorted((s for s in strokes if s.length > 12.0), key=lambda s: -s.length * s.cover)[:8]
        darks = sorted(s.dark for s in strong)
        self.usual = darks[len(darks) // 2] if darks else 0.02
        """How dark a clear stroke of this sheet is."""
        self.strokes = tuple(s for s in strokes if s.dark > 0.15 * self.usual)
        self.leaving = tuple(self._leaving())
        own = {ray.stroke.number for ray in self.leaving}
        self.others = tuple(s for s in self.strokes if s.number not in own and s.length >= 7.0)
        """The strokes that do not leave the starting point."""
        self._covered: dict[tuple[int, int, int], tuple[float, float]] = {}
        self._attached: dict[int, list[tuple[int, Point]]] = {}

    def _is_fold(self, stroke: PencilStroke, box: Box) -> bool:
        """Whether a stroke runs from edge to edge of what was read, straight across or up, and not through the start:
        the paper was folded there."""
        if math.fabs(stroke.across(self.origin)) < NEAR_START:
            return False
        low, high = sorted((stroke.start.x, stroke.end.x))
        bottom, top = sorted((stroke.start.y, stroke.end.y))
        across = low < box.left + AT_EDGE and high > box.right - AT_EDGE and top - bottom < STRAIGHT * (high - low)
        up = bottom < box.bottom + AT_EDGE and top > box.top - AT_EDGE and high - low < STRAIGHT * (top - bottom)
        return across or up

    def _leaving(self) -> list[LeavingStroke]:
        found = []
        for stroke in self.strokes:
            if math.fabs(stroke.across(self.origin)) > NEAR_START or stroke.length < 9.0:
                continue
            at = stroke.along(self.origin)
            if not -BEYOND < at < stroke.length + BEYOND:
                continue
            before, after = stroke.bare(min(at, 0.0), 0.0), stroke.bare(max(at, stroke.length), stroke.length)
            for sense, end, bare in ((1.0, stroke.length - at, before), (-1.0, at, after)):
                if end >= 10.0 and bare < 12.0:
                    found.append(LeavingStroke(stroke, stroke.way.times(sense), end))
        return found

    def covered(self, stroke: PencilStroke, one: Point, other: Point) -> tuple[float, float]:
        """The share of a way on a stroke that is drawn, and the longest bare stretch in mm."""
        first, last = sorted(round((stroke.along(place) + BEYOND) / BIN) for place in (one, other))
        key = (stroke.number, first, last)
        if key not in self._covered:
            pieces = stroke.pieces
            drawn = seen = bare = longest = 0
            for piece in range(first, last):
                kind = pieces[piece] if 0 <= piece < len(pieces) else BARE
                if kind == DRAWN:
                    drawn, seen, bare = drawn + 1, seen + 1, 0
                elif kind == BARE:
                    seen, bare = seen + 1, bare + 1
                    longest = max(longest, bare)
            self._covered[key] = (drawn / seen, longest * BIN) if seen >= 4 else (0.5, 0.0)
        return self._covered[key]

    def worth(self, stroke: PencilStroke, one: Point, other: Point, *, solid: bool) -> float:
        """What a way that should be drawn counts: the mm that are, less what is bare; ``solid``: no dashes."""
        share, bare = self.covered(stroke, one, other)
        length = geometry.distance(one, other)
        clear = min(1.0, max(0.25, stroke.dark / (0.35 * self.usual)))
        full, need = (0.75, 0.3) if solid else (0.55, 0.25)
        value = (min(share, full) - need) / (full - need)
        lost = max(0.0, bare - (5.0 if solid else 7.0))
        return length * (value * clear if value > 0.0 else value) - 0.8 * lost

    def attached(self, stroke: PencilStroke) -> list[tuple[int, Point]]:
        """Where a stroke meets those that leave the start: their indices, and the places."""
        if stroke.number in self._attached:
            return self._attached[stroke.number]
        found: list[tuple[int, Point]] = []
        for index, ray in enumerate(self.leaving):
            met = crossing(ray.stroke, stroke)
            if met is None:
                # Too flat to cross: where an end of it lies on the other.
                found += [(index, end) for end in (stroke.start, stroke.end)
                          if math.fabs(ray.stroke.across(end)) < 1.6
                          and 8.0 < ray.distance(self.origin, end) < ray.end + 20.0]  # fmt: skip
            elif 8.0 <= ray.distance(self.origin, met) <= ray.end + OUT and stroke.beyond(met) <= OUT:
                found.append((index, met))
        self._attached[stroke.number] = found
        return found

    def tip(self, ray: LeavingStroke) -> tuple[Point, bool]:
        """Where a stroke that leaves the start ends, and whether an arrowhead says the same."""
        start = ray.stroke.along(self.origin)
        sense = 1 if geometry.dot(ray.way, ray.stroke.way) > 0 else -1
        heads = [(at - start) * sense for at, way, clear in ray.stroke.heads
                 if way == sense and clear > CLEAR_HEAD]
        heads = [at for at in heads if 6.0 < at < ray.end + 4.0]
        if not heads:
            return self.origin_on(ray, ray.end), False
        head = min(heads, key=lambda at: math.fabs(at - ray.end))
        if math.fabs(head - ray.end) < 1.6:
            return self.origin_on(ray, (head + ray.end) / 2.0), True
        return self.origin_on(ray, head), False

    def origin_on(self, ray: LeavingStroke, distance: float) -> Point:
        """The place so far from the start on the stroke's own line."""
        return ray.stroke.at(ray.stroke.along(self.origin)).plus(ray.way.times(distance))

    def is_guide(self, stroke: PencilStroke) -> bool:
        """Whether a stroke is one of the thin lines through the start."""
        return math.fabs(stroke.across(self.origin)) < NEAR_START and any(
            math.fabs(geometry.cross(stroke.way, way)) < ALONG_GUIDE for way in self.guides
        )

    def unexplained(self, ways: Sequence[tuple[Point, Point]]) -> tuple[float, float]:
        """The mm of clear strokes that some ways do not account for, and the longest clear stroke that they pass by.
        What runs on past a point counts little."""
        lost = longest = 0.0
        for stroke in self.strokes:
            if stroke.length < 10.0 or stroke.dark < 0.25 * self.usual or stroke.cover < 0.5 or self.is_guide(stroke):
                continue
            done = self._accounted(stroke, ways)
            clear = min(1.0, stroke.dark / (0.5 * self.usual)) * (1.0 if stroke.length > 20.0 else 0.4)
            if done < 0.25 * stroke.length:
                lost += 0.7 * clear * stroke.length
                longest = max(longest, stroke.length if stroke.dark > 0.4 * self.usual else 0.0)
            else:
                lost += 0.12 * (stroke.length - done)
        return lost, longest

    def _accounted(self, stroke: PencilStroke, ways: Sequence[tuple[Point, Point]]) -> float:
        parts = []
        for one, other in ways:
            if math.fabs(stroke.across(one)) < NEAR_START and math.fabs(stroke.across(other)) < NEAR_START:
                low, high = sorted((stroke.along(one), stroke.along(other)))
                parts.append((max(low, 0.0), min(high, stroke.length)))
        done, at = 0.0, -1e9
        for low, high in sorted(parts):
            if high > max(low, at):
                done += high - max(low, at)
                at = high
        return done
