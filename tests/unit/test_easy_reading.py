"""Large print and sheets for easy reading: laid out anew at their own scale, clear, true, one move to a line."""

import math

import pytest
from calculators.neutral_current.forms import form as form_of
from calculators.neutral_current.forms import forms
from unit.sheets import NEUTRAL, arrow_of, on_page, said_on, table_of, texts, vector
from unit.test_sheet_clear import faults_of, told

from pycore import lettering
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow, Line, Page, Shape, Text
from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.sheet.media import PAPERS

COUNT = 40
POINT = 25.4 / 72
ISSUE = SetPlace("3CD-K7M-2QX", 12, 30, any_method=False, own_scale=False)
WITH_CODE = ReopenInfo("https://folio.example.org/neutral-current/", True, ISSUE)
PRINTS = ("large", "easy")
KINDS = ("construction", "problem", "overlay")
ROOMY = [paper for paper in PAPERS if paper != "A5"]


def easy(number: int, kind: str, printed: str, paper: str = "") -> dict[str, str]:
    form = {**form_of(number), "sheet": kind, "print": printed, "start": ("yes", "no", "two")[number % 3],
            "further": "zero"}  # fmt: skip
    form["paper"] = paper or ("A4" if form["paper"] == "A5" else form["paper"])
    return form


@pytest.mark.parametrize("printed", PRINTS)
@pytest.mark.parametrize("kind", KINDS)
def test_no_text_touches_a_line_or_another_or_leaves_its_page(printed: str, kind: str):
    """Every method, order, paper and name; a QR code on half of the sheets."""
    faults = []
    for number in range(COUNT):
        form = easy(number, kind, printed)
        first, *further = NEUTRAL.pages(form, WITH_CODE if number % 2 else ReopenInfo())
        faults += [(number, fault) for fault in faults_of(first)]
        for page in further:
            faults += [(number, fault) for fault in faults_of(page, page.box.grown(-8.0))]
    assert [] == faults, told(faults)


def sizes(page: Page) -> list[tuple[float, float]]:
    """Em in points and height of capitals in mm of each run, an index apart, which the trade sets smaller."""
    return [
        (run.size / POINT, run.size / lettering.size_for_capitals(1.0, run.face))
        for placed in on_page(page, Text) for run in placed.item.runs
        if run.rise == 0
    ]  # fmt: skip


LETTERING = [("page", 18.0, 5.0), ("large", 18.0, 5.0), ("easy", 12.0, 3.0)]
"""Least size of type in points and of capitals in mm, by print style."""


@pytest.mark.parametrize(("printed", "least", "capitals"), LETTERING)
@pytest.mark.parametrize("kind", KINDS)
def test_all_lettering_is_as_large_as_promised(printed: str, least: float, capitals: float, kind: str):
    for number in range(0, COUNT, 4):
        for page in NEUTRAL.pages(easy(number, kind, printed)):
            assert least <= min(size for size, _ in sizes(page))
            assert capitals <= min(height for _, height in sizes(page)) + 1e-9


@pytest.mark.parametrize("printed", PRINTS)
def test_lines_are_thicker_in_large_print_and_the_scale_is_the_sheets_own(printed: str):
    """Lengths are true at the scale that the sheet says: nothing is an enlarged copy."""
    for number in range(COUNT):
        form = easy(number, "construction", printed)
        page = NEUTRAL.sheet_page(form)
        scale = next(o.value for o in NEUTRAL.answer(form, ("answer",)).outputs if o.name == "scale")
        for key in ("i1", "i2", "i3"):
            size = float(form[key].replace(",", "."))
            if size:
                assert abs(vector(arrow_of(page, key))) == pytest.approx(10.0 * size / scale, rel=1e-9)
        usual = NEUTRAL.sheet_page({**form, "print": "usual"})
        widths = [max(p.item.width for p in on_page(one, Arrow)) for one in (page, usual)]
        assert printed == "easy" or widths[0] > 1.5 * widths[1] or widths[1] < 0.5
        bars = [p.item for p in on_page(page, Line) if "check-bar" in p.names]
        assert {0, 50, 100} >= {round(abs(b.start.x - a.start.x)) for a in bars for b in bars
                                if a.start.y == b.start.y and abs(a.end.y - a.start.y) > 1 and b.end.y == a.end.y}


