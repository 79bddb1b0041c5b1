"""Pictures for the classroom besides the constructions: all methods together, ropes on a ring, waves.

Each is a page of 120 by 108 units, like a frame of a lesson. Angles in degrees; ``phasors`` are (key, value) pairs in
the quantity's unit.
"""

import math
from collections.abc import Mapping, Sequence

from pycore import geometry, phasor, trig
from pycore.constructions.construction import Construction, DrawingConvention
from pycore.constructions.names import SUM_KEY, arm_key
from pycore.drawing import Arrow, Circle, Group, Ink, Item, Line, Page, Shape, Text
from pycore.geometry import Box, Point
from pycore.sheet import labels
from pycore.sheet.figure import draw, drawn_ends, figure_box
from pycore.sheet.lesson_view import CLASSROOM, HEIGHT, WIDTH
from pycore.sheet.lettered import text, width_of
from pycore.sheet.strokes import PhasorStyles, Placement
from pycore.words.phrase import Phrase, added, plain

MARGIN = 9.0
WAVE_STEPS = 72
TAG_CAPITALS = 4.7


def _stand(constructions: Sequence[Construction], picture: DrawingConvention) -> Placement:
    """Return the largest scale at which every construction fits, from one starting point."""
    boxes = [figure_box(construction, picture) for construction in constructions]
    bounds = Box(
        min(box.left for box in boxes), min(box.bottom for box in boxes),
        max(box.right for box in boxes), max(box.top for box in boxes),
    )  # fmt: skip
    factor = min((WIDTH - 2 * MARGIN) / max(bounds.width, 1e-9), (HEIGHT - 2 * MARGIN) / max(bounds.height, 1e-9))
    middle = bounds.centre
    return Placement(picture, factor, Point(WIDTH / 2 - middle.x * factor, HEIGHT / 2 - middle.y * factor))


def together(
    constructions: Sequence[Construction], last: int, picture: DrawingConvention, look: PhasorStyles, title: str
) -> Page:
    """Constructions drawn on top of one another up to number ``last`` (from 0); only the last has full ink."""
    stand = _stand(constructions, picture)
    faint: list[Item] = []
    for construction in constructions[:last]:
        points = construction.figure.points
        for start, end in drawn_ends(construction):
            faint.append(Line(stand.place(points[start]), stand.place(points[end]), 0.25, "rule"))
    now = draw(
        constructions[last], stand, look, CLASSROOM, visible_moves=frozenset(range(len(constructions[last].moves)))
    )
    ground = labels.LabelArea(Box(1.0, 1.0, WIDTH - 1.0, HEIGHT - 1.0), now.obstacles)
    placed, _ = labels.place(ground, now.label_requests)
    strokes = [item for _, items in sorted(now.by_step.items()) for item in items]
    strokes += [label.text for label in placed] + [label.leader for label in placed if label.leader]
    ring = Circle(stand.place(constructions[last].end_point), 2.4, 0.6, "accent")
    return Page(WIDTH, HEIGHT, (Group(tuple(faint), name="before"), Group(tuple(strokes)), ring), title, title)


def _rope(centre: Point, degrees: float, length: float, ink: Ink, ring: float) -> list[Item]:
    """A rope from the ring, its pull as an arrow."""
    start, tip = centre.moved(ring, degrees), centre.moved(ring + length, degrees)
    strands: list[Item] = [
        Line(start.moved(0.5, degrees + 90.0 * side), tip.moved(0.5, degrees + 90.0 * side), 0.25, "ink-3")
        for side in (1, -1)
    ]
    return [*strands, Arrow(start, tip, 0.9, ink, 5.2, cased=ink == "black")]


def _pulling(values: Sequence[complex], picture: DrawingConvention, ring: float) -> tuple[float, Point]:
    """Return the units for each unit of pull, and the ring's place, at which every pull and every partial sum fits."""
    pulls = [*values, *(phasor.total(values[:count]) for count in range(2, len(values) + 1))]
    tips = [
        Point(0.0, 0.0).moved(phasor.magnitude(value), picture.paper_angle(phasor.angle(value)))
        for value in pulls
        if value != 0
    ]
    box = geometry.bounds([Point(0.0, 0.0), *tips])
    room = 2 * (ring + 9.0)
    factor = min((WIDTH - room) / max(box.width, 1e-9), (HEIGHT - room) / max(box.height, 1e-9))
    middle = box.centre
    return factor, Point(WIDTH / 2 - middle.x * factor, HEIGHT / 2 - middle.y * factor)


def partial_tag(tags: Mapping[str, Phrase], keys: Sequence[str]) -> Phrase:
    """Return the tag of the sum of some phasors: its own, or theirs joined with plus and minus."""
    own = tags.get(arm_key("".join(key[1:] for key in keys)), ())
    return own if plain(own) else added([tags[key] for key in keys])


