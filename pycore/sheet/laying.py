"""Where the instruments of a lesson lie: one scale and one common point for all of its frames.

The view is 120 by 98.4 units; a unit is a hundredth of the screen's height (ten pixels of 1080), less the strip of
values above it. Everything that is drawn, and every reading, lies within the view in every frame. So does what is read
off an instrument, its zero and the numbers about its mark, unless the drawing would get small for it; the rest of an
instrument may leave the view. A ruler has the scale of the drawing. A protractor has a size of its own, as real ones
have.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore import geometry
from pycore.constructions import step_kinds
from pycore.constructions.frames import LINE, PROTRACTOR, RULER, SQUARES, Frame
from pycore.constructions.moves import (
    CrossArcs,
    DrawParallel,
    DropPerpendicular,
    Join,
    ReadAngle,
    ReadLength,
    SetOff,
    TurnAngle,
    turn_of,
    zero_of,
)
from pycore.constructions.names import START_POINT
from pycore.geometry import ORIGIN, Box, Point
from pycore.phasor import wrap
from pycore.sheet.instruments import RADIUS, RULER_BEFORE_ZERO, RULER_LENGTH, Pose
from pycore.sheet.plan import Plan
from pycore.sheet.strokes import Placement
from pycore.sheet.tools import BESIDE

WIDTH, HEIGHT = 120.0, 98.4
LONG_RULER = 300.0
FIGURE_MARGIN, READING_MARGIN = 8.0, 2.0
"""Around the drawing, for its tags; around the readings."""
BEYOND_RIM = 6.0
"""How far the line of a reading leaves the protractor, mm."""
READING_ROOM = 14.0
"""Beyond the end of that line, for the reading itself."""
ONWARD = 12.0
"""How far a line is carried on beyond its tip, to show why an angle is what it is."""
LARGEST, SMALLEST, STEP = 0.62, 0.2, 0.01
"""Enlargements of paper and ruler (units for each mm)."""
SAMPLE_UP = 0.58
"""How high the sample of the scale stands, as a share of the view's height."""
SAMPLE_MARGIN = 6.0
NUMBERS = 14.0
"""From a ruler's edge to the far side of its numbers, mm."""
ABOUT = 10.0
"""Degrees on either side of a mark to the next number of a protractor."""
LEAST_SHARE = 0.8
"""The share of its largest size to which a drawing goes to have in view what is read off its instruments."""
PROTRACTORS = (0.52, 0.42, 0.34)
"""Enlargements of a protractor, the first if its readings then lie within the view."""


@dataclass(frozen=True, slots=True)
class Stage:
    """The place and scale of a whole lesson: units for each mm of paper and ruler, and for each mm of protractor."""

    stand: Placement
    zoom: float
    protractor: float


def _is_back(move: TurnAngle | ReadAngle) -> bool:
    """Return whether an angle is measured from straight back along the line just drawn."""
    return isinstance(move, TurnAngle) and move.back


def ruler_length(length: float) -> float:
    """Return the length of the ruler that a line of so many mm of paper takes, mm."""
    return RULER_LENGTH if length <= RULER_LENGTH else LONG_RULER


