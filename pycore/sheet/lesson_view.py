"""One frame of a lesson on a classroom screen: the drawing so far, the tool laid on, its reading.

The view is 120 by 108 units, a unit being a hundredth of the screen's height less a little (ten
pixels of 1080); the sheet is enlarged so that what the move touches fills it, and instruments
keep their true size against the drawing. Capitals of readings are at least 1/23 of the height.
"""

import math
from dataclasses import dataclass

from pycore import geometry
from pycore.constructions.frames import COMPASSES, PROTRACTOR, RULER, SQUARES, Frame
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
from pycore.drawing import Arc, Arrow, Circle, Group, Item, Line, Page, Shape, Text
from pycore.geometry import Box, Point
from pycore.phasor import wrap
from pycore.sheet import labels, tools
from pycore.sheet.figure import Drawn, Look, Stand, draw
from pycore.sheet.instruments import (
    BASE,
    COUNT_INNER,
    COUNT_OUTER,
    INNER_FIGURES,
    OUTER_FIGURES,
    RADIUS,
    RULER_BEFORE_ZERO,
    RULER_LENGTH,
    RULER_WIDTH,
    WINDOW,
    Pose,
    figure,
    protractor,
    ruler,
)
from pycore.sheet.lettered import box_of, text
from pycore.sheet.media import Style
from pycore.sheet.plan import Plan

WIDTH, HEIGHT = 120.0, 108.0
READING = 5.2
"""Capitals of a reading and of tags: 1/20 of the view's height."""
CLASSROOM = Style(
    note=4.7, value=4.7, tag=5.2, narrow=0.25, wide=0.5, extra_wide=1.0, head=3.6, large_head=5.6, tick=3.6,
    tick_gap=1.3, dash=(2.6, 1.0),
)  # fmt: skip
LONG_RULER = 300.0
MARGIN = 3.0


@dataclass(frozen=True, slots=True)
class Laid:
    """A tool laid on: its strokes below the drawing, its reading above, and the room it takes (mm)."""

    under: tuple[Item, ...]
    over: tuple[Item, ...]
    reading: tuple[Item, ...]


