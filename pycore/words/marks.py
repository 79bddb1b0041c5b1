"""The words of marking a class's answers: the table that is pasted, what is said of each line, the summary."""

from collections.abc import Mapping, Sequence

from pycore.words.class_set import choose_separator
from pycore.words.inputs import quoted
from pycore.words.register import ADDED

TITLE = "Mark the class"
LEAD = (
    "Type or paste the learners’ answers, one learner per line: the code of the sheet, then the answer. If you have "
    "them, add the angle, its direction, and “drawn” or “calculated”. You can paste a table from a spreadsheet, with "
    "or without its heading row."
)
BY_PHOTOGRAPH = "Mark their drawings from photographs"
RESULTS = "Answers, one learner per line"
EXAMPLE = "334-PEK-23G; 7.5 A; 78.5; clockwise; drawn"
RESULTS_HELP = (
    "Numbers without a unit are in the unit of the topic. For lengths write 52 mm or 5.2 cm. The answers are never "
    "sent."
)
MARK = "Mark these answers"
SAVE = "Save as a table"
ERASE = "Erase the answers"
ERASED = "The answers are erased."
SAVE_TYPED, TYPED_FILE = "Save the answers as a file", "class-answers.txt"
OLD = "The answers have changed since they were marked. Mark them again to update the table."
BANDS = {"accept": "accept", "look": "look again", "wrong": "wrong"}
HEAD = ("Learner", "Answer", "Verdict", "Possible mistake", "Marks")
REFUSED = "Lines that could not be used"
ADDED_OPEN = f"{ADDED} Some are a range: look at these answers again."
OPEN = "Marks that are still a range: {count}."
SUMMARY = "The class’s mistakes"
SUMMARY_NOTE = "Filled bar: the only mistake that fits. Open bar: one of several."
MORE_ANSWERS = "Mark the other lines separately."
NOTHING = "There is nothing to mark yet. Enter at least one line with a code and an answer."
NO_CAUSE = "no typical mistake"
SIZE, ANGLE = "size", "angle"
SIZE_RIGHT, WHICH_SIDE = "size right, direction missing", "size and angle right, side missing"
COARSE = "right, give three figures"
NO_PROBLEM = "the code stands for no problem."
FILE = "class-answers.csv"

ROLES: Mapping[str, tuple[str, ...]] = {
    "code": ("code", "sheet", "problem"),
    "answer": ("answer", "result", "length", "current", "size", "reading", "neutral", "neutral current", "sum"),
    "answer-unit": ("unit", "in"),
    "answer-angle": ("angle", "degrees", "direction"),
    "answer-side": ("side", "sense", "turn"),
    "answer-how": ("how", "by", "way", "found"),
    "answer-first": ("first diagonal", "first", "diagonal", "first step", "its size"),
    "answer-first-angle": ("first angle", "angle of the first diagonal", "diagonal angle", "its angle"),
    "answer-first-side": ("first side", "side of the first diagonal", "diagonal side", "its side", "its direction"),
    "name": ("name", "learner", "who", "student"),
    "line": ("line", "no", "no.", "number"),
}
"""How a column may be called, in small letters."""
SIDES = {
    "clockwise": "clockwise", "cw": "clockwise", "anticlockwise": "anticlockwise", "acw": "anticlockwise",
    "anti-clockwise": "anticlockwise",
    "counterclockwise": "anticlockwise", "ccw": "anticlockwise", "left": "anticlockwise", "right": "clockwise",
    "lagging": "lagging", "lag": "lagging", "lags": "lagging", "behind": "lagging",
    "leading": "leading", "lead": "leading", "leads": "leading", "ahead": "leading",
    "up": "up", "upwards": "up", "above": "up", "down": "down", "downwards": "down", "below": "down", "": "",
}  # fmt: skip
"""Words for a side: on the paper, seen along the arrow that angles are counted from, or in time."""
FILLING = ("to", "the", "of", "by")
"""Words between an angle and its side."""
RETURNING = ("returning", "returned", "reversed", "return")
"""Words that say that an angle is that of the arrow that returns."""
HOWS = {
    "": "drawn", "drawn": "drawn", "drawing": "drawn", "d": "drawn", "calculated": "calculated",
    "calculation": "calculated", "calc": "calculated", "c": "calculated",
}  # fmt: skip



def off_and_allowed(what: str, off: str, allowed: str, unit: str) -> str:
    """How far a size or an angle is off, and how far it may be."""
    return f"{what} {off}{unit} off, {allowed}{unit} allowed"


def near_miss(told: Sequence[str]) -> str:
    """An answer just beyond its tolerance: a person decides."""
    return f"nearly right: {', '.join(told)}. Up to twice as much, you decide"


