"""A finished page: the placed figure, labels, table, check bars and title block."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from pycore import quantity, trig
from pycore.constructions.construction import Construction, DrawingConvention
from pycore.constructions.methods import TIP_TO_TAIL
from pycore.constructions.moves import Direction, SetOff
from pycore.constructions.names import FIRST_DIRECTION
from pycore.constructions.tip_to_tail import listed_order
from pycore.drawing import Circle, Group, Item, Line, Page, Shape, Text
from pycore.geometry import Box, Point, bounds
from pycore.sheet import kinds, labels
from pycore.sheet import marks as registration
from pycore.sheet.code_area import code_area
from pycore.sheet.column import column
from pycore.sheet.figure import ConstructionPen, draw
from pycore.sheet.media import Layout
from pycore.sheet.own_paper import common_point, distances, edge_marks, heading
from pycore.sheet.plain_words import plain_words
from pycore.sheet.plan import Plan
from pycore.sheet.sheet_text import SheetText
from pycore.sheet.skeleton import (
    check_bars,
    cross_segments,
    foot,
    frame,
    is_free,
    point_name,
    scales,
    start_cross,
    turning,
    zero_mark,
)
from pycore.sheet.strokes import FigureStrokes, PhasorStyles, Placement, figure_box
from pycore.sheet.styles import Style
from pycore.sheet.title_block import plain_block, title_block
from pycore.sheet.whole_page import strip
from pycore.words.phrase import plain
from pycore.words.sheet import stands_aside
from pycore.words.sums import AS_LISTED


@dataclass(frozen=True, slots=True)
class ComposedSheet:
    """The page, the labels that found no place (they are in the table), and the figure as it stands."""

    page: Page
    left: tuple[labels.LabelRequest, ...]
    area: Box
    drawn: FigureStrokes
    settled: tuple[Placement, FigureStrokes]

    @property
    def stand(self) -> Placement:
        """Where the figure stands."""
        return self.settled[0]


def stand_in(construction: Construction, picture: DrawingConvention, area: Box, factor: float) -> Placement:
    """Centre the figure in an area."""
    box = figure_box(construction, picture)
    middle = Point(box.centre.x * factor, box.centre.y * factor)
    return Placement(picture, factor, area.centre.minus(middle))


def _labelled(
    drawn: FigureStrokes, area: Box, furniture: Iterable[Box] = ()
) -> tuple[tuple[Group, ...], tuple[labels.LabelRequest, ...]]:
    """Return the strokes as groups by step with labels, clear of furniture, and the labels that found no place."""
    ground = labels.LabelArea(area, drawn.obstacles, furniture)
    placed, left = labels.place(ground, drawn.label_requests)
    for label in placed:
        drawn.add(label.request.step, label.text)
        if label.leader:
            drawn.add(label.request.step, label.leader)
    groups = tuple(Group(tuple(items), step=number) for number, items in sorted(drawn.by_step.items()))
    return groups, tuple(left)


def _shift(low: float, high: float, least: float, most: float) -> float:
    """Return the offset that brings the interval [low, high] inside the bounds, as far as possible."""
    if high > most:
        return -min(high - most, max(0.0, low - least))
    return min(max(0.0, least - low), max(0.0, most - high))


def _reach(drawn: FigureStrokes) -> Box:
    """Return the bounding rectangle of all strokes, including arcs and marks."""
    return bounds([*[piece.start for piece in drawn.segments], *[piece.end for piece in drawn.segments]])


ARC_SHARES = (1.0, 0.75, 0.5)


def settled(plan: Plan, look: PhasorStyles) -> tuple[Placement, FigureStrokes]:
    """Return the centred figure, moved so that arcs and marks stay in its area, and its strokes.

    The scale was chosen by straight strokes only. If there is no room to move, arcs are drawn smaller until nothing
    leaves the frame.
    """
    layout, construction = plan.layout, plan.construction
    centred = stand_in(construction, plan.picture, layout.area, plan.factor)
    if layout.style.blank:
        centred = replace(centred, origin=common_point(plan))
    for share in ARC_SHARES:
        style = layout.style if share == 1.0 else replace(layout.style, arc=share * layout.style.arc)
        stand = centred
        pen = ConstructionPen(construction, stand, look, style, room=layout.area)
        box, area = _reach(pen.trace()), layout.area
        across = _shift(box.left, box.right, area.left, area.right)
        up = _shift(box.bottom, box.top, area.bottom, area.top)
        if (across or up) and not layout.style.blank:
            stand = replace(stand, origin=stand.origin.plus(Point(across, up)))
            pen = ConstructionPen(construction, stand, look, style, room=layout.area)
            box = _reach(pen.trace())
        if layout.frame.holds(box):
            break
    return stand, pen.finish()


DRAWN_FOR_THE_LEARNER = 2


def _begun(construction: Construction) -> frozenset[int]:
    """Return the indexes of the moves that draw the first phasors, and of the first direction."""
    keys = [arm.key for arm in construction.arms]
    set_off = [
        index
        for index, move in enumerate(construction.moves)
        if isinstance(move, SetOff) and move.phasor in keys and not move.copy
    ]
    reference = [
        index
        for index, move in enumerate(construction.moves)
        if isinstance(move, Direction) and move.line == FIRST_DIRECTION
    ]
    return frozenset((*reference, *set_off[:DRAWN_FOR_THE_LEARNER]))


def begun_keys(construction: Construction) -> tuple[str, ...]:
    """Return the keys of the phasors that a problem sheet with two phasors shows."""
    moves = construction.moves
    visible_moves = _begun(construction)
    return tuple(move.phasor for index, move in enumerate(moves) if index in visible_moves and isinstance(move, SetOff))


def _part_drawn(plan: Plan, stand: Placement, look: PhasorStyles, discs: tuple[Group, ...]) -> FigureStrokes:
    """Return the first phasors of a problem, to scale, from their starting point."""
    drawn = draw(plan.construction, stand, look, plan.layout.style, visible_moves=_begun(plan.construction))
    for piece in discs:
        for item in piece.items:
            if isinstance(item, Line):
                drawn.keep_clear(item.start, item.end)
            elif isinstance(item, Circle):
                drawn.keep_clear(item.centre, item.centre.plus(Point(0.01, 0.0)), "", item.radius + item.width / 2)
    return drawn


@dataclass(frozen=True, slots=True)
class ToleranceEllipse:
    """The ellipse that contains 95 of 100 drawings: semi-axes in the quantity's unit, calculated angle of the first."""

    major: float
    minor: float
    degrees: float


