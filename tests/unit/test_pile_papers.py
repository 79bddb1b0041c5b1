"""Sheets of question papers in a pile: whose they are, their marks by part, and the way into the paper's answers."""

import json
from typing import Any

import pytest
from host.piles import PAPER as FORM
from host.piles import PAPERS, SET
from host.piles import row_of_paper as row

from pycore import api
from pycore.pages.pile import entry_of, read_pile
from pycore.pages.pile_papers import kept_papers, paper_marks_of
from pycore.pages.question_paper_marks import marking_of
from pycore.practice.class_set import Learner

FULL = {"scale": 1, "directions": 2, "lengths": 2, "resultant": 2}


def paper() -> Any:
    """The paper as the device keeps it."""
    return kept_papers(PAPERS)[0].paper


def sheet(question: int, place: int) -> Learner:
    """A learner's problem of a question."""
    learners = [one for one in paper().questions[question - 1].learners() if one is not None]
    return learners[place - 1]


def ask(**request: Any) -> dict[str, Any]:
    """A reply of the api."""
    reply: dict[str, Any] = json.loads(api.handle(json.dumps({"do": "pile", "papers": PAPERS, **request}))[0])
    return reply


def put(rows: list[dict[str, Any]], text: str = "") -> tuple[str, str]:
    """The answers after the rows were put in, and what is said."""
    reply = ask(move="paper", rows=rows, papers=[{**PAPERS[0], "text": text}])
    assert reply["ok"] and len(reply["papers"]) == 1, reply
    return reply["papers"][0]["text"], reply["papers"][0]["told"]


def marked(text: str) -> dict[tuple[int, int], dict[str, Any]]:
    """Every line of the answers marked, by learner and question, its parts."""
    marking = marking_of(paper(), text)
    for _ in marking.steps():
        pass
    assert not marking.refused, marking.refused
    return {(one.place, one.question): dict(one.marks) for one in marking.results}


def test_rows_of_a_paper_say_whose_they_are_and_are_no_fault_and_no_part_of_a_class_set():
    pile = read_pile({"rows": [row(1, 1), row(2, 3)], "papers": PAPERS})
    whose = [(one.name, one.paper.question.number) for one in pile.rows if one.paper]
    assert [("Ada Lark", 1), ("Cy Wren", 2)] == whose
    assert ["", ""] == [one.fault for one in pile.rows] and entry_of(pile) is None
    assert [(7, 7), (7, 7)] == [one.marks for one in pile.rows] and {one.of for one in pile.rows} == {7}
    reply = ask(do="answer", page="photographs", form={}, rows=[row(1, 1)])
    assert 1 == reply["ofPapers"] and "Ada Lark, question 1" in reply["regions"]["pile"]


def test_a_right_drawing_has_every_mark_of_its_parts_in_the_paper_with_and_without_a_calculation():
    text, told = put([row(1, 1), row(2, 1)])
    assert "Autumn paper: 2 drawn answers added." in told
    found = marked(text)
    for key in ((1, 1), (1, 2)):
        assert {part: (marks, marks) for part, marks in FULL.items()} == {part: found[key][part] for part in FULL}
    # The answer itself says the same: without the parts it has every mark too.
    bare = "\n".join("; ".join(line.split("; ")[:3]) for line in text.split("\n"))
    assert {part: (marks, marks) for part, marks in FULL.items()} == {part: marked(bare)[1, 1][part] for part in FULL}


def test_a_wrong_end_costs_the_result_and_nothing_before_it():
    text, _ = put([row(1, 2, slip=14.0)])
    found = marked(text)[2, 1]
    assert (0, 0) == found["resultant"]
    assert all((FULL[part],) * 2 == found[part] for part in ("scale", "directions", "lengths"))


@pytest.mark.parametrize("typed", [
    "Ada Lark; 1; 9.9 A at 10; 9.9 A at 10",
    "1; 1; 9.9 A at 10",
    "Ada Lark; 1; ; ; ; 1",
    "Name,Question,Drawn,Calculated,Scale\nAda Lark,1,,9.9 A at 10,1",
    "Name,Question,Marks decided\nAda Lark,1,5",
])  # fmt: skip
def test_what_a_person_typed_of_a_drawing_is_never_written_over(typed: str):
    text, told = put([row(1, 1)], typed)
    assert text == typed and "Left as they were typed: 1." in told


