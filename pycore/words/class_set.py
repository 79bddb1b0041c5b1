"""The words of class sets: the form, what is said while one is made, the key."""

from collections.abc import Sequence

from pycore.words.cautions import EXAMINING_BODY
from pycore.words.inputs import quoted
from pycore.words.phrase import Phrase, say

SLUG = "class-set"
TITLE = "Class set"
LEAD = (
    "Each learner gets a problem of their own. Overlays help you mark the drawings. The key shows the answer that "
    "each typical mistake gives."
)
DESCRIPTION = "Problem sheets with new values for each learner, overlays and a key, as one PDF."

TOPIC = "Topic"
TIER = "Level"
TIERS = (("support", "Support"), ("core", "Core"), ("stretch", "Stretch"))
TIER_HELP = "Each level has different content in each topic. It is described next to the set’s code."
LEARNERS = "Learners"
LEARNERS_HELP = "Number of sheets. If you enter names below, there is one sheet for each name."
METHOD = "Method"
METHODS = (
    ("any", "Any method"), ("parallelogram", "Parallelogram"), ("tip-to-tail", "Tip to tail"),
    ("components", "Components"),
)  # fmt: skip
METHOD_HELP = f"The sheet tells learners to use this method. {EXAMINING_BODY}"
ROLL = "Names, one per line"
ROLL_HELP = (
    "Optional. The names are printed on the sheets and the key. They are never in a link and never sent."
)
STAYS = (
    "They stay on this device for 90 days after the last change, unless you erase them or choose another time."
)
PAPER = "Paper"
SCALE = "Scale"
SCALES = (("given", "given on the sheet"), ("open", "for the learner to choose"))
OVERLAYS = "Overlays for marking"
OVERLAY_CHOICES = (("yes", "one for each learner"), ("no", "none"))
OPENS = "How to open it"
OPENS_CHOICES = (("qr", "code and QR code"), ("code", "code only"))
OPENS_HELP = "The QR code opens this learner’s problem on a phone. The phone can show the answer."
SEED = "Set number"
SEED_HELP = "The same number always gives the same values."
GENERATOR = "How the values are chosen"
GENERATORS = (("2", "usual: answers long enough to measure"), ("1", "as in version 1.0"))
GENERATOR_HELP = (
    "Usual: the answer is at least 60 mm long on A4, 30 mm on A5. A set made with version 1.0 keeps its values "
    "and its scale."
)
CODE = "Code of a set or a learner"
CODE_HELP = "Type a code from the key or from any sheet to get the same set again."
PERCENT = "Your tolerance for length"
DEGREES = "Your tolerance for angle"
LIMIT_HELP = "Empty: the accuracy of a careful drawing, as the overlay shows."
MARKS_FIRST = "Marks, first step"
MARKS_LENGTH = "Marks, length"
MARKS_ANGLE = "Marks, angle"
GROUPS = (
    ("roll", "Names"), ("sheets", "Method, paper, scale, overlays, codes"), ("marking", "Tolerance and marks"),
    ("signs", "Line names and number style"), ("again", "Open an earlier set"),
)  # fmt: skip
CHOICES = "Settings of this set"
MAKE = "Make the PDF"
MAKE_KEY = "Key as a table"
SHARE = "Share"
ANOTHER = "Another set"
ANOTHER_HELP, OPENS_AGAIN = "For a resit: new values and a new code.", "This device opens the last set again."
OPEN_CODE = "Open this set"
STOP = "Stop"
ERASE_ROLL = "Erase the names"
STOPPED = "Stopped. Nothing was saved."
COPIED = "The link to this set is copied. It contains no names."
ERASED = "The names are erased."
SAVE_ROLL, ROLL_FILE = "Save the names as a file", "class-names.txt"
IN_HAND = "Work on a class set is under way. Let it end, or stop it, then open the new version."
LINK_LABEL = "Link to this set, without names"
FIRST_SHEET = "The first learner’s sheet"
FIRST_SHEET_QR = f"{FIRST_SHEET}. Its QR code is added when the PDF is made."
NO_QR_HERE = (
    "There are no QR codes because this address works on this device only. Open the site’s public address to get "
    "them. The codes to type are on every sheet."
)
NO_SCRIPT = "JavaScript is off. A class set is made on your own device, which needs JavaScript."
LEARNING = (
    "For learning, not for exams: a phone can show the answer. Sheets with a code and no QR code only make this "
    "harder."
)
LONGEST_NAME = 60
MORE_NAMES = "Make a second set for the other names."


