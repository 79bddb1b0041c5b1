"""Arrows on two axes: where lines along the axes begin on them, where an arrowhead is, where the sum says that an arrow
ends. An axis is drawn anyway, so an arrow along it has no other end.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from pycore import geometry
from pycore.geometry import ORIGIN, Point
from pycore.practice.stroke_shapes import Pair, arm_worth
from pycore.practice.stroke_sums import Said, is_axial, read_at_feet, said_by_sum
from pycore.practice.strokes import (
    CLEAR_HEAD,
    FAINT_HEAD,
    NEAR_START,
    OUT,
    LeavingStroke,
    PencilStroke,
    StrokeSheet,
    crossing,
    sine_between,
)

LONE_SHARE = 0.3
"""What a stroke counts that ends without an arrowhead and where no other begins."""
NEAR_END = 8.0
"""How near its end a line that begins at an arrow's tip crosses it, mm; where two do, either may run on further."""
TOGETHER = 2.0
"""How near the crossing of two perpendiculars must be to where one crosses the arrow, to be of the same tip, mm."""
SURE_HEAD = 4.0
"""How clear an arrowhead on a line that runs on must be to be sure by itself."""


@dataclass(frozen=True, slots=True)
class Tip:
    """A place where an arrow from the start may end: the stroke's index, the place, what it counts, the strokes that
    cross there (the second is the arrow itself where none does), whether it is sure, and the ways that lead on."""

    index: int
    place: Point
    score: float
    corner: Pair
    sure: bool
    ways: tuple[tuple[Point, Point], ...]


def tips_on_axes(sheet: StrokeSheet) -> list[Tip]:
    """Where arrows from the start may end: where lines along the axes begin on them, or at a lone arrowhead."""
    drops = [stroke for stroke in sheet.others if is_axial(stroke)]
    found: list[Tip] = []
    for index, ray in enumerate(sheet.leaving):
        met: list[tuple[Point, PencilStroke]] = []
        for drop in drops:
            place = crossing(ray.stroke, drop)
            if place is None or not 6.0 < ray.distance(sheet.origin, place) < ray.end + 6.0:
                continue
            if -OUT < drop.beyond(place) < NEAR_END:
                met.append((place, drop))
        found += _tips_of(sheet, index, ray, met)
    return found


def _tips_of(
    sheet: StrokeSheet, index: int, ray: LeavingStroke, met: Sequence[tuple[Point, PencilStroke]]
) -> Iterator[Tip]:
    thin = is_axial(ray.stroke) or sheet.is_guide(ray.stroke)
    if thin:
        yield from _tips_along_axis(sheet, index, ray)
    lone, agreed = sheet.tip(ray)
    clusters: list[list[tuple[Point, PencilStroke]]] = []
    for place, drop in sorted(met, key=lambda one: ray.distance(sheet.origin, one[0])):
        if clusters and geometry.distance(clusters[-1][-1][0], place) < 2.5:
            clusters[-1].append((place, drop))
        else:
            clusters.append([(place, drop)])
    for cluster in clusters:
        place, drop = max(cluster, key=lambda one: sine_between(one[1], ray.stroke))
        corner = _corner(cluster)
        if corner and geometry.distance(corner, place) < TOGETHER:
            place = place.plus(corner).times(0.5)
        ways = [(at, one.end if one.along(at) < one.length / 2.0 else one.start) for at, one in cluster]
        worth = math.fsum(sheet.worth(one, *way, solid=False) for way, (_, one) in zip(ways, cluster, strict=True))
        head = ray.stroke.head_off(place)
        headed = head is not None and head < 1.8
        ended = math.fabs(ray.distance(sheet.origin, place) - ray.end) < 2.5
        both = len({math.fabs(one.way.x) > 0.5 for _, one in cluster}) > 1
        begins = both or any(one.beyond(at) > -NEAR_END for at, one in cluster)
        if is_axial(ray.stroke) or (thin and not both) or not begins:
            continue
        score = arm_worth(sheet, index, place) + worth + (8.0 if headed else 0.0) + (4.0 if ended else 0.0)
        score *= 1.0 if both or headed or ended else 0.5
        yield Tip(index, place, score, (ray.stroke, drop), both or headed or ended, tuple(ways))
    if not thin and not any(geometry.distance(cluster[0][0], lone) < 2.5 for cluster in clusters):
        score = arm_worth(sheet, index, lone) * (1.0 if agreed else LONE_SHARE)
        yield Tip(index, lone, score, (ray.stroke, ray.stroke), agreed, ())


