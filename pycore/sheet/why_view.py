"""The picture of why: a line carried on beyond its tip, the angle outside, and what is left of half a turn."""

from collections.abc import Sequence
from dataclasses import dataclass

from pycore.constructions.frames import Frame
from pycore.constructions.moves import TurnAngle
from pycore.drawing import Arc, Arrow, Circle, Group, Item, Line, Page, Shape
from pycore.geometry import Box, Point
from pycore.sheet import labels
from pycore.sheet.figure import PhasorStyles, draw
from pycore.sheet.laying import HEIGHT, ONWARD, WIDTH, Laying, Stage
from pycore.sheet.lesson_view import CLASSROOM, READING, ToolNote, beside, tags
from pycore.sheet.lettered import text
from pycore.sheet.plan import Plan
from pycore.words import lesson as words
from pycore.words.phrase import Phrase

SMALL, OUTSIDE, INSIDE = 3.4, 10.0, 14.0
"""Capitals of the small words; radii of the arcs outside and inside."""
BAR_WIDE, BAR_HIGH, BAR_ROOM = 42.0, 3.5, 17.0
"""The bar of half a turn, and the height that it takes with its words."""


@dataclass(frozen=True, slots=True)
class WhyAngle:
    """The angle at a tip: its move, the turns from straight on and from straight back (degrees as calculated), both as
    text, the name of the new line, and its length in the drawing. ``start``: where the two phasors have the same angle
    between them, if the new line is a copy."""

    move: TurnAngle
    turn: float
    inner: float
    outside: str
    inside: str
    name: Phrase
    length: float
    start: str = ""


def _sector(centre: Point, radius: float, start: float, sweep: float, strong: bool) -> list[Item]:
    """An angle as a tinted sector with an arrow along its arc."""
    pieces = 24
    rim = [centre.moved(radius, start + sweep * n / pieces) for n in range(pieces + 1)]
    width, ink = (0.5, "accent") if strong else (0.25, "ink-2")
    items: list[Item] = [Shape((centre, *rim), 0.0, "accent", "tint-2" if strong else "tint")]
    items.append(Arc(centre, radius, start, sweep, width, ink))  # type: ignore[arg-type]
    if sweep > 20.0 or sweep < -20.0:
        items.append(Arrow(rim[-3], rim[-1], width, ink, 2.6))  # type: ignore[arg-type]
    return items


def _bar_place(drawn: Sequence[labels.Segment], busy: Sequence[Point]) -> Box:
    """Return the corner of the view for the bar: the first that nothing is in, else the one with least."""
    places = [
        Box(left, low, left + BAR_WIDE + 4.0, low + BAR_ROOM)
        for low in (1.0, HEIGHT - BAR_ROOM - 1.0) for left in (WIDTH - BAR_WIDE - 5.0, 1.0)
    ]  # fmt: skip

    def taken(place: Box) -> int:
        lines = [piece for piece in drawn if place.meets_segment(piece.start, piece.end)]
        return len(lines) + len([1 for x, y in busy if place.grown(OUTSIDE).holds(Box(x, y, x, y))])

    return min(places, key=taken)


def _bar(angle: WhyAngle, inside: float, room: Box) -> list[Item]:
    """Half a turn as a bar: the angle outside, and what is left."""
    bar = Box(room.left + 2.0, room.bottom + 6.5, room.right - 2.0, room.bottom + 6.5 + BAR_HIGH)
    split = bar.left + bar.width * (180.0 - inside) / 180.0
    left, right = Box(bar.left, bar.bottom, split, bar.top), Box(split, bar.bottom, bar.right, bar.top)
    over = bar.top + 1.4
    # Beside each other, however short a part is.
    first = min((left.left + left.right) / 2, bar.right - 22.0)
    second = max((right.left + right.right) / 2, first + 14.0)
    return [
        Shape(left.corners, 0.25, "ink-2", "tint"),
        Shape(right.corners, 0.6, "accent", "tint-2"),
        text(angle.outside, Point(first, over), SMALL, "middle"),
        text(angle.inside, Point(min(second, bar.right - 3.0), over), SMALL, "middle", "accent", "bold"),
        text(words.HALF_TURN, Point(bar.centre.x, bar.bottom - 5.0), SMALL, "middle", "ink-2"),
    ]


