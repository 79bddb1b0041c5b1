"""Pictures for the classroom besides the constructions: all methods together, ropes on a ring.

Each is a page of 120 by 98.4 units, like a frame of a lesson. Angles in degrees; ``phasors`` are (key, value) pairs in
the quantity's unit.
"""

from collections.abc import Mapping, Sequence

from pycore import geometry, phasor
from pycore.constructions.construction import Construction, DrawingConvention
from pycore.constructions.names import SUM_KEY, arm_key
from pycore.drawing import Arrow, Circle, Group, Ink, Item, Line, Page, walk
from pycore.geometry import Box, Point
from pycore.sheet import labels
from pycore.sheet.figure import draw
from pycore.sheet.laying import HEIGHT, WIDTH
from pycore.sheet.lesson_view import CLASSROOM, MET, beside, meets, tags
from pycore.sheet.strokes import PhasorStyles, Placement, figure_box
from pycore.sheet.tools import ToolNote
from pycore.words.phrase import Phrase, added, negated, plain

MARGIN = 9.0
TAG_CAPITALS = 4.7


def _stand(constructions: Sequence[Construction], picture: DrawingConvention) -> Placement:
    """Return the largest scale at which every construction fits, from one starting point."""
    bounds = geometry.joined(figure_box(construction, picture) for construction in constructions)
    factor = min((WIDTH - 2 * MARGIN) / max(bounds.width, 1e-9), (HEIGHT - 2 * MARGIN) / max(bounds.height, 1e-9))
    middle = bounds.centre
    return Placement(picture, factor, Point(WIDTH / 2 - middle.x * factor, HEIGHT / 2 - middle.y * factor))


def together(
    constructions: Sequence[Construction], last: int, picture: DrawingConvention, look: PhasorStyles, title: str
) -> Page:
    """Constructions drawn on top of one another up to number ``last`` (from 0); only the last has full ink."""
    stand = _stand(constructions, picture)
    end = stand.place(constructions[last].end_point)
    faint: list[Item] = []
    for construction in constructions[:last]:
        points = construction.figure.points
        for start, stop in construction.drawn_ends:
            line = Line(stand.place(points[start]), stand.place(points[stop]), 0.25, "rule")
            faint.append(_marked_answer(line, end))
    now = draw(
        constructions[last], stand, look, CLASSROOM, visible_moves=frozenset(range(len(constructions[last].moves)))
    )
    ground = labels.LabelArea(Box(1.0, 1.0, WIDTH - 1.0, HEIGHT - 1.0), now.obstacles)
    placed, _ = labels.place(ground, now.label_requests)
    strokes = [_marked_answer(item, end) for _, items in sorted(now.by_step.items()) for item in items]
    ring = Group((Circle(end, 2.4, 0.6, "accent"),), name="answer")
    at_end = {one.phasor for one in walk(tuple(strokes)) if isinstance(one, Group) and _meets_any(one, end)}
    names = [
        Group(tags([label]), name="answer" if label.request.owner in at_end else "") for label in placed
    ]
    items = (Group(tuple(faint), name="before"), Group(tuple(strokes)), *names, ring)
    return Page(WIDTH, HEIGHT, items, title, title)


def _marked_answer(item: Item, end: Point) -> Item:
    """Return an item, named ``answer`` if it meets the end of the sum: hidden answers are not to be found from it."""
    return Group((item,), name="answer") if _meets_any(item, end) else item


def _meets_any(item: Item, end: Point) -> bool:
    """Return whether a line, an arrow or an arc of an item meets a point."""
    ends = [
        place
        for one in walk((item,))
        if isinstance(one, (Line, Arrow))
        for place in ((one.start, one.end) if isinstance(one, Line) else (one.tail, one.tip))
    ]
    return meets(item, end) or any(geometry.distance(place, end) < MET for place in ends)


def _rope(centre: Point, degrees: float, length: float, ink: Ink, ring: float) -> list[Item]:
    """A rope from the ring, its pull as an arrow whose length counts from the ring's middle."""
    start = centre.moved(ring if length > 2.0 * ring else 0.0, degrees)
    tip = centre.moved(length, degrees)
    strands: list[Item] = [
        Line(start.moved(0.5, degrees + 90.0 * side), tip.moved(0.5, degrees + 90.0 * side), 0.25, "ink-3")
        for side in (1, -1)
    ]
    return [*strands, Arrow(start, tip, 0.9, ink, 5.2, cased=ink == "black")]


