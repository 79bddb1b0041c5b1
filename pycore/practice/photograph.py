"""A drawing measured in a photograph: from marks and tapped points to millimetres, judgement and overlay.

The photograph's pixels are counted to the right and downwards. Points on the paper are mm from its
lower left corner, y up. Pixels are searched elsewhere: here only points come in and go out.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from pycore import geometry
from pycore.accuracy.hand import ONE_LENGTH
from pycore.constructions import roles
from pycore.constructions.construction import Construction
from pycore.constructions.moves import Intersect, SetOff
from pycore.geometry import ORIGIN, Point
from pycore.phasor import wrap
from pycore.practice.drawn import (
    AlignedPoints,
    Judge,
    JudgedLine,
    LineUncertainty,
    ReferenceDrawing,
    aligned,
    first_direction,
    points_to_find,
)
from pycore.practice.marking import ACCEPT, WRONG
from pycore.projection import Lens, Mark, Projection, ProjectionError, solve
from pycore.words.phrase import Phrase

POOR = 0.8
"""Root mean square in mm by which marks may miss the sheet; beyond, something is wrong with them."""
OWN_ERROR = 0.4
"""Standard error in pixels of a mark that was found by its pixels."""


class PhotoUnusableError(ValueError):
    """Raised when a photograph cannot be measured: ``reason`` names the sentence, ``values`` fill it, ``marks``
    are the indices of the marks at fault."""

    def __init__(self, reason: str, marks: tuple[int, ...] = (), **values: str) -> None:
        self.reason, self.marks, self.values = reason, marks, values
        super().__init__(reason)


@dataclass(frozen=True, slots=True)
class Photo:
    """A photograph's size in pixels, and the standard error of a tap in it (pixels)."""

    width: float
    height: float
    tap: float

    @property
    def lens(self) -> Lens:
        """The middle, about which a lens bends lines."""
        return Lens(Point(self.width / 2, self.height / 2), math.hypot(self.width, self.height) / 2)


def measured_by(
    photo: Photo, places: Sequence[Point], seen: Sequence[Point | None], *, by_hand: bool
) -> Projection:
    """The projection from marks at known places (mm) that are seen in a photograph (None: not seen).

    Raises PhotoUnusableError.
    """
    return _measured(photo, places, seen, by_hand=by_hand)[1]


def measured_by_one(
    photo: Photo, editions: Sequence[Sequence[Point]], seen: Sequence[Sequence[Point | None]], *, by_hand: bool
) -> Projection:
    """The projection from the marks that a sheet has: of several editions of them, each with what is seen of it, the
    one that fits best; the first if they fit alike.

    Raises PhotoUnusableError, with what is wrong with the marks of the first.
    """
    fits: list[tuple[float, Projection]] = []
    problem: PhotoUnusableError | None = None
    for places, points in zip(editions, seen, strict=True):
        try:
            fits.append(_measured(photo, places, points, by_hand=by_hand))
        except PhotoUnusableError as error:
            problem = problem or error
    if not fits:
        raise problem or PhotoUnusableError("few")
    return min(fits, key=lambda fit: fit[0])[1]


def _measured(
    photo: Photo, places: Sequence[Point], seen: Sequence[Point | None], *, by_hand: bool
) -> tuple[float, Projection]:
    """How far the marks are off the sheet (root mean square, mm), and the projection from them."""
    known = [(index, Mark(place, point)) for index, (place, point) in enumerate(zip(places, seen, strict=True))
             if point is not None]  # fmt: skip
    try:
        projection = solve([mark for _, mark in known], photo.lens, photo.tap if by_hand else OWN_ERROR)
        millimetres = [geometry.distance(mark.place, projection.place(mark.seen)) for _, mark in known]
    except ProjectionError as problem:
        raise PhotoUnusableError(problem.reason, tuple(known[index][0] for index in problem.marks)) from None
    if _mirrored(projection, places):
        raise PhotoUnusableError("mirrored")
    poor = math.sqrt(math.fsum(off * off for off in millimetres) / len(millimetres))
    if poor > POOR:
        worst = max(range(len(known)), key=lambda index: millimetres[index])
        raise PhotoUnusableError("poor", (known[worst][0],), off=f"{poor:.1f}")
    return poor, projection


def _mirrored(projection: Projection, places: Sequence[Point]) -> bool:
    """Whether the picture turns left and right round; pixels are counted downwards, so that a true one turns up
    and down round."""
    middle = geometry.bounds(places).centre
    here = projection.seen(middle)
    right, up = (projection.seen(middle.plus(step)).minus(here) for step in (Point(1.0, 0.0), Point(0.0, 1.0)))
    return geometry.cross(right, up) > 0


