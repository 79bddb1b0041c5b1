"""The words of the answer checker: fields, buttons, and what stands in an answer's place until it is asked for."""

from pycore.words.marking import ON_THE_WAY as ON_THE_WAY
from pycore.words.phrase import Phrase, say

TITLE = "Check"
LEAD = "The page checks your answer and names the likely mistake."
HOW = "How did you get it?"
HOWS = (("drawn", "drawn", "mm"), ("calculated", "calculated", ""))
"""Value, word, and the unit that a bare number then is in first ("": the page's own)."""
UNIT = "Unit"
SIDE = "Direction"
SIDES = (("", "not sure"), ("clockwise", "clockwise"), ("anticlockwise", "anticlockwise"))
ON_THE_WAY_HELP = (
    "Optional. They can be checked alone, before you have an answer. Later steps are then checked with your own values."
)
OWN = "Tolerance (for the lecturer)"
OWN_HELP = "Empty: the accuracy of a careful drawing, or 1 % and 0.5° for a calculated answer."
PERCENT = "Size, ±"
DEGREES = "Angle, ±"
CHECK = "Check the answer"
OUT_OF_VIEW = "The answer and the drawing are out of view while you check your own."
FILLED_IN = "Filled in with what you read off your drawing."
EARLIER_ANSWER = "This is the result for your last answer."

HIDE = "Hide the answer"
HIDDEN = "The answer is hidden"
HIDDEN_WHY = (
    "Try it yourself first. You can check your answer as often as you like. The answer, the drawing and the working "
    "appear when you ask for them."
)
SOLVED = "You have solved it"
SOLVED_WHY = "The answer, the drawing and the working appear when you ask for them."
SHOW = "Show the answer"
VALUES_CHANGED = "The values of the problem are filled in. The answer is hidden until you ask for it."
STAYS_HIDDEN = "The answer is hidden until you ask for it."

HINT = "Give me a hint"
HINT_MOVE = "Next hint: the move"
HINT_DONE = "Show this move done"
HINT_NEXT = "Hint for the next step"
HINT_PAPER = say(
    "Ruler’s zero mark on the left edge of your paper, then on the lower edge. Where does the drawing begin?"
)
HINT_LAST = say("This step gives the answer. Do it on your own drawing, then check your answer.")

WHERE_WORKING = "Look at the working"


def result_by(symbol: Phrase, method: str, scale: str) -> Phrase:
    """What the result is called, by which method ("": the question names it) and at which scale it is drawn."""
    how = f"Method: {method}. Scale: {scale}." if method else f"Scale: {scale}."
    return say("Result: {symbol}. {how}", symbol=symbol, how=how)


def answer_label(symbol: Phrase) -> Phrase:
    """Label of the size."""
    return say("Size of {symbol}", symbol=symbol)


def judged_by(scale: str) -> str:
    """By which scale a length is judged."""
    return f"A length in mm or cm is checked with the scale of this sheet, {scale}." if scale else ""


def angle_label(origin: Phrase, *, signed: bool) -> Phrase:
    """Label of an angle by the line that it is counted from."""
    return say("Angle from {origin}, −180° to 180°" if signed else "Angle from {origin}", origin=origin)


def first_label(symbol: Phrase) -> Phrase:
    """Label of the first diagonal's size."""
    return say("First diagonal, {symbol}", symbol=symbol)


FIRST_ANGLE = "Its angle"
FIRST_SIDE = "Direction of the first diagonal"
ACROSS = "Sum of the horizontal components"
UP = "Sum of the vertical components"


def step(number: int) -> str:
    """The way to a step of the lesson."""
    return f"Look at step {number} of the lesson"
