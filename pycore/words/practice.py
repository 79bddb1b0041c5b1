"""The words of free practice: the page, what it keeps, and why a file of it is refused."""

from collections.abc import Sequence

from pycore.words.phrase import Phrase, listed_phrases, say

SLUG = "practice"
TITLE = "Practice"
LEAD = "The problems become harder as you solve more."
DESCRIPTION = "Free practice with phasors: one problem after another, checked at once, with the likely mistake named."
WAY = "What to practise"
SHOW = "Show the answer"
GUESS, DRAW, ANSWER = "Guess", "Draw", "Answer"
GUESS_HELP = "Drag the end of the dashed arrow to your guess. It is not marked."
GUESS_KEYS = "Your guess. Move it with the arrow keys. Shift makes the steps smaller."
YOUR_GUESS = "your guess"
OWN = "My own scale or paper"
SCALE = "A per cm"
"""Until a problem is there, which says its own unit."""
SHEET = "The sheet of this problem"
DIRECTIONS = (
    "to the right", "up to the right", "straight up", "up to the left", "to the left", "down to the left",
    "straight down", "down to the right",
)
"""Eighths of a turn on the paper, anticlockwise from the right."""
NEXT = "Next problem"
AS_SHEET = "Print the sheet"
GIVEN, FIND = "Given", "Find"
SOLVED, SHOWN = "Solved", "The answer"
SHOWN_NOTE = "This does not count as solved. Go through it once, then try the next problem."

KEPT = "Your record"
RULE = (
    "Two problems in a row right first time: you go up one level. Two in a row with the answer shown, or left "
    "after a wrong answer: you go down one level. “Look again” does not count. "
    "Your record is not sent."
)
STAYS = "It stays on this device. Others who use this device can open it."
EXPORT = "Save as a file"
IMPORT = "Load from a file"
ERASE = "Erase this record"
UNDO = "Undo"
ERASED = "Erased. A new record has started."
EXPORTED = "The file is saved."
MERGE, REPLACE, CANCEL = "Add to my record", "Replace my record", "Cancel"
TAKEN = "Loaded from the file."
TAKEN_BEFORE = "This file was added to your record before. Nothing has changed."
LOST = "Your stored record could not be read, so a new record has started."
NO_SCRIPT = "Practice needs JavaScript: problems are made and checked on your own device."
TOO_LONG = "This file is too large for a practice record (over 100 kB). It was not read. Your record is unchanged."
FROM_FILE = "The file contains"

REASONS = {
    "long": TOO_LONG,
    "deep": "This file has too many nested levels for a practice record. It was not loaded. Your record is unchanged.",
    "text": "This file is not JSON, or it is incomplete. It was not loaded. Your record is unchanged.",
    "kind": "This file is not a practice record of this site. It was not loaded. Your record is unchanged.",
}


def level(number: int, count: int, tier: str) -> str:
    """How hard problems are now; ``tier``: support, core or stretch."""
    return f"Level {number} of {count}: {tier}"


def to_next(number: int, wanted: int) -> str:
    """What brings the next level; ``number`` 0: there is none above."""
    if not number:
        return "the highest level"
    return f"for level {number}: {'one more' if wanted == 1 else 'two'} right first time"


SOLVED_OF = "Problems solved: {solved}. Answer shown, or not solved yet: {unsolved}."
"""How many were solved, and how many were answered wrong or shown; one that was only looked at counts for neither."""


def times(count: int) -> str:
    """How often a mistake was made."""
    return "once" if count == 1 else f"{count} times"


def refused(reason: str, fragment: str) -> str:
    """Why a file is no record."""
    if reason in REASONS:
        return REASONS[reason]
    stays = "It was not loaded. Your record is unchanged."
    if reason == "version":
        return f"This file has version “{fragment}”, but this page reads version 1. {stays}"
    if reason == "key":
        return f"This file contains “{fragment[:30]}”, which is not part of a practice record. {stays}"
    return f"The value of “{fragment[:30]}” in this file cannot be used. {stays}"


def way_name(title: str, method: str) -> str:
    """A way of practising in the list."""
    return f"{title}: {method}" if method else title


def holds(solved_count: int) -> Phrase:
    """What a file brings."""
    return say("{count} solved. Add it to your record, or replace your record?", count=str(solved_count))


MISTAKES = "Your mistakes"
METHODS = {
    "any": "", "parallelogram": "parallelogram", "tip-to-tail": "tip to tail", "components": "components",
}  # fmt: skip


def guessed(amount: str, direction: str) -> str:
    """What a guess on the sheet stands for."""
    return f"Your guess: about {amount}, {direction}."


def begun(drawn: Sequence[Phrase], result: Phrase, plural: str) -> Phrase:
    """Which of the phasors a sheet has drawn already; the guess is of all."""
    sentence = "{drawn} are drawn already. Your guess is for {result}, the result of all {plural}."
    return say(sentence, drawn=listed_phrases(drawn), result=result, plural=plural)


GUESSED_NOTHING = "Your guess: the sum is zero."
