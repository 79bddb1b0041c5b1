"""What explains a wrong answer: each mistake of the catalogue weighed by how likely it makes it.

A mistake gives a point, about which answers scatter as the hand does that made it. What is likelier than none of the
catalogue is named, the likeliest first; those that land on one point, or give one number, are named together. A cause
is told as certain only if it is twice as likely as all other explanations together.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Protocol

from pycore import phasor
from pycore.phasor import wrap
from pycore.practice.plainness import plainest_first
from pycore.practice.task import DEGREE, DRAWN, NO_LIMITS, Limits, Mistake, Scatter, Task, off, scatter

SAME = 1e-6
"""Share of the right size within which two mistakes land on the same point."""
REACH = 2.8
"""Standard deviations of the hand's scatter about what a mistake gives within which it can be named: 98 in 100 answers
that come of it."""
NONE_OF_THEM = 6.0
"""Weight of a cause outside the catalogue, which can give any answer; one common mistake has the weight 1."""
ONE_SLIP = 14.0
"""Weight of one line that is wrong by any amount. Both weights are large because a wrong name does more harm than a
missing one: about 5 in 100 mistakes outside the catalogue get a name (tests/bench/independent.py)."""
MOST_LONGER, MOST_TURNED = 0.4, 30.0
"""Up to which share, and by how many degrees, a line comes out wrong by a slip of no kind of its own."""
RIGHT_AFTER_ALL = 1.0
"""How often an answer near the right one is only a poor drawing, beside one common mistake."""
FARTHEST = 1.5
"""How large answers are that come of none, as a multiple of the largest phasor; larger ones are rarer."""
ALIKE = 0.5
"""Standard deviations between two mistakes that no answer of this hand can tell apart."""
LESS_LIKELY = 6.0
"""A cause so many times less likely than the likeliest is not named beside it."""
SURE = 2.0
"""So many times likelier than all others together, and than none, a cause is told without "could be"."""


@dataclass(frozen=True, slots=True)
class LearnerAnswer:
    """What a learner gives: size (the quantity's unit), angle in degrees from the direction drawn first,
    anticlockwise positive (``sided`` False: its side was not stated), how it was found, and by which share of the size
    it may be rounded."""

    size: float
    angle: float | None = None
    sided: bool = True
    how: str = DRAWN
    rounded: float = 0.0


@dataclass(frozen=True, slots=True)
class Cause:
    """One class of mistakes that would give the answer, and how likely it is among all explanations (0 to 1)."""

    mistakes: tuple[Mistake, ...]
    share: float

    @property
    def sure(self) -> bool:
        """Whether it is twice as likely as all others together, and none of them."""
        return self.share >= SURE * (1.0 - self.share)


def sides_of(answer: LearnerAnswer) -> tuple[float, ...]:
    """The angles that an answer may mean: both sides where its side was not stated; none without an angle."""
    if answer.angle is None:
        return ()
    return (answer.angle,) if answer.sided else (answer.angle, -answer.angle)


def points_of(answer: LearnerAnswer) -> tuple[complex, ...]:
    """The points that an answer may mean."""
    return tuple(phasor.polar(answer.size, side) for side in sides_of(answer))


def classes(mistakes: Iterable[Mistake], whole: float) -> tuple[tuple[Mistake, ...], ...]:
    """Mistakes by where they land: those that give the same point, or the same number where only a
    number comes of them, stand together. ``whole`` is the size against which "same" is judged."""
    groups: list[list[Mistake]] = []
    for mistake in mistakes:
        for group in groups:
            if not (group[0].points or mistake.points) and same_outcome(group[0], mistake, SAME * whole):
                group.append(mistake)
                break
        else:
            groups.append([mistake])
    return tuple(tuple(group) for group in groups)


class Outcome(Protocol):
    """Where something ends: its size, and its point where it has a direction."""

    @property
    def size(self) -> float:
        """The size."""

    @property
    def point(self) -> complex | None:
        """The end of its phasor; None for a number alone."""


def same_outcome(first: Outcome, second: Outcome, near: float) -> bool:
    """Return whether two mistakes end at the same point, or at the same number where only a number comes of them."""
    if first.point is None or second.point is None:
        return first.point is second.point and math.fabs(first.size - second.size) <= near
    return phasor.magnitude(first.point - second.point) <= near


def mistake_points(task: Task, mistake: Mistake) -> tuple[complex, ...]:
    """The points that a mistake may give. A number without a direction is given with the right angle, or with none."""
    if mistake.points:
        return mistake.points
    if mistake.point is not None:
        return (mistake.point,)
    straight = complex(mistake.size, 0.0)
    return (straight,) if task.angle is None else (straight, phasor.polar(mistake.size, task.angle))


def sizes_of(task: Task, mistake: Mistake) -> tuple[complex, ...]:
    """The same where only sizes are compared: a number lies along the result, as it scatters."""
    if mistake.point is not None:
        return mistake.points or (phasor.polar(mistake.size, phasor.angle(mistake.point)),)
    return (phasor.polar(mistake.size, task.angle or 0.0),)


def visible(task: Task, mistake: Mistake, how: str, limits: Limits, *, with_angle: bool = True) -> bool:
    """Whether a mistake gives something else than the right answer, as far as can be told by size and
    angle (or by size alone)."""
    size, _ = task.tolerance(how, limits)
    if mistake.point is None or not with_angle:
        return math.fabs(mistake.size - task.size) > size
    points = mistake_points(task, mistake)
    if how == DRAWN and task.spread is not None and limits == NO_LIMITS:
        return any(off(task, point) > 1.0 for point in points)
    return any(phasor.magnitude(point - task.result) > task.reach(how, limits) for point in points)


@dataclass(frozen=True, slots=True)
class _Fit:
    """How an answer fits what a mistake gives: standard deviations away, and the likelihood of it."""

    away: float
    likely: float


def _normal_tail(away: float) -> float:
    """The bell curve, 1 at its middle, to one per cent within three standard deviations: by multiplying alone, which
    gives the same number on every host."""
    found = max(0.0, 1.0 - away * away / 2048.0)
    for _ in range(10):
        found *= found
    return found


def _fit_of(answer: LearnerAnswer, found: Sequence[Scatter]) -> _Fit:
    """How an answer fits scatters about one point or more, each as likely as another."""
    fits = []
    for one in found:
        if answer.angle is None:
            deviation = math.sqrt(max(one.along, 1e-24))
            away = math.fabs(answer.size - phasor.magnitude(one.at)) / deviation
            fits.append((away, _normal_tail(away) / (math.sqrt(math.tau) * deviation)))
            continue
        away = min(one.away(point) for point in points_of(answer))
        fits.append((away, _normal_tail(away) / (math.tau * max(one.area, 1e-24))))
    likely = math.fsum(likely for _, likely in fits) / len(fits)
    return _Fit(min(away for away, _ in fits), likely)


def _by_none(task: Task, answer: LearnerAnswer, limits: Limits) -> float:
    """How likely the answer is where none of the catalogue is its cause: anything up to ``FARTHEST`` is as likely as
    anything else; or one line came out too long, too short or turned by any amount; or the right drawing is poor."""
    farthest = FARTHEST * max(task.largest, task.size, 1e-12)
    if answer.angle is None:
        anywhere = 1.0 / farthest
    else:
        anywhere = 1.0 / (0.5 * math.tau * farthest * farthest)
    beyond = farthest / max(answer.size, farthest)
    anywhere *= beyond * beyond
    right = scatter(task, task.result, answer.how, limits)
    after_all = _fit_of(answer, (right,)).likely if task.size > 0 else 0.0
    return NONE_OF_THEM * anywhere + ONE_SLIP * _by_one_slip(task, answer, right) + RIGHT_AFTER_ALL * after_all


def _by_one_slip(task: Task, typed: LearnerAnswer, right: Scatter) -> float:
    """How likely one slip of any amount makes the answer: each line as likely as another, by length or by angle."""
    slips = task.slips
    if not task.angled and slips.lengths:
        return _of_one_length(task, typed)
    if typed.angle is None:
        return 0.0
    deviation = math.sqrt(max(right.area, 1e-24))
    best = 0.0
    for answer in points_of(typed):
        away = answer - task.result
        found = [_on_line(away, part, deviation) for part in slips.lengths]
        found += [_on_arc(away, part, deviation) for part in slips.swings]
        best = max(best, math.fsum(found) / max(1, len(found)))
    return best


def _of_one_length(task: Task, answer: LearnerAnswer) -> float:
    """The same where one length is all that is asked for."""
    most = MOST_LONGER * task.size
    return 1.0 / (2.0 * most) if 0.0 < most and math.fabs(answer.size - task.size) <= most else 0.0


def _normal_density(away: float, deviation: float) -> float:
    return _normal_tail(away / deviation) / (math.sqrt(math.tau) * deviation)


def _on_line(away: complex, part: complex, deviation: float) -> float:
    """The likelihood of an answer where a phasor came out up to ``MOST_LONGER`` longer or shorter."""
    size = phasor.magnitude(part)
    unit = part / size if size > 0.0 else complex(1.0, 0.0)
    along = away.real * unit.real + away.imag * unit.imag
    across = away.imag * unit.real - away.real * unit.imag
    most = max(MOST_LONGER * size, deviation)
    return _normal_density(across, deviation) / (2.0 * most) if math.fabs(along) <= most else 0.0


def _on_arc(away: complex, part: complex, deviation: float) -> float:
    """The same where what turns with a line came out turned by up to ``MOST_TURNED`` degrees."""
    size = phasor.magnitude(part)
    if size <= deviation:
        return 0.0
    there = part + away
    turn = wrap(phasor.angle(there) - phasor.angle(part)) if there != 0 else 180.0
    most = MOST_TURNED * DEGREE * size
    if math.fabs(turn) > MOST_TURNED:
        return 0.0
    return _normal_density(phasor.magnitude(there) - size, deviation) / (2.0 * most)


@dataclass(frozen=True, slots=True)
class _Candidate:
    """A class of mistakes within reach of an answer: where it would lie, its standard deviation there, and how likely
    it makes the answer."""

    mistakes: tuple[Mistake, ...]
    at: complex
    deviation: float
    likely: float

    def alike(self, other: "_Candidate", near: float) -> bool:
        """Whether both have the same words, give the same number, or lie where no hand can tell them apart."""
        first, second = self.mistakes[0], other.mistakes[0]
        if first.name == second.name:
            return True
        if first.point is None or second.point is None:
            return math.fabs(first.size - second.size) <= near
        return phasor.magnitude(self.at - other.at) <= ALIKE * min(self.deviation, other.deviation)

    def joined(self, other: "_Candidate") -> "_Candidate":
        """Both as one."""
        return replace(self, mistakes=(*self.mistakes, *other.mistakes), likely=self.likely + other.likely)


def _candidates(task: Task, answer: LearnerAnswer, limits: Limits) -> list[_Candidate]:
    """Every class of mistakes within reach of an answer; those that cannot be told apart as one."""
    with_angle = answer.angle is not None
    asked = [
        mistake
        for mistake in task.mistakes
        if answer.how in mistake.how and visible(task, mistake, answer.how, limits, with_angle=with_angle)
    ]
    found: list[_Candidate] = []
    for group in classes(asked, task.size):
        candidate = _candidate(task, answer, group, limits)
        if candidate is None:
            continue
        for place, other in enumerate(found):
            if candidate.alike(other, SAME * task.size):
                found[place] = other.joined(candidate)
                break
        else:
            found.append(candidate)
    return found


def _rounded(around: Scatter, answer: LearnerAnswer) -> Scatter:
    """A scatter that holds the rounding of an answer in few figures: evenly spread over its last digit."""
    half = answer.rounded * answer.size
    return replace(around, along=max(around.along, half * half / 3.0))


def _candidate(task: Task, answer: LearnerAnswer, group: tuple[Mistake, ...], limits: Limits) -> _Candidate | None:
    first = group[0]
    points = mistake_points(task, first) if answer.angle is not None else sizes_of(task, first)
    around = [_rounded(scatter(task, point, answer.how, limits, first.widening), answer) for point in points]
    fit = _fit_of(answer, around)
    if fit.away > REACH:
        return None
    weight = math.fsum(one.weight for one in _once(group))
    middle = around[len(around) // 2]
    at = middle.at if answer.angle is not None else complex(phasor.magnitude(middle.at), 0.0)
    deviation = math.sqrt(max(middle.area if answer.angle is not None else middle.along, 0.0))
    return _Candidate(group, at, deviation, weight * fit.likely)


def causes(task: Task, answer: LearnerAnswer, limits: Limits) -> tuple[Cause, ...]:
    """Every class of mistakes that explains an answer better than none of them does, the likeliest first."""
    found = _candidates(task, answer, limits)
    none = _by_none(task, answer, limits)
    whole = none + math.fsum(candidate.likely for candidate in found)
    least = max([none, *(candidate.likely / LESS_LIKELY for candidate in found)])
    likely = [candidate for candidate in found if candidate.likely >= least]
    named = [Cause(plainest_first(_once(candidate.mistakes)), candidate.likely / whole) for candidate in likely]
    return tuple(sorted(named, key=lambda cause: -cause.share))


def _once(group: tuple[Mistake, ...]) -> tuple[Mistake, ...]:
    """The mistakes of a class without those whose words are the same."""
    kept: list[Mistake] = []
    for mistake in group:
        if all(mistake.name != other.name for other in kept):
            kept.append(mistake)
    return tuple(kept)
