"""What a hand does to a drawing: errors of ruler and protractor carried through each move.

A practised hand sets and reads to 0.5 mm and 0.5 degrees, an ordinary one to 1 mm and 1 degree:
standard uncertainties, normal, common practice with no source. The construction's own moves are
carried out with each deviation (constructions.moves.carry_out), to first order where that holds
and by seeded sampling where lines cross too flatly for it.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from pycore import geometry, phasor
from pycore.accuracy.propagation import Matrix
from pycore.constructions.construction import Construction, flattest
from pycore.constructions.moves import (
    DEVIATIONS,
    Degenerate,
    Move,
    ReadAngle,
    ReadLength,
    carry_out,
)
from pycore.geometry import Point
from pycore.phasor import wrap

ONE_LENGTH = 1.96
"""Factor of a 95 % interval of one quantity (normal)."""
ELLIPSE = 2.448
"""Factor of the 95 % ellipse of two (chi-squared with two degrees of freedom)."""
FLAT = 15.0
"""Degrees below which a crossing is too flat for first order."""
SAMPLES = 2000
_SHARE = 0.1


@dataclass(frozen=True, slots=True)
class Hand:
    """Standard uncertainties of a hand: mm along the ruler, degrees at the protractor, degrees of a
    slid set square (less than a protractor’s: nothing is read, common practice with no source)."""

    length: float = 0.5
    angle: float = 0.5
    parallel: float = 0.3

    def deviation(self, kind: str, factor: float) -> float:
        """Standard uncertainty of a deviation in the construction's own unit, ``factor`` mm a unit."""
        if kind.startswith("length"):
            return self.length / factor
        return self.parallel if kind == "parallel" else self.angle


PRACTISED = Hand()
ORDINARY = Hand(1.0, 1.0, 0.6)


@dataclass(frozen=True, slots=True)
class Share:
    """What one move contributes to the variance of the length read (quantity squared)."""

    move: int
    kind: str
    variance: float


@dataclass(frozen=True, slots=True)
class Spread:
    """How a hand's drawings scatter: covariance of the end point (quantity squared, picture
    unturned), standard uncertainties of the length read (quantity) and of the angle read (degrees;
    None where the sum is nothing), what contributes, and whether it was found by sampling."""

    covariance: Matrix
    length: float
    angle: float | None
    shares: tuple[Share, ...]
    sampled: bool

    @property
    def half_width(self) -> float:
        """Half-width of the 95 % interval of the length read, in the quantity's unit."""
        return ONE_LENGTH * self.length

    def ellipse(self) -> tuple[float, float, float]:
        """Half axes of the 95 % ellipse of the end point (quantity) and the first one's angle."""
        (a, b), (_, d) = self.covariance
        middle, half = (a + d) / 2, math.hypot((a - d) / 2, b)
        major, minor = middle + half, max(0.0, middle - half)
        angle = wrap(phasor.angle(complex((a - d) / 2, b)) / 2)
        return ELLIPSE * math.sqrt(major), ELLIPSE * math.sqrt(minor), angle


def _kinds(moves: tuple[Move, ...]) -> list[tuple[int, str]]:
    return [(index, kind) for index, move in enumerate(moves) for kind in DEVIATIONS.get(type(move), ())]


def _end(construction: Construction, deviations: Mapping[str, float]) -> Point:
    return carry_out(construction.moves_to_end, deviations, construction.figure).points[construction.end]


def _is_final(move: Move) -> bool:
    """Whether a move reads the drawn sum: its error adds to the reading, not to the drawing."""
    return isinstance(move, (ReadLength, ReadAngle)) and move.reading in ("n", "n-angle")


