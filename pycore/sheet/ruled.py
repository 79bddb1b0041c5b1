"""Blank paper at exact size: millimetre, polar and 60 degree grids inside a box, mm."""

import math
from collections.abc import Iterator

from pycore.drawing import Circle, Group, Ink, Item, Line
from pycore.geometry import Box, Point
from pycore.sheet.instruments import figure

_FINE, _MIDDLE, _STRONG = 0.1, 0.18, 0.35


def _weight(index: int) -> float:
    """Return the line width by its number in mm: tens, fives, single millimetres."""
    return _STRONG if index % 10 == 0 else (_MIDDLE if index % 5 == 0 else _FINE)


def _shade(width: float) -> Ink:
    """Return the ink: fine lines are pale, so that pencil is visible on them."""
    return "accent" if width == _STRONG else "tint-2"


def _whole_centimetres(box: Box) -> Box:
    """The largest rectangle of whole centimetres, centred."""
    width, height = 10.0 * int(box.width / 10), 10.0 * int(box.height / 10)
    left, bottom = box.centre.x - width / 2, box.centre.y - height / 2
    return Box(left, bottom, left + width, bottom + height)


def millimetre(box: Box) -> Group:
    """Millimetre squares in whole centimetres; every fifth and tenth line is stronger."""
    area = _whole_centimetres(box)
    items: list[Item] = []
    for index in range(int(area.width) + 1):
        x = area.left + index
        items.append(Line(Point(x, area.bottom), Point(x, area.top), _weight(index), _shade(_weight(index))))
    for index in range(int(area.height) + 1):
        y = area.bottom + index
        items.append(Line(Point(area.left, y), Point(area.right, y), _weight(index), _shade(_weight(index))))
    # The strong lines last, so that no fine line is drawn across them.
    items.sort(key=lambda line: line.width if isinstance(line, Line) else 0.0)
    return Group(tuple(items), name="grid")


def polar(box: Box) -> Group:
    """Circles every 5 mm around the middle, rays every 5 degrees, every 10 and 30 stronger."""
    area = box.grown(-6.0)
    centre = area.centre
    reach = 10.0 * int(min(area.width, area.height) / 20)
    items: list[Item] = []
    for degree in range(0, 360, 5):
        inner = 0.0 if degree % 30 == 0 else (10.0 if degree % 10 == 0 else 40.0)
        width = _STRONG if degree % 90 == 0 else (_MIDDLE if degree % 10 == 0 else _FINE)
        if inner < reach:
            items.append(Line(centre.moved(inner, degree), centre.moved(reach, degree), width, _shade(width)))
    for step in range(1, int(reach / 5) + 1):
        width = _STRONG if 5.0 * step == reach or step % 10 == 0 else (_MIDDLE if step % 2 == 0 else _FINE)
        items.append(Circle(centre, 5.0 * step, width, _shade(width)))
    for degree in range(0, 360, 10):
        items.append(figure(f"{degree}", centre.moved(reach + 3.0, degree), 2.5, degree - 90.0, ink="ink-2"))
    items.append(Circle(centre, 1.0, _STRONG, "accent"))
    return Group(tuple(items), name="grid")


def _slanted(area: Box, slope: float, spacing: float) -> Iterator[Line]:
    """Parallel lines at 60 degrees (slope +1) or 120 (slope -1), ``spacing`` apart along the base."""
    rise = math.sqrt(3.0) * slope
    run = area.height / math.sqrt(3.0)
    count = int((area.width + run) / spacing) + 2
    for index in range(-count, count + 1):
        start = area.left + index * spacing
        low, high = sorted(
            ((area.left - start) * rise, (area.right - start) * rise)
        )
        bottom, top = max(0.0, low), min(area.height, high)
        if top - bottom <= 1e-9:
            continue
        ends = tuple(Point(start + y / rise, area.bottom + y) for y in (bottom, top))
        yield Line(ends[0], ends[1], _MIDDLE, "tint-2")


def sixty(box: Box) -> Group:
    """Three sets of parallels 60 degrees apart: equilateral triangles with 10 mm sides."""
    spacing = 10.0
    step = spacing * math.sqrt(3.0) / 2
    rows = 2 * int(box.height / (2 * step))
    height = rows * step
    width = spacing * int(box.width / spacing)
    left, bottom = box.centre.x - width / 2, box.centre.y - height / 2
    area = Box(left, bottom, left + width, bottom + height)
    items: list[Item] = [
        Line(
            Point(area.left, area.bottom + index * step),
            Point(area.right, area.bottom + index * step),
            _MIDDLE,
            "tint-2",
        )
        for index in range(rows + 1)
    ]
    items += _slanted(area, 1.0, spacing)
    items += _slanted(area, -1.0, spacing)
    return Group(tuple(items), name="grid")


def ruled(kind: str, box: Box) -> Group:
    """Return one of the ``KINDS`` inside a box; raises KeyError for another."""
    return {"millimetre": millimetre, "polar": polar, "sixty": sixty}[kind](box)
