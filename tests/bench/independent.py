"""Learners who know nothing of the catalogue, marked: what is called right, what is named, and what is named falsely.

`python -m bench.independent [count]` (tests/ and the project on the path) prints a row for each topic, so many problems
each, then a row for each mistake; tests/unit/test_independent_learners.py holds a tenth of it.

Some answers are right, some carry one mistake that the trade describes, some one that nobody describes. A mistake
counts where what it gives without any slip lies outside of what 95 in 100 right drawings do, which is simulated.
"""

import math
import re
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field

import numpy as np
from independent import calculated, conventions, drawn, outside
from independent.answers import Answer, Attempt, Verdict, post
from independent.hand import Hand, plan_of
from independent.problems import TOPICS, Problem, polar, problems, wrapped

COUNT = 100
SEED = 20261126
RIGHT_DRAWN, DRAWN, CALCULATED_MISTAKES, OUTSIDE = 2, 4, 2, 2
"""Answers for each problem: right ones drawn (one more is calculated), described mistakes of both kinds, others."""
DRAWINGS = 400
ELLIPSE = 2.448
"""Radius of the ellipse that holds 95 % of a normal scatter in two directions, in standard deviations."""


@dataclass
class Tally:
    """Counts by name, and what was not as it should be: (attempt, problem, answer, verdict)."""

    counts: Counter = field(default_factory=Counter)
    by_key: dict[str, Counter] = field(default_factory=dict)
    misses: list[tuple[str, Attempt, Problem, Answer, Verdict]] = field(default_factory=list)

    def count(self, key: str, *names: str) -> None:
        """Count under a mistake's key and in all."""
        self.counts.update(names)
        self.by_key.setdefault(key, Counter()).update(names)

    def share(self, part: str, whole: str, counts: Counter | None = None) -> float:
        """Per cent; not a number where there is nothing to count."""
        counts = self.counts if counts is None else counts
        return 100.0 * counts[part] / counts[whole] if counts[whole] else math.nan

    def add(self, other: "Tally") -> None:
        """Take in another's counts."""
        self.counts.update(other.counts)
        for key, counts in other.by_key.items():
            self.by_key.setdefault(key, Counter()).update(counts)
        self.misses += other.misses


class Scatter:
    """How right drawings of one problem scatter, found by drawing them."""

    def __init__(self, problem: Problem, random: np.random.Generator) -> None:
        self.problem = problem
        hand = Hand(random, DRAWINGS)
        if problem.single:
            act, one = drawn.right(problem).act, Hand(random)
            ends = np.array([complex(act(one).size) for _ in range(60)])
        else:
            end = hand.draw(plan_of(problem)).end * problem.scale / 10.0
            size = np.abs(end) + hand.slip(0.5) * problem.scale / 10.0
            ends = size * np.exp(1j * (np.angle(end) + np.radians(hand.slip(0.5))))
        unit = 1.0 if problem.single or problem.right == 0 else problem.right / abs(problem.right)
        self.unit, off = unit, ends / unit - problem.right / unit
        self.matrix = np.cov(off.real, off.imag) + np.eye(2) * (0.15 * problem.scale / 10.0) ** 2

    def times(self, answer: Answer, how: str) -> float:
        """How many times the tolerance of an honest answer this one is off: 95 %, or 1 % and half a degree."""
        problem = self.problem
        if how == "calculated" or problem.single:
            limit = 0.01 * abs(problem.right) if how == "calculated" else 1.96 * math.sqrt(self.matrix[0, 0])
            size = abs(answer.size - abs(problem.right)) / limit
            if answer.angle is None or problem.single:
                return size
            return max(size, abs(wrapped(answer.angle - math.degrees(np.angle(problem.right)))) / 0.5)
        off = (polar(answer.size, answer.angle) - problem.right) / self.unit
        both = np.array([off.real, off.imag])
        return float(np.sqrt(both @ np.linalg.solve(self.matrix, both))) / ELLIPSE


def chosen(attempts: Iterator[Attempt], count: int, rng: np.random.Generator) -> list[Attempt]:
    """So many of what is possible, each kind as likely as another."""
    possible = list(attempts)
    places = rng.permutation(len(possible))[:count]
    return [possible[place] for place in places]


def _right(tally: Tally, problem: Problem, hand: Hand, attempt: Attempt) -> None:
    answer = attempt.act(hand)
    found = post(problem, answer, attempt.how)
    tally.count(f"right {attempt.how}", f"right {attempt.how}", f"right {attempt.how} {found.band}")
    if found.band == "wrong":
        tally.misses.append(("right called wrong", attempt, problem, answer, found))


def exactly(attempt: Attempt) -> Answer:
    """What an attempt gives without any slip."""
    return attempt.act(Hand(np.random.default_rng(0), steady=True))


