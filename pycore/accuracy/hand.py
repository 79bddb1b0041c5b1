"""The errors of a hand: ruler and protractor errors carried through every move of a construction.

A practised hand marks and reads to 0.5 mm and 0.5 degrees, an ordinary one to 1 mm and 1 degree: standard uncertainties
of a normal distribution, common practice with no source. The moves are carried out with each deviation
(``moves.carry_out``), to first order where that is valid. If lines cross too flatly, drawings scatter with long tails;
then a seeded sample is drawn, and the interval that contains 95 of 100 drawings counts.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from pycore import geometry, phasor
from pycore.accuracy.propagation import Matrix, Vector
from pycore.constructions import deviations
from pycore.constructions.construction import FLAT_CROSSING, Construction
from pycore.constructions.many import Column, carry_out_many, crossing_columns
from pycore.constructions.moves import DEVIATIONS, Move, ReadAngle, ReadLength
from pycore.constructions.names import RESULT_ANGLE, RESULT_LENGTH
from pycore.geometry import Point
from pycore.phasor import wrap

ONE_LENGTH = 1.96
"""Factor of a 95 % interval of one quantity (normal)."""
ELLIPSE = 2.448
"""Factor of the 95 % ellipse of two (chi-squared with two degrees of freedom)."""
UNSURE = 0.1
"""Standard uncertainty of a crossing's angle, as a share of it, from which first order fails."""
BENT = 0.003
"""Share of the scatter that is curvature, from which first order fails. With these two limits and ``FLAT_CROSSING``,
the half-width is within 3 % and the ellipse holds 94 to 96 % (found by simulating some 1,000 ways)."""
FAIRLY_SURE, WIDENED = 0.14, 1.4
"""While every crossing's angle is known to this share of it, a sample is at most so many times as wide as first order
(found by simulating some 1,700 flat ways of 4,000 random loads: 1.31 times at most)."""
SAMPLES = 800
"""Drawings of a sample: its half-width is then right to some 2 to 4 %, and to 15 % where tails are longest."""
_PROBE = 0.1
"""Share of an error's standard uncertainty with which its effect is tried out."""


@dataclass(frozen=True, slots=True)
class Hand:
    """Standard uncertainties of a hand: mm along the ruler, degrees at the protractor, degrees of a moved set square
    (smaller than the protractor's, since nothing is read; common practice with no source)."""

    length: float = 0.5
    angle: float = 0.5
    parallel: float = 0.3

    def deviation(self, kind: str, factor: float) -> float:
        """Return the standard uncertainty of a deviation in the construction's unit, at ``factor`` mm for each unit."""
        if kind in deviations.LENGTHS:
            return self.length / factor
        return self.parallel if kind == deviations.PARALLEL else self.angle


PRACTISED = Hand()
ORDINARY = Hand(1.0, 1.0, 0.6)
HANDS = {"practised": PRACTISED, "ordinary": ORDINARY}
SQUARE_SHARE = 0.6
"""A slid set square's error as a share of a protractor's, for a hand of one's own."""


@dataclass(frozen=True, slots=True)
class VariancePart:
    """The contribution of one move to the variance of the length read (quantity squared)."""

    move: int
    kind: str
    variance: float


@dataclass(frozen=True, slots=True)
class Spread:
    """How the drawings of a hand scatter.

    Contains the covariance of the end point (quantity squared, in calculated axes), the standard uncertainties of the
    length (quantity) and the angle read (degrees; None if the sum is zero), the contributions, whether it was found by
    sampling (then both uncertainties are chosen so that 95 of 100 drawings lie within 1.96 of them), whether first
    order fails, and the standard uncertainty of the least sure crossing's angle as a share of it.
    """

    covariance: Matrix
    length: float
    angle: float | None
    shares: tuple[VariancePart, ...]
    sampled: bool
    flat: bool = False
    unsure: float = 0.0

    @property
    def half_width(self) -> float:
        """Half-width of the 95 % interval of the length read, in the quantity's unit."""
        return ONE_LENGTH * self.length

    @property
    def widest(self) -> float:
        """The half-width that sampling cannot exceed; infinite where first order says nothing of it."""
        if self.sampled or not self.flat:
            return self.half_width
        return WIDENED * self.half_width if self.unsure < FAIRLY_SURE else math.inf

    def ellipse(self) -> tuple[float, float, float]:
        """Semi-axes of the 95 % ellipse of the end point (quantity), and the angle of the first."""
        (a, b), (_, d) = self.covariance
        middle, half = (a + d) / 2, math.hypot((a - d) / 2, b)
        major, minor = middle + half, max(0.0, middle - half)
        angle = wrap(phasor.angle(complex((a - d) / 2, b)) / 2)
        return ELLIPSE * math.sqrt(major), ELLIPSE * math.sqrt(minor), angle