def _corner(cluster: Sequence[tuple[Point, PencilStroke]]) -> Point | None:
    """Where the two perpendiculars that begin at a tip cross, as sharply as lines can; None without both."""
    across = [one for _, one in cluster if math.fabs(one.way.x) > 0.5]
    up = [one for _, one in cluster if math.fabs(one.way.x) <= 0.5]
    if not (across and up):
        return None
    return crossing(max(across, key=lambda one: one.length), max(up, key=lambda one: one.length))


def _heads_along(sheet: StrokeSheet, ray: LeavingStroke, least: float = FAINT_HEAD) -> list[tuple[float, float]]:
    """How clear each arrowhead on a line from the start is, and how far from there; those beside it count half."""
    start = ray.stroke.along(sheet.origin)
    sense = 1 if geometry.dot(ray.way, ray.stroke.way) > 0 else -1
    heads = [*ray.stroke.heads, *((at, way, clear / 2.0) for at, way, clear in ray.stroke.beside)]
    found = [(clear, (at - start) * sense) for at, way, clear in heads if way == sense and clear >= least]
    return sorted((head for head in found if head[1] > 8.0), reverse=True)


def _tips_along_axis(sheet: StrokeSheet, index: int, ray: LeavingStroke) -> Iterator[Tip]:
    """An arrow along an axis, which is drawn anyway: it ends in its head, or where the stroke does."""
    heads = [(clear, head) for clear, head in _heads_along(sheet, ray) if head < ray.end + 3.0]
    for clear, head in heads:
        ended = 6.0 if math.fabs(head - ray.end) < 2.0 else 0.0
        others = [other for other, at in heads if math.fabs(at - head) > 2.0]
        sure = clear > SURE_HEAD and clear > 1.7 * max(others, default=0.0)
        yield Tip(index, sheet.origin_on(ray, head), 8.0 + ended + min(clear, 12.0), (ray.stroke, ray.stroke), sure, ())
    if all(math.fabs(head - ray.end) > 2.5 for _, head in heads):
        yield Tip(index, sheet.origin_on(ray, ray.end), 5.0, (ray.stroke, ray.stroke), False, ())


# What the result says of an arrow.

LOOSE, AGREES, CLOSE = 3.5, 2.2, 1.5
"""How near to where the sum says that an arrow ends an arrowhead or a line's end must be, in standard errors of the
sum: a clear one where the problem has it too, a clear one, and one that is not clear."""
BY_HAND = 1.2
"""How near an arrow comes to its length by a careful hand, mm."""
WELL_SAID, AGREE_ALONE = 1.0, 1.0
"""Where the paper shows no end of an arrow: how exact the sum must be (standard error, mm), and how near to it the
problem's length (mm)."""
HEADS = ((CLEAR_HEAD, 1.0), (FAINT_HEAD, 1.3), (0.0, 0.7))
"""How clear an arrowhead there must be, and how many times as clear as any other on its line: where neither the sum is
close nor the problem has it, where one of both is so, and where both are."""
AGREED, ONLY_SAID = 32.0, 9.0
"""What such a tip counts: where the paper shows it, and where the result alone says it."""
MOST_KNOWN = 6


