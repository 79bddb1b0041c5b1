"""Right answers given in each convention that a class may choose, and answers that the form leaves half told."""

from collections import Counter
from dataclasses import replace

import numpy as np

from independent import drawn
from independent.answers import post, turned
from independent.hand import Hand, plan_of
from independent.problems import METHODS, TIERS, Code, Problem, ask, degrees, problem_of, wrapped

CHOICES: dict[str, dict[str, str]] = {
    "as it opens": {}, "angles=polar": {"angles": "polar"}, "rotation=clockwise": {"rotation": "clockwise"},
    "first=up": {"first": "up"}, "resultant=returning": {"resultant": "returning"},
}  # fmt: skip


def _problems(count: int, seed: int, choices: dict[str, str], methods: tuple[str, ...] = METHODS):
    for k in range(count):
        code = Code(0, TIERS[k % 3], methods[k // 3 % len(methods)], seed=seed % 30000, number=1 + k)
        yield problem_of("neutral-current", str(code), **choices)


def right_answers(count: int, seed: int) -> dict[str, Counter]:
    """Bands of right drawings of the neutral current by convention. The returning current's arrow points back."""
    found: dict[str, Counter] = {}
    for title, choices in CHOICES.items():
        hand, bands = Hand(np.random.default_rng(seed)), found.setdefault(title, Counter())
        back = 180.0 if choices.get("resultant") == "returning" else 0.0
        for problem in _problems(count, seed, choices):
            answer = drawn.right(problem).act(hand)
            bands[post(problem, replace(answer, angle=wrapped(answer.angle + back)), "drawn").band] += 1
    return found


def first_diagonals(count: int, seed: int) -> Counter:
    """Right results with a right first diagonal, its angle an amount as the protractor shows it: ``right`` or ``off``,
    by whether it lies on the result's side."""
    hand, found = Hand(np.random.default_rng(seed)), Counter()
    for problem in _problems(count, seed, {}, ("parallelogram",)):
        if problem.method != "parallelogram":
            continue
        exact = drawn.right(problem).act(hand)
        diagonal = _first(problem, Hand(np.random.default_rng(1), steady=True))
        more = {"answer-first": f"{abs(diagonal):.4g}", "answer-first-angle": f"{abs(degrees(diagonal)):.1f}"}
        said = _said(problem, exact.size, {**turned(problem, exact.angle), **more})
        same = "same side" if (degrees(diagonal) >= 0) == (exact.angle >= 0) else "other side"
        found[f"{same} {'off' if 'First diagonal is off' in said else 'right'}"] += 1
    return found


def _first(problem: Problem, hand: Hand) -> complex:
    return complex(hand.draw(plan_of(problem)).diagonal[0]) * problem.scale / 10.0


def _said(problem: Problem, size: float, more: dict[str, str]) -> str:
    given = {"answer": f"{size / problem.per:.5g}", "answer-how": "drawn", **more}
    return ask(do="mark", page=problem.slug, form=problem.form, given=given)["announce"]


def mirrored_without_a_side(count: int, seed: int) -> Counter:
    """Bands of drawings turned the other way round throughout, their angle given as an amount alone."""
    rng, found = np.random.default_rng(seed), Counter()
    hand = Hand(rng)
    for problem in _problems(count, seed, {}):
        for attempt in drawn.mistakes(problem, rng):
            if attempt.key == "mirrored":
                found[post(problem, attempt.act(hand), "drawn", side=False).band] += 1
    return found


def table(count: int, seed: int) -> str:
    """The three counts as lines."""
    rows = [f"right, {title}: {dict(bands)}" for title, bands in right_answers(count, seed).items()]
    rows.append(f"right first diagonals: {dict(first_diagonals(count, seed))}")
    rows.append(f"mirrored, side not told: {dict(mirrored_without_a_side(count, seed))}")
    return "\n".join(rows)
