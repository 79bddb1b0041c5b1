"""The catalogue of mistakes for a sum of phasors that is calculated (common practice: what learners do)."""

import math
from collections.abc import Callable, Iterator
from itertools import combinations

from pycore import phasor, trig
from pycore.constructions.construction import Arm
from pycore.phasor import wrap
from pycore.practice.catalogue import mistake
from pycore.practice.sums import BOTH, DrawnSum, three_phase
from pycore.practice.task import CALCULATED, Mistake
from pycore.trig import ROOT_THREE

RADIAN = 360.0 / math.tau
GRADIAN = 0.9
_HOW = (CALCULATED,)


def as_numbers(problem: DrawnSum) -> Iterator[Mistake]:
    """Directions forgotten."""
    sizes = [arm.size for arm in problem.arms]
    yield mistake("plain-sum", BOTH, None, math.fsum(sizes))
    if len(sizes) > 1:
        yield mistake("largest-less-smallest", _HOW, None, max(sizes) - min(sizes))
        yield mistake("mean", _HOW, None, math.fsum(sizes) / len(sizes))
        yield mistake("root-of-squares", _HOW, None, math.sqrt(math.fsum(size * size for size in sizes)))


def in_the_formula(problem: DrawnSum) -> Iterator[Mistake]:
    """Slips in the closed formula: root of (squares less the three products)."""
    if not three_phase(problem):
        return
    squares = math.fsum(arm.size * arm.size for arm in problem.arms)
    products = {
        (first.key, second.key): first.size * second.size for first, second in combinations(problem.arms, 2)
    }
    taken = math.fsum(products.values())
    yield mistake("no-root", _HOW, None, math.fabs(squares - taken))
    yield mistake("signs-slipped", _HOW, None, math.sqrt(squares + taken))
    for (first, second), product in products.items():
        named = {"a": problem.names[first], "b": problem.names[second]}
        slips = {"product-dropped": -1.0, "sign-slipped": -2.0, "product-doubled": 1.0}
        for key, share in slips.items():
            left = squares - taken - share * product
            if left >= 0.0:
                yield mistake(key, _HOW, None, math.sqrt(left), **named)


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
    yield mistake("across-only", _HOW, complex(whole.real, 0.0))
    yield mistake("up-only", _HOW, complex(0.0, whole.imag))
    yield mistake("parts-added", _HOW, None, math.fabs(whole.real) + math.fabs(whole.imag))
    verticals = math.fsum(math.fabs(arm.size * trig.sine(angles[arm.key])) for arm in problem.arms)
    yield mistake("one-sign", _HOW, complex(whole.real, verticals))
    for arm in problem.arms:
        part = phasor.polar(arm.size, angles[arm.key])
        swapped = whole - part + complex(part.imag, part.real)
        yield mistake("sine-for-cosine", _HOW, swapped, a=problem.names[arm.key])
    if len(problem.arms) > 1:
        yield mistake("all-sine-for-cosine", _HOW, complex(whole.imag, whole.real))
    if three_phase(problem):
        # Either 90 degrees to each side, or 90 degrees from one line to the next.
        yield mistake("right-angles", _HOW, _with(problem, lambda arm: angles[arm.key] * 0.75))
        yield mistake("right-angles", _HOW, _with(problem, lambda arm: _next_to(angles[arm.key])))


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
                yield mistake(key, _HOW, point)


def of_the_result(whole: complex) -> Iterator[Mistake]:
    """What is done to a result that was right: the root of three, and the angle counted wrongly."""
    yield mistake("times-root-three", _HOW, whole * ROOT_THREE)
    yield mistake("over-root-three", _HOW, whole / ROOT_THREE)
    if whole != 0:
        yield mistake("complement", _HOW, complex(whole.imag, whole.real))
        yield mistake("turned-round", _HOW, -whole)


def calculated(problem: DrawnSum) -> tuple[Mistake, ...]:
    """Every catalogued mistake of calculation for this sum."""
    mistakes: list[Mistake] = []
    for some in (as_numbers, in_the_formula, in_components, of_the_machine):
        mistakes += some(problem)
    angles = _angles(problem)
    return (*mistakes, *of_the_result(_with(problem, lambda arm: angles[arm.key])))