def tips_by_result(sheet: StrokeSheet, tips: Sequence[Tip], wanted: Sequence[Point]) -> list[Tip]:
    """Tips of arrows at which no line begins, as those along an axis: where the result less the other arrows ends.
    ``wanted``: the steps of the arrows as they should be, mm."""
    axial = {index for index, ray in enumerate(sheet.leaving) if is_axial(ray.stroke)}
    crossed = [tip for tip in tips if tip.sure or tip.corner[0] is not tip.corner[1]]
    known = sorted(crossed, key=lambda tip: -tip.score)[:MOST_KNOWN]
    feet = {tip: read_at_feet(sheet, tip.place) for tip in known}
    found: list[Tip] = []
    for result in known:
        for others in combinations([tip for tip in known if tip is not result], len(wanted) - 1):
            said = said_by_sum(sheet, (feet[result],), [feet[other] for other in others])
            used = {tip.index for tip in (result, *others)}
            for index in sorted(axial - used):
                ray = sheet.leaving[index]
                aside = AGREES * said.error(Point(-ray.way.y, ray.way.x)) + NEAR_START
                if ray.distance(sheet.origin, said.place) > 8.0 and math.fabs(ray.stroke.across(said.place)) < aside:
                    lengths = [geometry.dot(step, ray.way) for step in wanted if _points_along(step, ray.way)]
                    found.append(_said_by_result(sheet, index, said, lengths))
    return found


def _points_along(step: Point, way: Point) -> bool:
    return geometry.dot(step, way) > 0.99 * geometry.distance(ORIGIN, step)


def _said_by_result(sheet: StrokeSheet, index: int, said: Said, lengths: Sequence[float]) -> Tip:
    """The tip on a line to which a place belongs: an arrowhead near there, else the end of the line, else the place.
    It is sure where the paper shows it. ``lengths``: those of the problem's arrows along that line, mm."""
    ray = sheet.leaving[index]
    long, error = ray.distance(sheet.origin, said.place), said.error(ray.way)
    heads = _heads_along(sheet, ray, 0.0)

    def near(at: float, errors: float) -> bool:
        return math.fabs(at - long) < errors * error

    def expected(at: float) -> bool:
        return any(math.fabs(at - one) < BY_HAND for one in lengths)

    def fits(at: float) -> bool:
        return near(at, AGREES) or (near(at, LOOSE) and expected(at))

    others = max((clear for clear, at in heads if not fits(at)), default=0.0)
    clear, head = next(((clear, at) for clear, at in heads if fits(at)), (0.0, 0.0))
    least, share = HEADS[near(head, CLOSE) + expected(head)]
    if clear > max(CLEAR_HEAD, others) or clear > max(least, share * others):
        at = (head + ray.end) / 2.0 if math.fabs(head - ray.end) < 1.6 else head
    elif others < CLEAR_HEAD and (near(ray.end, CLOSE) or (near(ray.end, AGREES) and expected(ray.end))):
        at = (ray.end + long) / 2.0
    else:
        return Tip(index, sheet.origin_on(ray, long), ONLY_SAID, (ray.stroke, ray.stroke), False, ())
    return Tip(index, sheet.origin_on(ray, at), AGREED, (ray.stroke, ray.stroke), True, ())


@dataclass(frozen=True, slots=True)
class _OffSum:
    """How far on the sum of the others says that a point is: the point's direction from the start (unit), mm along that
    and across it, their standard errors, and how far from the start the point was read."""

    way: Point
    along: float
    across: float
    error: float
    error_across: float
    length: float


def _off_sum(sheet: StrokeSheet, places: Mapping[str, Point], name: str, end: str) -> _OffSum:
    feet = {one: read_at_feet(sheet, place) for one, place in places.items()}
    own = feet.pop(name)
    result = [feet.pop(end)] if end in feet else []
    others = list(feet.values())
    said = said_by_sum(sheet, result, others) if result else said_by_sum(sheet, others, ())
    step = places[name].minus(sheet.origin)
    length = geometry.distance(ORIGIN, step)
    way = step.times(1.0 / length)
    off = said.place.minus(sheet.origin).minus(Point(own[0].value, own[1].value))
    return _OffSum(way, geometry.dot(off, way), geometry.cross(off, way), said.error(way),
                   said.error(Point(-way.y, way.x)), length)  # fmt: skip


