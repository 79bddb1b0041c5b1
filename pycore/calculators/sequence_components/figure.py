"""The three sets of sequence components: side by side on the screen, 120 units wide, and true to scale on paper."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pycore.drawing import Arrow, Circle, Group, Ink, Item, Page
from pycore.geometry import Box, Point, bounds
from pycore.sheet.lettered import fitting, text, width_of
from pycore.sheet.media import Layout
from pycore.sheet.scale import next_scale
from pycore.sheet.skeleton import start_cross
from pycore.sheet.styles import Style
from pycore.sheet.ticks import ticks

CELL, HEIGHT, MIDDLE = 40.0, 54.0, 22.0
"""Width of one diagram, height of the picture, and where the common points are."""
REACH, BESIDE, BEYOND = 12.5, 6.0, 4.2
"""Length of the longest arrow, distance of arrows that would coincide, and from a tip to the middle of its label."""
CAPITALS, TITLE_ROOM = 3.0, 37.0
STYLE = Style(wide=0.6, head=3.4, tick=2.4, tick_gap=1.0, value=CAPITALS)
LABEL = 1.4
"""From a tip to the middle of its label on paper, in capitals of values."""
GAP = 6.0
"""Between two diagrams on paper, mm."""


@dataclass(frozen=True, slots=True)
class ComponentArrow:
    """One phasor of a set: its line's name, its size, its direction on the paper (degrees) and its ink."""

    name: str
    size: float
    degrees: float
    ink: Ink


@dataclass(frozen=True, slots=True)
class ComponentSet:
    """The three phasors of one component, and the words above their diagram; ``together``: they have one direction."""

    title: str
    arrows: Sequence[ComponentArrow]
    together: bool

    @property
    def empty(self) -> bool:
        """Whether the component is zero."""
        return all(arrow.size == 0.0 for arrow in self.arrows)


@dataclass(frozen=True, slots=True)
class SetsOnPaper:
    """The diagrams on a sheet: the scale (quantity per cm) and where each set's common point is, mm."""

    scale: float
    starts: tuple[Point, ...]
    titles: tuple[Point, ...]


def component_sets(sets: Sequence[ComponentSet], description: str) -> Page:
    """Return the diagrams of the sets side by side at one scale."""
    largest = max(arrow.size for one in sets for arrow in one.arrows)
    items: list[Item] = []
    for index, one in enumerate(sets):
        centre = Point((index + 0.5) * CELL, MIDDLE)
        capitals = fitting(one.title, CAPITALS, TITLE_ROOM)
        items.append(text(one.title, Point(centre.x, HEIGHT - 6.0), capitals, "middle"))
        items += _diagram(one, centre, REACH / largest, STYLE, BEYOND, BESIDE)
    return Page(len(sets) * CELL, HEIGHT, tuple(items), description, description)


def _diagram(
    one: ComponentSet, centre: Point, factor: float, style: Style, beyond: float, beside: float
) -> list[Item]:
    """One set about its common point; ``factor``: mm for each unit of the quantity."""
    if one.empty:
        return [text("0", Point(centre.x, centre.y - style.value / 2), style.value, "middle")]
    items: list[Item] = []
    for number, (arrow, tail) in enumerate(_tails(one, centre, factor, beside), start=1):
        items += _arrow(tail, number, arrow, arrow.size * factor, style, beyond, centred=one.together)
    return items


def _tails(
    one: ComponentSet, centre: Point, factor: float, beside: float
) -> Iterator[tuple[ComponentArrow, Point]]:
    """Each arrow with its tail; arrows of one direction lie beside each other, their middles about the centre."""
    for number, arrow in enumerate(one.arrows, start=1):
        tail = centre
        if one.together:
            middle = centre.moved((2 - number) * beside, arrow.degrees + 90.0)
            tail = middle.moved(-arrow.size * factor / 2, arrow.degrees)
        yield arrow, tail


