"""The sentence and the reason for each step that only this construction has."""

import math
from collections.abc import Callable, Mapping

from pycore.calculators.open_neutral import words
from pycore.calculators.open_neutral.construction import LOAD, NO_SHIFT, SHIFT, TRIANGLE
from pycore.constructions.construction import Step
from pycore.constructions.moves import TurnAngle, turn_of
from pycore.sums.on_paper import OnPaper
from pycore.words import constructions as step_words
from pycore.words.phrase import Phrase

Written = tuple[Phrase, Phrase]


def _distance(drawn: OnPaper) -> float:
    """How far the star point is displaced (V)."""
    return math.hypot(drawn.construction.end_point.x, drawn.construction.end_point.y)


def _triangle(drawn: OnPaper, step: Step) -> Written:
    """The tips of the phase voltages joined."""
    return words.TRIANGLE, words.TRIANGLE_WHY


def _shift(drawn: OnPaper, step: Step) -> Written:
    """The star point's voltage set off."""
    turn = next(move for move in step.moves if isinstance(move, TurnAngle))
    angle = turn_of(turn, drawn.figure.readings)
    sentence = words.shift(
        drawn.notation.tags["sum"], drawn.zero_name(turn), drawn.degrees(angle), drawn.sense(angle),
        drawn.length(_distance(drawn)),
    )  # fmt: skip
    return sentence, words.SHIFT_WHY


def _no_shift(drawn: OnPaper, step: Step) -> Written:
    """The star point stays in the middle."""
    return words.NO_SHIFT, step_words.NOTHING


def _load(drawn: OnPaper, step: Step) -> Written:
    """One load's voltage, from the star point to the tip of its phase voltage."""
    number = step.arm_numbers[0]
    key = f"u{number}"
    volts = drawn.figure.readings[key]
    start = step_words.tip_of(drawn.notation.tags["sum"]) if _distance(drawn) else (drawn.place,)
    sentence = words.load_step(drawn.notation.tags[key], start, drawn.tag(number), drawn.measured(key, volts))
    return sentence, step_words.NOTHING


OWN_STEPS: Mapping[str, Callable[[OnPaper, Step], Written]] = {
    TRIANGLE: _triangle,
    SHIFT: _shift,
    NO_SHIFT: _no_shift,
    LOAD: _load,
}
