"""The sentence and the reason for each step that only this construction has."""

import math
from collections.abc import Callable, Mapping, Sequence

from pycore import quantity
from pycore.calculators.open_neutral import words
from pycore.calculators.open_neutral.construction import (
    CUT,
    DIVIDE,
    LOAD,
    NO_SHIFT,
    SHIFT,
    STAR_POINT,
    TRIANGLE,
)
from pycore.constructions.construction import Step
from pycore.constructions.moves import Intersect, SetOff, TurnAngle, length_of, turn_of
from pycore.phasor import wrap
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
    angle, name = turn_of(turn, drawn.figure.readings), drawn.notation.tags["sum"]
    length = drawn.length(_distance(drawn))
    if angle in (0.0, 180.0):
        direction = drawn.direction(wrap(drawn.picture.reference + angle))
        sentence = step_words.draw_first(name, direction, drawn.place, length)
    else:
        zero, size, sense = drawn.zero_name(turn), drawn.degrees(angle), drawn.sense(angle)
        sentence = step_words.draw(name, zero, size, sense, drawn.place, length)
    return sentence + words.ITS_TIP, words.SHIFT_WHY


def _cut(drawn: OnPaper, step: Step) -> Written:
    """A mark joined with the third tip."""
    number = step.arm_numbers[0]
    return words.cut(drawn.tag(number)), words.cut_why(drawn.notation.lines[number - 1])


def _star_point(drawn: OnPaper, step: Step) -> Written:
    """The displacement drawn to the star point that was found."""
    crossing = any(isinstance(move, Intersect) for move in step.moves)
    measured = drawn.measured("sum", _distance(drawn))
    sentence = words.star_point(drawn.notation.tags["sum"], measured, crossing=crossing)
    return sentence, words.STAR_POINT_WHY if crossing else step_words.NOTHING


def own_steps(
    ohms: Sequence[float], line_voltage: float, connected: Sequence[int], *, displaced: bool
) -> Mapping[str, Callable[[OnPaper, Step], Written]]:
    """Return the sentences of the steps for loads of these sizes (ohms, 0 for none) on a line voltage (V).

    ``connected``: the lines that have a load, by number. ``displaced``: whether the star point moves at all, be it too
    little for a drawing.
    """

    def shift(drawn: OnPaper, step: Step) -> Written:
        """The star point's voltage set off."""
        sentence, why = _shift(drawn, step)
        return sentence, words.shift_alone(drawn.notation.lines[connected[0] - 1]) if len(connected) == 1 else why

    def load(drawn: OnPaper, step: Step) -> Written:
        """One load's voltage, from the star point to the tip of its phase voltage."""
        number = step.arm_numbers[0]
        key = f"u{number}"
        volts = drawn.figure.readings[key]
        start = step_words.tip_of(drawn.notation.tags["sum"]) if _distance(drawn) else (drawn.place,)
        symbol, line = drawn.notation.tags[key], drawn.notation.lines[number - 1]
        meaning = words.voltage_of_load if number in connected else words.voltage_without_load
        sentence = words.load_step(symbol, start, drawn.tag(number), drawn.measured(key, volts))
        return sentence, (f"{meaning(symbol, line)}.",)

    def no_shift(drawn: OnPaper, step: Step) -> Written:
        """The star point stays in the middle."""
        return words.NEARLY_NO_SHIFT if displaced else words.NO_SHIFT, step_words.NOTHING

    def divide(drawn: OnPaper, step: Step) -> Written:
        """The star point of two loads alone, marked on the side between their tips."""
        first, second = step.arm_numbers
        mark = next(move for move in step.moves if isinstance(move, SetOff))
        length = length_of(mark, drawn.figure.readings)
        writing, lines = drawn.notation.writing, drawn.notation.lines
        third = next((n for n in (1, 2, 3) if n not in step.arm_numbers and ohms[n - 1] > 0.0), 0)
        one, two = (quantity.engineering(float(f"{ohms[n - 1]:.4g}"), "Ω", writing.mark) for n in step.arm_numbers)
        volts = quantity.engineering(line_voltage, "V", writing.mark)
        amount = writing.fixed(length, 1) + quantity.NO_BREAK_SPACE + writing.unit
        sentence = words.divide(drawn.tag(first), drawn.tag(second), drawn.length(length), amount)
        without = lines[third - 1] if third else ""
        calculation = words.divider(volts, one, two, amount)
        return sentence, words.divide_why(lines[first - 1], lines[second - 1], without, calculation)

    return {
        TRIANGLE: _triangle,
        DIVIDE: divide,
        CUT: _cut,
        STAR_POINT: _star_point,
        SHIFT: shift,
        NO_SHIFT: no_shift,
        LOAD: load,
    }