def _tag_inside(tag: Phrase, place: Point) -> Text:
    """Return a tag centred on a place, or beside it where it would leave the picture."""
    half = width_of(tag, TAG_CAPITALS) / 2 + 1.0
    across = min(max(place.x, half), WIDTH - half)
    return text(tag, Point(across, place.y - 2.0), TAG_CAPITALS, "middle")


def pull(
    phasors: Sequence[tuple[str, complex]], count: int, picture: DrawingConvention, look: PhasorStyles, title: str
) -> Page:
    """A ring pulled by the first ``count`` ropes, and the single pull with the same effect."""
    ring = 5.0
    factor, centre = _pulling([value for _, value in phasors], picture, ring)
    items: list[Item] = [Circle(centre, ring, 1.2, "ink"), Circle(centre, ring - 2.0, 0.5, "ink")]
    labels: list[tuple[Phrase, Point]] = []
    for key, value in phasors[:count]:
        degrees = picture.paper_angle(phasor.angle(value))
        length = phasor.magnitude(value) * factor
        items += _rope(centre, degrees, length, look.inks[key], ring)
        labels.append((look.tags[key], centre.moved(ring + length + 4.5, degrees)))
    net = phasor.total(value for _, value in phasors[:count])
    if count > 1 and net != 0:
        degrees = picture.paper_angle(phasor.angle(net))
        length = phasor.magnitude(net) * factor
        tip = centre.moved(ring + length, degrees)
        items.append(Arrow(centre, tip, 1.4, look.inks[SUM_KEY], 7.0))
        whole = count == len(phasors)
        tag = look.tags[SUM_KEY] if whole else partial_tag(look.tags, [key for key, _ in phasors[:count]])
        labels.append((tag, centre.moved(ring + length + 5.5, degrees + 4.0)))
    items += [_tag_inside(tag, place) for tag, place in labels]
    return Page(WIDTH, HEIGHT, tuple(items), title, title)


CIRCLE_X, CIRCLE_R = 30.0, 24.0
WAVE_LEFT, WAVE_RIGHT = 60.0, 117.0
MIDDLE = HEIGHT / 2


def waves(
    phasors: Sequence[tuple[str, complex]], turned: float, look: PhasorStyles, title: str
) -> Page:
    """Phasors turned by an angle, beside their waves over one period; the last is the sum.

    The height is the instantaneous value, with a peak of root two times the r.m.s. value. The height of the phasor's
    tip above the axis is the value of the wave at that angle.
    """
    longest = max(phasor.magnitude(value) for _, value in phasors)
    factor = CIRCLE_R / longest if longest else 1.0
    items: list[Item] = [
        Line(Point(2.0, MIDDLE), Point(WAVE_RIGHT, MIDDLE), 0.25, "ink-2"),
        Line(Point(WAVE_LEFT, 6.0), Point(WAVE_LEFT, HEIGHT - 6.0), 0.25, "ink-2"),
        Circle(Point(CIRCLE_X, MIDDLE), CIRCLE_R, 0.2, "rule"),
    ]
    at = WAVE_LEFT + (WAVE_RIGHT - WAVE_LEFT) * math.fmod(turned + 360.0, 360.0) / 360.0
    items.append(Line(Point(at, 6.0), Point(at, HEIGHT - 6.0), 0.4, "accent", (1.5, 1.0)))
    for key, value in phasors:
        size, angle = phasor.magnitude(value) * factor, phasor.angle(value)
        if size == 0.0:
            continue
        width = 1.0 if key == SUM_KEY else 0.5
        places = [
            Point(
                WAVE_LEFT + (WAVE_RIGHT - WAVE_LEFT) * step / WAVE_STEPS,
                MIDDLE + size * trig.sine(angle + 360.0 * step / WAVE_STEPS),
            )
            for step in range(WAVE_STEPS + 1)
        ]
        items.append(Group((Shape(tuple(places), width, look.inks[key], None, closed=False),), name=f"wave-{key}"))
        start = Point(CIRCLE_X, MIDDLE)
        tip = start.moved(size, angle + turned)
        items.append(Group((Arrow(start, tip, width, look.inks[key], 4.0),), phasor=key))
        height = MIDDLE + size * trig.sine(angle + turned)
        items.append(Line(tip, Point(at, height), 0.2, look.inks[key], (0.8, 0.8)))
        items.append(Circle(Point(at, height), 1.0, 0.3, "ink", look.inks[key]))
        beside = tip.moved(5.5, angle + turned)
        items.append(text(look.tags[key], Point(beside.x, beside.y - 2.0), TAG_CAPITALS, "middle"))
    return Page(WIDTH, HEIGHT, tuple(items), title, title)

