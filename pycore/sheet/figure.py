"""The strokes of a construction in mm: arrows, dashed parallels, arcs, ticks, and label requests."""

import math
from collections.abc import Callable, Iterable, Sequence

from pycore import geometry, quantity
from pycore.constructions import roles, step_kinds
from pycore.constructions.companions import leads
from pycore.constructions.construction import Construction
from pycore.constructions.moves import (
    CrossArcs,
    Direction,
    Join,
    Move,
    ReadAngle,
    SetOff,
    Start,
    TurnAngle,
    turn_of,
    zero_of,
)
from pycore.constructions.names import (
    AXIS_ACROSS,
    AXIS_UP,
    FIRST_DIRECTION,
    RESULT_ANGLE,
    START_POINT,
    SUM_KEY,
    line_of,
)
from pycore.drawing import Arc, Arrow, Circle, Group, Ink, Line
from pycore.geometry import ORIGIN, Box, Point
from pycore.phasor import wrap
from pycore.sheet.aside import RING, Lanes, aside, carried
from pycore.sheet.companion import companion_strokes
from pycore.sheet.labels import OF_ANGLE, Along, AlongArc, LabelRequest, Segment
from pycore.sheet.strokes import REFERENCE_SHARE, FigureStrokes, PhasorStyles, Placement
from pycore.sheet.styles import Style
from pycore.sheet.ticks import TickedLine, free_shares, near_strokes, ticks, tip_cross

DOT_BELOW = 4.0
"""A phasor shorter than this many mm is drawn as a dot with a label (common practice)."""
STRAIGHT = 179.5
"""From this angle in degrees two lines count as one: no arc is drawn between them."""
PART_LABELLED = 8.0
"""From this length in mm a component bears its length."""
MILLIMETRES = f"{quantity.NO_BREAK_SPACE}mm"
ALONG_ARC = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)
"""Where along an arc its size may stand, in order of preference."""


