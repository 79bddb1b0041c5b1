"""Every line of every formula follows from the digits that it prints."""

import math

import pytest
from host import shelf
from unit import recomputed
from unit.formulas import line

from pycore.calculators.registry import CALCULATORS
from pycore.sums.answer import Equation, Grid, Paragraph
from pycore.words import plain
from pycore.words.answers import MORE_DIGITS

FORMS = dict.fromkeys(CALCULATORS, 45) | {"series-circuit": 100, "parallel-circuit": 100, "power-triangle": 100}
"""How many forms of each page are recomputed: of the circuits, where most of a page is formulas, more."""


NOT_YET = {"open-neutral"}
"""Pages whose working carries digits unseen, and says so: that explains a last digit, and nothing more than that."""


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
                    covered = slug in NOT_YET and one.if_carried and plain(MORE_DIGITS) in said
                    if not (one.follows or covered):
                        astray.append([line(formula) for formula in block.lines])
    assert seen >= FORMS[slug]
    assert astray == []


@pytest.mark.parametrize("slug", ["series-circuit", "parallel-circuit", "power-triangle", "two-wattmeters"])
def test_a_circuits_working_needs_no_digits_that_are_carried_unseen(slug: str):
    for form in [{}, *shelf.forms(slug, 60)]:
        for working in CALCULATORS[slug].answer(form, ("workings",)).workings:
            said = [block.phrase for block in working.blocks if isinstance(block, Paragraph)]
            assert MORE_DIGITS not in said, form


@pytest.mark.parametrize(
    ("slug", "form", "shown"),
    [
        ("series-circuit", {}, {"P": "active-power", "V_L": "voltage-2", "f₀": "resonance", "Z": "impedance"}),
        ("parallel-circuit", {"b1": "8 + j20", "b2": "-j23.2", "b3": "", "supply": "48 V"},
         {"P": "active-power", "I": "current", "Y": "admittance"}),
        ("parallel-circuit", {"supply": "2.5 A"}, {"P": "active-power", "V": "supply-voltage", "I₂": "current-2"}),
        ("power-triangle", {}, {"Q_C": "correction", "C_star": "capacitance-star", "I₂": "line-current-after"}),
        ("power-triangle", {"power": "13.86 kVA"}, {"P": "active-power", "Q": "reactive-power"}),
    ],
)
def test_a_working_leads_to_the_answer(slug: str, form: dict[str, str], shown: dict[str, str]):
    """The printed result of a symbol's last line, rounded to the answer's figures, is the answer."""
    answer = CALCULATORS[slug].answer(form)
    working = next(one for one in answer.workings if one.key == "formula")
    outputs = {output.name: f"{output.text} {output.unit}" for output in answer.outputs}
    lines = [one for block in working.blocks if isinstance(block, Equation) for one in block.lines]
    for symbol, name in shown.items():
        last = [one for one in lines if line(one).startswith(f"{symbol} = ")][-1]
        found, expected = (recomputed.printed(text) for text in (line(last).split(" = ")[-1], outputs[name]))
        assert abs(found.value - expected.value) <= expected.half * (1 + 1e-9), (line(last), outputs[name])


@pytest.mark.parametrize("form", [{}, {"b1": "17", "b2": "5 Ω + 33 mH", "b3": "68 µF", "b4": "j40", "supply": "24"}])
def test_components_of_a_branch_follow_from_the_current_and_angle_in_its_row(form: dict[str, str]):
    working = next(one for one in CALCULATORS["parallel-circuit"].answer(form).workings if one.key == "formula")
    table = next(block for block in working.blocks if isinstance(block, Grid))
    for row_ in table.rows[:-1]:
        amperes, angle, along, across = (recomputed.printed(plain(cell)) for cell in row_[4:])
        turn = math.radians(angle.value.real)
        for part, function in ((along, math.cos), (across, math.sin)):
            assert abs(amperes.value * function(turn) - part.value) <= part.half * (1 + 1e-6) + 1e-12


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
