"""Simulated learners: a mistake of the catalogue and an honest hand, marked; which mistake is named, how often alone.

`build.py bench` runs this, `python -m bench.learners` (tests/ on the path) prints the whole table;
tests/unit/test_simulated_learners.py holds the figures for a seeded tenth.

A learner draws the problem's own construction with a practised hand (tests/unit/scattering.py: written apart from the
marking), reads length and angle with the same hand to half a millimetre and half a degree, and lands as far from the
mistake's point as that drawing lands from the right one; a result that is multiplied takes that along. Where an answer
is calculated, it is rounded to three figures.
"""

import cmath
import math
import random
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

from unit.scattering import Drawings

from pycore.accuracy.hand import PRACTISED as HAND
from pycore.calculators.registry import CALCULATORS
from pycore.constructions.construction import Construction
from pycore.practice.codes import TIERS, Code
from pycore.practice.explaining import LearnerAnswer, classes, visible
from pycore.practice.generator import NoProblemError
from pycore.practice.marking import ACCEPT, LOOK, MOST_NAMED, WRONG, mark
from pycore.practice.task import CALCULATED, DRAWN, NO_LIMITS, Mistake, Task
from pycore.sums.page import SumPage

COUNT = 10_000
EACH = 40
"""Learners for each problem."""
SEED = 20261125
METHODS = ("parallelogram", "tip-to-tail", "components")


@dataclass
class Tally:
    """What became of one mistake's learners; ``beside``: which others were named with it or instead."""

    learners: int = 0
    accepted: int = 0
    named: int = 0
    alone: int = 0
    seen_by_length: int = 0
    by_length: int = 0
    by_length_alone: int = 0
    can_be_alone: int = 0
    beside: Counter = field(default_factory=Counter)

    @property
    def judged(self) -> int:
        """Learners whose answer was not taken for right."""
        return self.learners - self.accepted


@dataclass(frozen=True)
class Learner:
    """One answer as it is given, and the same without its angle."""

    whole: LearnerAnswer
    length: LearnerAnswer


@dataclass
class Found:
    """Tallies by mistake's key, and bands of honest right answers."""

    mistakes: dict[str, Tally] = field(default_factory=dict)
    honest: Counter = field(default_factory=Counter)

    def total(self) -> Tally:
        """All mistakes together."""
        whole = Tally()
        for one in self.mistakes.values():
            for name in ("learners", "accepted", "named", "alone", "seen_by_length", "by_length", "by_length_alone",
                         "can_be_alone"):
                setattr(whole, name, getattr(whole, name) + getattr(one, name))
        return whole

    def shares(self) -> dict[str, float]:
        """The figures that are held: shares of all learners, per cent."""
        whole, honest = self.total(), max(1, sum(self.honest.values()))
        judged, seen = max(1, whole.judged), max(1, whole.seen_by_length)
        return {
            "mistake among those named": 100.0 * whole.named / judged,
            "named alone": 100.0 * whole.alone / judged,
            "by length alone: among those named": 100.0 * whole.by_length / seen,
            "by length alone: named alone": 100.0 * whole.by_length_alone / seen,
            "the most that lengths allow": 100.0 * whole.can_be_alone / seen,
            "mistaken answers within the tolerance": 100.0 * whole.accepted / max(1, whole.learners),
            "right drawings called wrong": 100.0 * self.honest[WRONG] / honest,
            "right drawings to look at again": 100.0 * self.honest[LOOK] / honest,
        }


def problems(slug: str, count: int) -> Iterator[tuple[Task, Construction, float]]:
    """Tasks of a page by codes of every tier and method, each with the construction that is drawn and its direction."""
    page: SumPage = CALCULATORS[slug]
    methods = [choice.value for one in page.fields if one.name == "method" for choice in one.options]
    made = number = 0
    while made < count:
        number += 1
        method = METHODS[number % 3]
        code = Code(page.topic, TIERS[number % len(TIERS)], method if method in methods else "any",
                    seed=SEED % 30000, number=1 + number % 1000)  # fmt: skip
        try:
            form = page.practice_form(code)
        except NoProblemError:
            continue
        case = page.case(form)
        made += 1
        yield page.task(form), case.sheet_plan().construction, case.picture.reference


def offsets(task: Task, construction: Construction, reference: float, seed: int) -> list[complex]:
    """How far from the right end a practised hand's drawings end."""
    drawings = Drawings(construction, task.factor, HAND, EACH, seed)
    turn = cmath.rect(1.0, -math.radians(reference))
    return [complex(end) * turn - task.result for end in drawings.end]


def read_off(task: Task, point: complex, rng: random.Random) -> Learner:
    """A drawn answer: length to half a millimetre, angle to half a degree, each with the hand's own slip."""
    length = abs(point) * task.factor + rng.gauss(0.0, HAND.length)
    angle = math.degrees(cmath.phase(point)) + rng.gauss(0.0, HAND.angle) if point else 0.0
    size = max(0.0, round(2.0 * length) / 2.0) / task.factor
    return Learner(LearnerAnswer(size, round(2.0 * angle) / 2.0), LearnerAnswer(size))