def _pulling(values: Sequence[complex], picture: DrawingConvention) -> tuple[float, Point]:
    """Return the units for each unit of pull, and the ring's place, at which every pull and every partial sum fits."""
    pulls = [*values, *(phasor.total(values[:count]) for count in range(2, len(values) + 1))]
    pulls.append(-phasor.total(values))
    tips = [
        Point(0.0, 0.0).moved(phasor.magnitude(value), picture.paper_angle(phasor.angle(value)))
        for value in pulls
        if value != 0
    ]
    box = geometry.bounds([Point(0.0, 0.0), *tips])
    room = 2 * (MARGIN + 3.0)
    factor = min((WIDTH - room) / max(box.width, 1e-9), (HEIGHT - room) / max(box.height, 1e-9))
    middle = box.centre
    return factor, Point(WIDTH / 2 - middle.x * factor, HEIGHT / 2 - middle.y * factor)


def partial_tag(tags: Mapping[str, Phrase], keys: Sequence[str]) -> Phrase:
    """Return the tag of the sum of some phasors: its own, or theirs joined with plus and minus."""
    own = tags.get(arm_key("".join(key[1:] for key in keys)), ())
    return own if plain(own) else added([tags[key] for key in keys])


def _single(centre: Point, value: complex, place: tuple[float, DrawingConvention], ink: Ink) -> Item:
    """One arrow from the ring, with the effect of all."""
    factor, picture = place
    degrees = picture.paper_angle(phasor.angle(value))
    tip = centre.moved(phasor.magnitude(value) * factor, degrees)
    return Arrow(centre, tip, 1.4, ink, 7.0)


def _sides(centre: Point, one: complex, other: complex, place: tuple[float, DrawingConvention]) -> list[Item]:
    """The dashed sides of the parallelogram of two pulls, from the middle of the ring."""
    factor, picture = place

    def tip(value: complex) -> Point:
        return centre.moved(phasor.magnitude(value) * factor, picture.paper_angle(phasor.angle(value)))

    return [Line(tip(start), tip(one + other), 0.25, "ink-2", CLASSROOM.dash) for start in (one, other)]


def pull(
    phasors: Sequence[tuple[str, complex]], count: int, picture: DrawingConvention, look: PhasorStyles, title: str,
    *, balanced: bool = False,
) -> Page:  # fmt: skip
    """A ring pulled by the first ``count`` ropes, the single pull with the same effect, and its parallelogram.

    That is of the pull before and the last rope. ``balanced``: instead, the pull that keeps the ring at rest.
    """
    ring = 4.0
    values = [value for _, value in phasors]
    whole = phasor.total(values)
    factor, centre = _pulling(values, picture)
    place = factor, picture
    net = phasor.total(values[:count])
    items: list[Item] = []
    is_answer = count == len(phasors)
    name = "answer" if is_answer else "net"
    if count > 1 and not balanced:
        sides = _sides(centre, phasor.total(values[: count - 1]), values[count - 1], place)
        items.append(Group(tuple(sides), name=name))
    items += [Circle(centre, ring, 1.2, "ink"), Circle(centre, ring - 2.0, 0.5, "ink")]
    requests: list[tuple[Phrase, complex, str]] = []
    for key, value in phasors[:count]:
        degrees, length = picture.paper_angle(phasor.angle(value)), phasor.magnitude(value) * factor
        items += _rope(centre, degrees, length, look.inks[key], ring)
        requests.append((look.tags[key], value, ""))
    if balanced and whole != 0:
        items.append(Group((_single(centre, -whole, place, "accent"),), name=name))
        requests.append((negated(look.tags[SUM_KEY]), -whole, name))
    elif count > 1 and net != 0:
        items.append(Group((_single(centre, net, place, look.inks[SUM_KEY]),), name=name))
        tag = look.tags[SUM_KEY] if is_answer else partial_tag(look.tags, [key for key, _ in phasors[:count]])
        requests.append((tag, net, name))
    items += _rope_tags(requests, items, centre, place, ring)
    return Page(WIDTH, HEIGHT, tuple(items), title, title)


def _rope_tags(
    requests: Sequence[tuple[Phrase, complex, str]], items: Sequence[Item], centre: Point,
    place: tuple[float, DrawingConvention], ring: float,
) -> list[Item]:  # fmt: skip
    """The names of the pulls, at their tips, clear of every line and of each other."""
    factor, picture = place
    ground = labels.LabelArea(Box(1.0, 1.0, WIDTH - 1.0, HEIGHT - 1.0))
    for item in walk(tuple(items)):
        if isinstance(item, (Line, Arrow)):
            ends = (item.start, item.end) if isinstance(item, Line) else (item.tail, item.tip)
            ground.add(labels.Segment(*ends, "", 1.0))
    ground.boxes.append(Box(centre.x - ring, centre.y - ring, centre.x + ring, centre.y + ring))
    named: list[Item] = []
    for tag, value, name in requests:
        degrees = picture.paper_angle(phasor.angle(value))
        tip = centre.moved(phasor.magnitude(value) * factor, degrees)
        words = beside(ground, ToolNote(tag, tip, degrees), TAG_CAPITALS, "regular", "ink")
        named += [Group(words, name=name)] if name else words
    return named
