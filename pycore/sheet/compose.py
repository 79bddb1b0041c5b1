"""A finished page: the placed figure, labels, table, check bars and title block."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise

from pycore import quantity, trig
from pycore.constructions.companions import companion_moves
from pycore.constructions.construction import Construction, DrawingConvention
from pycore.constructions.moves import Direction, SetOff
from pycore.constructions.names import FIRST_DIRECTION
from pycore.drawing import Circle, Group, Item, Line, Page, Shape, Text
from pycore.geometry import Box, Point, bounds
from pycore.sheet import kinds, labels
from pycore.sheet import marks as registration
from pycore.sheet.figure import ConstructionPen, draw
from pycore.sheet.furniture import (
    SheetText,
    asked,
    check_bars,
    code_area,
    foot,
    frame,
    plain_block,
    title_block,
    words,
)
from pycore.sheet.media import Layout, Style
from pycore.sheet.plan import Plan
from pycore.sheet.strokes import FigureStrokes, PhasorStyles, Placement, figure_box
from pycore.sheet.table import table
from pycore.sheet.whole_page import strip
from pycore.words.phrase import plain
from pycore.words.sheet import stands_aside


@dataclass(frozen=True, slots=True)
class ComposedSheet:
    """The page, and the labels that found no place (they are in the table)."""

    page: Page
    left: tuple[labels.LabelRequest, ...]
    area: Box
    drawn: FigureStrokes
    stand: Placement


def stand_in(construction: Construction, picture: DrawingConvention, area: Box, factor: float) -> Placement:
    """Centre the figure in an area."""
    box = figure_box(construction, picture)
    middle = Point(box.centre.x * factor, box.centre.y * factor)
    return Placement(picture, factor, area.centre.minus(middle))


def _labelled(drawn: FigureStrokes, area: Box) -> tuple[tuple[Group, ...], tuple[labels.LabelRequest, ...]]:
    """Return the strokes as groups by step with labels, and the labels that found no place."""
    ground = labels.LabelArea(area, drawn.obstacles)
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
    for share in ARC_SHARES:
        style, stand = replace(layout.style, arc=share * layout.style.arc), centred
        pen = ConstructionPen(construction, stand, look, style, room=layout.area)
        box, area = _reach(pen.trace()), layout.area
        across = _shift(box.left, box.right, area.left, area.right)
        up = _shift(box.bottom, box.top, area.bottom, area.top)
        if across or up:
            stand = replace(stand, origin=stand.origin.plus(Point(across, up)))
            pen = ConstructionPen(construction, stand, look, style, room=layout.area)
            box = _reach(pen.trace())
        if layout.frame.holds(box):
            break
    return stand, pen.finish()


def _start_point(stand: Placement, visible: bool) -> tuple[Group, ...]:
    """Return the starting point of a problem sheet, if it is shown: a circle with a cross."""
    return (Group(start_cross(stand.origin), name="start"),) if visible else ()


def start_cross(at: Point) -> tuple[Item, ...]:
    """Return a circle with a cross at a point from which a learner draws."""
    return (
        Line(at.plus(Point(-2.5, 0.0)), at.plus(Point(2.5, 0.0)), 0.18),
        Line(at.plus(Point(0.0, -2.5)), at.plus(Point(0.0, 2.5)), 0.18),
        Circle(at, 0.9, 0.35),
    )


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
    for piece in (*_start_point(stand, visible=True), *discs):
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
    return Group((Shape(tuple(places), 0.25, "accent", None),), name="tolerance")


def _keep_clear_of(group: Group, drawn: FigureStrokes) -> None:
    """Keep labels clear of a group's closed lines."""
    for shape in group.items:
        if isinstance(shape, Shape):
            for start, end in pairwise((*shape.points, shape.points[0])):
                drawn.keep_clear(start, end, "", shape.width / 2)


def thin(style: Style) -> Style:
    """Return the style of an overlay: thin lines, so that the lines below remain visible."""
    return replace(style, wide=0.25, extra_wide=0.35, narrow=0.18, open_wide=0.25, head=3.4, large_head=4.6)


