"""Links of each version open with the defaults of their own version, for ever."""

import json

import pytest

from pycore import api
from pycore.calculators.registry import CALCULATORS, MAIN
from pycore.forms import links
from pycore.forms.fields import VALUE_GROUPS, VERSION, VERSIONS, Field, default_form, is_example
from pycore.pages.class_set import default_set
from pycore.pages.lesson_plans import _address as address_of
from pycore.pages.lesson_plans import plans
from pycore.pages.paper import PAPER_PAGES
from pycore.render.home import home_regions

SLUG = "harmonics-in-the-neutral"
PAGE = CALCULATORS[SLUG]
BALANCED = "i1=10&i2=10&i3=10&h3=30"
EXAMPLE = "i1=10&i2=6&i3=4&h3=20"
CODE = "3N2-22A-25P"
"""Of this page: a problem whose third line lags by 30°."""
FIELDS = (
    Field("size", "Size", "quantity", "values", "4", "A"),
    Field("lag", "Lag", "angle", "loads", "0", before=(("1", "20"),)),
)


def ask(do: str, page: str = SLUG, **more: object) -> dict:
    reply = json.loads(api.handle(json.dumps({"do": do, "page": page, **more}))[0])
    assert reply["ok"], reply
    return reply


def opened(fragment: str, page: str = SLUG) -> dict:
    return ask("open", page, fragment=fragment)


def neutral(fragment: str) -> str:
    form = opened(fragment)["form"]
    return f"{next(one.value for one in PAGE.answer(form, ('answer',)).outputs):.4g}"


def test_a_link_that_gives_values_takes_no_lag_that_nobody_saw():
    assert "9" == neutral(f"#v=2&{BALANCED}")


@pytest.mark.parametrize("version", ["v=1&", ""])
def test_a_link_of_version_1_or_of_none_means_the_lags_of_then(version: str):
    assert "8.356" == neutral(f"#{version}{BALANCED}")


def test_the_version_counts_wherever_it_stands():
    assert "9" == neutral(f"#{BALANCED}&v=2")
    assert "8.356" == neutral(f"#{BALANCED}&v=1")


def test_what_a_link_names_stands_in_every_version():
    for version in (*VERSIONS, "4"):
        assert "5" == links.open_fragment(f"v={version}&lag=5", FIELDS).form["lag"]


@pytest.mark.parametrize(("fragment", "lag"), [
    ("v=1", "20"), ("v=2", "0"), ("size=3", "20"), ("", "0"), ("answer", "0"), ("v=3&size=3", "0"), ("v=4&size=3", "0"),
])  # fmt: skip
def test_each_version_has_its_own_default(fragment: str, lag: str):
    assert lag == links.open_fragment(f"#{fragment}", FIELDS).form["lag"]


def test_only_a_version_that_is_not_known_is_said():
    for version in VERSIONS:
        assert [] == opened(f"#v={version}&{EXAMPLE}")["notices"]
    assert ["version “4”" in notice for notice in opened(f"#v=4&{EXAMPLE}")["notices"]] == [True]


def test_a_link_names_what_has_another_default_in_another_version():
    """So that an edition of before, kept on a device, gives the same values."""
    pairs = links.form_pairs(default_form(FIELDS), FIELDS)
    assert (("v", "3"), ("size", "4"), ("lag", "0")) == pairs
    old = links.fragment(pairs).replace("v=3", "v=1")
    assert default_form(FIELDS) == links.open_fragment(old, FIELDS).form


def test_a_link_leaves_out_how_scales_are_chosen_where_it_is_as_usual():
    """It names the scale itself, and the version says the rest: QR codes stay as small as they were."""
    link = dict(PAGE.answer(default_form(PAGE.fields), ("answer",)).link)
    assert "scale" in link
    assert not {"steps", "one-scale"} & set(link)
    kept = dict(PAGE.answer(default_form(PAGE.fields, "2"), ("answer",)).link)
    assert ("125", "no") == (kept["steps"], kept["one-scale"])


