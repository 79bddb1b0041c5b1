"""What a page has in ink before anybody draws on it, as plain lines, discs and areas in mm.

Whoever reads a photograph of the page leaves it out: it is neither drawn nor bare.
"""

import math
from dataclasses import dataclass
from itertools import pairwise

from pycore import lettering
from pycore.drawing import Arc, Arrow, Circle, Item, Line, Page, Shape, Squares, Text, walk
from pycore.geometry import Box, Point, bounds

ASCENT, DESCENT = 0.8, 0.25
"""How far letters reach above and below their line, in ems."""
ARC_STEP = 10.0


@dataclass(frozen=True, slots=True)
class PrintedMatter:
    """Lines (x1, y1, x2, y2, width), discs (x, y, radius) and areas (left, bottom, right, top), in mm, y up."""

    lines: tuple[tuple[float, float, float, float, float], ...]
    discs: tuple[tuple[float, float, float], ...]
    areas: tuple[tuple[float, float, float, float], ...]


def _text_box(text: Text) -> Box:
    wide = lettering.runs_width(text.runs)
    size = max((run.size for run in text.runs), default=0.0)
    before = {"start": 0.0, "middle": wide / 2, "end": wide}[text.anchor]
    corners = [(-before, -DESCENT * size), (wide - before, -DESCENT * size),
               (wide - before, ASCENT * size), (-before, ASCENT * size)]  # fmt: skip
    across, up = (Point(0.0, 0.0).moved(1.0, text.turn + turn) for turn in (0.0, 90.0))
    return bounds([text.at.plus(across.times(x)).plus(up.times(y)) for x, y in corners])


def _outline(item: Item) -> list[tuple[tuple[Point, ...], float]]:
    """The lines of an item, each as its points and its width."""
    if isinstance(item, Line):
        return [((item.start, item.end), item.width)]
    if isinstance(item, Arrow):
        return [((item.tail, item.tip), max(item.width, 0.34 * item.head))]
    if isinstance(item, Arc):
        count = max(1, math.ceil(math.fabs(item.sweep) / ARC_STEP))
        ways = [item.start + item.sweep * k / count for k in range(count + 1)]
        return [(tuple(item.centre.moved(item.radius, way) for way in ways), item.width)]
    if isinstance(item, Shape) and not item.fill:
        return [((*item.points, *(item.points[:1] if item.closed else ())), item.width)]
    return []


def _area(item: Item) -> Box | None:
    """The area that an item fills."""
    if isinstance(item, Text):
        return _text_box(item)
    if isinstance(item, Shape) and item.fill and item.points:
        return bounds(item.points)
    if isinstance(item, Squares):
        x, y = item.corner
        size = item.side * len(item.rows)
        return Box(x, y - size, x + size, y)
    return None


def printed_matter(page: Page, box: Box) -> PrintedMatter:
    """Return what of a page lies in ``box`` (mm)."""
    lines: list[tuple[float, float, float, float, float]] = []
    discs: list[tuple[float, float, float]] = []
    areas: list[tuple[float, float, float, float]] = []
    for item in walk(page.items):
        if isinstance(item, Circle):
            discs.append((*item.centre, item.radius + item.width / 2))
        area = _area(item)
        if area is not None:
            areas.append((area.left, area.bottom, area.right, area.top))
        for points, width in _outline(item):
            lines += [(*one, *other, width) for one, other in pairwise(points)]

    def inside(left: float, low: float, right: float, up: float) -> bool:
        return left < box.right and right > box.left and low < box.top and up > box.bottom

    return PrintedMatter(
        tuple(line for line in lines if inside(*bounds([Point(*line[:2]), Point(*line[2:4])]))),
        tuple(disc for disc in discs if inside(*(disc[k] + s * disc[2] for s in (-1, 1) for k in (0, 1)))),
        tuple(area for area in areas if inside(*area) and not (area[0] <= box.left and area[2] >= box.right)),
    )
