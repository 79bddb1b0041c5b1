"""The plots of the study, in the lines, ticks and letters of the sheets: a cloud of points, and a course of values."""

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

from pycore import quantity, trig
from pycore.drawing import Circle, Group, Item, Line, Page, Shape
from pycore.geometry import Point
from pycore.sheet.intervals import tick_values
from pycore.sheet.lettered import text

CAPITALS = 2.9
TICK, LONG_TICK = 1.0, 1.8
LIGHT, MEDIUM = 0.18, 0.35


@dataclass(frozen=True, slots=True)
class Cloud:
    """Where simulated drawings end, mm from the exact point, and the ellipse that should hold 95 of 100 of them: its
    semi-axes, and the direction of the first."""

    title: str
    points: tuple[tuple[float, float], ...]
    major: float
    minor: float
    degrees: float


CLOUD_SIDE, CLOUD_REACH = 76.0, 15
"""mm; the side of a cloud's picture, and how far its axes reach each way on the learner's paper."""
CLOUD_FACTOR = 2.25
CLOUD_HEAD = 9.0


def _cross(middle: Point) -> list[Item]:
    """Return two axes through a point with a tick at each millimetre, a long one and a figure at each tenth."""
    items: list[Item] = []
    far = CLOUD_REACH * CLOUD_FACTOR
    for step in range(-CLOUD_REACH, CLOUD_REACH + 1):
        along, tick = step * CLOUD_FACTOR, LONG_TICK if step % 5 == 0 else TICK
        items.append(Line(middle.plus(Point(along, -tick)), middle.plus(Point(along, 0.0)), LIGHT, "ink-2"))
        items.append(Line(middle.plus(Point(-tick, along)), middle.plus(Point(0.0, along)), LIGHT, "ink-2"))
        if step % 10 == 0 and step:
            items.append(text(str(step), middle.plus(Point(along, -6.2)), CAPITALS, "middle", "ink-2"))
    items.append(Line(middle.plus(Point(-far, 0.0)), middle.plus(Point(far, 0.0)), LIGHT, "ink-2"))
    items.append(Line(middle.plus(Point(0.0, -far)), middle.plus(Point(0.0, far)), LIGHT, "ink-2"))
    items.append(text("mm", middle.plus(Point(far, 2.0)), CAPITALS, "end", "ink-2"))
    return items


def cloud_page(cloud: Cloud, description: str) -> Page:
    """Return the picture of one cloud; points outside of it are left out."""
    middle = Point(CLOUD_SIDE / 2, CLOUD_SIDE / 2)
    inside = [point for point in cloud.points if max(map(abs, point)) <= CLOUD_REACH]
    dots = tuple(Circle(middle.plus(Point(x, y).times(CLOUD_FACTOR)), 0.32, 0.0, "grey", "grey") for x, y in inside)
    edge = tuple(
        middle.moved(cloud.major * CLOUD_FACTOR * trig.cosine(5.0 * step), cloud.degrees)
        .moved(cloud.minor * CLOUD_FACTOR * trig.sine(5.0 * step), cloud.degrees + 90.0)
        for step in range(72)
    )  # fmt: skip
    items = (
        Group(dots, name="dots"), Group(tuple(_cross(middle)), name="axis"), Shape(edge, 0.5, "accent"),
        text(cloud.title, Point(0.0, CLOUD_SIDE + 3.0), 3.1),
    )  # fmt: skip
    return Page(CLOUD_SIDE, CLOUD_SIDE + CLOUD_HEAD, items, cloud.title, description)


COURSE_WIDTH, COURSE_HEIGHT = 120.0, 76.0
COURSE_CORNER, COURSE_END = Point(9.0, 11.0), Point(117.0, 68.0)


def course_page(points: Sequence[tuple[float, float]], across: str, up: str, title: str, description: str) -> Page:
    """Return values above one axis, joined by straight lines; ``across`` and ``up`` name the axes."""
    most_x, most_y = max(x for x, _ in points), max(y for _, y in points)
    corner, end = COURSE_CORNER, COURSE_END
    step_x, step_y = (end.x - corner.x) / most_x, (end.y - corner.y - 2.0) / most_y
    places = [Point(corner.x + x * step_x, corner.y + y * step_y) for x, y in points]
    items: list[Item] = [
        Line(corner, Point(end.x, corner.y), MEDIUM, "ink"), Line(corner, Point(corner.x, end.y), MEDIUM, "ink"),
        text(across, Point(end.x, corner.y - 10.0), CAPITALS, "end", "ink-2"),
        text(up, Point(0.0, end.y + 4.0), CAPITALS, "start", "ink-2"),
    ]  # fmt: skip
    for value in tick_values(0.0, most_x)[0]:
        foot = Point(corner.x + value * step_x, corner.y)
        items.append(Line(foot.plus(Point(0.0, -LONG_TICK)), foot, MEDIUM, "ink"))
        items.append(text(quantity.plain(value), foot.plus(Point(0.0, -5.6)), CAPITALS, "middle", "ink-2"))
    for value in tick_values(0.0, most_y)[0][1:]:
        foot = Point(corner.x, corner.y + value * step_y)
        items.append(Line(foot.plus(Point(-LONG_TICK, 0.0)), foot, MEDIUM, "ink"))
        items.append(Line(foot, Point(end.x, foot.y), LIGHT, "rule"))
        items.append(text(quantity.plain(value), foot.plus(Point(-2.6, -1.0)), CAPITALS, "end", "ink-2"))
    items += [Line(one, other, 0.5, "accent") for one, other in itertools.pairwise(places)]
    items += [Circle(place, 1.1, 0.5, "accent", "sheet") for place in places]
    return Page(COURSE_WIDTH, COURSE_HEIGHT, tuple(items), title, description)
