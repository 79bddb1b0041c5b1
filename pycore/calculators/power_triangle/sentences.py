"""The sentence and the reason for each step that only this construction has."""

from collections.abc import Callable, Mapping

from pycore.calculators.power_triangle import words
from pycore.calculators.power_triangle.construction import (
    ACTIVE,
    CORRECTING,
    CORRECTION,
    PERPENDICULAR,
    REACTIVE,
    READ_CORRECTION,
    TARGET_ANGLE,
    TARGET_SUM,
)
from pycore.constructions.construction import Step
from pycore.constructions.moves import TurnAngle, turn_of
from pycore.constructions.names import SUM_KEY, arm_key
from pycore.sums.on_paper import OnPaper
from pycore.words import constructions as step_words
from pycore.words.phrase import Phrase

Written = tuple[Phrase, Phrase]


def _turn(drawn: OnPaper, step: Step) -> float:
    """The angle in degrees that a step marks."""
    return turn_of(next(move for move in step.moves if isinstance(move, TurnAngle)), drawn.figure.readings)


def _perpendicular(drawn: OnPaper, step: Step) -> Written:
    """The line on which the tip of every apparent power with this P lies."""
    sense = drawn.sense(_turn(drawn, step))
    return words.perpendicular(drawn.tag(ACTIVE), sense), words.SAME_ACTIVE_POWER


def _target_angle(drawn: OnPaper, step: Step) -> Written:
    """The target's angle at the start, and where its line meets the perpendicular."""
    active, angle = drawn.tag(ACTIVE), _turn(drawn, step)
    if round(angle, 1) == 0.0:
        return words.target_on_active(active), words.SAME_ACTIVE_POWER
    return words.target_angle(active, drawn.place, drawn.degrees(angle), drawn.sense(angle)), words.SAME_ACTIVE_POWER


def _end(drawn: OnPaper) -> Phrase | str:
    """Where the apparent power ends: at a crossing, or at the tip of P, if the target angle is zero."""
    step = next(step for step in drawn.construction.steps if step.name == TARGET_ANGLE)
    return words.ON_PERPENDICULAR if round(_turn(drawn, step), 1) else step_words.tip_of(drawn.tag(ACTIVE))


def _correction(drawn: OnPaper, step: Step) -> Written:
    """The correction, drawn between two tips."""
    reactive = any(arm.number == REACTIVE for arm in drawn.construction.arms)
    start = step_words.tip_of(drawn.tag(REACTIVE if reactive else ACTIVE))
    return words.draw_correction(drawn.tag(CORRECTING), start, _end(drawn)), words.CORRECTION_WHY


def _read_correction(drawn: OnPaper, step: Step) -> Written:
    """The correction, measured."""
    key = arm_key(CORRECTING)
    measured = drawn.measured(key, drawn.figure.readings[key])
    return words.measure_correction(drawn.notation.tags[key], measured), words.MEASURE_WHY


def _target_sum(drawn: OnPaper, step: Step) -> Written:
    """The apparent power after the correction."""
    return words.target_sum(drawn.notation.tags[SUM_KEY], drawn.place, _end(drawn)), words.TARGET_SUM_WHY


OWN_STEPS: Mapping[str, Callable[[OnPaper, Step], Written]] = {
    PERPENDICULAR: _perpendicular,
    TARGET_ANGLE: _target_angle,
    CORRECTION: _correction,
    READ_CORRECTION: _read_correction,
    TARGET_SUM: _target_sum,
}
