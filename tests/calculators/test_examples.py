"""Every example is made of values that are in view when the page opens; no value behind a fold enters its answer.

The fields and their groups say what is in view (`in_view`); the first test holds that against the page itself.
"""

import re
from collections.abc import Mapping

import pytest

from pycore.calculators.registry import CALCULATORS
from pycore.forms.coded import LINKS_OF
from pycore.forms.fields import IN_VIEW, VALUE_GROUPS, VERSION, VERSIONS, Field, default_form
from pycore.pages.codes import find
from pycore.pages.practice import values_of
from pycore.practice.codes import GENERATOR, Code
from pycore.render.form import scale_html, values_html

NEUTRAL = ("", "0")
TOOLS = "accuracy"
"""A group that holds no value of a problem: how exact hand and meter are is said where it is used."""
PAGES = CALCULATORS.values()


def in_view(field: Field, form: Mapping[str, str]) -> bool:
    """Whether the page of a form shows the field as soon as it opens: beside the answer, and with a meaning."""
    return field.group in IN_VIEW and field.kind != "readings" and field.counts(form)


def unseen(page: object) -> list[Field]:
    """Fields with a text of their own that the page does not show when it opens."""
    form = default_form(page.fields)
    return [field for field in page.fields if field.kind != "choice" and not in_view(field, form)]


def controls_in_view(html: str) -> set[str]:
    """Names of the text controls that stand in no closed fold and no hidden field of some HTML."""
    bare = re.sub(r"<details(?![^>]* open)[^>]*>.*?</details>", "", html, flags=re.DOTALL)
    bare = re.sub(r'<div[^>]*data-field="[^"]*"[^>]* hidden.*?</div>', "", bare, flags=re.DOTALL)
    return set(re.findall(r'<input[^>]* name="([^"]+)"[^>]* type="text"', bare))


@pytest.mark.parametrize("page", PAGES, ids=CALCULATORS)
def test_what_the_fields_call_in_view_is_in_view_on_the_page(page: object):
    form = default_form(page.fields)
    html = f"{values_html(page.fields, form, {})}{scale_html(page.fields, form, {})}"
    wanted = {field.name for field in page.fields if field.kind != "choice" and in_view(field, form)}
    assert wanted == controls_in_view(html)


@pytest.mark.parametrize("page", PAGES, ids=CALCULATORS)
def test_an_example_has_no_value_that_is_not_in_view(page: object):
    hidden = {field.name: field.default for field in unseen(page) if field.group != TOOLS}
    assert {} == {name: text for name, text in hidden.items() if text not in NEUTRAL}


@pytest.mark.parametrize("page", PAGES, ids=CALCULATORS)
def test_what_stays_unseen_does_not_change_the_example(page: object):
    """Values of an example behind a fold, emptied, leave every result as it is."""
    form = default_form(page.fields)
    emptied = form | {field.name: "" for field in unseen(page) if field.group != TOOLS}
    results = [[(one.name, one.value) for one in page.answer(each, ("answer",)).outputs] for each in (form, emptied)]
    assert results[0] == results[1]


def hidden_by_choice(page: object, form: dict[str, str]) -> list[Field]:
    return [field for field in page.fields if field.kind != "choice" and not field.counts(form)]


@pytest.mark.parametrize("page", PAGES, ids=CALCULATORS)
def test_a_field_without_a_meaning_does_not_change_a_result(page: object):
    """Whatever a choice hides is not read: for each choice that hides fields, other texts in them change nothing."""
    offered = {(field.name, choice.value) for field in page.fields for choice in field.options}
    choosers = {pair for field in page.fields for pair in field.shown_when} & offered
    given = default_form(page.fields) | ({"w1": "1110", "w2": "5480"} if page.slug == "two-wattmeters" else {})
    for name, value in sorted(choosers):
        form = given | {name: value}
        other = form | {field.name: "7" for field in hidden_by_choice(page, form)}
        both = [[(one.name, one.value) for one in page.answer(each, ("answer",)).outputs] for each in (form, other)]
        assert both[0] == both[1], (name, value)


@pytest.mark.parametrize("page", PAGES, ids=CALCULATORS)
@pytest.mark.parametrize("tier", ["support", "core", "stretch"])
def test_practice_shows_every_value_of_a_problem(page: object, tier: str):
    """A lag that happens to be a field's default is given like any other."""
    for seed in range(1, 31):
        found = find(str(Code(page.topic, tier, seed=seed, number=4)))
        labels = page.value_labels(found.form)
        wanted = [labels.get(field.name, field.label) for field in page.fields
                  if field.group in VALUE_GROUPS and field.kind != "choice" and field.counts(found.form)
                  and found.form[field.name] not in NEUTRAL]  # fmt: skip
        assert set(wanted) <= {label for label, _, _ in values_of(found)}


@pytest.mark.parametrize("page", PAGES, ids=CALCULATORS)
def test_a_code_has_the_defaults_of_the_version_in_which_its_generator_was_the_newest(page: object):
    """Printed codes outlast versions: what differs between these is fixed by the generator, or set by the code."""
    for generator, version in LINKS_OF.items():
        default = default_form(page.fields, version)
        for tier in ("support", "core", "stretch"):
            form = page.practice_form(Code(page.topic, tier, seed=9, number=3, generator=generator))
            for name in ("steps", "one-scale"):
                assert default[name] == form[name]
    assert {GENERATOR: VERSION}.items() <= LINKS_OF.items()


@pytest.mark.parametrize("page", PAGES, ids=CALCULATORS)
def test_each_version_has_a_default_of_its_own_only_where_it_differs(page: object):
    for field in page.fields:
        for version, text in field.before:
            assert version in VERSIONS[:-1]
            assert text != field.default


@pytest.mark.parametrize("page", PAGES, ids=CALCULATORS)
def test_a_form_without_a_choice_has_the_labels_options_and_inks_of_its_default(page: object):
    """It is answered with the default, so its labels must name what that default means."""
    form = default_form(page.fields)
    for said_of in (page.labels, page.options, page.inks):
        assert said_of(form) == said_of({})
