"""Lines that somebody drew on the screen, found again in a construction: which line is which, and where its points are.

Lines come in mm on the paper, y up. A line is known by the name that the learner gave it, or by what it can only be: it
begins where a line of the construction begins and fits no other. What nothing tells is asked for, never guessed.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from pycore import geometry
from pycore.constructions import roles
from pycore.constructions.moves import Join
from pycore.constructions.names import START_POINT
from pycore.constructions.retrace import continued
from pycore.geometry import Point, Ray
from pycore.phasor import wrap
from pycore.practice import arcs_here
from pycore.practice.allowed import DOT
from pycore.practice.arcs_here import Arc, ArcFollower, WantedArc
from pycore.practice.drawn import JudgedLine, ReferenceDrawing, aligned, allowed_by_hand
from pycore.practice.lines_here import ARROW, DASHED, Stroke, WantedLine, wanted_lines
from pycore.practice.marking import ACCEPT, LOOK, WRONG, band_of
from pycore.practice.photograph import Path, alike, judged_lines, on_paper, true_paths
from pycore.practice.slips import LineMistake
from pycore.words import mistakes, photograph
from pycore.words.phrase import Phrase

NEAR = 5.0
"""How far (mm) a line may begin from a point and still be taken to begin there."""
FITS_LENGTH, FITS_ANGLE = 3.0, 3.0
"""How far an arrow without a name may be off (mm, degrees) and still be known by its length and direction."""
BEGUN_ELSEWHERE = 3.0
"""How far (mm) from its point a line begins to be called begun at another one."""
SHORTEST = 1.0


@dataclass(slots=True)
class _Follower:
    """Finds the lines of one construction among strokes."""

    drawing: ReferenceDrawing
    strokes: Sequence[Stroke]
    places: dict[str, Point]
    wanted: tuple[WantedLine, ...]
    arcs: ArcFollower
    used: dict[WantedLine, int] = field(default_factory=dict)
    dots: set[WantedLine] = field(default_factory=set)

    def run(self) -> None:
        """Take what is named or fits, then what can be nothing else, until nothing more is found."""
        while (
            self.arcs.take() or self._take_known() or self._take_only() or self._take_dot() or self.arcs.take_astray()
        ):
            pass
        for line in self.wanted:
            if not line.arrow and line.end not in self.places and line in self.used:
                self._half_corner(line)

    def _take_known(self) -> bool:
        found = False
        for line in self.wanted:
            if line in self.used or line in self.dots or line.start not in self.places:
                continue
            index = self._known(line)
            if index is not None:
                self._take(line, index)
                found = True
        return found

    def _take(self, line: WantedLine, index: int) -> None:
        self.used[line] = index
        stroke = self.strokes[index]
        if line.arrow and line.gives_end:
            first = len(self.used) == 1 and line.start == START_POINT
            if first and geometry.distance(stroke.start, self.places[START_POINT]) <= NEAR:
                self.places[START_POINT] = stroke.start
            self.places[line.end] = stroke.end
        sides = [one for one in self.wanted if not one.arrow and one.end == line.end]
        if line.end not in self.places and len(sides) > 1 and all(one in self.used for one in sides):
            rays = [self._ray(one) for one in sides[:2]]
            met = geometry.intersection(*rays)
            if met is not None:
                self.places[line.end] = met

    def _ray(self, line: WantedLine) -> Ray:
        stroke = self.turned(line, self.strokes[self.used[line]])
        return Ray(stroke.start, geometry.direction(stroke.start, stroke.end))

    def turned(self, line: WantedLine, stroke: Stroke) -> Stroke:
        """A dashed line from the end that is nearer to where it should begin, whichever way it was drawn."""
        start = self.places[line.start]
        away = geometry.distance(stroke.end, start) < geometry.distance(stroke.start, start)
        return replace(stroke, start=stroke.end, end=stroke.start) if away and stroke.kind != ARROW else stroke

    def free(self) -> Iterator[tuple[int, Stroke]]:
        taken = set(self.used.values())
        for index, stroke in enumerate(self.strokes):
            long = geometry.distance(stroke.start, stroke.end) >= SHORTEST
            if long and index not in taken and stroke.kind != arcs_here.KIND:
                yield index, stroke

    def expected(self, line: WantedLine) -> Point | None:
        """Where a line should end by what is drawn so far (mm); None where nobody knows."""
        turned = aligned(self.drawing, self.places)
        figure = continued(self.drawing.construction.moves, turned.points)
        end = figure.points.get(line.end)
        return None if end is None else on_paper(self.drawing, turned, end)

    def _known(self, line: WantedLine) -> int | None:
        if line.arrow:
            named = [index for index, stroke in self.free() if stroke.name == line.key and stroke.kind != DASHED]
            if named and line.key:
                return min(reversed(named), key=lambda index: self._away(line, self.strokes[index]))
        start = self.places[line.start]
        begun = [
            (index, stroke) for index, one in self.free()
            if not one.name and (one.kind == ARROW) == line.arrow
            and geometry.distance((stroke := self.turned(line, one)).start, start) <= NEAR
        ]  # fmt: skip
        end = self.expected(line) if begun else None
        if begun and not line.arrow:
            return self._side(begun, end)
        if end is None:
            return None
        if not line.gives_end and line.end not in self.places:
            return None
        fitting = [(geometry.distance(stroke.end, end), index) for index, stroke in begun if _fits(stroke, end)]
        return min(fitting)[1] if fitting else None

    def _away(self, line: WantedLine, stroke: Stroke) -> float:
        """How far (mm) a line begins from where it should: one phasor may be drawn at two places."""
        return max(geometry.distance(stroke.start, self.places[line.start]), NEAR)

    def _side(self, begun: Sequence[tuple[int, Stroke]], end: Point | None) -> int:
        """Of the lines that begin at a tip, the dashed one that comes nearest to the right direction, if that is known:
        after a wrong arrow the lines may not cross that should."""

        def off(pair: tuple[int, Stroke]) -> tuple[bool, float]:
            stroke = pair[1]
            if end is None:
                return stroke.kind != DASHED, 0.0
            turn = geometry.direction(stroke.start, stroke.end) - geometry.direction(stroke.start, end)
            return stroke.kind != DASHED, math.fabs(wrap(turn))

        return min(begun, key=off)[0]

    def _take_only(self) -> bool:
        """Take one arrow that fits nothing, if only one line can begin where it begins."""
        for index, stroke in self.free():
            if stroke.kind != ARROW or stroke.name:
                continue
            possible = [line for line in self.wanted if self._may_be(line, stroke)]
            rivals = [other for other, one in self.free() if one.kind == ARROW and not one.name
                      and geometry.distance(one.start, stroke.start) <= NEAR]  # fmt: skip
            if len(possible) == 1 and rivals == [index]:
                self._take(possible[0], index)
                return True
        return False

    def _take_dot(self) -> bool:
        """Pass over an arrow that is too short to be drawn: what comes next begins at its end."""
        for line in self.wanted:
            if not line.gives_end or line in self.used or line in self.dots or line.start not in self.places:
                continue
            end = self.expected(line)
            if end is not None and geometry.distance(end, self.places[line.start]) < DOT:
                self.places[line.end] = end
                self.dots.add(line)
                return True
        return False

    def _may_be(self, line: WantedLine, stroke: Stroke) -> bool:
        if not line.arrow or line in self.used or line in self.dots or line.start not in self.places:
            return False
        if geometry.distance(stroke.start, self.places[line.start]) > NEAR:
            return False
        return line.gives_end or line.end in self.places

    def _half_corner(self, line: WantedLine) -> None:
        """Put a corner of which one side is drawn where that side meets the other as it should be."""
        other = next((one for one in self.wanted if not one.arrow and one.end == line.end and one != line), None)
        end = self.expected(line)
        if other is None or end is None or other.start not in self.places:
            return
        start = self.places[other.start]
        met = geometry.intersection(self._ray(line), Ray(start, geometry.direction(start, end)))
        if met is not None:
            self.places[line.end] = met


def _fits(stroke: Stroke, end: Point) -> bool:
    length, right = geometry.distance(stroke.start, stroke.end), geometry.distance(stroke.start, end)
    turn = wrap(geometry.direction(stroke.start, stroke.end) - geometry.direction(stroke.start, end))
    return math.fabs(length - right) <= FITS_LENGTH and (right < NEAR or math.fabs(turn) <= FITS_ANGLE)


@dataclass(frozen=True, slots=True)
class JudgedDrawing:
    """Strokes judged by one construction: each judged line with the index of its stroke and the line that it is, in the
    order of drawing, arcs included; the strokes that are arrows and might be several; the lines still to be drawn;
    whether the drawing is mirrored; by which share or piece (mm) all lines are longer; the lines of the true
    drawing (mm)."""

    lines: tuple[tuple[JudgedLine, int, WantedLine | WantedArc], ...]
    unknown: tuple[int, ...]
    missing: tuple[WantedLine, ...]
    mirrored: bool
    longer: float
    shifted: float
    true: tuple[Path, ...]

    @property
    def right(self) -> int:
        """How many lines are accepted, less those begun at another point: what tells which construction was meant."""
        begun = [line for line, _, _ in self.lines if any(slip.key == "start" for slip in line.slips)]
        return len([line for line, _, _ in self.lines if line.band == ACCEPT]) - len(begun)

    @property
    def band(self) -> str:
        """The worst band of any line; ``accept`` where there is none."""
        return max((line.band for line, _, _ in self.lines), key=(ACCEPT, LOOK, WRONG).index, default=ACCEPT)


def judge_strokes(
    drawing: ReferenceDrawing, drawn: Sequence[Stroke], origin: Point, printed: Sequence[Stroke] = ()
) -> JudgedDrawing:
    """Judge what was drawn on a sheet whose start is at ``origin`` (mm), where arrows may be ``printed`` already."""
    arrows = _arrows(drawing, origin) if printed else ()
    here = _printed_here(printed, arrows)
    strokes, before = (*here, *(_traced(one, here, arrows) for one in drawn)), len(here)
    wanted = wanted_lines(drawing.construction)
    places = {START_POINT: origin}
    arcs = ArcFollower(arcs_here.wanted_arcs(drawing.construction), _arcs_of(strokes), places)
    follower = _Follower(drawing, strokes, places, wanted, arcs)
    follower.run()
    used, crossed = follower.used, arcs.corners()
    turned = aligned(drawing, places)
    found, mirrored = judged_lines(drawing, turned, {}, sheet=True, by_stroke=True) if len(places) > 1 else ((), False)
    by_ends = {line.ends: line for line in found}
    paths = tuple(true_paths(drawing, turned))
    lines: list[tuple[JudgedLine, int, WantedLine]] = []
    for line in follower.wanted:
        if line not in used:
            continue
        stroke = follower.strokes[used[line]]
        judged = by_ends.get(line.ends)
        given = line.end in crossed if not line.arrow else not line.gives_end
        if judged is None or given:
            judged = _joined(drawing, places, line, follower.turned(line, stroke))
        if judged is None:
            continue
        if line.gives_end:
            judged = _misnamed(judged, line, stroke, paths)
            judged = _begun(judged, places[line.start], stroke, common=line.start == START_POINT)
        lines.append((judged, used[line], line))
    free = [index - before for index, stroke in follower.free() if stroke.kind == ARROW and index >= before]
    own = [(line, index - before, of) for line, index, of in _in_order(lines, arcs.judged(drawing)) if index >= before]
    longer, shifted = alike([line for line, _, of in own if isinstance(of, WantedLine)])
    missing = tuple(line for line in follower.wanted if line not in used and line not in follower.dots)
    true = *paths, *arcs_here.true_arcs(drawing, turned, tuple(arcs.used))
    return JudgedDrawing(tuple(own), tuple(free), missing, mirrored, longer, shifted, true)


def _arrows(drawing: ReferenceDrawing, origin: Point) -> tuple[Path, ...]:
    """The arrows of a true drawing that begins at a sheet's start."""
    paths = true_paths(drawing, aligned(drawing, {START_POINT: origin}))
    return tuple(path for path in paths if path.role in (roles.GIVEN, roles.PARTIAL, roles.RESULTANT))


