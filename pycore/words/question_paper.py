"""The words of question papers: the form, the printed pages, the mark scheme, what is said while one is made."""

from collections.abc import Sequence

from pycore.words.cautions import EXAMINING_BODY
from pycore.words.class_set import TIERS
from pycore.words.inputs import quoted, with_mark

SLUG = "question-papers"
TITLE = "Question papers"
LEAD = (
    "Make one paper of several questions, from any of the calculators. Each learner gets values of their own, or the "
    "same values that you choose. The mark scheme has every answer, and the number that each usual mistake gives."
)
DESCRIPTION = "A question paper of several phasor questions for each learner, with its mark scheme, as PDF."

PAPER_TITLE, COLLEGE, GROUP, DATE = "Title", "College", "Group", "Date"
MINUTES, MINUTES_HELP = "Time allowed (minutes)", "Empty: no time is printed."
INSTRUCTIONS = "Instructions on the front page"
DEFAULT_TITLE = "Phasors: test"
DEFAULT_INSTRUCTIONS = (
    "Answer all questions. Show your working. Draw to scale, and put an arrowhead on the tip of every phasor."
)
LEARNERS = "Learners"
LEARNERS_HELP = "Number of papers. If you enter names below, there is one paper for each name."
PAPER, SCALE = "Paper size", "Scale of the drawings"
CODES = "Codes on the sheets"
CODES_CHOICES = (("paper", "one code for the paper"), ("problem", "a code and QR code on each sheet"))
CODES_HELP = (
    "With one code for the paper no phone can open a question: for tests. With a QR code on each sheet a phone can, "
    "and it can show the answer: for homework."
)
COUNT = "Number of questions"

