"""The register: papers brought together by learner and mistake; whatever a browser or a file holds is not trusted."""

import json

import pytest

from pycore.api import handle
from pycore.pages import register


def paper(code: str = "7AB-CDE-FGH", **more: object) -> dict[str, object]:
    """A marked paper as the register keeps it."""
    marks = [
        {"place": 1, "name": "Ada Lark", "low": 20, "high": 24, "mistakes": ["a phasor left out"]},
        {"place": 2, "name": "", "low": 7, "high": 7, "mistakes": []},
    ]
    usual = {"paper": code, "title": "Hall lighting", "group": "Tuesday", "date": "30 Nov 2026", "of": 30}
    return {**usual, "marks": marks, **more}


def ask(papers: object, **more: object) -> tuple[dict, bytes | None]:
    text, data = handle(json.dumps({"page": "register", "form": {}, "papers": papers, **more}))
    return json.loads(text), data


def test_a_learner_has_the_marks_of_all_papers():
    marks = [{"place": 5, "name": "Ada Lark", "low": 10, "high": 10, "mistakes": []}]
    second = paper("7AB-CDE-FGJ", marks=marks, of=12)
    (one,) = register.read([paper(), second])
    assert [
        ("Ada Lark", [(20, 24), (10, 10)], (30, 34), 42), ("Learner 2", [(7, 7), None], (7, 7), 30),
    ] == [
        (row.name, [own and own.marks for own in row.papers], row.total, row.of) for row in one.learners()
    ]  # fmt: skip


def by_question(*numbers: int) -> dict[str, object]:
    """A paper of three questions of ten marks, of which Ada Lark has these marked, with six each."""
    questions = [{"number": number, "low": 6, "high": 6, "mistakes": [f"mistake {number}"]} for number in numbers]
    marks = [{"place": 1, "name": "Ada Lark", "low": 1, "high": 1, "mistakes": [], "questions": questions}]
    return paper(marks=marks, questions=[{"number": number, "of": 10} for number in (1, 2, 3)])


def test_a_total_says_how_much_of_it_was_marked():
    reply, _ = ask([by_question(1, 3)], do="answer")
    html = reply["regions"]["register"]
    assert "12 of 20 marked" in html
    assert "question 2 not marked yet" in html
    assert "%" not in html
    assert '<span class="day">–</span>' in html
    whole, _ = ask([by_question(1, 2, 3)], do="answer")
    assert "60 %" in whole["regions"]["register"]
    assert "18 of 30" in whole["regions"]["register"]
    assert "not marked yet" not in whole["regions"]["register"]


def test_mistakes_are_those_of_the_questions():
    (one,) = register.read([by_question(1, 3)])
    assert ("mistake 1", "mistake 3") == one.papers[0].marks[0].mistakes


def test_a_paper_has_an_average_of_what_is_marked():
    (one,) = register.read([paper()])
    assert (45, 52) == one.papers[0].average  # 27 to 31 of 60
    (other,) = register.read([by_question(1)])
    assert other.papers[0].average is None
    (full,) = register.read([by_question(1, 2, 3)])
    assert (60, 60) == full.papers[0].average


def test_a_paper_marked_in_part_has_no_per_cent_in_the_table_either():
    """A question that was not marked yet made 100 % of the others."""
    heads = dict.fromkeys(("group", "learner", "mistake", "total", "average", "learners", *register.ENDS), "")
    rows = register.table(register.read([by_question(1, 3)]), heads)
    assert ["Tuesday", "Ada Lark", "12", "12", "20", "", "", "12", "12", "20", "", ""] == rows[1]
    assert ["Tuesday", "", "", "", "", "", ""] == rows[2]


def test_names_are_in_order_and_numbers_too():
    names = ["", "", "ben stone", "Ada Lark"]
    marks = [
        {"place": place, "name": name, "low": 1, "high": 1, "mistakes": []}
        for place, name in zip((10, 9, 3, 4), names, strict=True)
    ]
    (one,) = register.read([paper(marks=marks)])
    assert ["Ada Lark", "ben stone", "Learner 9", "Learner 10"] == [row.name for row in one.learners()]


def test_mistakes_are_counted_paper_by_paper():
    second = paper("7AB-CDE-FGJ", marks=[
        {"place": n, "name": f"Learner {n}", "low": 1, "high": 1, "mistakes": ["a phasor left out", "angles swapped"]}
        for n in (1, 2)
    ])  # fmt: skip
    (one,) = register.read([paper(), second])
    assert [("a phasor left out", (1, 2)), ("angles swapped", (0, 2))] == list(one.mistakes())


def test_two_learners_of_one_name_are_both_there():
    marks = [{"place": place, "name": "Ada Lark", "low": place, "high": place, "mistakes": []} for place in (1, 2)]
    (one,) = register.read([paper(marks=marks)])
    assert ["Ada Lark", "Ada Lark (2)"] == [row.name for row in one.learners()]


def test_each_group_has_a_register_of_its_own():
    assert ["", "Tuesday"] == [one.group for one in register.read([paper(), paper(group="")])]


@pytest.mark.parametrize("papers", [
    None, "x", {}, [None], [3], [{}], [paper(marks="x")], [paper(marks=[None, 3, "x"])], [paper(paper=7)],
])  # fmt: skip
def test_what_is_no_register_gives_none(papers: object):
    assert () == register.read(papers)
    reply, _ = ask(papers, do="answer")
    assert "There are no marks yet" in reply["regions"]["register"]


def test_what_a_file_holds_is_text_and_nothing_else():
    hostile = "<img src=x onerror=alert(1)>"
    marks = [{"place": -4, "name": hostile, "low": 1e9, "high": True, "mistakes": [hostile, 5, None]}]
    reply, _ = ask([paper(title=hostile, group=hostile, date=hostile, marks=marks)], do="answer")
    html = reply["regions"]["register"]
    assert "<img" not in html
    assert "&lt;img" in html


def test_the_table_for_a_spreadsheet_runs_nothing_and_has_numbers():
    marks = [{"place": 1, "name": "=1+1", "low": 3, "high": 5, "mistakes": []}]
    begun, _ = ask([paper(marks=marks)], do="begin", work="table")
    reply, data = ask([], do="finish", job=begun["job"])
    text = (data or b"").decode()
    assert "register.csv" == reply["filename"]
    assert "'=1+1,3,5,30,10,17,3,5,30,10,17" in text
    assert "Tuesday,Average,,,,10,17" in text


@pytest.mark.parametrize(("college", "separator"), [({"decimal": "comma"}, ";"), ({}, ","), (None, ","), ("x", ",")])
def test_the_table_is_separated_as_the_college_s_other_tables(college: object, separator: str):
    """Of two tables from one device one opened in a single column."""
    begun, _ = ask([paper(marks=[])], do="begin", work="table")
    marks = [{"place": 1, "name": "Ada", "low": 3, "high": 5, "mistakes": ["sides"]}]
    begun, _ = ask([paper(marks=marks)], do="begin", work="table", college=college)
    _, data = ask([], do="finish", job=begun["job"])
    rows = [line.split(separator) for line in (data or b"").decode().splitlines()]
    learner, average, mistake = (next(row for row in rows if len(row) > 2 and row[1] == name)
                                 for name in ("Ada", "Average", "sides"))  # fmt: skip
    head = rows[0]
    assert len(head) == len(learner) and head[2].endswith(": marks from") and head[5].endswith(": % from")
    assert ["", "", "", "10", "17"] == average[2:7] and learner[2:7] == ["3", "5", "30", "10", "17"]
    assert rows[rows.index(mistake) - 1][2].endswith(": learners") and "1" == mistake[2]