def _lies_on(stroke: Stroke, start: Point, end: Point) -> bool:
    return geometry.distance(stroke.start, start) <= NEAR and _fits(stroke, end)


def _printed_here(printed: Sequence[Stroke], arrows: Sequence[Path]) -> tuple[Stroke, ...]:
    """The printed arrows that a construction has where they are printed: another one draws its own."""
    return tuple(
        one for one in printed if any(path.phasor == one.name and _lies_on(one, *path.points) for path in arrows)
    )


def _traced(stroke: Stroke, printed: Sequence[Stroke], arrows: Sequence[Path]) -> Stroke:
    """The stroke; one without a name that lies on a printed arrow, and on no other of the drawing, has its name."""
    if stroke.kind != ARROW or stroke.name:
        return stroke
    name = next((one.name for one in printed if _lies_on(stroke, one.start, one.end)), "")
    other = name and any(_lies_on(stroke, *path.points) for path in arrows if path.phasor != name)
    return stroke if other else replace(stroke, name=name)


def _arcs_of(strokes: Sequence[Stroke]) -> dict[int, Arc]:
    """The arcs among strokes, by their places."""
    drawn = {index: stroke.arc() for index, stroke in enumerate(strokes) if stroke.kind == arcs_here.KIND}
    return {index: arc for index, arc in drawn.items() if arc.radius >= SHORTEST}