def count(number: int, one: str, several: str) -> str:
    """A number with its noun."""
    return f"{number} {one if number == 1 else several}"


def set_line(code: str) -> Phrase:
    """Which set the form asks for."""
    return say("Set **{code}**", code=code)


def announced(code: str) -> str:
    """Said when the form asks for another set."""
    return f"Set {code} can be made."


def contents(learners: int, overlays: int) -> str:
    """What the PDF will hold."""
    parts = [count(learners, "problem sheet", "problem sheets")]
    parts += [count(overlays, "overlay", "overlays")] if overlays else []
    return ", ".join(parts) + ", then the key."


def bad_count(label: str, typed: str, most: str) -> str:
    """A number of learners that cannot be used."""
    return f"{label}: {quoted(typed)} cannot be used. Enter a whole number from 1 to {most}."


def too_many(label: str, typed: str, most: str) -> str:
    """More learners than one set can number."""
    return (
        f"{label}: {typed[:24]} is too many for one set. One set has at most {most} learners. Make a second set for "
        "the others."
    )


def too_many_names(count: int, most: str) -> str:
    """More names than one set can number."""
    return f"There are {count} names. One set takes at most {most}. Make a second set for the others."


def long_name(line: int) -> str:
    """A name beyond any place on a sheet."""
    return f"The name on line {line} is too long. Use at most {LONGEST_NAME} characters."


def bad_seed(label: str, typed: str, most: str) -> str:
    """A number of a set that cannot be used."""
    return f"{label}: {quoted(typed)} cannot be used. Enter a whole number from 0 to {most}."


def bad_limit(label: str, typed: str, least: str, most: str) -> str:
    """An own tolerance that cannot be used."""
    return f"{label}: {quoted(typed)} cannot be used. Enter a number from {least} to {most}, or leave it empty."


def bad_marks(label: str, typed: str) -> str:
    """Marks that cannot be used."""
    return f"{label}: {quoted(typed)} cannot be used. Enter a whole number from 0 to 20."


def by_names(number: int) -> str:
    """The names decide how many sheets there are."""
    return f"One sheet for each of the {number} names."


def no_such_method(topic: str, method: str) -> str:
    """A method that no problem of the topic has."""
    return f"{topic} has no problems for this method ({method.lower()}), so learners may use any method."


def twice(names: Sequence[str], more: int) -> str:
    """Names that stand more than once."""
    tail = f" and {more} more" if more else ""
    return f"These names are in the list more than once: {', '.join(names)}{tail}. Each line gets its own sheet."


def by_number(place: int) -> str:
    """What stands in place of a name that cannot be printed."""
    return f"Learner {place}"


def unset(names: Sequence[str], more: int) -> str:
    """Names that cannot be printed, or not without shortening a word."""
    tail = f" and {more} more" if more else ""
    return (
        f"These names cannot be printed: {', '.join(names)}{tail}. There is no font here for a letter, or it did not "
        "load, or there is no room. Their sheets have the learner’s number instead."
    )


def working(place: int, of: int) -> str:
    """How far the work is."""
    return f"Learner {place} of {of}"


def key_working(page: int) -> str:
    """How far the key is."""
    return f"Key, page {page}"


def saved(sheets: str, overlays: str) -> str:
    """A PDF has been made: which of its pages are what, and how they are printed."""
    sentence = f"The PDF is saved. Print it at 100 %, single-sided. Problem sheets: {sheets}"
    return sentence + (f", overlays: {overlays}, then the key." if overlays else ", then the key.")


SEPARATORS = {",": "comma", ";": "semicolon"}


def choose_separator(separator: str) -> str:
    """How a saved table is opened."""
    return f"If the spreadsheet program asks, choose {SEPARATORS[separator]} as the separator, and UTF-8."


def saved_key(separator: str) -> str:
    """The key has been saved as a table."""
    return f"The key is saved as a table. {choose_separator(separator)}"


def file_title(code: str) -> str:
    """What the PDF is called in a viewer."""
    return f"{TITLE} {code}"


def file_name(code: str, ending: str) -> str:
    """What a file of a set is called."""
    return f"{SLUG}-{code}.{ending}"


NO_JOB = "This work was stopped. Start again."
