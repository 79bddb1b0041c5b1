"""Tables on paper: columns keep apart on a sheet, and a key's small tables share a page."""

import math
from itertools import combinations, pairwise

import pytest
from unit.sheets import Lettered, texts

from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Page
from pycore.forms.fields import default_form
from pycore.pages import class_key, class_set, key_mistakes
from pycore.pages.class_job import learners_of, row_for
from pycore.practice.key import KeyRow
from pycore.words import plain

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
    titles = ("Key: ", "Values and intermediate", "Answers from typical mistakes")
    assert all(any(one.words.startswith(title) for page in pages for one in texts(page)) for title in titles)
    assert any(one.words.startswith(titles[1]) for one in texts(pages[0]))
    for row in rows:
        told = [one.words for page in pages for one in texts(page)].count(row.code)
        assert 4 == told  # answers, values, and two tables of mistakes
    for page in pages:
        assert not [(one, other) for one, other in combinations(texts(page), 2) if one.box.meets(other.box)]


def test_the_answers_of_a_class_of_thirty_stand_on_one_page_a_line_for_each():
    """They had two lines each, on two pages; the whole key had ten."""
    rows, pages = _key(30)
    found = [one for one in texts(pages[0]) if one.words in {row.code for row in rows}]
    assert 30 == len(found)
    assert 5 == len(pages)
    for page in pages:
        assert not [(one, other) for one, other in combinations(texts(page), 2) if one.box.meets(other.box)]


def test_a_mistake_with_the_right_size_or_a_multiple_of_it_has_no_column():
    """The lengths of two lines swapped filled a column with the right answers, in brackets."""
    rows, _ = _key(30)
    tables = list(key_mistakes.tables("A4", "532", ("N",), rows, ("drawn", "calculated")))
    legends = " ".join(text for one in tables for _, text in one.legend)
    notes = " ".join(tables[0].notes)
    for mistake in ("the lengths of I₁ and I₂ are swapped", "the decimal mark is one place too far to the right"):
        assert mistake not in legends
        assert mistake in notes
    assert "10\u00a0times the right answer: the decimal mark is one place too far to the right" in notes
    assert "I₁ was left out" in legends.split("drawn:")[0], "made in both ways, it stands once"
    assert [notes.count("I₁ was left out"), legends.count("I₁ was left out")] == [0, 1]


def test_no_table_of_mistakes_is_left_with_a_column_or_two():
    """Forty-five columns stood on tables of 22, 22 and 1."""
    group = class_set.read_set({**default_form(class_set.FIELDS), "learners": "6", "tier": "stretch"})
    rows = [row_for(group, learner) for learner in learners_of(group) if learner is not None]
    counts = [len(one.legend) for one in key_mistakes.tables("A4", "542", ("N",), rows, ("drawn", "calculated"))]
    assert len(counts) > 1
    assert min(counts) > 0.8 * max(counts)


def test_the_key_has_the_voltages_that_are_calculated_before_they_are_drawn():
    group = class_set.read_set(default_form(class_set.FIELDS) | {"learners": "2", "topic": "series-circuit"})
    rows = [row_for(group, learner) for learner in learners_of(group) if learner is not None]
    ledger = class_key.values(class_key.head_of(group, rows, (2, 2)), rows)
    heads = [plain(heading.lines[0]) for heading in ledger.headings]
    for row, line in zip(rows, ledger.rows, strict=True):
        case = group.topic.case(next(one.form for one in learners_of(group) if one and one.place == row.place))
        told = [plain(line[heads.index(symbol)][0]).split("\u00a0V")[0] for symbol in ("V_R", "V_L", "V_C")]
        assert [float(one) for one in told] == pytest.approx([arm.size for arm in case.arms], rel=2e-3)


def test_a_long_table_of_a_key_goes_on_over_pages_with_every_line_once():
    rows, pages = _key(40)
    firsts = [page for page in pages if any(one.words.startswith("Key: ") for one in texts(page))]
    assert len(firsts) > 1
    codes = [one.words for page in firsts for one in texts(page)]
    assert all(codes.count(row.code) >= 1 for row in rows)
    assert math.isclose(firsts[0].width, 297.0)