class _Showing:
    """Draws one frame: first everything in mm about the start point, then enlarged to fill the view."""

    def __init__(self, plan: Plan, frame: Frame, look: Look) -> None:
        self.plan, self.frame, self.look = plan, frame, look
        self.points = plan.construction.figure.points
        self.lines = plan.construction.figure.lines
        self.readings = plan.construction.figure.readings
        self.stand = Stand(plan.picture, plan.factor)
        self.zoom = 1.0

    # Places, in view units once the framing is known.

    def at(self, name: str) -> Point:
        """A named point."""
        return self.stand.place(self.points[name])

    def paper_angle(self, degrees: float) -> float:
        """A reckoned direction as it lies on the screen."""
        return self.plan.picture.paper_angle(degrees)

    def units(self, amount: float) -> float:
        """An amount as a length in view units."""
        return math.fabs(amount) * self.plan.factor * self.zoom

    # Framing.

    def touched(self) -> list[Point]:
        """What must be seen: the move's points and the corners of its tool."""
        move, used = self.frame.move, list[Point]()
        match move:
            case TurnAngle() | ReadAngle():
                used += self.protractor_corners(move)
            case SetOff():
                used += self.ruler_corners(self.at(move.start), self.at(move.point))
            case ReadLength():
                used += self.ruler_corners(self.at(move.start), self.at(move.end))
            case Join():
                used += [self.at(move.start), self.at(move.end)]
            case CrossArcs():
                used += [self.at(name) for name in (move.first, move.second, move.point, move.opposite)]
            case DrawParallel():
                used += self.square_corners(self.square_pose(move))
            case DropPerpendicular():
                used += [self.at(move.start), self.at(move.foot), *self.square_corners(self.square_pose(move))]
        return used or [self.at(name) for name in self.seen()]

    def seen(self) -> set[str]:
        """Names of the points on the paper so far (of all, before the first move)."""
        named: set[str] = set()
        for index, move in enumerate(self.plan.construction.moves):
            if index in self.frame.shown or not self.frame.shown:
                if isinstance(move, SetOff):
                    named |= {move.start, move.point}
                elif isinstance(move, Join):
                    named |= {move.start, move.end}
        return named or {"O"} if "O" in self.points else named

    def protractor_corners(self, move: TurnAngle | ReadAngle) -> list[Point]:
        """The corners of the protractor's own rectangle, and the room its reading takes outside."""
        pose, _, reading = self.protractor_pose(move)
        r = RADIUS + 3.0
        room = pose.at.moved((RADIUS + 22.0) * pose.factor, reading)
        return [pose.xy(-r, -BASE), pose.xy(r, -BASE), pose.xy(-r, r), pose.xy(r, r), room]

    def ruler_corners(self, start: Point, end: Point) -> list[Point]:
        """The corners of the ruler that is laid from one point to another."""
        pose, length = self.ruler_pose(start, end)
        far = geometry.distance(start, end) / pose.factor
        return [
            pose.xy(-RULER_BEFORE_ZERO, 4.0), pose.xy(min(length, 40.0 + far), 4.0), start, end,
            pose.xy(-RULER_BEFORE_ZERO, -RULER_WIDTH - 10.0), pose.xy(far, -RULER_WIDTH - 16.0),
        ]  # fmt: skip

    def square_corners(self, pose: Pose) -> list[Point]:
        """The corners of a set square."""
        return [pose.xy(-10.0, 0.0), pose.xy(tools.SQUARE_SIDE, 0.0), pose.xy(-10.0, -0.6 * tools.SQUARE_SIDE)]

    def settle(self) -> None:
        """Choose enlargement and place so that what is touched fills the view."""
        box = geometry.bounds(self.touched())
        wide, high = max(box.width, 40.0), max(box.height, 40.0)
        room = WIDTH - 2 * MARGIN, HEIGHT - 2 * MARGIN
        self.zoom = min(room[0] / wide, room[1] / high, 0.62)
        centre = box.centre
        origin = Point(WIDTH / 2 - centre.x * self.zoom, HEIGHT / 2 - centre.y * self.zoom)
        self.stand = Stand(self.plan.picture, self.plan.factor * self.zoom, origin)

    # Tools.

    def protractor_pose(self, move: TurnAngle | ReadAngle) -> tuple[Pose, bool, float]:
        """Pose, whether the inner scale counts, and the paper direction of the reading.

        A half circle laid with its body on the side to which the angle is counted: on the inner
        scale anticlockwise from its right end, on the outer clockwise from its left end.
        """
        if isinstance(move, TurnAngle):
            zero, turn = zero_of(move, self.lines), turn_of(move, self.readings)
        else:
            zero = self.lines[move.first].degrees
            turn = wrap(self.lines[move.second].degrees - zero)
        start = self.paper_angle(zero)
        inner = self.plan.picture.sense * turn >= 0
        reading = start + self.plan.picture.sense * turn
        pose = Pose(self.at(move.at), start if inner else start + 180.0, self.zoom)
        return pose, inner, reading

    def protractor(self, move: TurnAngle | ReadAngle, words: str) -> Laid:
        """The protractor on its point, the counted sector, the zero and the reading."""
        pose, inner, reading = self.protractor_pose(move)
        zero = pose.degrees if inner else pose.degrees + 180.0
        sweep = wrap(reading - zero)
        f = self.zoom
        under: tuple[Item, ...] = (
            tools.body(pose),
            self.sector(pose.at, zero, sweep),
            Line(pose.at, pose.at.moved(RADIUS * f, zero), 3.4 * f, "tint-2"),
            protractor(pose, COUNT_INNER if inner else COUNT_OUTER),
        )
        ring = INNER_FIGURES if inner else OUTER_FIGURES
        over: tuple[Item, ...] = (
            Circle(pose.at, 1.6, 0.4, "accent"),
            *self.swing(pose.at, zero, sweep),
            figure("0°", pose.at.moved((RADIUS + 8.0) * f, zero), READING * 0.8, 0.0, ink="accent"),
        )
        shown: tuple[Item, ...] = (
            Line(pose.at, pose.at.moved((RADIUS + 6.0) * f, reading), 0.6, "accent"),
            Circle(pose.at.moved(ring * f, reading), 2.2 * f, 0.5, "accent"),
            self.words_at(words, pose.at.moved((RADIUS + 16.0) * f, reading)),
        )
        return Laid(under, over, shown)

    def sector(self, centre: Point, zero: float, sweep: float) -> Shape:
        """The part of the protractor that is counted through."""
        steps = max(2, int(math.fabs(sweep) / 3.0))
        outer = [centre.moved(RADIUS * self.zoom, zero + sweep * n / steps) for n in range(steps + 1)]
        inner = [centre.moved(WINDOW * self.zoom, zero + sweep * n / steps) for n in range(steps, -1, -1)]
        return Shape((*outer, *inner), 0.0, "accent", "tint-2")

    def swing(self, centre: Point, zero: float, sweep: float) -> tuple[Item, ...]:
        """An arrow from zero to the reading that shows the sense of counting."""
        radius = 0.62 * WINDOW * self.zoom
        if math.fabs(sweep) < 12.0:
            return ()
        sign = 1.0 if sweep > 0 else -1.0
        end = zero + sweep - sign * 4.0
        tip = centre.moved(radius, end)
        tail = centre.moved(radius, end - sign * 4.0)
        return (
            Arc(centre, radius, zero, sweep - sign * 7.0, 0.6, "accent"),
            Arrow(tail, tip, 0.6, "accent", 3.2),
        )

    def words_at(self, words: str, place: Point) -> Text:
        """A reading in large figures, kept inside the view."""
        trial = text(words, place, READING, "middle", "accent", "bold")
        box = box_of(trial, READING)
        dx = max(0.0, MARGIN - box.left) - max(0.0, box.right - (WIDTH - MARGIN))
        dy = max(0.0, MARGIN - box.bottom) - max(0.0, box.top - (HEIGHT - MARGIN))
        return text(words, Point(place.x + dx, place.y + dy), READING, "middle", "accent", "bold")

    def ruler_pose(self, start: Point, end: Point) -> tuple[Pose, float]:
        """The ruler's pose and length: zero on the start, or on the end for a leftward line, so that
        its figures do not stand on their heads."""
        length = geometry.distance(start, end) / self.zoom
        whole = RULER_LENGTH if length <= RULER_LENGTH else LONG_RULER
        degrees = geometry.direction(start, end)
        if -90.0 < degrees <= 90.0 or length == 0.0:
            return Pose(start, degrees, self.zoom), whole
        return Pose(end, degrees + 180.0, self.zoom), whole

    def ruler(self, start: Point, end: Point, words: str) -> Laid:
        """The ruler beside a line, the measured stretch tinted, zero and reading marked."""
        pose, whole = self.ruler_pose(start, end)
        length = geometry.distance(start, end) / self.zoom
        edge = (pose.xy(0.0, 0.0), pose.xy(length, 0.0), pose.xy(length, -RULER_WIDTH), pose.xy(0.0, -RULER_WIDTH))
        far = whole + RULER_BEFORE_ZERO
        body = (
            pose.xy(-RULER_BEFORE_ZERO, 0.0), pose.xy(far, 0.0),
            pose.xy(far, -RULER_WIDTH), pose.xy(-RULER_BEFORE_ZERO, -RULER_WIDTH),
        )  # fmt: skip
        under: tuple[Item, ...] = (
            Shape(body, 0.0, "accent", "tint"), Shape(edge, 0.0, "accent", "tint-2"), ruler(pose, whole)
        )  # fmt: skip
        over: tuple[Item, ...] = (
            Line(pose.xy(0.0, 3.0), pose.xy(0.0, -RULER_WIDTH - 2.0), 0.5, "accent"),
            figure("0", pose.xy(-3.0, -RULER_WIDTH - 6.0), READING * 0.8, 0.0, ink="accent"),
        )
        shown: tuple[Item, ...] = (
            Line(pose.xy(length, 3.0), pose.xy(length, -RULER_WIDTH - 2.0), 0.6, "accent"),
            self.words_at(words, pose.xy(length, -RULER_WIDTH - 9.0)),
        )
        return Laid(under, over, shown)

    def square_pose(self, move: DrawParallel | DropPerpendicular) -> Pose:
        """The set square where it ends: its long edge along the new line."""
        if isinstance(move, DrawParallel):
            return Pose(self.at(move.through), self.paper_angle(self.lines[move.line].degrees), self.zoom)
        start, foot = self.at(move.start), self.at(move.foot)
        degrees = self.paper_angle(self.lines[move.line].degrees) + 90.0
        if geometry.distance(start, foot) > 1e-6:
            degrees = geometry.direction(foot, start)
        return Pose(foot, degrees, self.zoom)

    def squares(self, move: DrawParallel | DropPerpendicular) -> Laid:
        """A set square, where it lies now and (sliding) where it was laid on first."""
        pose = self.square_pose(move)
        under: list[Item] = []
        if isinstance(move, DrawParallel):
            first = Pose(self.on_line(move.to, pose), pose.degrees, self.zoom)
            under.append(tools.square(first, None, (1.2, 1.2)))
            under.append(tools.guide(first, pose))
        under.append(tools.square(pose, "tint", ()))
        return Laid(tuple(under), (), ())

    def on_line(self, line: str, pose: Pose) -> Point:
        """Where the square's edge lay on the copied line: straight across from where it is now."""
        ray = self.lines[line]
        start = self.stand.place(ray.start)
        return geometry.foot(pose.at, geometry.Ray(start, self.paper_angle(ray.degrees)))

    def compasses(self, move: CrossArcs, words: str) -> Laid:
        """The compasses open from centre to arc, and the arc they draw."""
        centre = self.at(move.first if self.frame.part == "first" else move.second)
        met = self.at(move.point)
        radius = geometry.distance(centre, met)
        towards = geometry.direction(centre, met)
        middle = geometry.middle(centre, met)
        hinge = middle.moved(max(12.0, 0.45 * radius), towards + 90.0)
        legs: tuple[Item, ...] = (
            Line(centre, hinge, 1.0, "accent"), Line(hinge, met, 1.0, "accent"),
            Circle(hinge, 1.8, 0.4, "accent", "tint"), Circle(centre, 0.8, 0.0, "accent", "accent"),
        )  # fmt: skip
        arcs: tuple[Item, ...] = (Arc(centre, radius, towards - 14.0, 28.0, 0.4, "ink"),)
        shown: tuple[Item, ...] = (self.words_at(words, middle.moved(8.0, towards - 90.0)),)
        return Laid((Group(legs, name="compasses", instrument="compasses"),), arcs, shown)

    def lay(self, words: str) -> Laid:
        """The frame's tool in its pose."""
        move, tool = self.frame.move, self.frame.tool
        if tool == PROTRACTOR and isinstance(move, (TurnAngle, ReadAngle)):
            return self.protractor(move, words)
        if tool == RULER and isinstance(move, SetOff):
            return self.ruler(self.at(move.start), self.at(move.point), words)
        if tool == RULER and isinstance(move, ReadLength):
            return self.ruler(self.at(move.start), self.at(move.end), words)
        if tool == SQUARES and isinstance(move, (DrawParallel, DropPerpendicular)):
            return self.squares(move)
        if tool == COMPASSES and isinstance(move, CrossArcs):
            return self.compasses(move, words)
        return Laid((), (), ())

    def busy(self) -> list[tuple[Point, Point]]:
        """Straight pieces over the graduations and figures of a tool, for tags to keep clear of."""
        move = self.frame.move
        if isinstance(move, (TurnAngle, ReadAngle)):
            pose = self.protractor_pose(move)[0]
            rings = (WINDOW, 52.0, 58.0, 64.0, 70.0, RADIUS)
            pieces = [
                (pose.place(radius, degrees), pose.place(radius, degrees + 15.0))
                for radius in rings
                for degrees in range(0, 180, 15)
            ]
            return [*pieces, (pose.xy(-RADIUS, -BASE), pose.xy(RADIUS, -BASE))]
        ends = None
        if isinstance(move, SetOff):
            ends = self.at(move.start), self.at(move.point)
        elif isinstance(move, ReadLength):
            ends = self.at(move.start), self.at(move.end)
        if ends is None or self.frame.tool != RULER:
            return []
        pose, whole = self.ruler_pose(*ends)
        return [
            (pose.xy(-RULER_BEFORE_ZERO, -down), pose.xy(whole, -down))
            for down in (2.0, 6.0, 10.0, 14.0, 18.0, 22.0, RULER_WIDTH)
        ]

    # The page.

    def drawn(self) -> Drawn:
        """The strokes on the paper by the end of this frame; a compass crossing only once both arcs are drawn."""
        return draw(self.plan.construction, self.stand, self.look, CLASSROOM, shown=self.frame.shown)

    def page(self, title: str, words: str) -> Page:
        """The whole frame."""
        self.settle()
        laid, drawn = self.lay(words), self.drawn()
        ground = labels.Field(Box(1.0, 1.0, WIDTH - 1.0, HEIGHT - 1.0), drawn.segments)
        for item in tools.flat((*laid.over, *laid.reading)):
            if isinstance(item, Text):
                ground.boxes.append(box_of(item, READING).grown(1.0))
        for start, end in self.busy():
            ground.add(labels.Segment(start, end, "", 0.6))
        seen = [wanted for wanted in drawn.wanted if _inside(wanted)]
        placed, _ = labels.place(ground, seen)
        for label in placed:
            drawn.add(label.wanted.step, label.text, *([label.leader] if label.leader else []))
        steps = tuple(Group(tuple(items), step=number) for number, items in sorted(drawn.by_step.items()))
        items: tuple[Item, ...] = (
            Group(laid.under, name="tool", for_step=self.frame.step),
            *steps,
            Group(laid.over, name="zero"),
            Group(laid.reading, name="reading"),
        )
        return Page(WIDTH, HEIGHT, items, title, title)


def _inside(wanted: labels.Wanted) -> bool:
    """Whether a label's line is in view at all."""
    return any(0 < point.x < WIDTH and 0 < point.y < HEIGHT for point, _ in wanted.anchors)


def frame_page(plan: Plan, frame: Frame, look: Look, title: str, words: str) -> Page:
    """One frame of a lesson as a page of 120 by 108 units; ``words`` is its reading in figures."""
    return _Showing(plan, frame, look).page(title, words)
