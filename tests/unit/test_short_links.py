"""The QR code of a problem sheet with a code: short, and it opens what the whole link opens."""

import json
from itertools import product

import pytest

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.forms import links
from pycore.forms.fields import default_form
from pycore.forms.opening import ReopenInfo
from pycore.pages import class_set
from pycore.pages.class_job import issue_of, learners_of
from pycore.practice.class_set import Learner
from pycore.sums.short_link import form_of_code, short_link

BASE = "https://www.folio.example/"
CHOICES = (
    {}, {"rotation": "clockwise", "names": "RYB", "decimal": "comma"}, {"tier": "stretch", "method": "tip-to-tail"},
    {"print": "large", "paper": "A3", "first": "right", "resultant": "returning"},
)  # fmt: skip


def first_of(slug: str, choices: dict[str, str]) -> tuple[class_set.ClassSet, Learner]:
    """A class set with these choices, and its first learner."""
    group = class_set.read_set(default_form(class_set.FIELDS) | {"topic": slug, "learners": "1", **choices})
    return group, next(one for one in learners_of(group) if one is not None)


def opened(slug: str, pairs: tuple[tuple[str, str], ...]) -> dict[str, str]:
    """The form that a link opens."""
    request = {"do": "open", "page": slug, "fragment": links.fragment(pairs)}
    reply = json.loads(api.handle(json.dumps(request))[0])
    assert reply["ok"] and not reply["notices"]
    form: dict[str, str] = reply["form"]
    return form


@pytest.mark.parametrize(("slug", "choices"), [*product(class_set.TOPICS, CHOICES)])
def test_a_short_link_opens_the_sheet_that_the_whole_link_opens(slug: str, choices: dict[str, str]):
    group, learner = first_of(slug, choices)
    page, code = CALCULATORS[slug], str(learner.code)
    case = page.case(learner.form)
    whole = case.link(case.sheet_plan(), "problem", code)
    by_code = form_of_code(page, ReopenInfo(f"{BASE}{slug}/", True, issue_of(group, learner)), "")
    short = short_link(case.problem.typed, page.fields, by_code, code)
    assert ("sheet", "problem") in short
    again = page.case(opened(slug, short))
    assert whole == again.link(again.sheet_plan(), "problem", code)
    assert len(links.fragment(short)) < 0.75 * len(links.fragment(whole))


def test_other_values_than_those_of_the_code_are_never_left_out():
    page = CALCULATORS["neutral-current"]
    group, learner = first_of("neutral-current", {})
    by_code = form_of_code(page, ReopenInfo(BASE, True, issue_of(group, learner)), "")
    assert () == short_link({**learner.form, "i1": "12.3"}, page.fields, by_code, str(learner.code))
    assert () == short_link(learner.form, page.fields, {}, str(learner.code))


@pytest.mark.parametrize("code", ["", "none", "6AB-CDE-FGH", "562-222-23V"])
def test_a_code_without_values_of_the_page_opens_nothing(code: str):
    assert {} == form_of_code(CALCULATORS["neutral-current"], ReopenInfo(f"{BASE}neutral-current/", True), code)