def _kinds(moves: tuple[Move, ...]) -> list[tuple[int, str]]:
    return [(index, kind) for index, move in enumerate(moves) for kind in DEVIATIONS.get(type(move), ())]


def is_final(move: Move) -> bool:
    """Return whether a move reads the drawn sum: its error adds to the reading, not to the drawing."""
    return isinstance(move, (ReadLength, ReadAngle)) and move.reading in (RESULT_LENGTH, RESULT_ANGLE)


def _setting(construction: Construction) -> list[tuple[int, str]]:
    """What a hand can get wrong before the sum is read: the move's index and the deviation's name."""
    return [pair for pair in _kinds(construction.moves) if not is_final(construction.moves[pair[0]])]


def spread(
    construction: Construction, factor: float, hand: Hand = PRACTISED, *, first_order: bool = False
) -> Spread:
    """Return the scatter of a hand's drawings of a construction at ``factor`` mm for each unit.

    ``first_order`` leaves out the sampling where lines cross flatly: faster, but then too small.
    """
    exact = construction.end_point
    unit = _direction(exact)
    xx = xy = yy = bent = 0.0
    crossings = construction.crossings
    unsure = [0.0] * len(crossings)
    shares: list[VariancePart] = []
    slopes: list[float] = []
    kinds = _setting(construction)
    for (index, kind), effect in zip(kinds, _slips(construction, kinds, factor, hand), strict=True):
        moved, turned = effect.moved, effect.turned
        xx, xy, yy = xx + moved.x * moved.x, xy + moved.x * moved.y, yy + moved.y * moved.y
        bent += effect.bent
        unsure = [sofar + turn * turn for sofar, turn in zip(unsure, turned, strict=True)]
        along = geometry.dot(moved, unit)
        slopes.append(along)
        shares.append(VariancePart(index, kind, along * along))
    share = max(map(_share, crossings, unsure), default=0.0) if bent < math.inf else math.inf
    flat = bent >= BENT * (xx + yy) > 0.0 or share >= UNSURE or min(crossings, default=90.0) < FLAT_CROSSING
    covariance = ((xx, xy), (xy, yy))
    plain = replace(_made(covariance, exact, factor, hand, tuple(shares)), flat=flat, unsure=share)
    if flat and not first_order:
        return _sampled(construction, factor, hand, plain, tuple(slopes))
    return plain


def _share(angle: float, variance: float) -> float:
    """The standard uncertainty of a crossing's angle as a share of it."""
    return math.sqrt(variance) / angle if angle > 0.0 else math.inf


@dataclass(frozen=True, slots=True)
class _ErrorEffect:
    """What one deviation of its standard uncertainty does: how far the end moves, the square of how far that
    bends from straight, and how far each crossing turns (degrees)."""

    moved: Point
    bent: float
    turned: tuple[float, ...]


