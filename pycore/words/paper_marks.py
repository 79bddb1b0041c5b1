"""The words of marking a question paper, and of the register that its marks go into."""

from collections.abc import Mapping, Sequence

from pycore.words.inputs import quoted
from pycore.words.question_paper import PARTS
from pycore.words.register import ADDED

TITLE = "Mark the papers"
LEAD = (
    "Paste a table with one row for each learner, as a form saves it. Or type one line for each learner and question: "
    "the name or number, the question, then the drawn and the calculated answer. An empty answer has 0 marks."
)
MORE_ABOUT = "More about the lines"
ABOUT = (
    "In a table with one row for each learner, the heads of the columns say which question: Name, Q1 drawn, Q1 "
    "calculated, Q2 drawn. 1a and 1b will do too. An angle may have a column of its own: Q1 drawn angle. Other "
    "columns, such as a time or points, are passed over.",
    "An answer is a size and an angle: 6.4 A at 145 anticlockwise. You can also type 6.4∠145, 6.4 @ 145, 6.4 A 145 "
    "acw, 64 mm, a comma as decimal mark, lagging, leading, left or right.",
    "Each sheet says which way is positive. An angle without sign or side is positive, and 340 is −20. Where your "
    "class writes clockwise or anticlockwise and only the other side is right, the side is missing: you decide.",
    "A first name is enough if no other learner of the paper has it. The code on the paper can stand for the name.",
    "After the answers you can give marks for the parts of the question, in this order: " + ", ".join(PARTS.values())
    + ". Leave out those that the question does not ask for. What you leave empty is marked from the answers.",
    "A question that asks for one answer has one. A line with the names of the columns may come first: then the "
    "columns may have any order.",
)
RESULTS = "Answers of the class"
EXAMPLE = "Ada Lark; 1; 6.4 A at 145 anticlockwise; 6.43 A at 145.5 anticlockwise"
RESULTS_HELP = "Names, answers and marks are never sent."
STAYS = "They stay on this device for a year after the last change, unless you erase them or choose another time."
MARK, SAVE, ERASE = "Mark these answers", "Save as a table", "Erase the answers"
OLD = "The answers or the paper have changed since they were marked. Mark them again."
ERASED = "The answers are erased."
ADDED_OPEN = f"{ADDED} Some are still a range: choose them in the table below, then add them again."
OPEN = "Marks that are still a range: {count}. You can choose them in the table first."
LEAST, MOST = "The least for all", "The most for all"
FILE = "paper-marks.csv"
NOTHING = "There is nothing to mark yet. Enter at least one line with a learner, a question and an answer."
NO_ANSWER = "no answer"
NOT_TOGETHER = "not all of these parts lose marks at once, so their ranges add up to a wider one"
HEAD = ("Learner", "Question", "Answers", "Marks", "What was found")
ALL_RIGHT = "right"
TABLE_HEAD = ("No.", "Name", "Question", "Drawn", "Calculated", "Marks from", "Marks to", "What was found")
DECIDED = "Marks decided"
MARKED_HERE = "Marked by the site"
"""The column by which a table that is pasted again tells the site's own marks from a person's."""
TOTALS_HEAD = ("Learner", "Marks", "Not marked yet")
TOTALS, LINES = "Marks of each learner", "Marks of each question"
MISTAKES = "The class’s mistakes"
CHOOSE, BY_PART = "Choose the marks", "By part"
OTHER_PAPER = "The answers that were here stay with their own paper. Open it to see them."
ROLES: Mapping[str, tuple[str, ...]] = {
    "learner": ("learner", "name", "number", "no", "no.", "code", "who", "student"),
    "question": ("question", "q"),
    "drawn": ("drawn", "drawing", "answer drawn"),
    "calculated": ("calculated", "calculation", "answer calculated"),
    "decided": ("marks decided",),
    "marked here": (MARKED_HERE.lower(),),
    **{key: (label.lower(),) for key, label in PARTS.items()},
    "resultant": (PARTS["resultant"].lower(), "result drawn"),
}
"""How a column may be called, in small letters."""
SAID_BY: Mapping[str, str] = {"drawn": "draw", "calculated": "calcul"}
"""What the head of a column of answers has in it, by how they were found."""
ANGLE = "angle"
COUNTS = ("points?", "scores?", "marks?")
"""Whole words, as patterns, by which a form calls its columns of points."""
NO_ANSWERS = (*COUNTS, "feedback", "comments?", "remarks?")
"""By which it calls all columns of its own: they hold no answer."""
WHO = ("name", "learner", "student")
NAME_PARTS = (("first name", "given name", "forename"), ("last name", "surname", "family name"))
NOBODY_NAMED = "The first line names questions, but no column says whose answers they are. Call that column “Name”."
MOST_LISTED = 12


def refused(who: Sequence[str], why: str, line: int, quote: str) -> str:
    """A line that cannot be used: who and which question it is for, why, and the line itself."""
    named = f"{', '.join(who)}: " if who else ""
    return f"{named}{why} Line {line} is “{quote}”."


def at_angle(size: str, angle: str) -> str:
    """An answer whose angle had a cell of its own."""
    return f"{size} at {angle}".strip()


def not_marked(questions: Sequence[int]) -> str:
    """The questions that are missing."""
    if not questions:
        return ""
    return f"question{'s' if len(questions) > 1 else ''} {', '.join(map(str, questions))}"


def marked_of(low: int, high: int, of: int, whole: int) -> str:
    """Marks so far: of a paper that is marked in part, how much of it was."""
    return f"{of_total(low, high, of)} marked" if of < whole else of_total(low, high, of)


def of_question(place: int, name: str, number: int) -> str:
    """A learner's question."""
    return f"{learner(place, name)}, {of_number(number)}"


def of_number(number: int) -> str:
    """A question in the middle of a sentence."""
    return f"question {number}"


def settle(who: str, marks: int, of: int) -> str:
    """A number of marks that can be chosen."""
    return f"{who}: {marks} of {of}"


def to_choose(count: int) -> str:
    """How many marks are still ranges."""
    return f"Marks that are a range: {count}. Press the number that you give."


def show_line(line: int) -> str:
    """The button that shows a line among the answers."""
    return f"Show line {line}"


def without_marks(names: Sequence[str]) -> str:
    """The learners who have no marks yet."""
    listed = ", ".join(names[:MOST_LISTED])
    more = f" and {len(names) - MOST_LISTED} more" if len(names) > MOST_LISTED else ""
    return f"No line yet: {listed}{more}."


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
