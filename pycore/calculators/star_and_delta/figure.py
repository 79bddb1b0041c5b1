"""Phasor diagrams of all three lines: the star with its voltages and currents, the delta's branch and line currents."""

from dataclasses import dataclass
from itertools import product

from pycore import phasor
from pycore.drawing import Arrow, Item, Line, Page, Shape, Text
from pycore.geometry import ORIGIN, Box, Point, bounds, direction
from pycore.sheet.lettered import box_of, text
from pycore.words.phrase import Phrase

WIDTH, MARGIN = 120.0, 4.0
CAPITALS = 3.4
LONG, SHORT = 46.0, 32.0
"""Length in mm of the largest phasor of the first and of the second group."""
SMALLEST = 1e-6
"""Share of the largest phasor of a group below which a phasor has no arrow."""
CLEAR = 0.6
"""Room in mm about a name."""
DISTANCES, TURNS = (4.5, 7.0, 10.0, 14.0), (0.0, 25.0, -25.0, 50.0, -50.0, 75.0, -75.0)
"""Places of a label: mm from the tip, degrees from the direction of the arrow."""


@dataclass(frozen=True, slots=True)
class PhasorGroup:
    """Phasors of one quantity: values (SI, angles on paper), their tags, and whether they are dashed with an open
    arrowhead (as currents beside voltages, or branch currents beside line currents)."""

    values: tuple[complex, ...]
    tags: tuple[Phrase, ...]
    dashed: bool = False

    @property
    def largest(self) -> float:
        """The size of the largest phasor (SI)."""
        return max(phasor.magnitude(value) for value in self.values)

    def tips(self, factor: float) -> list[tuple[Point, Phrase]]:
        """The tip of each arrow from a common point at the origin, at ``factor`` mm for each unit, with its tag."""
        return [
            (Point(value.real * factor, value.imag * factor), tag)
            for value, tag in zip(self.values, self.tags, strict=True)
            if phasor.magnitude(value) > SMALLEST * self.largest
        ]


def _arrow(start: Point, tip: Point, *, dashed: bool) -> list[Item]:
    if not dashed:
        return [Arrow(start, tip, 0.5, "ink", 4.0)]
    degrees = direction(start, tip)
    barbs = [tip.moved(-4.0, degrees + side) for side in (22.0, -22.0)]
    return [
        Line(start, tip, 0.5, "blue", (5.0, 1.2)),
        Shape((barbs[0], tip, barbs[1]), 0.5, "blue", None, closed=False),
    ]


def _label(tag: Phrase, start: Point, tip: Point, tips: list[Point], boxes: list[Box]) -> Text:
    """A phasor's name near its tip, where it touches no arrow and no other name."""
    degrees = direction(start, tip)
    places = [tip.moved(away, degrees + turn) for away, turn in product(DISTANCES, TURNS)]
    labels = [text(tag, Point(place.x, place.y - CAPITALS / 2), CAPITALS, "middle") for place in places]
    for label in labels:
        box = box_of(label, CAPITALS).grown(CLEAR)
        if not any(box.meets(other) for other in boxes) and not any(box.meets_segment(start, one) for one in tips):
            return label
    return labels[0]


def _factors(groups: tuple[PhasorGroup, ...], *, one_scale: bool) -> list[float]:
    """Millimetres for each unit, by group."""
    if one_scale:
        return [LONG / (max(group.largest for group in groups) or 1.0)] * len(groups)
    return [longest / (group.largest or 1.0) for group, longest in zip(groups, (LONG, SHORT), strict=True)]


def _drawing(groups: tuple[PhasorGroup, ...], start: Point, *, one_scale: bool) -> tuple[list[Item], Box]:
    """Arrows and names from a common point, and the rectangle that they fill."""
    drawn = [
        (start.plus(tip), tag, group.dashed)
        for group, factor in zip(groups, _factors(groups, one_scale=one_scale), strict=True)
        for tip, tag in group.tips(factor)
    ]  # fmt: skip
    tips = [tip for tip, _, _ in drawn]
    items = [item for tip, _, dashed in drawn for item in _arrow(start, tip, dashed=dashed)]
    boxes: list[Box] = []
    for tip, tag, _ in drawn:
        label = _label(tag, start, tip, tips, boxes)
        items.append(label)
        boxes.append(box_of(label, CAPITALS))
    corners = [corner for box in boxes for corner in box.corners]
    return items, bounds([start, *tips, *corners])


def diagram(groups: tuple[PhasorGroup, PhasorGroup], title: str, *, one_scale: bool) -> Page:
    """All phasors of two groups from one common point, with ``one_scale`` for both groups or one for each."""
    _, area = _drawing(groups, ORIGIN, one_scale=one_scale)
    height = area.height + 2 * MARGIN
    start = Point(WIDTH / 2 - area.centre.x, height / 2 - area.centre.y)
    items, _ = _drawing(groups, start, one_scale=one_scale)
    return Page(WIDTH, height, tuple(items), title, title)