def multiplied(right: Learner, mistake: Mistake, task: Task) -> Learner:
    """A right drawing whose result was multiplied after it was read."""
    size = right.whole.size * mistake.size / task.size
    return Learner(LearnerAnswer(size, right.whole.angle), LearnerAnswer(size))


def calculated(point: complex | None, size: float) -> Learner:
    """A calculated answer, to three figures and a tenth of a degree."""
    size = float(f"{size:.3g}")
    angle = None if point is None else round(math.degrees(cmath.phase(point)), 1)
    return Learner(LearnerAnswer(size, angle, how=CALCULATED), LearnerAnswer(size, how=CALCULATED))


def _names(task: Task, given: LearnerAnswer) -> tuple[str, list[tuple[Mistake, ...]]]:
    marked = mark(task, given)
    return marked.band, [cause.mistakes for cause in marked.causes[:MOST_NAMED]]


def _note(tally: Tally, task: Task, group: tuple[Mistake, ...], learner: Learner) -> None:
    own = {mistake.name for mistake in group}
    tally.learners += 1
    band, causes = _names(task, learner.whole)
    if band == ACCEPT:
        tally.accepted += 1
        return
    ours = [any(one.name in own for one in cause) for cause in causes]
    tally.named += any(ours)
    tally.alone += ours == [True]
    for cause, mine in zip(causes, ours, strict=True):
        if not mine:
            tally.beside[cause[0].key] += 1
    how = learner.length.how
    band, causes = _names(task, learner.length)
    if band == ACCEPT or not visible(task, group[0], how, NO_LIMITS, with_angle=False):
        return
    tally.seen_by_length += 1
    ours = [any(one.name in own for one in cause) for cause in causes]
    tally.by_length += any(ours)
    tally.by_length_alone += ours == [True]
    reach, _ = task.tolerance(how, NO_LIMITS)
    others = [m for m in task.mistakes if how in m.how and m.name not in own]
    tally.can_be_alone += all(abs(other.size - group[0].size) > reach for other in others)


def simulate(slug: str, count: int) -> Found:
    """So many learners with a mistake, and as many honest ones, on problems of one page."""
    found, rng = Found(), random.Random(SEED)
    for number, (task, construction, reference) in enumerate(problems(slug, max(1, count // EACH))):
        drawn = task.spread is not None and any(DRAWN in one.how for one in task.mistakes) and task.factor > 0
        drawn = drawn and task.angled
        how = DRAWN if drawn else CALCULATED
        # Mistakes that depend on the instrument in the hand are carried out by bench.independent.
        asked = [one for one in task.mistakes if how in one.how and not one.points and one.weight >= 0.5]
        groups = [group for group in classes(asked, task.size)
                  if visible(task, group[0], how, NO_LIMITS, with_angle=group[0].point is not None)]  # fmt: skip
        away = offsets(task, construction, reference, SEED + number) if drawn else [0j] * EACH
        for offset in away:
            right = read_off(task, task.result + offset, rng) if drawn else calculated(
                task.result if task.angled else None, task.size)
            found.honest[mark(task, right.whole).band] += 1
            group = rng.choice(groups)
            mistake = group[0]
            if drawn and mistake.point is not None and mistake.widening != 1.0:
                learner = multiplied(right, mistake, task)
            elif drawn and mistake.point is not None:
                learner = read_off(task, mistake.point + offset, rng)
            elif drawn:
                length = read_off(task, complex(mistake.size) + offset.real, rng).length
                learner = Learner(length, length)
            else:
                learner = calculated(mistake.point if task.angled else None, mistake.size)
            _note(found.mistakes.setdefault(mistake.key, Tally()), task, group, learner)
    return found


def table(found: Found) -> str:
    """The confusion table: each mistake, how often it is named, alone, and what is named beside it most often."""
    rows = [f"{'mistake':26}{'learners':>9}{'within':>8}{'named %':>9}{'alone %':>9}  named beside it or instead"]
    for key, one in sorted(found.mistakes.items(), key=lambda pair: -pair[1].learners):
        judged = max(1, one.judged)
        beside = ", ".join(f"{name} {number}" for name, number in one.beside.most_common(3))
        rows.append(f"{key:26}{one.learners:9}{one.accepted:8}{100 * one.named / judged:9.1f}"
                    f"{100 * one.alone / judged:9.1f}  {beside}")  # fmt: skip
    rows += [f"{name:44}{share:8.2f} %" for name, share in found.shares().items()]
    return "\n".join(rows)


def main(arguments: list[str]) -> None:
    """The neutral current's table, then the figures of every other page."""
    count = int(arguments[0]) if arguments else COUNT
    sys.stdout.write(f"neutral-current, {count} learners\n{table(simulate('neutral-current', count))}\n")
    for slug in CALCULATORS:
        if slug != "neutral-current":
            sys.stdout.write(f"\n{slug}, {count // 10} learners\n{table(simulate(slug, count // 10))}\n")


if __name__ == "__main__":
    main(sys.argv[1:])
