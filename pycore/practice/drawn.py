"""A hand drawing judged line by line, each from the lines that were drawn before it.

The points come in mm on the paper. They are turned so that the direction drawn first lies where it
belongs, then the construction's own moves are carried out over them (``retrace.retrace``): what a move
should have given, going by the learner's own earlier lines, is compared with what was drawn. A line
that is off is looked at for the usual slips; what fits none is not named.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from pycore import geometry
from pycore.accuracy.hand import Hand
from pycore.constructions import roles
from pycore.constructions.construction import Construction, DrawingConvention
from pycore.constructions.moves import (
    CrossArcs,
    Direction,
    DrawParallel,
    Intersect,
    SetOff,
    Start,
    TurnAngle,
    turn_of,
    zero_of,
)
from pycore.constructions.names import START_POINT
from pycore.constructions.retrace import RetracedPoint, retrace
from pycore.geometry import ORIGIN, Point
from pycore.phasor import wrap
from pycore.practice.allowed import DOT, AllowedByHand, bands_of_dashed, coverage_of, length_along
from pycore.practice.marking import ACCEPT, LOOK, WRONG, band_of
from pycore.practice.slips import LineMistake, same_length, turned_by_slip
from pycore.words import mistakes as words
from pycore.words import photograph as photo_words
from pycore.words.phrase import Phrase


@dataclass(frozen=True, slots=True)
class ReferenceDrawing:
    """What was to be drawn: the construction and how it lies on the paper, mm for each unit (``factor``),
    units per cm (``scale``), the hand it is judged by, how far (mm, 95 %) such a hand's result may be off, and
    what its phasors are called."""

    construction: Construction
    picture: DrawingConvention
    factor: float
    scale: float
    hand: Hand
    allowed: float
    tags: Mapping[str, Phrase]


@dataclass(frozen=True, slots=True)
class LineUncertainty:
    """Standard uncertainties of a line that was measured: of its length (mm) and its direction (degrees)."""

    length: float = 0.0
    angle: float = 0.0


@dataclass(frozen=True, slots=True)
class JudgedLine:
    """One line judged. ``kind``: ``line`` (its angle is the protractor's reading), ``first`` (its angle is that
    from where the sheet has it) or ``dashed`` (its angle is that from a true parallel). ``expected`` and
    ``angle_expected`` follow from the learner's own earlier lines; mm and degrees. ``angle`` is None where
    the line has no direction of its own to be judged. ``allowed``: the tolerances of both at 95 %. ``mirrored``: its
    direction is right in a mirror image of the drawing, and wrong as it is."""

    kind: str
    symbol: Phrase
    ends: tuple[str, str]
    length: float
    expected: float
    angle: float | None
    angle_expected: float
    off: float
    allowed: tuple[float, float]
    bands: tuple[str, str]
    slips: tuple[LineMistake, ...] = ()
    mirrored: bool = False

    @property
    def band(self) -> str:
        """The worse of both bands."""
        order = (ACCEPT, "look", "wrong")
        return max(self.bands, key=order.index)

    @property
    def runs_on(self) -> bool:
        """Whether it is a dashed side with another length than it needs, of which only the direction is judged."""
        off = math.fabs(self.length - self.expected)
        return self.kind == "dashed" and self.bands[0] == ACCEPT and off > self.allowed[0]


def _badness(line: JudgedLine) -> int:
    """How bad a line is, 0 for one that is accepted."""
    return (ACCEPT, LOOK, WRONG).index(line.band)


def _first_arrow(construction: Construction) -> SetOff:
    """The first arrow that belongs to the sum: what goes with it at a scale of its own is not judged."""
    return next(move for move in construction.moves if isinstance(move, SetOff) and move.role == roles.GIVEN)


def first_direction(construction: Construction) -> str:
    """The line by which a drawing is turned to where it belongs, if no arrow lies on it; else ""."""
    setting = _first_arrow(construction)
    directions = [move.line for move in construction.moves if isinstance(move, Direction)]
    if setting.line in directions:
        return ""
    turns = [m for m in construction.moves if isinstance(m, TurnAngle) and m.line == setting.line]
    return turns[0].zero if turns and turns[0].zero in directions else directions[0]


def points_to_find(construction: Construction) -> tuple[str, ...]:
    """The points that the learner shows, in the order of drawing: the start, a point on the direction drawn first
    (by the line's name) where no arrow lies on it, then each point as it comes."""
    named: list[str] = []
    for move in construction.moves:
        if isinstance(move, Start):
            named.append(move.point)
            if first_direction(construction):
                named.append(first_direction(construction))
        elif isinstance(move, Intersect | CrossArcs) or (
            isinstance(move, SetOff) and (move.role == roles.GIVEN or move.point == construction.end)
        ):
            named.append(move.point)
    return tuple(dict.fromkeys(named))


def _points(construction: Construction) -> list[str]:
    """The same without what only turns the drawing: a line may have the name of a point that nobody shows."""
    return [name for name in points_to_find(construction) if name != first_direction(construction)]


def allowed_by_hand(drawing: ReferenceDrawing) -> AllowedByHand:
    """What the drawing's hand allows, where two numbers are measured of each point but the start."""
    return AllowedByHand(drawing.hand, drawing.factor, coverage_of(2 * len(_points(drawing.construction)) - 2))


@dataclass(frozen=True, slots=True)
class AlignedPoints:
    """Points in the construction's own unit, turned so that the first direction is right; by how much they
    were turned on the paper (degrees), where the start is (mm), and the first direction (``axis``, degrees)."""

    points: Mapping[str, Point]
    turned: float
    origin: Point
    axis: float

    def mirrored(self) -> "AlignedPoints":
        """The same with every angle from the first direction the other way round."""
        points = {
            name: ORIGIN.moved(geometry.distance(ORIGIN, point), 2.0 * self.axis - geometry.direction(ORIGIN, point))
            if point != ORIGIN else point
            for name, point in self.points.items()
        }  # fmt: skip
        return replace(self, points=points)


def aligned(drawing: ReferenceDrawing, places: Mapping[str, Point]) -> AlignedPoints:
    """The drawn points (mm, y up) as the construction counts them; where nothing is drawn along the first direction,
    as they lie on the sheet."""
    construction, picture = drawing.construction, drawing.picture
    start = next(move.point for move in construction.moves if isinstance(move, Start))
    guide = first_direction(construction)
    setting = _first_arrow(construction)
    along = next(m for m in construction.moves if isinstance(m, Direction) and m.line == (guide or setting.line))
    first = guide or setting.point
    origin = places[start]
    right, up = picture.place(Point(1.0, 0.0)), picture.place(Point(0.0, 1.0))
    measured: dict[str, Point] = {}
    for name, place in places.items():
        step = place.minus(origin).times(1.0 / drawing.factor)
        measured[name] = Point(geometry.dot(step, right), geometry.dot(step, up))
    apart = measured.get(first, ORIGIN)
    turned = wrap(geometry.direction(ORIGIN, apart) - along.degrees) if apart != ORIGIN else 0.0
    points = {
        name: ORIGIN.moved(geometry.distance(ORIGIN, point), geometry.direction(ORIGIN, point) - turned)
        for name, point in measured.items()
        if name != guide
    }
    if not guide and apart != ORIGIN:
        # Exactly on its line: a rest of rounding would look like an error of the hand.
        points[first] = ORIGIN.moved(geometry.distance(ORIGIN, apart), along.degrees)
    return AlignedPoints(points, wrap(turned * picture.sense), origin, along.degrees)


class Judge:
    """Judges the lines of one drawing. ``unsure`` gives the uncertainty of a line by the names of its ends;
    on its ``sheet`` the first line's direction is judged too, which on plain paper nobody can know.
    ``by_stroke``: the drawing is known stroke by stroke, so that where each begins, and each arc, is judged apart."""

    def __init__(
        self,
        drawing: ReferenceDrawing,
        aligned: AlignedPoints,
        unsure: Mapping[tuple[str, str], LineUncertainty],
        sheet: bool,
        by_stroke: bool = False,
    ) -> None:
        self.drawing, self.aligned, self.unsure, self.sheet, self.by_stroke = drawing, aligned, unsure, sheet, by_stroke
        self.moves = drawing.construction.moves
        self.arms = {arm.key: arm for arm in drawing.construction.arms}
        self.not_drawn = set(_points(drawing.construction)) - set(aligned.points)
        self.by_hand = allowed_by_hand(drawing)

    def lines(self) -> tuple[JudgedLine, ...]:
        """Every line of which both ends are drawn, in the order of drawing."""
        judged: list[JudgedLine] = []
        for traced in retrace(self.moves, self.aligned.points):
            move = self.moves[traced.index]
            if isinstance(move, SetOff):
                if move.start in self.not_drawn:
                    continue
                judged.append(self._plain_end(traced, move) if move.role == roles.MARK else self._arm(traced, move))
            elif isinstance(move, Intersect | CrossArcs):
                judged.extend(self._corner(traced, move))
        return tuple(judged)

    def _judged_line(
        self, kind: str, symbol: Phrase, ends: tuple[str, str], wanted: Point, drawn: Point,
        by_hand: tuple[float, float], read: tuple[float | None, float],
    ) -> JudgedLine:  # fmt: skip
        """A line from the step that was wanted and the step that was drawn; ``by_hand`` is what the hand alone allows
        (mm, degrees), ``read`` is how its angle is written."""
        factor = self.drawing.factor
        length, expected = (factor * geometry.distance(ORIGIN, step) for step in (drawn, wanted))
        off = wrap(geometry.direction(ORIGIN, drawn) - geometry.direction(ORIGIN, wanted)) if length > 0 else 0.0
        unsure, coverage = self.unsure.get(ends, LineUncertainty()), self.by_hand.coverage
        allowed = math.hypot(by_hand[0], coverage * unsure.length), math.hypot(by_hand[1], coverage * unsure.angle)
        turned = math.fabs(off) if expected >= DOT else 0.0
        bands = band_of(math.fabs(length - expected) / allowed[0]), band_of(turned / allowed[1])
        return JudgedLine(kind, symbol, ends, length, expected, *read, off, allowed, bands)

    def _allowed(self, traced: RetracedPoint, line: str, wanted: Point, *, parallel: bool) -> tuple[float, float]:
        """What the hand allows of the length (mm) and direction of a step that it sets off on a line."""
        earlier, factor = self.moves[: traced.index], self.drawing.factor
        along = factor * length_along(earlier, traced.so_far, line)
        turn = None if parallel else self._turn_before(traced.index, line)
        return self.by_hand.line(factor * geometry.distance(ORIGIN, wanted), turn, parallel=parallel, along=along)

    # One arrow.

    def _arm(self, traced: RetracedPoint, move: SetOff) -> JudgedLine:
        start = traced.so_far.points[move.start]
        drawn, wanted = self.aligned.points[move.point].minus(start), traced.expected.minus(start)
        turn = self._turn_before(traced.index, move.line)
        symbol = self.drawing.tags.get(move.phasor, ())
        ends = (move.start, move.point)
        if turn is None:
            carried = any(isinstance(m, DrawParallel) and m.line == move.line for m in self.moves)
            allowed = self._allowed(traced, move.line, wanted, parallel=carried)
            kind = "dashed" if carried else "first"
            line = self._judged_line(kind, symbol, ends, wanted, drawn, allowed, (None, 0.0))
            line = line if carried or not self.sheet else self._as_on_the_sheet(line)
        else:
            zero, right = zero_of(turn, traced.so_far.lines), turn_of(turn, traced.so_far.readings)
            own = wrap(geometry.direction(ORIGIN, drawn) - zero)
            readings = math.fabs(own), math.fabs(wrap(right))
            allowed = self._allowed(traced, move.line, wanted, parallel=False)
            line = self._judged_line("line", symbol, ends, wanted, drawn, allowed, readings)
        if line.band == ACCEPT:
            return line
        return replace(line, slips=(*line.slips, *self._slips(traced, move, turn, line)))

    def _as_on_the_sheet(self, line: JudgedLine) -> JudgedLine:
        """The first line with how far it is turned from where the sheet has it."""
        turned = self.aligned.turned
        bands = line.bands[0], band_of(math.fabs(turned) / line.allowed[1])
        slips = (
            (LineMistake("first-way", *photo_words.mistake_text("first-way", line.symbol)),)
            if math.fabs(turned) > 30.0
            else ()
        )
        return replace(line, off=turned, bands=bands, slips=slips)

    def _turn_before(self, index: int, line: str) -> TurnAngle | None:
        return next((m for m in self.moves[:index] if isinstance(m, TurnAngle) and m.line == line), None)

    def _slips(
        self, traced: RetracedPoint, move: SetOff, turn: TurnAngle | None, line: JudgedLine
    ) -> Iterator[LineMistake]:
        elsewhere = None if self.by_stroke else self._from_elsewhere(traced, move)
        if elsewhere:
            yield elsewhere
            return
        if line.bands[1] != ACCEPT and turn is not None:
            yield from turned_by_slip(turn, traced, line.off, {"a": line.symbol})
        if line.bands[0] != ACCEPT:
            yield from self._measured_by_slip(move, line)

    def _from_elsewhere(self, traced: RetracedPoint, move: SetOff) -> LineMistake | None:
        """Right in length and direction, but begun at another point."""
        start = traced.so_far.points[move.start]
        step = traced.expected.minus(start)
        near = 3.0 / self.drawing.factor
        for name, other in traced.so_far.points.items():
            begun = other.plus(step)
            if name not in self.aligned.points or name == move.point or geometry.distance(other, start) < near:
                continue
            if geometry.distance(begun, self.aligned.points[move.point]) < near:
                symbol = self.drawing.tags.get(move.phasor, ())
                return LineMistake("start", *photo_words.other_start(symbol, common=name == START_POINT))
        return None

    def _measured_by_slip(self, move: SetOff, line: JudgedLine) -> Iterator[LineMistake]:
        """A length that a usual slip gives."""
        drawing, arm = self.drawing, self.arms.get(move.phasor)
        for other in self.arms.values():
            if arm is not None and other is not arm and same_length(line.length, other.size * drawing.factor):
                pair = {"a": line.symbol, "b": drawing.tags[other.key]}
                yield LineMistake("length-of-other", *photo_words.length_of_other(**pair))
                return
        if arm is None:
            return
        scaled = {
            "multiplied-lines": arm.size * drawing.scale * 10.0,
            "scale-ignored": arm.size * 10.0,
            "ten-long": 10.0 * line.expected,
            "ten-short": line.expected / 10.0,
            "centimetre-long": line.expected + 10.0,
            "centimetre-short": line.expected - 10.0,
        }
        for key, length in scaled.items():
            if length > 2.0 and same_length(line.length, length) and not same_length(length, line.expected):
                texts = words.mistake_text(key) if key in words.NAMES else photo_words.mistake_text(key, line.symbol)
                yield LineMistake(key, *texts)
                return

    # A corner, and the dashed lines that lead to it.

    def _corner(self, traced: RetracedPoint, move: Intersect | CrossArcs) -> tuple[JudgedLine, ...]:
        """Both dashed lines. Who set off the sheet's angle beside a wrong arrow has followed the steps, and so has
        who drew a true parallel to it: the reading that fits counts."""
        starts = [start for start, _, _ in self._sides(traced, move)]
        if any(start in self.not_drawn for start in starts):
            return tuple(self._dashed(traced, move, traced.expected)) if traced.crossing else ()
        if len(starts) < 2 or any(start not in self.aligned.points for start in starts):
            return (self._plain_end(traced, move),) if traced.crossing else ()
        across = self.aligned.points[starts[0]].plus(self.aligned.points[starts[1]])
        parallel = tuple(self._dashed(traced, move, across))
        if not traced.crossing:
            return parallel
        expected = tuple(self._dashed(traced, move, traced.expected))
        if all(line.band == ACCEPT for line in expected):
            return expected
        if max(map(_badness, expected)) < max(map(_badness, parallel)):
            return expected
        names = [name for _, _, name in self._sides(traced, move)]
        slips = [self._turn_mistakes(traced, line, name) for line, name in zip(expected, names, strict=True)]
        if all(line.band == ACCEPT for line in parallel):
            return parallel
        return tuple(
            replace(line, slips=found if line.bands[1] != ACCEPT else ())
            for line, found in zip(parallel, slips, strict=True)
        )

    def _dashed(self, traced: RetracedPoint, move: Intersect | CrossArcs, corner: Point) -> Iterator[JudgedLine]:
        """Both dashed lines as they should be if they met in ``corner``; of these, the ones whose start is drawn."""
        for start, like, line in self._sides(traced, move):
            if start in self.not_drawn:
                continue
            at = traced.so_far.points[start]
            wanted, drawn = corner.minus(at), self.aligned.points[move.point].minus(at)
            parallel = self._turn_before(traced.index, line) is None
            allowed = self._allowed(traced, line, wanted, parallel=parallel)
            symbol, ends = self.drawing.tags.get(like, ()), (start, move.point)
            judged = self._judged_line("dashed", symbol, ends, wanted, drawn, allowed, (None, 0.0))
            arc = isinstance(move, CrossArcs) and not self.by_stroke
            yield replace(judged, bands=bands_of_dashed(judged.bands, judged.expected, judged.off, arc=arc))

    def _turn_mistakes(self, traced: RetracedPoint, line: JudgedLine, name: str) -> tuple[LineMistake, ...]:
        """What went wrong at the protractor when a dashed line was set off."""
        turn = self._turn_before(traced.index, name)
        if turn is None or line.bands[1] == ACCEPT:
            return ()
        return tuple(turned_by_slip(turn, traced, line.off, {"a": photo_words.dashed(line.symbol)}))

    def _sides(self, traced: RetracedPoint, move: Intersect | CrossArcs) -> Iterator[tuple[str, str, str]]:
        """For both dashed lines: the point they start from, the phasor they copy, their name."""
        for join in self.moves[traced.index :]:
            if getattr(join, "role", "") == roles.PARALLEL and getattr(join, "end", "") == move.point:
                yield join.start, join.like, join.line  # type: ignore[union-attr]

    def _plain_end(self, traced: RetracedPoint, move: SetOff | Intersect | CrossArcs) -> JudgedLine:
        """A point that is no corner of a parallelogram, or whose sides start at points that nobody showed: judged by
        its distance and direction from the start."""
        ends, drawn = (START_POINT, move.point), self.aligned.points[move.point]
        shown = [index for index, one in enumerate(self.moves[: traced.index])
                 if getattr(one, "point", "") in self.aligned.points]  # fmt: skip
        hidden = tuple(one for one in self.moves[shown[-1] + 1 : traced.index + 1]
                       if getattr(one, "foot", "") not in self.aligned.points)  # fmt: skip
        allowed = self.by_hand.end(hidden, traced.so_far, move.point)
        symbol = self.drawing.tags.get("sum", ())
        return self._judged_line("line", symbol, ends, traced.expected, drawn, allowed, (None, 0.0))
