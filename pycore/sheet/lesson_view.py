"""One frame of a lesson on a classroom screen: the drawing so far, the tool in place, its reading.

The view is 120 by 108 units; a unit is about a hundredth of the screen's height (ten pixels of 1080). The sheet is
enlarged so that the move fills the view; instruments keep their true size relative to the drawing. Capitals of readings
are at least 1/23 of the height.
"""

from pycore import geometry
from pycore.constructions import step_kinds
from pycore.constructions.frames import COMPASSES, FIRST_ARC, LINE, PROTRACTOR, RULER, SQUARES, Frame
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
from pycore.drawing import Arrow, Group, Item, Page, Text
from pycore.geometry import ORIGIN, Box, Point
from pycore.phasor import wrap
from pycore.sheet import labels, tools
from pycore.sheet.figure import draw
from pycore.sheet.instruments import BASE, RADIUS, RULER_BEFORE_ZERO, RULER_LENGTH, RULER_WIDTH, Pose
from pycore.sheet.lettered import box_of, text
from pycore.sheet.media import Style
from pycore.sheet.plan import Plan
from pycore.sheet.strokes import FigureStrokes, PhasorStyles, Placement
from pycore.sheet.tools import PlacedTool, ToolNote

WIDTH, HEIGHT = 120.0, 108.0
READING = 5.2
"""Capitals of a reading and of tags: 1/20 of the view's height."""
ZERO = 4.8
CLASSROOM = Style(
    note=4.7, value=4.7, tag=5.2, narrow=0.25, wide=0.5, extra_wide=1.0, head=3.6, large_head=5.6, tick=3.6,
    tick_gap=1.3, dash=(2.6, 1.0),
)  # fmt: skip
LONG_RULER = 300.0
MARGIN = 3.0
LARGEST, SMALLEST = 0.62, 0.46
"""Limits of the enlargement of paper and tool (units for each mm): as far as it helps, and so that scales can be read.
"""
LEANS = (0.0, 25.0, -25.0, 50.0, -50.0, 80.0, -80.0, 120.0, -120.0, 180.0)
"""Degrees from the best direction in which a reading looks for a free place."""


