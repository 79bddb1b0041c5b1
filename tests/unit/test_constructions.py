"""Every construction ends on the phasor sum, whatever the method, order, tool or picture; and each move is a move."""

import itertools
import math

import numpy
import pytest
from host.seeded import SeededChoices

from pycore import geometry
from pycore.constructions.components import components
from pycore.constructions.construction import Arm, Construction, DrawingConvention
from pycore.constructions.moves import (
    ConstructionError,
    CrossArcs,
    Direction,
    DrawParallel,
    Intersect,
    ReadAngle,
    SetOff,
    Start,
    TurnAngle,
    carry_out,
    deviations_of,
    turn_of,
)
from pycore.constructions.parallelogram import is_flat, parallelogram
from pycore.constructions.tip_to_tail import tip_to_tail
from pycore.geometry import Point

ORDERS = ("12", "13", "23")
PARALLELS = ("protractor", "set-squares", "compasses")
RESULTANTS = ("sum", "returning")
PICTURES = tuple(
    DrawingConvention(first, rotation, reference)
    for first, rotation, reference in itertools.product(
        ("up", "right"), ("anticlockwise", "clockwise"), (0.0, -31.8, 120.0)
    )
)


def arms_of(sizes, angles) -> tuple[Arm, ...]:
    """Arms i1, i2, i3 of these sizes and angles; those without size are left out."""
    pairs = enumerate(zip(sizes, angles, strict=True), start=1)
    return tuple(Arm(f"i{number}", number, size, angle) for number, (size, angle) in pairs if size > 0)


def random_arms(rng: SeededChoices) -> tuple[Arm, ...]:
    """Three decades of size, any angles."""
    sizes = [(1 + rng.below(999)) * float(f"1e-{rng.below(3)}") for _ in range(3)]
    return arms_of(sizes, [rng.below(3600) / 10 - 179.9 for _ in range(3)])


def numpy_sum(arms: tuple[Arm, ...]) -> complex:
    """The phasor sum as numpy has it."""
    return complex(sum(arm.size * numpy.exp(1j * numpy.radians(arm.angle)) for arm in arms))


def every_way(arms: tuple[Arm, ...], reference: float) -> list[Construction]:
    """Every method in every order with every way of drawing parallels, both senses of the result."""
    made: list[Construction] = []
    for resultant in RESULTANTS:
        for order in ORDERS:
            made.append(tip_to_tail(arms, order, reference, resultant))
            made += [parallelogram(arms, order, reference, way, resultant) for way in PARALLELS]
        made += [components(arms, picture, resultant) for picture in PICTURES[:2]]
    return made


def test_every_method_closes_on_the_same_point_for_a_thousand_random_problems():
    """28 constructions of each problem end within 1e-9 of the sum that numpy finds (per ampere of all magnitudes)."""
    rng, worst, count = SeededChoices(201), 0.0, 0
    for _ in range(1000):
        arms = random_arms(rng)
        expected, size = numpy_sum(arms), math.fsum(arm.size for arm in arms)
        reference = rng.one_of((0.0, arms[0].angle))
        for made in every_way(arms, reference):
            end = made.end_point
            worst = max(worst, abs(complex(end.x, end.y) - expected) / size)
            count += 1
    assert 28_000 == count
    assert 0 < worst < 1e-9


def test_the_result_that_is_read_is_the_length_and_angle_of_the_sum():
    """The reading "n" and its angle from the line drawn first, for every construction of 200 problems."""
    rng = SeededChoices(202)
    for _ in range(200):
        arms = random_arms(rng)
        expected = numpy_sum(arms)
        for made in every_way(arms, 0.0):
            first = next(m.first for m in made.moves if isinstance(m, ReadAngle) and m.reading == "n-angle")
            readings, lines = made.figure.readings, made.figure.lines
            assert abs(expected) == pytest.approx(readings["n"], abs=1e-9 * 3000)
            between = abs((math.degrees(numpy.angle(expected)) - lines[first].degrees + 180) % 360 - 180)
            assert between * abs(expected) == pytest.approx(readings["n-angle"] * abs(expected), abs=1e-6)


