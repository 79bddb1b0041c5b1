"""A tenth of `python -m bench.keys`: what a class key prints is accepted with full marks when it is typed back."""

import pytest
from bench.keys import CONVENTIONS, COUNT, tried

from pycore.calculators.registry import CALCULATORS
from pycore.practice import results
from pycore.practice.codes import METHODS, TIERS

TENTH = COUNT // 10


def test_a_key_typed_back_has_full_marks_everywhere():
    """Every topic, level, method and convention; both ways of finding it; headings as the key prints them."""
    found = list(tried(TENTH))
    assert TENTH == len(found)
    missed = [(one.code, dict(one.convention), one.how, one.refused, one.result) for one in found if not one.full]
    assert [] == missed
    assert set(CALCULATORS) == {one.group.topic.slug for one in found}
    assert set(TIERS) == {one.group.code.tier for one in found}
    assert {"any", METHODS[1]} <= {one.group.code.method for one in found}
    assert len(CONVENTIONS) > 4 and {"drawn", "calculated"} == {one.how for one in found}


@pytest.mark.parametrize(("head", "line", "expected"), [
    ("Code;Answer;Angle;Direction", "7.5;78.5;clockwise", {"answer-angle": "78.5", "answer-side": "clockwise"}),
    ("Code;Answer;Direction", "7.5;78.5 clockwise", {"answer-angle": "78.5 clockwise"}),
])  # fmt: skip
def test_a_column_headed_direction_is_the_side_beside_an_angle_and_the_angle_alone(head, line, expected):
    (entry,) = results.read(f"{head}\n334-PEK-23G;{line}")
    assert {name: entry.cells.get(name) for name in expected} == expected
