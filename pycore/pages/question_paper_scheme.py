"""The tables of a question paper's mark scheme: marks, answers, one worked solution and what usual mistakes give."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from pycore.pages import class_key
from pycore.pages.class_job import row_for
from pycore.pages.class_key import KeyHead
from pycore.pages.question_paper import Question, QuestionPaper
from pycore.practice.class_set import Learner
from pycore.practice.key import KeyRow
from pycore.practice.task import CALCULATED, DRAWN, Task
from pycore.sheet import ledger
from pycore.sheet.ledger import ColumnHeading, Ledger
from pycore.sheet.lettered import width_of, wrapped
from pycore.sums.answer import Grid
from pycore.sums.worked import WorkedLine, WorkedPart, worked_parts
from pycore.words import plain
from pycore.words import question_paper as words
from pycore.words.phrase import Phrase, with_symbols
from pycore.words.sheet import FOOT

WAYS = {"both": (DRAWN, CALCULATED), "drawing": (DRAWN,), "calculation": (CALCULATED,)}
Answered = tuple[Learner, Task]
"""A learner's problem of one question, and it as a task."""


def overview(paper: QuestionPaper) -> Ledger:
    """The marks of each question by part, and for what they are given."""
    asked = [key for key in words.PARTS if any(key in dict(one.marks) for one in paper.questions)]
    heads = (ColumnHeading((words.QUESTION,), "start"), *(ColumnHeading((words.PARTS[key],)) for key in asked),
             ColumnHeading((words.TOTAL,)))  # fmt: skip
    rows = [
        ((f"{one.number}: {one.group.topic.title}",),
         *((str(dict(one.marks).get(key, "")),) for key in asked), (str(one.total),))
        for one in paper.questions
    ]  # fmt: skip
    rows.append(((words.TOTAL,), *(("",) for _ in asked), (str(paper.total),)))
    whose = words.whose(paper.texts["college"], paper.texts["group"], paper.texts["date"])
    parts = (words.part_line(key, paper.mark) for key in asked)
    notes = (*((whose,) if whose else ()), *parts, words.UNITS, words.ANGLES, words.FOLLOW_THROUGH)
    return Ledger(words.scheme_title(paper.texts["title"]), str(paper.code()), notes, (), heads, rows, FOOT)


def tables(paper: QuestionPaper, question: Question, found: Sequence[Answered]) -> Iterator[Ledger]:
    """Everything of one question: it begins a page. What is read off the drawing has a table of its own where something
    else is calculated."""
    ways, code = WAYS[question.asks], str(paper.code())
    own = question.own is not None
    apart = len(ways) > 1 and any(task.drawing is not None for _, task in found)
    title = words.scheme_question(question.number, question.group.topic.title, question.total)
    notes = (f"{words.parts_of(question.marks)}.", words.SAME_FOR_ALL if own else words.CODES_OPEN)
    for number, some in enumerate([(how,) for how in ways] if apart else [ways]):
        rows: list[KeyRow] = []
        for learner, task in found:
            row = row_for(question.group, learner, task.by(some[0]), some[0])
            rows.append(replace(row, code=code) if own else row)
        said = () if number else notes
        said = (*said, words.FIRST_DIAGONAL) if any(row.first for row in rows) else said
        head = KeyHead(
            words.BY_WAY[some[0]] if number else title, code, said, paper.paper, paper.letters,
            words.tolerance_head(some[0]), apart=number == 0,
        )  # fmt: skip
        answers, values, *mistakes = class_key.tables_of(head, rows, some)
        yield from (answers, values)
        if CALCULATED in some:
            yield from _worked(paper, question, *found[0])
        yield from mistakes


def _worked(paper: QuestionPaper, question: Question, learner: Learner, task: Task) -> Iterator[Ledger]:
    """The calculation for one learner's values, line by line."""
    page = question.group.topic
    whose = "" if question.own is not None else paper.letters.set(learner.name) or words.learner(learner.place)
    title = words.worked(whose if isinstance(whose, str) else words.learner(learner.place))
    values = page.case(learner.form).values_text()
    room = ledger.room_across(paper.paper)
    for part in worked_parts(page.answer(learner.form, ("workings",)).workings, task):
        yield _part(part, title, values, str(paper.code()), room)
        title, values = "", ""


def _part(part: WorkedPart, title: str, values: str, code: str, room: float) -> Ledger:
    """Lines or a table of a worked solution."""
    if part.table is not None:
        return _table(part.table, title, code)
    lines: list[Phrase] = [(values,)] if values else []
    lines += [(f"{part.title}:",)] if part.title else []
    for line in part.lines:
        lines += _broken(line, room)
    bare = (ColumnHeading(("",), "start"),)
    return Ledger(title, code, (), (), bare, [((line,),) for line in lines], FOOT, bare=True)


def _table(grid: Grid, title: str, code: str) -> Ledger:
    heads = tuple(
        ColumnHeading((head,), "end" if column else "start") for column, head in enumerate(grid.head)
    )
    return Ledger(title, code, (), (), heads, [tuple((cell,) for cell in row) for row in grid.rows], FOOT)


def _broken(line: WorkedLine, room: float) -> list[Phrase]:
    """A line as it fits: a sentence between words, a formula before its signs of equality."""
    if line.sentence:
        return [with_symbols(one) for one in wrapped(plain(line.parts[0]), ledger.CELL, room)]
    lines: list[Phrase] = []
    for part in line.parts:
        if lines and width_of((*lines[-1], *part), ledger.CELL) <= room:
            lines[-1] = (*lines[-1], *part)
        else:
            lines.append(part)
    return lines
