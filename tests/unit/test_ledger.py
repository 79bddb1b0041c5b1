"""Tables over pages: what has no title goes on what stands above it, and never stands beside the code of the page."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from pycore.drawing import Group, Item, Text
from pycore.sheet import ledger
from pycore.sheet.ledger import ColumnHeading, Ledger

LINES = Ledger("Worked solution", "7AB", (), (), (ColumnHeading(("",), "start"),), [(("a line",),)] * 34, "", bare=True)
TABLE = Ledger("", "7AB", (), (), (ColumnHeading(("order",)), ColumnHeading(("L1",))), [(("1",), ("2",))], "")


def texts(items: Iterable[Item]) -> Iterator[Text]:
    """Every text of a page."""
    for item in items:
        if isinstance(item, Group):
            yield from texts(item.items)
        elif isinstance(item, Text):
            yield item


def pages_of(ledgers: list[Ledger]) -> list[list[Text]]:
    """The texts of each page."""
    count = ledger.page_count(ledgers, "A4")
    made = ledger.pages(ledgers, "A4", [f"page {number + 1} of {count}" for number in range(count)], "")
    return [list(texts(page.items)) for page in made]


def heights(ledgers: list[Ledger]) -> list[dict[str, float]]:
    """Where each text stands, page by page."""
    return [{text.plain: text.at.y for text in page} for page in pages_of(ledgers)]


def test_a_table_without_a_title_begins_a_page_below_the_code():
    full = [replace(LINES, rows=LINES.rows[:1] * count) for count in range(20, 40)]
    most = [one for one in full if ledger.page_count([one], "A4") == 1][-1]
    first, second = heights([most, TABLE])
    assert "order" not in first
    assert second["order"] < second["7AB  page 2 of 2"] - 3.0


def test_lines_of_text_are_parted_over_pages_and_a_table_is_not():
    few = [Ledger("Question", "7AB", (), (), TABLE.headings, [(("1",), ("2",))] * 20, ""), LINES]
    first, second = heights(few)
    assert "Worked solution" in first
    assert "a line" in first
    assert "a line" in second


def test_a_table_that_stands_apart_begins_a_page():
    apart = Ledger("Question 2", "7AB", (), (), TABLE.headings, TABLE.rows, "", apart=True)
    assert [True, False] == ["Question 2" not in page for page in heights([replace(LINES, rows=LINES.rows[:5]), apart])]


def test_a_table_that_no_page_holds_begins_below_another_and_one_that_a_page_holds_does_not():
    few = Ledger("Question", "7AB", (), (), TABLE.headings, [(("1",), ("2",))] * 20, "")
    long, short = (replace(few, title="Mistakes", rows=few.rows[:1] * count) for count in (60, 30))
    assert "Mistakes" in heights([few, long])[0]
    assert "Mistakes" not in heights([few, short])[0]
    assert 2 == len(heights([few, short]))


def test_lines_of_text_stand_closer_than_rows():
    """A worked solution had a last line on a page of its own."""
    lines, rows = ([one.at.y for page in pages_of([made]) for one in page if one.plain == "a line"] for made in (
        replace(LINES, rows=LINES.rows[:9]), replace(LINES, rows=LINES.rows[:9], bare=False)
    ))  # fmt: skip
    assert lines[0] - lines[-1] < 0.85 * (rows[0] - rows[-1])
