"""Mistakes that nobody catalogues: what they give must be named as none."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

import numpy as np

from independent.answers import Answer, Attempt, name, read, rounded
from independent.drawn import turn_of
from independent.hand import Hand, plan_of
from independent.problems import Problem, polar


def _sign(rng: np.random.Generator) -> float:
    return float(rng.choice([-1.0, 1.0]))


def transposed(value: float, rng: np.random.Generator) -> float | None:
    """A value with two neighbouring figures that differ exchanged; None where there are none."""
    text = f"{value:.3g}" if abs(value) < 1000 else f"{value:.0f}"
    places = [k for k, sign in enumerate(text) if sign.isdigit()][:3]
    pairs = [(a, b) for a, b in pairwise(places) if text[a] != text[b]]
    if not pairs:
        return None
    one, other = pairs[int(rng.integers(len(pairs)))]
    signs = list(text)
    signs[one], signs[other] = signs[other], signs[one]
    return float("".join(signs))


def mistakes(problem: Problem, another: Problem, rng: np.random.Generator) -> Iterator[Attempt]:
    """One of each kind for this problem; ``another`` is the sheet of a neighbour."""
    largest = max(abs(line.value) for line in problem.lines)
    size = float(rng.uniform(0.3, 1.5)) * max(abs(problem.right), 0.5 * largest)
    guess = polar(size, float(rng.uniform(-180.0, 180.0)))
    how = "drawn" if rng.integers(2) else "calculated"
    yield Attempt("guess", how, lambda hand: Answer(*_rough(guess)))
    if another.angled == problem.angled and another.single == problem.single:
        yield Attempt("another-sheet", how, lambda hand: rounded(hand, another.right))
    if problem.single:
        share = 1.0 + _sign(rng) * float(rng.uniform(0.12, 0.3))
        yield Attempt("length-off", "drawn", lambda hand: rounded(hand, problem.right * share))
        return
    plan = plan_of(problem)
    k = int(rng.integers(len(plan.lengths)))
    share = 1.0 + _sign(rng) * float(rng.uniform(0.12, 0.3))
    yield _drawn(problem, "length-off", replace(plan, lengths=_with(plan.lengths, k, plan.lengths[k] * share)))
    turning = [k for k in plan.order if abs(turn_of(plan, k)) % 180.0 > 0.1]
    if turning:
        slip, k = _sign(rng) * float(rng.uniform(10.0, 25.0)), int(rng.choice(turning))
        yield _drawn(problem, "angle-off", replace(plan, dial={k: lambda turn: turn + slip}))
    k = int(rng.integers(len(plan.lengths)))
    value = transposed(abs(problem.lines[k].value) / problem.per, rng)
    if value:
        share = value * problem.per / abs(problem.lines[k].value)
        exchanged = replace(plan, lengths=_with(plan.lengths, k, plan.lengths[k] * share))
        words = f"figures of {name(problem.lines[k].name)} were exchanged"
        yield _drawn(problem, "figures-exchanged", exchanged, words)
        whole = problem.right + problem.lines[k].value * (share - 1.0)
        yield Attempt("figures-exchanged", "calculated", lambda hand: rounded(hand, whole), words)


def _with(lengths: list[float], k: int, length: float) -> list[float]:
    return [length if j == k else one for j, one in enumerate(lengths)]


def _rough(guess: complex) -> tuple[float, float]:
    return float(f"{abs(guess):.2g}"), float(round(np.degrees(np.angle(guess)) / 5.0) * 5.0)


def _drawn(problem: Problem, key: str, plan: object, named: str = "no such") -> Attempt:
    def act(hand: Hand) -> Answer:
        return read(problem, hand, hand.draw(plan).end[0])

    return Attempt(key, "drawn", act, named)
