"""A plane seen in an image: from marks at known places to the place of any point on the plane, without units.

The image point (u, v) of a plane point (x, y) is a projection of the plane (8 numbers) and, if there are enough marks,
a lens distortion: u = c + (p - c)(1 + k r2), with p the undistorted image point, c the centre of the image, and r2 the
square of the distance of p from c in half diagonals. Sources: Hartley and Zisserman, Multiple View Geometry, chapter 4
(normalised direct linear transformation, refined on the image residuals); Brown's radial term; both from memory.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from pycore import geometry
from pycore.geometry import Point
from pycore.linear import SingularMatrixError, inverse_of_normal, least_squares

FEWEST = 4
FOR_LENS = 7
"""The number of marks from which lens distortion can be told from errors of the marks."""
THIN = 0.08
"""Three marks are nearly in line if the height of their triangle is below this share of its longest side."""
STEPS = 30


class ProjectionError(ValueError):
    """Raised if marks do not determine a projection.

    ``reason``: ``few``; ``line`` (three nearly in line); ``crossed`` (their order around the image differs from that
    around the plane); ``far`` (no projection fits). ``marks``: the indexes concerned.
    """

    def __init__(self, reason: str, marks: tuple[int, ...] = ()) -> None:
        self.reason, self.marks = reason, marks
        super().__init__(f"{reason} {marks}")


@dataclass(frozen=True, slots=True)
class Mark:
    """A mark: its place on the plane, and its image point."""

    place: Point
    seen: Point


@dataclass(frozen=True, slots=True)
class Lens:
    """Centre and half diagonal of the image, for the lens distortion."""

    middle: Point
    reach: float


@dataclass(frozen=True, slots=True)
class Projection:
    """A projection from the plane to the image and back.

    ``numbers``: the eight of the projection, then that of the lens (0: none). ``spread``: the covariance of the fitted
    ones.
    """

    numbers: tuple[float, ...]
    lens: Lens
    spread: tuple[tuple[float, ...], ...]

    def seen(self, place: Point) -> Point:
        """Where a point of the plane is seen."""
        return _seen(self.numbers, self.lens, place)

    def place(self, seen: Point) -> Point:
        """Return the point of the plane with this image point. Raises ProjectionError at or beyond the horizon."""
        straight = _straightened(self.numbers[8], self.lens, seen)
        a, b, c, d, e, f, g, h = self.numbers[:8]
        u, v = straight
        m11, m12, m21, m22 = a - g * u, b - h * u, d - g * v, e - h * v
        determinant = m11 * m22 - m12 * m21
        if determinant == 0.0:
            raise ProjectionError("far")
        right, up = u - c, v - f
        point = Point((right * m22 - up * m12) / determinant, (up * m11 - right * m21) / determinant)
        if g * point.x + h * point.y + 1.0 <= 1e-9:
            raise ProjectionError("far")
        return point

    def covariance(self, places: Sequence[Point], tap: float) -> list[list[float]]:
        """Return the covariance of the plane coordinates x1, y1, x2, y2 ... of points tapped in the image.

        ``tap``: the standard error of each tapped coordinate. The errors of the projection itself are included.
        """
        count = len(self.spread)
        pulls = [_pull(self.numbers, self.lens, place, count) for place in places]
        matrix = [[0.0] * (2 * len(places)) for _ in range(2 * len(places))]
        for i, (inner_i, outer_i) in enumerate(pulls):
            for j, (inner_j, outer_j) in enumerate(pulls):
                block = _between(outer_i, self.spread, outer_j)
                if i == j:
                    block = [[block[0][0] + tap * tap, block[0][1]], [block[1][0], block[1][1] + tap * tap]]
                turned = _between(inner_i, block, inner_j)
                for row in (0, 1):
                    for column in (0, 1):
                        matrix[2 * i + row][2 * j + column] = turned[row][column]
        return matrix


def _between(left: Sequence[Sequence[float]], middle: Sequence[Sequence[float]],
             right: Sequence[Sequence[float]]) -> list[list[float]]:  # fmt: skip
    """Return left x middle x right transposed."""
    half = [[math.fsum(a * row[k] for a, row in zip(line, middle, strict=True)) for k in range(len(middle[0]))]
            for line in left]  # fmt: skip
    return [[math.fsum(a * b for a, b in zip(line, other, strict=True)) for other in right] for line in half]


def _straight(numbers: Sequence[float], place: Point) -> Point:
    a, b, c, d, e, f, g, h = numbers[:8]
    x, y = place
    depth = g * x + h * y + 1.0
    if depth <= 1e-9:
        raise ProjectionError("far")
    return Point((a * x + b * y + c) / depth, (d * x + e * y + f) / depth)


def _bent(k: float, lens: Lens, straight: Point) -> Point:
    off = straight.minus(lens.middle)
    square = geometry.dot(off, off) / (lens.reach * lens.reach)
    return lens.middle.plus(off.times(1.0 + k * square))


def _seen(numbers: Sequence[float], lens: Lens, place: Point) -> Point:
    straight = _straight(numbers, place)
    return _bent(numbers[8], lens, straight) if numbers[8] else straight


def _straightened(k: float, lens: Lens, seen: Point) -> Point:
    """Return the undistorted image point, by Newton's method along its radius."""
    if not k:
        return seen
    off = seen.minus(lens.middle).times(1.0 / lens.reach)
    distorted = math.hypot(off.x, off.y)
    radius = distorted
    for _ in range(STEPS):
        slope = 1.0 + 3.0 * k * radius * radius
        if slope < 0.05:
            raise ProjectionError("far")
        radius -= (radius * (1.0 + k * radius * radius) - distorted) / slope
    return lens.middle.plus(off.times(lens.reach * radius / distorted)) if distorted else lens.middle


