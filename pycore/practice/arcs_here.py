"""Arcs drawn with compasses on the screen: two of them cross in the corner of a parallelogram.

Each is judged by its centre and its radius, both from the lines that the learner drew before it. Arcs may give the
corner of any parallelogram, whichever instrument its sheet has for parallels. Lengths in mm, y up.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from pycore import geometry
from pycore.constructions import roles
from pycore.constructions.construction import Construction
from pycore.constructions.moves import CrossArcs, Intersect, Join
from pycore.constructions.names import START_POINT
from pycore.geometry import Point
from pycore.phasor import wrap
from pycore.practice.drawn import AlignedPoints, JudgedLine, ReferenceDrawing, allowed_by_hand
from pycore.practice.marking import ACCEPT, WRONG, band_of
from pycore.practice.photograph import Path, on_paper
from pycore.practice.slips import LineMistake, same_length
from pycore.words import arcs_here as words

KIND = "arc"
NEAR = 5.0
"""How far (mm) the point of the compasses may be from a tip and still be meant to stand there."""
FITS = 3.0
"""How far (mm) a radius may be off and still tell which arc is meant, if its centre does not."""
BEYOND = 3.0
"""How far (mm) arcs may end short of each other and still be taken to cross."""
HALF, PIECES = 14.0, 8
"""Half of a true arc as it is shown (degrees), and the straight pieces that it is shown in."""


@dataclass(frozen=True, slots=True)
class Arc:
    """An arc as it was drawn: from ``start``, degrees anticlockwise from the right, by ``sweep`` degrees."""

    centre: Point
    radius: float
    start: float
    sweep: float

    def reaches(self, place: Point) -> bool:
        """Whether a place of its circle lies on the arc, or a little beyond its ends."""
        more = BEYOND / max(self.radius, BEYOND) * 360.0 / math.tau
        first, last = sorted((0.0, self.sweep))
        along = wrap(geometry.direction(self.centre, place) - self.start - (first + last) / 2.0)
        return math.fabs(along) <= (last - first) / 2.0 + more


@dataclass(frozen=True, slots=True)
class WantedArc:
    """An arc round ``centre`` through ``corner``: its radius is copied from between ``opposite`` and ``other``, the
    centre of the other arc. ``key``: the phasor whose tip is the centre; ``index``: the move that makes the corner."""

    centre: str
    corner: str
    opposite: str
    other: str
    key: str
    index: int


def wanted_arcs(construction: Construction) -> tuple[WantedArc, ...]:
    """Both arcs of every corner of a parallelogram, in the order of drawing."""
    found: list[WantedArc] = []
    points, tolerance = construction.figure.points, 1e-6
    for index, move in enumerate(construction.moves):
        if not isinstance(move, Intersect | CrossArcs):
            continue
        sides = [join for join in construction.moves[index:]
                 if isinstance(join, Join) and join.role == roles.PARALLEL and join.end == move.point]  # fmt: skip
        if len(sides) != 2 or not all(side.like for side in sides):
            continue
        opposite = move.opposite if isinstance(move, CrossArcs) else START_POINT
        one, other = (points[side.start] for side in sides)
        corner = one.plus(other).minus(points[opposite])
        size = geometry.distance(one, other)
        if geometry.distance(corner, points[move.point]) > tolerance * max(size, 1.0):
            continue
        for side, across in (sides, sides[::-1]):
            found.append(WantedArc(side.start, move.point, opposite, across.start, across.like, index))
    return tuple(found)


@dataclass(slots=True)
class ArcFollower:
    """Finds the arcs of one construction among those that were drawn (by the place of each among all strokes). It reads
    and fills ``places``, which the lines share with it."""

    wanted: tuple[WantedArc, ...]
    drawn: Mapping[int, Arc]
    places: dict[str, Point]
    used: dict[WantedArc, int] = field(default_factory=dict)
    aside: set[str] = field(default_factory=set)
    """Corners at the wrong one of two crossings."""

    def arc(self, wanted: WantedArc) -> Arc:
        """The drawn arc that is a wanted one."""
        return self.drawn[self.used[wanted]]

    def corners(self) -> set[str]:
        """The corners that arcs give."""
        pairs = [one.corner for one in self.used]
        return {corner for corner in pairs if pairs.count(corner) == 2 and corner in self.places}

    def radius(self, wanted: WantedArc) -> float:
        """The radius of an arc by the learner's own lines."""
        return geometry.distance(self.places[wanted.opposite], self.places[wanted.other])

    def _possible(self) -> Iterator[WantedArc]:
        for wanted in self.wanted:
            known = all(name in self.places for name in (wanted.centre, wanted.opposite, wanted.other))
            if known and wanted not in self.used:
                yield wanted

    def _free(self) -> Iterator[tuple[int, Arc]]:
        taken = set(self.used.values())
        return ((index, arc) for index, arc in self.drawn.items() if index not in taken)

    def _off(self, wanted: WantedArc, arc: Arc) -> float:
        return math.fabs(arc.radius - self.radius(wanted))

    def take(self) -> bool:
        """Take arcs whose point stands on the tip where it belongs."""
        found = False
        for wanted in self._possible():
            centre, other = self.places[wanted.centre], self.places[wanted.other]
            near = [(self._off(wanted, arc), index) for index, arc in self._free()
                    if (away := geometry.distance(arc.centre, centre)) <= NEAR
                    and away <= geometry.distance(arc.centre, other)]  # fmt: skip
            if near:
                self._use(wanted, min(near)[1])
                found = True
        return found

    def take_astray(self) -> bool:
        """Take one arc whose point stands elsewhere, known by its radius, or because no other is left."""
        for wanted in self._possible():
            free = list(self._free())
            partner = any(one.corner == wanted.corner for one in self.used)
            fitting = [(self._off(wanted, arc), index) for index, arc in free if self._off(wanted, arc) <= FITS
                       and (partner or self._on_a_point(arc))]  # fmt: skip
            if not fitting and partner and len(free) == 1:
                fitting = [(0.0, free[0][0])]
            if fitting:
                self._use(wanted, min(fitting)[1])
                return True
        return False

    def _on_a_point(self, arc: Arc) -> bool:
        return any(geometry.distance(arc.centre, place) <= NEAR for place in self.places.values())

    def _use(self, wanted: WantedArc, index: int) -> None:
        self.used[wanted] = index
        pair = [one for one in self.used if one.corner == wanted.corner]
        if len(pair) == 2:
            self._cross(*pair)

    def _cross(self, first: WantedArc, second: WantedArc) -> None:
        """Put the corner where the arcs cross: farther from the opposite point, unless they are drawn to cross only
        nearer to it."""
        one, other = self.arc(first), self.arc(second)
        opposite = self.places[first.opposite]
        far = self.places[first.centre].plus(self.places[second.centre]).minus(opposite)
        met, near = (geometry.circles_meet(one.centre, one.radius, other.centre, other.radius, side)
                     for side in (far, opposite))  # fmt: skip
        if met is None or near is None:
            return
        if not (one.reaches(met) and other.reaches(met)) and one.reaches(near) and other.reaches(near):
            self.aside.add(first.corner)
            met = near
        self.places[first.corner] = met

    def judged(self, drawing: ReferenceDrawing) -> tuple[tuple[JudgedLine, int, WantedArc], ...]:
        """Every arc that was found, judged, with the place of its stroke."""
        return tuple((self._judged(drawing, wanted), index, wanted) for wanted, index in self.used.items())

    def _judged(self, drawing: ReferenceDrawing, wanted: WantedArc) -> JudgedLine:
        """An arc by its radius, and by how far (mm, ``off``) its centre is from its tip."""
        arc, right = self.arc(wanted), self.radius(wanted)
        allowed = allowed_by_hand(drawing).line(0.0)[0]
        away = geometry.distance(arc.centre, self.places[wanted.centre])
        bands = band_of(math.fabs(arc.radius - right) / allowed), band_of(away / (2.0 * allowed))
        line = JudgedLine(KIND, drawing.tags.get(wanted.key, ()), (wanted.centre, wanted.corner), arc.radius, right,
                          None, 0.0, away, (allowed, 2.0 * allowed), bands)  # fmt: skip
        if wanted.corner in self.aside:
            return replace(line, bands=(bands[0], WRONG), slips=(_slip("arc-side", line),))
        return line if line.band == ACCEPT else replace(line, slips=tuple(self._slips(drawing, wanted, line)))

    def _slips(self, drawing: ReferenceDrawing, wanted: WantedArc, line: JudgedLine) -> Iterator[LineMistake]:
        """A usual slip that gives such an arc."""
        if line.bands[1] == WRONG:
            yield _slip("arc-centre", line)
        if line.bands[0] == ACCEPT:
            return
        own = geometry.distance(self.places[wanted.opposite], self.places[wanted.centre])
        if same_length(line.length, own) and not same_length(own, line.expected):
            yield _slip("arc-own-length", line)
            return
        for arm in drawing.construction.arms:
            size = arm.size * drawing.factor
            if same_length(line.length, size) and not same_length(size, line.expected):
                yield LineMistake("length-of-other", *words.length_of(line.symbol, drawing.tags.get(arm.key, ())))
                return
        for key, length in (("centimetre-long", 10.0), ("centimetre-short", -10.0)):
            if same_length(line.length, line.expected + length):
                yield _slip(key, line)


def _slip(key: str, line: JudgedLine) -> LineMistake:
    return LineMistake(key, *words.mistake_text(key, line.symbol))


def true_arcs(drawing: ReferenceDrawing, turned: AlignedPoints, drawn: Sequence[WantedArc]) -> Iterator[Path]:
    """The arcs of the true drawing on the paper (mm), as points: a piece about the corner, of those that were drawn."""
    points = drawing.construction.figure.points
    for wanted in drawn:
        centre, corner = (on_paper(drawing, turned, points[name]) for name in (wanted.centre, wanted.corner))
        radius, way = geometry.distance(centre, corner), geometry.direction(centre, corner)
        ends = [way + HALF * (2 * piece - PIECES) / PIECES for piece in range(PIECES + 1)]
        yield Path(KIND, wanted.key, drawing.tags.get(wanted.key, ()), tuple(centre.moved(radius, deg) for deg in ends))
