"""The plane projection held to numpy's linear algebra and scipy's least squares, and what it refuses."""

import math
from collections.abc import Callable

import numpy as np
import pytest
from scipy.optimize import least_squares

from pycore import geometry, linear
from pycore.geometry import Point
from pycore.projection import Lens, Mark, Projection, ProjectionError, solve

LENS = Lens(Point(1000.0, 750.0), 1250.0)
PLACES = ((26.0, 195.5), (84.0, 195.5), (193.0, 195.5), (193.0, 110.0), (193.0, 20.5), (173.0, 20.5), (26.0, 20.5),
          (26.0, 160.0))  # fmt: skip
CORNERS = PLACES[0], PLACES[2], PLACES[4], PLACES[6]


def camera(seed: int) -> np.ndarray:
    """A projection as a hand holds a phone over a sheet: turned any way round, tilted up to 40 degrees."""
    random = np.random.default_rng(seed)
    turn, tilt = random.uniform(0, 360), random.uniform(0, 40)
    lie = random.uniform(0, 360)
    focal, away = 1600.0, random.uniform(250, 450)

    def about(axis: int, degrees: float) -> np.ndarray:
        c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        turned = np.eye(3)
        one, other = [k for k in range(3) if k != axis]
        turned[one, one], turned[one, other], turned[other, one], turned[other, other] = c, -s, s, c
        return turned

    rotation = about(2, lie) @ about(0, 180 + tilt) @ about(2, turn)
    lens = np.array([[focal, 0, 1000], [0, focal, 750], [0, 0, 1]])
    centred = np.array([[1, 0, -110.0], [0, 1, -105.0], [0, 0, 1]])
    whole = lens @ np.column_stack([rotation[:, 0], rotation[:, 1], [0, 0, away]]) @ centred
    return whole / whole[2, 2]


def look(whole: np.ndarray, place: tuple[float, float], k: float = 0.0) -> np.ndarray:
    """Where a camera sees a point, its lens bending lines by ``k``."""
    straight = whole @ [*place, 1.0]
    straight = straight[:2] / straight[2]
    off = straight - np.array(LENS.middle)
    return np.array(LENS.middle) + off * (1 + k * (off @ off) / LENS.reach**2)


def seen(whole: np.ndarray, places: tuple, k: float = 0.0, noise: float = 0.0, seed: int = 0) -> list[Mark]:
    """Marks as that camera sees them, each coordinate off by normal errors."""
    random = np.random.default_rng(seed)
    return [Mark(Point(*place), Point(*map(float, look(whole, place, k) + random.normal(0, noise, 2))))
            for place in places]  # fmt: skip


@pytest.mark.parametrize("seed", range(20))
def test_four_marks_give_what_numpy_gives(seed: int):
    marks = seen(camera(seed), CORNERS, noise=3.0, seed=seed)
    rows, right = [], []
    for (x, y), (u, v) in ((mark.place, mark.seen) for mark in marks):
        rows += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
        right += [u, v]
    expected = np.append(np.linalg.solve(np.array(rows), np.array(right)), 1.0).reshape(3, 3)
    found = solve(marks, LENS, 1.0)
    for place in PLACES:
        assert tuple(look(expected, place)) == pytest.approx(tuple(found.seen(Point(*place))), abs=1e-6)
    assert max(geometry.distance(mark.seen, found.seen(mark.place)) for mark in marks) < 1e-6


