"""What a question paper says of a problem in words: the question, what is given, and what is to be calculated."""

from dataclasses import dataclass

from pycore.sheet.kinds import PROBLEM
from pycore.sheet.plan import Plan
from pycore.sums.case import SumCase
from pycore.sums.sheet import question_of
from pycore.sums.worksheet import worksheet_of
from pycore.words import plain
from pycore.words.sheet import ROOM
from pycore.words.sums import ROUTINE


@dataclass(frozen=True, slots=True)
class ExamQuestion:
    """The question in a sentence, and the sentences that give its values and say how it is drawn."""

    question: str
    given: tuple[str, ...]


def exam_question(case: SumCase, plan: Plan, *, any_method: bool) -> ExamQuestion:
    """Return a problem in words: nothing of its answer."""
    method = case.method_words(plan, any_method=any_method)
    notes = case.sheet_words(plan, PROBLEM, method).notes
    question, further = question_of(case, plan, PROBLEM, notes)
    told = tuple(note for note in further if note != ROUTINE)
    rows = [row for row in worksheet_of(case, plan, question, any_method=any_method).given if row.amount != ROOM]
    unit = plain((case.units_head(),))
    amounts = (row.amount if row.amount.endswith(unit) else f"{row.amount} {unit}" for row in rows)
    values = ", ".join(f"{plain(row.symbol)} = {amount}" for row, amount in zip(rows, amounts, strict=True))
    known = any(note.startswith(case.values_text()) for note in told)
    return ExamQuestion(question, told if known or not values else (f"{values}.", *told))
