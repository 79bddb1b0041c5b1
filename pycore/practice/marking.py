"""Marking one answer: within tolerance or not, how far, and which mistakes would give it.

Three bands: ``accept`` (within what 95 in 100 careful drawings do, or the lecturer's own limits),
``look`` (up to twice as far: a person should look again), ``wrong``. Mistakes that land on the same
point are one class and are named together; several classes that fit are all named; if none fits,
none is named. Later steps are judged from the learner's own earlier values.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from pycore import phasor
from pycore.phasor import wrap
from pycore.practice.task import DRAWN, NO_LIMITS, Limits, Mistake, Task, off

ACCEPT, LOOK, WRONG = "accept", "look", "wrong"
LOOK_AGAIN = 2.0
"""How many times the tolerance an answer may be off before it counts as wrong."""
SAME = 1e-6
"""Share of the right size within which two mistakes land on the same point."""
MOST_NAMED = 4
REACH = 1.8
"""How many times the tolerance an answer may lie from what a mistake gives, and the mistake still be named. Length and
angle each end within the tolerance in 95 of 100 drawings, both in 92: too few. Within 1.8 times it are 99.8."""
NEARER, NEARER_BY_LENGTH = 2.0, 4.0
"""A cause that is so many times nearer than another beyond the tolerance stands without it; lengths alone tell less."""


@dataclass(frozen=True, slots=True)
class LearnerAnswer:
    """What a learner gives: size (the quantity's unit), angle in degrees from the direction drawn first,
    anticlockwise as reckoned (``sided`` False: its side was not told), and how it was found."""

    size: float
    angle: float | None = None
    sided: bool = True
    how: str = DRAWN


@dataclass(frozen=True, slots=True)
class Cause:
    """One class of mistakes that would give the answer, and how near (1: as far as the tolerance; up to ``REACH``)."""

    mistakes: tuple[Mistake, ...]
    near: float


@dataclass(frozen=True, slots=True)
class Judgement:
    """The judgement of one answer: its band, how far size (quantity) and angle (degrees) are off, the
    tolerances of both, and the causes that fit, the nearest first."""

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


def _angle_off(given: LearnerAnswer, right: float) -> float:
    """How far an angle is off; if its side was not told, to the nearer of both sides."""
    if given.angle is None:
        return 0.0
    found = wrap(given.angle - right)
    if given.sided:
        return found
    other = wrap(-given.angle - right)
    return min((found, other), key=math.fabs)


def _as_point(given: LearnerAnswer, near: complex) -> complex | None:
    """An answer as a point; with its side left open, the one that lies nearer to a point."""
    if given.angle is None:
        return None
    sides = (given.angle,) if given.sided else (given.angle, -given.angle)
    points = [phasor.polar(given.size, side) for side in sides]
    return min(points, key=lambda point: phasor.magnitude(point - near))


def _times(task: Task, given: LearnerAnswer, limits: Limits) -> float:
    """How many times its tolerance an answer is off."""
    size, angle = task.tolerance(given.how, limits)
    gap = math.fabs(given.size - task.size)
    if task.angle is None or given.angle is None:
        return _ratio(gap, size)
    own = limits.percent is not None or limits.degrees is not None
    if given.how == DRAWN and task.spread is not None and not own:
        point = _as_point(given, task.result)
        return off(task, task.result if point is None else point)
    return max(_ratio(gap, size), _ratio(math.fabs(_angle_off(given, task.angle)), angle))


def _ratio(gap: float, tolerance: float) -> float:
    if tolerance > 0.0:
        return gap / tolerance
    return 0.0 if gap == 0.0 else math.inf


def classes(mistakes: Iterable[Mistake], whole: float) -> tuple[tuple[Mistake, ...], ...]:
    """Mistakes by where they land: those that give the same point, or the same number where only a
    number comes of them, stand together. ``whole`` is the size against which "same" is judged."""
    groups: list[list[Mistake]] = []
    for mistake in mistakes:
        for group in groups:
            if _together(group[0], mistake, SAME * whole):
                group.append(mistake)
                break
        else:
            groups.append([mistake])
    return tuple(tuple(group) for group in groups)


def _together(first: Mistake, second: Mistake, near: float) -> bool:
    if first.point is None or second.point is None:
        return first.point is second.point and math.fabs(first.size - second.size) <= near
    return phasor.magnitude(first.point - second.point) <= near


def visible(task: Task, mistake: Mistake, how: str, limits: Limits, *, with_angle: bool = True) -> bool:
    """Whether a mistake gives something else than the right answer, as far as can be told by size and
    angle (or by size alone)."""
    size, _ = task.tolerance(how, limits)
    if mistake.point is None or not with_angle:
        return math.fabs(mistake.size - task.size) > size
    if how == DRAWN and task.spread is not None and limits == NO_LIMITS:
        return off(task, mistake.point) > 1.0
    return phasor.magnitude(mistake.point - task.result) > task.reach(how, limits)


def _near(task: Task, given: LearnerAnswer, mistake: Mistake, limits: Limits) -> float:
    """How many times the tolerance an answer is from what a mistake gives."""
    size, angle = task.tolerance(given.how, limits)
    # What was set off ten times too long is measured with the same hand: the tolerance does not grow with it.
    times = _ratio(math.fabs(given.size - mistake.size), size)
    if given.angle is None or mistake.point is None or mistake.point == 0:
        return times
    right = phasor.angle(mistake.point)
    reach = min(180.0, angle * max(1.0, task.size / max(mistake.size, 1e-12)))
    return max(times, _ratio(math.fabs(_angle_off(given, right)), reach))


def causes(task: Task, given: LearnerAnswer, limits: Limits) -> tuple[Cause, ...]:
    """Every class of mistakes that fits an answer, the nearest first."""
    asked = [
        mistake
        for mistake in task.mistakes
        if given.how in mistake.how and visible(task, mistake, given.how, limits, with_angle=given.angle is not None)
    ]
    found: list[Cause] = []
    for group in classes(asked, task.size):
        near = _near(task, given, group[0], limits)
        if near <= REACH:
            found.append(Cause(_once(group), near))
    found.sort(key=lambda cause: cause.near)
    nearer = NEARER_BY_LENGTH if given.angle is None else NEARER
    return tuple(cause for cause in found if cause.near <= max(1.0, nearer * found[0].near))


def _once(group: tuple[Mistake, ...]) -> tuple[Mistake, ...]:
    """The mistakes of a class without those whose words are the same."""
    kept: list[Mistake] = []
    for mistake in group:
        if all(mistake.name != other.name for other in kept):
            kept.append(mistake)
    return tuple(kept)


def mark(task: Task, given: LearnerAnswer, limits: Limits = NO_LIMITS) -> Judgement:
    """Judge an answer. Never raises for finite numbers."""
    times = _times(task, given, limits)
    band = band_of(times)
    size, angle = task.tolerance(given.how, limits)
    angle_off = None if given.angle is None or task.angle is None else _angle_off(given, task.angle)
    fits = () if band == ACCEPT else causes(task, given, limits)
    return Judgement(band, given.size - task.size, angle_off, size, angle, fits)


@dataclass(frozen=True, slots=True)
class LearnerIntermediate:
    """A value that the learner found on the way: which one (``Earlier.key``), its size (of ``across`` and
    ``up`` with its sign), and the angle of a phasor if given."""

    key: str
    size: float
    angle: float | None = None


def following(task: Task, owns: Sequence[LearnerIntermediate]) -> complex | None:
    """Where the result must lie from the learner's own earlier values; None when they do not lead on.

    An angle that was not given is taken to be right, and so is the other of two parts.
    """
    known = {own.key: own for own in owns}
    parts = [earlier for earlier in task.earlier if earlier.axis != 0]
    if any(part.key in known for part in parts):
        return phasor.total(
            part.axis * (known[part.key].size if part.key in known else part.value.real) for part in parts
        )
    for earlier in task.earlier:
        own = known.get(earlier.key)
        if own is not None:
            angle = phasor.angle(earlier.value) if own.angle is None else own.angle
            return phasor.polar(own.size, angle) + earlier.rest
    return None


def own_is_right(task: Task, own: LearnerIntermediate, how: str, limits: Limits = NO_LIMITS) -> bool:
    """Whether an earlier value is within the tolerance of the result's own length."""
    size, angle = task.tolerance(how, limits)
    for earlier in task.earlier:
        if earlier.key != own.key:
            continue
        if earlier.axis != 0:
            return math.fabs(own.size - earlier.value.real) <= size
        if math.fabs(own.size - phasor.magnitude(earlier.value)) > size:
            return False
        return own.angle is None or math.fabs(wrap(own.angle - phasor.angle(earlier.value))) <= angle
    return True


def follows(task: Task, owns: Sequence[LearnerIntermediate], given: LearnerAnswer, limits: Limits = NO_LIMITS) -> bool:
    """Whether an answer follows from the learner's own earlier values, within the same tolerance."""
    point = following(task, owns)
    if point is None:
        return False
    size, angle = task.tolerance(given.how, limits)
    if math.fabs(given.size - phasor.magnitude(point)) > size:
        return False
    return given.angle is None or point == 0 or math.fabs(_angle_off(given, phasor.angle(point))) <= angle