def why_page(
    plan: Plan, frame: Frame, look: PhasorStyles, stage: Stage, angle: WhyAngle, title: str
) -> Page:
    """Return the picture, in the lesson's own place and scale."""
    laying = Laying(plan, frame, stage, circle=False)
    move = angle.move
    tip, back = laying.at(move.at), laying.zero_of(move)
    sense = plan.picture.sense
    onward, inner = back + 180.0, sense * angle.inner
    outer = inner - 180.0 if inner > 0 else inner + 180.0
    towards = back + inner
    drawn = draw(plan.construction, stage.stand, look, CLASSROOM, visible_moves=frame.drawn_moves)
    end = tip.moved(max(angle.length * stage.stand.factor, 24.0), towards)
    far = tip.moved(ONWARD, onward)
    lines: list[Item] = [
        Line(tip, far, 0.25, "ink-2", (1.6, 1.2)), Line(tip, end, 0.5, "ink", CLASSROOM.dash),
        Circle(tip, 1.2, 0.5, "accent", "sheet"),
    ]  # fmt: skip
    ground = labels.LabelArea(Box(1.0, 1.0, WIDTH - 1.0, HEIGHT - 1.0), drawn.segments)
    for start, stop in ((tip, far), (tip, end)):
        ground.add(labels.Segment(start, stop, "", 0.6))
    segments = [*drawn.segments, labels.Segment(tip, far), labels.Segment(tip, end)]
    room = _bar_place(segments, (tip, end, far))
    bar = _bar(angle, -inner if inner < 0 else inner, room)
    ground.boxes.append(room)
    arcs = [(tip, OUTSIDE, onward, outer), (tip, INSIDE, back, inner)]
    if angle.start:
        arcs.append((laying.at(angle.start), OUTSIDE, onward, outer))
    for centre, radius, begin, sweep in arcs:
        for piece in range(8):
            first, last = (centre.moved(radius, begin + sweep * (piece + more) / 8) for more in (0, 1))
            ground.add(labels.Segment(first, last, "", 0.4))
    sectors = [*_sector(tip, OUTSIDE, onward, outer, False), *_sector(tip, INSIDE, back, inner, True)]
    if angle.start:
        origin = laying.at(angle.start)
        sectors += _sector(origin, OUTSIDE, onward, outer, False)
        at = ToolNote(angle.outside, origin.moved(OUTSIDE, onward + outer / 2), onward + outer / 2)
        sectors += beside(ground, at, 4.7, "regular", "ink")
    notes = [
        beside(ground, ToolNote(angle.inside, tip.moved(INSIDE, back + inner / 2), back + inner / 2), READING, "bold",
               "accent"),
        beside(ground, ToolNote(angle.outside, tip.moved(OUTSIDE, onward + outer / 2), onward + outer / 2), 4.7,
               "regular", "ink"),
        beside(ground, ToolNote(words.STRAIGHT_ON, far, onward), SMALL, "regular", "ink-2"),
        beside(ground, ToolNote(angle.name, end, towards), SMALL, "regular", "ink-2"),
    ]  # fmt: skip
    placed, _ = labels.place(ground, [one for one in drawn.label_requests if one.owner != "reference"])
    tagged = tags(placed)
    steps = [Group(tuple(items), step=number) for number, items in sorted(drawn.by_step.items())]
    whole: tuple[Item, ...] = (
        Group(tuple(sectors), name="why-sectors"), *steps, Group(tuple(lines), name="why-lines"), *tagged,
        *(item for note in notes for item in note), *bar,
    )  # fmt: skip
    return Page(WIDTH, HEIGHT, whole, title, title)
