"""A hand that draws move by move: ruler and protractor with standard uncertainties of 0.5 mm and 0.5 degrees.

Many drawings at once as numpy arrays. What a learner does wrongly is a ``Plan`` that differs from the sheet's.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from independent.problems import Problem, degrees, wrapped

RULER, PROTRACTOR, SQUARE = 0.5, 0.5, 0.3
RADIUS = 50.0
"""Millimetres from a protractor's centre to the marks at its edge."""
SEQUENCES = {"12": (0, 1, 2), "13": (0, 2, 1), "23": (1, 2, 0)}
Dial = Callable[[float], float]


def exactly(turn: float) -> float:
    """A protractor used as it should be: the turn that is wanted is the turn that is set."""
    return turn


@dataclass
class Plan:
    """A drawing as it will be carried out: millimetres and directions line by line in the form's order.

    ``dial`` says how a line's protractor is misused; ``off_centre`` the line for which its centre stands on the wrong
    point; ``edge`` by how much every length set off is longer, because the ruler was laid from its edge.
    """

    method: str
    parallels: str
    order: tuple[int, ...]
    lengths: list[float]
    angles: list[float]
    dial: dict[int, Dial] = field(default_factory=dict)
    off_centre: int | None = None
    edge: float = 0.0


@dataclass
class Drawn:
    """What came of a plan: the end point, each line from its start, the first diagonal, the last line's direction."""

    end: np.ndarray
    parts: list[np.ndarray]
    diagonal: np.ndarray | None = None
    last: np.ndarray | None = None


def plan_of(problem: Problem, scale: float | None = None) -> Plan:
    """The sheet's own plan, at its scale or another."""
    values = [line.value for line in problem.lines]
    early = SEQUENCES[problem.order] if len(values) > 2 else (0, 1)
    order = tuple(k for k in early if k < len(values)) + tuple(range(3, len(values)))
    lengths = [10.0 * abs(value) / (scale or problem.scale) for value in values]
    return Plan(problem.method, problem.parallels, order, lengths, [degrees(value) for value in values])


