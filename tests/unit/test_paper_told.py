"""What the marking of a question paper tells: near misses, ranges that do not add up, wrong units, blanks; what an
exam's sheet says and does not say; the decimal mark of the college."""

import re

import pytest

from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.forms.opening import SetPlace
from pycore.geometry import Point
from pycore.pages import class_set
from pycore.pages.class_job import key_job
from pycore.pages.question_paper import FIELDS, read_paper
from pycore.pages.question_paper_job import papers_job, scheme_job
from pycore.pages.question_paper_marks import PaperMarking, marking_of
from pycore.pages.question_paper_scheme import overview
from pycore.render.paper_marks import marks_html
from pycore.words import cautions
from pycore.words import paper_marks as words
from pycore.words.inputs import with_mark
from pycore.words.phrase import with_symbols
from pycore.words.sheet import EXAM_STAGES, issued_notes
from pycore.words.sums import DRAWN_ROUTINE, ROUTINE

OWN = default_form(FIELDS) | {
    "questions": "1", "learners": "2",
    "q1-link": "https://folio.example/neutral-current/#v=3&i1=9.2&i2=14.7&i3=6.5&a1=0&a2=0&a3=0",
}  # fmt: skip


def marked(text: str, **form: str) -> PaperMarking:
    """A table marked: the right answer is 7.24 A at 101° clockwise."""
    marking = marking_of(read_paper(OWN | form, "Ada Lark\nBen Stone"), text)
    for _ in marking.steps():
        pass
    assert not marking.refused
    return marking


def test_a_near_miss_says_how_far_it_is_off_and_who_decides():
    """It said "no typical mistake"."""
    (one,) = marked("Ada Lark; 1; ; 7.35 A at 101 clockwise").results
    (remark,) = (text for text in one.remarks if "nearly right" in text)
    assert "size 0.1" in remark and "0.072" in remark and "allowed" in remark and "you decide" in remark
    (one,) = marked("Ada Lark; 1; ; 7.24 A at 101.8 clockwise", decimal="comma").results
    (remark,) = (text for text in one.remarks if "nearly right" in text)
    assert "angle 0," in remark and "0,50° allowed" in remark
    for right_or_far in ("7.24 A at 101 clockwise", "30.4 A at 101 clockwise"):
        (one,) = marked(f"Ada Lark; 1; ; {right_or_far}").results
        assert not [text for text in one.remarks if "nearly right" in text]


def test_parts_that_add_up_to_more_than_the_range_say_why():
    told = 0
    for answer in ("3 A at 105", "3 A at 330", "4 A at 105", "9 A at 60", "7.24 A at 101"):
        (one,) = marked(f"Ada Lark; 1; {answer} clockwise; 7.24 A at 101 clockwise").results
        sums = tuple(sum(ends) for ends in zip(*(marks for _, marks in one.marks), strict=True))
        assert (sums != one.total) == (words.NOT_TOGETHER in one.remarks)
        told += sums != one.total
    assert told == 3


def test_wrong_units_and_blanks_are_counted_with_the_mistakes():
    marking = marked("Ada Lark; 1; ; 7.24 mA at 101 clockwise\nBen Stone; 1; 7.24 A at 101 clockwise; ")
    assert ({"wrong unit": 1, "no answer": 2}) == dict(marking.counted())
    assert "wrong unit: 1" in marks_html(marking)
    mistakes = {one["name"]: one["mistakes"] for one in marking.entry()["marks"]}
    assert {"Ada Lark": ["wrong unit", "no answer"], "Ben Stone": ["no answer"]} == mistakes


def pages_of(job) -> str:
    """All text of a PDF, read by another program."""
    import pymupdf

    while not job.ended:
        job.go_on(50)
    _, data = job.result()
    with pymupdf.open(stream=data) as document:
        return " ".join(" ".join(page.get_text() for page in document).split())


@pytest.mark.parametrize("asks", ["both", "drawing"])
def test_an_exams_sheet_has_no_words_of_practice(asks: str):
    """It told learners to estimate first, to ask their examining body, and had room for an estimate."""
    text = pages_of(papers_job(read_paper(OWN | {"q1-asks": asks}), [1], "https://folio.example/", Point(1.0, 1.0)))
    assert "Question 1" in text and EXAM_STAGES[0] in text
    for said in (ROUTINE, DRAWN_ROUTINE, "Estimate", "estimated", "difference", cautions.EXAMINING_BODY, "“Check”"):
        assert said not in text


def test_a_class_sets_sheet_still_says_to_ask():
    assert cautions.EXAMINING_BODY in issued_notes(SetPlace("", 1, 2))[-1]
    assert "Use the method named below." == issued_notes(SetPlace("", 1, 2, question="Question 1"))[-1]


def test_the_schemes_own_sentences_have_the_colleges_decimal_mark():
    papers = (read_paper(OWN | {"decimal": mark}) for mark in ("comma", "point"))
    comma, point = (" ".join(map(str, overview(paper).notes)) for paper in papers)
    assert "within 0,5°" in comma and "0.5" not in comma
    assert "within 0.5°" in point
    form = default_form(FIELDS) | {"questions": "1", "q1-topic": "sequence-components", "decimal": "comma"}
    text = pages_of(scheme_job(read_paper(form | {"learners": "1"}), Point(1.0, 1.0)))
    assert "−0,5 + j0,866" in text and "0.866" not in text


def test_an_error_has_the_decimal_mark_of_the_form_and_what_was_typed_as_it_was():
    from pycore.calculators.registry import CALCULATORS

    page = CALCULATORS["neutral-current"]
    with pytest.raises(InputError) as refused:
        page.case(default_form(page.fields) | {"i2": "9.2.1", "decimal": "comma"})
    (fault,) = refused.value.faults
    assert "“9.2.1”" in fault.message and "11,2 A" in fault.message
    assert "a “1.5” b 2,5 c." == with_mark("a “1.5” b 2.5 c.", ",")


@pytest.mark.parametrize("unit", ["V", "S"])
def test_a_unit_behind_in_is_no_symbol(unit: str):
    """It slanted like the symbol of a voltage."""
    assert (f"Calculate it in {unit}, and its angle.",) == with_symbols(f"Calculate it in {unit}, and its angle.")
    assert 3 == len(with_symbols("The voltage V is measured."))


@pytest.mark.parametrize(("topic", "tier"), [("add-phasors", "core"), ("two-wattmeters", "stretch")])
def test_given_values_have_the_minus_of_print_on_paper_and_that_of_a_keyboard_in_a_table(topic: str, tier: str):
    """The rows of a key printed a hyphen: "12.3 at -150"."""
    form = {"questions": "1", "q1-topic": topic, "q1-tier": tier, "learners": "4", "overlays": "no"}
    printed = pages_of(scheme_job(read_paper(default_form(FIELDS) | form), Point(1.0, 1.0)))
    assert re.search(r" −\d", printed)
    assert not re.search(r"(?<!\S)-\d", printed)
    group = class_set.read_set(default_form(class_set.FIELDS) | {"topic": topic, "tier": tier, "learners": "4"})
    job = key_job(group)
    while not job.ended:
        job.go_on(50)
    _, table = job.result()
    assert table is not None
    assert b"-" in table and b" '-" not in table and "−".encode() not in table.split(b"\r\n", 1)[1]
