"""What one digit of the meter is, what is assumed of the meters, and how a verdict near the limit is worded."""

import math

import pytest

from pycore import quantity
from pycore.accuracy.agreement import coverage_factor
from pycore.calculators.neutral_current.case import NeutralCase
from pycore.calculators.neutral_current.page import PAGE
from pycore.calculators.neutral_current.problem import read_problem
from pycore.calculators.neutral_current.verdict import NeutralVerdict, just_outside
from pycore.sums.answer import Paragraph
from pycore.words import plain
from pycore.words import verdict as words

TENTHS = {"i1": "12.6", "i2": "7.3", "i3": "15.8"}
"""Line currents read on a display that shows tenths of an ampere: the neutral current is 7.436 A."""


def sentences(**form: str) -> str:
    """The sentences of the section about hand and meter, with ordinary spaces."""
    (section,) = [one for one in PAGE.answer(form).workings if one.key == "accuracy"]
    phrases = [plain(block.phrase) for block in section.blocks if isinstance(block, Paragraph)]
    return "\n".join(phrases).replace(quantity.NO_BREAK_SPACE, " ")


def head(**form: str) -> str:
    """The sentence beside the headline, with ordinary spaces."""
    link = PAGE.answer(form, ("answer",)).see
    assert link is not None and "accuracy" == link.working
    return plain(link.sentence).replace(quantity.NO_BREAK_SPACE, " ")


def judgement(**form: str) -> NeutralVerdict:
    case = NeutralCase(read_problem(form))
    return NeutralVerdict(case, case.sheet_plan())


@pytest.mark.parametrize(("form", "digit"), [
    ({**TENTHS, "measured": "6.9"}, 0.1), ({**TENTHS, "measured": "7"}, 0.1), ({**TENTHS, "measured": "6.93"}, 0.01),
    ({"i1": "850 mA", "i2": "420 mA", "i3": "0.6", "measured": "0.4"}, 0.001),
    ({"i1": "12", "i2": "7", "i3": "15", "measured": "6 7 7"}, 1.0), ({**TENTHS, "i2": "0", "measured": "1e1"}, 0.1),
    ({**TENTHS, "measured": "6.9", "digit": "0.01"}, 0.01), ({**TENTHS, "measured": "6.9", "digit": "10 mA"}, 0.01),
    ({**TENTHS, "i1": "12,60", "measured": "6.9 6.85 6.9"}, 0.01),
])  # fmt: skip
def test_one_digit_is_the_last_that_was_typed_unless_it_is_entered(form: dict[str, str], digit: float):
    assert digit == pytest.approx(judgement(**form).meter.digit)


def test_a_display_of_tenths_is_not_judged_as_one_of_hundredths():
    """12.6, 7.3 and 15.8 A with 6.9 A in the neutral: five digits are 0.5 A, so the readings agree."""
    text = sentences(**TENTHS, measured="6.9")
    assert "5 digits of 0.1 A" in text
    assert "One digit of the meter is taken as 0.1 A" in text
    assert "they agree" in text and "not agree" not in text
    entered = sentences(**TENTHS, measured="6.9", digit="0.01")
    assert "they do not agree" in entered and "is taken as" not in entered


def test_the_head_of_the_page_says_agreement_where_it_says_disagreement():
    assert "they agree" in head(**TENTHS, measured="6.9")
    assert "do not agree" in head(**TENTHS, measured="3.9")
    assert PAGE.answer(TENTHS, ("answer",)).see is None


def edge(factor: float) -> dict[str, str]:
    """A form whose reading is a little outside what the meters explain: by a factor of E_n."""
    low, high = 0.0, 7.4
    for _ in range(60):
        middle = (low + high) / 2
        comparison = judgement(**TENTHS, measured=f"{middle:.6f}", digit="0.1").of_reading()
        low, high = (middle, high) if comparison.number > factor else (low, middle)
    return {**TENTHS, "measured": f"{high:.6f}", "digit": "0.1"}


@pytest.mark.parametrize("factor", [1.0005, 1.002, 1.02, 1.09])
def test_just_outside_is_called_so_with_figures_that_differ(factor: float):
    form = edge(factor)
    found = judgement(**form)
    assert just_outside(found.of_reading())
    shown = found.printed_reading(found.of_reading())
    apart, normal = (float(text.partition(quantity.NO_BREAK_SPACE)[0]) for text in (shown.apart, shown.normal))
    assert apart > normal
    assert "just outside" in head(**form) and "just outside" in sentences(**form)
    assert "they do not agree" not in sentences(**form)


def test_far_outside_is_not_called_just_outside():
    assert not just_outside(judgement(**edge(1.2)).of_reading())
    assert "just outside" not in head(**edge(1.2))


@pytest.mark.parametrize(("meters", "assumed"), [("one", words.ONE_METER), ("several", words.SEVERAL_METERS)])
def test_what_is_assumed_of_the_meters_is_said_in_plain_wording_too(meters: str, assumed):
    assert plain(assumed) in sentences(**TENTHS, measured="6.9", meters=meters)
    full = sentences(**TENTHS, measured="6.9", meters=meters, wording="full")
    assert (words.SHARED_GAIN if meters == "one" else words.SHARED_NOTHING) in full


@pytest.mark.parametrize("count", [2, 3, 5])
def test_few_readings_are_said_to_show_their_scatter_badly(count: int):
    """Whatever else makes the difference uncertain: here it is the meter's limit, so that the factor stays near 2."""
    form = {**TENTHS, "measured": " ".join(["6.8", "7.0", "6.9", "6.8", "6.9"][:count])}
    assert math.isclose(2.0, judgement(**form).factor(judgement(**form).between()), rel_tol=0.02)
    assert f"With only {count} readings" in sentences(**form)
    factor = quantity.plain(coverage_factor(count - 1))
    assert f"For the scatter alone, the factor is {factor}, not 2" in sentences(**form, wording="full")


def test_many_readings_are_not_called_few():
    assert "With only" not in sentences(**TENTHS, measured="6.8 7.0 6.9 6.8 6.9 6.8")
