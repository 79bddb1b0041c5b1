"""Many hand drawings at once, for tests: the moves carried out over numpy arrays, one place for each drawing.

Written apart from `carry_out`, with complex numbers and numpy's own functions, so that the two check each other.
"""

import numpy

from pycore.accuracy.hand import Hand
from pycore.constructions import moves as m
from pycore.constructions.construction import Construction


class Drawings:
    """So many drawings of a construction by a hand at ``factor`` mm for each unit: ``end`` and ``length``."""

    def __init__(self, construction: Construction, factor: float, hand: Hand, count: int, seed: int) -> None:
        self.random = numpy.random.default_rng(seed)
        self.factor, self.hand, self.count = factor, hand, count
        self.points: dict[str, numpy.ndarray] = {}
        self.lines: dict[str, tuple[numpy.ndarray, numpy.ndarray]] = {}
        self.readings: dict[str, numpy.ndarray] = {}
        with numpy.errstate(invalid="ignore"):  # Not a number where arcs miss each other, and what hangs on them.
            for move in construction.moves:
                getattr(self, "_" + type(move).__name__)(move)
        drawn = numpy.isfinite(self.points[construction.end])
        self.end = self.points[construction.end][drawn]
        self.length = self.readings["n"][drawn] if "n" in self.readings else numpy.abs(self.end)

    def _slip(self, kind: str) -> numpy.ndarray:
        """One slip for each drawing: degrees, or the quantity's unit."""
        return self.hand.deviation(kind, self.factor) * self.random.standard_normal(self.count)

    def _full(self, value: complex) -> numpy.ndarray:
        return numpy.full(self.count, value, dtype=complex)

    def _Start(self, move: m.Start) -> None:
        self.points[move.point] = self._full(0)

    def _Direction(self, move: m.Direction) -> None:
        self.lines[move.line] = (self.points[move.at], numpy.full(self.count, float(move.degrees)))

    def _TurnAngle(self, move: m.TurnAngle) -> None:
        turn = move.turn
        if isinstance(turn, m.Supplement):
            turn = turn.sense * (180.0 - self.readings[turn.reading])
        zero = self.lines[move.zero][1] + (180.0 if move.back else 0.0)
        self.lines[move.line] = (self.points[move.at], zero + turn + self._slip("angle"))

    def _SetOff(self, move: m.SetOff) -> None:
        length = move.length
        if isinstance(length, m.SumOf):
            length = sum(self.readings[name] for name in length.readings)
        length = (length + self._slip("length")) * (-1 if move.back else 1)
        along = numpy.exp(1j * numpy.radians(self.lines[move.line][1]))
        self.points[move.point] = self.points[move.start] + length * along

    def _DrawParallel(self, move: m.DrawParallel) -> None:
        self.lines[move.line] = (self.points[move.through], self.lines[move.to][1] + self._slip("parallel"))

    def _Intersect(self, move: m.Intersect) -> None:
        self.points[move.point] = _met(*self.lines[move.first], *self.lines[move.second])

    def _CrossArcs(self, move: m.CrossArcs) -> None:
        first, second = self.points[move.first], self.points[move.second]
        radii = [numpy.abs(self.points[b] - self.points[a]) for a, b in (move.first_radius, move.second_radius)]
        one, other = radii[0] + self._slip("length"), radii[1] + self._slip("length-2")
        apart = numpy.abs(second - first)
        along = (one**2 - other**2 + apart**2) / (2 * apart)
        up = numpy.sqrt(one**2 - along**2)
        unit = (second - first) / apart
        near = first + second - self.points[move.opposite]
        sides = [first + unit * (along + 1j * up), first + unit * (along - 1j * up)]
        closer = numpy.abs(sides[0] - near) <= numpy.abs(sides[1] - near)
        self.points[move.point] = numpy.where(closer, *sides)

    def _DropPerpendicular(self, move: m.DropPerpendicular) -> None:
        at, degrees = self.lines[move.line]
        start = self.points[move.start]
        self.points[move.foot] = _met(start, degrees + 90.0 + self._slip("parallel"), at, degrees)

    def _Join(self, move: m.Join) -> None:
        start, end = self.points[move.start], self.points[move.end]
        self.lines[move.line] = (start, numpy.degrees(numpy.angle(end - start)))

    def _ReadLength(self, move: m.ReadLength) -> None:
        between = self.points[move.end] - self.points[move.start]
        length = numpy.abs(between)
        if move.line:
            length = (between * numpy.exp(-1j * numpy.radians(self.lines[move.line][1]))).real
        self.readings[move.reading] = length + self._slip("length")

    def _ReadAngle(self, move: m.ReadAngle) -> None:
        between = (self.lines[move.second][1] - self.lines[move.first][1] + 180.0) % 360.0 - 180.0
        self.readings[move.reading] = numpy.abs(between) + self._slip("angle")


def _met(at, degrees, other, others) -> numpy.ndarray:
    """Where lines through these points in these directions meet."""
    one, two = numpy.exp(1j * numpy.radians(degrees)), numpy.exp(1j * numpy.radians(others))
    cross = (one.conjugate() * two).imag
    return at + one * ((other - at).conjugate() * two).imag / cross
