"""Scales that are chosen to fit, for ever: a code and a link give the drawing of the time when they were made."""

import json
import tomllib
from pathlib import Path

import pytest

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.pages.codes import find
from pycore.practice import codes

HERE = Path(__file__).parent
CODES = tomllib.loads(HERE.joinpath("codes", "scales.toml").read_text("utf-8"))["code"]
LINKS = tomllib.loads(HERE.joinpath("links", "scales.toml").read_text("utf-8"))["link"]


def drawing(page: str, form: dict[str, str]) -> tuple[float, float, str]:
    """Both scales, and how it is drawn."""
    plan = CALCULATORS[page].case(form).sheet_plan()
    drawn = f"{plan.construction.method} {plan.construction.order} {plan.layout.orientation}"
    return plan.scale, plan.second, drawn


@pytest.mark.parametrize("kept", CODES, ids=[kept["code"] for kept in CODES])
def test_a_code_of_generator_1_keeps_the_drawing_that_it_was_printed_with(kept: dict):
    found = find(kept["code"])
    assert (kept["page"], 1) == (found.page.slug, found.code.generator)
    assert (kept["scale"], kept["second"], kept["drawn"]) == drawing(kept["page"], dict(found.form))


@pytest.mark.parametrize("kept", LINKS, ids=[kept["address"] for kept in LINKS])
def test_a_link_without_a_scale_has_the_one_of_its_version(kept: dict):
    page, _, fragment = kept["address"].partition("/#")
    form = json.loads(api.handle(json.dumps({"do": "open", "page": page, "fragment": fragment}))[0])["form"]
    assert (kept["scale"], kept["second"], kept["drawn"]) == drawing(page, form)


def test_what_is_kept_is_of_every_calculator_level_and_version():
    assert set(CALCULATORS) == {kept["page"] for kept in CODES}
    assert {(slug, tier) for slug in CALCULATORS for tier in codes.TIERS} == {
        (kept["page"], codes.read(kept["code"]).tier) for kept in CODES
    }
    assert {"1", "2", "3"} == {kept["address"].partition("#v=")[2][0] for kept in LINKS}
