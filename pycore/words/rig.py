"""The words of the recording sheet for readings at a training rig."""

from pycore.words.phrase import Symbol, say

SLUG = "rig-record"
TITLE = "Recording sheet for the rig"
LEAD = "Checks first, then readings of L1, L2, L3 and the neutral in order, repeated. To print and fill in."
DESCRIPTION = "A sheet to print for readings at a training rig: checks, instrument, repeated readings, three answers."
SHORT = "Checks first, readings in order, three answers."
REPEATS = "Readings of each"
REPEAT_SETS = (("3", "3 times"), ("4", "4 times"), ("5", "5 times"))
REPEAT_HELP = "Repeats show how far readings scatter. Three are the least that do."
UPRIGHT = (("portrait", "portrait"),)

FIRST = "Before any reading"
CHECKS = (
    "A competent person is with us and has said that we may start.",
    "The rig is made for this work. We know where its stop is.",
    "Meter, jaw and leads are undamaged and of the right measurement category.",
    "The tester was proved before use, and is proved again after it.",
    "The neutral stays connected: it is never opened while the rig is live.",
)
STOP = "Anything damaged, warm, wet or unexpected: hands off, stop the rig, call the supervisor."
INSTRUMENT = "Instrument"
CELLS = (("instrument", 0.36), ("number", 0.22), ("range", 0.18), ("one digit is", 0.24))
LOWER_CELLS = (("limit: ± ( ____ % + ____ digits )", 0.36), ("rig", 0.22), ("date", 0.18), ("initials", 0.24))
READINGS = "Readings in amperes"
ORDER = "One conductor in the jaw, jaw closed. Always in this order: L1, L2, L3, N."
HEAD = ("", "L1", "L2", "L3", "N", "initials")
MEAN = "mean"
ANSWERS = "Three answers for the neutral"
ANSWER_HEAD = ("", "answer in A", "give or take, A", "where from")
ANSWER_ROWS = (
    ("meter", "mean of N; limit of the meter"),
    ("drawing", "measured; what a hand can do"),
    ("calculation", "from L1, L2, L3 and their limits"),
)
AGREE = say("Do they agree? {number}", number=Symbol("E", "n"))
AGREE_HELP = (
    "Take the difference of two answers and divide it by what both together may be out by. "
    "Up to 1 they agree. Over 1 something wants explaining: look for it before trusting either."
)
AGREE_ROWS = ("meter and calculation", "drawing and calculation")
AGREE_LINE = "difference _____ A  ÷  out by _____ A  =  _____"
WHY = "If not: what could explain it, and which reading would show it?"
CHECKED = "seen by the supervisor"


def reading(number: int) -> str:
    """A row of the table of readings."""
    return f"reading {number}"


def page_title(paper: str) -> str:
    """What the sheet is called in a viewer and to a screen reader."""
    return f"{TITLE}, {paper}"


def description(repeats: str) -> str:
    """The sheet for someone who cannot see it."""
    return (
        f"Five checks to tick before any reading, the instrument, {repeats} readings of L1, L2, L3 and N in order, "
        "three answers for the neutral and whether they agree, with room for what could explain a difference."
    )
