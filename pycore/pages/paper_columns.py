"""A table with one row for each learner, as a form saves it: its columns name the questions.

Such a row becomes a line for each question that the table has columns for. What heads say is common practice: a number
of the question, then drawn or calculated, or (a) and (b) as the papers have them. Columns of a time, an address or
points are passed over. A line with a learner of the paper, or with sizes such as 3 A, has answers and no heads.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pycore.errors import Fault, InputError
from pycore.pages import paper_lines
from pycore.pages.question_paper import Question, QuestionPaper, place_of
from pycore.practice.tables import TableLine
from pycore.practice.task import CALCULATED, DRAWN
from pycore.words import paper_marks as words

ROLES = ("learner", "question", DRAWN, CALCULATED)
"""The columns of the lines that a row becomes."""
_NAMED = re.compile(r"\bq(?:uestion)?[\s.]*(\d{1,2})(?:[\s.(]*([ab])\b|(?![\d.,]*\d))")
"""The question where its number has a word: q1, question 1a."""
_BARE = re.compile(
    r"[(\[#]?(\d{1,2})(?:\.?([ab])\b|[.\s]*\(([ab])\))?(?![\d.,]*\d)"
    r"(?:[\s.):]*$|\s*[.):–-]\s*[^\W\d_]{2}|.*(?:draw|calcul)|\D*(?:size|angle|answer)\D*$|(?<=[ab)])\D*$)",
    re.DOTALL,
)
"""The question where its number comes first: 1, 1a, 1(a), 1. current, 1 drawn, 1 size; never 3 A or 3 A at 30."""
_NUMBER = re.compile(r"(?:q(?:uestion)?)?[\s.]*(\d{1,2})[.)]?")
_SPEAKS = re.compile(r"\bq(?:uestion)?[\s.]*\d|draw|calcul")
_OWN_WORD = f"(?:{'|'.join(words.NO_ANSWERS)})"
_FORMS_OWN = re.compile(
    rf"\W*{_OWN_WORD}(?::|\s*[-–—]\s)|.*(?:[(\[]|:\s*|\s[-–—]\s+){_OWN_WORD}\W*$"
    rf"|(?:q(?:uestion)?)?[\s.]*\d+\W*(?:[ab]\b)?\W*(?:drawn|calculated)?\W*\b{_OWN_WORD}\W*$",
    re.DOTALL,
)
"""A column of the form's own, whatever it is for: points - q1 drawn, q1 drawn [score], q1 drawn points."""
_MAYBE_OWN = re.compile(rf"\W*{_OWN_WORD}\b|.*[^\d\s]\s+{_OWN_WORD}\W*$", re.DOTALL)
"""One too, unless its head says how an answer was found: score for question 1; but not question 1 (3 marks)."""
_ENDS_IN_COUNT = re.compile(rf".*\b(?:{'|'.join(words.COUNTS)})\W*$", re.DOTALL)
"""Of these, one that can ask for an answer, which its cells tell: question 1: the voltage between the star points."""
"""All of these read small letters."""
_SIZE = re.compile(r"\d\s*[ckmµM]?(?:A|V|W|VA|var|Ω|m)\b|\d\s*[∠@]|\bat\s+[-−+]?\d")
"""What an answer has, and neither points nor 2 / 3 or 2 out of 3: 3 A, 32 mm, 3 at 30."""
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


def _column(paper: QuestionPaper, at: int, head: str, rows: Sequence[TableLine]) -> _Column | None:
    """A column of answers by its head, and by its cells where a head of points could mean points of a drawing; None for
    any other."""
    plain = head.lower()
    said = [how for how, beginning in words.SAID_BY.items() if beginning in plain]
    found = _NAMED.search(plain) or _BARE.match(plain)
    if not found or not 1 <= int(found[1]) <= len(paper.questions):
        return None
    if _FORMS_OWN.match(plain):
        return None
    if not said and _MAYBE_OWN.match(plain):
        is_asked = _ENDS_IN_COUNT.match(plain) and any(_SIZE.search(_cell(row.cells, at)) for row in rows)
        if not is_asked:
            return None
    letter = "".join(filter(None, found.groups()[1:]))
    how = said[0] if len(said) == 1 else _BY_LETTER.get(letter, "")
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


def _is_learner(paper: QuestionPaper, cell: str) -> bool:
    """Whether a cell names a learner of the paper, and is no usual head of names."""
    if paper_lines.role(cell) == "learner" or any(cell.lower() in part for part in words.NAME_PARTS):
        return False
    try:
        place_of(paper, cell)
    except InputError:
        return False
    return True


def _are_heads(paper: QuestionPaper, heads: Sequence[str], columns: Sequence[_Column], who: Sequence[int]) -> bool:
    """Whether the first line has heads, and not the answers of a learner."""
    speaking = [one for one in columns if _SPEAKS.search(heads[one.at].lower())]
    if len(speaking) > 1:
        return True
    named = [heads[at] for at in who]
    begins = heads[:1] if not columns or columns[0].at else ()
    if not named or any(_is_learner(paper, one) for one in (*begins, *named)):
        return False
    is_usual = all(paper_lines.role(one) == "learner" for one in named)
    is_numbered = any(sign.isdigit() for one in named for sign in one)  # Student 3
    return not is_numbered and bool(columns) and (len(columns) > 1 or bool(speaking) or is_usual)


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
    """Where the answers stand if every row has a name and one cell for each answer; empty if it has not, or if the
    second cell is the number of a question: then they are lines."""
    answers: dict[int, list[_Answer]] = {}
    at = 1
    for question in paper.questions:
        ways = paper_lines.HOW[question.asks]
        answers[question.number] = [_Answer(how, at + place) for place, how in enumerate(ways)]
        at += len(ways)
    if not all(len(line.cells) == at for line in lines):
        return {}
    second = [line.cells[1].strip().lower() for line in lines]
    if len(answers) == 1 and at > len(paper_lines.BEFORE):
        # A line may leave out the number of the only question.
        return {} if any(_NUMBER.fullmatch(cell) or not cell for cell in second) else answers
    return {} if all(_NUMBER.fullmatch(cell) for cell in second) else answers


def unfolded(paper: QuestionPaper, lines: Sequence[TableLine]) -> tuple[TableLine, ...]:
    """The lines of a table with a row for each learner, by ROLES; empty for a table of another kind. Raises InputError
    where no column says who each row is of."""
    heads = lines[0].cells if lines else ()
    columns = [one for at, head in enumerate(heads) if (one := _column(paper, at, head, lines[1:]))]
    roles = {paper_lines.role(head) for head in heads}
    if "question" in roles or (len(columns) < 2 and (DRAWN in roles or CALCULATED in roles)):
        return ()
    who = _who(heads, {one.at for one in columns})
    if not _are_heads(paper, heads, columns, who):
        answers = {} if "learner" in roles else _without_head(paper, lines)
        return tuple(made for line in lines for made in _unfolded(line, (0,), answers)) if answers else ()
    if not who:
        raise InputError(Fault("results", "", words.NOBODY_NAMED))
    numbers = dict.fromkeys(one.question.number for one in columns)
    by_question = {number: _answers([one for one in columns if one.question.number == number]) for number in numbers}
    return tuple(made for line in lines[1:] for made in _unfolded(line, who, by_question))
