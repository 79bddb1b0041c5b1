"""Generator 2: problems whose answer is long enough on paper to be read well, and whose lines cross well.

Like every generator these use only whole numbers and phasor arithmetic, the same for ever. The paper is known here by
two lengths, as it was when this generator was new; no later layout changes a problem.
"""

import math
from collections.abc import Sequence
from itertools import combinations

from pycore import phasor
from pycore.phasor import wrap
from pycore.practice.seeded_integers import SeededIntegers
from pycore.quantity import order_of_magnitude

LADDER = (1.0, 2.0, 2.5, 4.0, 5.0, 10.0)
SIDE = 157.0
"""The narrower side of the room for a drawing on A4 landscape, mm."""
LONG = 60.0
"""The answer's least length on A4, mm."""
FIRST_LINE = 0.6
"""Length of the faint first direction as a share of the longest phasor."""
FLAT, SHARP = 15.0, 20.0
"""Degrees: an order whose lines cross at less than the first is not drawn if another is better; from the second on they
cross well."""


def scale_for(extent: float) -> float:
    """The quantity for each centimetre at which so much of it fits the side of the paper."""
    least = 10.0 * extent / SIDE
    power = float(f"1e{order_of_magnitude(least)}")
    return next(step * power for step in LADDER if step * power >= least * (1.0 - 1e-9))


def extent_of(points: Sequence[complex]) -> float:
    """The longer side of the upright rectangle about the common point and these points."""
    across = [0.0, *(point.real for point in points)]
    upward = [0.0, *(point.imag for point in points)]
    return max(max(across) - min(across), max(upward) - min(upward))


def drawn(parts: Sequence[complex]) -> tuple[float, float]:
    """The extent of two or three phasors as they are drawn, and the angle at which their lines cross: by parallelogram,
    which takes the most room, in the order of the finest scale."""
    total = phasor.total(parts)
    longest = max(phasor.magnitude(part) for part in parts)
    first_line = [] if parts[0].imag == 0.0 and parts[0].real > 0.0 else [complex(FIRST_LINE * longest, 0.0)]
    best: tuple[float, float] | None = None
    for one, two in combinations(range(len(parts)), 2):
        pair, rest = parts[one] + parts[two], [part for at, part in enumerate(parts) if at not in (one, two)]
        crossing = min(_crossing(parts[one], parts[two]), *(_crossing(pair, part) for part in rest), 90.0)
        extent = extent_of([*parts, pair, total, *first_line])
        if crossing >= FLAT and (best is None or scale_for(extent) < scale_for(best[0])):
            best = extent, crossing
    return best or (extent_of([*parts, total]), 0.0)


def is_long(total: complex, extent: float) -> bool:
    """Whether an answer is long enough on A4, of a drawing of such an extent."""
    return 10.0 * phasor.magnitude(total) >= LONG * scale_for(extent)


def reads_well(parts: Sequence[complex]) -> bool:
    """Whether two or three phasors, turned as they are drawn, have a long sum and lines that cross well."""
    extent, crossing = drawn(parts)
    return crossing >= SHARP and is_long(phasor.total(parts), extent)


def filling(draw: SeededIntegers, extent: float, scales: Sequence[float]) -> float:
    """A number by which phasors are multiplied so that their drawing, of this extent, nearly fills the paper at one of
    these scales."""
    scale, filled = scales[draw.below(len(scales))], draw.between(88, 100)
    return 0.001 * filled * SIDE * scale / extent


def _crossing(one: complex, two: complex) -> float:
    """The angle at which two lines cross, degrees up to 90; 0 if there is no line."""
    if one == 0.0 or two == 0.0:
        return 0.0
    turn = math.fabs(wrap(phasor.angle(two) - phasor.angle(one)))
    return min(turn, 180.0 - turn)


def unequal_shares(draw: SeededIntegers) -> tuple[int, int, int]:
    """Three sizes in hundredths of the largest, in any order, the smallest 30 to 36: their sum is long even where they
    stand 120 degrees apart."""
    smallest = draw.between(30, 36)
    shares = [100, draw.between(smallest + 12, 88), smallest]
    first = shares.pop(draw.below(3))
    second = shares.pop(draw.below(2))
    return first, second, shares[0]
