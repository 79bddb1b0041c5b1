"""Tables on paper: columns keep apart on a sheet, and a key's small tables share a page."""

import math
from itertools import combinations, pairwise

import pytest
from unit.sheets import Lettered, texts

from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Page
from pycore.forms.fields import default_form
from pycore.pages import class_key, class_set
from pycore.pages.class_job import learners_of, row_for
from pycore.practice.key import KeyRow

LEAST_GAP = 1.9
"""mm between two columns of figures."""


def _rows(found: list[Lettered]) -> list[list[Lettered]]:
    """Texts of a table by their base lines, each from left to right."""
    rows: dict[float, list[Lettered]] = {}
    for one in found:
        rows.setdefault(round(one.box.top - (one.box.top - one.box.bottom) / 2, 0), []).append(one)
    return [sorted(row, key=lambda one: one.box.left) for row in rows.values()]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_two_figures_of_a_solved_sheets_table_never_run_together(slug: str):
    """56.0 and 120.0° stood 1.3 mm apart: with capitals of 3.5 mm they were read as one."""
    page = CALCULATORS[slug].pages({"sheet": "construction", "orientation": "landscape"}, kinds=("construction",))[0]
    found = [one for one in texts(page) if "table" in one.group and one.words[0].isdigit()]
    gaps = [right.box.left - left.box.right for row in _rows(found) for left, right in pairwise(row)]
    assert gaps and min(gaps) >= LEAST_GAP


def _key(learners: int) -> tuple[list[KeyRow], list[Page]]:
    group = class_set.read_set({**default_form(class_set.FIELDS), "learners": str(learners)})
    rows = [row_for(group, learner) for learner in learners_of(group) if learner is not None]
    return rows, list(class_key.pages(group, rows, (learners, learners)))


def test_the_small_tables_of_a_key_share_a_page_and_lose_no_line():
    """For three learners it had a page for each table, nearly empty."""
    rows, pages = _key(3)
    titles = ("Key: ", "Answers from typical drawing mistakes", "Answers from typical calculation mistakes")
    tables = [one for page in pages for one in texts(page) if one.words.startswith(titles)]
    assert len(pages) < len(tables)
    for row in rows:
        told = [one.words for page in pages for one in texts(page)].count(row.code)
        assert len(tables) == told
    for page in pages:
        assert not [(one, other) for one, other in combinations(texts(page), 2) if one.box.meets(other.box)]


def test_a_long_table_of_a_key_goes_on_over_pages_with_every_line_once():
    rows, pages = _key(40)
    firsts = [page for page in pages if any(one.words.startswith("Key: ") for one in texts(page))]
    assert len(firsts) > 1
    codes = [one.words for page in firsts for one in texts(page)]
    assert all(codes.count(row.code) >= 1 for row in rows)
    assert math.isclose(firsts[0].width, 297.0)
