"""Every mistake that a page can name has few words for a class's summary and for what a device counts."""

import re
from functools import cache
from itertools import product

import pytest

from pycore.calculators.registry import CALCULATORS, module_of
from pycore.forms.fields import default_form
from pycore.pages.mistake_names import short_names
from pycore.practice.codes import METHODS, TIERS, Code
from pycore.practice.ladder import Record
from pycore.render.practice import kept_html
from pycore.words import circuit_mistakes, mistakes, photograph, plain

WORDED = (
    mistakes.NAMES, circuit_mistakes.CIRCUITS, photograph.SLIPS, {"start": photograph.other_start},
    *(getattr(module_of(slug, "words"), "MISTAKES", {}) for slug in CALCULATORS),
)  # fmt: skip


@cache
def keys_of(slug: str) -> frozenset[str]:
    """Every mistake of the problems that a calculator sets, and of its example."""
    page = CALCULATORS[slug]
    codes = [Code(page.topic, *more, seed=4, number=number) for *more, number in product(TIERS, METHODS, range(1, 6))]
    return frozenset(
        mistake.key
        for form in (default_form(page.fields), *(page.practice_form(code) for code in codes))
        for mistake in page.task(form).mistakes
    )


@pytest.mark.parametrize("slug", CALCULATORS)
def test_every_mistake_of_every_task_has_a_short_name(slug: str) -> None:
    assert keys_of(slug)
    assert keys_of(slug) <= short_names().keys()


@pytest.mark.parametrize("slug", CALCULATORS)
def test_what_happened_can_follow_an_if_and_the_advice_fits_the_page(slug: str) -> None:
    """ "You get this answer if the drawing stops at ..." """
    page = CALCULATORS[slug]
    plural = page.case({}).notation.words.plural
    for one in page.task({}).mistakes:
        name, look = plain(one.name), plain(one.look)
        assert not re.match(r"(this|that|it) is |the angle is the angle", name), name
        assert not re.search(r"Look at which end|Turn one of the two", look), look
        assert "with the line currents" not in look, (look, plural)
        assert not look.startswith("Compare your result") or "the given values" in look


def test_no_short_name_is_kept_of_a_mistake_that_nothing_names() -> None:
    named = {key for worded in WORDED for key in worded}.union(*(keys_of(slug) for slug in CALCULATORS))
    assert named == short_names().keys()


def test_whatever_has_words_has_short_ones_and_none_is_told_twice() -> None:
    assert {key for worded in WORDED for key in worded} <= short_names().keys()
    assert len(dict.fromkeys(short_names().values())) == len(short_names())
    assert max(len(said) for said in short_names().values()) <= 42


def test_what_a_device_counts_is_told_in_these_words() -> None:
    record = Record(1, "0.any", mistakes={"load-left-out": 2, "a-exchanged": 1})
    told = str(kept_html(record))
    assert "a load left out" in told
    assert "a and a² swapped" in told
