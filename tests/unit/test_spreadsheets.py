"""A cell that a spreadsheet could run is defused, whatever sign the spreadsheet splits a line at."""

import csv
import io
import itertools

import pytest

from pycore.practice import tables
from pycore.words import class_set, marks

SPLITS = (",", ";", "\t", " ", "|", ":")
"""What spreadsheets offer as separators when a table is opened."""
SIGNS = ("=", "+", "-", "@", "＝", "＋", "－", "＠")
FORMULAS = (
    "1+1", "HYPERLINK(\"http://example.org\")", "cmd|' /C calc'!A0",
)  # fmt: skip
CELLS = (
    *(f"{sign}{formula}" for sign, formula in itertools.product(SIGNS, FORMULAS)),
    *(f"Ann{split}{sign}1" for split, sign in itertools.product(SPLITS, ("=", "＠"))),
    "Ann; =1+1", "Ann,\t@SUM(A1)", ' "=1+1"', "\t=1", "\r=1", "Ann\n=1", " =1", "\u00a0=1", "\u200b=1", "\ufeff=1",
    "﹦1", "'=1", "''+1", "Ann '=1", "=1;'=2;''=3", "a -b", "a  =b",
)  # fmt: skip


def test_there_are_over_forty_such_cells():
    assert len(set(CELLS)) > 50


def parts_of(line: str, split: str) -> list[str]:
    """The cells that a line could become, with its quotes heeded or not."""
    rows: list[list[str]] = []
    for quoting in (csv.QUOTE_MINIMAL, csv.QUOTE_NONE):
        rows += csv.reader(io.StringIO(line, newline=""), delimiter=split, quoting=quoting)
    return [cell for row in rows for cell in row]


def runs(cell: str, split: str) -> bool:
    """Whether a spreadsheet could take a cell for a formula: after blanks and quotes, its first sign is one of them."""
    bare = cell.strip(" \t\r\n\u00a0\u200b\u2060\ufeff\"")
    dash = split == " " and len(bare) == 1
    return bare[:1] in (*SIGNS, "﹦", "﹢", "﹣", "﹫") and bool(bare) and not dash


@pytest.mark.parametrize("mark", [".", ","], ids=["point", "comma"])
@pytest.mark.parametrize("cell", CELLS)
def test_no_part_of_a_cell_can_run_at_any_separator(cell: str, mark: str):
    line = tables.write([["Amber", cell, "7"]], mark).removeprefix(tables.BYTE_ORDER_MARK)
    for split in SPLITS:
        assert [] == [part for part in parts_of(line, split) if runs(part, split)]


@pytest.mark.parametrize("mark", [".", ","], ids=["point", "comma"])
@pytest.mark.parametrize("cell", CELLS)
def test_each_is_read_back_as_it_was(cell: str, mark: str):
    if "\r" in cell:
        return  # A carriage return within a cell is read as a line break.
    written = tables.write([["Amber", cell, "7"]], mark)
    assert ("Amber", cell.strip(), "7") == tables.read(written)[0].cells


@pytest.mark.parametrize("cell", ["Anna-Maria", "Smith - Jones", "A&B", "7.5 A", "Zoë = Zoe"])
def test_what_cannot_run_stays_as_it_is(cell: str):
    assert cell == tables.defused(cell)


def test_our_own_numbers_stay_numbers():
    assert "-7.5" == tables.defused(tables.ascii_number("−7.5"))


@pytest.mark.parametrize(("mark", "name"), [(".", "comma"), (",", "semicolon")])
def test_the_page_says_which_separator_to_choose(mark: str, name: str):
    separator = tables.separator(mark)
    assert f"a{separator}b\r\n" == tables.write([["a", "b"]], mark).removeprefix(tables.BYTE_ORDER_MARK)
    for said in (class_set.saved_key(separator), marks.saved(separator)):
        assert f"choose {name} as the separator" in said
