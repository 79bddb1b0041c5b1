"""What a question paper says of a problem in words: the question, what is given, and what is to be calculated."""

from dataclasses import dataclass

from pycore.constructions.names import RETURN_KEY, SUM_KEY
from pycore.practice.task import Task
from pycore.sheet.kinds import PROBLEM
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.sheet import question_of
from pycore.sums.worksheet import worksheet_of
from pycore.words import plain
from pycore.words import question_paper as words
from pycore.words.answers import with_article
from pycore.words.constructions import as_line
from pycore.words.sheet import ROOM
from pycore.words.sums import ROUTINE


@dataclass(frozen=True, slots=True)
class ExamQuestion:
    """The task of the drawing in a sentence, the sentences that give the values and say how it is drawn, and what is to
    be calculated: its name and symbol, its unit, and from where its angle is counted."""

    question: str
    given: tuple[str, ...]
    asked: str


def exam_question(case: SumCase, plan: Plan, task: Task, *, any_method: bool, drawn: bool) -> ExamQuestion:
    """Return a problem in words: nothing of its answer. ``drawn``: it is drawn too."""
    method = case.method_words(plan, any_method=any_method)
    sheet = case.sheet_words(plan, PROBLEM, method)
    question, further = question_of(case, plan, PROBLEM, sheet.notes, of_paper=True)
    notes = tuple(note for note in further if note != ROUTINE)
    values_text = case.values_text()
    known = any(note.startswith(values_text) for note in notes)
    if sheet.values:
        notes = tuple(note.replace(f"{values_text}.", sheet.values) for note in notes)
    if not drawn:
        notes = tuple(filter(None, (note.replace(sheet.direction, "").strip() for note in notes)))
    values = _values(case, plan, question, any_method=any_method)
    return ExamQuestion(question, notes if known or not values else (f"{values}.", *notes), _asked(case, task))


def _values(case: SumCase, plan: Plan, question: str, *, any_method: bool) -> str:
    """Return the given values by their symbols."""
    rows = [row for row in worksheet_of(case, plan, question, any_method=any_method).given if row.amount != ROOM]
    unit = plain((case.units_head(),))
    amounts = (row.amount if row.amount.endswith(unit) else f"{row.amount} {unit}" for row in rows)
    return ", ".join(f"{plain(row.symbol)} = {amount}" for row, amount in zip(rows, amounts, strict=True))


def _asked(case: SumCase, task: Task) -> str:
    """Return what is to be calculated, in which unit, and its angle: from where, and which way is positive."""
    tags = case.notation.tags
    name = case.guess_word
    if task.symbol == tags[SUM_KEY]:
        name = case.result_word or with_article(plain(case.sum_word))
    elif task.symbol == tags[RETURN_KEY]:
        # The arrow that returns has no word of its own.
        name = ""
    origin = plain(as_line(task.origin)) if task.angled else ""
    return words.asked(name, plain(task.symbol), task.writing.unit, origin, anticlockwise=task.sense > 0)
