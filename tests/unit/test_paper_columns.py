"""A table with one row for each learner, as a form saves it: each row is marked as a line for each question."""

import pytest

from pycore.errors import InputError
from pycore.forms.fields import default_form
from pycore.pages.paper_columns import unfolded
from pycore.pages.question_paper import FIELDS, QuestionPaper, read_paper
from pycore.pages.question_paper_marks import PaperMarking, marking_of
from pycore.practice import tables
from pycore.words import paper_marks as words

OWN = "https://folio.example/neutral-current/#v=3&i1=9.2&i2=14.7&i3=6.5"
LONG = (
    "Ada Lark; 1; 7.2 A at 101 cw; 7.24 A at 101 cw\nAda Lark; 2; 7.3 A at 100 cw\n"
    "Ben Stone; 1; 14.7 A; 7.24 A at 101 cw\nBen Stone; 2; "
)
"""The answers of the class, line by line: what each table below says too."""
ONE_CELL = {
    "as a form saves it": "Timestamp\tEmail\tYour name\tQ1 drawn answer\tQ1 calculated answer\t"
    "Question 2\tPoints - Question 2\n"
    "30/11/2026 18:00\ta@hall.example\tAda Lark\t7.2 A at 101 cw\t7.24 A at 101 cw\t7.3 A at 100 cw\t3\n"
    "30/11/2026 18:02\tb@hall.example\tBen Stone\t14.7 A\t7.24 A at 101 cw\t\t0\n",
    "with the letters of the paper": "ID,Name,1(a),1(b),2a\n"
    "8,Ada Lark,7.2 A at 101 cw,7.24 A at 101 cw,7.3 A at 100 cw\n"
    "9,Ben Stone,14.7 A,7.24 A at 101 cw,\n",
    "questions in another order": "Drawn answer to question 2;Calculated: q. 1;Drawn: q. 1;Learner\n"
    "7.3 A at 100 cw;7.24 A at 101 cw;7.2 A at 101 cw;Ada Lark\n;7.24 A at 101 cw;14.7 A;Ben Stone",
    "first and last names": "First name;Last name;Question 1;Question 1;Question 2\n"
    "Ada;Lark;7.2 A at 101 cw;7.24 A at 101 cw;7.3 A at 100 cw\nBen;Stone;14.7 A;7.24 A at 101 cw;",
    "angles in columns of their own": "Name;Q1 drawn;Q1 drawn angle;Q1 calculated;Q1 calculated angle;"
    "Q2 size;Q2 angle\n"
    "Ada Lark;7.2 A;101 cw;7.24 A;101 cw;7.3 A;100 cw\nBen Stone;14.7 A;;7.24 A;101 cw;;\n",
    "no words but the order": "Name;Q1 size;Q1 angle;Q1 size;Q1 angle;Q2 size;Q2 angle\n"
    "Ada Lark;7.2 A;101 cw;7.24 A;101 cw;7.3 A;100 cw\nBen Stone;14.7 A;;7.24 A;101 cw;;\n",
    "no heads": "Ada Lark\t7.2 A at 101 cw\t7.24 A at 101 cw\t7.3 A at 100 cw\nBen Stone\t14.7 A\t7.24 A at 101 cw\t\n",
    "a cell of text about both": "Name;Q1: drawing, size and angle;Q1: calculation, size and angle;Q2\n"
    "Ada Lark;7.2 A at 101 cw;7.24 A at 101 cw;7.3 A at 100 cw\nBen Stone;14.7 A;7.24 A at 101 cw;",
}  # fmt: skip


def paper() -> QuestionPaper:
    """Two questions with the same values for both learners; the second asks for a drawing alone."""
    form = {"questions": "2", "q1-link": OWN, "q2-link": OWN, "q2-asks": "drawing"}
    return read_paper(default_form(FIELDS) | form, "Ada Lark\nBen Stone")


def marked(text: str) -> PaperMarking:
    """A table marked."""
    marking = marking_of(paper(), text)
    for _ in marking.steps():
        pass
    return marking


def told(marking: PaperMarking) -> list[tuple[object, ...]]:
    """What was marked, without the numbers of the lines."""
    return [(one.name, one.question, one.given, one.marks, one.mistakes, one.total) for one in marking.results]


@pytest.mark.parametrize("text", ONE_CELL.values(), ids=ONE_CELL)
def test_a_row_for_each_learner_is_marked_as_lines_are(text: str):
    """None of these could be read: 48 lines had to be typed again for 12 learners and four questions."""
    marking = marked(text)
    assert not marking.refused, marking.refused
    assert told(marked(LONG)) == told(marking)


