"""A drawing read from the strokes of its photograph: which method, where each point is and how sure that is.

Nothing is guessed. What is unsure is asked: a point with places to choose from, the whole drawing with other readings
of it; whether a point is not drawn is asked, never assumed. Thresholds were set on made-up photographs.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from pycore import geometry
from pycore.constructions.methods import COMPONENTS, PARALLELOGRAM, TIP_TO_TAIL
from pycore.constructions.moves import Direction, SetOff
from pycore.constructions.names import tip_of
from pycore.constructions.roles import GIVEN
from pycore.geometry import ORIGIN, Point
from pycore.practice.drawn import ReferenceDrawing, first_direction, points_to_find
from pycore.practice.stroke_axes import Tip, confirmed, is_doubtful, tips_by_result, tips_on_axes
from pycore.practice.stroke_meeting import meeting
from pycore.practice.stroke_names import SLIP_ON_AXES, NamedShape, Names
from pycore.practice.stroke_shapes import Shape, chains, parallelograms
from pycore.practice.stroke_sums import is_axial
from pycore.practice.strokes import CLEAR_HEAD, PencilStroke, StrokeSheet, sine_between

DIFFERENT = 1.5
"""Two readings are different where a point of them is so far apart, mm."""
MARGIN, NAMES_APART = 0.05, 0.9
"""How much better (share of all ways; slips) the best reading must be than a different one."""
SLIP = 4.0
"""What one slip costs, in mm of drawn strokes."""
ODD, THIN, PASSED_BY = 3.1, 0.45, 22.0
FLAT_CROSSING, HEAD_NEAR, END_NEAR = 0.33, 1.3, 6.0
CROSSING, LONE_END = 0.17, 0.6
"""Standard uncertainty of strokes across (mm), and of the end of a lone one."""
MOST_CHOICES = 3
ALONG, SEEN_FROM = 0.998, 20.0
"""Cosine of the largest angle between a direction and a line along it; how long that must be to show it, mm."""
ON_LINE = 1.2
"""How near a stroke passes to a point that lies on it, mm."""
FITS, FITS_NOT = 1.5, 2.5
"""What slips on axes and of their sum cost at most in a drawing that fits; how much more in one that does not."""
NOTHING = "nothing"


@dataclass(frozen=True, slots=True)
class ReadPoint:
    """A point of the drawing: where it is (mm), its standard uncertainty (mm), whether that is sure; else places to
    choose from, the likeliest first."""

    name: str
    place: Point
    sigma: float
    sure: bool
    choices: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class OtherReading:
    """Another reading of the whole drawing: its method and points."""

    method: str
    points: Mapping[str, Point]


@dataclass(frozen=True, slots=True)
class StrokeReading:
    """A drawing as it was read: its method, its points, those that were not found with places where they may be, why
    the whole of it is asked (empty: it is not), and the readings to choose from then, this one first."""

    method: str
    drawing: ReferenceDrawing
    points: tuple[ReadPoint, ...]
    missing: tuple[tuple[str, tuple[Point, ...]], ...]
    why: tuple[str, ...]
    readings: tuple[OtherReading, ...]

    @property
    def sure(self) -> bool:
        """Whether nothing has to be asked."""
        return not self.why and not self.missing and all(point.sure for point in self.points)


@dataclass(frozen=True, slots=True)
class _Candidate:
    """A named shape as a reading of one drawing, and what it is worth."""

    worth: float
    drawing: ReferenceDrawing
    named: NamedShape

    @property
    def method(self) -> str:
        return self.drawing.construction.method


def guides_of(drawings: Sequence[ReferenceDrawing]) -> tuple[Point, ...]:
    """The ways (unit) of the thin lines that drawings have, on which no arrow lies."""
    found = []
    for drawing in drawings:
        moves = drawing.construction.moves
        arrows = {move.line for move in moves if isinstance(move, SetOff) and move.role == GIVEN}
        for move in moves:
            if isinstance(move, Direction) and move.line not in arrows:
                way = drawing.picture.place(ORIGIN.moved(1.0, move.degrees))
                found.append(way.times(1.0 / geometry.distance(ORIGIN, way)))
    return tuple(found)


def read_strokes(sheet: StrokeSheet, drawings: Sequence[ReferenceDrawing]) -> StrokeReading:
    """Read a drawing; ``drawings``: what may have been drawn, as the sheet asks for it first."""
    candidates: list[_Candidate] = []
    for drawing in drawings:
        candidates += _candidates(sheet, drawing)
    candidates.sort(key=lambda one: -one.worth)
    if not candidates:
        first = drawings[0]
        return StrokeReading(first.construction.method, first, (), _all_missing(first), (NOTHING,), ())
    best = candidates[0]
    rivals = _rivals(candidates)
    points = [_read_point(sheet, best, name, candidates) for name in best.named.points]
    points += _lone_arrows(sheet, best)
    points = _by_sum(sheet, best, points)
    why = _why(sheet, best, rivals, points)
    missing = _missing(sheet, best, {point.name for point in points}, candidates)
    readings = tuple(OtherReading(one.method, one.named.points) for one in (best, *rivals[: MOST_CHOICES - 1]))
    read = [ReadPoint("O", sheet.origin, CROSSING, True), *points, *_guide(sheet, best)]
    return StrokeReading(best.method, best.drawing, tuple(read), missing, tuple(why), readings if why else ())


def _candidates(sheet: StrokeSheet, drawing: ReferenceDrawing) -> list[_Candidate]:
    construction = drawing.construction
    names, count = Names(drawing, sheet.origin), len(construction.arms)
    if construction.method == COMPONENTS:
        tips = tips_on_axes(sheet)
        tips += tips_by_result(sheet, tips, list(names.wanted.values()))
        named = names.on_axes(tips, lambda tips: _on_axes(sheet, tips))
        return [_Candidate(one.shape.score - SLIP_ON_AXES * one.cost, drawing, one) for one in named]
    if construction.method == PARALLELOGRAM:
        shapes = parallelograms(sheet, count)
    elif construction.method == TIP_TO_TAIL:
        shapes = chains(sheet, count)
    else:
        return []
    return [
        _Candidate(shape.score - SLIP * min(one.cost, 5.0), drawing, one)
        for shape in shapes[:40] if shape.score > 8.0
        for one in names.names(shape)[:3]
    ]  # fmt: skip


def _on_axes(sheet: StrokeSheet, tips: Sequence[Tip]) -> Shape:
    """The shape that some tips make together with the axes."""
    o = sheet.origin
    ways = [(o, tip.place) for tip in tips] + [way for tip in tips for way in tip.ways]
    drops = [
        (tip.place, stroke.end if stroke.along(tip.place) < stroke.length / 2.0 else stroke.start)
        for tip in tips for stroke in sheet.others
        if is_axial(stroke) and math.fabs(stroke.across(tip.place)) < ON_LINE and stroke.beyond(tip.place) < 30.0
    ]  # fmt: skip
    axes = [(o, ray.stroke.at(ray.stroke.along(o)).plus(ray.way.times(ray.end))) for ray in sheet.leaving
            if is_axial(ray.stroke)]  # fmt: skip
    ways += drops
    score = math.fsum(tip.score for tip in tips) - sheet.unexplained([*ways, *axes])[0]
    points = {str(k): tip.place for k, tip in enumerate(tips)}
    corners = {str(k): tip.corner for k, tip in enumerate(tips)}
    lone = {str(k): tip.sure for k, tip in enumerate(tips) if tip.corner[0] is tip.corner[1] or not tip.sure}
    return Shape("axes", points, corners, (*ways, *axes), score, frozenset(tip.index for tip in tips), lone)


def _different(one: Mapping[str, Point], other: Mapping[str, Point]) -> bool:
    return any(
        name not in other or geometry.distance(place, other[name]) > DIFFERENT for name, place in one.items()
    )


def _rivals(candidates: Sequence[_Candidate]) -> list[_Candidate]:
    """Readings that differ from the best and from one another, the best first."""
    kept = [candidates[0]]
    for one in candidates[1:]:
        if all(one.method != other.method or _different(other.named.points, one.named.points) for other in kept):
            kept.append(one)
        if len(kept) > 4:
            break
    return kept[1:]


def _why(
    sheet: StrokeSheet, best: _Candidate, rivals: Sequence[_Candidate], points: Sequence[ReadPoint]
) -> list[str]:
    """Why the whole reading is asked."""
    why: list[str] = []
    total = best.named.shape.length
    for place, rival in enumerate(rivals):
        # Another naming of a shape is judged beside its first one.
        first = next((one for one in (best, *rivals[:place]) if one.named.shape is rival.named.shape), None)
        apart = first is not None and rival.named.cost - first.named.cost >= NAMES_APART
        if apart:
            continue
        if first is best:
            why.append("names")
        elif best.worth - rival.worth < MARGIN * total and not (
            _alike_but_lone(best.named, rival.named) or _heads_decide(best, rival) or _slips_decide(best, rival)
        ):
            why.append("rival")
    drawn = total if best.method != COMPONENTS else math.fsum(
        geometry.distance(sheet.origin, place) for place in best.named.points.values()
    )
    if best.worth < THIN * drawn:
        why.append("thin")
    if best.method == TIP_TO_TAIL and len(best.named.points) < len(best.drawing.construction.arms):
        # One arrow was left out, or not seen: nobody knows which.
        why.append("names")
    if best.named.cost > ODD:
        why.append("odd")
    ways = [*best.named.shape.ways, *((sheet.origin, point.place) for point in points)]
    if sheet.unexplained(ways)[1] > PASSED_BY:
        why.append("more")
    return list(dict.fromkeys(why))


def _alike_but_lone(one: NamedShape, other: NamedShape) -> bool:
    """Whether two readings differ in ends of lone strokes alone, which are asked by themselves if they are unsure."""
    corners = {name: one.shape.corners[key] for key, name in one.keys.items()}
    lone = {name for name, (first, second) in corners.items() if first is second}
    crossed = {name: place for name, place in one.points.items() if name not in lone}
    return set(one.points) == set(other.points) and not _different(crossed, other.points)


def _heads_decide(one: _Candidate, other: _Candidate) -> bool:
    """Whether readings on axes differ only in where arrows end on the same strokes, and arrowheads say it of the
    first alone."""
    if not one.method == other.method == COMPONENTS or set(one.named.points) != set(other.named.points):
        return False
    keys = {name: key for key, name in one.named.keys.items()}
    for name, place in one.named.points.items():
        rival = other.named.points[name]
        arrow = one.named.shape.corners[keys[name]][0]
        if geometry.distance(place, rival) > DIFFERENT and (
            math.fabs(arrow.across(rival)) > ON_LINE or not _headed(arrow, place) or _headed(arrow, rival)
        ):
            return False
    return True


def _slips_decide(one: _Candidate, other: _Candidate) -> bool:
    """Whether the first of two readings on axes fits the problem and its own sum, and the other fits neither."""
    axes = one.method == other.method == COMPONENTS
    return axes and one.named.cost < FITS and other.named.cost - one.named.cost > FITS_NOT


def _headed(arrow: PencilStroke, place: Point) -> bool:
    off = arrow.head_off(place)
    return off is not None and off < HEAD_NEAR


# Points.


def _read_point(
    sheet: StrokeSheet, best: _Candidate, name: str, candidates: Sequence[_Candidate]
) -> ReadPoint:
    shape = best.named.shape
    key = next(key for key, known in best.named.keys.items() if known == name)
    place, (one, other) = best.named.points[name], shape.corners[key]
    if one is other:
        agreed = shape.lone.get(key, False)
        choices = () if agreed else _choices(sheet, place, name, (one,), candidates)
        return ReadPoint(name, place, LONE_END, agreed, choices)
    sine = sine_between(one, other)
    met = meeting(place, one, other) if sine < FLAT_CROSSING else None
    if met:
        return ReadPoint(name, met, LONE_END, shape.lone.get(key, True))
    heads = [stroke.head_off(place) for stroke in (one, other)]
    headed = any(off is not None and off < HEAD_NEAR for off in heads)
    ends = min(math.fabs(end) for stroke in (one, other)
               for end in (stroke.along(place), stroke.along(place) - stroke.length))  # fmt: skip
    sure = shape.lone.get(key, True)
    if (sine < FLAT_CROSSING and not headed) or (ends > END_NEAR and not headed and sine < 0.4):
        sure = False
    if sine < FLAT_CROSSING and headed:
        place = _to_its_head(place, one, other)
    sigma = min(LONE_END, CROSSING / max(sine, 0.15))
    return ReadPoint(name, place, sigma, sure, () if sure else _choices(sheet, place, name, (one, other), candidates))


def _by_sum(sheet: StrokeSheet, best: _Candidate, points: Sequence[ReadPoint]) -> list[ReadPoint]:
    """Points of a drawing on axes, by its sum: one that alone is unsure is sure where all else agrees with it, and the
    end of a lone stroke is unsure where the sum does not."""
    names, end = Names(best.drawing, sheet.origin), best.drawing.construction.end
    if best.method != COMPONENTS or len(points) != len(names.wanted) + 1:
        return list(points)
    places = {point.name: point.place for point in points}
    corners = {name: best.named.shape.corners[key] for key, name in best.named.keys.items()}
    steps = {tip_of(number): step for number, step in names.wanted.items()}
    unsure = [point.name for point in points if not point.sure]
    found = []
    for point in points:
        corner = corners[point.name]
        if unsure == [point.name]:
            place = confirmed(sheet, places, point.name, end, steps.get(point.name), corner)
            found.append(ReadPoint(point.name, place, LONE_END, True) if place else point)
        elif not unsure and is_doubtful(sheet, places, point.name, end, steps.get(point.name), corner):
            found.append(replace(point, sure=False, choices=(point.place,)))
        else:
            found.append(point)
    return found


def _to_its_head(place: Point, one: PencilStroke, other: PencilStroke) -> Point:
    """A flat crossing, half way to the arrowhead there: each is as unsure as the other."""
    found = [(math.fabs(at - stroke.along(place)), at - stroke.along(place), stroke) for stroke in (one, other)
             for at, _, clear in stroke.heads if clear > CLEAR_HEAD]  # fmt: skip
    _, off, stroke = min(found, key=lambda head: head[0])
    return place.plus(stroke.way.times(0.5 * off))


def _choices(
    sheet: StrokeSheet, place: Point, name: str, strokes: Sequence[PencilStroke], candidates: Sequence[_Candidate]
) -> tuple[Point, ...]:
    """Places where a point may be: as it was read, ends and arrowheads of its strokes near there, other readings."""
    near = [stroke.at(at) for stroke in strokes for at, _, _ in stroke.heads]
    near += [end for stroke in strokes for end in (stroke.start, stroke.end)]
    near = sorted((one for one in near if geometry.distance(one, place) < 20.0),
                  key=lambda one: geometry.distance(one, place))  # fmt: skip
    others = [one.named.points[name] for one in candidates[:20] if name in one.named.points]
    kept = [place]
    for one in (*near, *others):
        if len(kept) < MOST_CHOICES and all(geometry.distance(one, other) > DIFFERENT for other in kept):
            kept.append(one)
    return tuple(kept)


def _lone_arrows(sheet: StrokeSheet, best: _Candidate) -> list[ReadPoint]:
    """Arrows from the start that nothing was built upon: the one that is left, by its own end."""
    if best.method != PARALLELOGRAM or best.named.shape.kind != "one":
        return []
    left = [f"T{arm.number}" for arm in best.drawing.construction.arms if f"T{arm.number}" not in best.named.points]
    used = [sheet.leaving[index] for index in sorted(best.named.shape.used)]
    for index, ray in enumerate(sheet.leaving):
        apart = all(geometry.dot(ray.way, other.way) < 0.997 for other in used)
        if index in best.named.shape.used or not apart or ray.stroke.dark < 0.4 * sheet.usual or ray.end < 12.0:
            continue
        if len(left) == 1:
            place, agreed = sheet.tip(ray)
            return [ReadPoint(left[0], place, LONE_END, agreed, () if agreed else (place,))]
    return []


def _guide(sheet: StrokeSheet, best: _Candidate) -> list[ReadPoint]:
    """A point on the direction drawn first, where no arrow lies on it and a stroke does: along that direction, against
    it or, of two axes, along the other; of several, the one that the others agree with best. An arrow over an axis is
    found as one stroke with it, which has the arrow's direction."""
    drawing = best.drawing
    guide = first_direction(drawing.construction)
    if not guide:
        return []
    way = drawing.picture.place(ORIGIN.moved(1.0, drawing.construction.figure.lines[guide].degrees))
    way = way.times(1.0 / geometry.distance(ORIGIN, way))
    arrows = {arrow.number for arrow, _ in best.named.shape.corners.values()}
    turns = (0.0, 180.0, 90.0, -90.0) if best.method == COMPONENTS else (0.0, 180.0)
    found = []
    for ray in sheet.leaving:
        for turn in turns:
            aligned = ORIGIN.moved(1.0, geometry.direction(ORIGIN, ray.way) + turn)
            if geometry.dot(aligned, way) > ALONG and ray.end > SEEN_FROM and ray.stroke.number not in arrows:
                found.append((geometry.cross(aligned, way), sheet.origin.plus(aligned.times(ray.end))))
    if not found:
        return []
    _, place = min(found, key=lambda one: math.fsum(math.fabs(one[0] - off) for off, _ in found))
    return [ReadPoint(guide, place, CROSSING, True)]


def needed_points(drawing: ReferenceDrawing) -> list[str]:
    """The points that a drawing must show beside its start."""
    guide = first_direction(drawing.construction)
    return [name for name in points_to_find(drawing.construction) if name not in ("O", guide)]


def _all_missing(drawing: ReferenceDrawing) -> tuple[tuple[str, tuple[Point, ...]], ...]:
    return tuple((name, ()) for name in needed_points(drawing))


def _missing(
    sheet: StrokeSheet, best: _Candidate, found: set[str], candidates: Sequence[_Candidate]
) -> tuple[tuple[str, tuple[Point, ...]], ...]:
    """The points that were not found, each with places where it may be."""
    missing = []
    for name in needed_points(best.drawing):
        if name in found:
            continue
        kept: list[Point] = []
        for one in candidates[:40]:
            place = one.named.points.get(name)
            if place and one.method == best.method and len(kept) < MOST_CHOICES - 1 and all(
                geometry.distance(place, other) > DIFFERENT for other in kept
            ):
                kept.append(place)
        missing.append((name, tuple(kept)))
    return tuple(missing)
