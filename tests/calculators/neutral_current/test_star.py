"""The neutral current against numpy, and what must hold of it whatever the numbers are."""

import itertools
import math

import numpy
import pytest
from host.seeded import SeededChoices

from pycore import phasor
from pycore.calculators.neutral_current.circuit import StarLoad, closed_formula, solve
from pycore.calculators.neutral_current.page import PAGE
from pycore.words import plain
from pycore.words.form import SEQUENCE_HELP

COUNT = 1000


def load(rng: SeededChoices, equal: bool = False) -> StarLoad:
    """Three currents over six decades, three lags all round, either sequence."""
    sizes = tuple((1 + rng.below(999_999)) * float(f"1e-{1 + rng.below(5)}") for _ in range(3))
    lags = [rng.below(360_000) / 1000 - 179.999 for _ in range(3)]
    if equal:
        lags = [lags[0]] * 3
    return StarLoad(sizes, tuple(lags), rng.one_of(("123", "132")))


def by_numpy(problem: StarLoad) -> numpy.ndarray:
    """The three line currents as numpy has them: voltages in the named sequence, each current lagging its own."""
    step = -120.0 if problem.sequence == "123" else 120.0
    voltages = numpy.array([0.0, step, 2 * step])
    return numpy.array(problem.currents) * numpy.exp(1j * numpy.radians(voltages - numpy.array(problem.lags)))


def test_a_thousand_random_problems_agree_with_numpy():
    """Phasor sum within 1e-12 of the sum of magnitudes, size and angle too."""
    rng = SeededChoices(101)
    worst = 0.0
    for _ in range(COUNT):
        problem = load(rng)
        solution, lines = solve(problem), by_numpy(problem)
        size = math.fsum(problem.currents)
        worst = max(worst, abs(solution.neutral - lines.sum()) / size)
        assert abs(lines.sum()) == pytest.approx(solution.current, abs=1e-12 * size)
        assert solution.angle is not None
        error = phasor.wrap(solution.angle - math.degrees(numpy.angle(lines.sum())))
        assert 0 == pytest.approx(error * solution.current, abs=1e-10 * size)
    assert 0 < worst < 1e-12


def test_the_neutral_carries_three_times_the_zero_sequence():
    """Zero, positive and negative parts by the matrix of symmetrical components (Fortescue 1918), numpy."""
    a = numpy.exp(2j * numpy.pi / 3)
    matrix = numpy.array([[1, 1, 1], [1, a, a * a], [1, a * a, a]]) / 3
    rng = SeededChoices(102)
    for _ in range(COUNT):
        problem = load(rng)
        solution = solve(problem)
        zero, positive, negative = matrix @ by_numpy(problem)
        size = math.fsum(problem.currents)
        assert abs(solution.neutral - 3 * zero) < 1e-12 * size
        assert abs(zero + positive + negative - solution.lines[0]) < 1e-12 * size


def test_the_closed_formula_agrees_with_the_sum_at_equal_power_factor():
    """Both its forms, whatever the common lag and the sequence."""
    rng = SeededChoices(103)
    for _ in range(COUNT):
        problem = load(rng, equal=True)
        a, b, c = problem.currents
        solution = solve(problem)
        assert solution.equal_angles
        size = math.fsum(problem.currents)
        assert closed_formula(problem.currents) == pytest.approx(solution.current, abs=1e-12 * size)
        expanded = math.fsum((a * a, b * b, c * c, -a * b, -b * c, -c * a))
        assert expanded == pytest.approx(solution.current * solution.current, abs=1e-12 * size * size)


def test_at_equal_power_factor_the_neutral_never_exceeds_the_largest_line():
    rng = SeededChoices(104)
    for _ in range(COUNT):
        solution = solve(load(rng, equal=True))
        assert solution.current <= max(solution.load.currents) * (1 + 1e-14)


def test_at_unequal_power_factor_it_may():
    """10 A each, L2 leading and L3 lagging by 60°, so that all three lie within one half plane."""
    assert 20.0 == pytest.approx(solve(StarLoad((10.0, 10.0, 10.0), (0.0, -60.0, 60.0))).current, abs=1e-12)


def test_every_balanced_load_gives_exactly_zero_and_no_angle():
    """400 sizes and lags, both sequences: not one leaves a remainder of rounding."""
    rng = SeededChoices(105)
    for _ in range(400):
        size, lag = (1 + rng.below(99_999)) / 1000, (rng.below(3600) - 1799) / 10
        solution = solve(StarLoad((size,) * 3, (lag,) * 3, rng.one_of(("123", "132"))))
        assert (0j, 0.0, None) == (solution.neutral, solution.current, solution.angle)
        assert solution.balanced
        assert solution.closed