def _described(tally: Tally, problem: Problem, hand: Hand, attempt: Attempt, scatter: Scatter) -> None:
    exact = exactly(attempt)
    if not scatter.times(exact, attempt.how) > 1.0:
        tally.count(f"{attempt.how} {attempt.key}", "not to be seen")
        return
    answer, key = attempt.act(hand), f"{attempt.how} {attempt.key}"
    for angle, prefix in ((True, ""), (False, "by length ")):
        if not angle and abs(exact.size - abs(problem.right)) < 0.1 * abs(problem.right):
            continue
        found = post(problem, answer, attempt.how, angle=angle)
        ours = [bool(re.search(attempt.named, cause)) for cause in found.causes]
        tally.count(key, prefix + "described")
        tally.count(key, *(prefix + name for name, holds in (
            ("accepted", found.band == "accept"), ("named", any(ours)), ("alone", ours == [True]),
            ("none named", not ours and found.band != "accept"), ("only others", bool(ours) and not any(ours)),
            ("beside others", any(ours) and ours != [True])) if holds))  # fmt: skip
        if ours != [True] and angle:
            why = "accepted" if found.band == "accept" else "beside" if any(ours) else "others" if ours else "none"
            tally.misses.append((why, attempt, problem, answer, found))


def _outside(tally: Tally, problem: Problem, hand: Hand, attempt: Attempt, scatter: Scatter) -> None:
    if not scatter.times(exactly(attempt), attempt.how) > 1.0:
        return
    answer, key = attempt.act(hand), f"outside {attempt.how} {attempt.key}"
    for angle, prefix in ((True, ""), (False, "by length ")):
        found = post(problem, answer, attempt.how, angle=angle)
        false = [cause for cause in found.causes if not re.search(attempt.named or "no such", cause)]
        tally.count(key, prefix + "outside")
        tally.count(key, *(prefix + name for name, holds in (
            ("outside accepted", found.band == "accept"), ("falsely named", bool(false))) if holds))  # fmt: skip
        if false and angle:
            tally.misses.append(("falsely named", attempt, problem, answer, found))


def simulate(slug: str, count: int, seed: int = SEED) -> Tally:
    """Learners on so many problems of one topic."""
    tally, rng = Tally(), np.random.default_rng([seed, TOPICS[slug]])
    hand, before = Hand(rng), None
    for problem in problems(slug, count, seed):
        scatter = Scatter(problem, rng)
        for k in range(RIGHT_DRAWN):
            _right(tally, problem, hand, drawn.right(problem, length=k % 2 == 1))
        _right(tally, problem, hand, calculated.right(problem))
        for attempt in chosen(drawn.mistakes(problem, rng), DRAWN, rng):
            _described(tally, problem, hand, attempt, scatter)
        for attempt in chosen(calculated.mistakes(problem, rng), CALCULATED_MISTAKES, rng):
            _described(tally, problem, hand, attempt, scatter)
        if before is not None:
            for attempt in chosen(outside.mistakes(problem, before, rng), OUTSIDE, rng):
                _outside(tally, problem, hand, attempt, scatter)
        before = problem
    return tally


COLUMNS = (
    ("right", "right drawn", "right drawn"), ("look%", "right drawn look", "right drawn"),
    ("wrong%", "right drawn wrong", "right drawn"), ("calc wrong%", "right calculated wrong", "right calculated"),
    ("mistaken", "described", "described"), ("accepted%", "accepted", "described"), ("named%", "named", "described"),
    ("alone%", "alone", "described"), ("others%", "only others", "described"),
    ("L:accepted%", "by length accepted", "by length described"),
    ("L:named%", "by length named", "by length described"),
    ("L:alone%", "by length alone", "by length described"), ("outside", "outside", "outside"),
    ("false%", "falsely named", "outside"), ("taken%", "outside accepted", "outside"),
    ("L:false%", "by length falsely named", "by length outside"),
)  # fmt: skip


def row(title: str, tally: Tally, counts: Counter | None = None) -> str:
    """One line of the table."""
    counts = tally.counts if counts is None else counts
    cells = []
    for head, part, whole in COLUMNS:
        share = tally.share(part, whole, counts)
        text = str(counts[whole]) if part == whole else "" if math.isnan(share) else f"{share:.1f}"
        cells.append(f"{text:>{max(len(head), 6)}}")
    return f"{title:36}" + " ".join(cells)


def table(tallies: dict[str, Tally]) -> str:
    """A row for each topic and for all, then a row for each mistake."""
    whole = Tally()
    for tally in tallies.values():
        whole.add(tally)
    head = f"{'':36}" + " ".join(f"{name:>{max(len(name), 6)}}" for name, _, _ in COLUMNS)
    rows = [head, *(row(slug, tally) for slug, tally in tallies.items()), row("all", whole), "", head]
    rows += [row(key, whole, counts) for key, counts in sorted(whole.by_key.items()) if not key.startswith("right ")]
    return "\n".join(rows)


def main(arguments: list[str]) -> None:
    """Print the table."""
    count = int(arguments[0]) if arguments else COUNT
    sys.stdout.write(table({slug: simulate(slug, count) for slug in TOPICS}) + "\n\n")
    sys.stdout.write(conventions.table(count, SEED) + "\n")


if __name__ == "__main__":
    main(sys.argv[1:])
