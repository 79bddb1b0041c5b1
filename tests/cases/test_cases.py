"""The worked examples: each goes through the api as a page sends it, and its outputs come back as stored.

The `cases*.toml` of each calculator's folder are data: id, page, kind, source, form, expected outputs with unit and
tolerance.
"""

import json

import pytest
from calculators.asking import OUTPUT
from calculators.folders import CASES, cases_of

from pycore import api
from pycore.calculators.registry import CALCULATORS

KINDS = {"published", "common practice", "from memory", "recomputed"}
UNITS = {"", "A", "V", "W", "VA", "var", "Ω", "S", "F", "Hz", "°", "mm", "A/cm", "V/cm"}


def outputs_of(page: str, form: dict[str, str]) -> dict[str, str]:
    """The data-values of a page's results by name, read from its HTML."""
    reply = json.loads(api.handle(json.dumps({"do": "answer", "page": page, "form": form, "parts": ["answer"]}))[0])
    assert reply["ok"], reply["errors"]
    return dict(OUTPUT.findall("".join(reply["regions"].values())))


def margin(expected: dict) -> float:
    """A tolerance in the output's unit; "0.1 %" is a share of the value."""
    tolerance = expected["tolerance"]
    if isinstance(tolerance, str):
        return abs(expected["value"]) * float(tolerance.removesuffix(" %")) / 100
    return tolerance


@pytest.mark.parametrize("case", CASES, ids=[case["id"] for case in CASES])
def test_a_worked_example_comes_out_as_stored(case: dict):
    found = outputs_of(case["page"], case["form"])
    for name, expected in case["expected"].items():
        if expected["value"] == "":
            assert "" == found[name]
        else:
            assert expected["value"] == pytest.approx(float(found[name]), abs=margin(expected), rel=0)


@pytest.mark.parametrize("case", CASES, ids=[case["id"] for case in CASES])
def test_a_worked_example_says_what_it_is_and_where_it_comes_from(case: dict):
    """Known kind, a source in words, a page and form keys of ours, units and tolerances on every output."""
    assert case["kind"] in KINDS
    assert len(case["source"]) > 10
    assert ("no source" in case["source"]) == (case["kind"] == "common practice")
    keys = {field.name for field in CALCULATORS[case["page"]].fields}
    assert set() == set(case["form"]) - keys
    assert case["expected"]
    for expected in case["expected"].values():
        assert {"value", "unit", "tolerance"} == set(expected)
        assert expected["unit"] in UNITS
        assert margin(expected) >= 0 if expected["value"] != "" else True


def test_no_two_examples_share_a_name():
    names = [case["id"] for case in CASES]
    assert len(names) > 20
    assert sorted(set(names)) == sorted(names)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_calculator_has_examples_of_its_own_checked_from_outside(slug: str):
    """At least three, and all that stand in its folder are its own."""
    pages = [case["page"] for case in cases_of(slug)]
    assert len(pages) >= 3
    assert {slug} == set(pages)


@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
def test_an_example_gives_the_same_answer_by_every_method(method: str):
    for case in CASES:
        offered = next(field for field in CALCULATORS[case["page"]].fields if field.name == "method").options
        expected = case["expected"].get("neutral-current")
        if expected and method in [choice.value for choice in offered]:
            found = outputs_of(case["page"], {**case["form"], "method": method})
            assert expected["value"] == pytest.approx(float(found["neutral-current"]), abs=margin(expected), rel=0)