@pytest.mark.parametrize("version", ["1", "2"])
def test_a_link_of_before_has_the_scales_of_before(version: str):
    for page in CALCULATORS.values():
        form = links.open_fragment(f"v={version}&paper=A4", page.fields).form
        assert ("all" if page.slug == "open-neutral" else "125", "no") == (form["steps"], form["one-scale"])


def test_what_a_link_of_version_1_opens_is_shared_with_its_lags():
    form = opened(f"#v=1&{EXAMPLE}")["form"]
    shared = ask("share", form=form, base="https://folio.example/")["link"].partition("#")[2]
    assert shared.startswith("v=3&")
    assert ("0", "20", "30") == tuple(opened(shared)["form"][name] for name in ("a1", "a2", "a3"))


def test_paper_that_shows_the_example_of_version_1_keeps_its_story():
    for version in VERSIONS:
        assert PAGE.scenario == PAGE.answer(opened(f"#v={version}&{EXAMPLE}")["form"], ("answer",)).scenario
    assert "" == PAGE.answer(opened(f"#v=2&{EXAMPLE}&a2=20")["form"], ("answer",)).scenario
    assert not is_example({"size": "4", "lag": "5"}, FIELDS)


@pytest.mark.parametrize("version", VERSIONS)
def test_a_code_gives_the_same_problem_by_a_link_of_any_version(version: str):
    found = opened(f"#v={version}&code={CODE}")
    assert ("19.2", "22.3", "13.1", "40", "15", "30") == tuple(
        found["form"][name] for name in ("i1", "i2", "i3", "a1", "a2", "a3")
    )
    values = "i1=19.2&i2=22.3&i3=13.1&h3=40&a1=40&a2=15&a3=30"
    assert CODE == opened(f"#v={version}&{values}&code={CODE}")["form"]["code"]


def test_a_code_that_cannot_be_used_leaves_the_present_lags():
    assert default_form(PAGE.fields)["a2"] == opened(f"#v={VERSION}&code=333-JDL-2GB")["form"]["a2"]


@pytest.mark.parametrize(("fragment", "own"), [
    (f"v=2&{EXAMPLE}", True), ("v=1&i1=3", True), (f"v=2&code={CODE}", True), ("v=2&drawn=1", False),
    ("v=2&code=333-JDL-2GB", True), ("v=2&a2=20", False), ("answer", False),
])  # fmt: skip
def test_the_page_is_told_whether_a_link_gives_the_values(fragment: str, own: bool):
    assert own == opened(f"#{fragment}")["own"]


def test_every_link_that_is_made_states_the_present_version():
    made = [default_set().link, *(page.make(default_form(page.fields)).link for page in PAPER_PAGES.values())]
    made += [page.answer(default_form(page.fields), ("answer",)).link for page in CALCULATORS.values()]
    assert {("v", VERSION)} == {link[0] for link in made}
    uses = str(home_regions(CALCULATORS[MAIN], CALCULATORS.values())["uses"])
    assert 3 == uses.count(f'href="{MAIN}/#v={VERSION}&amp;')


@pytest.mark.parametrize("slug", CALCULATORS)
def test_links_of_a_lesson_plan_open_its_own_example(slug: str):
    """Every value that such a link leaves out or names is one of the example's in view."""
    topic, plan = CALCULATORS[slug], plans()[slug]
    answer = topic.answer(default_form(topic.fields), ("answer",))
    values = [field for field in topic.fields if field.group in VALUE_GROUPS]
    own = [one for one in (*plan.handouts, *plan.cover_handouts) if one.slug == slug]
    assert own
    for handout in own:
        fragment = address_of(handout, topic, answer).partition("#")[2]
        assert fragment.startswith(f"v={VERSION}&")
        form = opened(fragment, slug)["form"]
        assert {field.name: field.default for field in values} == {field.name: form[field.name] for field in values}