def saved(separator: str) -> str:
    """The marked answers have been saved as a table."""
    return f"The table is saved. {choose_separator(separator)}"


def table_head(unit: str) -> tuple[str, ...]:
    """The head line of the results as a table; ``unit`` is that of what an answer is off by."""
    return (
        "Line", "Name", "Code", "Answer", "Unit", "Angle", "Side", "How", "First diagonal", "First angle",
        "First side", "Verdict", f"Off ({unit})", "Angle difference", "Possible mistake", "Marks from", "Marks to",
        "Marks of",
    )  # fmt: skip


WRONG_SIGN = "wrong sign: a size has no minus"


def read_as(typed: str, plain: str) -> str:
    """An answer with words before its number."""
    return f"{quoted(typed)} was read as {plain}"


def read_as_nothing(typed: str) -> str:
    """An answer that nobody can read."""
    return f"{quoted(typed)} was read as no answer: 0"


def not_read(typed: str) -> str:
    """A part of an answer that nobody can read."""
    return f"{quoted(typed)} cannot be read and was left out"


SHEET = "the learner’s sheet"
"""Where a lecturer finds the code of an answer."""


def did_you_mean(line: int, code: str, place: int) -> str:
    """A code with a slip that is like one of the set alone."""
    return (
        f"Line {line}: did you mean {code} (sheet {place})? One character is wrong or two are swapped: compare with "
        f"{SHEET}."
    )


def take(code: str) -> str:
    """The button that puts a code in the place of a mistyped one."""
    return f"Take {code}"


def refused(line: int, why: str) -> str:
    """A line that cannot be used."""
    return f"Line {line}: {why}"


NO_CODE = "there is no code on it. Each line needs the code of its sheet and an answer."


def two_of_a_name(name: str) -> str:
    """A name that stands for more than one learner of the set."""
    return f"more than one learner is called {name[:40]}. Give the code of the sheet."


def no_answer(code: str) -> str:
    """A line without an answer."""
    return f"there is no answer for {code[:40]}."


OPEN_QUOTE = "a quotation mark is not closed."


def bad_side(typed: str) -> str:
    """A side that is none."""
    return f"{quoted(typed)} is not a direction. Write clockwise or anticlockwise, or leave it empty."


def bad_how(typed: str) -> str:
    """A way that is none."""
    return f"{quoted(typed)} is not a method. Write drawn or calculated, or leave it empty."


def too_many(lines: int, most: int) -> str:
    """More lines than one table takes."""
    return f"The table has {lines} lines. At most {most} can be marked at once. Mark the others separately."


def counted(accept: int, look: int, wrong: int, refused_lines: int) -> str:
    """How the class did."""
    sentence = f"{accept + look + wrong} marked: {accept} accepted, {look} to look at again, {wrong} wrong."
    if not refused_lines:
        return sentence
    return f"{sentence} {refused_lines} {'line' if refused_lines == 1 else 'lines'} could not be used."


def progress(done: int, of: int) -> str:
    """How far the marking is."""
    return f"Line {done} of {of}"


def marks(low: int, high: int, of: int) -> str:
    """Marks; a range where a person should look again."""
    return f"{low} of {of}" if low == high else f"{low} to {high} of {of}"


STEPS, WITHOUT_ANGLE = ("first step", "length", "angle"), ("first step", "size")


def by_step(ranges: Sequence[tuple[int, int]]) -> str:
    """How marks fall on the steps of a problem."""
    names = STEPS if len(ranges) == len(STEPS) else WITHOUT_ANGLE
    counts = (f"{low}" if low == high else f"{low} to {high}" for low, high in ranges)
    return ", ".join(f"{name} {count}" for name, count in zip(names, counts, strict=True))


def again(line: int) -> str:
    """The same code stood on an earlier line."""
    return f"The same code is on line {line} too."


def other_set(code: str) -> str:
    """A code of another set, and which."""
    return f"From another set, {code}."


def meant(unit: str) -> str:
    """The number fits in another unit."""
    return f"right in {unit}: wrong unit"


def measured_from(origin: str) -> str:
    """The angle is right from another line that the page counts from."""
    return f"size right, angle measured from {origin}"


def of_arrow(other: str) -> str:
    """The angle is that of the arrow that points the other way."""
    return f"size right, angle of {other}"


FOLLOWS = "correct from the learner’s own first step"


def causes(groups: Sequence[Sequence[str]]) -> str:
    """What would give an answer: causes apart from one another, mistakes that land together joined."""
    return "; ".join(" or ".join(group) for group in groups)
