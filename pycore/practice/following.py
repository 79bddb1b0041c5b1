"""Values that a learner found on the way: whether they are right, and whether the answer follows from them.

A later step is judged from the learner's own earlier value, as examiners do: one slip loses its marks once.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from pycore import phasor
from pycore.phasor import wrap
from pycore.practice.explaining import LearnerAnswer, points_of
from pycore.practice.task import (
    CALCULATED,
    DEGREE,
    JUDGED_BY,
    NO_LIMITS,
    ONE_LENGTH,
    IntermediateValue,
    Limits,
    Task,
    scatter,
)


@dataclass(frozen=True, slots=True)
class LearnerIntermediate:
    """A value that the learner found on the way: which one (``IntermediateValue.key``), its size (of ``across`` and
    ``up`` with its sign), and the angle of a phasor if given (``sided`` False: its side was not told)."""

    key: str
    size: float
    angle: float | None = None
    sided: bool = True

    @property
    def angles(self) -> tuple[float, ...]:
        """The angles that it may mean."""
        if self.angle is None:
            return ()
        return (self.angle,) if self.sided else (self.angle, -self.angle)


def tolerance_of(task: Task, earlier: IntermediateValue, how: str, limits: Limits) -> tuple[float, float]:
    """Half-widths for a value found on the way: the result's own, as far as they hold for a value of its size."""
    size, angle = task.tolerance(how, limits)
    own = phasor.magnitude(earlier.value)
    if how == CALCULATED or limits.percent is not None:
        share = 0.01 if limits.percent is None else limits.percent / 100.0
        size = max(share * own, 0.6 * task.writing.last_digit(own))
    if limits.degrees is None and how != CALCULATED:
        # What moves the result's end so far turns a longer diagonal less, and no protractor reads better than this.
        across = min(180.0, size / own / DEGREE) if own > 0.0 else 180.0
        angle = max(across, 2.0 * ONE_LENGTH * task.hand_angle)
    return size, angle


def own_is_right(task: Task, own: LearnerIntermediate, how: str, limits: Limits = NO_LIMITS) -> bool:
    """Whether an earlier value is within its tolerance."""
    for earlier in task.earlier:
        if earlier.key != own.key:
            continue
        size, angle = tolerance_of(task, earlier, how, limits)
        if earlier.axis != 0:
            return math.fabs(own.size - earlier.value.real) <= size
        if math.fabs(own.size - phasor.magnitude(earlier.value)) > size:
            return False
        right = phasor.angle(earlier.value)
        return own.angle is None or any(math.fabs(wrap(side - right)) <= angle for side in own.angles)
    return True


def judged_from_own(task: Task, owns: Sequence[LearnerIntermediate]) -> tuple[complex, ...]:
    """Where the result may lie from the learner's own earlier values; () when they do not lead on.

    An angle that was not given is taken to be right, and so is the other of two parts.
    """
    known = {own.key: own for own in owns}
    parts = [earlier for earlier in task.earlier if earlier.axis != 0]
    if any(part.key in known for part in parts):
        whole = phasor.total(
            part.axis * (known[part.key].size if part.key in known else part.value.real) for part in parts
        )
        return (task.turn_back * whole,)
    for earlier in task.earlier:
        own = known.get(earlier.key)
        if own is not None:
            angles = own.angles or (phasor.angle(earlier.value),)
            return tuple(task.turn_back * (phasor.polar(own.size, angle) + earlier.remainder) for angle in angles)
    return ()


def follows(task: Task, owns: Sequence[LearnerIntermediate], answer: LearnerAnswer, limits: Limits = NO_LIMITS) -> bool:
    """Whether an answer follows from the learner's own earlier values, one of which is wrong, within the scatter of the
    hand about the point that they lead to."""
    if all(own_is_right(task, own, answer.how, limits) for own in owns):
        return False
    points = judged_from_own(task, owns)
    if any(_reaches(task, answer, point, limits) for point in points):
        return True
    return _by_its_circle(task, owns, answer, limits)


def _reaches(task: Task, answer: LearnerAnswer, point: complex, limits: Limits) -> bool:
    size, _ = task.tolerance(answer.how, limits)
    if answer.angle is None or phasor.magnitude(point) <= size:
        return math.fabs(answer.size - phasor.magnitude(point)) <= size
    around = scatter(task, point, answer.how, limits)
    return any(
        around.away(one) <= JUDGED_BY and phasor.magnitude(one - point) <= max(task.most, size)
        for one in points_of(answer)
    )


def _by_its_circle(task: Task, owns: Sequence[LearnerIntermediate], answer: LearnerAnswer, limits: Limits) -> bool:
    """Whether a diagonal of the learner's own length, whose angle was not given, leads to the answer in some direction:
    a wrong diagonal points another way too."""
    for earlier in task.earlier:
        for own in owns:
            if own.key == earlier.key and earlier.axis == 0 and own.angle is None and answer.angle is not None:
                size, _ = tolerance_of(task, earlier, answer.how, limits)
                before = [phasor.magnitude(task.turn_back * one - earlier.remainder) for one in points_of(answer)]
                return any(math.fabs(one - own.size) <= size for one in before)
    return False