def ellipse(plan: Plan, stand: Placement, tolerance: ToleranceEllipse) -> Group:
    """Return the ellipse around the end of the sum, as a closed line of 72 pieces."""
    centre = stand.place(plan.construction.end_point)
    turned = plan.picture.paper_angle(tolerance.degrees)
    places = []
    for step in range(72):
        along = tolerance.major * plan.factor * trig.cosine(5.0 * step)
        across = tolerance.minor * plan.factor * trig.sine(5.0 * step)
        places.append(centre.moved(along, turned).moved(across, turned + 90.0))
    outline = Shape(tuple(places), 0.35, "accent", None)
    return Group((outline, Circle(centre, 0.35, 0.0, fill="accent")), name="tolerance")


def as_listed(plan: Plan, stand: Placement) -> tuple[Line, ...]:
    """Return two phasors in the order of the table, dashed, where they are drawn tip to tail the other way round, and
    the paper has room for both orders."""
    construction, style = plan.construction, plan.layout.style
    if construction.method != TIP_TO_TAIL or not listed_order(construction.arms, construction.order):
        return ()
    first = construction.arms[0]
    corner = stand.origin.moved(first.size * plan.factor, plan.picture.paper_angle(first.angle))
    if not plan.layout.area.holds(bounds((corner,))):
        return ()
    ways = ((stand.origin, corner), (corner, stand.place(construction.end_point)))
    return tuple(Line(*way, style.narrow, "ink-2", style.dash) for way in ways)


def _keep_clear_of(group: Group, drawn: FigureStrokes) -> None:
    """Keep labels clear of a group's closed lines."""
    for shape in group.items:
        if isinstance(shape, Shape):
            for start, end in pairwise((*shape.points, shape.points[0])):
                drawn.keep_clear(start, end, "", shape.width / 2)


def thin(style: Style) -> Style:
    """Return the style of an overlay: thin lines, so that the lines below remain visible."""
    return replace(style, wide=0.25, extra_wide=0.25, narrow=0.18, open_wide=0.25, head=3.4, large_head=3.4)


@dataclass(frozen=True, slots=True)
class Surround:
    """What is in the field beside the figure: its groups, and the rectangles that labels keep out of."""

    groups: tuple[Group, ...]
    boxes: tuple[Box, ...]
    scale: Box