def test_a_question_without_a_column_is_not_marked_and_one_left_blank_is():
    marking = marked("Name;Q1 drawn;Q1 calculated\nAda Lark;7.2 A at 101 cw;\n")
    assert [(1, ("7.2 A at 101 cw", ""))] == [(one.question, one.given) for one in marking.results]
    assert (2,) == marking.totals()[1].missing
    assert {"no answer": 1} == dict(marking.counted())


def test_a_learner_nobody_knows_is_told_once_and_the_line_is_that_of_the_table():
    marking = marked("Name;Q1 drawn;Q1 calculated;Q2\nZoe Pike;7 A;7 A;7 A\nAda Lark;7 A;seven;7 A")
    assert [2] == [one.line for one in marking.refused]
    assert "Zoe Pike" in marking.refused[0].why
    assert [(3, 1), (3, 2)] == [(one.line, one.question) for one in marking.results]
    assert "calculated: “seven” was read as no answer: 0" in marking.results[0].remarks


def test_a_table_that_names_nobody_says_what_the_column_is_called():
    with pytest.raises(InputError) as refused:
        marked("When;Q1 drawn;Q1 calculated\n18:00;7 A;7 A")
    assert words.NOBODY_NAMED == refused.value.faults[0].message


@pytest.mark.parametrize(
    "text",
    [
        LONG, "1; 1; 2 A at 30\n2; 2; 1 A", "Ada Lark; 1; 2 A at 30; 1 A", "Name; Question; Drawn\nAda; 1; 2 A",
        "Ada; 1; 7; 7\nBen; 2; 7", "1; 1; 2; 2", "",
    ],
)  # fmt: skip
def test_lines_of_one_question_stay_what_they_were(text: str):
    assert not unfolded(paper(), tables.read(text))


@pytest.mark.parametrize("text", [
    "1;1;6.4 A at 145\n2;;6.3 A at 144", "1;;6.4 A at 145\n2;;6.3 A at 144", "Ada Lark;;7 A at 30",
])  # fmt: skip
def test_a_line_may_leave_out_the_number_of_the_only_question(text: str):
    """The number was read as what was drawn, and what was drawn as calculated."""
    one = read_paper(default_form(FIELDS) | {"questions": "1", "q1-link": OWN}, "Ada Lark\nBen Stone")
    assert not unfolded(one, tables.read(text))
    assert unfolded(one, tables.read("Ada Lark;6.4 A at 145;6.3 A at 144\nBen Stone;7 A;"))


HEADS = {
    "a star point": "Name;Q1 drawn;Q1 calculated;Q2 drawn: voltage of the star point",
    "a mark on the sheet": "Name;Q1 drawn from the benchmark;Q1 calculated;Q2: the current to the marked line",
    "points at the start of what is drawn": "Name;Q1 drawn;Q1 calculated;Points A and B: Q2 drawn",
    "from point to point": "Name;Q1 drawn;Q1 calculated;Point-to-point, drawn (Q2), to the star-point",
    "how many marks there are": "Name;Q1 drawn;Q1 calculated;Question 2 (3 marks)",
}
"""The last three columns are answers, though each line has a word that a form's own columns have too."""


@pytest.mark.parametrize("heads", HEADS.values(), ids=HEADS)
def test_a_word_of_points_inside_a_head_takes_no_answer_away(heads: str):
    """Such an answer was passed over, and had no marks."""
    rows = "Ada Lark;7.2 A at 101 cw;7.24 A at 101 cw;7.3 A at 100 cw\nBen Stone;14.7 A;7.24 A at 101 cw;"
    assert told(marked(LONG)) == told(marked(f"{heads}\n{rows}"))


@pytest.mark.parametrize(
    "own",
    [
        "Points - Question 2", "Points – Q2 drawn", "Q2 drawn [Score]", "Q2 (points)", "Feedback - Q2 drawn",
        "Q2 points", "Q2 drawn answer - Points",
        "Score for question 2", "Question 2 comments", "Q2 drawn marks", "Q2: remarks", "Mark Q2", "2a points",
    ],
)  # fmt: skip
def test_a_column_of_a_forms_own_is_passed_over(own: str):
    """It would be an answer where the cell of the answer is empty."""
    (two,) = (one for one in marked(f"Name;Q1 drawn;Q2;{own}\nAda Lark;7 A;;3").results if one.question == 2)
    assert ("", "") == two.given


