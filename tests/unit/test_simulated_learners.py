"""A seeded tenth of `build.py bench`'s simulated learners: mistakes are named, honest drawings are not failed.

A mistake is left unnamed where one line that came out a little wrong explains the answer as well.
"""

import pytest
from bench.learners import COUNT, Found, simulate, table

from pycore.calculators.registry import CALCULATORS


@pytest.fixture(scope="module")
def neutral() -> Found:
    return simulate("neutral-current", COUNT // 10)


def test_the_true_mistake_is_among_those_named_and_mostly_alone(neutral: Found):
    shares = neutral.shares()
    assert COUNT // 10 == neutral.total().learners == sum(neutral.honest.values())
    assert shares["mistake among those named"] >= 96.0
    assert shares["named alone"] >= 93.4
    assert shares["mistaken answers within the tolerance"] <= 0.5


def test_by_length_alone_as_many_are_told_apart_as_lengths_allow(neutral: Found):
    """Up to four classes are named; alone only where no other class gives about the same length."""
    shares = neutral.shares()
    assert shares["by length alone: among those named"] >= 92.0
    assert shares["by length alone: named alone"] >= shares["the most that lengths allow"]


def test_honest_right_drawings_are_not_failed(neutral: Found):
    shares = neutral.shares()
    assert shares["right drawings called wrong"] <= 0.5
    assert shares["right drawings to look at again"] <= 5.0


@pytest.mark.parametrize("slug", [slug for slug in CALCULATORS if slug != "neutral-current"])
def test_every_topics_mistakes_are_named(slug: str):
    """Few learners each: the bench counts more."""
    shares = simulate(slug, 200).shares()
    assert shares["mistake among those named"] >= 90.0
    assert shares["named alone"] >= 88.0
    assert shares["right drawings called wrong"] <= 0.5


def test_the_table_has_a_row_for_each_mistake(neutral: Found):
    lines = table(neutral).splitlines()
    for key in ("reversed", "left-out", "swapped", "other-scale", "not-multiplied"):
        assert 1 == len([line for line in lines if line.startswith(f"{key} ")])
    assert "named alone" in table(neutral)
