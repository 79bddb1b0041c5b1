"""The words of free practice: the page, what it keeps, and why a file of it is refused."""

from pycore.words.phrase import Phrase, say

SLUG = "practice"
TITLE = "Practice"
LEAD = "One problem after another, as hard as suits you. What you do here stays on this device."
DESCRIPTION = "Free practice with phasors: problems one after another, checked at once, with the likely mistake named."
HOME_OPEN = "Begin"
WAY = "What to practise"
SHOW = "Show me"
NEXT = "Next problem"
AS_SHEET = "Open it as a sheet"
GIVEN = "Given"
SOLVED, SHOWN = "Solved", "The answer"
SHOWN_NOTE = "Not counted as solved. Go through it once, then try the next."

KEPT = "What this device keeps of it"
RULE = (
    "Two problems in a row right at the first try: one level up. Two in a row with the answer shown: one level down. "
    "An answer to look at again costs nothing. Nobody else sees any of this."
)
EXPORT = "Save as a file"
IMPORT = "Take from a file"
ERASE = "Erase it all"
UNDO = "Undo"
ERASED = "Erased. A new record has begun."
FILE_NAME = "phasor-folio-practice.json"
EXPORTED = "The file is saved."
DENIED = "This browser keeps nothing for this site, so your practice lasts until the page is closed."
MERGE, REPLACE, CANCEL = "Add it to mine", "Put it in place of mine", "Leave it"
TAKEN = "Taken from the file."
LOST = "What was kept here could not be read, so a new record has begun."
NO_SCRIPT = "Practice needs scripts: problems are made and checked on your own device."
TOO_LONG = "This file is longer than any record of practice (100 kB). It was not read; your own record stays."
FROM_FILE = "The file holds"

REASONS = {
    "long": TOO_LONG,
    "deep": "This file is nested deeper than any record of practice. It was not taken; your own record stays.",
    "text": "This file is not JSON, or is cut off. It was not taken; your own record stays.",
    "kind": "This file is no record of practice from these pages. It was not taken; your own record stays.",
}


def level(number: int, count: int) -> str:
    """How hard problems are now."""
    return f"Level {number} of {count}"


def streak(count: int) -> str:
    """Problems solved in a row."""
    return f"{count} in a row"


def best(count: int) -> str:
    """The longest streak."""
    return f"Longest: {count} in a row"


def solved(count: int, had: int) -> str:
    """How many were solved."""
    return f"{count} of {had} solved"


def times(count: int) -> str:
    """How often a mistake was made."""
    return "once" if count == 1 else f"{count} times"


def refused(reason: str, part: str) -> str:
    """Why a file is no record."""
    if reason in REASONS:
        return REASONS[reason]
    stays = "It was not taken; your own record stays."
    if reason == "version":
        return f"This file is of version “{part}”, and this page reads version 1. {stays}"
    if reason == "key":
        return f"This file holds “{part[:30]}”, which no record of practice has. {stays}"
    return f"This file’s value for “{part[:30]}” cannot be used. {stays}"


def way_name(title: str, method: str) -> str:
    """A way of practising in the list."""
    return f"{title}: {method}" if method else title


def holds(solved_count: int, best_count: int) -> Phrase:
    """What a file brings."""
    return say(
        "{count} solved, {best} in a row at the longest. Add it to yours, or put it in its place?",
        count=str(solved_count), best=str(best_count),
    )  # fmt: skip


MISTAKES = "Mistakes that came up"
METHODS = {
    "any": "", "parallelogram": "parallelogram", "tip-to-tail": "tip to tail", "components": "components",
}  # fmt: skip
