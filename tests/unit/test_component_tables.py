"""Each row of the working by components: what is printed of a phasor leads to its printed components."""

import math

import pytest
from host import shelf
from unit.recomputed import decimal, half_of

from pycore.calculators.registry import CALCULATORS
from pycore.sums.answer import Grid
from pycore.words import plain

FORMS = 40


def tables(slug: str, form: dict[str, str]) -> list[Grid]:
    """The tables of components among the workings of a form."""
    workings = CALCULATORS[slug].answer(form, ("workings",)).workings
    return [one for working in workings if working.key == "components" for one in working.blocks
            if isinstance(one, Grid)]  # fmt: skip


def components_follow(grid: Grid) -> bool:
    """Whether size times the function in the heading gives each component, to its last digit."""
    functions = [math.sin if "sin" in plain(head) else math.cos for head in grid.head[3:]]
    for row in grid.rows[:-1]:
        size, angle, *components = (plain(cell).replace("°", "") for cell in row[1:])
        for function, text in zip(functions, components, strict=True):
            value = decimal(size) * function(math.radians(decimal(angle)))
            if abs(value - decimal(text)) > half_of(text) * (1 + 1e-6):
                return False
    return True


@pytest.mark.parametrize("slug", CALCULATORS)
def test_each_component_follows_from_the_printed_size_and_angle(slug: str):
    forms = [{}, *shelf.forms(slug, FORMS)]
    assert [] == [form for form in forms for grid in tables(slug, form) if not components_follow(grid)]


def test_a_size_and_an_angle_have_the_digits_that_were_used():
    grid = tables("series-circuit", {})[0]
    assert ["V_R", "159.94", "0.0°", "159.94", "0.00"] == [plain(cell) for cell in grid.rows[0]]
    lead = tables("neutral-current", {"a2": "0.9 lead"})[0]
    assert ["I₂", "11.2", "94.158°"] == [plain(cell) for cell in lead.rows[1][:3]]


def test_typed_values_stay_as_typed():
    """The example of the neutral current."""
    grid = tables("neutral-current", {})[0]
    assert [["18.4", "0.0°"], ["11.2", "120.0°"], ["24.6", "−120.0°"]] == [
        [plain(cell) for cell in row[1:3]] for row in grid.rows[:-1]
    ]


def test_a_row_with_too_few_digits_is_seen():
    row = (("V",), ("160",), ("0.0°",), ("159.94",), ("0.00",))
    head = (("phasor",), ("V",), ("angle",), ("V cos",), ("V sin",))
    assert not components_follow(Grid(head, (row, row), total=True))
