"""The catalogue of mistakes for a sum of phasors that is calculated (common practice: what learners do)."""

import math
from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import combinations

from pycore import phasor, trig
from pycore.constructions.construction import Arm
from pycore.phasor import wrap
from pycore.practice.sums import BOTH, DrawnSum, three_phase
from pycore.practice.task import CALCULATED, Mistake
from pycore.trig import ROOT_THREE
from pycore.words import mistakes as words
from pycore.words.phrase import Phrase

RADIAN = 360.0 / math.tau
GRADIAN = 0.9
_HOW = (CALCULATED,)


def _number(key: str, size: float, **named: "str | Phrase") -> Mistake:
    name, look = words.mistake_text(key, **named)
    return Mistake(key, _HOW, math.fabs(size), None, name, look)


def _point(key: str, point: complex, **named: "str | Phrase") -> Mistake:
    name, look = words.mistake_text(key, **named)
    return Mistake(key, _HOW, phasor.magnitude(point), point, name, look)


def as_numbers(problem: DrawnSum) -> Iterator[Mistake]:
    """Directions forgotten."""
    sizes = [arm.size for arm in problem.arms]
    yield replace(_number("plain-sum", math.fsum(sizes)), how=BOTH)
    if len(sizes) > 1:
        yield _number("largest-less-smallest", max(sizes) - min(sizes))
        yield _number("mean", math.fsum(sizes) / len(sizes))
        yield _number("root-of-squares", math.sqrt(math.fsum(size * size for size in sizes)))


def in_the_formula(problem: DrawnSum) -> Iterator[Mistake]:
    """Slips in the closed formula: root of (squares less the three products)."""
    if not three_phase(problem):
        return
    squares = math.fsum(arm.size * arm.size for arm in problem.arms)
    products = {
        (first.key, second.key): first.size * second.size for first, second in combinations(problem.arms, 2)
    }
    taken = math.fsum(products.values())
    yield _number("no-root", squares - taken)
    yield _number("signs-slipped", math.sqrt(squares + taken))
    for (first, second), product in products.items():
        named = {"a": problem.names[first], "b": problem.names[second]}
        slips = {"product-dropped": -1.0, "sign-slipped": -2.0, "product-doubled": 1.0}
        for key, share in slips.items():
            left = squares - taken - share * product
            if left >= 0.0:
                yield _number(key, math.sqrt(left), **named)


def _angles(problem: DrawnSum) -> dict[str, float]:
    return {arm.key: wrap(arm.angle - problem.reference) for arm in problem.arms}


def _with(problem: DrawnSum, angle: Callable[[Arm], float]) -> complex:
    return phasor.total(phasor.polar(arm.size, angle(arm)) for arm in problem.arms)


def _next_to(angle: float) -> float:
    """A direction of a three-phase system with 90 degrees from one to the next: the last comes to 180."""
    return 180.0 if angle > 1.0 else 0.75 * angle


def in_components(problem: DrawnSum) -> Iterator[Mistake]:
    """Slips in the table of components."""
    angles = _angles(problem)
    whole = _with(problem, lambda arm: angles[arm.key])
    yield _point("across-only", complex(whole.real, 0.0))
    yield _point("up-only", complex(0.0, whole.imag))
    yield _number("parts-added", math.fabs(whole.real) + math.fabs(whole.imag))
    verticals = math.fsum(math.fabs(arm.size * trig.sine(angles[arm.key])) for arm in problem.arms)
    yield _point("one-sign", complex(whole.real, verticals))
    for arm in problem.arms:
        part = phasor.polar(arm.size, angles[arm.key])
        swapped = whole - part + complex(part.imag, part.real)
        yield _point("sine-for-cosine", swapped, a=problem.names[arm.key])
    if len(problem.arms) > 1:
        yield _point("all-sine-for-cosine", complex(whole.imag, whole.real))
    if three_phase(problem):
        # Either 90 degrees to each side, or 90 degrees from one line to the next.
        yield _point("right-angles", _with(problem, lambda arm: angles[arm.key] * 0.75))
        yield _point("right-angles", _with(problem, lambda arm: _next_to(angles[arm.key])))


def _ways_of_typing(angles: dict[str, float]) -> tuple[dict[str, float], ...]:
    """The same angles as people key them in: to either side, from 0 to 360, or from -360 to 0."""
    return (
        angles,
        {key: angle + 360.0 if angle < 0 else angle for key, angle in angles.items()},
        {key: angle - 360.0 if angle > 0 else angle for key, angle in angles.items()},
    )


def of_the_machine(problem: DrawnSum) -> Iterator[Mistake]:
    """The pocket calculator's angle unit, in each way of typing the angles."""
    angles = _angles(problem)
    found: list[complex] = []
    for key, unit in (("radians", RADIAN), ("gradians", GRADIAN)):
        for typed in _ways_of_typing(angles):
            point = phasor.total(phasor.polar(arm.size, unit * typed[arm.key]) for arm in problem.arms)
            if all(phasor.magnitude(point - other) > 1e-9 * (1.0 + phasor.magnitude(other)) for other in found):
                found.append(point)
                yield _point(key, point)


def of_the_result(whole: complex) -> Iterator[Mistake]:
    """What is done to a result that was right: the root of three, and the angle counted wrongly."""
    yield _point("times-root-three", whole * ROOT_THREE)
    yield _point("over-root-three", whole / ROOT_THREE)
    if whole != 0:
        yield _point("complement", complex(whole.imag, whole.real))
        yield _point("turned-round", -whole)


def calculated(problem: DrawnSum) -> tuple[Mistake, ...]:
    """Every catalogued mistake of calculation for this sum."""
    mistakes: list[Mistake] = []
    for some in (as_numbers, in_the_formula, in_components, of_the_machine):
        mistakes += some(problem)
    angles = _angles(problem)
    return (*mistakes, *of_the_result(_with(problem, lambda arm: angles[arm.key])))