@pytest.mark.parametrize("angles", [
    (0, 0, 0), (0, 180, 90), (0, 180, 0), (45, 45, -135), (90, -90, 90), (0, 1.9, 90), (0, 178.1, 33), (10, 10, 100),
    (0, 0.001, -0.001), (30, -150.001, 29.999),
])  # fmt: skip
@pytest.mark.parametrize("sizes", [(5, 5, 5), (10, 4, 7), (1000, 1, 3), (3, 1000, 1), (8, 6, 0)])
def test_collinear_and_nearly_collinear_phasors_are_carried_tip_to_tail_and_still_close(sizes, angles):
    """No parallelogram is drawn on a pair within 2 degrees of one line, and the end is right all the same."""
    arms = arms_of(sizes, [float(angle) for angle in angles])
    orders = ORDERS if len(arms) == 3 else ("12",)
    for order, way in itertools.product(orders, PARALLELS):
        made = parallelogram(arms, order, arms[0].angle, way)
        assert abs(complex(*made.end_point) - numpy_sum(arms)) < 1e-9 * sum(sizes)
        pair = [next(arm for arm in arms if arm.number == int(n)) for n in order]
        first_stage = next(step for step in made.steps if step.name in ("carry-on", "parallel", "arcs"))
        assert is_flat(pair[0].angle, pair[1].angle) == (first_stage.name == "carry-on")


def test_two_phasors_that_cancel_leave_the_third_as_the_sum():
    """The first diagonal has no length: no second parallelogram is drawn on it."""
    arms = arms_of((7.3, 7.3, 4.0), (20.0, -160.0, 75.0))
    for way in PARALLELS:
        made = parallelogram(arms, "12", 20.0, way)
        assert "T3" == made.end
        assert 4.0 == pytest.approx(made.figure.readings["n"], abs=1e-12)
        assert "measure" not in [step.name for step in made.steps]


@pytest.mark.parametrize("arms", [
    arms_of((7.7, 7.7, 7.7), (0.0, -120.0, 120.0)), arms_of((5.0, 5.0, 0.0), (10.0, -170.0, 0.0)),
    arms_of((3.0, 2.0, 1.0), (0.0, 180.0, 180.0)),
])  # fmt: skip
def test_a_closed_figure_draws_no_resultant_and_reads_none(arms: tuple[Arm, ...]):
    orders = ORDERS if len(arms) == 3 else ("12",)
    made = [tip_to_tail(arms, order, arms[0].angle) for order in orders]
    made += [parallelogram(arms, order, arms[0].angle, way) for order in orders for way in PARALLELS]
    made += [components(arms, picture) for picture in PICTURES]
    for one in made:
        assert one.closed
        assert "zero" == one.steps[-1].name
        assert "n" not in one.figure.readings
        assert geometry.distance(one.end_point, one.figure.points["O"]) < 1e-12 * 20


def test_returning_current_is_the_sum_turned_round():
    """From the star point the other way in a parallelogram; from the last tip back, tip to tail."""
    arms = arms_of((18.4, 11.2, 24.6), (0.0, -120.0, 120.0))
    for made in every_way(arms, 0.0):
        if made.resultant == "returning" and made.method != "tip-to-tail":
            back, end = made.figure.points["M"], made.end_point
            assert (-end.x, -end.y) == pytest.approx(tuple(back), abs=1e-12)
        drawn = [move.phasor for move in made.moves if getattr(move, "role", "") == "resultant"]
        assert ["return" if made.resultant == "returning" else "sum"] == drawn


def test_each_move_uses_only_what_earlier_moves_have_drawn():
    """A hand can make every move in its turn: each named point, line and reading is there before it is used."""
    rng = SeededChoices(203)
    for _ in range(60):
        arms = random_arms(rng)
        for made in every_way(arms, 0.0):
            for index in range(1, len(made.moves) + 1):
                carry_out(made.moves[:index])
            assert isinstance(made.moves[0], Start)
            for step in made.steps:
                assert step.name