@pytest.mark.parametrize(("typed", "calculated"), [
    ("Bo Finch; 1; 1 A at 3\nAda Lark; 1; ; 9.9 A at 10; ; ; ; ; 2; 1", "9.9 A at 10"),
    ("Name,Question,Drawn,Calculated,Scale,Method\nAda Lark,1,,9.9 A at 10,,2", "9.9 A at 10"),
])  # fmt: skip
def test_a_line_without_a_drawn_answer_is_completed_and_all_else_stays(typed: str, calculated: str):
    text, told = put([row(1, 1)], typed)
    assert "1 drawn answer added." in told and len(text.split("\n")) == len(typed.split("\n"))
    marking = marking_of(paper(), text)
    for _ in marking.steps():
        pass
    own = next(one for one in marking.results if one.place == 1)
    assert own.given[1] == calculated and own.given[0] and dict(own.marks)["method"] == (2, 2)
    assert text.split("\n")[0] == typed.split("\n")[0]
    assert put([row(1, 1)], text)[0] == text  # and put in once


def test_the_code_of_a_paper_opens_a_sheet_once_it_is_said_which_question():
    code = str(paper().code(2))
    assert "Type the question behind the code" in ask(move="sheet", text=code)["announce"]
    reply = ask(move="sheet", text=f"{code}/2")
    assert reply["ok"] and reply["code"] == str(sheet(2, 2).code) and reply["form"]["i1"] == sheet(2, 2).form["i1"]
    assert "does not keep" in ask(move="sheet", text=code, papers=[])["announce"]


def test_a_class_set_with_the_same_problems_keeps_its_sheets():
    group = {"set": SET, "roll": ""}
    own = {"form": FORM | {"seed": "0", "q1-method": "parallelogram"}, "roll": "Ada Lark\nBo Finch\nCy Wren"}
    learner = next(one for one in kept_papers([own])[0].paper.questions[0].learners() if one is not None)
    pile = read_pile({"rows": [row(1, 1) | {"code": str(learner.code)}], "papers": [own], **group})
    assert pile.rows[0].paper is None


@pytest.mark.parametrize(("bands", "marks"), [
    (("accept",) * 4, (7, 7)), (("accept", "look", "wrong", "accept"), (3, 5)), ((), (0, 7)),
])  # fmt: skip
def test_marks_of_parts(bands: tuple[str, ...], marks: tuple[int, int]):
    assert marks == paper_marks_of(FULL, bands)


@pytest.mark.parametrize("papers", [None, 3, [None], [{"form": 1}], [{"form": {"questions": "x"}}]])
def test_strange_papers_do_no_harm(papers: Any):
    assert ask(do="answer", page="photographs", form={}, rows=[row(1, 1)], papers=papers)["ok"]


def test_a_table_with_a_row_for_each_learner_gets_its_lines_before_a_drawing_is_put_in():
    """The drawing was put below the table as a line of another kind, and was lost."""
    table = "Name;Q1 drawn;Q1 calculated;Q2\nAda Lark;;7.24 A;\nBo Finch;9 A;9 A;9 A\n"
    text, _ = put([row(1, 1), row(2, 3)], table)
    found = marked(text)
    assert {(1, 1), (1, 2), (2, 1), (2, 2), (3, 2)} == set(found)
    assert all((worth, worth) == found[1, 1][part] for part, worth in FULL.items())


@pytest.mark.parametrize(("said", "offered"), [
    ("no-code", True), ("many-codes", True), ("pdf", False), ("unreadable", False), ("small", False),
])  # fmt: skip
def test_a_code_is_asked_for_only_where_a_sheet_is_seen(said: str, offered: bool):
    bad = {"id": "r", "file": "a.pdf", "state": "fault", "said": said}
    look = ask(move="look", row="r", rows=[bad])["regions"]["look"]
    assert ('id="pile-code"' in look) == offered
