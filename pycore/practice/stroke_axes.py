"""Arrows on two axes: where lines along the axes begin on them, where an arrowhead is, where the result says that an
arrow ends. An axis is drawn anyway, so an arrow along it has no other end.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations

from pycore import geometry
from pycore.geometry import Point
from pycore.practice.stroke_shapes import Pair, arm_worth
from pycore.practice.strokes import (
    CLEAR_HEAD,
    FAINT_HEAD,
    LeavingStroke,
    PencilStroke,
    StrokeSheet,
    crossing,
    sine_between,
)

LONE_SHARE = 0.3
"""What a stroke counts that ends without an arrowhead and where no other begins."""
SURE_HEAD = 4.0
"""How clear an arrowhead on a line that runs on must be to be sure by itself."""
AXIAL = 0.06
"""Sine of the largest angle between an axis and a stroke along it or across it."""


def is_axial(stroke: PencilStroke) -> bool:
    """Whether a stroke runs across the paper or up it."""
    return min(math.fabs(stroke.way.x), math.fabs(stroke.way.y)) < AXIAL


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
            along = drop.along(place)
            if min(math.fabs(along), math.fabs(along - drop.length)) < 8.0:
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
        ways = [(at, one.end if one.along(at) < one.length / 2.0 else one.start) for at, one in cluster]
        worth = math.fsum(sheet.worth(one, *way, solid=False) for way, (_, one) in zip(ways, cluster, strict=True))
        head = ray.stroke.head_off(place)
        headed = head is not None and head < 1.8
        ended = math.fabs(ray.distance(sheet.origin, place) - ray.end) < 2.5
        both = len({math.fabs(one.way.x) > 0.5 for _, one in cluster}) > 1
        if is_axial(ray.stroke) or (thin and not both):
            continue
        score = arm_worth(sheet, index, place) + worth + (8.0 if headed else 0.0) + (4.0 if ended else 0.0)
        score *= 1.0 if both or headed or ended else 0.5
        yield Tip(index, place, score, (ray.stroke, drop), both or headed or ended, tuple(ways))
    if not thin and not any(geometry.distance(cluster[0][0], lone) < 2.5 for cluster in clusters):
        score = arm_worth(sheet, index, lone) * (1.0 if agreed else LONE_SHARE)
        yield Tip(index, lone, score, (ray.stroke, ray.stroke), agreed, ())


def _heads_along(sheet: StrokeSheet, ray: LeavingStroke) -> list[tuple[float, float]]:
    """How clear each arrowhead on a line from the start is, and how far from there; those beside it count half."""
    start = ray.stroke.along(sheet.origin)
    sense = 1 if geometry.dot(ray.way, ray.stroke.way) > 0 else -1
    heads = [*ray.stroke.heads, *((at, way, clear / 2.0) for at, way, clear in ray.stroke.beside)]
    found = [(clear, (at - start) * sense) for at, way, clear in heads if way == sense and clear >= FAINT_HEAD]
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

HEAD_AGREES, END_AGREES = 3.0, 1.2
"""How near a clear arrowhead, and a faint one or a line's end, must be to where the result and the other arrows say
that an arrow ends, mm: a hand's own errors add up in the result."""
CLEARER = 1.3
"""By how much a faint arrowhead must be clearer than any other on its line."""
AGREED, ONLY_SAID = 32.0, 9.0
"""What such a tip counts: where the paper shows it, and where the result alone says it."""
MOST_CROSSED = 6


def tips_by_result(sheet: StrokeSheet, tips: Sequence[Tip], given: Sequence[float]) -> list[Tip]:
    """Tips of arrows at which no line begins, as those along an axis: where the result less the other arrows ends.
    They are sure only if an arrowhead or the end of the line agrees. ``given``: how long the arrows should be, mm."""
    crossed = sorted((tip for tip in tips if tip.corner[0] is not tip.corner[1]), key=lambda tip: -tip.score)
    found: list[Tip] = []
    for result in crossed[:MOST_CROSSED]:
        for others in combinations([tip for tip in crossed[:MOST_CROSSED] if tip is not result], len(given) - 1):
            place = result.place
            for other in others:
                place = place.minus(other.place.minus(sheet.origin))
            used = {tip.index for tip in (result, *others)}
            found += [_said_by_result(sheet, index, ray, place, given) for index, ray in enumerate(sheet.leaving)
                      if index not in used and is_axial(ray.stroke) and ray.distance(sheet.origin, place) > 8.0
                      and math.fabs(ray.stroke.across(place)) < HEAD_AGREES]  # fmt: skip
    return found


def _said_by_result(
    sheet: StrokeSheet, index: int, ray: LeavingStroke, place: Point, given: Sequence[float]
) -> Tip:
    """The tip on a line to which a place belongs: an arrowhead near there, else the end of the line, else the place."""
    said, heads = ray.distance(sheet.origin, place), _heads_along(sheet, ray)
    others = max((clear for clear, at in heads if math.fabs(at - said) > HEAD_AGREES), default=0.0)
    near = [(clear, at) for clear, at in heads if math.fabs(at - said) < HEAD_AGREES]
    ended = math.fabs(ray.end - said) < END_AGREES or (
        math.fabs(ray.end - said) < HEAD_AGREES and any(math.fabs(ray.end - one) < END_AGREES for one in given)
    )
    clear, head = near[0] if near else (0.0, 0.0)
    if clear > max(CLEAR_HEAD, others) or (
        clear > max(FAINT_HEAD, CLEARER * others) and math.fabs(head - said) < END_AGREES
    ):
        at = (head + ray.end) / 2.0 if math.fabs(head - ray.end) < 1.6 else head
    elif ended and others < CLEAR_HEAD:
        at = ray.end
    else:
        return Tip(index, sheet.origin_on(ray, said), ONLY_SAID, (ray.stroke, ray.stroke), False, ())
    return Tip(index, sheet.origin_on(ray, at), AGREED, (ray.stroke, ray.stroke), True, ())
