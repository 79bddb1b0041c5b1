"""The words of the answer checker: fields, buttons, and what stands in an answer's place until it is asked for."""

from pycore.words.phrase import Phrase, say

TITLE = "Check an answer"
LEAD = "Type what you found. The answer itself is not shown."
HOW = "How did you find it?"
HOWS = (("drawn", "drawn", "mm"), ("calculated", "calculated", ""))
"""Value, word, and the unit that a bare number then is in first ("": the page's own)."""
UNIT = "Unit"
SIDE = "Turned"
SIDES = (("", "not sure"), ("clockwise", "clockwise"), ("anticlockwise", "anticlockwise"))
ON_THE_WAY = "What you found on the way"
ON_THE_WAY_HELP = "If you like: later steps are then judged from your own values."
OWN = "Own tolerance, for the lecturer"
OWN_HELP = "Empty: what a careful drawing can do, or 1 % and 0.5° where it was calculated."
PERCENT = "Size, ±"
DEGREES = "Angle, ±"
CHECK = "Check it"
EARLIER_ANSWER = "This was said of your last answer."

HIDDEN = "The answer waits"
HIDDEN_WHY = (
    "This page was opened from a practice problem. Try it yourself first and check what you find, as often as you "
    "like. The answer, its drawing and every working come when you ask for them."
)
SHOW = "Show the answer"
VALUES_CHANGED = "The values of the problem stand ready. The answer waits until you ask for it."

WHERE_WORKING = "Look at the working"


def to_find(symbol: Phrase, method: str, scale: str) -> Phrase:
    """What is to be found, how, and at which scale."""
    return say("Find {symbol}. Method: {method}. Scale: {scale}.", symbol=symbol, method=method, scale=scale)


def answer_label(symbol: Phrase) -> Phrase:
    """Label of the size."""
    return say("Size of {symbol}", symbol=symbol)


def judged_by(scale: str) -> str:
    """By which scale a length is judged."""
    return f"A length in mm or cm is judged by {scale}, the scale of this sheet." if scale else ""


def angle_label(origin: Phrase, *, signed: bool) -> Phrase:
    """Label of an angle by the line that it is counted from."""
    return say("Angle from {origin}, −180° to 180°" if signed else "Angle from {origin}", origin=origin)


def first_label(symbol: Phrase) -> Phrase:
    """Label of the first diagonal's size."""
    return say("First diagonal, {symbol}", symbol=symbol)


FIRST_ANGLE = "Its angle"
ACROSS = "Parts across, added"
UP = "Parts upwards, added"


def step(number: int) -> str:
    """The way to a step of the lesson."""
    return f"Look at step {number} of the lesson"
