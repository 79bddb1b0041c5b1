"""A table with one row for each learner, as a form saves it: its columns name the questions.

Such a row becomes a line for each question that the table has columns for. What heads say is common practice: a number
of the question, then drawn or calculated, or (a) and (b) as the papers have them. Columns of a time, an address or
points are passed over.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pycore.errors import Fault, InputError
from pycore.pages import paper_lines
from pycore.pages.question_paper import Question, QuestionPaper
from pycore.practice.tables import TableLine
from pycore.practice.task import CALCULATED, DRAWN
from pycore.words import paper_marks as words

ROLES = ("learner", "question", DRAWN, CALCULATED)
"""The columns of the lines that a row becomes."""
_NUMBERED = re.compile(r"(?:\bq(?:uestion)?[\s.]*|^\W*)(\d{1,2})(?:[\s.(]*([ab])\b|(?![\d.,]*\d))")
_NUMBER = re.compile(r"(?:q(?:uestion)?)?[\s.]*(\d{1,2})[.)]?")
_SPEAKS = re.compile(r"\bq(?:uestion)?[\s.]*\d|draw|calcul")
"""All of these read small letters."""
_NO_WORD = re.compile(r"[\W\d_]+")
_BY_LETTER = {"a": DRAWN, "b": CALCULATED}


@dataclass(frozen=True, slots=True)
class _Column:
    """A column with answers: its place in the table, its question, how the answer was found ("": not said), and whether
    its head speaks of an angle."""

    at: int
    question: Question
    how: str
    says_angle: bool


@dataclass(frozen=True, slots=True)
class _Answer:
    """Where an answer stands: how it was found, the place of its size or of all of it, and that of its angle (None: in
    one cell with the size)."""

    how: str
    at: int
    angle: int | None = None


def _column(paper: QuestionPaper, at: int, head: str) -> _Column | None:
    """A column of answers by its head; None for any other."""
    plain = head.lower()
    found = _NUMBERED.search(plain)
    if not found or not 1 <= int(found[1]) <= len(paper.questions) or any(one in plain for one in words.NO_ANSWERS):
        return None
    said = [how for how, beginning in words.SAID_BY.items() if beginning in plain]
    how = said[0] if len(said) == 1 else _BY_LETTER.get(found[2] or "", "")
    return _Column(at, paper.questions[int(found[1]) - 1], how, words.ANGLE in plain)


def _answers(columns: Sequence[_Column]) -> list[_Answer]:
    """The answers in the columns of one question; without a word about how they were found they come in order."""
    sizes = [one for one in columns if not one.says_angle]
    if not all(any(size.how == one.how for size in sizes) for one in columns if one.says_angle):
        sizes = list(columns)  # the angle stands in one cell with the size
    free = [how for how in paper_lines.HOW[columns[0].question.asks] if how not in {one.how for one in sizes}]
    found: list[_Answer] = []
    for place, one in enumerate(sizes):
        how = one.how or (free.pop(0) if free else "")
        end = sizes[place + 1].at if place + 1 < len(sizes) and not one.how else None
        angles = [other.at for other in columns if other not in sizes and other.how == one.how and other.at > one.at
                  and (end is None or other.at < end)]  # fmt: skip
        if how:
            found.append(_Answer(how, one.at, angles[0] if angles else None))
    return found


def _cell(cells: Sequence[str], at: int) -> str:
    return cells[at] if at < len(cells) else ""


def _written(cells: Sequence[str], answer: _Answer) -> str:
    size = _cell(cells, answer.at)
    angle = "" if answer.angle is None else _cell(cells, answer.angle)
    return words.at_angle(size, angle) if angle else size


def _who(heads: Sequence[str], taken: set[int]) -> tuple[int, ...]:
    """The columns that together say who it is: first and last name, a name, else any other column for a learner."""
    plain = {at: _NO_WORD.sub(" ", head.lower()).strip() for at, head in enumerate(heads) if at not in taken}
    first, last = ([at for at, head in plain.items() if head in part] for part in words.NAME_PARTS)
    if first and last:
        return (first[0], last[0])
    named = [at for at, head in plain.items() if any(word in words.WHO for word in head.split())]
    exact = [at for at in plain if paper_lines.role(heads[at]) == "learner"]
    by_name = [at for at in exact if "name" in plain[at]]
    return tuple((by_name or exact or named)[:1])


def _unfolded(line: TableLine, who: Sequence[int], answers: Mapping[int, Sequence[_Answer]]) -> list[TableLine]:
    """A row as a line for each question."""
    name = " ".join(_cell(line.cells, at) for at in who).strip()
    lines: list[TableLine] = []
    for number, own in answers.items():
        typed = dict.fromkeys((DRAWN, CALCULATED), "")
        for one in own:
            typed[one.how] = typed[one.how] or _written(line.cells, one)
        lines.append(TableLine(line.number, (name, str(number), *typed.values()), line.open_quote))
    return lines


def _without_head(paper: QuestionPaper, lines: Sequence[TableLine]) -> dict[int, list[_Answer]]:
    """Where the answers stand if every row has a name and one cell for each answer; empty if it has not."""
    answers: dict[int, list[_Answer]] = {}
    at = 1
    for question in paper.questions:
        ways = paper_lines.HOW[question.asks]
        answers[question.number] = [_Answer(how, at + place) for place, how in enumerate(ways)]
        at += len(ways)
    is_wide = len(answers) > 1 and all(len(line.cells) == at for line in lines)
    return answers if is_wide and not all(_NUMBER.fullmatch(line.cells[1].lower()) for line in lines) else {}


def unfolded(paper: QuestionPaper, lines: Sequence[TableLine]) -> tuple[TableLine, ...]:
    """The lines of a table with a row for each learner, by ROLES; empty for a table of another kind. Raises InputError
    where no column says who each row is of."""
    heads = lines[0].cells if lines else ()
    columns = [one for at, head in enumerate(heads) if (one := _column(paper, at, head))]
    roles = {paper_lines.role(head) for head in heads}
    if "question" in roles or ("learner" in roles and len(columns) < 2):
        return ()
    if len(columns) < 2:
        answers = _without_head(paper, lines)
        return tuple(made for line in lines for made in _unfolded(line, (0,), answers)) if answers else ()
    who = _who(heads, {one.at for one in columns})
    if not who and not any(_SPEAKS.search(heads[one.at].lower()) for one in columns):
        return ()  # numbers alone: a line of answers, not of heads
    if not who:
        raise InputError(Fault("results", "", words.NOBODY_NAMED))
    numbers = dict.fromkeys(one.question.number for one in columns)
    by_question = {number: _answers([one for one in columns if one.question.number == number]) for number in numbers}
    return tuple(made for line in lines[1:] for made in _unfolded(line, who, by_question))
