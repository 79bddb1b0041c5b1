"""A problem sheet stands alone: question, given values, room for results and working; nothing that nobody can use."""

import pytest
from unit.sheets import NEUTRAL, Lettered, given_of, on_page, said_on, table_of, texts
from unit.test_sheet_clear import faults_of

from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Line, Page, Run, Text, walk
from pycore.forms.fields import default_form
from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.geometry import Box, Point
from pycore.practice.codes import Code
from pycore.sheet import skeleton
from pycore.sheet.media import PAPERS
from pycore.sheet.printed import printed_matter
from pycore.sheet.title_block import lower_cells

KINDS = ("problem", "construction", "overlay")
STAGES = ["estimated", "drawn", "calculated", "difference"]


@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_problem_sheet_asks_gives_and_leaves_room(slug: str):
    """Every calculator: a question, each phasor, four rows of results with the unit of the angle, the turning."""
    page = CALCULATORS[slug].sheet_page({"sheet": "problem"})
    rows = table_of(page)
    result = next(index for index, row in enumerate(rows) if row[0] == "result")
    assert STAGES == [row[0] for row in rows[result + 1 : result + 5]]
    assert all("°" in row for row in rows[result + 1 : result + 5])
    case = CALCULATORS[slug].case(default_form(CALCULATORS[slug].fields))
    companions = len(case.companions.arms) if case.companions else 0
    assert len(case.arms) + companions == len(given_of(page))
    said = said_on([page])
    assert "Estimate first, then draw, measure and calculate." in said
    assert "sense of" in said or "positive angles" in said


def test_directions_are_given_in_words_where_they_are_not_to_be_found():
    given = given_of(NEUTRAL.sheet_page({"sheet": "problem"}))
    assert ["I1", "18.4", "straight up"] == given[0]
    assert [["I2", "11.2", "120° clockwise"], ["I3", "24.6", "120° anticlockwise"]] == given[1:]
    unequal = given_of(NEUTRAL.sheet_page({"sheet": "problem", "a1": "20", "a2": "0", "a3": "35"}))
    assert [["I1", "18.4"], ["I2", "11.2"], ["I3", "24.6"]] == unequal


def test_the_example_has_squares_for_working():
    page = NEUTRAL.sheet_page({"sheet": "problem"})
    (head,) = [text for text in texts(page) if text.words == "working"]
    rules = [line.item for line in on_page(page, Line) if line.item.ink == "rule"]
    levels = {rule.start.y for rule in rules if rule.start.y == rule.end.y and rule.start.y < head.box.bottom}
    assert len(levels) >= 2


@pytest.mark.parametrize("slug", CALCULATORS)
@pytest.mark.parametrize("paper", ["A5", "A4"])
@pytest.mark.parametrize("printed", ["usual", "large"])
def test_no_sheet_prints_underscores_a_bare_link_or_what_is_done_on_the_page(slug: str, paper: str, printed: str):
    base = f"https://f.org/{slug}/"
    chosen = ReopenInfo(base, True, SetPlace("42C-332-3C2-9XZ", 3, 30, any_method=True, own_scale=True))
    for opening in (ReopenInfo(), ReopenInfo(f"http://localhost/{slug}/", True), ReopenInfo(base), chosen):
        pages = CALCULATORS[slug].pages({"paper": paper, "print": printed}, opening, KINDS)
        said = said_on(pages)
        assert "_" not in said and "#" not in said and "Share" not in said and "Open this sheet again" not in said


def test_a_code_is_printed_with_and_without_a_square_to_scan():
    code = Code(NEUTRAL.topic, "core", seed=5, number=2)
    form = {**NEUTRAL.practice_form(code), "sheet": "problem", "code": str(code)}
    for opening in (ReopenInfo("https://f.org/neutral-current/", True), ReopenInfo()):
        assert str(code) in said_on(NEUTRAL.pages(form, opening, ("problem",)))


def test_the_scale_that_a_learner_chooses_has_a_ruled_line():
    items, _ = skeleton.scale_line("1 cm = ____ A", Point(0.0, 0.0), 7.0, 80.0)
    assert ["1 cm = ", " A"] == [item.plain for item in walk(tuple(items)) if isinstance(item, Text)]
    (rule,) = [item for item in walk(tuple(items)) if isinstance(item, Line)]
    assert rule.end.x - rule.start.x == skeleton.RULE_ROOM


def test_all_angles_of_a_table_have_a_decimal_if_one_has():
    rows = table_of(NEUTRAL.sheet_page({}))[1:]
    assert ["0.0°", "120.0°", "120.0°", "37.2°", "87.5°"] == [row[3] for row in rows]


