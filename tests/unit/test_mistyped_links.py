"""A link whose code cannot be used shows no other problem: its values are empty, and the code comes back."""

import json

import pytest

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.forms.links import needed_of
from pycore.practice.codes import Code


def opened(slug: str, fragment: str) -> dict:
    return json.loads(api.handle(json.dumps({"do": "open", "page": slug, "fragment": fragment}))[0])


def wrong(code: str) -> str:
    return code[:-1] + ("2" if code[-1] != "2" else "3")


@pytest.mark.parametrize("slug", list(CALCULATORS))
def test_a_code_with_a_wrong_character_brings_no_values(slug: str):
    code = wrong(str(Code(CALCULATORS[slug].topic, "core")))
    reply = opened(slug, f"v=3&code={code}")
    needed = needed_of(CALCULATORS[slug].fields)
    assert needed and all(reply["form"][name] == "" for name in needed)
    assert (code, "", True) == (reply["typed"], reply["form"]["code"], reply["own"])
    assert "one character is wrong, or two are swapped" in reply["errors"][0]["message"]


def test_beside_values_such_a_code_is_left_out_with_a_notice():
    reply = opened("neutral-current", "v=3&i1=1&i2=2&i3=3&code=333-JDL-2GB")
    assert "typed" not in reply and "The values stay as they are" in reply["notices"][0]
    assert ["1", "2", "3"] == [reply["form"][name] for name in ("i1", "i2", "i3")]


@pytest.mark.parametrize(("number", "is_set"), [(0, True), (1, False)])
def test_the_code_of_a_whole_set_says_that_it_is_no_learner_s(number: int, is_set: bool):
    """Typed by a learner it opened a problem without a word, which was in nobody's key. It opens for ever."""
    code = str(Code(0, "core", seed=77, number=number))
    reply = opened("neutral-current", f"v=3&code={code}")
    assert reply["form"]["i1"] and code == reply["form"]["code"]
    assert is_set == any("is the code of a class set" in notice for notice in reply["notices"])
