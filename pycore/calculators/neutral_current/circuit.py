"""Neutral current of a star-connected load on a four-wire three-phase supply.

The neutral carries the phasor sum of the three line currents. Angles in degrees,
anticlockwise positive, counted from the phase voltage of the first line; currents are r.m.s.
values in amperes.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from pycore import phasor
from pycore.circuits.supply import VOLTAGE_ANGLES

Three = tuple[float, float, float]

ANGLE_TOLERANCE = 1e-9
"""Degrees within which two angles count as equal: typed values differ by more or not at all."""


@dataclass(frozen=True, slots=True)
class StarLoad:
    """Three line currents (A), the angle each lags its own phase voltage (negative: leads)
    and the phase sequence (``123`` or ``132``)."""

    currents: Three
    lags: Three = (0.0, 0.0, 0.0)
    sequence: str = "123"


@dataclass(frozen=True, slots=True)
class StarSolution:
    """The line currents as phasors, and their sum, the neutral current.

    ``equal_angles``: all lines that carry current lag alike, so that they stand 120 degrees apart.
    ``balanced``: equal angles and equal sizes. ``closed``: the sum is zero.
    """

    load: StarLoad
    angles: Three
    lines: tuple[complex, complex, complex]
    neutral: complex
    equal_angles: bool
    balanced: bool

    @property
    def current(self) -> float:
        """Size of the neutral current in amperes."""
        return phasor.magnitude(self.neutral)

    @property
    def closed(self) -> bool:
        """Whether the neutral carries nothing."""
        return self.neutral == 0

    @property
    def angle(self) -> float | None:
        """Angle of the neutral current from the L1 phase voltage; None when it is zero."""
        return None if self.closed else phasor.angle(self.neutral)


def _alike(values: Sequence[float], tolerance: float) -> bool:
    return all(math.fabs(a - b) <= tolerance for a, b in pairwise(values))


def solve(load: StarLoad) -> StarSolution:
    """Add the three line currents of a star-connected load."""
    voltages = VOLTAGE_ANGLES[load.sequence]
    angles = tuple(
        phasor.wrap(voltage - lag) for voltage, lag in zip(voltages, load.lags, strict=True)
    )
    lines = tuple(
        phasor.polar(size, angle) for size, angle in zip(load.currents, angles, strict=True)
    )
    carrying = [lag for lag, size in zip(load.lags, load.currents, strict=True) if size > 0]
    equal = _alike(carrying, ANGLE_TOLERANCE)
    return StarSolution(
        load=load,
        angles=(angles[0], angles[1], angles[2]),
        lines=(lines[0], lines[1], lines[2]),
        neutral=phasor.total(lines),
        equal_angles=equal,
        balanced=equal and _alike(load.currents, 0.0),
    )


def closed_formula(currents: Three) -> float:
    """Neutral current for equal power factors: the root of half the squared differences.

    sqrt(((a-b)^2 + (b-c)^2 + (c-a)^2) / 2), the cancellation-free form of
    sqrt(a^2 + b^2 + c^2 - ab - bc - ca). Common practice; derived from the cosine rule.
    """
    a, b, c = currents
    squares = ((a - b) * (a - b), (b - c) * (b - c), (c - a) * (c - a))
    return math.sqrt(math.fsum(squares) / 2)