def _slopes(numbers: Sequence[float], lens: Lens, place: Point) -> tuple[list[float], list[float]]:
    """Return the derivatives of u and v by the nine numbers."""
    straight = _straight(numbers, place)
    x, y = place
    depth = numbers[6] * x + numbers[7] * y + 1.0
    across = (x / depth, y / depth, 1.0 / depth)
    p_u = [*across, 0.0, 0.0, 0.0, -straight.x * across[0], -straight.x * across[1]]
    p_v = [0.0, 0.0, 0.0, *across, -straight.y * across[0], -straight.y * across[1]]
    (uu, uv), (vu, vv), square, off = _bending(numbers[8], lens, straight)
    u = [uu * one + uv * other for one, other in zip(p_u, p_v, strict=True)]
    v = [vu * one + vv * other for one, other in zip(p_u, p_v, strict=True)]
    return [*u, off.x * square], [*v, off.y * square]


def _bending(
    k: float, lens: Lens, straight: Point
) -> tuple[tuple[float, float], tuple[float, float], float, Point]:
    """Return the derivatives of the distorted point by the undistorted one, its squared distance, and its displacement
    from the centre."""
    off = straight.minus(lens.middle)
    reach = lens.reach * lens.reach
    square = geometry.dot(off, off) / reach
    along = 1.0 + k * square
    mixed = 2.0 * k * off.x * off.y / reach
    first = (along + 2.0 * k * off.x * off.x / reach, mixed)
    return first, (mixed, along + 2.0 * k * off.y * off.y / reach), square, off


def _pull(
    numbers: Sequence[float], lens: Lens, place: Point, count: int
) -> tuple[list[list[float]], list[list[float]]]:
    """Return how a displacement in the image moves a point on the plane, and how the numbers move it in the image."""
    straight = _straight(numbers, place)
    depth = numbers[6] * place.x + numbers[7] * place.y + 1.0
    a, b, _, d, e, _, g, h = numbers[:8]
    plain = ((a - g * straight.x) / depth, (b - h * straight.x) / depth), (
        (d - g * straight.y) / depth, (e - h * straight.y) / depth)  # fmt: skip
    first, second, _, _ = _bending(numbers[8], lens, straight)
    rows = [
        [bent[0] * plain[0][column] + bent[1] * plain[1][column] for column in (0, 1)] for bent in (first, second)
    ]
    determinant = rows[0][0] * rows[1][1] - rows[0][1] * rows[1][0]
    if determinant == 0.0:
        raise ProjectionError("far")
    inverse = [
        [rows[1][1] / determinant, -rows[0][1] / determinant],
        [-rows[1][0] / determinant, rows[0][0] / determinant],
    ]
    u, v = _slopes(numbers, lens, place)
    return inverse, [u[:count], v[:count]]


# Solving.


def _turn(a: Point, b: Point, c: Point) -> float:
    """Return the height of a triangle as a share of its longest side, positive if it runs anticlockwise."""
    longest = max(geometry.distance(a, b), geometry.distance(b, c), geometry.distance(c, a))
    return geometry.cross(b.minus(a), c.minus(a)) / (longest * longest) if longest > 0 else 0.0


def _triples(marks: Sequence[Mark]) -> Iterator[tuple[tuple[int, ...], float, float]]:
    for three in combinations(range(len(marks)), 3):
        a, b, c = (marks[index] for index in three)
        yield three, _turn(a.place, b.place, c.place), _turn(a.seen, b.seen, c.seen)


def check(marks: Sequence[Mark]) -> int:
    """Return +1 if the image shows the plane as it is, -1 if mirrored (as with v measured downwards).

    Raises ProjectionError if there are too few marks, if fewer than four are clear of one another's lines, or if their
    order around the image differs from that around the plane.
    """
    if len(marks) < FEWEST:
        raise ProjectionError("few")
    thin = [three for three, flat, seen in _triples(marks) if min(math.fabs(flat), math.fabs(seen)) < THIN]
    clear = any(
        not any(three in thin for three in combinations(four, 3)) for four in combinations(range(len(marks)), FEWEST)
    )
    if not clear:
        raise ProjectionError("line", thin[0])
    senses = [(three, flat * seen > 0) for three, flat, seen in _triples(marks) if three not in thin]
    kept = len([three for three, same in senses if same])
    if 0 < kept < len(senses):
        odd = [three for three, same in senses if same == (kept * 2 < len(senses))]
        raise ProjectionError("crossed", odd[0])
    return 1 if kept else -1