def _slips(
    construction: Construction, kinds: Sequence[tuple[int, str]], factor: float, hand: Hand
) -> Iterator[_ErrorEffect]:
    """What each deviation does: differences over a tenth of it, central, or to the one side on which the move can
    still be made (arcs that only just cross: first order surely fails).

    All sides are made at once, two drawings for each deviation: one after another they would take twice as long.
    """
    exact, moves = construction.end_point, construction.moves_to_end
    count = 2 * len(kinds)
    deviations = {f"{index}:{kind}": [0.0] * count for index, kind in kinds}
    for place, (index, kind) in enumerate(kinds):
        tenth = _PROBE * hand.deviation(kind, factor)
        deviations[f"{index}:{kind}"][2 * place : 2 * place + 2] = tenth, -tenth
    drawn = carry_out_many(moves, deviations, count)
    ends = [tuple.__new__(Point, place) for place in zip(*drawn.points[construction.end], strict=True)]
    turned = list(zip(*crossing_columns(moves, drawn), strict=True)) or [()] * count
    # Lines that cross after the end is found are turned by nothing that could move it.
    later = (0.0,) * (len(construction.crossings) - len(turned[0]) if turned else 0)
    half, squared = 0.5 / _PROBE, 1.0 / (_PROBE * _PROBE)
    twice_x, twice_y = exact.times(2.0)
    for high in range(0, count, 2):
        low = high + 1
        kept = [ends[side] for side in (high, low) if side not in drawn.lost]
        if len(kept) < 2:
            moved = kept[0].minus(exact).times(1.0 / _PROBE) if kept else Point(0.0, 0.0)
            yield _ErrorEffect(moved, math.inf, (0.0,) * len(turned[high]) + later)
            continue
        # Written out: asked twelve times for each sheet.
        (x, y), (other_x, other_y) = kept
        bend_x, bend_y = (x + other_x - twice_x) * squared, (y + other_y - twice_y) * squared
        turns = tuple([(up - down) * half for up, down in zip(turned[high], turned[low], strict=True)])
        moved = Point((x - other_x) * half, (y - other_y) * half)
        yield _ErrorEffect(moved, bend_x * bend_x + bend_y * bend_y, turns + later)


def _direction(end: Point) -> Point:
    length = math.hypot(end.x, end.y)
    return Point(end.x / length, end.y / length) if length > 0 else Point(1.0, 0.0)


def _made(
    covariance: Matrix, end: Point, factor: float, hand: Hand, shares: tuple[VariancePart, ...]
) -> Spread:
    """Lengths and angles from the covariance of the end point, the final reading added."""
    unit = _direction(end)
    (xx, xy), (_, yy) = covariance
    along = unit.x * unit.x * xx + 2 * unit.x * unit.y * xy + unit.y * unit.y * yy
    reading = hand.length / factor
    length = math.sqrt(max(0.0, along) + reading * reading)
    last = VariancePart(-1, "reading", reading * reading)
    angle = _angle(covariance, end, length, hand)
    return Spread(covariance, length, angle, (*shares, last), sampled=False)


def _angle(covariance: Matrix, end: Point, length: float, hand: Hand) -> float | None:
    """Standard uncertainty of the angle read; None where the sum may be nothing."""
    size, unit = math.hypot(end.x, end.y), _direction(end)
    if size <= ONE_LENGTH * length:
        return None
    (xx, xy), (_, yy) = covariance
    across = unit.y * unit.y * xx - 2 * unit.x * unit.y * xy + unit.x * unit.x * yy
    return math.hypot(math.sqrt(max(0.0, across)) / size * 180.0 / math.pi, hand.angle)


class NormalSampler:
    """Seeded normal deviates, the same on every machine: a 64-bit linear congruential generator (Knuth's MMIX
    multiplier, from memory); each deviate is a sum of sixteen numbers of 12 bits."""

    def __init__(self, seed: int) -> None:
        self.state = (seed * 2862933555777941757 + 3037000493) % (1 << 64)

    def bits(self) -> int:
        """Return the upper 48 bits of the next number."""
        self.state = (self.state * 6364136223846793005 + 1442695040888963407) % (1 << 64)
        return self.state >> 16

    def normal(self) -> float:
        """Return a nearly normal number with mean 0 and standard deviation 1."""
        total = 0
        for _ in range(4):
            word = self.bits()
            total += (word & 4095) + (word >> 12 & 4095) + (word >> 24 & 4095) + (word >> 36)
        # Sixteen even numbers 0..4095: mean 16 x 2047.5, variance 16 x (4096^2 - 1) / 12.
        return (total - 32760) / _SIXTEEN


_SIXTEEN = math.sqrt(16 * (4096 * 4096 - 1) / 12)