def test_each_arm_is_set_off_once_with_its_own_size_and_direction():
    """Copies apart: nothing is drawn twice, nothing is forgotten."""
    rng = SeededChoices(204)
    for _ in range(100):
        arms = random_arms(rng)
        for made in every_way(arms, arms[0].angle):
            first = [move for move in made.moves if isinstance(move, SetOff) and move.role == "given" and not move.copy]
            assert sorted(arm.key for arm in arms) == sorted(move.phasor for move in first)
            for move in first:
                arm = next(arm for arm in arms if arm.key == move.phasor)
                points = made.figure.points
                assert arm.size == pytest.approx(geometry.distance(points[move.start], points[move.point]), rel=1e-12)
                assert move.length == arm.size


def test_protractor_turns_never_pass_half_a_turn():
    """A half-circle protractor reaches every angle that is asked of it."""
    rng = SeededChoices(205)
    for _ in range(200):
        arms = random_arms(rng)
        for made in every_way(arms, 0.0):
            turns = [turn_of(m, made.figure.readings) for m in made.moves if isinstance(m, TurnAngle)]
            assert all(-180.0 < turn <= 180.0 for turn in turns)


def test_parallels_are_drawn_with_the_tool_asked_for():
    arms = arms_of((18.4, 11.2, 24.6), (0.0, -120.0, 120.0))
    kinds = {"protractor": TurnAngle, "set-squares": DrawParallel, "compasses": CrossArcs}
    for way in PARALLELS:
        steps = [step for step in parallelogram(arms, "12", 0.0, way).steps if step.name in ("parallel", "arcs")]
        assert [kinds[way]] * 2 == [type(step.moves[0]) for step in steps]


def test_neighbouring_angles_of_the_first_parallelogram_make_half_a_turn():
    """At equal power factor 120° between the arms, so 60° at their tips."""
    made = parallelogram(arms_of((18.4, 11.2, 24.6), (0.0, -120.0, 120.0)), "12", 0.0)
    step = next(step for step in made.steps if step.name == "parallel")
    assert [60.0] == [abs(turn_of(m, made.figure.readings)) for m in step.moves if isinstance(m, TurnAngle)]


def test_tip_to_tail_at_equal_power_factor_reads_sixty_degrees_at_every_tip():
    for order in ORDERS:
        made = tip_to_tail(arms_of((18.4, 11.2, 24.6), (0.0, -120.0, 120.0)), order, 0.0)
        tips = [m for m in made.moves if isinstance(m, TurnAngle) and m.back]
        assert [60.0, 60.0] == [abs(turn_of(m, {})) for m in tips]


def test_components_are_the_feet_of_perpendiculars_and_add_up():
    """Along the paper's axes, which follow the picture: size × sine or cosine of the paper's angle."""
    rng = SeededChoices(206)
    for _ in range(100):
        arms = random_arms(rng)
        for picture in PICTURES:
            made = components(arms, picture)
            readings = made.figure.readings
            for arm in arms:
                paper = math.radians(picture.paper_angle(arm.angle))
                assert arm.size * math.cos(paper) == pytest.approx(readings[f"x{arm.number}"], abs=1e-11 * arm.size)
                assert arm.size * math.sin(paper) == pytest.approx(readings[f"y{arm.number}"], abs=1e-11 * arm.size)


@pytest.mark.parametrize("picture", PICTURES)
def test_a_picture_turns_and_mirrors_but_never_stretches(picture: DrawingConvention):
    """Lengths stay, the reference points in the first direction, and both ways of turning angles agree."""
    rng = SeededChoices(207)
    base = 90.0 if picture.first == "up" else 0.0
    assert base == picture.paper_angle(picture.reference)
    for _ in range(100):
        degrees, size = rng.below(3600) / 10 - 179.9, 0.1 + rng.below(1000) / 10
        placed = picture.place(geometry.ORIGIN.moved(size, degrees), 2.5)
        assert 2.5 * size == pytest.approx(math.hypot(*placed), rel=1e-13)
        paper = picture.paper_angle(degrees)
        assert tuple(geometry.ORIGIN.moved(2.5 * size, paper)) == pytest.approx(tuple(placed), abs=1e-11 * size)
        assert 0 == pytest.approx((picture.phasor_angle(paper) - degrees + 180) % 360 - 180, abs=1e-11)
    turned = picture.paper_angle(picture.reference + 10.0) - base
    assert (-10.0 if picture.rotation == "clockwise" else 10.0) == pytest.approx(turned, abs=1e-12)


