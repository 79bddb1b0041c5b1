"""The words of the register: the marks of a group over the weeks, and the mistakes that it makes."""

from collections.abc import Mapping, Sequence

from pycore.words.class_set import choose_separator

SLUG = "register"
TITLE = "Register"
LEAD = (
    "The marks of your groups over the weeks, and the mistakes that they make. Marks come here from the pages "
    "“Question papers”, “Class set” and “Mark photographs”. They are never sent."
)
STAYS = "They stay on this device."
DESCRIPTION = "Marks of each learner by question paper, and the mistakes of a group over time, kept on this device."
EMPTY = "There are no marks yet. Mark a question paper or a class set, then press “Add to the register”."
NOTHING = "–"
"""Stands where nothing is marked."""
GROUP, NO_GROUP = "Group", "Without a group"
LEARNER, TOTAL = "Learner", "Total"
MARKS, MISTAKES = "Marks", "Mistakes over time"
MISTAKE = "Mistake"
MARKS_NOTE = (
    "Per cent and averages are of what is marked. A paper that is not marked whole has a dash in place of per cent."
)
MISTAKES_NOTE = "For each paper: how many learners made this mistake."
AVERAGE, OF = "Average", "of"
PAPERS, ERASE, ERASED = "Papers", "Erase", "The paper is erased from the register."
TABLE_HEADS = {
    "from": "marks from", "to": "marks to", "possible": "marks possible", "from %": "% from", "to %": "% to",
    "learners": "learners",
}  # fmt: skip
UNDO, BACK = "Undo", "The paper is back in the register."
SAVE_TABLE, SAVE_FILE, LOAD = "Save as a table", "Save as a file", "Load a file"
TABLE_FILE = "register.csv"
LOADED = "The file’s papers are in the register."
BAD_FILE = "This file holds no register of this site. Nothing has changed."
NO_SCRIPT = "JavaScript is off. The register is kept by your browser, which needs JavaScript."
HELP = (
    "A question marked again takes the place of its earlier marks; the marks of other questions stay. "
    "Learners are told apart by their names."
)
HOW_LONG = "Marks are kept for a year after the last change, unless you erase them or choose another time."

ADD, ADDED = "Add to the register", "The marks are in the register."
ASK = "Add these marks to the register?"
ASK_LINES: Mapping[str, str] = {
    "replaced": "Marks in the register that would change: {count}.",
    "whole": "{who}: {before} of the whole paper is there, not told by question. The new marks take its place.",
    "one": "{who}, question {question}: {before} becomes {after}.",
    "alone": "{who}: {before} becomes {after}.",
    "more": "And {count} more.",
    "learner": "Learner {place}",
    "range": "{low} to {high}",
    "refused": "Lines that could not be used: {count}. Nothing of them is added.",
    "left": "Lines that are not added: {count}. Their code is on an earlier line too, or is not of this set.",
    "unread": "Answers that could not be read, with 0 marks: {count}. Look at their lines first.",
    "missing": "Answers that are not marked yet: {count}. They do not count as 0.",
}
"""What is said before marks are added, with places for numbers and names in braces."""
ADD_ANYWAY, ADD_NOT = "Add them", "Do not add"


def told(separator: str) -> str:
    """The register has been saved as a table."""
    return f"The table is saved. {choose_separator(separator)}"


def per_cent(share: tuple[int, int] | None) -> str:
    """Marks in per cent; a dash for none."""
    if share is None:
        return NOTHING
    low, high = share
    return f"{low} %" if low == high else f"{low} to {high} %"


def not_marked(questions: Sequence[int]) -> str:
    """The questions that are missing."""
    named = ", ".join(map(str, questions))
    return f"question {named} not marked yet" if len(questions) == 1 else f"questions {named} not marked yet"


def paper_line(title: str, code: str, learners: int) -> str:
    """A paper in the register."""
    return f"{title}, paper {code}, {learners} {'learner' if learners == 1 else 'learners'}"
