"""Marking one answer: within tolerance or not, how far, and which mistakes would give it.

Three bands: ``accept`` (within what 95 in 100 careful drawings do, or the lecturer's own limits),
``look`` (up to twice as far: a person should look again), ``wrong``. What explains a wrong one is weighed in
``explaining``.
"""

import math
from dataclasses import dataclass

from pycore.phasor import wrap
from pycore.practice.explaining import Cause, LearnerAnswer, causes, points_of, sides_of
from pycore.practice.task import DRAWN, NO_LIMITS, Limits, Task, off

ACCEPT, LOOK, WRONG = "accept", "look", "wrong"
LOOK_AGAIN = 2.0
"""How many times the tolerance an answer may be off before it counts as wrong."""
MOST_NAMED = 4


@dataclass(frozen=True, slots=True)
class Judgement:
    """The judgement of one answer: its band, how far size (quantity) and angle (degrees) are off, the
    tolerances of both, and the causes that fit, the likeliest first."""

    band: str
    size_off: float
    angle_off: float | None
    size_tolerance: float
    angle_tolerance: float
    causes: tuple[Cause, ...]


def band_of(times: float) -> str:
    """The band of an answer that is so many times its tolerance off."""
    if times <= 1.0:
        return ACCEPT
    return LOOK if times <= LOOK_AGAIN else WRONG


def _angle_off(answer: LearnerAnswer, right: float) -> float:
    """How far an angle is off; if its side was not stated, to the nearer of both sides."""
    return min((wrap(side - right) for side in sides_of(answer)), key=math.fabs, default=0.0)


def side_open(task: Task, answer: LearnerAnswer, limits: Limits = NO_LIMITS) -> bool:
    """Whether an angle's side was not stated although its mirror image would not be accepted."""
    if answer.sided or answer.angle is None or task.angle is None:
        return False
    either = [LearnerAnswer(answer.size, side, how=answer.how) for side in sides_of(answer)]
    return not all(is_accepted(task, one, limits) for one in either)


def is_accepted(task: Task, answer: LearnerAnswer, limits: Limits = NO_LIMITS) -> bool:
    """Whether an answer is within its tolerance; quicker than ``mark``, which weighs the causes of one that is not."""
    return _times(task, answer, limits) <= 1.0


def _times(task: Task, answer: LearnerAnswer, limits: Limits) -> float:
    """How many times its tolerance an answer is off."""
    size, angle = task.tolerance(answer.how, limits)
    gap = math.fabs(answer.size - task.size)
    if task.angle is None or answer.angle is None:
        return ratio(gap, size)
    own = limits.percent is not None or limits.degrees is not None
    if answer.how == DRAWN and task.spread is not None and not own:
        return min(off(task, point) for point in points_of(answer))
    return max(ratio(gap, size), ratio(math.fabs(_angle_off(answer, task.angle)), angle))


def ratio(gap: float, tolerance: float) -> float:
    """How many times its tolerance a deviation is."""
    if tolerance > 0.0:
        return gap / tolerance
    return 0.0 if gap == 0.0 else math.inf


def mark(task: Task, answer: LearnerAnswer, limits: Limits = NO_LIMITS) -> Judgement:
    """Judge an answer. Never raises for finite numbers."""
    times = _times(task, answer, limits)
    band = band_of(times)
    size, angle = task.tolerance(answer.how, limits)
    angle_off = None if answer.angle is None or task.angle is None else _angle_off(answer, task.angle)
    fits = () if band == ACCEPT else causes(task, answer, limits)
    return Judgement(band, answer.size - task.size, angle_off, size, angle, fits)
