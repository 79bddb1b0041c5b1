"""Large print and easy reading on every page of the shelf: clear, true, large, and no answer in a problem's moves."""

import math
import re

import pytest
from host import shelf
from unit.sheets import arrow_of, on_page, table_of, texts, vector
from unit.test_easy_reading import sizes
from unit.test_sheet_clear import faults_of, told

from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Arrow, Page, Shape
from pycore.forms.fields import default_form
from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.sums.easy_reading import lists_of
from pycore.sums.request import SheetRequest

COUNT = 6
WITH_CODE = ReopenInfo("https://folio.example.org/a-page/", True, SetPlace("3CD-K7M-2QX", 12, 30))
KINDS = ("problem", "construction", "overlay")
LEAST = {"large": 18.0, "easy": 12.0}
"""Points of the smallest text."""


def easy(slug: str, number: int) -> dict[str, str]:
    """A form of the page, every print and kind in turn, on papers that have room."""
    form = shelf.form(slug, number)
    printed = ("large", "easy")[number % 2]
    paper = "A4" if form["paper"] in ("A5", "A2") else form["paper"]
    return {**form, "paper": paper, "print": printed, "sheet": KINDS[number % 3], "start": ("two", "no")[number % 2]}


def pages(slug: str, number: int) -> tuple[dict[str, str], tuple[Page, ...]]:
    form = easy(slug, number)
    return form, CALCULATORS[slug].pages(form, WITH_CODE if number % 2 else ReopenInfo())


@pytest.mark.parametrize("slug", CALCULATORS)
def test_nothing_touches_and_all_lettering_is_as_large_as_promised(slug: str):
    faults = []
    for number in range(COUNT):
        form, (first, *further) = pages(slug, number)
        assert further
        faults += [(number, fault) for fault in faults_of(first)]
        for page in further:
            faults += [(number, fault) for fault in faults_of(page, page.box.grown(-8.0))]
        least = min(size for page in (first, *further) for size, _ in sizes(page))
        assert LEAST[form["print"]] <= least, (number, least)
    assert [] == faults, told(faults)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_phasors_are_as_long_as_the_scale_that_the_sheet_says(slug: str):
    page = CALCULATORS[slug]
    for number in (0, 1):
        form = {**easy(slug, number), "sheet": "construction"}
        scale = next(output.value for output in page.answer(form, ("answer",)).outputs if output.name == "scale")
        sheet, case = page.sheet_page(form), page.case(form)
        drawn = {placed.phasor for placed in on_page(sheet, Arrow)}
        assert {arm.key for arm in case.arms} <= drawn
        for arm in case.arms:
            assert abs(vector(arrow_of(sheet, arm.key))) == pytest.approx(10.0 * arm.size / scale, rel=1e-9)


@pytest.mark.parametrize("slug", CALCULATORS)
def test_two_phasors_are_drawn_for_the_learner_where_the_whole_drawing_has_them(slug: str):
    """The part-drawn support sheet, usual and in both prints."""
    page = CALCULATORS[slug]
    for printed in ("usual", "large", "easy"):
        form = {"print": printed, "sheet": "problem", "start": "two"}
        sheet, whole = page.sheet_page(form), page.sheet_page({**form, "sheet": "construction"})
        keys = [placed.phasor for placed in on_page(sheet, Arrow) if placed.phasor]
        arms = [arm.key for arm in page.case(form).arms]
        assert len(set(keys) & set(arms)) == min(2, len(arms))
        assert set(keys) <= {*arms, "c1"}
        for key in keys:
            assert arrow_of(sheet, key) == arrow_of(whole, key)


@pytest.mark.parametrize("slug", CALCULATORS)
@pytest.mark.parametrize("printed", ["large", "easy"])
def test_a_problems_moves_give_no_result_away(slug: str, printed: str):
    """By every method: none of the figures that the page works out stands on the pages of moves."""
    page = CALCULATORS[slug]
    methods = [choice.value for field in page.fields if field.name == "method" for choice in field.options]
    for method in methods:
        form = {"print": printed, "sheet": "problem", "method": method, "start": "no"}
        _, *further = page.pages(form)
        case = page.case(form)
        lists = lists_of(case, case.sheet_plan(), SheetRequest("problem"))
        moves = next(listed.lines for listed in lists if listed.ticked)
        assert len(moves) == len([placed for one in further for placed in on_page(one, Shape)])
        assert 7 <= len(moves) <= 18
        assert "Mark a starting point. Leave space on all sides." in moves
        said = " ".join(moves).replace("\u00a0", " ")
        typed = " ".join(default_form(page.fields).values())
        figures = [output.text for output in page.answer(form, ("answer",)).outputs]
        for figure in figures:
            number = figure.partition("\u00a0")[0].partition(" ")[0].strip("°−")
            if len(number) > 2 and number not in typed:
                assert number not in said.replace("180", "").replace("120", "").replace("60", ""), (method, figure)