def surround(
    layout: Layout, writing: SheetText, drawn: Sequence[labels.Segment] | None = None, origin: Point | None = None
) -> Surround:
    """Return scale, sense of rotation and mark of 0°, in the same places on every kind of sheet.

    ``drawn``: the segments of the whole drawing, to which the sense of rotation gives way; without them it stands where
    no figure reaches. ``origin``: the common point or the start.
    """
    kept = registration.boxes(layout)
    *higher, lowest = scales(layout, writing.scale_words)
    free = () if drawn is None else [one for one in higher if is_free(one[1], drawn, kept)]
    of_scale, scale_box = free[0] if free else lowest
    sense, sense_box = turning(layout, writing.field, drawn, kept)
    # In large print the scale stands with the other words.
    shown = () if layout.style.column else (scale_box,)
    boxes = (*kept, sense_box, *shown)
    zero, zero_boxes = Group(()), tuple[Box, ...]()
    if origin is not None:
        zero, zero_boxes = zero_mark(layout, writing.field, origin, drawn or (), boxes)
    groups = (of_scale, sense, zero) if shown else (sense, zero)
    return Surround(tuple(group for group in groups if group.items), (*boxes, *zero_boxes), scale_box)


def _on_blank(plan: Plan, writing: SheetText, mark: str, drawn: Sequence[labels.Segment]) -> Surround:
    """Return what is round the figure on the learner's own paper: where its common point is, and what is drawn."""
    layout, at = plan.layout, common_point(plan)
    title, box = heading(layout, writing.page_title)
    edges, boxes = edge_marks(layout.frame, at, distances(plan, mark), layout.style.value, drawn, (box,))
    return Surround((edges, title), (*boxes, box), Box(0.0, 0.0, 0.0, 0.0))


def _problem(
    plan: Plan, look: PhasorStyles, writing: SheetText, start: str, settled: tuple[Placement, FigureStrokes],
    around: Surround,
) -> tuple[tuple[Group, ...], tuple[labels.LabelRequest, ...], FigureStrokes]:
    """Return the groups of a problem sheet: marks, the point to draw from, perhaps the first phasors."""
    layout, stand = plan.layout, settled[0]
    discs = () if layout.style.blank else registration.marks(layout, stand.origin)
    begun: tuple[Group, ...] = ()
    if start != kinds.NOTHING:
        called = writing.field.point if start == kinds.POINT else ""
        name = point_name(layout, called, stand.origin, settled[1].segments, around.boxes)
        begun = (Group((*start_cross(stand.origin), *name), name="start"),)
    if start != kinds.TWO:
        return (*discs, *begun), (), FigureStrokes()
    drawn = _part_drawn(plan, stand, look, (*begun, *discs))
    groups, left = _labelled(drawn, layout.area, around.boxes)
    return (*discs, *groups, *begun), left, drawn


def compose(
    plan: Plan,
    look: PhasorStyles,
    writing: SheetText,
    kind: str = kinds.CONSTRUCTION,
    start: str = kinds.POINT,
    tolerance: ToleranceEllipse | None = None,
    placed: tuple[Placement, FigureStrokes] | None = None,
) -> ComposedSheet:
    """Return one kind of sheet on its paper: ``construction``, ``problem`` or ``overlay``.

    ``start``: what a problem sheet shows (``kinds.NOTHING``, ``POINT``, ``TWO``). All kinds of one problem have the
    starting point in the same place: ``placed``, if another kind has settled it.
    """
    layout = plan.layout
    if placed is None or kind == kinds.CONSTRUCTION:
        placed = settled(plan, look)
    stand, drawn = placed
    # The cross to draw from is on problem sheets only, but other furniture has one place on all.
    kept_clear = [*drawn.obstacles, *cross_segments(stand.origin)]
    round_the_end: tuple[Group, ...] = ()
    if kind == kinds.OVERLAY:
        drawn = draw(plan.construction, stand, look, thin(layout.style), phasors_only=True)
        listed = as_listed(plan, stand)
        for line in listed:
            drawn.keep_clear(line.start, line.end)
        round_the_end = (Group(listed, name="as-listed"),) if listed else ()
        if not listed:
            writing = replace(writing, notes=tuple(note for note in writing.notes if note != AS_LISTED))
        round_the_end += () if tolerance is None else (ellipse(plan, stand, tolerance),)
        for piece in round_the_end:
            _keep_clear_of(piece, drawn)
        # Its crosses and the ellipse reach farther than the arrows do.
        kept_clear += drawn.obstacles
    around = _on_blank(plan, writing, look.mark, kept_clear) if layout.style.blank else surround(
        layout, writing, kept_clear, stand.origin
    )
    if kind == kinds.PROBLEM:
        groups, left, drawn = _problem(plan, look, writing, start, placed, around)
    else:
        groups, left = _labelled(drawn, layout.area, around.boxes)
        groups += round_the_end
    if drawn.moved and writing.notes and not layout.small:
        names = [plain(look.tags[key]) for key in dict.fromkeys(drawn.moved)]
        beside = stands_aside(names, quantity.fixed(layout.style.aside, 0))
        writing = replace(writing, notes=(*writing.notes, beside))
    return ComposedSheet(page_of(layout, writing, groups, around), left, layout.area, drawn, placed)


