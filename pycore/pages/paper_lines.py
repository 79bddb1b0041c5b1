"""A line of answers to a question paper: who, which question, answers, and marks that a person gave.

A head line names the columns. Without one they come in order; where a question asks for one thing only, its line has
that one answer and the marks of its own parts, and needs no empty cells for what is not asked.
"""

from collections.abc import Mapping, Sequence

from pycore.pages.question_paper import MOST_MARKS, Question
from pycore.practice.task import CALCULATED, DRAWN
from pycore.quantity import MINUS
from pycore.words import paper_marks as words
from pycore.words import question_paper as paper_words

BEFORE = ("learner", "question")
"""What each line begins with where no head line says it."""
IN_ORDER = (DRAWN, CALCULATED, *paper_words.PARTS)
"""What follows these."""
HOW = {"drawing": (DRAWN,), "calculation": (CALCULATED,), "both": (DRAWN, CALCULATED)}
"""The answers that a question asks for."""


_SUMS = 1_000_003
"""A prime: so many answers can be told apart."""


def role(cell: str) -> str:
    """What a column is, by its head; "" for none of ours."""
    plain = " ".join(cell.partition("(")[0].lower().split())
    return next((one for one, names in words.ROLES.items() if plain in names), "")


def is_row(cells: Sequence[str]) -> bool:
    """Whether cells make sense as a line."""
    return len(cells) > 2


def headed(roles: Sequence[str], cells: Sequence[str]) -> dict[str, str]:
    """A line's cells by role. A table of ours has a number and a name: the first that is filled says who it is."""
    found: dict[str, str] = {}
    for one, cell in zip(roles, cells, strict=False):
        found[one] = found.get(one) or cell
    return found


def in_order(question: Question, cells: Sequence[str]) -> dict[str, str]:
    """The cells behind the question, by role, where no head line names them."""
    rest = list(cells)
    while rest and not rest[-1]:
        rest.pop()
    own = [key for key, _ in question.marks]
    if question.asks == "both" or len(rest) > len(own) + 2:
        return dict(zip(IN_ORDER, rest, strict=False))
    (how,) = HOW[question.asks]
    if len(rest) == len(own) + 2 or (len(rest) > 1 and _is_answer(rest)):
        drawn, calculated, *rest = rest
        answer = drawn or calculated if how == DRAWN else calculated or drawn
        rest = [answer, *rest]
    return dict(zip((how, *own), rest, strict=False))


def _is_answer(cells: Sequence[str]) -> bool:
    """Whether the second cell is an answer, as in a line with both, not the marks of the first part."""
    text = cells[1]
    could_be_marks = not text or words.is_range(text) or (_is_number(text) and int(text) <= MOST_MARKS)
    return not could_be_marks or (len(cells) == 2 and not cells[0])


def _is_number(text: str) -> bool:
    return text.isascii() and text.isdigit() and len(text) < 4


def answers_of(question: Question, cells: Mapping[str, str]) -> dict[str, str]:
    """Both answers of a line by how they were found; where one thing is asked, the only answer is that."""
    typed = {how: cells.get(how, "").strip() for how in (DRAWN, CALCULATED)}
    if question.asks != "both":
        asked, other = (CALCULATED, DRAWN) if question.asks == "calculation" else (DRAWN, CALCULATED)
        typed = {asked: typed[asked] or typed[other], other: ""}
    return typed


def marked_here(given: Sequence[str], marks: Mapping[str, str]) -> str:
    """A cell of a table of ours: which answers were marked (a sum of their signs), and the marks of the parts that the
    site gave, so that the table can be pasted again with other answers or other marks."""
    total = 0
    for sign in "\n".join(_plain(one) for one in given):
        total = (31 * total + ord(sign)) % _SUMS
    return " ".join([str(total), *(f"{key}:{count}" for key, count in marks.items())])


def _plain(answer: str) -> str:
    """An answer without what a table changes of it."""
    return " ".join(answer.replace(MINUS, "-").split())


def _given_here(cells: Mapping[str, str]) -> dict[str, str]:
    """The marks in a line of a table of ours that the site had given when it was saved."""
    pairs = (one.partition(":") for one in cells.get("marked here", "").split()[1:])
    return {key: count for key, _, count in pairs}


def _is_changed(question: Question, cells: Mapping[str, str]) -> bool:
    """Whether the answers in a line of a table of ours are others than those that were marked when it was saved."""
    before = cells.get("marked here", "").split()
    return bool(before) and before[0] != marked_here(tuple(answers_of(question, cells).values()), {})


def marks_of(question: Question, cells: Mapping[str, str]) -> dict[str, int]:
    """The marks that a person has given for parts. Raises ValueError."""
    typed: dict[str, int] = {}
    worth, here = dict(question.marks), _given_here(cells)
    for key, part in paper_words.PARTS.items():
        cell = cells.get(key, "").strip()
        # A range in a table of ours is a mark that nobody has decided yet.
        if not cell or words.is_range(cell) or cell == here.get(key):
            continue
        # A column of that name meant nothing before there was such a part.
        if key in paper_words.LATER and key not in worth:
            continue
        most = worth.get(key, 0)
        if key not in worth and cell != "0":
            raise ValueError(words.no_part(part, question.number))
        if not (_is_number(cell) and int(cell) <= most):
            raise ValueError(words.bad_part(part, cell, most))
        typed[key] = int(cell)
    return {key: marks for key, marks in typed.items() if key in worth}


def decided_of(question: Question, cells: Mapping[str, str]) -> int | None:
    """All marks of the question as a person decided them for these answers; None for nothing. Raises ValueError."""
    cell = cells.get("decided", "").strip()
    if not cell or _is_changed(question, cells):
        return None
    if not (_is_number(cell) and int(cell) <= question.total):
        raise ValueError(words.bad_part(words.DECIDED, cell, question.total))
    return int(cell)