class _Showing:
    """Draws one frame: first in mm about the starting point, then enlarged to fill the view."""

    def __init__(self, plan: Plan, frame: Frame, look: PhasorStyles, *, circle: bool) -> None:
        self.plan, self.frame, self.look, self.circle = plan, frame, look, circle
        self.points = plan.construction.figure.points
        self.lines = plan.construction.figure.lines
        self.readings = plan.construction.figure.readings
        self.stand = Placement(plan.picture, plan.factor)
        self.zoom = 1.0

    # Places, in view units once the framing is known.

    def at(self, name: str) -> Point:
        """A named point."""
        return self.stand.place(self.points[name])

    def paper_angle(self, degrees: float) -> float:
        """Return a calculated angle as it appears on the screen."""
        return self.plan.picture.paper_angle(degrees)

    # Framing.

    def settle(self) -> None:
        """Choose enlargement and place: the move must be visible, and the drawing so far if possible.

        A tool that is read stays large enough to be read.
        """
        must, wish = self.touched(), [self.at(name) for name in self.seen()]
        if not must:
            must = wish or [ORIGIN]
        bounds = geometry.bounds([*must, *wish])
        readable = self.frame.tool in (PROTRACTOR, RULER)
        box = bounds if not readable or _fitting(bounds) >= SMALLEST else geometry.bounds(must)
        self.zoom = min(_fitting(box), LARGEST)
        centre = box.centre
        origin = Point(WIDTH / 2 - centre.x * self.zoom, HEIGHT / 2 - centre.y * self.zoom)
        self.stand = Placement(self.plan.picture, self.plan.factor * self.zoom, origin)

    def touched(self) -> list[Point]:
        """Return what must be visible: the corners of the tool with room for its reading."""
        move = self.frame.move
        if isinstance(move, (TurnAngle, ReadAngle)):
            return self.protractor_corners(move)
        ends = self.ruled()
        if ends is not None:
            return self.ruler_corners(*ends)
        square = self.squared()
        if square is not None:
            pose = self.square_pose(square)
            before = self.square_before(square, pose)
            corners = [*tools.square_corners(pose), pose.at]
            if before:
                # The guide lies behind the short sides.
                corners += [*tools.square_corners(before), before.xy(-25.0, 0.0), pose.xy(-25.0, 0.0)]
            return corners
        if isinstance(move, CrossArcs):
            return [self.at(name) for name in (move.first, move.second, move.point, move.opposite)]
        return []

    def seen(self) -> list[str]:
        """Return the names of the points on the paper so far."""
        named: list[str] = [START_POINT] if START_POINT in self.points else []
        for index, move in enumerate(self.plan.construction.moves):
            if index not in self.frame.drawn_moves:
                continue
            if isinstance(move, SetOff):
                named += [move.start, move.point]
            elif isinstance(move, Join):
                named += [move.start, move.end]
        return named

    def protractor_corners(self, move: TurnAngle | ReadAngle) -> list[Point]:
        """The corners of the protractor's own rectangle, and the room its reading takes outside."""
        pose, _, sweep = self.protractor_pose(move)
        r = RADIUS + 3.0
        low = -r if self.circle else -BASE
        room = pose.at.moved((RADIUS + 22.0) * pose.factor, self.zero_of(move) + sweep)
        beyond = pose.at.moved((RADIUS + 10.0) * pose.factor, self.zero_of(move))
        return [pose.xy(-r, low), pose.xy(r, low), pose.xy(-r, r), pose.xy(r, r), room, beyond]

    def ruler_corners(self, start: Point, end: Point) -> list[Point]:
        """The corners of the ruler that is laid from one point to another, as far as it matters."""
        pose, full_length = self.ruler_pose(start, end)
        far = geometry.distance(start, end) / pose.factor
        return [
            pose.xy(-RULER_BEFORE_ZERO, 4.0), pose.xy(min(full_length, 40.0 + far), 4.0), start, end,
            pose.xy(-RULER_BEFORE_ZERO, -RULER_WIDTH - 10.0), pose.xy(far, -RULER_WIDTH - 16.0),
        ]  # fmt: skip

    # Poses.

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
        return Pose(self.at(move.at), start if inner or self.circle else start + 180.0, self.zoom), inner, sweep

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
            start = self.stand.origin
            return start, start.moved(longest * self.stand.factor, 0.0)
        return None

    def ruler_pose(self, start: Point, end: Point) -> tuple[Pose, float]:
        """The ruler's pose, its zero on the start, and its length."""
        length = geometry.distance(start, end) / self.zoom
        degrees = geometry.direction(start, end) if length else 0.0
        return Pose(start, degrees, self.zoom), RULER_LENGTH if length <= RULER_LENGTH else LONG_RULER

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

    # The tool.

    def lay(self, words: str) -> PlacedTool:
        """Return the frame's tool in its pose."""
        move, tool = self.frame.move, self.frame.tool
        if tool == PROTRACTOR and isinstance(move, (TurnAngle, ReadAngle)):
            pose, inner, sweep = self.protractor_pose(move)
            return tools.protractor_laid(pose, inner, sweep, words, circle=self.circle)
        ends = self.ruled()
        if ends is not None:
            pose, full_length = self.ruler_pose(*ends)
            return tools.ruler_laid(pose, full_length, geometry.distance(*ends) / self.zoom, words)
        square = self.squared()
        if square is not None:
            pose = self.square_pose(square)
            # Square on to an axis, its short side lies along it.
            back = 0.0 if isinstance(square, DropPerpendicular) else tools.SQUARE_BACK
            return tools.square_laid(pose, self.square_before(square, pose), back)
        if tool == COMPASSES and isinstance(move, CrossArcs):
            centre = self.at(move.first if self.frame.phase == FIRST_ARC else move.second)
            return tools.compasses_laid(centre, self.at(move.point), words)
        return PlacedTool()

    # The page.

    def drawn(self) -> FigureStrokes:
        """Return the strokes on paper at the end of this frame; arcs cross only after both are drawn."""
        visible_moves, moves = self.frame.drawn_moves, self.plan.construction.moves
        if self.frame.tool == COMPASSES and self.frame.phase == FIRST_ARC:
            visible_moves -= {index for index in visible_moves if moves[index] == self.frame.move}
        return draw(self.plan.construction, self.stand, self.look, CLASSROOM, visible_moves=visible_moves)

    def page(self, title: str, words: str) -> Page:
        """Return the complete frame."""
        self.settle()
        laid, drawn = self.lay(words), self.drawn()
        ground = labels.LabelArea(Box(1.0, 1.0, WIDTH - 1.0, HEIGHT - 1.0), drawn.obstacles)
        for start, end in laid.busy:
            ground.add(labels.Segment(start, end, "", 0.6))
        reading = _beside(ground, laid.read, READING, "bold")
        zero = _beside(ground, laid.zero, ZERO, "regular")
        placed, _ = labels.place(ground, [request for request in drawn.label_requests if _inside(request)])
        for label in placed:
            drawn.add(label.request.step, label.text, *([label.leader] if label.leader else []))
        steps = tuple(Group(tuple(items), step=number) for number, items in sorted(drawn.by_step.items()))
        items: tuple[Item, ...] = (
            Group(laid.under, name="tool", for_step=self.frame.step),
            *steps,
            *self.sample(),
            Group((*laid.over, *zero), name="zero"),
            Group((*laid.reading, *reading), name="reading"),
        )
        return Page(WIDTH, HEIGHT, items, title, title)

    def sample(self) -> tuple[Item, ...]:
        """Return the length of the longest line along the ruler, for the frame that only chooses the scale."""
        ends = self.ruled()
        if self.frame.name != step_kinds.SCALE or ends is None:
            return ()
        arm = max(self.plan.construction.arms, key=lambda arm: arm.size)
        ink = self.look.inks.get(arm.key, "ink")
        arrow = Arrow(*ends, CLASSROOM.wide, ink, CLASSROOM.head, cased=ink == "black")
        middle = geometry.middle(*ends)
        tag = text(self.look.tags[arm.key], Point(middle.x, middle.y + 2.5), READING, "middle")
        return (Group((arrow, tag), name="sample"),)