@pytest.mark.parametrize("printed", PRINTS)
@pytest.mark.parametrize("method", ["parallelogram", "tip-to-tail", "components"])
@pytest.mark.parametrize("start", ["yes", "no", "two"])
def test_a_problems_moves_stand_one_to_a_box_and_give_no_answer_away(printed: str, method: str, start: str):
    form = {"i1": "18.4", "i2": "11.2", "i3": "24.6", "sheet": "problem", "print": printed, "method": method,
            "start": start}  # fmt: skip
    _, *further = NEUTRAL.pages(form)
    said = " ".join(text.words for page in further for text in texts(page))
    boxes = [p.item for page in further for p in on_page(page, Shape)]
    assert 8 <= len(boxes) <= 18
    for answer in ("11.6", "58", "92", "56 mm", "123", "87.5"):
        assert answer not in said
    assert ("drawn for you" in said) is (start == "two")
    assert ("Mark a starting point" in said) is (start == "no")
    assert "180° minus the angle between the" in said if method == "tip-to-tail" else "180° less" not in said


def test_no_running_text_is_in_italics_or_in_capitals_only():
    for printed in PRINTS:
        for kind in KINDS:
            for page in NEUTRAL.pages(easy(3, kind, printed)):
                for placed in on_page(page, Text):
                    for run in placed.item.runs:
                        assert run.face != "italic" or len(run.text.strip()) == 1
                        words = [word.strip(".,:;") for word in run.text.split()]
                        assert [] == [word for word in words if word.isalpha() and word.isupper() and len(word) > 2]


def test_boxes_and_moves_of_a_construction_are_those_of_its_steps():
    form = {"i1": "18.4", "i2": "11.2", "i3": "24.6", "print": "easy"}
    _, *further = NEUTRAL.pages(form)
    shown = next(one for one in NEUTRAL.answer(form, ("workings",)).workings if one.on_sheet)
    moves = [block for block in shown.blocks if hasattr(block, "step")]
    assert len(moves) == len([p for page in further for p in on_page(page, Shape)])


@pytest.mark.parametrize("printed", PRINTS)
def test_paper_that_is_too_small_is_refused_kindly_and_the_usual_sheet_stands(printed: str):
    form = {"i1": "18.4", "i2": "11.2", "i3": "24.6", "print": printed, "paper": "A5"}
    answer = NEUTRAL.answer(form, ("answer", "sheet"))
    (fault,) = answer.faults
    assert "print" == fault.field and "A5" in fault.message and "A4" in fault.message
    assert [(("paper", "A4"),), (("paper", "A3"),)] == [offer.values for offer in fault.offers]
    assert NEUTRAL.pages(form) == NEUTRAL.pages({**form, "print": "usual"})


@pytest.mark.parametrize("paper", ROOMY)
@pytest.mark.parametrize("way", ["landscape", "portrait"])
def test_there_is_room_to_draw_on_every_paper_and_the_moves_are_on_upright_pages_of_it(paper: str, way: str):
    for printed in PRINTS:
        form = {"i1": "18.4", "i2": "11.2", "i3": "24.6", "print": printed, "paper": paper, "orientation": way,
                "sheet": "problem"}  # fmt: skip
        first, *further = NEUTRAL.pages(form)
        assert {(first.width, first.height)} == {PAPERS[paper] if way == "portrait" else PAPERS[paper][::-1]}
        assert {PAPERS[paper]} == {(page.width, page.height) for page in further}
        case = NEUTRAL.case(form)
        area = case.sheet_plan().layout.area
        assert area.width >= 100 and area.height >= 100
        assert math.isfinite(case.sheet_plan().factor)
        # Where there is room the tables of a problem, else one that has lines to write on.
        assert table_of(first)[0] in (["A", "mm", "angle"], ["A", "mm", "direction from I1"])


def test_every_sheet_has_a_page_of_moves_at_least():
    for form in forms(8):
        paper = "A4" if form["paper"] == "A5" else form["paper"]
        assert len(NEUTRAL.pages({**form, "print": "large", "paper": paper})) >= 2
        assert len(NEUTRAL.pages({**form, "print": "usual", "paper": paper})) == 1


def test_a_large_table_with_signs_says_beside_it_which_way_minus_turns():
    """It was on the next page only; where the column has no room it still is."""
    page = CALCULATORS["star-and-delta"]
    for rotation, said in (("clockwise", "anticlockwise"), ("anticlockwise", "clockwise")):
        sheet, *_ = page.pages({"print": "large", "sheet": "construction", "rotation": rotation})
        assert f"Angles: minus means {said}." in said_on([sheet])
    straight, *_ = CALCULATORS["add-phasors"].pages({"print": "large", "sheet": "construction"})
    assert "minus means" not in said_on([straight])
