"""Many drawings at once are each of them what one drawing with its slips is, to the last bit."""

from collections.abc import Iterator

import pytest
from host import shelf
from host.seeded import SeededChoices
from unit.test_constructions import arms_of, every_way

from pycore import trig
from pycore.accuracy import hand
from pycore.calculators.registry import CALCULATORS
from pycore.constructions.construction import Construction
from pycore.constructions.many import carry_out_many
from pycore.constructions.moves import ConstructionError, carry_out, deviations_of
from pycore.practice.seeded_integers import SeededIntegers

DRAWINGS = 60


def slips_of(construction: Construction, seed: int, size: float = 2.0) -> dict[str, list[float]]:
    """A column of slips for every second thing that a hand can get wrong, some of them nothing."""
    rng = SeededIntegers(seed)
    return {
        key: [size * (rng.below(2001) - 1000) / 1000 * (rng.below(5) > 0) for _ in range(DRAWINGS)]
        for key in deviations_of(construction.moves) if rng.below(4)
    }  # fmt: skip


def by_one(construction: Construction, slips: dict[str, list[float]], place: int):
    """One of the drawings, made alone; None where its lines do not meet."""
    try:
        return carry_out(construction.moves, {key: column[place] for key, column in slips.items()})
    except ConstructionError:
        return None


def assert_alike(construction: Construction, slips: dict[str, list[float]]) -> int:
    """Hold every point and reading of every drawing to be the same; gives how many drawings are lost."""
    many = carry_out_many(construction.moves, slips, DRAWINGS)
    for place in range(DRAWINGS):
        one = by_one(construction, slips, place)
        assert (one is None) == (place in many.lost)
        if one is not None:
            points = {name: (x[place], y[place]) for name, (x, y) in many.points.items()}
            assert {name: tuple(point) for name, point in one.points.items()} == points
            assert dict(one.readings) == {name: column[place] for name, column in many.readings.items()}
    return len(many.lost)


def test_every_method_order_and_tool_gives_the_same_points_and_readings():
    arms = arms_of((18.4, 11.2, 24.6), (13.0, -107.0, 133.0))
    for seed, construction in enumerate(every_way(arms, 0.0)):
        assert_alike(construction, slips_of(construction, seed))


def constructions(page: str) -> Iterator[Construction]:
    """What the forms of a page's shelf draw."""
    for number in range(12):
        try:
            case = CALCULATORS[page].case(shelf.forms_of(page).values(SeededChoices(number), number))
        except ValueError:
            continue
        for method in case.methods:
            if case.possible(method) == method:
                yield case.plans(method)[0].construction


@pytest.mark.parametrize("page", CALCULATORS)
def test_every_page_draws_the_same(page: str):
    made = list(constructions(page))
    assert made
    for seed, construction in enumerate(made):
        assert_alike(construction, slips_of(construction, seed))


def test_drawings_whose_arcs_miss_are_lost_and_no_other():
    arms = arms_of((20.0, 12.0, 9.0), (0.0, 118.0, 121.0))
    lost = 0
    for seed, construction in enumerate(every_way(arms, 0.0)):
        lost += assert_alike(construction, slips_of(construction, seed, 12.0))
    assert lost > 0


def test_directions_of_many_are_those_of_one():
    angles = [step / 7 for step in range(-7000, 7000)] + [30.0 * step for step in range(-24, 25)] + [-0.0, 1e-300]
    cosines, sines = trig.directions(angles)
    assert [trig.direction(angle) for angle in angles] == list(zip(cosines, sines, strict=True))


def test_a_sample_throws_the_same_dice_whatever_the_problem():
    """Row by row as drawings are made: the slips of one, then those of the next."""
    columns, rng = hand._throws(5), hand.NormalSampler(20261125)
    assert [rng.normal() for _ in range(5 * 7)] == [column[row] for row in range(7) for column in columns]


def test_angles_of_many_are_those_of_one():
    steps = [number / 7 for number in range(-40, 41)]
    pairs = [(x, y) for x in steps for y in steps]
    pairs += [(-0.0, 0.0), (0.0, -0.0), (-1.0, -0.0), (16.0, 7.0), (1e-300, 3e300)]
    across, up = zip(*pairs, strict=True)
    assert [trig.angle_of(x, y) for x, y in pairs] == trig.angles(across, up)
