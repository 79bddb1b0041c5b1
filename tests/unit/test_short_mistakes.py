"""Every mistake that a page can name has few words for a class's summary and for what a device counts."""

from functools import cache
from itertools import product

import pytest

from pycore.calculators.interface import default_form
from pycore.calculators.registry import CALCULATORS
from pycore.practice.codes import METHODS, TIERS, Code
from pycore.practice.ladder import Record
from pycore.render.practice import kept_html
from pycore.words import add_phasors, circuit_mistakes, harmonics, mistakes, sequence, star_delta
from pycore.words.short_mistakes import SHORT

WORDED = (mistakes.NAMES, circuit_mistakes.CIRCUITS, *(page.MISTAKES for page in (add_phasors, harmonics, sequence,
                                                                                 star_delta)))  # fmt: skip


@cache
def keys_of(slug: str) -> frozenset[str]:
    """Every mistake of the problems that a calculator sets, and of its example."""
    page = CALCULATORS[slug]
    assert page.topic is not None, "every calculator sets problems"
    codes = [Code(page.topic, *more, seed=4, number=number) for *more, number in product(TIERS, METHODS, range(1, 6))]
    return frozenset(
        mistake.key
        for form in (default_form(page.fields), *(page.practice_form(code) for code in codes))
        for mistake in page.task(form).mistakes
    )


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_mistake_of_every_task_has_a_short_name(slug: str) -> None:
    assert keys_of(slug)
    assert keys_of(slug) <= SHORT.keys()


def test_no_short_name_is_kept_of_a_mistake_that_nothing_names() -> None:
    named = {key for worded in WORDED for key in worded}.union(*(keys_of(slug) for slug in CALCULATORS))
    assert named == SHORT.keys()


def test_whatever_has_words_has_short_ones_and_none_is_told_twice() -> None:
    assert {key for worded in WORDED for key in worded} <= SHORT.keys()
    assert len(dict.fromkeys(SHORT.values())) == len(SHORT)
    assert max(len(said) for said in SHORT.values()) <= 42


def test_what_a_device_counts_is_told_in_these_words() -> None:
    record = Record(1, "0.any", mistakes={"load-left-out": 2, "a-exchanged": 1})
    told = str(kept_html(record))
    assert "a load left out" in told
    assert "a and a² exchanged" in told