@dataclass(frozen=True, slots=True)
class PhotoJudgement:
    """A judged drawing: its lines, the drawn result (mm and degrees off the right one, None where there is none),
    what it may be off (mm), how sure the photo is (95 %, mm and degrees of the longest line), remarks on all
    lines together (``longer`` share, ``shifted`` mm, ``mirrored``), the paths of the true drawing in the photo, the
    names of the points that are not drawn yet, where the drawn ones lie on the paper (``places``, mm), and the same
    turned as the construction counts them (``points``, in its unit)."""

    lines: tuple[JudgedLine, ...]
    result: float | None
    result_off: float
    result_allowed: float
    sure: tuple[float, float]
    longer: float
    shifted: float
    mirrored: bool
    overlay: tuple["Path", ...]
    not_drawn: tuple[str, ...]
    places: Mapping[str, Point] = field(default_factory=dict)
    points: Mapping[str, Point] = field(default_factory=dict)

    @property
    def band(self) -> str:
        """The worst band of any line."""
        return max((line.band for line in self.lines), key=(ACCEPT, "look", WRONG).index)

    def turned_from(self, construction: Construction) -> float | None:
        """How many degrees the drawn result is turned from the right one; None where one of them has no direction."""
        drawn, right = self.points.get(construction.end, ORIGIN), construction.end_point
        if ORIGIN in (drawn, right):
            return None
        return wrap(geometry.direction(ORIGIN, drawn) - geometry.direction(ORIGIN, right))


@dataclass(frozen=True, slots=True)
class Path:
    """A line of the true drawing, on the paper or as it lies in the photo. ``role``: ``given``, ``parallel``,
    ``partial``, ``resultant``; ``tag`` what it is called."""

    role: str
    phasor: str
    tag: Phrase
    points: tuple[Point, ...]


def _unsure(projection: Projection, places: Mapping[str, Point], ends: tuple[str, str], tap: float) -> LineUncertainty:
    """Standard uncertainties of the length and direction of a line between two tapped points."""
    start, end = (places[name] for name in ends)
    length = geometry.distance(start, end)
    if length == 0.0:
        return LineUncertainty()
    spread = projection.covariance([start, end], tap)
    unit = end.minus(start).times(1.0 / length)
    along = (-unit.x, -unit.y, unit.x, unit.y)
    across = (unit.y, -unit.x, -unit.y, unit.x)
    sizes = [
        math.sqrt(max(0.0, math.fsum(a * spread[i][j] * b for i, a in enumerate(way) for j, b in enumerate(way))))
        for way in (along, across)
    ]
    return LineUncertainty(sizes[0], sizes[1] / length * 360.0 / math.tau)


def measure(
    drawing: ReferenceDrawing, projection: Projection, photo: Photo, taps: Mapping[str, Point], *, sheet: bool
) -> PhotoJudgement:
    """Judge a drawing from the points that were tapped in its photograph; a point that is not drawn yet is left out.

    Raises PhotoUnusableError.
    """
    try:
        places = {name: projection.place(point) for name, point in taps.items()}
    except ProjectionError as problem:
        raise PhotoUnusableError(problem.reason) from None
    names = [name for name in places if name != first_direction(drawing.construction)]
    pairs = [(one, other) for one in names for other in names if one != other]
    unsure = {ends: _unsure(projection, places, ends, photo.tap) for ends in pairs}
    return _measured_from(drawing, projection, places, unsure, {}, sheet=sheet)


def measure_read(
    drawing: ReferenceDrawing, projection: Projection, places: Mapping[str, Point], sigmas: Mapping[str, float],
    feet: Mapping[str, Point],
) -> PhotoJudgement:  # fmt: skip
    """Judge a drawing on its sheet from points (mm) that a program has read, each with its standard uncertainty (mm);
    a point that is not drawn is left out. ``feet``: where perpendiculars were drawn to, from which sums are taken.

    Raises PhotoUnusableError.
    """
    unsure: dict[tuple[str, str], LineUncertainty] = {}
    for one, place in places.items():
        for other, end in places.items():
            length = geometry.distance(place, end)
            off = math.hypot(sigmas[one], sigmas[other])
            if length > 0.0:
                unsure[one, other] = LineUncertainty(off, off / length * 360.0 / math.tau)
    return _measured_from(drawing, projection, places, unsure, feet, sheet=True)


def _measured_from(
    drawing: ReferenceDrawing, projection: Projection, places: Mapping[str, Point],
    unsure: Mapping[tuple[str, str], LineUncertainty], feet: Mapping[str, Point], *, sheet: bool,
) -> PhotoJudgement:  # fmt: skip
    """Judge a drawing from its points (mm)."""
    _check_drawn(drawing, places, sheet=sheet)
    turned = aligned(drawing, {**places, **feet})
    lines, mirrored = judged_lines(drawing, turned, unsure, sheet=sheet)
    if not lines:
        raise PhotoUnusableError("nothing")
    longest = max(lines, key=lambda line: line.length)
    drawn = turned.points.get(drawing.construction.end)
    right = drawing.construction.end_point
    whole = None if drawn is None else drawing.factor * geometry.distance(ORIGIN, drawn)
    sure = unsure.get(longest.ends, LineUncertainty())
    longer, shifted = alike(lines)
    return PhotoJudgement(
        lines=lines,
        result=whole,
        result_off=0.0 if whole is None else whole - drawing.factor * geometry.distance(ORIGIN, right),
        result_allowed=drawing.allowed,
        sure=(ONE_LENGTH * sure.length, ONE_LENGTH * sure.angle),
        longer=longer,
        shifted=shifted,
        mirrored=mirrored,
        overlay=overlay(drawing, projection, turned),
        not_drawn=tuple(name for name in points_to_find(drawing.construction) if name not in places),
        places=places,
        points=turned.points,
    )


