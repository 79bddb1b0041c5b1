"""Plane geometry without units: points, rays, intersections, boxes.

Angles in degrees, anticlockwise positive from +x; y is up.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple

from pycore import trig

_tuple = tuple.__new__
"""Makes a point of its numbers in one call, where its class takes three: a sheet has a thousand."""


class Point(NamedTuple):
    """A point, or the displacement between two points."""

    x: float
    y: float

    def moved(self, distance: float, degrees: float) -> "Point":
        """Return the point at ``distance`` in the direction ``degrees``."""
        along, up = trig.direction(degrees)
        x, y = self
        return _tuple(Point, (x + distance * along, y + distance * up))

    def plus(self, other: "Point") -> "Point":
        """Return the sum of two displacements."""
        x, y = self
        other_x, other_y = other
        return _tuple(Point, (x + other_x, y + other_y))

    def minus(self, other: "Point") -> "Point":
        """Return the displacement from ``other`` to this point."""
        x, y = self
        other_x, other_y = other
        return _tuple(Point, (x - other_x, y - other_y))

    def times(self, factor: float) -> "Point":
        """Return the displacement multiplied by a factor."""
        x, y = self
        return _tuple(Point, (x * factor, y * factor))


ORIGIN = Point(0.0, 0.0)


@dataclass(frozen=True, slots=True)
class Ray:
    """A line through ``start`` in the direction ``degrees``."""

    start: Point
    degrees: float


def distance(a: Point, b: Point) -> float:
    """Distance between two points."""
    return math.hypot(b.x - a.x, b.y - a.y)


def direction(a: Point, b: Point) -> float:
    """Return the angle of the displacement from a to b, -180 < angle <= 180; 0 if they coincide."""
    return trig.angle_of(b.x - a.x, b.y - a.y)


def middle(a: Point, b: Point) -> Point:
    """Return the midpoint."""
    return Point((a.x + b.x) / 2, (a.y + b.y) / 2)


def cross(a: Point, b: Point) -> float:
    """Return the signed area of the parallelogram of two displacements, positive if b is anticlockwise of a."""
    return a.x * b.y - a.y * b.x


def dot(a: Point, b: Point) -> float:
    """Return the scalar product of two displacements."""
    return a.x * b.x + a.y * b.y


def intersection(first: Ray, second: Ray) -> Point | None:
    """Return where two infinite lines meet; None if they are parallel."""
    a = ORIGIN.moved(1.0, first.degrees)
    b = ORIGIN.moved(1.0, second.degrees)
    sine_between = cross(a, b)
    if math.fabs(sine_between) < 1e-12:
        return None
    along = cross(second.start.minus(first.start), b) / sine_between
    return first.start.plus(a.times(along))


def foot(point: Point, line: Ray) -> Point:
    """Return the foot of the perpendicular from a point to a line."""
    unit = ORIGIN.moved(1.0, line.degrees)
    return line.start.plus(unit.times(dot(point.minus(line.start), unit)))


def circles_meet(
    first: Point, first_radius: float, second: Point, second_radius: float, near: Point
) -> Point | None:
    """Return where two circles cross, on the side of ``near``; None if they do not meet.

    Circles that miss each other only by rounding count as touching.
    """
    apart = distance(first, second)
    if apart == 0.0:
        return None
    along = (apart * apart + first_radius * first_radius - second_radius * second_radius) / (
        2 * apart
    )
    height_squared = first_radius * first_radius - along * along
    if height_squared < -1e-9 * apart * apart:
        return None
    height = math.sqrt(max(0.0, height_squared))
    unit = second.minus(first).times(1 / apart)
    base = first.plus(unit.times(along))
    side = Point(-unit.y, unit.x).times(height)
    return min((base.plus(side), base.minus(side)), key=lambda meet: distance(meet, near))


class Box(NamedTuple):
    """A rectangle with horizontal and vertical sides; left < right and bottom < top."""

    left: float
    bottom: float
    right: float
    top: float

    @staticmethod
    def around(x: float, y: float, width: float, height: float) -> "Box":
        """Return the rectangle of a size about a centre."""
        return _tuple(Box, (x - width / 2, y - height / 2, x + width / 2, y + height / 2))

    @property
    def width(self) -> float:
        """Horizontal extent."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Vertical extent."""
        return self.top - self.bottom

    @property
    def centre(self) -> Point:
        """The centre."""
        return Point((self.left + self.right) / 2, (self.bottom + self.top) / 2)

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """The corners, anticlockwise from the lower left."""
        left, bottom, right, top = self
        return Point(left, bottom), Point(right, bottom), Point(right, top), Point(left, top)

    def grown(self, margin: float) -> "Box":
        """Return the rectangle with a margin added on every side."""
        left, bottom, right, top = self
        return _tuple(Box, (left - margin, bottom - margin, right + margin, top + margin))

    def times(self, factor: float) -> "Box":
        """Return the rectangle of the corners multiplied by a factor above 0."""
        left, bottom, right, top = self
        return _tuple(Box, (left * factor, bottom * factor, right * factor, top * factor))

    def reach(self, start: Point, degrees: float) -> float:
        """Return how far it is from a point inside to the edge, in a direction."""
        way = ORIGIN.moved(1.0, degrees)
        level = (self.right if way.x > 0 else self.left) - start.x
        upright = (self.top if way.y > 0 else self.bottom) - start.y
        return min((to / part for to, part in ((level, way.x), (upright, way.y)) if part), default=0.0)

    def meets(self, other: "Box") -> bool:
        """Return whether two rectangles overlap by more than a shared edge."""
        left, bottom, right, top = self
        other_left, other_bottom, other_right, other_top = other
        return left < other_right and other_left < right and bottom < other_top and other_bottom < top

    def holds(self, other: "Box") -> bool:
        """Return whether the other rectangle lies completely inside."""
        left, bottom, right, top = self
        other_left, other_bottom, other_right, other_top = other
        return left <= other_left and bottom <= other_bottom and right >= other_right and top >= other_top

    def meets_segment(self, a: Point, b: Point) -> bool:
        """Return whether the line segment from a to b passes through the rectangle."""
        left, bottom, right, top = self
        (ax, ay), (bx, by) = a, b
        # Most segments lie wholly to one side.
        if (ax <= left and bx <= left) or (ax >= right and bx >= right):
            return False
        if (ay <= bottom and by <= bottom) or (ay >= top and by >= top):
            return False
        enter, leave = 0.0, 1.0
        for start, step, low, high in ((ax, bx - ax, left, right), (ay, by - ay, bottom, top)):
            if step == 0.0:
                continue
            near, far = (low - start) / step, (high - start) / step
            if near > far:
                near, far = far, near
            enter, leave = max(enter, near), min(leave, far)
            if enter >= leave:
                return False
        return True


