"""One question of a paper asks for one result: in its sentences, on its sheet, in the mark scheme and in marking."""

import pytest

from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.pages.class_set import TOPICS
from pycore.practice.codes import Code
from pycore.practice.task import DRAWN, Task
from pycore.sheet.kinds import PROBLEM
from pycore.sums.case import SumCase
from pycore.sums.exam_question import ExamQuestion, exam_question
from pycore.sums.request import SheetRequest
from pycore.sums.rows import problem_rows
from pycore.sums.worksheet import worksheet_of
from pycore.words import plain
from pycore.words import question_paper as words

TIERS, METHODS = ("support", "core", "stretch"), ("any", "parallelogram", "tip-to-tail")


def problem(slug: str, tier: str, method: str) -> tuple[SumCase, Task]:
    """A problem of a paper, and what its drawing is marked by."""
    page = TOPICS[slug]
    case = page.case(page.practice_form(Code(page.topic, tier, method, "A4", 3, 2)))
    return case, page.task_of_case(case).by(DRAWN)


def question(case: SumCase, slug: str) -> ExamQuestion:
    """A problem in words."""
    task = TOPICS[slug].task_of_case(case)
    return exam_question(case, case.sheet_plan(), task, any_method=False, drawn=True)


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("tier", TIERS)
@pytest.mark.parametrize("slug", TOPICS)
def test_a_papers_sheet_has_room_for_what_is_marked_and_for_nothing_else(slug: str, tier: str, method: str):
    case, task = problem(slug, tier, method)
    results = worksheet_of(case, case.sheet_plan(), "", of_paper=True).results
    heads = [plain(one.head).split("/")[0] for one in results]
    symbol = plain(task.symbol)
    assert ([symbol, f"{symbol} from {plain(task.origin)}"] if task.angled else [symbol]) == heads


@pytest.mark.parametrize("tier", TIERS)
@pytest.mark.parametrize("slug", TOPICS)
def test_the_rows_of_a_papers_sheet_in_large_print_ask_for_nothing_else(slug: str, tier: str):
    case, task = problem(slug, tier, "any")
    arms = [plain(case.row_tag(arm.key)) for arm in case.arms]
    rows = [plain(row.symbol) for row in problem_rows(case, case.sheet_plan(), of_paper=True)]
    beside = [] if case.companions is None else [plain(case.notation.tags[arm.key]) for arm in case.companions.arms]
    asked = [row for row in rows if row not in beside]
    assert arms == asked[: len(arms)]
    assert plain(task.symbol) in [row.split("/")[0] for row in asked]
    assert len(asked) <= len(arms) + 1


def test_only_a_learners_sheet_of_a_question_paper_asks_for_one_result():
    """Sheets of a class set, and of a page, keep every result."""
    in_set = SheetRequest(PROBLEM, ReopenInfo(issue=SetPlace("", 1, 2)))
    in_paper = SheetRequest(PROBLEM, ReopenInfo(issue=SetPlace("", 1, 2, question="Question 1")))
    assert [False, False, True] == [one.of_paper for one in (SheetRequest(PROBLEM), in_set, in_paper)]
    case, _ = problem("power-triangle", "stretch", "any")
    heads = [plain(one.head) for one in worksheet_of(case, case.sheet_plan(), "").results]
    assert ["S₂/kVA", "S₂ from P", "S₁/kVA", "C_delta/µF", "C_star/µF"] == heads


def test_no_question_asks_to_measure_what_is_not_marked():
    for tier in TIERS:
        case, _ = problem("open-neutral", tier, "any")
        assert "measure" not in question(case, "open-neutral").question


@pytest.mark.parametrize("tier", TIERS)
def test_three_times_the_component_is_asked_for_and_not_the_component(tier: str):
    case, task = problem("sequence-components", tier, "any")
    asked = question(case, "sequence-components")
    assert asked.question.startswith("Find three times the")
    assert "divide" not in asked.question
    assert plain(task.symbol) in asked.asked


def test_the_scheme_says_size_and_angle_only_where_an_angle_is_asked_for():
    for key in ("resultant", "accuracy"):
        assert "where one is asked for" in words.part_line(key)


def test_a_delta_of_resistances_says_so_and_names_the_line_and_both_branches():
    page = TOPICS["star-and-delta"]
    form = page.practice_form(Code(page.topic, "core", "any", "A4", 3, 2))
    values = {"z1": "44", "z2": "25", "z3": "47", "volts": "110", "line": "3", "sequence": "123"}
    asked = question(page.case({**form, **values}), "star-and-delta")
    assert asked.given[0].startswith("Resistive loads Z₁₂ = 44")
    assert "branch currents I₃₁ and I₂₃, then find the line current I₃ = I₃₁ − I₂₃ by drawing" in asked.question


def test_loads_with_reactance_are_not_called_resistive():
    page = TOPICS["star-and-delta"]
    form = page.practice_form(Code(page.topic, "core", "any", "A4", 3, 2))
    assert "resistive" not in page.case({**form, "z1": "8 + j6"}).values_text().lower()
    alike = page.case({**form, "z1": "20", "z2": "", "z3": "", "connection": "star"}).values_text()
    assert alike.startswith("Three resistive loads of 20")