def confirmed(
    sheet: StrokeSheet, places: Mapping[str, Point], name: str, end: str, step: Point | None, corner: Pair
) -> Point | None:
    """Where the one point of a drawing is that is unsure: in the middle of all that says it, if that agrees; else None.

    It is said by its place as it was read, by the sum of the others and, for an arrow, by the problem (``step``, mm). A
    place on an axis that nothing shows says nothing itself.
    """
    off, place, lone = _off_sum(sheet, places, name, end), places[name], corner[0] is corner[1]
    if math.fabs(off.across) > LOOSE * off.error_across:
        return None
    near = math.fabs(off.along) < CLOSE * off.error
    if step is None:
        return place.plus(off.way.times(off.along / 2.0)) if near and not lone else None
    right = geometry.dot(step, off.way) - off.length
    if not (lone and is_axial(corner[0])):
        agree = near and math.fabs(right) < BY_HAND
        return place.plus(off.way.times((off.along + right) / 3.0)) if agree else None
    said = off.length + off.along
    elsewhere = any(math.fabs(at - said) > LOOSE * off.error for _, at in _heads_of(sheet, corner[0], off.way))
    agree = off.error < WELL_SAID and math.fabs(right - off.along) < AGREE_ALONE and not elsewhere
    ends = off.length + (off.along + right) / 2.0
    if not agree or not any(_runs_to(sheet, ray, ends) for ray in _rays_of(sheet, corner[0], off.way)):
        return None
    return place.plus(off.way.times(ends - off.length))


def is_doubtful(
    sheet: StrokeSheet, places: Mapping[str, Point], name: str, end: str, step: Point | None, corner: Pair
) -> bool:
    """Whether a point at which no line begins is where the sum of the others does not say it: without an arrowhead that
    is clear enough by itself, or with one while sum and problem (``step``, mm) agree on another place."""
    if corner[0] is not corner[1]:
        return False
    off = _off_sum(sheet, places, name, end)
    right = geometry.dot(step, off.way) - off.length if step else math.inf
    headed = any(clear > SURE_HEAD and math.fabs(at - off.length) < CLOSE
                 for clear, at in _heads_of(sheet, corner[0], off.way))  # fmt: skip
    agree = math.fabs(right - off.along) < AGREES * off.error
    return math.fabs(off.along) > LOOSE * off.error and (agree or not headed)


def _runs_to(sheet: StrokeSheet, ray: LeavingStroke, length: float) -> bool:
    """Whether a line from the start is drawn as far as an arrow of that length (mm) ends, and does not end in an
    arrowhead, however faint, before or behind that."""
    at_end = any(math.fabs(at - ray.end) < TOGETHER and math.fabs(at - length) > BY_HAND
                 for _, at in _heads_along(sheet, ray, 0.0))  # fmt: skip
    return ray.end > length - BY_HAND and not at_end


def _rays_of(sheet: StrokeSheet, stroke: PencilStroke, way: Point) -> Iterator[LeavingStroke]:
    """The ways from the start on a stroke that go one way."""
    return (ray for ray in sheet.leaving if ray.stroke is stroke and geometry.dot(ray.way, way) > 0.0)


def _heads_of(sheet: StrokeSheet, stroke: PencilStroke, way: Point) -> Iterator[tuple[float, float]]:
    """The clear arrowheads on a stroke that leaves the start this way: how clear they are, and how far from there."""
    for ray in _rays_of(sheet, stroke, way):
        yield from _heads_along(sheet, ray, CLEAR_HEAD)