@pytest.mark.parametrize("slug", CALCULATORS)
@pytest.mark.parametrize("rotation", ["clockwise", "anticlockwise"])
@pytest.mark.parametrize("printed", ["page", "large", "easy"])
def test_an_angle_turns_as_its_sheet_says(slug: str, rotation: str, printed: str):
    """Each arrow's direction on paper, from the angle in the table and the sense of rotation beside it; beside a
    drawing in large print from its sign and the sentence about that."""
    page = CALCULATORS[slug]
    for first, base in (("up", 90.0), ("right", 0.0)):
        form = {"rotation": rotation, "first": first, "print": printed, "sheet": "construction", "angles": "protractor"}
        sheet, *further = page.pages(form)
        said = " ".join(text.words for one in further for text in texts(one)).replace("\u00a0", " ")
        minus = re.findall(r"minus means (clockwise|anticlockwise)\.", said)
        assert len(minus) == (1 if printed == "large" else 0)
        case, rows = page.case(form), table_of(further[0] if printed == "page" else sheet)[1:]
        at = len(case.companions.arms) if case.companions else 0
        checked = 0
        for arm, row in zip(case.arms, rows[at:], strict=False):
            along = vector(arrow_of(sheet, arm.key))
            degrees = math.degrees(math.atan2(along.imag, along.real))
            told = float(row[3].rstrip("°").replace("−", "-"))
            against = minus == ["anticlockwise"] or row[4:] == ["clockwise"]
            assert abs((degrees - base - (-told if against else told) + 180.0) % 360.0 - 180.0) < 0.06
            checked += 1
        assert checked >= 2


@pytest.mark.parametrize("slug", CALCULATORS)
def test_what_is_done_with_every_problem_is_no_given_value(slug: str):
    page = CALCULATORS[slug]
    case = page.case({"print": "easy", "sheet": "problem"})
    values, moves, _ = lists_of(case, case.sheet_plan(), SheetRequest("problem"))
    assert not any("fill in the table" in line or line.startswith("Estimate") for line in values.lines)
    assert moves.lines[0].startswith("Estimate ")


def moves_of(slug: str, form: dict[str, str]) -> tuple[str, ...]:
    """The moves of a problem for easy reading."""
    case = CALCULATORS[slug].case({**form, "print": "easy", "sheet": "problem"})
    lists = lists_of(case, case.sheet_plan(), SheetRequest("problem"))
    return next(listed.lines for listed in lists if listed.ticked)


@pytest.mark.parametrize(("slug", "form", "said"), [
    ("add-phasors", {"combine": "difference", "p3": "7 at -100"},
     ["I₂ by 180°: that is −I₂", "I₃ by 180°: that is −I₃"]),
    ("add-phasors", {}, []),
    ("star-and-delta", {}, ["I₃₁ by 180°: that is −I₃₁"]),
    ("star-and-delta", {"connection": "star", "line": "2"}, ["V₃ by 180°: that is −V₃"]),
    ("sequence-components", {"part": "positive"},
     ["I₂ by 120° anticlockwise: that is aI₂", "I₃ by 240° anticlockwise: that is a²I₃"]),
    ("sequence-components", {"part": "negative", "rotation": "clockwise"},
     ["I₂ by 240° clockwise: that is a²I₂", "I₃ by 120° clockwise: that is aI₃"]),
    ("sequence-components", {"part": "zero"}, []),
    ("neutral-current", {}, []),
])  # fmt: skip
def test_a_problems_moves_say_which_phasors_are_turned(slug: str, form: dict[str, str], said: list[str]):
    moves = moves_of(slug, form)
    turns = [move for move in moves if move.startswith("Turn ")]
    assert turns == [f"Turn {one}. Write its angle in the table." for one in said]
    lengths = next(place for place, move in enumerate(moves) if move.startswith("Use the scale to find the length"))
    assert all(moves.index(turn) < lengths for turn in turns)


def test_rows_too_many_for_large_print_across_the_paper_stand_upright_and_that_is_said():
    page = CALCULATORS["add-phasors"]
    form = {f"p{number}": f"{10 + number} at {50 * number}" for number in range(1, 7)}
    form |= {"print": "large", "orientation": "landscape", "resultant": "returning"}
    answer = page.answer(form, ("answer", "sheet"))
    assert answer.sheet.height > answer.sheet.width
    assert any("so the sheet is portrait" in str(notice) for notice in answer.notices)
    assert [] == faults_of(answer.sheet)
    usual = page.answer({**form, "print": "usual"}, ("answer", "sheet"))
    assert usual.sheet.height < usual.sheet.width
    assert not any("so the sheet is portrait" in str(notice) for notice in usual.notices)


@pytest.mark.parametrize("slug", ["series-circuit", "parallel-circuit"])
def test_both_scales_stand_on_the_sheet_and_their_check_on_the_next(slug: str):
    page = CALCULATORS[slug]
    for printed in ("large", "easy"):
        first, *further = page.pages({"print": printed})
        beside = " ".join(text.words for text in texts(first) if text.group == "words")
        assert 2 == beside.count("1\u00a0cm") and "for " in beside
        said = " ".join(text.words for one in further for text in texts(one))
        assert "A bar of" in said and ", or" in said
        assert "angle" == table_of(first)[0][-1]
        assert all(math.isfinite(placed.item.tip.x) for placed in on_page(first, Arrow))
