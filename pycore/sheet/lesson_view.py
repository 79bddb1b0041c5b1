"""One frame of a lesson on a classroom screen: the drawing so far, the tool in place, its reading.

The view is 120 by 98.4 units (sheet/laying.py). Capitals of readings are at least 1/23 of the screen's height.
"""

from pycore import geometry
from pycore.constructions import step_kinds
from pycore.constructions.frames import COMPASSES, FIRST_ARC, PROTRACTOR, Frame
from pycore.constructions.moves import CrossArcs, DropPerpendicular, ReadAngle, TurnAngle
from pycore.constructions.names import RETURN_KEY, SUM_KEY
from pycore.drawing import WHOLE, Arc, Arrow, Face, Group, Ink, Inset, Item, Line, Page, Shape
from pycore.geometry import ORIGIN, Box, Point
from pycore.sheet import labels, tools
from pycore.sheet.figure import draw
from pycore.sheet.laying import HEIGHT, WIDTH, Laying, Stage
from pycore.sheet.lettered import box_of, text
from pycore.sheet.plan import Plan
from pycore.sheet.plates import plates
from pycore.sheet.strokes import FigureStrokes, PhasorStyles
from pycore.sheet.styles import Style
from pycore.sheet.tools import PlacedTool, ToolNote

READING = 5.2
"""Capitals of a reading and of tags: 1/20 of the screen's height."""
ZERO = 4.8
CLASSROOM = Style(
    note=4.7, value=4.7, tag=5.2, narrow=0.25, wide=0.5, extra_wide=1.0, head=3.6, large_head=5.6, tick=3.6,
    tick_gap=1.3, dash=(2.6, 1.0),
)  # fmt: skip
MARGIN = 2.0
LEANS = (0.0, 20.0, -20.0, 40.0, -40.0, 60.0, -60.0, 80.0, -80.0, 100.0, -100.0, 125.0, -125.0, 150.0, -150.0, 180.0)
"""Degrees from the best direction in which a reading looks for a free place."""
LOOKED_AT, CLOSE = 9.6, 3.0
"""Side of the part that a close-up shows, units, and its enlargement."""
GAPS = (1.4, 3.0, 6.0, 10.0, 15.0, 21.0, 28.0, 36.0)
"""How far from its mark a reading may stand."""
INSET_MARGIN = 2.0
MET = 0.05
"""Units within which two lines end at one point."""
LEADER_FROM = 3.6
"""A reading that stands this far from its mark has a leader to it."""


class _Showing(Laying):
    """Draws one frame in its lesson's place and scale."""

    def __init__(self, plan: Plan, frame: Frame, look: PhasorStyles, stage: Stage, *, circle: bool) -> None:
        super().__init__(plan, frame, stage, circle=circle)
        self.look = look

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

    # The drawing.

    def strokes(self, visible_moves: frozenset[int]) -> FigureStrokes:
        """Return what stands on paper when these moves are made; arcs cross only after both are drawn."""
        moves = self.plan.construction.moves
        if self.frame.tool == COMPASSES and self.frame.phase == FIRST_ARC:
            visible_moves -= {index for index in visible_moves if moves[index] == self.frame.move}
        return draw(self.plan.construction, self.stand, self.look, CLASSROOM, visible_moves=visible_moves)

    def page(self, title: str, words: str, before: frozenset[int] = frozenset()) -> Page:
        """Return the complete frame. ``before``: the moves on the paper in the frame before."""
        laid, drawn = self.lay(words), self.strokes(self.frame.drawn_moves)
        earlier = self.strokes(before & self.frame.drawn_moves)
        ground = labels.LabelArea(Box(1.0, 1.0, WIDTH - 1.0, HEIGHT - 1.0), drawn.obstacles)
        for start, end in laid.busy:
            ground.add(labels.Segment(start, end, "", 0.6))
        close = self.close_up(laid, drawn) if words and self.frame.reads else None
        if close:
            ground.boxes += [close.place, close.shown]
        reading = beside(ground, laid.read, READING, "bold", "accent")
        zero = beside(ground, laid.zero, ZERO, "regular", "accent")
        placed, _ = labels.place(ground, [request for request in drawn.label_requests if _inside(request)])
        old_tags = {request.owner for request in earlier.label_requests}
        whole: tuple[Item, ...] = (
            Group(laid.body, name="tool"),
            Group(laid.tinted, name="reading"),
            Group(laid.scale, name="tool", for_step=self.frame.step),
            *_scales(laid),
            *_by_step(drawn, earlier, self.sum_tip(drawn)),
            *plates(laid, drawn.obstacles),
            *self.sample(),
            Group((*laid.over, *zero), name="zero"),
            Group((*laid.reading, *reading), name="reading"),
            *tags([label for label in placed if label.request.owner in old_tags]),
            Group(tags([label for label in placed if label.request.owner not in old_tags]), name="fresh-tags"),
        )
        return Page(WIDTH, HEIGHT, (Group(whole, name=WHOLE), *_close_up(close)), title, title)

    def sum_tip(self, drawn: FigureStrokes) -> Point | None:
        """Return where the sum ends, once it is drawn."""
        groups = [item for items in drawn.by_step.values() for item in items if isinstance(item, Group)]
        is_drawn = any(group.phasor in (SUM_KEY, RETURN_KEY) for group in groups)
        return self.at(self.plan.construction.end) if is_drawn else None

    def close_up(self, laid: PlacedTool, drawn: FigureStrokes) -> Inset | None:
        """Return the place that is read, enlarged, in the corner of the view with the fewest strokes."""
        if laid.mark is None:
            return None
        x, y = laid.mark
        half, side = LOOKED_AT / 2, CLOSE * LOOKED_AT
        shown = Box(x - half, y - half, x + half, y + half)
        corners = [
            Box(left, low, left + side, low + side)
            for left in (WIDTH - side - INSET_MARGIN, INSET_MARGIN)
            for low in (INSET_MARGIN, HEIGHT - side - INSET_MARGIN)
        ]
        free = [corner for corner in corners if not corner.meets(shown.grown(READING))]

        def crossed(corner: Box) -> int:
            room = corner.grown(2.0)
            return len([piece for piece in drawn.obstacles if room.meets_segment(piece.start, piece.end)])

        return Inset(shown, min(free, key=crossed)) if free and min(map(crossed, free)) == 0 else None

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