def by_scipy(marks: list[Mark], start: np.ndarray, bends: bool) -> np.ndarray:
    """The numbers of the least squares of what is seen, by a general library."""

    def off(numbers: np.ndarray) -> np.ndarray:
        whole = np.append(numbers[:8] * start, 1.0).reshape(3, 3)
        k = numbers[8] if bends else 0.0
        return np.concatenate([look(whole, tuple(mark.place), k) - np.array(mark.seen) for mark in marks])

    found = least_squares(off, [1.0] * 8 + [0.0] * int(bends), method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    return np.append(found.x[:8] * start, found.x[8:])


@pytest.mark.parametrize("bend", [0.0, -0.06])
@pytest.mark.parametrize("seed", range(10))
def test_more_marks_give_the_least_squares_of_what_is_seen(seed: int, bend: float):
    whole = camera(seed)
    marks = seen(whole, PLACES, bend, 0.3, seed)
    found = solve(marks, LENS, 0.1)
    bends = bool(found.numbers[8])
    expected = by_scipy(marks, whole.ravel()[:8], bends)
    matrix, k = np.append(expected[:8], 1.0).reshape(3, 3), expected[8] if bends else 0.0
    for place in ((30.0, 30.0), (110.0, 100.0), (180.0, 170.0)):
        assert tuple(look(matrix, place, k)) == pytest.approx(tuple(found.seen(Point(*place))), abs=1e-6)


@pytest.mark.parametrize("bend", [0.0, -0.08, 0.05])
@pytest.mark.parametrize("seed", range(10))
def test_a_tapped_point_is_found_again_on_the_plane(seed: int, bend: float):
    whole = camera(seed)
    found = solve(seen(whole, PLACES, bend), LENS, 0.01)
    for place in ((30.0, 30.0), (110.0, 100.0), (180.0, 170.0)):
        assert place == pytest.approx(tuple(found.place(Point(*look(whole, place, bend)))), abs=1e-6)


def test_without_marks_enough_no_lens_is_guessed():
    assert 0.0 == solve(seen(camera(3), CORNERS, -0.08), LENS, 0.01).numbers[8]


def test_a_lens_is_left_out_where_the_marks_cannot_tell_it_from_their_own_errors():
    assert 0.0 == solve(seen(camera(3), PLACES, -0.0005, 1.0, 1), LENS, 1.0).numbers[8]


def _scatter(found_of: Callable[[int], Projection], whole: np.ndarray, tap: float) -> np.ndarray:
    random = np.random.default_rng(5)
    drawn = []
    for seed in range(1500):
        found = found_of(seed)
        taps = [look(whole, place) + random.normal(0, tap, 2) for place in ((60.0, 60.0), (150.0, 160.0))]
        drawn.append(np.concatenate([found.place(Point(*one)) for one in taps]))
    return np.cov(np.array(drawn).T)


def test_the_stated_covariance_is_that_of_many_simulated_taps():
    """Two points together, with what they share: the errors of the marks."""
    whole = camera(7)
    scatter = _scatter(lambda seed: solve(seen(whole, CORNERS, 0.0, 1.5, seed), LENS, 1.5), whole, 2.0)
    exact = solve(seen(whole, CORNERS), LENS, 1.5)
    stated = np.array(exact.covariance([Point(60.0, 60.0), Point(150.0, 160.0)], 2.0))
    sizes = np.sqrt(np.outer(np.diag(scatter), np.diag(scatter)))
    assert np.abs((stated - scatter) / sizes).max() < 0.1
    assert np.abs(stated[:2, 2:]).max() > 0.01


def refused(marks: list[Mark]) -> str:
    """Why marks are refused."""
    with pytest.raises(ProjectionError) as caught:
        solve(marks, LENS, 1.0)
    return caught.value.reason


def test_three_marks_are_too_few():
    assert "few" == refused(seen(camera(1), CORNERS[:3]))


@pytest.mark.parametrize("fourth", [(110.0, 195.5), (109.5, 108.0), (26.0, 20.5)])
def test_four_marks_of_which_three_lie_nearly_in_line_are_refused(fourth: tuple[float, float]):
    """On a side, on the diagonal, and on the same place as another."""
    assert "line" == refused(seen(camera(1), (*CORNERS[:2], (26.0, 20.5), fourth)))


def test_marks_that_are_all_in_line_are_refused_however_many():
    assert "line" == refused(seen(camera(1), tuple((20.0 + 20 * n, 30.0 + 10 * n) for n in range(8))))


def test_marks_in_another_order_than_on_the_plane_are_refused():
    one, two, three, four = seen(camera(1), CORNERS)
    swapped = [one, two, Mark(three.place, four.seen), Mark(four.place, three.seen)]
    assert "crossed" == refused(swapped)


def test_a_point_beyond_the_horizon_is_refused():
    """A tap far above a flatly seen sheet lies on no sheet."""
    whole = np.array([[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, -0.004, 1.0]])
    found = solve(seen(whole, CORNERS), LENS, 1.0)
    with pytest.raises(ProjectionError):
        found.place(Point(100.0, -400.0))


def test_a_small_system_is_solved_as_numpy_solves_it():
    random = np.random.default_rng(2)
    rows, right = random.normal(size=(12, 6)), random.normal(size=12)
    expected = np.linalg.lstsq(rows, right, rcond=None)[0]
    assert list(expected) == pytest.approx(linear.least_squares(rows, right), abs=1e-12)
    expected = np.linalg.inv(rows.T @ rows).ravel()
    assert list(expected) == pytest.approx(np.ravel(linear.inverse_of_normal(rows)), abs=1e-12)


@pytest.mark.parametrize("rows", [[[1.0, 2.0], [2.0, 4.0], [3.0, 6.0]], [[0.0, 1.0], [0.0, 2.0]]])
def test_equations_that_depend_on_one_another_are_refused(rows: list[list[float]]):
    with pytest.raises(linear.SingularMatrixError):
        linear.least_squares(rows, [1.0] * len(rows))