def _in_order(
    lines: Sequence[tuple[JudgedLine, int, WantedLine]], arcs: Sequence[tuple[JudgedLine, int, WantedArc]]
) -> tuple[tuple[JudgedLine, int, WantedLine | WantedArc], ...]:
    """Lines and arcs in the order of drawing."""
    return tuple(sorted((*arcs, *lines), key=lambda one: one[2].index))


def _misnamed(line: JudgedLine, wanted: WantedLine, stroke: Stroke, paths: Sequence[Path]) -> JudgedLine:
    """A wrong line that is another phasor of the problem: its name is wrong, whatever else that looks like."""
    if line.band == ACCEPT or not stroke.name:
        return line
    for path in paths:
        start, end = path.points
        other = path.role == roles.GIVEN and path.phasor != wanted.key
        step = stroke.start.moved(geometry.distance(start, end), geometry.direction(start, end))
        if other and _fits(stroke, step):
            slip = LineMistake("other-name", *photograph.other_name(line.symbol, path.tag))
            return replace(line, slips=(slip,))
    return line


def _begun(line: JudgedLine, start: Point, stroke: Stroke, *, common: bool) -> JudgedLine:
    """The line with what is wrong about where it begins."""
    away = geometry.distance(start, stroke.start)
    if away <= BEGUN_ELSEWHERE:
        return line
    slip = LineMistake("start", *photograph.begun_away(line.symbol, common=common))
    return replace(line, bands=(WRONG, line.bands[1]), slips=(slip,))