def judged_lines(
    drawing: ReferenceDrawing, turned: AlignedPoints, unsure: Mapping[tuple[str, str], LineUncertainty], *, sheet: bool,
    by_stroke: bool = False,
) -> tuple[tuple[JudgedLine, ...], bool]:
    """The judged lines, and whether the drawing is mirrored: two directions or more are wrong, and all of them are
    right in its mirror image. The lines are those of that image then, but for the directions, which are wrong."""
    lines = Judge(drawing, turned, unsure, sheet, by_stroke).lines()
    wrong = [line.kind != "first" and line.bands[1] == WRONG for line in lines]
    if wrong.count(True) < 2:
        return lines, False
    image = Judge(drawing, turned.mirrored(), unsure, sheet, by_stroke).lines()
    if [line.ends for line in image] != [line.ends for line in lines] or any(
        line.kind != "first" and line.bands[1] == WRONG for line in image
    ):
        return lines, False
    return tuple(
        replace(line, bands=(line.bands[0], WRONG), mirrored=True) if was_wrong else line
        for line, was_wrong in zip(image, wrong, strict=True)
    ), True


def _check_drawn(drawing: ReferenceDrawing, places: Mapping[str, Point], *, sheet: bool) -> None:
    """Refuse a drawing without its start; one that nothing says the direction of; and a start that lies on the point
    by which the drawing is turned."""
    start, first = points_to_find(drawing.construction)[:2]
    if start not in places:
        raise PhotoUnusableError("no-start", point=start)
    if first not in places:
        if not sheet:
            raise PhotoUnusableError("no-direction", point=first)
        return
    if geometry.distance(places[start], places[first]) < 1.0:
        raise PhotoUnusableError("same", point=first)


def alike(lines: Sequence[JudgedLine]) -> tuple[float, float]:
    """What all given lines have in common: a share by which they are longer, or a piece; 0 where nothing."""
    solid = [line for line in lines if line.kind != "dashed" and line.expected > 4.0]
    if len(solid) < 2 or all(line.bands[0] == ACCEPT for line in solid):
        return 0.0, 0.0
    shares = [line.length / line.expected - 1.0 for line in solid]
    pieces = [line.length - line.expected for line in solid]
    mean, piece = math.fsum(shares) / len(shares), math.fsum(pieces) / len(pieces)
    by_share = max(math.fabs((share - mean) * line.expected) for share, line in zip(shares, solid, strict=True))
    by_piece = max(math.fabs(one - piece) for one in pieces)
    if min(by_share, by_piece) > 1.0:
        return 0.0, 0.0
    if by_share <= by_piece:
        return (mean, 0.0) if 0.01 < math.fabs(mean) < 0.2 else (0.0, 0.0)
    return (0.0, piece) if 1.0 < math.fabs(piece) < 12.0 else (0.0, 0.0)


PIECES = 6


def overlay(drawing: ReferenceDrawing, projection: Projection, turned: AlignedPoints) -> tuple[Path, ...]:
    """The true drawing over the photo, from the learner's start along the learner's first direction."""
    return tuple(
        replace(path, points=tuple(projection.seen(step) for step in _in_pieces(*path.points)))
        for path in true_paths(drawing, turned)
    )


def _in_pieces(start: Point, end: Point) -> list[Point]:
    """A line of the paper as points close enough to be joined in a photograph, whose lens bends it."""
    return [start.plus(end.minus(start).times(k / PIECES)) for k in range(PIECES + 1)]


def true_paths(drawing: ReferenceDrawing, turned: AlignedPoints) -> Iterator[Path]:
    """The lines of the true drawing on the paper (mm), from the learner's start along the learner's first direction."""
    points = drawing.construction.figure.points
    for move in drawing.construction.moves:
        if isinstance(move, Intersect) or not getattr(move, "role", ""):
            continue
        role = move.role  # type: ignore[union-attr]
        if role not in (roles.GIVEN, roles.PARALLEL, roles.PARTIAL, roles.RESULTANT):
            continue
        end = move.point if isinstance(move, SetOff) else move.end  # type: ignore[union-attr]
        ends = [on_paper(drawing, turned, points[name]) for name in (move.start, end)]  # type: ignore[union-attr]
        key = move.phasor  # type: ignore[union-attr]
        yield Path(role, key, drawing.tags.get(key, ()), (ends[0], ends[1]))


def on_paper(drawing: ReferenceDrawing, turned: AlignedPoints, point: Point) -> Point:
    """A point of the true construction, laid on the learner's start and first direction (mm)."""
    step = drawing.picture.place(point, drawing.factor)
    length = geometry.distance(ORIGIN, step)
    return turned.origin.moved(length, geometry.direction(ORIGIN, step) + turned.turned)

