"""What a class set says of its level and its method is what the topic's problems are."""

import pytest
from calculators.claims import claims_of

from pycore.calculators.registry import CALCULATORS, by_topic, module_of
from pycore.forms.fields import default_form
from pycore.pages.class_job import issue_of, learners_of, row_for
from pycore.pages.class_key import answers, head_of
from pycore.pages.class_set import FIELDS, TOPICS, ClassSet, level_words, read_set
from pycore.practice.codes import TIERS, Code
from pycore.render.class_set import set_html


def group_of(topic: str, **more: str) -> ClassSet:
    return read_set(default_form(FIELDS) | {"topic": topic, "learners": "2", "seed": "7"} | more)


LEVELS = [(slug, tier) for slug in TOPICS for tier in TIERS]


@pytest.mark.parametrize(("slug", "tier"), LEVELS)
def test_a_level_holds_what_is_said_of_it(slug: str, tier: str) -> None:
    topic = TOPICS[slug]
    for number in range(1, 41):
        form = topic.practice_form(Code(topic.topic, tier, seed=11, number=number))
        assert claims_of(slug).CLAIMS[tier](form), (number, form)


def test_every_topic_says_what_each_level_holds() -> None:
    assert list(by_topic().values()) == list(TOPICS)
    assert set(CALCULATORS) == set(TOPICS)
    assert all(list(TIERS) == list(claims_of(slug).CLAIMS) for slug in CALCULATORS)
    assert all(list(TIERS) == list(module_of(slug, "teaching").LEVELS) for slug in CALCULATORS)


def test_the_page_tells_the_level_of_the_topic_that_is_chosen() -> None:
    for slug, tier in LEVELS:
        group = group_of(slug, tier=tier)
        assert module_of(slug, "teaching").LEVELS[tier] in level_words(group)
        assert level_words(group) in str(set_html(group)).replace("&#x27;", "'")


@pytest.mark.parametrize("slug", ["two-wattmeters", "open-neutral"])
def test_a_method_that_a_topic_does_not_have_is_told_and_stands_on_no_key(slug: str) -> None:
    group = group_of(slug, method="parallelogram")
    assert any("no problems for this method (parallelogram)" in notice for notice in group.notices)
    learner = next(one for one in learners_of(group) if one is not None)
    assert issue_of(group, learner).any_method
    rows = [row_for(group, learner)]
    title = answers(head_of(group, rows, (2, 2)), rows).title
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