@pytest.mark.parametrize(
    "text",
    [
        "Student 3; 1; 3 A at 30; 3.1 A at 32", "Student 3; Q1; 3A; 3.1A", "Student 3; 1; 2 A; 2 A",
        "Student 3; 1; 2; 2", "Student Ada; 1; 2 A at 30; 1 A", "Ada Lark; Q1; 2A; 3.1A",
        "Ada Student; 1; 2; 1", "Ada Lark; 1; 2; no", "Ada Lark; Q1; 7 A at 30", "Ada Lark; Q1 drawn; 7 A",
        "Student Ada; q1; 2a left; 2 A",
    ],
)  # fmt: skip
def test_a_line_of_answers_is_no_line_of_heads(text: str):
    """The first learner's answers were taken for heads, and were lost without a word."""
    form, lines = default_form(FIELDS) | {"questions": "3"}, tables.read(f"{text}\nBen Stone; 1; 2 A; 2 A")
    assert not unfolded(read_paper(form, "Ada Lark\nBen Stone\nStudent Ada\nAda Student\nStudent 3"), lines)
    if "Student 3" in text:
        assert not unfolded(read_paper(form), lines), "a paper without names"


@pytest.mark.parametrize(
    "heads",
    [
        "Name;1;2;3", "Student number;1;2;3", "Your name;1a;2a;3a",
        "ID;Name;1. Neutral current;2. Supply;3. Power factor", "Name;1 (b) Neutral current;2b: supply",
        "Timestamp;First name;Last name;1 drawn;2 calculated", "Student;Q1;Q2", "Name;1 size;1 angle",
        "Name;1a neutral current;1b neutral current",
    ],
)  # fmt: skip
def test_heads_of_numbers_are_heads_where_a_column_says_who(heads: str):
    paper_of_three = read_paper(default_form(FIELDS) | {"questions": "3"}, "Ada Lark\nStudent 3")
    row = ";".join(["Ada Lark"] * len(heads.split(";")))
    lines = unfolded(paper_of_three, tables.read(f"{heads}\n{row}"))
    assert lines and {2} == {one.number for one in lines}


@pytest.mark.parametrize(
    "text",
    [
        "Name,Q1 drawn\nAda Lark,7.2 A at 101 cw\n", "When;Name;Question 1\n18:00;Ada Lark;7.2 A at 101 cw",
        "Ada Lark;7.2 A at 101 cw", "Ada Lark,7.2 A at 101 cw\n",
    ],
)  # fmt: skip
def test_a_table_with_one_answer_for_each_learner_is_read(text: str):
    """A paper of one question that asks for a drawing alone has no second column."""
    form = {"questions": "1", "q1-link": OWN, "q1-asks": "drawing"}
    marking = marking_of(read_paper(default_form(FIELDS) | form, "Ada Lark\nBen Stone"), text)
    for _ in marking.steps():
        pass
    assert not marking.refused, marking.refused
    assert [(1, ("7.2 A at 101 cw", ""))] == [(one.place, one.given) for one in marking.results]


def test_one_column_of_a_paper_with_more_questions_is_read():
    marking = marked("Name;Q2 drawn\nAda Lark;7.3 A at 100 cw")
    assert [2] == [one.question for one in marking.results] and not marking.refused


def test_a_table_without_heads_for_one_question_with_two_answers_is_read():
    """It was taken for lines: the drawn answer was refused as the number of a question."""
    text = "Ada Lark;7.2 A at 101 cw;7.24 A at 101 cw\nBen Stone;14.7 A;7.24 A at 101 cw"
    form = {"questions": "1", "q1-link": OWN}
    marking = marking_of(read_paper(default_form(FIELDS) | form, "Ada Lark\nBen Stone"), text)
    for _ in marking.steps():
        pass
    assert not marking.refused, marking.refused
    assert [("7.2 A at 101 cw", "7.24 A at 101 cw"), ("14.7 A", "7.24 A at 101 cw")] == [
        one.given for one in marking.results]  # fmt: skip


@pytest.mark.parametrize("text", ["Ada Lark; 1", "Ada Lark; 1; 2 A at 30", "Ada Lark; q1; 2 A at 30; 1 A"])
def test_a_line_for_a_paper_of_one_question_stays_a_line(text: str):
    for asks in ("drawing", "both"):
        form = {"questions": "1", "q1-link": OWN, "q1-asks": asks}
        assert not unfolded(read_paper(default_form(FIELDS) | form, "Ada Lark\nBen Stone"), tables.read(text))


@pytest.mark.parametrize("head", ["Q2: the voltage between the star points", "2. Current at both marks"])
def test_a_head_that_ends_in_points_asks_for_an_answer_where_its_cells_have_one(head: str):
    """It was passed over, and the answer had no marks; a form's column of points still is."""
    both = f"Name;Q1 drawn;Q1 calculated;{head}\nAda Lark;7.2 A;7.2 A;%s\nBen Stone;7 A;7 A;%s"
    for cells in (("7.3 A at 100 cw", ""), ("7.3 at 100", "2"), ("73 mm", "7,3∠100")):
        assert {1, 2} == {one.question for one in marked(both % cells).results}, cells
    for cells in (("2", "3"), ("2 / 3", "3.0 / 3.0"), ("2 out of 3", "")):
        assert {1} == {one.question for one in marked(both % cells).results}, cells