def _joined(
    drawing: ReferenceDrawing, places: Mapping[str, Point], line: WantedLine, stroke: Stroke
) -> JudgedLine | None:
    """A line between two points that are there already: only that it goes from one to the other is judged. Its length
    is how far (mm) it misses the one that it misses more."""
    if line.start not in places or line.end not in places:
        return None
    symbol: Phrase = drawing.tags.get(line.key, ())
    start, end = places[line.start], places[line.end]
    allowed = 2.0 * allowed_by_hand(drawing).line(0.0)[0]
    gaps = [geometry.distance(stroke.start, start), geometry.distance(stroke.end, end)]
    if not line.arrow:
        along = Ray(stroke.start, geometry.direction(stroke.start, stroke.end))
        gaps = [geometry.distance(point, geometry.foot(point, along)) for point in (start, end)]
    band = band_of(max(gaps) / allowed)
    slips: tuple[LineMistake, ...] = ()
    if band != ACCEPT:
        slips = tuple(_joined_by_slip(drawing, places, line, stroke))
    kind = "line" if line.arrow else "dashed"
    return JudgedLine(kind, symbol, line.ends, max(gaps), 0.0, None, 0.0, 0.0, (allowed, 1.0), (band, ACCEPT), slips)


def _joined_by_slip(
    drawing: ReferenceDrawing, places: Mapping[str, Point], line: WantedLine, stroke: Stroke
) -> Iterator[LineMistake]:
    """A usual slip that joins two other points."""

    def joins(one: Point, other: Point) -> bool:
        return max(geometry.distance(stroke.start, one), geometry.distance(stroke.end, other)) <= BEGUN_ELSEWHERE

    if joins(places[line.end], places[line.start]):
        symbol = drawing.tags.get(line.key, ())
        yield LineMistake("reversed", *mistakes.mistake_text("reversed", a=symbol))
        return
    sides = [move.start for move in drawing.construction.moves
             if isinstance(move, Join) and move.role == roles.PARALLEL and move.end == line.end]  # fmt: skip
    tips = [places[name] for name in sides if name in places]
    if len(tips) == 2 and (joins(*tips) or joins(*tips[::-1])):
        key = "other-diagonal"
        yield LineMistake(key, *photograph.across(drawing.tags.get(line.key, ())))