@dataclass(frozen=True, slots=True)
class _PointNormalisation:
    """Moves points about their middle and to a mean distance of root two, and back."""

    middle: Point
    factor: float

    @classmethod
    def of(cls, points: Sequence[Point]) -> "_PointNormalisation":
        count = len(points)
        middle = Point(math.fsum(p.x for p in points) / count, math.fsum(p.y for p in points) / count)
        mean = math.fsum(geometry.distance(point, middle) for point in points) / count
        return cls(middle, math.sqrt(2.0) / mean)

    def put(self, point: Point) -> Point:
        return point.minus(self.middle).times(self.factor)


def _direct(marks: Sequence[Mark]) -> list[float]:
    """Return the eight numbers from linear equations."""
    rows: list[list[float]] = []
    right: list[float] = []
    for mark in marks:
        (x, y), (u, v) = mark.place, mark.seen
        rows += [[x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y], [0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y]]
        right += [u, v]
    return least_squares(rows, right)


def _refined(marks: Sequence[Mark], numbers: list[float], lens: Lens, count: int) -> list[float]:
    """Improve the numbers by Gauss-Newton steps on the residuals."""
    for _ in range(STEPS):
        rows: list[list[float]] = []
        right: list[float] = []
        for mark in marks:
            u, v = _slopes(numbers, lens, mark.place)
            rows += [u[:count], v[:count]]
            off = mark.seen.minus(_seen(numbers, lens, mark.place))
            right += [off.x, off.y]
        step = least_squares(rows, right)
        numbers = [value + change for value, change in zip(numbers, [*step, 0.0], strict=False)]
        if max(math.fabs(change) for change in step) < 1e-14:
            break
    return numbers


def _back_to_scale(numbers: Sequence[float], plane: _PointNormalisation, picture: _PointNormalisation) -> list[float]:
    """Return the eight numbers for the points in their original units."""
    a, b, c, d, e, f, g, h = numbers[:8]
    s, (mx, my) = plane.factor, plane.middle
    rows = []
    for p, q, r in ((a, b, c), (d, e, f), (g, h, 1.0)):
        rows.append((p * s, q * s, r - s * (p * mx + q * my)))
    t, (nx, ny) = picture.factor, picture.middle
    low = rows[2]
    top = [rows[0][k] / t + nx * low[k] for k in range(3)]
    second = [rows[1][k] / t + ny * low[k] for k in range(3)]
    if low[2] == 0.0:
        raise ProjectionError("far")
    return [value / low[2] for value in (*top, *second, *low[:2])]


def _finished(marks: Sequence[Mark], numbers: list[float], lens: Lens, count: int, tap: float) -> Projection:
    offs = [mark.seen.minus(_seen(numbers, lens, mark.place)) for mark in marks]
    square = math.fsum(geometry.dot(off, off) for off in offs)
    over = 2 * len(marks) - count
    error = max(tap, math.sqrt(square / over)) if over else tap
    rows = [row[:count] for mark in marks for row in _slopes(numbers, lens, mark.place)]
    # Its columns differ by many orders of magnitude, which would look like equations that depend on one another.
    sizes = [math.sqrt(math.fsum(row[k] * row[k] for row in rows)) for k in range(count)]
    inverse = inverse_of_normal([[value / size for value, size in zip(row, sizes, strict=True)] for row in rows])
    spread = tuple(
        tuple(error * error * value / (sizes[i] * sizes[j]) for j, value in enumerate(row))
        for i, row in enumerate(inverse)
    )
    return Projection(tuple(numbers), lens, spread)


def _fit(marks: Sequence[Mark], lens: Lens, count: int, tap: float) -> Projection:
    plane = _PointNormalisation.of([mark.place for mark in marks])
    picture = _PointNormalisation.of([mark.seen for mark in marks])
    inner = Lens(picture.put(lens.middle), lens.reach * picture.factor)
    scaled = [Mark(plane.put(mark.place), picture.put(mark.seen)) for mark in marks]
    try:
        numbers = _refined(scaled, [*_direct(scaled), 0.0], inner, count)
        bend = numbers[8]
        return _finished(marks, [*_back_to_scale(numbers, plane, picture), bend], lens, count, tap)
    except SingularMatrixError:
        raise ProjectionError("line") from None


def solve(marks: Sequence[Mark], lens: Lens, tap: float) -> Projection:
    """Return the projection that fits the marks best, with lens distortion if there are enough marks.

    ``tap``: the standard error of one image coordinate of a mark. Distortion counts only if its number is at least
    three times its standard error. Raises ProjectionError (see ``check``).
    """
    check(marks)
    plain = _fit(marks, lens, 8, tap)
    if len(marks) < FOR_LENS:
        return plain
    try:
        bent = _fit(marks, lens, 9, tap)
    except ProjectionError:
        return plain
    return bent if math.fabs(bent.numbers[8]) > 3.0 * math.sqrt(bent.spread[8][8]) else plain