def _fitting(box: Box) -> float:
    """Return the enlargement at which a rectangle fills the view."""
    return min((WIDTH - 2 * MARGIN) / max(box.width, 40.0), (HEIGHT - 2 * MARGIN) / max(box.height, 40.0))


def _beside(ground: labels.LabelArea, note: ToolNote | None, capitals: float, face: str) -> tuple[Text, ...]:
    """Return words beside their anchor clear of everything, or at least inside the view."""
    if note is None:
        return ()
    shape = text(note.words, ORIGIN, capitals, "middle", "accent", face)  # type: ignore[arg-type]
    size = box_of(shape, capitals)
    boxes = [
        _off(size, note.anchor, note.degrees + lean, gap) for gap in (1.4, 3.0, 6.0, 10.0, 15.0) for lean in LEANS
    ]
    box = next((box for box in boxes if ground.clear(box)), _inwards(boxes[0]))
    ground.boxes.append(box.grown(0.6))
    at = Point(box.centre.x, box.bottom - size.bottom)
    return (text(note.words, at, capitals, "middle", "accent", face),)  # type: ignore[arg-type]


def _off(size: Box, anchor: Point, degrees: float, gap: float) -> Box:
    """Return a rectangle of this size with its nearest side ``gap`` from the anchor in a direction."""
    unit = ORIGIN.moved(1.0, degrees)
    across, up = max(unit.x, -unit.x), max(unit.y, -unit.y)
    reach = gap + (across * size.width + up * size.height) / 2
    x, y = anchor.x + unit.x * reach, anchor.y + unit.y * reach
    return Box(x - size.width / 2, y - size.height / 2, x + size.width / 2, y + size.height / 2)


def _inwards(box: Box) -> Box:
    """Return the rectangle moved into the view."""
    dx = max(0.0, MARGIN - box.left) - max(0.0, box.right - (WIDTH - MARGIN))
    dy = max(0.0, MARGIN - box.bottom) - max(0.0, box.top - (HEIGHT - MARGIN))
    return Box(box.left + dx, box.bottom + dy, box.right + dx, box.top + dy)


def _inside(request: labels.LabelRequest) -> bool:
    """Return whether a label's line is visible at all."""
    return any(0 < point.x < WIDTH and 0 < point.y < HEIGHT for point, _ in request.anchors)


def frame_page(plan: Plan, frame: Frame, look: PhasorStyles, title: str, words: str, *, circle: bool = False) -> Page:
    """Return one frame of a lesson as a page of 120 by 108 units.

    ``words``: its reading as text. ``circle``: the protractor is a full circle.
    """
    return _Showing(plan, frame, look, circle=circle).page(title, words)