def cross_strokes(at: Point, half: float) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
    """Return the ends of the level and of the upright stroke of a cross."""
    right, up = Point(half, 0.0), Point(0.0, half)
    return (at.minus(right), at.plus(right)), (at.minus(up), at.plus(up))


def bounds(points: Iterable[Point]) -> Box:
    """Return the smallest rectangle that contains the points (at least one)."""
    across, up = zip(*points, strict=True)
    return Box(min(across), min(up), max(across), max(up))


def joined(boxes: Iterable[Box]) -> Box:
    """Return the smallest rectangle that contains the rectangles (at least one)."""
    left, bottom, right, top = zip(*boxes, strict=True)
    return Box(min(left), min(bottom), max(right), max(top))


def segment_distance(point: Point, a: Point, b: Point) -> float:
    """Return the distance from a point to the line segment from a to b."""
    # Written out in plain numbers: the placing of labels asks this thousands of times.
    (x, y), (from_x, from_y), (end_x, end_y) = point, a, b
    step_x, step_y = end_x - from_x, end_y - from_y
    to_x, to_y = x - from_x, y - from_y
    length_squared = step_x * step_x + step_y * step_y
    if length_squared > 0.0:
        along = (to_x * step_x + to_y * step_y) / length_squared
        along = 0.0 if along < 0.0 else min(along, 1.0)
        to_x, to_y = to_x - along * step_x, to_y - along * step_y
    return math.hypot(to_x, to_y)
