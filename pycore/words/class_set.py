"""The words of class sets: the form, what is said while one is made, the key."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, say

SLUG = "class-set"
TITLE = "Class set"
LEAD = (
    "A problem of its own for every learner, with overlays to mark the drawings by and a key that says what each "
    "usual mistake would give."
)
DESCRIPTION = "Problem sheets with different values for each learner, overlays, and a key, as one PDF."
HOME_OPEN = "Make a class set"

TOPIC = "Topic"
TIER = "Level"
TIERS = (("support", "Support"), ("core", "Core"), ("stretch", "Stretch"))
TIER_HELP = "What a level holds differs from topic to topic: it stands beside the set’s code."
LEARNERS = "Learners"
LEARNERS_HELP = "How many sheets. With names below, one for each name."
METHOD = "Method"
METHODS = (
    ("any", "Any"), ("parallelogram", "Parallelogram"), ("tip-to-tail", "Tip to tail"), ("components", "Components"),
)  # fmt: skip
METHOD_HELP = "The sheet asks for it. Ask which method your examining body accepts."
ROLL = "Names, one on each line"
ROLL_HELP = (
    "Optional. They are printed on the sheets and the key and kept on this device until you erase them: never in a "
    "link, never sent."
)
PAPER = "Paper"
SCALE = "Scale"
SCALES = (("given", "given on the sheet"), ("open", "for the learner to choose"))
OVERLAYS = "Overlays"
OVERLAY_CHOICES = (("yes", "one for each learner"), ("no", "none"))
OPENS = "On the sheet"
OPENS_CHOICES = (("qr", "code and QR code"), ("code", "code only"))
OPENS_HELP = "The QR code opens the learner’s own problem on a phone, where the answer can be shown."
SEED = "Number of the set"
SEED_HELP = "The same number gives the same values, for ever."
CODE = "Code of a set or a learner"
CODE_HELP = "From the key or any sheet: the same set again."
PERCENT = "Own tolerance, length"
DEGREES = "Own tolerance, angle"
LIMIT_HELP = "Empty: what a careful hand can do with this drawing, as the overlay shows."
MARKS_FIRST = "Marks, first step"
MARKS_LENGTH = "Marks, length"
MARKS_ANGLE = "Marks, angle"
GROUPS = (
    ("roll", "Names"), ("sheets", "Method, paper, scale, overlays, codes"), ("marking", "Tolerance and marks"),
    ("signs", "Names and signs on the sheets"), ("again", "A set made before"),
)  # fmt: skip
CHOICES = "The set"
MAKE = "Make the PDF"
MAKE_KEY = "Key as a table"
SHARE = "Share"
ANOTHER = "Another set"
ANOTHER_HELP = "For a resit: other values under a code of their own. This device opens the last set again."
OPEN_CODE = "Open this set"
STOP = "Stop"
ERASE_ROLL = "Erase the names"
STOPPED = "Stopped. Nothing was saved."
SAVED_KEY = "The table of the key is saved."
COPIED = "The link to this set is copied. It holds no names."
ERASED = "Erased from this device."
NO_STORAGE = "This browser keeps nothing, so the names are gone when the page is closed."
LINK_LABEL = "Link to this set, without names"
FIRST_SHEET = "The first learner’s sheet"
FIRST_SHEET_QR = "The first learner’s sheet. Its QR code is added when the PDF is made."
NO_SCRIPT = "Scripts are off. A class set is made on your own device, which needs scripts."
LEARNING = "For learning, not for examinations: a phone can show the answer. Sheets with a code only make it harder."
LONGEST_NAME = 60


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


def bad_count(label: str, given: str, most: str) -> str:
    """A number of learners that cannot be used."""
    return f"{label}: “{given[:24]}” cannot be used. Give a whole number from 1 to {most}."


def too_many(label: str, given: str, most: str) -> str:
    """More learners than one set can number."""
    return (
        f"{label}: {given[:24]} is more than one set can number. Its codes count to {most}. For more, make another "
        "set."
    )


def too_many_names(given: int, most: str) -> str:
    """More names than one set can number."""
    return f"There are {given} names, and one set takes up to {most}. For the rest, make another set."


def long_name(line: int) -> str:
    """A name beyond any place on a sheet."""
    return f"Line {line} of the names is too long. Accepted are up to {LONGEST_NAME} characters."


def bad_seed(label: str, given: str, most: str) -> str:
    """A number of a set that cannot be used."""
    return f"{label}: “{given[:24]}” cannot be used. Give a whole number from 0 to {most}."


def bad_limit(label: str, given: str, least: str, most: str) -> str:
    """An own tolerance that cannot be used."""
    return f"{label}: “{given[:24]}” cannot be used. Give a number from {least} to {most}, or leave it empty."


def bad_marks(label: str, given: str) -> str:
    """Marks that cannot be used."""
    return f"{label}: “{given[:24]}” cannot be used. Give a whole number from 0 to 20."


def by_names(number: int) -> str:
    """The names decide how many sheets there are."""
    return f"One sheet for each of the {number} names."


def no_such_method(topic: str, method: str) -> str:
    """A method that no problem of the topic has."""
    return f"{topic} has no problems by this method ({method.lower()}): the sheets are made as for any method."


def twice(names: Sequence[str], more: int) -> str:
    """Names that stand more than once."""
    tail = f" and {more} more" if more else ""
    return f"More than once in the list: {', '.join(names)}{tail}. Each line has a sheet of its own."


def blank(names: Sequence[str], more: int) -> str:
    """Names that the lettering cannot print."""
    tail = f" and {more} more" if more else ""
    return f"The lettering lacks signs of {', '.join(names)}{tail}: on these sheets the name is left to be written."


def working(place: int, of: int) -> str:
    """How far the work is."""
    return f"Learner {place} of {of}"


def key_working(page: int) -> str:
    """How far the key is."""
    return f"Key, page {page}"


def saved(sheets: str, overlays: str) -> str:
    """A PDF has been made: which of its pages are what, and how they are printed."""
    told = f"The PDF is saved. Print it at 100 %, on one side: problem sheets are on pages {sheets}"
    return told + (f", overlays on {overlays}, then comes your key." if overlays else ", then comes your key.")


def file_title(code: str) -> str:
    """What the PDF is called in a viewer."""
    return f"{TITLE} {code}"


def file_name(code: str, ending: str) -> str:
    """What a file of a set is called."""
    return f"{SLUG}-{code}.{ending}"


def no_job() -> str:
    """A request for the next piece of work that is not known any more."""
    return "This work was given up. Begin it again."
