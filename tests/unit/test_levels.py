"""What a class set says of its level and its method is what the topic's problems are."""

from collections.abc import Callable

import pytest

from pycore.calculators.registry import CALCULATORS, by_topic, module_of
from pycore.forms.fields import default_form
from pycore.pages.class_job import issue_of, learners_of, row_for
from pycore.pages.class_key import answers
from pycore.pages.class_set import FIELDS, TOPICS, ClassSet, level_words, read_set
from pycore.practice.codes import TIERS, Code
from pycore.render.class_set import set_html

Form = dict[str, str]


def group_of(topic: str, **more: str) -> ClassSet:
    return read_set(default_form(FIELDS) | {"topic": topic, "learners": "2", "seed": "7"} | more)


def whole(form: Form, *names: str) -> bool:
    return all("." not in form[name] for name in names)


# What each sentence claims, seen in the forms of 40 codes.
CLAIMS: dict[tuple[str, str], Callable[[Form], bool]] = {
    ("neutral-current", "support"): lambda form: whole(form, "i1", "i2", "i3") and form["start"] == "two",
    ("neutral-current", "core"): lambda form: {form["a1"], form["a2"], form["a3"]} == {"0"},
    ("neutral-current", "stretch"): lambda form: form["further"] == "zero",
    ("add-phasors", "support"): lambda form: whole(form, "p1", "p2") and not form["p3"],
    ("add-phasors", "core"): lambda form: bool(form["p3"]) and form["combine"] == "sum",
    ("add-phasors", "stretch"): lambda form: form["combine"] == "difference",
    ("star-and-delta", "support"): lambda form: form["connection"] == "star" and form["z1"] == form["z3"],
    ("star-and-delta", "core"): lambda form: form["connection"] == "delta" and "j" not in form["z1"] + form["z2"],
    ("star-and-delta", "stretch"): lambda form: form["connection"] == "delta",
    ("series-circuit", "support"): lambda form: "Ω" in form["l"] and form["supply"].endswith(" A"),
    ("series-circuit", "core"): lambda form: "mH" in form["l"] and form["frequency"] == "50",
    ("series-circuit", "stretch"): lambda form: "+" in form["r"] and form["frequency"] in ("50", "60"),
    ("parallel-circuit", "support"): lambda form: form["b2"].startswith("j") and not form["b3"],
    ("parallel-circuit", "core"): lambda form: "mH" in form["b2"] and "µF" in form["b3"],
    ("parallel-circuit", "stretch"): lambda form: "Ω + " in form["b2"],
    ("power-triangle", "support"): lambda form: not form["target"],
    ("power-triangle", "core"): lambda form: bool(form["target"]) and form["phases"] == "1",
    ("power-triangle", "stretch"): lambda form: bool(form["target"]) and form["phases"] == "3",
    ("harmonics-in-the-neutral", "support"): lambda form: form["drawn"] == "3" and whole(form, "i1", "i2", "i3"),
    ("harmonics-in-the-neutral", "core"): lambda form: form["drawn"] == "1" and bool(form["h3"]),
    ("harmonics-in-the-neutral", "stretch"): lambda form: form["drawn"] == "3",
    ("open-neutral", "support"): lambda form: all(int(form[name]) % 10 == 0 for name in ("z1", "z2", "z3")),
    ("open-neutral", "core"): lambda form: "j" not in form["z1"] + form["z2"] + form["z3"],
    ("open-neutral", "stretch"): lambda form: (form["z1"] + form["z2"] + form["z3"]).count("j") == 1,
    ("two-wattmeters", "support"): lambda form: "-" not in form["w1"] + form["w2"],
    ("two-wattmeters", "core"): lambda form: "-" not in form["w1"] + form["w2"],
    ("two-wattmeters", "stretch"): lambda form: (form["w1"] + form["w2"]).count("-") == 1,
    ("sequence-components", "support"): lambda form: form["part"] == "zero" and whole(form, "p1", "p2", "p3"),
    ("sequence-components", "core"): lambda form: form["part"] in ("zero", "negative"),
    ("sequence-components", "stretch"): lambda form: form["part"] in ("zero", "positive", "negative"),
}


@pytest.mark.parametrize(("slug", "tier"), list(CLAIMS))
def test_a_level_holds_what_is_said_of_it(slug: str, tier: str) -> None:
    topic = TOPICS[slug]
    for number in range(1, 41):
        form = topic.practice_form(Code(topic.topic, tier, seed=11, number=number))
        assert CLAIMS[slug, tier](form), (number, form)


def test_every_topic_says_what_each_level_holds() -> None:
    assert list(by_topic().values()) == list(TOPICS)
    assert set(CALCULATORS) == set(TOPICS)
    assert list(CLAIMS) == [(slug, tier) for slug in TOPICS for tier in TIERS]
    assert all(list(TIERS) == list(module_of(slug, "teaching").LEVELS) for slug in CALCULATORS)


def test_the_page_tells_the_level_of_the_topic_that_is_chosen() -> None:
    for slug, tier in CLAIMS:
        group = group_of(slug, tier=tier)
        assert module_of(slug, "teaching").LEVELS[tier] in level_words(group)
        assert level_words(group) in str(set_html(group)).replace("&#x27;", "'")


@pytest.mark.parametrize("slug", ["two-wattmeters", "open-neutral"])
def test_a_method_that_a_topic_does_not_have_is_told_and_stands_on_no_key(slug: str) -> None:
    group = group_of(slug, method="parallelogram")
    assert any("no problems by this method (parallelogram)" in notice for notice in group.notices)
    learner = next(one for one in learners_of(group) if one is not None)
    assert issue_of(group, learner).any_method
    title = answers(group, [row_for(group, learner)], (2, 2)).title
    assert title.endswith("any method") and "parallelogram" not in title
    # The values stay those of the code, whatever method it names.
    plain = next(one for one in learners_of(group_of(slug)) if one is not None)
    assert learner.form == plain.form


def test_a_method_that_a_topic_has_is_not_remarked_upon() -> None:
    assert group_of("neutral-current", method="parallelogram").notices == ()
    assert group_of("two-wattmeters", method="components").notices == ()
    assert group_of("two-wattmeters", method="any").notices == ()
    title = group_of("neutral-current", method="parallelogram")
    assert title.method == "parallelogram"