def page_of(layout: Layout, writing: SheetText, groups: tuple[Group, ...], around: Surround) -> Page:
    """Return a page with what every sheet has, and what is drawn on it."""
    of_scale = tuple(group for group in around.groups if group.name == "scale")
    others = (group for group in around.groups if group.name != "scale")
    figure = Group((*others, *groups), role="figure", alternative=writing.alternative)
    if layout.style.blank:
        return Page(layout.width, layout.height, (*of_scale, figure), writing.page_title, writing.description)
    field = foot(layout, writing.field.print_check, writing.field.teaching, around.scale)
    if layout.style.whole:
        whole = strip(layout, writing), *of_scale, figure, *check_bars(layout)
        return Page(layout.width, layout.height, (frame(layout), *whole), writing.page_title, writing.description)
    # In the order in which a sheet is read aloud: but for the marks on the frame nothing covers another.
    if layout.style.column:
        beside: tuple[Group, ...] = plain_block(layout, writing.block), *plain_words(layout, writing)
    else:
        beside = title_block(layout, writing.block), *column(layout, writing)
    items: tuple[Item, ...] = (
        frame(layout), *beside, *of_scale, figure, *check_bars(layout), code_area(layout, writing), field,
    )  # fmt: skip
    return Page(layout.width, layout.height, items, writing.page_title, writing.description)


VIEW_WIDTH = 100.0
VIEW_MARGIN = 7.0


def view(plan: Plan, look: PhasorStyles, style: Style, title: str, description: str) -> Page:
    """Return the figure alone, laid out for a phone: 100 mm are the width of the screen."""
    construction, picture = plan.construction, plan.picture
    box = figure_box(construction, picture)
    # Beside a companion's rails a label needs more room.
    margin = VIEW_MARGIN + (3.0 if construction.companions else 0.0)
    room = VIEW_WIDTH - 2 * margin
    factor = min(room / max(box.width, 1e-9 * max(box.height, 1.0), 1e-300), room / max(box.height, 1e-300))
    height = max(52.0, box.height * factor + 2 * margin)
    area = Box(1.5, 1.5, VIEW_WIDTH - 1.5, height - 1.5)
    stand = stand_in(construction, picture, area, factor)
    look = replace(look, share=factor / plan.factor)
    groups, _ = _labelled(draw(construction, stand, look, style, room=area), area)
    return Page(VIEW_WIDTH, height, groups, title, description)


MOST_HEIGHT = 108.0
"""Height of paper on a phone, where 100 are the width of the screen: upright paper is drawn smaller."""


def view_on_paper(plan: Plan, look: PhasorStyles, style: Style, title: str, description: str) -> Page:
    """Return the figure at its place on the learner's own paper, laid out for a phone."""
    layout, place = plan.layout, common_point(plan)
    share = min((VIEW_WIDTH - 2.0) / layout.width, (MOST_HEIGHT - 2.0) / layout.height)
    left, height = (VIEW_WIDTH - share * layout.width) / 2, share * layout.height + 2.0
    paper = Box(left, 1.0, left + share * layout.width, height - 1.0)
    stand = Placement(plan.picture, share * plan.factor, Point(left, 1.0).plus(place.times(share)))
    drawn = draw(plan.construction, stand, replace(look, share=share), style, room=paper)
    edges, boxes = edge_marks(paper, stand.origin, distances(plan, look.mark), style.note, drawn.obstacles)
    groups, _ = _labelled(drawn, paper.grown(-1.0), boxes)
    outline = Group((Shape(paper.corners, 0.35),), name="frame")
    return Page(VIEW_WIDTH, height, (outline, edges, *groups), title, description)


BARE_MARGIN = 9.0


def bare(plan: Plan, look: PhasorStyles, title: str) -> Page:
    """Return the figure of a sheet alone and without letters, at the sheet's own scale, on paper of its own size."""
    stand, drawn = settled(plan, look)
    box, style = _reach(drawn), plan.layout.style
    corner = Point(BARE_MARGIN - box.left, BARE_MARGIN - box.bottom)
    moved = draw(plan.construction, replace(stand, origin=stand.origin.plus(corner)), look, style)
    groups = tuple(Group(_unlettered(items), step=number) for number, items in sorted(moved.by_step.items()))
    return Page(box.width + 2 * BARE_MARGIN, box.height + 2 * BARE_MARGIN, groups, title)


def _unlettered(items: Iterable[Item]) -> tuple[Item, ...]:
    return tuple(item for item in items if not isinstance(item, Text))
