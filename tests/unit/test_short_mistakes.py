"""Every mistake that a page can name has few words for a class's summary and for what a device counts."""

from itertools import product

import pytest

from pycore.calculators.add_phasors import words as add_phasors
from pycore.calculators.harmonics_in_the_neutral import words as harmonics
from pycore.calculators.registry import CALCULATORS
from pycore.calculators.sequence_components import words as sequence
from pycore.calculators.star_and_delta import words as star_delta
from pycore.forms.fields import default_form
from pycore.practice.codes import METHODS, TIERS, Code
from pycore.practice.ladder import Record
from pycore.render.practice import kept_html
from pycore.sums.page import SumPage
from pycore.words import circuit_mistakes, mistakes
from pycore.words.short_mistakes import SHORT

PAGES = [page for page in CALCULATORS.values() if page.topic is not None]
WORDED = (mistakes.NAMES, circuit_mistakes.CIRCUITS, *(page.MISTAKES for page in (add_phasors, harmonics, sequence,
                                                                                 star_delta)))  # fmt: skip


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.slug)
def test_every_mistake_of_every_task_has_a_short_name(page: SumPage) -> None:
    assert page.topic is not None
    codes = [Code(page.topic, *more, seed=4, number=number) for *more, number in product(TIERS, METHODS, range(1, 6))]
    found = {
        mistake.key
        for form in (default_form(page.fields), *(page.practice_form(code) for code in codes))
        for mistake in page.task(form).mistakes
    }
    assert found
    assert found <= SHORT.keys()


def test_whatever_has_words_has_short_ones_and_none_is_told_twice() -> None:
    assert {key for worded in WORDED for key in worded} <= SHORT.keys()
    assert len(dict.fromkeys(SHORT.values())) == len(SHORT)
    assert max(len(said) for said in SHORT.values()) <= 42


def test_what_a_device_counts_is_told_in_these_words() -> None:
    record = Record(1, "0.any", mistakes={"load-left-out": 2, "a-exchanged": 1})
    told = str(kept_html(record))
    assert "a load left out" in told
    assert "a and a² exchanged" in told