def _arrow(
    tail: Point, number: int, arrow: ComponentArrow, length: float, style: Style, beyond: float, *, centred: bool
) -> list[Item]:
    """One phasor with the ticks of its line, and its label beyond the tip."""
    tip = tail.moved(length, arrow.degrees)
    strokes: list[Item] = [Arrow(tail, tip, style.wide, arrow.ink, min(style.head, 0.6 * length))]
    if length > style.head + 2 * style.tick:
        strokes += ticks(tail, tip, number, style.wide, arrow.ink, style)
    if not centred:
        strokes.append(Circle(tail, 0.5, 0.25, "ink", "sheet"))
    at = tip.moved(beyond, arrow.degrees)
    label = text(arrow.name, Point(at.x, at.y - style.value / 2), style.value, "middle")
    return [Group(tuple(strokes), phasor=f"set-{number}"), label]


def _room(one: ComponentSet, factor: float, style: Style) -> Box:
    """The rectangle of one diagram about a common point at the origin, with its labels."""
    beyond = LABEL * style.value
    points = [Point(0.0, 0.0)]
    for arrow, tail in _tails(one, Point(0.0, 0.0), factor, 2.5 * style.value):
        points += [tail, tail.moved(arrow.size * factor + (beyond if arrow.size else 0.0), arrow.degrees)]
    return bounds(points).grown(style.value)


def on_paper(sets: Sequence[ComponentSet], layout: Layout, steps: str) -> SetsOnPaper:
    """Return the finest scale at which the diagrams fit the sheet's area, in a row or in a column, and their places."""
    largest = max(arrow.size for one in sets for arrow in one.arrows)
    scale = next_scale(10.0 * largest / max(layout.area.width, layout.area.height), steps)
    while True:
        placed = _placed(sets, layout, scale, column=False) or _placed(sets, layout, scale, column=True)
        if placed:
            return placed
        scale = next_scale(1.01 * scale, steps)


def _placed(sets: Sequence[ComponentSet], layout: Layout, scale: float, *, column: bool) -> SetsOnPaper | None:
    """The diagrams in a row or in a column, each in a cell with its title at the top; None where they do not fit."""
    area, capitals = layout.area, layout.style.value
    rooms = [_room(one, 10.0 / scale, layout.style) for one in sets]
    strip = 2.0 * capitals
    widths = [max(room.width, width_of(one.title, capitals)) for one, room in zip(sets, rooms, strict=True)]
    heights = [room.height + strip for room in rooms]
    along, across = (heights, widths) if column else (widths, heights)
    length, breadth = (area.height, area.width) if column else (area.width, area.height)
    spare = length - math.fsum(along) - GAP * (len(sets) - 1)
    if spare < 0.0 or max(across) > breadth:
        return None
    starts, titles, begin = [], [], 0.0
    for room, least in zip(rooms, along, strict=True):
        end = begin + least + spare / len(sets)
        if column:
            cell = Box(area.left, area.top - end, area.right, area.top - begin)
        else:
            cell = Box(area.left + begin, area.bottom, area.left + end, area.top)
        middle = cell.centre
        starts.append(Point(middle.x, middle.y - strip / 2).minus(room.centre))
        titles.append(Point(middle.x, cell.top - capitals))
        begin = end + GAP
    return SetsOnPaper(scale, tuple(starts), tuple(titles))


def drawn_sets(sets: Sequence[ComponentSet], placed: SetsOnPaper, style: Style) -> Group:
    """Return the diagrams at their places, true to scale."""
    items = _titles(sets, placed, style)
    for one, start in zip(sets, placed.starts, strict=True):
        items += _diagram(one, start, 10.0 / placed.scale, style, LABEL * style.value, 2.5 * style.value)
    return Group(tuple(items), name="sets")


def empty_sets(sets: Sequence[ComponentSet], placed: SetsOnPaper, style: Style) -> Group:
    """Return the titles and the common points of the diagrams, to be drawn by a learner.

    Arrows of one direction may be drawn anywhere below their title: where they lie would show their direction.
    """
    items = _titles(sets, placed, style)
    for one, start in zip(sets, placed.starts, strict=True):
        if not one.together:
            items += start_cross(start)
    return Group(tuple(items), name="sets")


def _titles(sets: Sequence[ComponentSet], placed: SetsOnPaper, style: Style) -> list[Item]:
    return [text(one.title, at, style.value, "middle") for one, at in zip(sets, placed.titles, strict=True)]
