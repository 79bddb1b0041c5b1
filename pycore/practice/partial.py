"""A value that a learner found on the way, judged as a whole answer is: right or not, and what explains a wrong one."""

import math
from dataclasses import dataclass

from pycore import phasor
from pycore.practice.explaining import Cause, LearnerAnswer, causes
from pycore.practice.following import LearnerIntermediate, own_is_right, tolerance_of
from pycore.practice.marking import ACCEPT, WRONG, Judgement
from pycore.practice.task import CALCULATED, DRAWN, Limits, Task


@dataclass(frozen=True, slots=True)
class PartJudgement:
    """An intermediate value judged: its key, what was typed as an answer, and the marking."""

    key: str
    answer: LearnerAnswer
    marked: Judgement

    @property
    def right(self) -> bool:
        """Whether it is within its tolerance."""
        return self.marked.band == ACCEPT


def judge_part(task: Task, own: LearnerIntermediate, how: str, limits: Limits, rounded: float = 0.0) -> PartJudgement:
    """Judge an intermediate value of a task; one that the task does not have raises StopIteration."""
    value = next(one for one in task.earlier if one.key == own.key)
    size_tolerance, angle_tolerance = tolerance_of(task, value, how, limits)
    if value.axis != 0:
        # A sum of components has a sign, and no scatter of a drawing is known for it.
        answer = LearnerAnswer(math.fabs(own.size), 0.0 if own.size >= 0.0 else 180.0, True, CALCULATED, rounded)
        off = own.size - value.value.real
    else:
        answer = LearnerAnswer(own.size, own.angle, own.sided, how, rounded)
        off = own.size - phasor.magnitude(value.value)
    right = own_is_right(task, own, how, limits)
    part = value.as_task() if value.as_task is not None and not right else None
    explained: tuple[Cause, ...] = causes(part, answer, limits) if part is not None else ()
    if part is not None and value.axis != 0 and how == DRAWN:
        explained = tuple(one for one in explained if any(DRAWN in mistake.how for mistake in one.mistakes))
    return PartJudgement(
        own.key, answer, Judgement(ACCEPT if right else WRONG, off, None, size_tolerance, angle_tolerance, explained)
    )