def _scales(laid: PlacedTool) -> tuple[Group, ...]:
    """Return the numbers of a tool as they are with its reading, and as they are for a class that is asked for it."""
    if laid.asked == laid.known:
        return (Group(laid.known, name="tool"),)
    return Group(laid.known, name="known"), Group(laid.asked, name="asked", hidden=True)


def _by_step(drawn: FigureStrokes, earlier: FigureStrokes, tip: Point | None) -> list[Group]:
    """Return the strokes of each step; what this frame adds is in groups named ``fresh``.

    What meets at the ``tip`` of a sum that is drawn tells where it ends: in groups named ``to-answer``.
    """
    groups = []
    for number, items in sorted(drawn.by_step.items()):
        old = earlier.by_step.get(number, [])
        shown = [(item, Group((item,), name="to-answer") if tip and meets(item, tip) else item) for item in items]
        fresh = tuple(one for item, one in shown if item not in old)
        groups.append(Group(tuple(one for item, one in shown if item in old), step=number))
        if fresh:
            groups.append(Group((Group(fresh, step=number),), name="fresh"))
    return groups


def meets(item: Item, tip: Point) -> bool:
    """Return whether an item is a dashed line that ends at a point, or an arc of compasses through it."""
    if isinstance(item, Arc):
        return geometry.distance(item.centre.moved(item.radius, item.start + item.sweep / 2), tip) < MET
    if not isinstance(item, Group) or item.name != "parallel":
        return False
    return any(
        isinstance(line, Line) and min(geometry.distance(line.start, tip), geometry.distance(line.end, tip)) < MET
        for line in item.items
    )


def tags(placed: list[labels.PlacedLabel]) -> tuple[Group, ...]:
    """Return labels, each in a group that names what it is the tag of."""
    return tuple(
        Group((label.text, *([label.leader] if label.leader else [])), step=label.request.step,
              name=f"tag-{label.request.owner}")
        for label in placed
    )  # fmt: skip


def _frame(box: Box, width: float, fill: bool) -> Shape:
    """Return a rectangle."""
    return Shape(box.corners, width, "ink", "sheet" if fill else None)


def _close_up(close: Inset | None) -> tuple[Group, ...]:
    """Return the close-up, its frame, and the frame at its place."""
    if close is None:
        return ()
    frames = _frame(close.shown, 0.2, False), _frame(close.place, 0.25, False)
    return (Group((_frame(close.place, 0.0, True),), name="close-up", inset=close), Group(frames, name="close-frame"))


def beside(
    ground: labels.LabelArea, note: ToolNote | None, capitals: float, face: Face, ink: Ink
) -> tuple[Item, ...]:
    """Return words beside their anchor clear of everything, or at least inside the view, with a leader to it."""
    if note is None:
        return ()
    shape = text(note.words, ORIGIN, capitals, "middle", ink, face)
    size = box_of(shape, capitals)
    places = ((gap, lean) for gap in GAPS for lean in LEANS)
    boxes = (_off(size, note.anchor, note.degrees + lean, gap) for gap, lean in places)
    box = next((box for box in boxes if ground.clear(box)), None)
    if box is None:
        box = _inwards(_off(size, note.anchor, note.degrees + LEANS[0], GAPS[0]))
    ground.boxes.append(box.grown(0.6))
    at = Point(box.centre.x, box.bottom - size.bottom)
    words = text(note.words, at, capitals, "middle", ink, face)
    near = Point(min(max(note.anchor.x, box.left), box.right), min(max(note.anchor.y, box.bottom), box.top))
    if geometry.distance(near, note.anchor) < LEADER_FROM:
        return (words,)
    start = near.moved(0.6, geometry.direction(near, note.anchor))
    ground.add(labels.Segment(start, note.anchor))
    return words, Group((Line(start, note.anchor, tools.MARK, ink),), name="leader")


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


def frame_page(
    plan: Plan, frame: Frame, look: PhasorStyles, stage: Stage, title: str, words: str, *, before: frozenset[int],
    circle: bool = False,
) -> Page:  # fmt: skip
    """Return one frame of a lesson as a page of 120 by 98.4 units.

    ``words``: its reading as text. ``before``: the moves on the paper in the frame before. ``circle``: the protractor
    is a full circle.
    """
    return _Showing(plan, frame, look, stage, circle=circle).page(title, words, before)
