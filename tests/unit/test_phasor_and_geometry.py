"""Phasors as complex numbers, and plane geometry: against numpy and against relations that must hold."""

import itertools
import math

import numpy
import pytest
from host.seeded import SeededChoices

from pycore import geometry, phasor
from pycore.geometry import ORIGIN, Box, Point, Ray


def number(rng: SeededChoices, size: float = 10.0) -> float:
    """A number from -size to size."""
    return (rng.below(2_000_001) - 1_000_000) / 1e6 * size


@pytest.mark.parametrize(("degrees", "wrapped"), [
    (0, 0), (180, 180), (-180, 180), (181, -179), (540, 180), (-540, 180), (359.5, -0.5), (720, 0), (-190, 170),
])  # fmt: skip
def test_wrapping_keeps_the_direction_within_half_a_turn(degrees: float, wrapped: float):
    assert wrapped == phasor.wrap(degrees)


def test_wrapping_never_leaves_its_range():
    rng = SeededChoices(2)
    for _ in range(3000):
        degrees = number(rng, 5000.0)
        assert -180 < phasor.wrap(degrees) <= 180
        assert 0 == pytest.approx((phasor.wrap(degrees) - degrees + 180) % 360 - 180, abs=1e-9)


def test_polar_form_there_and_back_agrees_with_numpy():
    rng = SeededChoices(3)
    for _ in range(2000):
        size, degrees = abs(number(rng, 1e3)) + 1e-3, number(rng, 179.9)
        made = phasor.polar(size, degrees)
        assert made == pytest.approx(size * numpy.exp(1j * numpy.radians(degrees)), abs=1e-12 * size)
        assert size == pytest.approx(phasor.magnitude(made), rel=1e-15)
        assert degrees == pytest.approx(phasor.angle(made), abs=1e-13)


def test_a_sum_that_is_only_rounding_is_exactly_zero_and_a_real_one_is_kept():
    """The border stands at 1e-12 of the sum of magnitudes."""
    for size in (1e-6, 0.1, 7.7, 18.4, 1e5):
        three = [phasor.polar(size, degrees) for degrees in (31.7, 151.7, -88.3)]
        assert 0j == phasor.total(three)
        assert 0j != phasor.total([*three, complex(1e-11 * size, 0.0)])
    assert 0j == phasor.total([])


def test_a_sum_does_not_depend_on_the_order_of_its_terms():
    rng = SeededChoices(4)
    for _ in range(300):
        terms = [phasor.polar(abs(number(rng)), number(rng, 180)) for _ in range(4)]
        assert 1 == len({phasor.total(order) for order in itertools.permutations(terms)})


def test_lines_meet_where_numpy_solves_their_equations():
    rng, tried = SeededChoices(6), 0
    while tried < 500:
        a, b = (Ray(Point(number(rng), number(rng)), number(rng, 180)) for _ in range(2))
        directions = [(math.cos(math.radians(r.degrees)), math.sin(math.radians(r.degrees))) for r in (a, b)]
        matrix = numpy.array(directions).T @ numpy.diag([1, -1])
        if abs(numpy.linalg.det(matrix)) < 0.01:
            continue
        tried += 1
        along, _ = numpy.linalg.solve(matrix, numpy.array(b.start) - numpy.array(a.start))
        assert tuple(a.start.moved(along, a.degrees)) == pytest.approx(geometry.intersection(a, b), abs=1e-10)


@pytest.mark.parametrize("apart", [0.0, 180.0, -180.0, 360.0])
def test_parallel_lines_meet_nowhere(apart: float):
    assert None is geometry.intersection(Ray(ORIGIN, 33.0), Ray(Point(1.0, 0.0), 33.0 + apart))


def test_the_foot_of_a_perpendicular_lies_on_the_line_and_square_to_it():
    rng = SeededChoices(7)
    for _ in range(500):
        point, line = Point(number(rng), number(rng)), Ray(Point(number(rng), number(rng)), number(rng, 180))
        foot = geometry.foot(point, line)
        unit = ORIGIN.moved(1.0, line.degrees)
        assert 0 == pytest.approx(geometry.dot(point.minus(foot), unit), abs=1e-12)
        assert 0 == pytest.approx(geometry.cross(foot.minus(line.start), unit), abs=1e-12)


def test_circles_meet_at_both_radii_on_the_side_asked_for():
    rng = SeededChoices(9)
    for _ in range(500):
        first, second, met = (Point(number(rng), number(rng)) for _ in range(3))
        radii = geometry.distance(first, met), geometry.distance(second, met)
        found = geometry.circles_meet(first, radii[0], second, radii[1], met)
        assert found is not None
        assert radii == pytest.approx((geometry.distance(first, found), geometry.distance(second, found)), abs=1e-6)
        side = geometry.cross(second.minus(first), met.minus(first))
        if abs(side) > 1e-3:
            assert 0 < side * geometry.cross(second.minus(first), found.minus(first))


def test_circles_that_miss_each_other_or_share_a_centre_do_not_meet():
    near = Point(0.0, 1.0)
    assert None is geometry.circles_meet(ORIGIN, 1.0, Point(3.0, 0.0), 1.0, near)
    assert None is geometry.circles_meet(ORIGIN, 5.0, Point(1.0, 0.0), 1.0, near)
    assert None is geometry.circles_meet(ORIGIN, 1.0, ORIGIN, 1.0, near)
    assert Point(1.0, 0.0) == geometry.circles_meet(ORIGIN, 1.0, Point(2.0, 0.0), 1.0, near)


def test_a_box_meets_a_segment_exactly_where_sampled_points_fall_inside():
    """1,000 random segments: 400 points along each are the slow way to the same answer (edges apart)."""
    rng, box, met = SeededChoices(10), Box(-2.0, -1.0, 3.0, 2.0), 0
    for _ in range(1000):
        a, b = Point(number(rng, 6), number(rng, 6)), Point(number(rng, 6), number(rng, 6))
        points = [a.plus(b.minus(a).times(share / 400)) for share in range(401)]
        depth = max(min(p.x + 2, 3 - p.x, p.y + 1, 2 - p.y) for p in points)
        if abs(depth) > 0.05:
            assert (depth > 0) == box.meets_segment(a, b)
            met += depth > 0
    assert 200 < met < 800


def test_distance_to_a_segment_is_that_of_its_nearest_sampled_point():
    rng = SeededChoices(12)
    for _ in range(300):
        p, a, b = (Point(number(rng), number(rng)) for _ in range(3))
        sampled = min(geometry.distance(p, a.plus(b.minus(a).times(share / 1000))) for share in range(1001))
        assert sampled == pytest.approx(geometry.segment_distance(p, a, b), abs=0.02)
    assert 5.0 == geometry.segment_distance(Point(3.0, 4.0), ORIGIN, ORIGIN)


def test_boxes_that_share_an_edge_do_not_overlap():
    left, right = Box(0, 0, 1, 1), Box(1, 0, 2, 1)
    assert not left.meets(right)
    assert left.grown(0.001).meets(right)
    assert left.holds(left)
    assert not left.holds(left.grown(0.001))
    assert Box(0, 0, 3, 4) == geometry.bounds([Point(3, 0), Point(0, 4), Point(1, 1)])