def compose(
    plan: Plan,
    look: PhasorStyles,
    writing: SheetText,
    kind: str = kinds.CONSTRUCTION,
    start: str = kinds.POINT,
    tolerance: ToleranceEllipse | None = None,
    stand: Placement | None = None,
) -> ComposedSheet:
    """Return one kind of sheet on its paper: ``construction``, ``problem`` or ``overlay``.

    ``start``: what a problem sheet shows (``kinds.NOTHING``, ``POINT``, ``TWO``). All kinds of one problem have the
    starting point in the same place: ``stand``, if another kind has set it.
    """
    layout = plan.layout
    strokes = FigureStrokes()
    if stand is None or kind == kinds.CONSTRUCTION:
        stand, strokes = settled(plan, look)
    groups: tuple[Group, ...] = ()
    left: tuple[labels.LabelRequest, ...] = ()
    drawn = FigureStrokes()
    if kind == kinds.PROBLEM:
        discs = registration.marks(layout, stand.origin)
        if start == kinds.TWO:
            drawn = _part_drawn(plan, stand, look, discs)
            groups, left = _labelled(drawn, layout.area)
        groups += (*_start_point(stand, start != kinds.NOTHING), *discs)
    elif kind == kinds.OVERLAY:
        drawn = draw(plan.construction, stand, look, thin(layout.style), phasors_only=True)
        round_the_end = () if tolerance is None else (ellipse(plan, stand, tolerance),)
        for piece in round_the_end:
            _keep_clear_of(piece, drawn)
        groups, left = _labelled(drawn, layout.area)
        groups += round_the_end
    else:
        drawn = strokes
        groups, left = _labelled(drawn, layout.area)
    if drawn.moved and writing.notes and not layout.small:
        names = [plain(look.tags[key]) for key in dict.fromkeys(drawn.moved)]
        beside = stands_aside(names, quantity.fixed(layout.style.aside, 0))
        writing = replace(writing, notes=(*writing.notes, beside))
    return ComposedSheet(page_of(layout, writing, groups), left, layout.area, drawn, stand)


def page_of(layout: Layout, writing: SheetText, groups: tuple[Group, ...]) -> Page:
    """Return a page with what every sheet has, and what is drawn on it."""
    if layout.style.whole:
        whole = strip(layout, writing), *groups, *check_bars(layout)
        return Page(layout.width, layout.height, (frame(layout), *whole), writing.page_title, writing.description)
    block = plain_block if layout.style.column else title_block
    # In the order in which a sheet is read aloud: nothing touches, so that none covers another.
    furniture = asked(layout, writing) or (words(layout, writing), table(layout, writing))
    items: tuple[Item, ...] = (
        frame(layout), block(layout, writing), *furniture, *groups,
        *check_bars(layout), code_area(layout, writing), foot(layout, writing.foot),
    )  # fmt: skip
    return Page(layout.width, layout.height, items, writing.page_title, writing.description)


VIEW_WIDTH = 100.0
VIEW_MARGIN = 7.0


def view(
    construction: Construction,
    picture: DrawingConvention,
    look: PhasorStyles,
    style: Style,
    title: str,
    description: str,
) -> Page:
    """Return the figure alone, laid out for a phone: 100 mm are the width of the screen."""
    box = figure_box(construction, picture)
    # Beside a companion's rails a label needs more room.
    margin = VIEW_MARGIN + (3.0 if companion_moves(construction) else 0.0)
    room = VIEW_WIDTH - 2 * margin
    factor = min(room / max(box.width, 1e-9 * max(box.height, 1.0), 1e-300), room / max(box.height, 1e-300))
    height = max(52.0, box.height * factor + 2 * margin)
    area = Box(1.5, 1.5, VIEW_WIDTH - 1.5, height - 1.5)
    stand = stand_in(construction, picture, area, factor)
    groups, _ = _labelled(draw(construction, stand, look, style, room=area), area)
    return Page(VIEW_WIDTH, height, groups, title, description)


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