class Hand:
    """A hand with its own rng; ``count`` drawings at a time, without any slip where ``steady``."""

    def __init__(self, random: np.random.Generator, count: int = 1, *, steady: bool = False) -> None:
        self.random, self.count, self.steady = random, count, steady

    def slip(self, size: float) -> np.ndarray:
        """One slip for each drawing."""
        return np.zeros(self.count) if self.steady else size * self.random.standard_normal(self.count)

    def draw(self, plan: Plan) -> Drawn:
        """Carry out a plan."""
        if plan.method == "tip-to-tail":
            return self._tip_to_tail(plan)
        parts = [self._from_point(plan, k) for k in range(len(plan.lengths))]
        if plan.method == "parallelogram" and 2 <= len(plan.order) <= 3:
            return self._parallelogram(plan, parts)
        if plan.method == "components":
            return Drawn(self._components([parts[k] for k in plan.order]), parts)
        return Drawn(np.sum([parts[k] for k in plan.order], axis=0), parts)

    def _length(self, plan: Plan, k: int) -> np.ndarray:
        """A length set off, below zero the other way along its line."""
        return np.sign(plan.lengths[k]) * (abs(plan.lengths[k]) + plan.edge + self.slip(RULER))

    def _turn(self, plan: Plan, k: int, turn: float) -> np.ndarray:
        """The turn that is set for a line; along the line drawn first there is nothing to set."""
        return plan.dial.get(k, exactly)(turn) + self.slip(PROTRACTOR)

    def _from_point(self, plan: Plan, k: int) -> np.ndarray:
        angle = plan.angles[k]
        heading = np.zeros(self.count) if angle == 0.0 else self._turn(plan, k, angle)
        if plan.off_centre == k:
            mark = plan.lengths[0] + RADIUS * _unit(heading)
            heading = np.degrees(np.angle(mark))
        return self._length(plan, k) * _unit(heading)

    def _tip_to_tail(self, plan: Plan) -> Drawn:
        at, heading = np.zeros(self.count, complex), np.zeros(self.count)
        starts, parts, before = [], {}, None
        for k in plan.order:
            starts.append(at)
            if before is None:
                heading = heading if plan.angles[k] == 0.0 else self._turn(plan, k, plan.angles[k])
            else:
                back = wrapped(plan.angles[k] - plan.angles[before] - 180.0)
                heading = heading + 180.0 + self._turn(plan, k, back)
            if plan.off_centre == k and before is not None:
                heading = np.degrees(np.angle(starts[-2] + RADIUS * _unit(heading) - at))
            parts[k] = self._length(plan, k) * _unit(heading)
            at, before = at + parts[k], k
        return Drawn(at, [parts[k] for k in plan.order], last=heading)

    def _parallelogram(self, plan: Plan, parts: list[np.ndarray]) -> Drawn:
        first, second, *third = plan.order
        diagonal = self._fourth(plan.parallels, parts[first], parts[second])
        if not third:
            return Drawn(diagonal, parts, diagonal)
        return Drawn(self._fourth(plan.parallels, diagonal, parts[third[0]]), parts, diagonal)

    def _fourth(self, how: str, one: np.ndarray, other: np.ndarray) -> np.ndarray:
        """The corner opposite the common point; where two lines nearly coincide it is their sum set off by ruler."""
        crossing = np.abs(np.sin(np.angle(one) - np.angle(other)))
        along = one + other + self.slip(RULER) * _unit(np.degrees(np.angle(one)))
        if how == "compasses":
            met = self._arcs(one, other)
        else:
            size = SQUARE if how == "set-squares" else PROTRACTOR
            u = _unit(np.degrees(np.angle(other)) + self.slip(size))
            v = _unit(np.degrees(np.angle(one)) + self.slip(size))
            gap, across = other - one, _cross(u, v)
            met = one + u * _cross(gap, v) / np.where(across == 0, 1.0, across)
        return np.where((crossing < 0.1) | (one == 0) | (other == 0), along, met)

    def _arcs(self, one: np.ndarray, other: np.ndarray) -> np.ndarray:
        from_one, from_other = np.abs(other) + self.slip(RULER), np.abs(one) + self.slip(RULER)
        apart = np.maximum(np.abs(other - one), 1e-9)
        along = (from_one**2 - from_other**2 + apart**2) / (2 * apart)
        up = np.sqrt(np.maximum(from_one**2 - along**2, 0.0))
        unit = (other - one) / apart
        sides = [one + unit * (along + sign * 1j * up) for sign in (1, -1)]
        return np.where(np.abs(sides[0] - one - other) < np.abs(sides[1] - one - other), *sides)

    def _components(self, parts: list[np.ndarray]) -> np.ndarray:
        across = up = np.zeros(self.count)
        for part in parts:
            tilt = [np.radians(self.slip(SQUARE)) for _ in range(2)]
            across = across + self.read(part.real + part.imag * tilt[0])
            up = up + self.read(part.imag + part.real * tilt[1])
        x, y = across + self.slip(RULER), up + self.slip(RULER)
        tilt = [np.radians(self.slip(SQUARE)) for _ in range(2)]
        return x + y * tilt[0] + 1j * (y + x * tilt[1])

    def read(self, length: np.ndarray) -> np.ndarray:
        """A length read to half a millimetre."""
        return length if self.steady else np.round(2.0 * (length + self.slip(RULER))) / 2.0

    def read_angle(self, angle: np.ndarray) -> np.ndarray:
        """An angle read to half a degree."""
        return angle if self.steady else np.round(2.0 * (angle + self.slip(PROTRACTOR))) / 2.0


def _unit(angle: np.ndarray) -> np.ndarray:
    return np.exp(1j * np.radians(angle))


def _cross(one: np.ndarray, other: np.ndarray) -> np.ndarray:
    return one.real * other.imag - one.imag * other.real