class Laying:
    """The poses of one frame's instruments."""

    def __init__(self, plan: Plan, frame: Frame, stage: Stage, *, circle: bool) -> None:
        self.plan, self.frame, self.stage, self.circle = plan, frame, stage, circle
        self.points = plan.construction.figure.points
        self.lines = plan.construction.figure.lines
        self.readings = plan.construction.figure.readings
        self.stand, self.zoom = stage.stand, stage.zoom

    def at(self, name: str) -> Point:
        """A named point."""
        return self.stand.place(self.points[name])

    def paper_angle(self, degrees: float) -> float:
        """Return a calculated angle as it appears on the screen."""
        return self.plan.picture.paper_angle(degrees)

    def zero_of(self, move: TurnAngle | ReadAngle) -> float:
        """Return the direction on the screen of the line along the protractor's zero."""
        if isinstance(move, TurnAngle):
            return self.paper_angle(zero_of(move, self.lines))
        return self.paper_angle(self.lines[move.first].degrees)

    def protractor_pose(self, move: TurnAngle | ReadAngle) -> tuple[Pose, bool, float]:
        """Return the pose, whether the inner scale is used, and the signed angle on the screen from zero to the
        reading.

        The body of a half circle is on the side to which the angle is measured: with the inner scale anticlockwise from
        its right end, with the outer clockwise from its left end. A full circle has its one zero along the line.
        """
        if isinstance(move, TurnAngle):
            turn = turn_of(move, self.readings)
        else:
            turn = wrap(self.lines[move.second].degrees - self.lines[move.first].degrees)
        start, sweep = self.zero_of(move), self.plan.picture.sense * turn
        inner = sweep >= 0
        factor = self.stage.protractor
        return Pose(self.at(move.at), start if inner or self.circle else start + 180.0, factor), inner, sweep

    def ruled(self) -> tuple[Point, Point] | None:
        """Return the ends between which a ruler is laid, zero first; None if there is no ruler."""
        move = self.frame.move
        if self.frame.tool == RULER and isinstance(move, SetOff):
            return self.at(move.start), self.at(move.point)
        if self.frame.tool == RULER and isinstance(move, ReadLength):
            return self.at(move.start), self.at(move.end)
        if self.frame.tool == LINE and isinstance(move, Join) and self.squared() is None:
            return self.at(move.start), self.at(move.end)
        if self.frame.name == step_kinds.SCALE:
            longest = max(arm.size for arm in self.plan.construction.arms)
            length = longest * self.stand.factor
            rightmost = WIDTH - (ruler_length(length / self.zoom) + RULER_BEFORE_ZERO) * self.zoom
            left = (WIDTH - length) / 2
            if rightmost > RULER_BEFORE_ZERO * self.zoom:  # The ruler is whole where it has room.
                left = min(left, rightmost)
            start = Point(left, SAMPLE_UP * HEIGHT)
            return start, start.moved(length, 0.0)
        return None

    def ruler_pose(self, start: Point, end: Point) -> tuple[Pose, float]:
        """The ruler's pose, its zero beside the start, and its length; it is turned with its line."""
        length = geometry.distance(start, end) / self.zoom
        degrees = geometry.direction(start, end) if length else 0.0
        beside = start.moved(BESIDE * self.zoom, degrees - 90.0)
        return Pose(beside, degrees, self.zoom), ruler_length(length)

    def squared(self) -> DrawParallel | DropPerpendicular | None:
        """Return the move for which a set square is used, while it slides or while a line is drawn along it."""
        move = self.frame.move
        if isinstance(move, (DrawParallel, DropPerpendicular)):
            return move
        if self.frame.tool == LINE and isinstance(move, Join):
            slid = (m for m in self.plan.construction.moves if isinstance(m, DrawParallel))
            return next((m for m in slid if m.line == move.line), None)
        return None

    def square_pose(self, move: DrawParallel | DropPerpendicular) -> Pose:
        """Return the final pose of the set square: its long edge along the new line."""
        if isinstance(move, DrawParallel):
            return Pose(self.at(move.through), self.paper_angle(self.lines[move.line].degrees), self.zoom)
        start, foot = self.at(move.start), self.at(move.foot)
        degrees = self.paper_angle(self.lines[move.line].degrees) + 90.0
        if geometry.distance(start, foot) > 1e-6:
            degrees = geometry.direction(foot, start)
        return Pose(foot, degrees, self.zoom)

    def square_before(self, move: DrawParallel | DropPerpendicular, pose: Pose) -> Pose | None:
        """Return the pose of a sliding set square on the copied line, before it was moved."""
        if self.frame.tool != SQUARES or not isinstance(move, DrawParallel):
            return None
        ray = self.lines[move.to]
        start = self.stand.place(ray.start)
        along = geometry.Ray(start, self.paper_angle(ray.degrees))
        return Pose(geometry.foot(pose.at, along), pose.degrees, pose.factor)

    # What must lie within the view.

    def seen(self, visible_moves: frozenset[int]) -> list[Point]:
        """Return the points on the paper when these moves are made."""
        named: list[str] = [START_POINT] if START_POINT in self.points else []
        for index, move in enumerate(self.plan.construction.moves):
            if index not in visible_moves:
                continue
            if isinstance(move, SetOff):
                named += [move.start, move.point]
            elif isinstance(move, Join):
                named += [move.start, move.end]
        return [self.at(name) for name in named]

    def readable(self) -> list[tuple[Point, Point]]:
        """Return the places of a frame's reading: each a place of the drawing and a way from it, in units."""
        move = self.frame.move
        if self.frame.tool == PROTRACTOR and isinstance(move, (TurnAngle, ReadAngle)):
            pose, _, sweep = self.protractor_pose(move)
            rim, towards = (RADIUS + BEYOND_RIM) * pose.factor, self.zero_of(move) + sweep
            end, words = ORIGIN.moved(rim, towards), ORIGIN.moved(READING_ROOM, towards)
            # Words are wide and low. At a tip the picture of why has the line carried on.
            onward = ORIGIN.moved(ONWARD, self.zero_of(move) + 180.0) if _is_back(move) else ORIGIN
            return [(pose.at, way) for way in (ORIGIN, onward, end, end.plus(Point(words.x, 0.5 * words.y)))]
        if isinstance(move, CrossArcs):
            return [(self.at(name), ORIGIN) for name in (move.first, move.second, move.point, move.opposite)]
        ends = self.ruled() if move else None
        return [(end, ORIGIN) for end in ends or ()]

    def numbered(self) -> list[tuple[Point, Point]]:
        """Return the places of a frame's instrument that tell its reading, as ``readable`` does: a protractor's zero
        and the numbers about its mark, the numbers of a ruler at both ends of the line."""
        move = self.frame.move
        if self.frame.tool == PROTRACTOR and isinstance(move, (TurnAngle, ReadAngle)):
            pose, _, sweep = self.protractor_pose(move)
            zero, rim = self.zero_of(move), RADIUS * pose.factor
            turns = (0.0, sweep - ABOUT, sweep, sweep + ABOUT)
            return [(pose.at, ORIGIN.moved(rim, zero + turn)) for turn in turns]
        ends = self.ruled() if move and self.frame.tool == RULER else None
        if ends is None:
            return []
        pose, _ = self.ruler_pose(*ends)
        down = ORIGIN.moved((BESIDE + NUMBERS) * self.zoom, pose.degrees - 90.0)
        return [(end.plus(down), ORIGIN) for end in ends]