TOPIC, TIER, METHOD = "Topic", "Level", "Method"
LINK = "Your own values"
OWN_HELP = (
    "Leave empty for different values for each learner. For the same values, type them in this order: ",
    ". Or paste the link of a sheet.",
)
"""What stands before and behind the values that a topic needs."""
ASKS = "What is asked"
ASKS_CHOICES = (("both", "drawing and calculation"), ("drawing", "drawing"), ("calculation", "calculation"))
BEFORE = "Your sentences before the question"
WORKING = "Space for working"
WORKING_CHOICES = (("lines", "a page of lines"), ("squares", "a page of squares"), ("none", "on the problem sheet"))
PARTS: dict[str, str] = {
    "scale": "Scale", "directions": "Directions", "lengths": "Lengths", "resultant": "Result", "method": "Method",
    "accuracy": "Accuracy", "values": "Values",
}  # fmt: skip
"""What marks are given for, by key, in the order of the mark scheme: for ever, as answers are typed in it."""
LATER = ("values",)
"""Parts that papers of earlier versions lack: with no marks for them a paper is as it was."""
OF_DRAWING = ("scale", "directions", "lengths", "resultant", "values")
OF_CALCULATION = ("method", "accuracy")
GIVEN_FOR: dict[str, str] = {
    "scale": "every line is drawn to the scale of the sheet, or to one scale that is written down",
    "directions": "every line has the right direction, within 2°",
    "lengths": "every line has the right length, within 1 mm",
    "resultant": "the size, and the angle where one is asked for, are read off the drawing within the tolerances "
                 "below. 95 of 100 careful drawings of a problem keep to them: they are wider where its lines cross "
                 "flatly. If both are off, the ellipse of careful drawings counts",
    "method": "the working shows a method that leads to the answer; it stands if a number before it was wrong. The "
              "answer alone does not show it: where that is wrong, read the working",
    "accuracy": "the calculated size is within 1 %, the angle, where one is asked for, within 0.5°",
    "values": "each value that is calculated before it is drawn is within 1 %, such as each voltage of a series "
              "circuit. What is drawn correctly from a wrong one keeps its marks",
}
"""For what the marks of a part are given. The limits of directions and lengths are common practice with no source."""
CODES_OPEN = "Each row’s code opens the learner’s problem on its page, for example to check a photograph."
SAME_FOR_ALL = "Every learner has the same values."
ALL_LEARNERS = "all learners"
BY_WAY = {"drawn": "Read off the drawing", "calculated": "Calculated"}
"""The heads of the tables of a question that has a result of its own by each way."""
UNITS = (
    "Units: each question names its unit. An answer without a unit is read in that unit and loses no marks. A wrong "
    "unit, or a wrong prefix, loses the marks for accuracy, or for the result of a drawing."
)
ANGLES = (
    "Angles: which way is positive stands on each sheet. An angle without sign or side is positive. An angle from 180° "
    "to 360° is the direction that it ends in: 340° is −20°. A wrong sign or side makes the answer wrong."
)
OVERLAYS = "Overlays for marking"
OVERLAYS_HELP = "An overlay has the right drawing, in the learner’s scale. Lay it on the drawing to compare."
OVERLAY_CHOICES = (("yes", "with the mark scheme"), ("no", "none"))
FIRST_DIAGONAL = "First diagonal: the sum of the first two phasors. Up to there a drawing can be right."
FOLLOW_THROUGH = (
    "Follow-through: a slip loses the marks of its own part once. What is then drawn or calculated correctly from it "
    "keeps its marks."
)
GROUPS = (
    ("roll", "Names"), ("sheets", "Paper size, scale, codes"), ("signs", "Line names and number style"),
    ("again", "Values of the paper"),
)  # fmt: skip
SEED, SEED_HELP = "Paper number", "The same number always gives the same values. Change it for a resit."
ADD, REMOVE, UP, DOWN = "Add a question", "Remove", "Move up", "Move down"
NO_VALUES = "It has none of its own."
MAKE, MAKE_SCHEME = "Make the papers", "Make the mark scheme"
ONE = "Make one learner’s paper"
WHICH = "Learner’s name or number"
WHICH_HELP = "For a lost paper: a name from the list, a number, or the code on the learner’s paper."
SHARE, SAVE, OPEN_FILE = "Share", "Save as a file", "Open a file"
CHOICES = "Settings of this paper"
FRONT = "The first learner’s front page"
LINK_LABEL = "Link to this paper, without names"
COPIED = "The link to this paper is copied. It contains no names."
LINK_TOO_LONG = "Your own sentences make the link too long. Save the paper as a file instead."
STOPPED = "Stopped. Nothing was saved."
IN_HAND = "A question paper is being made. Let it finish, or stop it, then open the new version."
OPENED, BACK = "The paper is open.", "Back to the paper before"
NEW, OTHER_VALUES = "New paper", "Same questions, other values"
BEGUN = "This is a new paper, with values of its own. The paper before is in the list below."
OTHER_VALUES_SAID = "The questions have other values now. The paper before is in the list below."
NOT_AS_COLLEGE = "This paper differs from your college settings in: {what}."
USE_COLLEGE = "Use the college settings"
SAME_NUMBER = (
    "“{title}” (paper {code}) has the same paper number. A question on the same topic at the same place can have the "
    "same values. For other values press “Same questions, other values”."
)
LOST, TO_MARKS, MARK_KEPT = "A lost paper", "Mark the papers", "Mark"
BAD_FILE = "This file holds no question paper of this site."
NO_SCRIPT = "JavaScript is off. A question paper is made on your own device, which needs JavaScript."
NOTE = f"For a test, leave the codes as they are: no phone can open a question. {EXAMINING_BODY}"

