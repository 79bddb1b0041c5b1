"""Set squares drawn to scale: a triangle with a right angle, open in its middle, with the sizes of its angles."""

from pycore import geometry
from pycore.drawing import Group, Item, Shape
from pycore.geometry import Point
from pycore.sheet.instruments import Pose, figure

WINDOW_SHARE = 0.42
"""Size of the open triangle in the middle, as a share of the whole."""
SHARP, EQUAL = (150.0, 86.603), (120.0, 120.0)
"""The two edges at the right angle, mm: of the set square with 30 and 60 degrees, and of that with 45."""
LONGER = 1.6
"""How much larger both are where lines are longer than a ruler of 150 mm."""


def corners(pose: Pose, legs: tuple[float, float]) -> tuple[Point, Point, Point]:
    """The right angle at the pose, the end of the edge in the pose's direction, that of the other edge, clockwise."""
    return pose.at, pose.xy(legs[0], 0.0), pose.xy(0.0, -legs[1])


def _middle(places: tuple[Point, Point, Point]) -> Point:
    """The point that is equally far from all three edges."""
    a, b, c = places
    weights = geometry.distance(b, c), geometry.distance(a, c), geometry.distance(a, b)
    whole = weights[0] + weights[1] + weights[2]
    parts = [place.times(weight / whole) for place, weight in zip(places, weights, strict=True)]
    return parts[0].plus(parts[1]).plus(parts[2])


def set_square(pose: Pose, legs: tuple[float, float], sharp: int) -> Group:
    """A set square with its right angle at the pose and one edge in the pose's direction; its body is clockwise of that
    edge. ``sharp``: the angle in degrees at the end of that edge."""
    outer = corners(pose, legs)
    middle = _middle(outer)
    inner = tuple(middle.plus(place.minus(middle).times(WINDOW_SHARE)) for place in outer)
    body = (*outer, outer[0], inner[0], *inner[::-1])
    items: list[Item] = [Shape(body, 0.0, "accent", "tint"), Shape(outer, 0.25, "accent", None)]
    items.append(Shape(inner, 0.2, "accent", None))
    for place, size in ((outer[1], sharp), (outer[2], 90 - sharp)):
        far = 0.5 * WINDOW_SHARE * geometry.distance(place, middle) + 5.0
        items.append(figure(f"{size}°", place.moved(far, geometry.direction(place, middle)), 3.0, pose.degrees))
    return Group(tuple(items), name="set-square", instrument="set-square")
