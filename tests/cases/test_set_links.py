"""Links of class sets, printed on keys and kept by lecturers: each gives its own set again, for ever."""

import json
import tomllib
from pathlib import Path

import pytest

from pycore import api
from pycore.forms.fields import default_form
from pycore.pages.class_job import learners_of
from pycore.pages.class_set import FIELDS, read_set

SETS = tomllib.loads(Path(__file__).with_name("links").joinpath("sets.toml").read_text("utf-8"))["set"]


def given(address: str) -> dict:
    """What a link gives: the form's own values, the set's code, its learners, and the first one's problem."""
    fragment = address.partition("#")[2]
    opened = json.loads(api.handle(json.dumps({"do": "open", "page": "class-set", "fragment": fragment}))[0])
    assert [] == opened["notices"]
    group = read_set(default_form(FIELDS) | opened["form"])
    learner = next(one for one in learners_of(group) if one is not None)
    fields = [field for field in group.topic.fields if field.group in ("values", "loads") and field.kind != "choice"]
    values = [learner.form[field.name] for field in fields if learner.form[field.name]]
    return {"code": str(group.code), "learners": group.learners, "first": str(learner.code), "values": values}


@pytest.mark.parametrize("link", SETS, ids=lambda link: link["id"])
def test_a_link_gives_its_set_for_ever(link: dict):
    assert {name: link[name] for name in ("code", "learners", "first", "values")} == given(link["address"])


def test_every_choice_of_the_form_stands_in_some_link():
    """What no link tries may change unseen."""
    named = {pair.partition("=")[0] for link in SETS for pair in link["address"].partition("#")[2].split("&")}
    assert {field.name for field in FIELDS if not field.private} == named - {"v"}
