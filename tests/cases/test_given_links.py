"""Links of own values given as a problem: each opens with its check code, its answer held back, for ever."""

import json
import tomllib
from pathlib import Path

import pytest

from pycore import api
from pycore.calculators.registry import CALCULATORS

GIVEN = tomllib.loads(Path(__file__).with_name("links").joinpath("given.toml").read_text("utf-8"))["given"]


def ask(do: str, page: str, **more: object) -> dict:
    reply = json.loads(api.handle(json.dumps({"do": do, "page": page, **more}))[0])
    assert reply["ok"], reply
    return reply


@pytest.mark.parametrize("link", GIVEN, ids=lambda link: link["id"])
def test_a_given_problem_opens_with_its_code_for_ever(link: dict):
    slug, _, fragment = link["address"].partition("/#")
    opened = ask("open", slug, fragment=fragment)
    form = opened["form"]
    assert ([], link["code"], "problem") == (opened["notices"], form["code"], form["sheet"])
    page = CALCULATORS[slug]
    assert link["values"] == [text.replace("\u00a0", " ") for text in page.case(form).value_texts()]
    answer = ask("answer", slug, form=form, parts=["answer", "sheet", "workings", "check"], veiled=True)
    assert link["code"] == answer["code"] and "answer" not in answer["regions"]
    assert link["code"] in answer["regions"]["sheet"] and "data-phasor=\"sum\"" not in answer["regions"]["sheet"]


@pytest.mark.parametrize("link", GIVEN, ids=lambda link: link["id"])
def test_its_code_typed_beside_its_values_opens_it_again(link: dict):
    slug, _, fragment = link["address"].partition("/#")
    form = {**ask("open", slug, fragment=fragment)["form"], "code": "", "sheet": "construction"}
    again = ask("code", slug, code=link["code"].lower(), form=form)
    assert (slug, link["code"]) == (again["page"], again["code"])
    assert link["code"] == ask("open", slug, fragment=again["fragment"])["form"]["code"]


def test_every_calculator_has_two():
    assert dict.fromkeys(CALCULATORS, 2) == {
        slug: len([link for link in GIVEN if link["address"].startswith(f"{slug}/")]) for slug in CALCULATORS
    }