def test_a_load_that_closes_by_itself_is_closed_but_not_balanced():
    """10 A at unity, 6 A lagging 6.87° and 8 A leading 23.13° (recomputed): a triangle of sides 6, 8 and 10."""
    opposite_eight = math.degrees(math.atan2(4.0, 3.0))
    nearly = solve(StarLoad((10.0, 6.0, 8.0), (0.0, 60.0 - opposite_eight, 90.0 - opposite_eight - 60.0)))
    assert (6.87, -23.13) == (round(nearly.load.lags[1], 2), round(nearly.load.lags[2], 2))
    assert nearly.closed
    assert not nearly.balanced
    assert not nearly.equal_angles


def test_relabelling_two_lines_of_equal_lag_never_changes_the_size():
    rng = SeededChoices(106)
    for _ in range(200):
        problem = load(rng, equal=True)
        sizes = {round(solve(StarLoad(order, problem.lags)).current / max(order), 12)
                 for order in itertools.permutations(problem.currents)}  # fmt: skip
        assert max(sizes) - min(sizes) < 1e-11


def test_the_other_sequence_is_the_mirror_image_with_lags_mirrored():
    rng = SeededChoices(107)
    for _ in range(200):
        one = load(rng)
        there = solve(StarLoad(one.currents, one.lags, "123")).neutral
        back = solve(StarLoad(one.currents, tuple(-lag for lag in one.lags), "132")).neutral
        assert there == back.conjugate()


def test_sequence_changes_the_answer_when_power_factors_differ_and_not_when_they_are_equal():
    unequal = [solve(StarLoad((10.0, 8.0, 6.0), (0.0, 30.0, 0.0), order)).current for order in ("123", "132")]
    equal = [solve(StarLoad((10.0, 8.0, 6.0), (30.0,) * 3, order)).current for order in ("123", "132")]
    assert abs(unequal[0] - unequal[1]) > 1.0
    assert equal[0] == pytest.approx(equal[1], abs=1e-13)


def test_one_line_alone_and_two_lines_without_the_third():
    """30, 0, 0 A give 30 A; of two equal lines at 120° the neutral carries as much as each."""
    assert 30.0 == pytest.approx(solve(StarLoad((30.0, 0.0, 0.0))).current, abs=1e-13)
    assert 12.0 == pytest.approx(solve(StarLoad((0.0, 12.0, 12.0))).current, abs=1e-13)
    assert 180.0 == pytest.approx(solve(StarLoad((0.0, 12.0, 12.0))).angle, abs=1e-12)


def test_one_very_small_line_beside_large_ones_is_not_lost():
    """Two balanced large lines and one short by a thousandth: the difference is the neutral."""
    solution = solve(StarLoad((1000.0, 1000.0, 999.0)))
    assert 1.0 == pytest.approx(solution.current, abs=1e-12 * 2999)
    assert -60.0 == pytest.approx(solution.angle, abs=1e-9)


def test_the_sequence_changes_only_the_angle_at_equal_power_factor_and_else_the_size_too():
    """As the help of the form says; for 200 random loads of each kind."""
    rng = SeededChoices(11)
    for _ in range(200):
        alike, mixed = load(rng, equal=True), load(rng)
        one, two = (solve(StarLoad(alike.currents, alike.lags, sequence)) for sequence in ("123", "132"))
        assert one.current == pytest.approx(two.current, rel=1e-9, abs=1e-12 * max(alike.currents))
        one, two = (solve(StarLoad(mixed.currents, mixed.lags, sequence)) for sequence in ("123", "132"))
        assert one.current != pytest.approx(two.current, rel=1e-9)
    assert "At equal power factor it changes only the angle" in SEQUENCE_HELP


@pytest.mark.parametrize(("lags", "checked"), [
    ({}, True), ({"a1": "20", "a2": "20", "a3": "20"}, True), ({"a1": "0.8 lag", "a2": "0.8 lead"}, False),
    ({"a3": "20"}, False), ({"i3": "0", "a3": "20"}, True),
])  # fmt: skip
def test_never_more_than_the_largest_line_is_said_only_for_sine_shapes_at_equal_lags(lags: dict, checked: bool):
    """The same power factor on the other side is another lag; a line without current has none."""
    remarks = " ".join(plain(phrase) for phrase in PAGE.answer({**lags}, ("answer",)).remarks)
    assert checked is ("is never more than the largest" in remarks)
    assert checked is ("for sine-shaped currents at equal power factor" in remarks)
    assert checked is not ("lag (or lead) by different angles" in remarks)


def test_the_examples_load_has_sine_shaped_currents():
    """Heating banks: the sentence about the largest line would not hold for dimmers or power supplies."""
    assert "Community hall, three heating banks in star" == PAGE.scenario
