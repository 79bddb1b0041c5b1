"""The values of a problem in Practice, written as on paper."""

import re
from dataclasses import replace

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.pages.codes import find
from pycore.pages.practice import values_of
from pycore.practice.codes import TIERS, Code

WITHOUT_UNIT = {"Target"}
"""Power factors."""
BARE = re.compile(r"^[−\d.]+(?:$| at | \+ (?!j))|(?: at | \+ )[−\d.]+$")


@pytest.mark.parametrize("tier", TIERS)
@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_number_has_its_unit(slug: str, tier: str) -> None:
    """A resistance stood there as “54 + 10”, a phasor as “19 at -30”: as the fields take them."""
    for number in range(1, 9):
        told = values_of(find(str(Code(CALCULATORS[slug].topic, tier, seed=5, number=number))))
        assert told
        assert [] == [(label, text) for label, text, _ in told if label not in WITHOUT_UNIT and BARE.search(text)]
        assert not any("-" in text for _, text, _ in told)


@pytest.mark.parametrize("slug", ["star-and-delta", "open-neutral"])
def test_an_impedance_is_written_as_on_the_sheet(slug: str) -> None:
    """“40 Ω + j30 Ω” stood beside “9 − j12 Ω”; the sheet has “40 + j30 Ω”."""
    seen = 0
    for number in range(1, 9):
        problem = find(str(Code(CALCULATORS[slug].topic, TIERS[-1], seed=5, number=number)))
        on_sheet = problem.page.case(problem.form).values_text().replace("\u00a0", " ")
        impedances = [text for _, text, _ in values_of(problem) if "j" in text]
        assert [] == [text for text in impedances if text not in on_sheet]
        seen += len([text for text in impedances if "+" in text])
    assert seen


@pytest.mark.parametrize(("typed", "said"), [("0.8 lag", "0.8 lag"), ("35", "35° lag"), ("-10", "10° lead")])
def test_an_angle_says_lag_or_lead_once(typed: str, said: str) -> None:
    """It said “L3 lags by 0.8 lag”, and “L3 lags by −10°” of a current that leads."""
    problem = find(str(Code(CALCULATORS["neutral-current"].topic, TIERS[-1], seed=5)))
    told = values_of(replace(problem, form={**problem.form, "a3": typed}))
    assert [said] == [text for label, text, _ in told if label == "Lag of L3"]
    assert not any("lag" in label for label, _, _ in told)


def test_a_coil_that_is_given_in_ohms_is_given_by_its_reactance() -> None:
    """It said “Inductance 70 Ω”."""
    seen = set()
    for number in range(1, 9):
        for tier in TIERS:
            problem = find(str(Code(CALCULATORS["series-circuit"].topic, tier, seed=5, number=number)))
            seen |= {(label, text.rpartition(" ")[2]) for label, text, _ in values_of(problem)}
    assert {("Inductive reactance", "Ω"), ("Capacitive reactance", "Ω")} <= seen
    assert not {("Inductance", "Ω"), ("Capacitance", "Ω")} & seen
