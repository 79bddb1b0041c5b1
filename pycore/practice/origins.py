"""An angle that is right in another sense: counted from another line that the page counts from too."""

import math

from pycore.phasor import wrap
from pycore.practice.explaining import LearnerAnswer, sides_of
from pycore.practice.marking import is_accepted
from pycore.practice.task import Limits, OtherOrigin, Task

ANGLE_MISREAD = ("complement", "turned-round", "arrow-reversed", "angle-at-tip")
"""Mistakes of the catalogue that are the last angle read from somewhere else: a line with its name says more."""


def origin_of(task: Task, answer: LearnerAnswer, limits: Limits) -> OtherOrigin | None:
    """The line from which an answer's angle is right, where its size is right too; None if there is none."""
    if not task.angled or task.angle is None or answer.angle is None:
        return None
    for origin in task.origins:
        turned = [LearnerAnswer(answer.size, angle, how=answer.how) for angle in _as_counted(task, answer, origin)]
        if any(is_accepted(task, one, limits) for one in turned):
            return origin
    return None


def _as_counted(task: Task, answer: LearnerAnswer, origin: OtherOrigin) -> tuple[float, ...]:
    """The directions that the typed angle means if it is counted from a line, from the direction drawn first."""
    typed = [wrap(side - task.turn) for side in sides_of(answer)]
    if origin.other_scale:
        return tuple(task.turn + math.copysign(180.0 - math.fabs(degrees), degrees) for degrees in typed)
    if origin.opposite:
        return tuple(side + 180.0 for side in sides_of(answer))
    if not origin.acute:
        return tuple(origin.degrees + degrees for degrees in typed)
    acute = math.fabs(typed[0])
    if acute > 90.0:
        return ()
    ends = (origin.degrees, origin.degrees + 180.0)
    return tuple(end + side for end in ends for side in (acute, -acute))
