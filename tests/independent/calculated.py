"""Mistakes of calculation as they are described, each worked out anew from the problem's lines (common practice)."""

import cmath
import math
from collections.abc import Iterator
from itertools import combinations

import numpy as np

from independent.answers import Attempt, name, rounded
from independent.problems import (
    ROOT_THREE,
    Problem,
    degrees,
    learners_of,
    polar,
    wrapped,
)
from independent.slips import Slip


def right(problem: Problem) -> Attempt:
    """The right answer to three figures."""
    return Attempt("right", "calculated", lambda hand: rounded(hand, problem.right))


def mistakes(problem: Problem, rng: np.random.Generator) -> Iterator[Attempt]:
    """Every described mistake of calculation for this problem. With a number alone goes the right angle, or 0."""
    slips = [*learners_of(problem.slug).slips(problem, rng), *_of_the_end(problem, rng)]
    if not problem.single and len(problem.lines) > 1:
        slips += [*_as_numbers(problem), *_in_the_formula(problem, rng), *_in_components(problem, rng)]
        slips += [*_of_the_machine(problem, rng), *_of_lags(problem)]
    for key, value, words in slips:
        angle = None
        if not isinstance(value, complex):
            if abs(value - abs(problem.right)) < 0.01 * abs(problem.right):
                continue  # The right number, as the root of the squares is for two phasors at a right angle.
            angle = float(rng.choice([0.0, degrees(problem.right)]))
        yield Attempt(key, "calculated", lambda hand, v=value, a=angle: rounded(hand, v, a), words)


def _as_numbers(problem: Problem) -> Iterator[Slip]:
    sizes = [abs(line.value) for line in problem.lines]
    yield "plain-sum", sum(sizes), "added as plain numbers"
    difference = "smallest value was subtracted from the largest|taken as plain"
    yield "largest-less-smallest", max(sizes) - min(sizes), difference
    yield "mean", sum(sizes) / len(sizes), "the mean of the values"
    yield "root-of-squares", math.hypot(*sizes), "root of the sum of the squares"


def _in_the_formula(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    if not problem.equal_angles:
        return
    sizes = [abs(line.value) / problem.per for line in problem.lines]
    pairs = list(combinations(range(3), 2))
    squares, products = sum(s * s for s in sizes), [sizes[i] * sizes[j] for i, j in pairs]
    net = squares - sum(products)
    k = int(rng.integers(3))
    one, other = (name(problem.lines[j].name).replace(r"(?<![\w−])", "") for j in pairs[k])
    yield "no-root", net * problem.per, "square root was forgotten"
    yield "signs-slipped", math.sqrt(squares + sum(products)) * problem.per, "the products were added"
    for key, share, words in (("product-dropped", 1.0, "was left out"), ("sign-slipped", 2.0, "has the wrong sign")):
        if net + share * products[k] > 0:
            pattern = f"product {one} × {other} {words}"
            yield key, math.sqrt(net + share * products[k]) * problem.per, pattern
    if net - products[k] > 0:
        yield "product-doubled", math.sqrt(net - products[k]) * problem.per, f"product {one} × {other} was used twice"


def _in_components(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    values, whole = [line.value for line in problem.lines], problem.right
    names = [name(line.name) for line in problem.lines]
    yield "across-only", complex(whole.real), "only the components along (one|the other) axis"
    yield "up-only", 1j * whole.imag, "only the components along (one|the other) axis"
    yield "parts-added", abs(whole.real) + abs(whole.imag), "two sums of components were added as plain"
    k = int(rng.integers(len(values)))
    swapped = whole - values[k] + complex(values[k].imag, values[k].real)
    yield "sine-for-cosine", swapped, f"sine and cosine are swapped for {names[k]}"
    yield "all-sine-for-cosine", complex(whole.imag, whole.real), "cosine are swapped everywhere|from the wrong axis"
    yield "one-sign", complex(whole.real, sum(abs(v.imag) for v in values)), "have the same sign"
    k = int(rng.integers(len(values)))
    yield "left-out", whole - values[k], f"{names[k]} was left out|{names[k]} itself|alone"
    k = int(rng.integers(len(values)))
    yield "wrong-sign", whole - 2.0 * values[k], f"{names[k]} points the opposite|opposite way"
    if problem.equal_angles:
        turned = [v if abs(wrapped(degrees(v))) < 1 else polar(abs(v), math.copysign(90.0, degrees(v))) for v in values]
        yield "right-angles", sum(turned), "90° was used between"


def _of_the_machine(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    upward = bool(rng.integers(2))
    for key, unit in (("radians", 1.0), ("gradians", math.pi / 200.0)):
        angles = [degrees(line.value) % 360.0 if upward else degrees(line.value) for line in problem.lines]
        end = sum(cmath.rect(abs(line.value), unit * a) for line, a in zip(problem.lines, angles, strict=True))
        if any(round(a) % 90 for a in angles) or key == "radians":
            yield key, end, f"calculator was set to {key}"


def _of_the_end(problem: Problem, rng: np.random.Generator) -> Iterator[Slip]:
    whole = problem.right
    times = float(rng.choice([10.0, 0.1]))
    yield "decimal", whole * times, "decimal mark is one place"
    if not problem.single:
        yield "times-root-three", whole * ROOT_THREE, "multiplied by √3|line voltage was used"
        yield "over-root-three", whole / ROOT_THREE, "divided by √3"
        other = "from the wrong axis|swapped everywhere|measured the angle from"
        yield "complement", complex(whole.imag, whole.real), other
        yield "turned-round", -whole, "opposite direction|other way round"


def _of_lags(problem: Problem) -> Iterator[Slip]:
    lags = [float(problem.form.get(f"a{k}") or 0) for k in (1, 2, 3)]
    if not problem.voltages or not any(lags):
        return
    ways = (
        ("factor-ignored", 0.0, "power factors were left out"), ("lead-for-lag", 1.0, "lead was used instead of lag"),
    )  # fmt: skip
    for key, sense, words in ways:
        angles = [v + sense * lag for v, lag in zip(problem.voltages, lags, strict=True)]
        ends = [polar(abs(line.value), a - angles[0]) for line, a in zip(problem.lines, angles, strict=True)]
        yield key, sum(ends), words
