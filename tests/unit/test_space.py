"""The space of a method, told from its phasors, is that of its construction."""

from importlib import import_module

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.errors import InputError
from pycore.sheet.space import space_of

FORMS = 40
NEAR = 1e-12
"""As a share of the largest side; a scale is chosen with a thousand times as much to spare."""


@pytest.mark.parametrize("slug", CALCULATORS)
def test_the_space_told_from_the_phasors_is_that_of_the_construction(slug):
    forms, told = import_module(f"calculators.{slug.replace('-', '_')}.forms"), 0
    for number in range(FORMS):
        form = {**forms.form(number), "resultant": ("sum", "returning")[number % 2]}
        try:
            case = CALCULATORS[slug].case(form)
        except InputError:
            continue
        for method in case.methods if not case.companions else ():
            spaces = case.spaces(method, "")
            if not spaces:
                continue
            orders = case.orders(method, "")
            drawn = [space_of(case.build(method, order), case.picture) for order in orders]
            assert len(drawn) == len(spaces)
            for one, other in zip(spaces, drawn, strict=True):
                assert one.rows == other.rows
                # By crossings, orders are ranked; a method of one order has none to rank.
                assert len(orders) == 1 or one.sharpness == other.sharpness
                assert one.box == pytest.approx(other.box, abs=NEAR * max(other.box.width, other.box.height))
                told += 1
    assert told or slug in ("series-circuit", "parallel-circuit"), "no space was compared"