@lru_cache(maxsize=4)
def _throws(columns: int) -> tuple[Column, ...]:
    """Return normal deviates for every drawing of a sample, one column for each error. They are the same for every
    problem, so a class set needs them only once."""
    sampler = NormalSampler(20261125)
    thrown = [sampler.normal() for _ in range(SAMPLES * columns)]
    return tuple(thrown[column::columns] for column in range(columns))


def _scaled(factor: float, column: Column) -> Column:
    return [factor * number for number in column]


def _quantile(values: list[float], share: float) -> float:
    """The value below which this share of the values lies."""
    ordered = sorted(values)
    return ordered[min(len(ordered) - 1, int(share * len(ordered)))]


def _near(values: list[float]) -> float:
    """The mean of the values round the one below which 95 in 100 lie: steadier than that one alone."""
    ordered, count = sorted(values), len(values)
    middle = ordered[int(0.92 * count) : max(int(0.98 * count), int(0.92 * count) + 1)]
    return math.fsum(middle) / len(middle)


def _sampled(construction: Construction, factor: float, hand: Hand, plain: Spread, slopes: Vector) -> Spread:
    """The scatter by drawing it many times; a drawing whose lines do not meet is thrown away.

    ``plain``: what first order gives, ``slopes``: how far the length moves for one standard uncertainty of
    each deviation. Its own spread over the same slips is known, so that the luck of the sample can be taken out.
    """
    exact = construction.end_point
    kinds = _setting(construction)
    size, reading = math.hypot(exact.x, exact.y), hand.length / factor
    *thrown, last = _throws(len(kinds) + 1)
    slips = {
        f"{index}:{kind}": _scaled(hand.deviation(kind, factor), column)
        for (index, kind), column in zip(kinds, thrown, strict=True)
    }
    drawn = carry_out_many(construction.moves_to_end, slips, SAMPLES)
    across, up = (drawn.of_valid(column) for column in drawn.points[construction.end])
    misread = _scaled(reading, drawn.of_valid(last))
    moved = [Point(x - exact.x, y - exact.y) for x, y in zip(across, up, strict=True)]
    off = [math.fabs(math.hypot(x, y) + wrong - size) for x, y, wrong in zip(across, up, misread, strict=True)]
    steps = [drawn.of_valid(_scaled(slope, column)) for slope, column in zip(slopes, thrown, strict=True)]
    linear = [math.fsum(step) for step in zip(*steps, strict=True)]
    straight = [math.fabs(step + wrong) for step, wrong in zip(linear, misread, strict=True)]
    if len(moved) * 2 < SAMPLES:
        return plain
    covariance = _holding(moved, plain.covariance)
    length = _near(off) / _near(straight) * plain.length
    angle = _angle(covariance, exact, length, hand)
    return Spread(covariance, length, angle, plain.shares[-1:], sampled=True, flat=True)


def _holding(moved: list[Point], shape: Matrix) -> Matrix:
    """The covariance whose 95 % ellipse about the exact end holds 95 in 100 of these ends, in the shape of
    those 95: the few that went astray do not stretch it."""
    for _ in range(2):
        away = _away(moved, shape)
        limit = _quantile(away, 0.95)
        kept = [place for place, far in zip(moved, away, strict=True) if far <= limit]
        shape = _moments(kept)
    grown = _quantile(_away(moved, shape), 0.95) / (ELLIPSE * ELLIPSE)
    (xx, xy), (_, yy) = shape
    return ((grown * xx, grown * xy), (grown * xy, grown * yy))


def _moments(places: list[Point]) -> Matrix:
    """Second moments about the exact end."""
    count = len(places)
    xx = math.fsum(place.x * place.x for place in places) / count
    xy = math.fsum(place.x * place.y for place in places) / count
    yy = math.fsum(place.y * place.y for place in places) / count
    return ((xx, xy), (xy, yy))


def _away(places: list[Point], shape: Matrix) -> list[float]:
    """How far places are from the middle, squared, in standard uncertainties of a shape."""
    (xx, xy), (_, yy) = shape
    determinant, twice = xx * yy - xy * xy, 2 * xy
    if determinant > 0.0:
        return [(yy * x * x - twice * x * y + xx * y * y) / determinant for x, y in places]
    return [geometry.dot(place, place) / (xx + yy) if xx + yy > 0.0 else 0.0 for place in places]
