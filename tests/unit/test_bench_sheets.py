"""What the bench says of sheets is measured: watched placings are real, collisions would be seen, pages are whole."""

import io

import pypdfium2 as pdfium
from bench import sheets
from calculators.neutral_current.forms import forms
from render.plotted import written

from pycore.drawing import Group, Line, Page
from pycore.geometry import Point
from pycore.sheet import labels


def test_a_hundredth_of_the_count_finds_labels_and_no_collision():
    found = sheets.counts(20)
    assert 20 == found["sheets"]
    assert found["labels"] > 50
    assert 0 < found["leaders"] < found["labels"]
    assert (0, 0, 0) == (found["touching"], found["outside"], found["left to the table"])


def test_a_stroke_outside_the_frame_would_be_counted():
    page = sheets.NEUTRAL.sheet_page(next(forms(1)))
    stray = Group((Line(Point(2, 2), Point(50, 50)),), step=1)
    assert [] == sheets.ink_outside(page)
    assert 1 == len(sheets.ink_outside(Page(page.width, page.height, (*page.items, stray))))


def test_watching_ends_and_leaves_placing_as_it_was():
    before = labels.place
    with sheets.watched() as seen:
        sheets.NEUTRAL.sheet_page(sheets.DEFAULT)
    assert before is labels.place
    ((seconds, placed, left),) = seen
    assert seconds > 0 and len(placed) > 5 and [] == left


def test_matplotlibs_sheet_has_the_same_words_on_the_same_page():
    page = sheets.NEUTRAL.sheet_page(sheets.DEFAULT)
    document = pdfium.PdfDocument(io.BytesIO(written([sheets.plot(page)])))
    words = document[0].get_textpage().get_text_range()
    assert 1 == len(document)
    assert "18.4" in words and "Neutral current" in words


def test_a_row_has_two_times_in_milliseconds_and_what_the_other_is():
    name, ours, theirs, unit, beside = sheets.many_sheets(2, 1)
    assert ("2 sheets in one PDF", "ms", "matplotlib") == (name, unit, beside)
    assert ours > 0
    assert theirs > 0