def test_a_hands_deviation_moves_the_end_and_an_absent_one_does_not():
    """Each deviation that a construction declares moves its end or its readings; none is a dead name."""
    arms = arms_of((18.4, 11.2, 24.6), (13.0, -107.0, 133.0))
    for made in every_way(arms, 0.0):
        exact = carry_out(made.moves)
        for key in deviations_of(made.moves):
            moved = carry_out(made.moves, {key: 0.5})
            changed = [name for name in exact.points if exact.points[name] != moved.points[name]]
            read = [name for name in exact.readings if exact.readings[name] != moved.readings[name]]
            assert changed + read, (made.method, key)
            assert exact == carry_out(made.moves, {key: 0.0})


def test_a_protractor_error_at_a_tip_turns_every_later_line():
    """0.5° at the first tip moves the end by that angle times the length of all that follows, to first order."""
    arms = arms_of((18.4, 11.2, 24.6), (0.0, -120.0, 120.0))
    made = tip_to_tail(arms, "12", 0.0)
    index = next(i for i, move in enumerate(made.moves) if isinstance(move, TurnAngle))
    moved = carry_out(made.moves, {f"{index}:angle": 0.5}).points["N"]
    rest = geometry.distance(made.figure.points["P1"], made.end_point)
    assert 2 * rest * math.sin(math.radians(0.25)) == pytest.approx(geometry.distance(moved, made.end_point), rel=1e-9)


def test_lines_and_arcs_that_do_not_meet_are_said_to_be_degenerate():
    start = (Start("O"), Direction("A", "O", 10.0), SetOff("P", "O", "A", 5.0), DrawParallel("B", "P", "A"))
    with pytest.raises(ConstructionError, match="A and B"):
        carry_out((*start, Intersect("Q", "A", "B")))
    arcs = CrossArcs("Q", "O", ("O", "P"), "P", ("O", "P"), "O")
    with pytest.raises(ConstructionError, match="arcs"):
        carry_out((*start, arcs), {"4:length": -4.0, "4:length-2": -4.0})


def test_a_parallelogram_of_one_phasor_is_refused():
    with pytest.raises(ValueError, match="two phasors"):
        parallelogram(arms_of((5.0, 0.0, 0.0), (0.0, 0.0, 0.0)), "12", 0.0)


def test_one_phasor_alone_is_its_own_sum():
    arms = arms_of((0.0, 6.5, 0.0), (0.0, -120.0, 0.0))
    for made in (tip_to_tail(arms, "12", -120.0), components(arms, DrawingConvention(reference=-120.0))):
        assert 6.5 == pytest.approx(made.figure.readings["n"], abs=1e-12)
        assert Point(*made.end_point) == pytest.approx((-3.25, -6.5 * math.sqrt(3) / 2), abs=1e-12)


def test_components_cross_at_right_angles_even_if_the_sum_lies_on_an_axis_but_for_rounding():
    """A line of 1e-15 from where it starts to where it ends has no direction of its own."""
    faults = []
    for sizes, turn in itertools.product(((4.7, 4.7, 3.3), (3.3, 4.7, 4.7)), (0.0, 30.0, -31.8)):
        arms = arms_of(sizes, (turn, turn - 120.0, turn + 120.0))
        for picture in PICTURES:
            angles = components(arms, picture).crossings
            faults += [(sizes, turn, picture) for crossing in angles if abs(crossing - 90.0) > 1e-6]
    assert [] == faults