MOST_LISTED = 6
PAPER_LINE = "Paper **{code}**"
HEADS = ("No.", "Topic", "Marks")
MORE = "Your own sentences"
KEPT = "Papers on this device"
KEPT_HELP = (
    "A paper is kept here when you make it or begin a new one, with its names and the answers to it. It is never sent."
)
NAMES_STAY = "They stay on this device for a year after the last change, unless you erase them or choose another time."
STAYS = "It stays for a year after the last change, unless you erase it or choose another time."
KEPT_DETAIL = "Paper {code}, learners: {count}, kept on {date}."
OPEN, ERASE, UNDO = "Open", "Erase", "Undo"
PAPER_ERASED = "The paper is erased, with its names and the answers to it."
PAPER_ERASED_SHOWN = (
    "The kept paper and the answers to it are erased. The same paper still stands below with its "
    "names. It stays there until you begin a new paper or erase the names."
)
FILE_SAVED = "The file is saved."
FILE_SAVED_NAMES = "The file is saved. It holds the names too: give it only to people who may have them."
PAPER_RESTORED = "The paper is back, with its names and the answers to it."
NAME, TIME, TOTAL = "Name", "Time allowed", "Total"
QUESTION, MARKS, MARKED = "Question", "Marks", "Marks given"
ANSWER = "Answer:"
MARKER = ("Grade", "Marked by", "Date marked")
"""What the marker fills in on the front page."""
ROOM_FOR_WORKING = "Working"


def question(number: int) -> str:
    """The name of a question."""
    return f"{QUESTION} {number}"


def marks(count: int) -> str:
    """A number of marks."""
    return "1 mark" if count == 1 else f"{count} marks"


def parts_and_marks(parts: Sequence[tuple[str, int]]) -> str:
    """Parts with their marks: scale 1, directions 2."""
    return ", ".join(f"{PARTS[key].lower()}\u00a0{count}" for key, count in parts if count)


def to_draw(task: str, number: int, parts: Sequence[tuple[str, int]]) -> str:
    """The part of a question that is drawn; ``task``: what is to be drawn, in a sentence."""
    return f"{task} Draw to scale on the sheet “{question(number)}”. [{parts_and_marks(parts)}]"


def asked(name: str, symbol: str, unit: str, origin: str, *, anticlockwise: bool) -> str:
    """What is to be calculated: its name ("": none), symbol and unit; ``origin``: from where its angle is counted, ""
    where no angle is asked for."""
    found = f"{name}, {symbol}, in {unit}" if name else f"{symbol} in {unit}"
    if not origin:
        return found
    sense = "anticlockwise" if anticlockwise else "clockwise"
    return f"{found}, and its angle from {origin} (positive: {sense})"


def to_calculate(found: str, parts: Sequence[tuple[str, int]]) -> str:
    """The part of a question that is calculated."""
    working = "Show your working, and write the result with its unit on the answer line."
    return f"Calculate {found}. {working} [{parts_and_marks(parts)}]"


def which(code: str, place: int, of: int, page: int = 0, pages: int = 0) -> str:
    """The foot of a page: whose paper it is, and which of its pages (0: not counted)."""
    counted = f", page {page} of {pages}" if page else ""
    return f"Paper {code}, learner {place} of {of}{counted}"


def minutes(count: int) -> str:
    """The time allowed."""
    return f"{count} minutes"


def contents(questions: int, total: int, learners: int) -> str:
    """What a paper holds."""
    asked = "1 question" if questions == 1 else f"{questions} questions"
    people = "1 learner" if learners == 1 else f"{learners} learners"
    return f"{asked}, {marks(total)}, for {people}."


def values_of(tier: str, *, own: bool) -> str:
    """Where a question's values come from."""
    return "your values" if own else dict(TIERS)[tier].lower()


def announced(code: str) -> str:
    """Said when the form asks for another paper."""
    return f"Paper {code} can be made."


def bad_learners(label: str, typed: str, most: str) -> str:
    """A number of learners that cannot be used."""
    return f"{label}: {quoted(typed)} cannot be used. Enter a whole number from 1 to {most}."


def bad_number(label: str, typed: str, most: str) -> str:
    """A count that cannot be used."""
    return f"{label}: {quoted(typed)} cannot be used. Enter a whole number from 0 to {most}."