@pytest.mark.parametrize("slug", CALCULATORS)
@pytest.mark.parametrize("kind", KINDS)
def test_large_print_gives_the_drawing_a_page_and_its_table_words_on_the_next(slug: str, kind: str):
    """Nothing touches; the table says clockwise and anticlockwise, never a minus; title and scale are on both pages."""
    for paper in ("A4", "A3", "letter"):
        form = {"print": "page", "paper": paper, "sheet": kind}
        first, second, *_ = CALCULATORS[slug].pages(form, ReopenInfo(f"https://f.org/{slug}/", True), (kind,))
        assert not [text for text in texts(first) if "table" in text.group]
        assert table_of(second) and "minus means" not in said_on([second])
        for page in (first, second):
            assert [] == faults_of(page, Box(0.0, 0.0, page.width, page.height))
        assert "1 cm = " in said_on([first])


def test_the_example_in_large_print_is_drawn_at_the_scale_of_the_usual_sheet():
    scales = {printed: NEUTRAL.case({**default_form(NEUTRAL.fields), "print": printed}).sheet_plan().scale
              for printed in ("usual", "page", "large")}  # fmt: skip
    assert {"usual": 2.0, "page": 2.0, "large": 2.5} == scales


@pytest.mark.parametrize("paper", ["A4", "A3", "letter"])
def test_the_title_block_has_room_for_a_name_of_sixty_millimetres(paper: str):
    name, group, date = lower_cells(paper)
    assert name >= 60.0 and group >= 20.0 and date >= 20.0


HELP, SHORT_HELP = "Arrowhead on every tip.", "Arrowheads."
OF_SET = ReopenInfo("https://f.org/", True, SetPlace("42C-332-3C2-9XZ", 3, 30))
EASY_LETTERS = 2.3  # mm, the least capitals beside the words on drawing by hand


def _helps(page: Page) -> list[Lettered]:
    return [text for text in texts(page) if text.words.startswith((HELP, SHORT_HELP))]


@pytest.mark.parametrize("way", ["landscape", "portrait"])
@pytest.mark.parametrize("slug", CALCULATORS)
def test_a_problem_sheet_says_how_to_draw_for_a_photograph(slug: str, way: str):
    """On every paper but the smallest: outside the field, touching nothing, in letters that are read with ease."""
    for paper in [name for name in PAPERS if name != "A5"]:
        form = {"sheet": "problem", "paper": paper, "orientation": way}
        page, *_ = CALCULATORS[slug].pages(form, ReopenInfo("https://f.org/", True))
        (said,) = _helps(page)
        field = CALCULATORS[slug].case({**default_form(CALCULATORS[slug].fields), **form}).sheet_plan().layout.field
        assert not said.box.meets(field)
        assert min(run.size for run in _runs(page, said.words)) >= EASY_LETTERS, paper
        assert [] == faults_of(page), paper


def _runs(page: Page, words: str) -> list[Run]:
    return [run for item in walk(page.items) if isinstance(item, Text) and item.plain == words for run in item.runs]


def test_a_sheet_of_a_set_says_it_too_and_keeps_its_squares():
    """The neutral current, both ways round, with code and QR."""
    for way in ("landscape", "portrait"):
        page, *_ = NEUTRAL.pages({"sheet": "problem", "orientation": way}, OF_SET)
        assert 1 == len(_helps(page))
        assert "working" in [text.words for text in texts(page)] and [] == faults_of(page)


def test_only_a_method_with_dashes_asks_for_firm_ones():
    for method, dashes in (("parallelogram", True), ("components", True), ("tip-to-tail", False)):
        said = said_on(NEUTRAL.pages({"sheet": "problem", "method": method}))
        assert ("Firm dashes." in said) == dashes and HELP in said
    for kind in ("construction", "overlay"):
        assert HELP not in said_on(NEUTRAL.pages({"sheet": kind}))


def test_sheets_for_easy_reading_say_it_on_their_page_of_words():
    for printed in ("page", "large", "easy"):
        sheet, *others = NEUTRAL.pages({"sheet": "problem", "print": printed})
        assert [] == _helps(sheet) and HELP in said_on(others)


@pytest.mark.parametrize("way", ["landscape", "portrait"])
def test_the_field_of_a_problem_is_as_it_was(way: str):
    """What is printed where a learner draws does not depend on the words beside it: older sheets are read as newer."""
    form = {"sheet": "problem", "orientation": way, "method": "tip-to-tail"}
    field = NEUTRAL.case({**default_form(NEUTRAL.fields), **form}).sheet_plan().layout.field
    one, other = (printed_matter(NEUTRAL.pages(form, opening)[0], field) for opening in (ReopenInfo(), OF_SET))
    assert one == other