@dataclass(frozen=True, slots=True)
class _Extent:
    """What a lesson needs to have in view: the drawing about its starting point, and its readings, at zoom 1; and what
    it would like to have there, the numbers of its instruments."""

    seen: Box
    readable: tuple[tuple[Point, Point], ...]
    numbered: tuple[tuple[Point, Point], ...]

    def box(self, zoom: float) -> Box:
        """Return the rectangle that it takes at an enlargement."""
        figure = self.seen.times(zoom).grown(FIGURE_MARGIN)
        read = geometry.bounds(place.times(zoom).plus(way) for place, way in self.readable).grown(READING_MARGIN)
        return geometry.joined((figure, read))

    def whole(self, zoom: float) -> Box:
        """Return the rectangle that it takes at an enlargement with the numbers of the instruments."""
        numbers = geometry.bounds(place.times(zoom).plus(way) for place, way in self.numbered).grown(READING_MARGIN)
        return geometry.joined((self.box(zoom), numbers))


def _extent(plan: Plan, frames: Sequence[Frame], protractor: float, circle: bool) -> _Extent:
    """Return what a lesson needs to have in view."""
    stage = Stage(Placement(plan.picture, plan.factor), 1.0, protractor)
    seen, readable, numbered = [ORIGIN], [(ORIGIN, ORIGIN)], [(ORIGIN, ORIGIN)]
    for frame in frames:
        laying = Laying(plan, frame, stage, circle=circle)
        readable += laying.readable()
        numbered += laying.numbered()
    if frames:
        # What is drawn stays, so the last frame has it all.
        seen += laying.seen(frames[-1].drawn_moves)
    return _Extent(geometry.bounds(seen), tuple(dict.fromkeys(readable)), tuple(dict.fromkeys(numbered)))


def _fits(box: Box) -> bool:
    return box.width <= WIDTH and box.height <= HEIGHT


def stage_of(plan: Plan, frames: Sequence[Frame], *, circle: bool) -> Stage:
    """Return the place and scale at which every frame of a lesson lies within the view, as large as possible."""
    best: tuple[float, float, _Extent] | None = None
    longest = max(arm.size for arm in plan.construction.arms) * plan.factor
    largest = min(LARGEST, (WIDTH - 2 * SAMPLE_MARGIN) / longest)
    for protractor in PROTRACTORS:
        extent, zoom = _extent(plan, frames, protractor, circle), largest
        while not _fits(extent.box(zoom)) and zoom > SMALLEST:
            zoom -= STEP
        # A smaller protractor is worth having only if the drawing gains much by it.
        if best is None or zoom > 1.4 * best[0]:
            best = zoom, protractor, extent
    if best is None:
        raise ValueError("a lesson has a protractor of some size")
    largest, protractor, extent = best
    zoom = _with_numbers(extent, largest)
    return Stage(Placement(plan.picture, plan.factor * zoom, _origin(extent, zoom)), zoom, protractor)


def _with_numbers(extent: _Extent, largest: float) -> float:
    """Return the enlargement at which the numbers of the instruments are in view too; the largest where the drawing
    would get small for that."""
    zoom = largest
    while not _fits(extent.whole(zoom)):
        zoom -= STEP
        if zoom < LEAST_SHARE * largest:
            return largest
    return zoom


def _origin(extent: _Extent, zoom: float) -> Point:
    """Return where the common point stands: everything in the middle, if what has to be in view then is."""
    need, whole = extent.box(zoom), extent.whole(zoom)
    return Point(
        _placed(WIDTH, whole.centre.x, need.left, need.right), _placed(HEIGHT, whole.centre.y, need.bottom, need.top)
    )


def _placed(room: float, middle: float, low: float, high: float) -> float:
    """Return where 0 stands so that ``middle`` is in the middle of a room, or as near to it as leaves what is between
    ``low`` and ``high`` inside."""
    if high - low > room:
        return room / 2 - (low + high) / 2
    return min(max(room / 2 - middle, -low), room - high)
