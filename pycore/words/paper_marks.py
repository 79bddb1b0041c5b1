"""The words of marking a question paper, and of the register that its marks go into."""

from collections.abc import Mapping, Sequence

from pycore.words.inputs import quoted
from pycore.words.question_paper import PARTS

TITLE = "Mark the papers"
LEAD = (
    "Type or paste one line for each learner and question. It has the learner’s name or number and the question. "
    "Then come two answers: the drawn one and the calculated one. Each has its size, then “at” and its angle. After "
    "them you can give marks for parts, in this order: " + ", ".join(PARTS.values()) + ". Empty parts are marked from "
    "the answers."
)
RESULTS = "Answers, one line for each learner and question"
EXAMPLE = "Ada Lark; 1; 6.4 A at 145 anticlockwise; 6.43 A at 145.5 anticlockwise"
RESULTS_HELP = (
    "Names, answers and marks are never sent. They stay on this device for a year after the last change, unless you "
    "erase them or choose another time."
)
MARK, SAVE, ERASE = "Mark these answers", "Save as a table", "Erase the answers"
REGISTER = "Add to the register"
OLD = "The answers or the paper have changed since they were marked. Mark them again."
ERASED = "The answers are erased from this device."
ADDED = "The marks are in the register."
FILE = "paper-marks.csv"
NOTHING = "There is nothing to mark yet. Enter at least one line with a learner, a question and an answer."
NOTHING_ON_LINE = "there is no answer on it and no marks."
HEAD = ("Learner", "Question", "Marks", "What was found")
TABLE_HEAD = ("No.", "Name", "Question", "Drawn", "Calculated", "Marks from", "Marks to", "What was found")
TOTALS_HEAD = ("Learner", "Marks")
TOTALS, LINES = "Marks of each learner", "Marks of each question"
MISTAKES = "The class’s mistakes"
ROLES: Mapping[str, tuple[str, ...]] = {
    "learner": ("learner", "name", "number", "no", "no.", "code", "who", "student"),
    "question": ("question", "q"),
    "drawn": ("drawn", "drawing", "answer drawn"),
    "calculated": ("calculated", "calculation", "answer calculated"),
    **{key: (label.lower(),) for key, label in PARTS.items()},
    "resultant": (PARTS["resultant"].lower(), "result drawn"),
}
"""How a column may be called, in small letters."""


def no_question(typed: str, count: int) -> str:
    """A question that the paper does not have."""
    return f"{quoted(typed)} is not a question of this paper. Enter a number from 1 to {count}."


def bad_part(part: str, typed: str, most: int) -> str:
    """Marks of a part that cannot be used."""
    return f"{part}: {quoted(typed)} cannot be used. Enter a whole number from 0 to {most}."


def no_part(part: str, number: int) -> str:
    """Marks for a part that a question does not have."""
    return f"question {number} has no marks for “{part}”. Leave that cell empty."


def again(line: int) -> str:
    """The same learner and question stood on an earlier line."""
    return f"this learner’s answer to this question is on line {line} too."


def between(low: int, high: int) -> str:
    """A range of marks."""
    return f"{low} to {high}"


def is_range(text: str) -> bool:
    """Whether a text is a range of marks as ``between`` writes it."""
    low, word, high = text.partition(" to ")
    return bool(word) and low.isdigit() and high.isdigit()


def of_total(low: int, high: int, of: int) -> str:
    """Marks of so many."""
    return f"{low} of {of}" if low == high else f"{low} to {high} of {of}"


def could_be(names: Sequence[str]) -> str:
    """What could explain an answer."""
    return " or ".join(names)


def of_way(how: str, remark: str) -> str:
    """What was found of one answer."""
    return f"{how}: {remark}"


def part_marks(key: str, low: int, high: int, of: int) -> str:
    """The marks of one part."""
    return f"{PARTS[key].lower()} {of_total(low, high, of)}"


def learner(place: int, name: str) -> str:
    """A learner by name, else by number."""
    return name or f"Learner {place}"


def counted(lines: int, refused: int) -> str:
    """How many lines were marked."""
    done = "1 answer marked" if lines == 1 else f"{lines} answers marked"
    if not refused:
        return f"{done}."
    return f"{done}. {refused} {'line' if refused == 1 else 'lines'} could not be used."