def spread(
    construction: Construction, factor: float, hand: Hand = PRACTISED, *, first_order: bool = False
) -> Spread:
    """The scatter of a hand's drawings of a construction at ``factor`` mm for each unit.

    ``first_order`` spares the sampling where lines cross flatly: quick, and then too small.
    """
    if flattest(construction) < FLAT and not first_order:
        return _sampled(construction, factor, hand)
    exact = construction.end_point
    unit = _direction(exact)
    xx = xy = yy = 0.0
    shares: list[Share] = []
    for index, kind in _kinds(construction.moves):
        if _is_final(construction.moves[index]):
            continue
        deviation = hand.deviation(kind, factor)
        step = _SHARE * deviation
        moved = _moved(construction, f"{index}:{kind}", step, exact).times(deviation / step)
        xx, xy, yy = xx + moved.x * moved.x, xy + moved.x * moved.y, yy + moved.y * moved.y
        along = geometry.dot(moved, unit)
        shares.append(Share(index, kind, along * along))
    return _made(((xx, xy), (xy, yy)), exact, factor, hand, tuple(shares), sampled=False)


def _moved(construction: Construction, key: str, step: float, exact: Point) -> Point:
    """How far the end moves for one small deviation: centrally, or to the one side on which the
    move can still be made (arcs that only just cross)."""
    try:
        ahead = _end(construction, {key: step})
    except Degenerate:
        return exact.minus(_end_or(construction, {key: -step}, exact))
    try:
        behind = _end(construction, {key: -step})
    except Degenerate:
        return ahead.minus(exact)
    return ahead.minus(behind).times(0.5)


def _end_or(construction: Construction, deviations: Mapping[str, float], otherwise: Point) -> Point:
    try:
        return _end(construction, deviations)
    except Degenerate:
        return otherwise


def _direction(end: Point) -> Point:
    length = math.hypot(end.x, end.y)
    return Point(end.x / length, end.y / length) if length > 0 else Point(1.0, 0.0)


def _made(
    covariance: Matrix, end: Point, factor: float, hand: Hand, shares: tuple[Share, ...], *, sampled: bool
) -> Spread:
    """Lengths and angles from the covariance of the end point, the final reading added."""
    unit = _direction(end)
    size = math.hypot(end.x, end.y)
    (xx, xy), (_, yy) = covariance
    along = unit.x * unit.x * xx + 2 * unit.x * unit.y * xy + unit.y * unit.y * yy
    across = unit.y * unit.y * xx - 2 * unit.x * unit.y * xy + unit.x * unit.x * yy
    reading = hand.length / factor
    length = math.sqrt(max(0.0, along) + reading * reading)
    angle = None
    if size > ONE_LENGTH * length:
        turned = math.sqrt(max(0.0, across)) / size * 180.0 / math.pi
        angle = math.hypot(turned, hand.angle)
    last = Share(-1, "reading", reading * reading)
    return Spread(covariance, length, angle, (*shares, last), sampled)


class Dice:
    """Seeded numbers, alike in every host: a 64-bit linear congruential generator (Knuth's MMIX
    multiplier, from memory), and normal deviates as sums of twelve uniform ones."""

    def __init__(self, seed: int) -> None:
        self.state = (seed * 2862933555777941757 + 3037000493) % (1 << 64)

    def uniform(self) -> float:
        """A number from 0 to 1."""
        self.state = (self.state * 6364136223846793005 + 1442695040888963407) % (1 << 64)
        return (self.state >> 11) / (1 << 53)

    def normal(self) -> float:
        """A number of mean 0 and standard deviation 1, nearly normal."""
        return math.fsum(self.uniform() for _ in range(12)) - 6.0


def _sampled(construction: Construction, factor: float, hand: Hand) -> Spread:
    """The scatter by drawing it many times; a drawing whose lines do not meet is thrown away."""
    dice = Dice(20261125)
    kinds = [pair for pair in _kinds(construction.moves) if not _is_final(construction.moves[pair[0]])]
    exact = construction.end_point
    moved: list[Point] = []
    for _ in range(SAMPLES):
        deviations = {
            f"{index}:{kind}": hand.deviation(kind, factor) * dice.normal() for index, kind in kinds
        }
        try:
            moved.append(_end(construction, deviations).minus(exact))
        except Degenerate:
            continue
    count = len(moved)
    xx = math.fsum(place.x * place.x for place in moved) / count
    xy = math.fsum(place.x * place.y for place in moved) / count
    yy = math.fsum(place.y * place.y for place in moved) / count
    return _made(((xx, xy), (xy, yy)), exact, factor, hand, (), sampled=True)
