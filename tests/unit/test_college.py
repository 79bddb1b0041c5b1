"""A college's settings: what is chosen is read, what cannot be used is said, a page starts with it, no link changes."""

import json

import pytest

from pycore.api import handle
from pycore.calculators.registry import CALCULATORS
from pycore.errors import InputError
from pycore.forms import links
from pycore.forms.fields import default_form
from pycore.pages import class_set, question_paper
from pycore.pages.college import FIELDS, GROUPED, read_settings


def ask(**request: object) -> dict:
    return json.loads(handle(json.dumps({"page": "college-settings", **request}))[0])


def test_nothing_chosen_is_nothing_kept():
    settings = read_settings(default_form(FIELDS))
    assert ({}, (("v", "3"),)) == (settings.chosen, settings.link)


def test_what_is_chosen_comes_back_by_its_link():
    chosen = {"names": "ABC", "decimal": "comma", "percent": "1.5", "paper": "A3", "marks-first": "3"}
    fragment = links.fragment(read_settings(default_form(FIELDS) | chosen).link)
    opened = ask(do="open", fragment=fragment)["form"]
    assert chosen == read_settings(opened).chosen


@pytest.mark.parametrize(("name", "typed"), [
    ("names", "XYZ"), ("percent", "much"), ("digits", "-3"), ("allow-percent", "9000"), ("marks-first", "99"),
    ("marks-scale", "1.5"), ("college", "x" * 61),
])  # fmt: skip
def test_what_cannot_be_used_is_said_at_its_field(name: str, typed: str):
    with pytest.raises(InputError) as refused:
        read_settings({name: typed})
    (fault,) = refused.value.faults
    assert name == fault.field
    assert typed[:20] in fault.message or name == "college"


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_page_starts_with_the_settings_and_with_its_own_example(slug: str):
    """Every convention that the page has, and no value."""
    page = CALCULATORS[slug]
    chosen = {"decimal": "comma", "angles": "polar", "protractor": "360", "paper": "A3", "colours": "british-old"}
    form = read_settings(chosen).for_page(page.fields)
    names = {field.name for field in page.fields}
    default = default_form(page.fields)
    assert {name: text for name, text in form.items() if text != default[name]} == {
        name: text for name, text in chosen.items() if name in names
    }
    assert page.case(form).problem.is_example


def test_every_setting_is_a_field_of_a_page_and_its_options_are_those_of_the_page():
    pages = [field for page in CALCULATORS.values() for field in page.fields]
    parts = {f"marks-{key}" for key in question_paper.MARKS}
    known: dict[str, set[str]] = {}
    for field in (*pages, *class_set.FIELDS):
        known.setdefault(field.name, set()).update(one.value for one in field.options)
    for name in (name for names in GROUPED.values() for name in names if name not in parts):
        own = {one.value for one in next(field for field in FIELDS if field.name == name).options}
        assert own - {""} <= known[name]


def test_problems_of_practice_follow_the_settings_and_nothing_that_is_none():
    """The same problem with other signs; a stranger's text in the storage changes nothing."""
    request = {"do": "practice", "move": "open", "seed": 5, "page": "practice", "drawn": {}}
    plain, other, hostile = (
        json.loads(handle(json.dumps({**request, "college": college}))[0])
        for college in ({}, {"decimal": "comma", "protractor": "360"}, {"decimal": "<b>", "names": 7, "i1": "99"})
    )
    assert plain["record"] == other["record"] == hostile["record"]
    assert plain["regions"]["sheet"] == hostile["regions"]["sheet"]
    assert plain["regions"]["sheet"] != other["regions"]["sheet"]


def test_the_reply_shows_a_sheet_and_gives_what_is_chosen():
    reply = ask(do="answer", form={"names": "RYB"})
    assert {"names": "RYB"} == reply["chosen"]
    assert "<svg" in reply["regions"]["sheet"]
    shared = ask(do="share", form={"names": "RYB"}, base="https://folio.example/college-settings/")
    assert "https://folio.example/college-settings/#v=3&names=RYB" == shared["link"]
