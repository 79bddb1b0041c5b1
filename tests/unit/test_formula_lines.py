"""Every line of every formula follows from the digits that it prints, or its working says that more were carried."""

import pytest
from host import shelf
from unit import recomputed
from unit.formulas import line

from pycore.calculators.registry import CALCULATORS
from pycore.sums.answer import Equation, Paragraph
from pycore.words import plain
from pycore.words.answers import MORE_DIGITS

FORMS = dict.fromkeys(CALCULATORS, 45) | {"series-circuit": 100, "parallel-circuit": 100, "power-triangle": 100}
"""How many forms of each page are recomputed: of the circuits, where most of a page is formulas, more."""


@pytest.mark.parametrize("slug", FORMS)
def test_every_formula_line_follows_from_the_digits_that_it_prints(slug: str):
    seen, astray = 0, []
    for form in shelf.forms(slug, FORMS[slug]):
        for working in CALCULATORS[slug].answer(form, ("workings",)).workings:
            said = " ".join(plain(block.phrase) for block in working.blocks if isinstance(block, Paragraph))
            for block in working.blocks:
                if not isinstance(block, Equation):
                    continue
                for one in recomputed.recompute(block.lines):
                    seen += 1
                    # Digits that are carried unseen explain a last digit, and nothing more than that.
                    covered = one.if_carried and plain(MORE_DIGITS) in said
                    if not (one.follows or covered):
                        astray.append([line(formula) for formula in block.lines])
    assert seen >= FORMS[slug]
    assert astray == []


@pytest.mark.parametrize(
    ("left", "right", "follows", "if_carried"),
    [("46.113", "46.1", True, True), ("46.16", "46.1", False, True), ("46.113", "47.1", False, False)],
)
def test_the_recomputation_finds_a_digit_that_does_not_follow(left: str, right: str, follows: bool, if_carried: bool):
    from pycore.words.formula import Fraction, Number, row
    from pycore.words.phrase import Symbol

    formula = row(Symbol("I"), "=", Fraction(Number(left), Number("1.00")), "=", Number(right, "A"))
    found = list(recomputed.recompute([formula]))
    assert [(follows, if_carried)] == [(one.follows, one.if_carried) for one in found]