def no_marks(number: int) -> str:
    """A question without marks."""
    return f"Question {number} has no marks for what it asks. Give at least one part a mark."


def too_long(label: str, most: int) -> str:
    """A text that does not fit."""
    return f"{label}: the text is too long. Use at most {most} characters."


def bad_link(label: str, typed: str) -> str:
    """A link that is none of a calculator's."""
    return f"{label}: {quoted(typed)} is not a link to a calculator. Press Share on its page and paste the whole link."


def bad_values(label: str, message: str) -> str:
    """Own values that cannot be used."""
    return f"{label}: these values cannot be used. {message}"


def own_example(labels: Sequence[str], values: Sequence[str]) -> str:
    """Which values a calculator needs, in their order, with an example."""
    return f"{'; '.join(labels)} ({'; '.join(values)})"


def bad_count(label: str, topic: str, example: str, count: int) -> str:
    """Too few values, or too many."""
    return f"{label}: {count} typed. {topic} takes {example}. Put a semicolon between two values."


def no_learner(typed: str, most: int) -> str:
    """A name or number that no learner has."""
    if not typed.strip():
        return f"{WHICH}: enter a name from the list or a number up to {most}."
    return f"{WHICH}: no learner of this paper is {quoted(typed)}. Enter a name from the list or a number up to {most}."


def several_of_a_name(typed: str, who: Sequence[str]) -> str:
    """A name, or a part of one, that several learners have; ``who``: their names with their numbers."""
    listed = ", ".join(who[:MOST_LISTED])
    return f"{WHICH}: {quoted(typed)} could be {listed}. Enter the whole name or the number."


def other_paper(code: str) -> str:
    """A code of another paper."""
    return f"Code {code} belongs to another paper. Open that paper first: from this device, or from its file."


def working(place: int, of: int) -> str:
    """Which learner's paper is under way."""
    return f"Paper {place} of {of}"


def scheme_working(number: int) -> str:
    """Which question's answers are under way."""
    return f"Mark scheme, question {number}"


def saved(papers: int) -> str:
    """What the file of papers holds."""
    return "The paper is saved as a PDF." if papers == 1 else f"{papers} papers are saved as one PDF."


def saved_scheme(answers: str, overlays: str) -> str:
    """What the file of a mark scheme holds, by pages."""
    if not overlays:
        return "The mark scheme is saved as a PDF."
    return f"The mark scheme is saved as a PDF. Answers: {answers}, overlays: {overlays}."


def file_name(code: str, kind: str) -> str:
    """The name of a file: question-paper-7AB-CDE-FGH.pdf."""
    return f"{kind}-{code}.pdf"


def scheme_title(title: str) -> str:
    """The heading of a mark scheme."""
    return f"Mark scheme: {title}"


def scheme_question(number: int, topic: str, count: int) -> str:
    """The heading of a question in the mark scheme."""
    return f"{question(number)}: {topic}, {marks(count)}"


def part_line(key: str, mark: str = ".") -> str:
    """For what the marks of a part are given; ``mark``: the decimal mark."""
    return f"{PARTS[key]}: {with_mark(GIVEN_FOR[key], mark)}."


def whose(college: str, group: str, date: str) -> str:
    """Whose mark scheme it is: what is filled in of college, group and date."""
    return ", ".join(filter(None, (college, group, date)))


def learner(place: int) -> str:
    """A learner without a name that can be set."""
    return f"learner {place}"


def worked(whose: str) -> str:
    """The heading of a worked solution; ``whose``: the learner with these values, "" where all have them."""
    return f"Worked solution with the values of {whose}" if whose else "Worked solution"


def tolerance_head(how: str) -> tuple[str, str]:
    """The head of the tolerances of one way of answering."""
    return "Tolerance", {"drawn": "of drawings", "calculated": "calculated"}[how]


def parts_of(parts: Sequence[tuple[str, int]]) -> str:
    """How a question's marks fall on its parts."""
    return f"{MARKS}: {parts_and_marks(parts)}"