class ConstructionPen:
    """Draws one construction, move by move, into a ``FigureStrokes``; arguments as of ``draw``."""

    def __init__(
        self,
        construction: Construction,
        stand: Placement,
        look: PhasorStyles,
        style: Style,
        phasors_only: bool = False,
        visible_moves: frozenset[int] | None = None,
        room: Box | None = None,
    ) -> None:
        self.phasors_only = phasors_only
        self.visible_moves = visible_moves
        self.construction, self.stand, self.look, self.style = construction, stand, look, style
        self.figure = construction.figure
        self.at: Callable[[str], Point] = stand.places(self.figure.points).__getitem__
        self.drawn = FigureStrokes()
        self.laid: dict[str, int] = {}
        self.ticked: list[TickedLine] = []
        self.parts: list[LabelRequest] = []
        self.shafts: dict[str, tuple[Point, Point]] = {}
        self.near: dict[tuple[str, Point], tuple[list[Segment], int]] = {}
        """The strokes beside a line with ticks, by its owner and start, and how many strokes were on the paper then."""
        self.before = 0
        self.lanes = Lanes([self.at(name) for ends in construction.drawn_ends for name in ends], room, style.aside)
        self.arcs: dict[Point, list[tuple[float, float, float]]] = {}

    def trace(self) -> FigureStrokes:
        """Draw every visible move; ticks and the places of labels wait until the figure is where it stays."""
        index = 0
        for number, step in self.construction.numbered:
            for move in step.moves:
                if self.visible_moves is None or index in self.visible_moves:
                    self.move(number, step.name, move)
                index += 1
        return self.drawn

    def finish(self) -> FigureStrokes:
        """Draw the ticks and say where labels may stand, now that all lines are on the paper."""
        for line in self.ticked:
            self.tick(line)
        if self.has_arcs:
            drawn = self.drawn.obstacles
            self.drawn.label_requests = [self.apart(request, drawn) for request in self.drawn.label_requests]
        self.drawn.label_requests += self.parts
        return self.drawn

    def tick(self, line: TickedLine) -> None:
        """Draw a line's ticks where nothing crosses it."""
        style, items = self.style, self.drawn.by_step[line.step]
        group = items[line.place]
        # In a lesson ticks stay where they were when a later line crosses theirs.
        drawn = self.drawn.obstacles if self.visible_moves is None else self.drawn.segments[: line.before]
        near = near_strokes(line.start, line.end, drawn)
        self.near[line.owner, line.start] = near, len(drawn)
        share = free_shares(line.start, line.end, near, line.owner)[0]
        across = ticks(line.start, line.end, line.count, line.width, line.ink, style, share)
        if isinstance(group, Group):
            items[line.place] = Group((*group.items, *across), phasor=group.phasor, copy=group.copy, name=group.name)
        for one in across:
            self.drawn.aside.append(Segment(one.start, one.end, ""))

    def apart(self, request: LabelRequest, drawn: Sequence[Segment]) -> LabelRequest:
        """Return the request for a phasor's label with the places first that are clear of ticks and crossings."""
        if request.owner not in self.shafts:
            return request
        start, tip = self.shafts[request.owner]
        # Since its ticks were drawn, only those of other lines have come.
        near, before = self.near.get((request.owner, start), ([], 0))
        near = near + near_strokes(start, tip, drawn[before:])
        shares = free_shares(start, tip, near, request.owner, label=True)
        # On the side away from the other lines first.
        (x, y), across, up = start, start.y - tip.y, tip.x - start.x
        weight = math.fsum([(at_x - x) * across + (at_y - y) * up for at_x, at_y in self.lanes.points])
        places = Along(start, tip, shares, (-1, 1) if weight > 0.0 else (1, -1))
        return LabelRequest(request.owner, request.phrase, request.capitals, places, request.step)

    def wants_ticks(self, number: int, start: Point, end: Point, key: str, width: float, ink: Ink, owner: str) -> None:
        """Note that the group just added to a step gets ticks."""
        if count := self.look.ticks.get(key, 0):
            place = len(self.drawn.by_step[number]) - 1
            self.ticked.append(TickedLine(number, place, start, end, count, width, ink, owner, self.before))

    def move(self, number: int, name: str, move: Move) -> None:
        self.before = len(self.drawn.segments)
        match move:
            case Start():
                self.drawn.add(number, Circle(self.at(move.point), 0.9, 0.35, "ink", "sheet"))
            case Direction():
                self.laid.setdefault(move.line, number)
                self.direction(number, name, move)
            case TurnAngle():
                self.laid.setdefault(move.line, number)
                if self.has_arcs and name in (step_kinds.DRAW, step_kinds.DRAW_ALONG, step_kinds.FOLLOW):
                    self.turned(number, move)
            case SetOff():
                self.set_off(number, move)
            case CrossArcs() if not self.phasors_only:
                self.crossed(number, move)
            case Join():
                self.join(self.laid.get(move.line, number), move)
            case ReadAngle():
                if move.reading == RESULT_ANGLE and self.has_arcs and self.sum_is_drawn():
                    self.read_angle(number, move)

    @property
    def has_arcs(self) -> bool:
        """Whether angles get arcs: not on an overlay, nor in a lesson, where the protractor shows them."""
        return not self.phasors_only and self.visible_moves is None

    def sum_is_drawn(self) -> bool:
        """Whether the line to the tip of the sum has its own arrow."""
        return any(isinstance(move, Join) and move.phasor == SUM_KEY for move in self.construction.moves)

    def direction(self, number: int, name: str, move: Direction) -> None:
        start = self.at(move.at)
        degrees = self.stand.picture.paper_angle(move.degrees)
        longest = max(arm.size for arm in self.construction.arms) * self.stand.factor
        if move.line == FIRST_DIRECTION and leads(self.construction) is None:
            end = start.moved(longest * REFERENCE_SHARE, degrees)
            self.drawn.add(number, Line(start, end, 0.18, "ink-2"))
            self.drawn.keep_clear(start, end, "reference")
            self.want("reference", self.style.note, number, Along(start, end))
        elif move.line in (AXIS_ACROSS, AXIS_UP):
            self.axis(number, move.line, start, degrees)
        elif name == step_kinds.VOLTAGES and not self.phasors_only:
            ray, tag = geometry.Ray(start, degrees), self.look.tags.get(move.line, ())
            self.parts += self.drawn.voltage(number, ray, longest, self.lanes.room, tag, self.style.note)

    def axis(self, number: int, line: str, start: Point, degrees: float) -> None:
        unit = ORIGIN.moved(1.0, degrees)
        feet = [
            geometry.dot(self.at(name).minus(start), unit)
            for name in self.figure.points
            if name.startswith(line)
        ]
        low, high = min([*feet, 0.0]), max([*feet, 0.0])
        ends = start.plus(unit.times(low)), start.plus(unit.times(high))
        self.drawn.add(number, Line(*ends, 0.18, "ink-2"))
        self.drawn.keep_clear(*ends)

    def set_off(self, number: int, move: SetOff) -> None:
        start, tip = self.at(move.start), self.at(move.point)
        if move.role == roles.MARK:
            degrees = geometry.direction(start, tip) + 90.0
            half = self.style.tick / 2
            ends = tip.moved(-half, degrees), tip.moved(half, degrees)
            self.drawn.add(number, Line(*ends, self.style.wide, "ink"))
            self.drawn.keep_clear(*ends)
            return
        if move.role == roles.COMPANION:
            self.companion(number, start, tip, move.phasor)
            return
        self.arrow(number, start, tip, move.phasor, move.role, move.copy)

    def companion(self, number: int, start: Point, tip: Point, key: str) -> None:
        """Draw a phasor of another quantity."""
        group, pieces = companion_strokes(start, tip, key, self.look.inks.get(key, "ink"), self.style)
        self.drawn.add(number, group)
        self.drawn.segments += pieces
        # Near its tip, where an arrow that lies on it seldom reaches.
        self.want(key, self.style.tag, number, Along(start.plus(tip.minus(start).times(0.5)), tip))

    def arrow(
        self, number: int, start: Point, tip: Point, key: str, role: str, copy: bool = False
    ) -> None:
        """Draw the arrow of a phasor with its ticks, or a dot if it is too short."""
        style, ink = self.style, self.look.inks.get(key, "blue")
        width = style.extra_wide if role == roles.RESULTANT else style.wide
        head = style.large_head if role == roles.RESULTANT else style.head
        length, owner = geometry.distance(start, tip), key + ("-copy" if copy else "")
        if length < DOT_BELOW:
            dot = Arrow(start, tip, 0.1, ink, 0.0), Circle(tip, 0.7, 0.0, ink, ink)
            self.drawn.add(number, Group(dot, phasor=key, copy=copy))
            self.drawn.keep_clear(start, tip, owner, width / 2)
            self.drawn.keep_clear(tip, tip.moved(0.01, 0.0), "", 0.7)
        else:
            thin = self.phasors_only
            arrow = Arrow(start, tip, width, ink, 0.0 if thin else head, cased=ink == "black" and not thin)
            shift = self.lanes.shift(start, tip) if self.has_arcs else None
            if shift is not None:
                self.drawn.moved.append(key)
                over = carried(arrow, shift)
                self.drawn.add(number, *over)
                self.drawn.aside += [Segment(one.start, one.end, "", 0.1) for one in over if isinstance(one, Line)]
                self.drawn.aside.append(Segment(tip, tip.moved(0.01, 0.0), "", RING + 0.15))
                self.drawn.add(number, aside(arrow, shift, key, copy=copy))
                self.drawn.keep_clear(start, tip, "", width / 2)
                start, tip = start.plus(shift), tip.plus(shift)
            else:
                self.drawn.add(number, Group((arrow,), phasor=key, copy=copy))
            self.guard(start, tip, owner, width, head, self.drawn.segments if shift is None else self.drawn.aside)
            for one in tip_cross(tip) if thin and role not in (roles.PARTIAL, roles.RESULTANT) else ():
                self.drawn.add(number, one)
                self.drawn.keep_clear(one.start, one.end)
            if not thin and length > head + 2 * style.tick:
                back = tip.moved(-head, geometry.direction(start, tip))
                self.wants_ticks(number, start, back, key, width, ink, owner)
        if not copy:
            if length >= DOT_BELOW:
                self.shafts[key] = start, tip
            self.want(key, style.tag, number, Along(start, tip))

    def guard(self, start: Point, tip: Point, owner: str, width: float, head: float, pieces: list[Segment]) -> None:
        """Keep labels clear of a shaft and its arrowhead."""
        pieces.append(Segment(start, tip, owner, width / 2))
        size = min(head, 0.6 * geometry.distance(start, tip))
        back = tip.moved(-size, geometry.direction(start, tip))
        pieces.append(Segment(back, tip, "", 0.17 * size))

    def join(self, number: int, move: Join) -> None:
        start, end = self.at(move.start), self.at(move.end)
        if move.role == roles.HIDDEN:
            return
        if move.role in (roles.PARTIAL, roles.RESULTANT):
            self.arrow(number, start, end, move.phasor, move.role)
            return
        if self.phasors_only:
            return
        if geometry.distance(start, end) < 0.5 or (move.role == roles.DROP and self.on_axis(start, end)):
            return
        style = self.style
        ink = self.look.inks.get(move.like, "ink-2")
        owner = f"parallel-{move.line}"
        self.drawn.add(number, Group((Line(start, end, style.narrow, ink, style.dash),), name="parallel"))
        self.drawn.keep_clear(start, end, owner)
        if move.role == roles.DROP and self.has_arcs and geometry.distance(start, end) >= PART_LABELLED:
            drawn = quantity.on_ruler(geometry.distance(start, end) / self.look.share)
            length = quantity.plain(drawn, self.look.mark) + MILLIMETRES
            anchors = Along(start, end)
            self.parts.append(LabelRequest(owner, (length,), self.style.note, anchors, number, optional=True))
        if move.role == roles.PARALLEL and geometry.distance(start, end) > 3 * style.tick:
            self.wants_ticks(number, start, end, move.like, style.narrow, ink, owner)

    def on_axis(self, tip: Point, foot: Point) -> bool:
        """Return whether a perpendicular would run along the arrow itself, which lies on an axis."""
        return geometry.segment_distance(foot, tip, self.at(START_POINT)) < 0.5

    def crossed(self, number: int, move: CrossArcs) -> None:
        """Draw short strokes of both compass arcs where they cross."""
        met = self.at(move.point)
        for centre in (self.at(move.first), self.at(move.second)):
            radius = geometry.distance(centre, met)
            if radius < DOT_BELOW:
                continue
            middle = geometry.direction(centre, met)
            half = min(20.0, 4.0 / radius / math.pi * 180)
            self.drawn.add(number, Arc(centre, radius, middle - half, 2 * half, 0.25, "ink-2"))
            self.guard_arc(centre, radius, middle - half, 2 * half)

    def turned(self, number: int, move: TurnAngle) -> None:
        turn = turn_of(move, self.figure.readings)
        zero = zero_of(move, self.figure.lines)
        arm = self.arm_length(move)
        self.angle(number, self.at(move.at), zero, turn, arm, "angle-" + move.line)

    def arm_length(self, move: TurnAngle) -> float:
        """Return the shorter side of a marked angle, mm; the first direction is long enough."""
        lengths = [
            geometry.distance(self.at(other.start), self.at(other.point))
            for other in self.construction.moves
            if isinstance(other, SetOff)
            and other.role != roles.MARK
            and other.line in (move.line, move.zero)
        ]
        return min(lengths, default=0.0)

    def read_angle(self, number: int, move: ReadAngle) -> None:
        first = self.figure.lines[move.first].degrees
        turn = wrap(self.figure.lines[move.second].degrees - first)
        end = self.figure.points[self.construction.end]
        arm = geometry.distance(self.at(START_POINT), self.stand.place(end))
        if move.first.startswith("L"):
            size = next(a.size for a in self.construction.arms if move.first == line_of(a.number))
            arm = min(arm, size * self.stand.factor)
        radius = self.style.arc * 1.8
        self.angle(number, self.at(move.at), first, turn, arm, "angle-sum", radius)

    def angle(
        self,
        number: int,
        centre: Point,
        zero: float,
        turn: float,
        arm: float,
        owner: str,
        radius: float | None = None,
    ) -> None:
        """Draw an arc between two lines with its size in degrees; none if it would not be visible."""
        size = -turn if turn < 0 else turn
        reach = min(radius or self.style.arc, 0.7 * arm)
        if not 4.0 <= size <= STRAIGHT or reach < 5.0:
            return
        start = self.stand.picture.paper_angle(zero)
        sweep = self.stand.picture.sense * turn
        reach = self.free_radius(centre, start, sweep, reach)
        self.drawn.add(number, Arc(centre, reach, start, sweep, self.style.narrow, "ink-2"))
        self.guard_arc(centre, reach, start, sweep, owner)
        anchors = AlongArc(centre, reach, tuple([start + sweep * share for share in ALONG_ARC]))
        capitals = self.style.value if owner == "angle-sum" else self.style.note
        words = (quantity.plain(round(size, 1), self.look.mark) + "°",)
        self.drawn.label_requests.append(LabelRequest(owner, words, capitals, anchors, number, places=OF_ANGLE))

    def free_radius(self, centre: Point, start: float, sweep: float, radius: float) -> float:
        """Return a radius at which the arc does not run over another around the same point."""
        middle, half = wrap(start + sweep / 2), math.fabs(sweep) / 2
        others = self.arcs.setdefault(centre, [])
        for other_middle, other_half, other_radius in others:
            apart = math.fabs(wrap(middle - other_middle))
            if apart < half + other_half - 0.5 and math.fabs(radius - other_radius) < 3.0:
                radius = other_radius + 4.0
        others.append((middle, half, radius))
        return radius

    def guard_arc(self, centre: Point, radius: float, start: float, sweep: float, owner: str = "") -> None:
        pieces = max(2, int(math.fabs(sweep) / 12.0) + 1)
        before = centre.moved(radius, start)
        for index in range(1, pieces + 1):
            after = centre.moved(radius, start + sweep * index / pieces)
            self.drawn.keep_clear(before, after, owner, 0.35)
            before = after

    def want(self, owner: str, capitals: float, number: int, anchors: Iterable[tuple[Point, float]]) -> None:
        if owner in self.look.tags:
            self.drawn.label_requests.append(LabelRequest(owner, self.look.tags[owner], capitals, anchors, number))


def draw(
    construction: Construction,
    stand: Placement,
    look: PhasorStyles,
    style: Style,
    *,
    phasors_only: bool = False,
    visible_moves: frozenset[int] | None = None,
    room: Box | None = None,
) -> FigureStrokes:
    """Return the strokes and label requests of a placed construction.

    ``phasors_only`` leaves out parallels, arcs and perpendiculars. ``visible_moves`` draws only the moves with these
    indexes, and no arcs: the state of a lesson. ``room``: where phasors that stand aside of others should stay.
    """
    pen = ConstructionPen(construction, stand, look, style, phasors_only, visible_moves, room)
    pen.trace()
    return pen.finish()
