"""The three sets of sequence components as diagrams side by side: one picture for the screen, 120 units wide."""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore.drawing import Arrow, Circle, Group, Ink, Item, Page
from pycore.geometry import Point
from pycore.sheet.lettered import fitting, text
from pycore.sheet.media import Style
from pycore.sheet.ticks import ticks

CELL, HEIGHT, MIDDLE = 40.0, 54.0, 22.0
"""Width of one diagram, height of the picture, and where the common points are."""
REACH, BESIDE, BEYOND = 12.5, 6.0, 4.2
"""Length of the longest arrow, distance of arrows that would coincide, and from a tip to the middle of its label."""
CAPITALS, TITLE_ROOM = 3.0, 37.0
STYLE = Style(wide=0.6, head=3.4, tick=2.4, tick_gap=1.0)


@dataclass(frozen=True, slots=True)
class ComponentArrow:
    """One phasor of a set: its line's name, its length (share of the largest), its direction on the paper (degrees)
    and its ink."""

    name: str
    share: float
    degrees: float
    ink: Ink


@dataclass(frozen=True, slots=True)
class ComponentSet:
    """The three phasors of one component, and the words above their diagram; ``together``: they have one direction."""

    title: str
    arrows: Sequence[ComponentArrow]
    together: bool


def component_sets(sets: Sequence[ComponentSet], description: str) -> Page:
    """Return the diagrams of the sets side by side at one scale."""
    items: list[Item] = []
    for index, one in enumerate(sets):
        centre = Point((index + 0.5) * CELL, MIDDLE)
        capitals = fitting(one.title, CAPITALS, TITLE_ROOM)
        items.append(text(one.title, Point(centre.x, HEIGHT - 6.0), capitals, "middle"))
        if all(arrow.share == 0.0 for arrow in one.arrows):
            items.append(text("0", Point(centre.x, centre.y - CAPITALS / 2), CAPITALS, "middle"))
            continue
        for number, arrow in enumerate(one.arrows, start=1):
            aside = (2 - number) * BESIDE if one.together else 0.0
            items += _arrow(centre.moved(aside, arrow.degrees + 90.0), number, arrow, centred=one.together)
    return Page(len(sets) * CELL, HEIGHT, tuple(items), description, description)


def _arrow(start: Point, number: int, arrow: ComponentArrow, *, centred: bool) -> list[Item]:
    """One phasor with the ticks of its line, and its label beyond the tip; ``centred``: its middle is at ``start``."""
    length = REACH * arrow.share
    tail = start.moved(-length / 2, arrow.degrees) if centred else start
    tip = tail.moved(length, arrow.degrees)
    strokes: list[Item] = [Arrow(tail, tip, STYLE.wide, arrow.ink, min(STYLE.head, 0.6 * length))]
    if length > STYLE.head + 2 * STYLE.tick:
        strokes += ticks(tail, tip, number, STYLE.wide, arrow.ink, STYLE)
    if not centred:
        strokes.append(Circle(tail, 0.5, 0.25, "ink", "sheet"))
    at = tip.moved(BEYOND, arrow.degrees)
    label = text(arrow.name, Point(at.x, at.y - CAPITALS / 2), CAPITALS, "middle")
    return [Group(tuple(strokes), phasor=f"set-{number}"), label]
