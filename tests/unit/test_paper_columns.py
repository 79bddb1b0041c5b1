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
    assert [2, 3] == [one.line for one in marking.refused]
    assert "Zoe Pike" in marking.refused[0].why and "question 1" in marking.refused[1].why
    assert [2] == [one.question for one in marking.results]


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
