"""The skeleton of every sheet: frame and field, check bars, scale, sense of rotation, the mark of 0°, the foot line.

The figure keeps its place and scale for ever, so whatever stands in its area gives way: labels are placed round it, and
the sense of rotation moves along its strip where a line would cross it. All in mm.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from pycore import geometry
from pycore.drawing import Arc, Circle, Group, Item, Line, Shape, Text, with_role
from pycore.geometry import Box, Point
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.labels import Segment
from pycore.sheet.lettered import text, width_of
from pycore.sheet.marks import BOTTOM_SHARE
from pycore.sheet.media import Layout
from pycore.sheet.sheet_text import FieldText
from pycore.words.sheet import ROOM

FRAME, FIELD = 0.7, 0.5
"""Widths of the frame's line and of the one that parts the field from the words."""
BODY = 1.5
"""Breadth of a check bar, outside its measured edge."""


@lru_cache(maxsize=32)
def frame(layout: Layout) -> Group:
    """Frame (after ISO 5457, adapted), and the line beside or below the field."""
    box, field = layout.frame, layout.field
    ends = (
        (Point(field.right, field.bottom), Point(field.right, field.top)) if layout.landscape
        else (field.corners[0], Point(field.right, field.bottom))
    )  # fmt: skip
    parted = field != box and not layout.style.whole
    return Group((Shape(box.corners, FRAME), *((Line(*ends, FIELD),) if parted else ())), name="frame")


def _bar_boxes(x: float, y: float, length: float, upright: bool, breadth: float) -> Iterator[Item]:
    """Alternately filled fields of 10 mm."""
    for index in range(int(length / 10)):
        low = index * 10.0
        box = (
            Box(x, y + low, x + breadth, y + low + 10) if upright else Box(x + low, y, x + low + 10, y + breadth)
        )
        yield Shape(box.corners, 0.18, "ink", "ink" if index % 2 == 0 else "sheet")


def check_bar(
    at: Point, length: float, length_text: str, note: float, *, upright: bool = False, below: bool = False
) -> Group:
    """Return a bar to measure with a ruler, from its lower left corner; ``length_text`` is its length as text.

    The text is along a vertical bar (above it, it would reach into the figure's area), and after a horizontal one, or
    below it if ``below``.
    """
    x, y = at
    ends = (0.0, length)
    strokes = (
        (Line(Point(x - 1, y + end), Point(x + 2.6, y + end), 0.25) for end in ends)
        if upright
        else (Line(Point(x + end, y - 1), Point(x + end, y + 2.6), 0.25) for end in ends)
    )
    if upright:
        words = replace(text(length_text, Point(x + 3.5 + note, y + length / 2), note, "middle"), turn=90.0)
    elif below:
        words = text(length_text, Point(x + length / 2, y - 2.0 - note), note, "middle")
    else:
        words = text(length_text, Point(x + length + 2, y - 0.4), note)
    return Group((*_bar_boxes(x, y, length, upright, 1.6), *strokes, words), name="check-bar", role="furniture")


@lru_cache(maxsize=32)
def check_bars(layout: Layout) -> tuple[Group, ...]:
    """Two bars with one zero in the corner, away from the edges that a printer may lose: what is measured of each is
    its inner edge, and the length stands upright at each far end."""
    (x, y), length, note = layout.zero, layout.bar, layout.style.note
    number, unit = layout.bar_text.split(NO_BREAK_SPACE)
    top, right = y + length, x + length
    # Beside its end, in the strip: above it, the words would reach into the figure's area. Large ones lie along it.
    words: tuple[Item, ...] = (
        text(number, Point(x - BODY - 0.9, top - note), note, "end"),
        text(unit, Point(x - BODY - 0.9, top - 2.5 * note), note, "end"),
    )
    if max(width_of(number, note), width_of(unit, note)) > x - BODY - 0.9 - layout.field.left - 0.8:
        words = (replace(text(layout.bar_text, Point(x - BODY - 1.6, y + length / 2), note, "middle"), turn=90.0),)
    upright = (
        *_bar_boxes(x - BODY, y, length, True, BODY), Line(Point(x - BODY, top), Point(x + 0.5, top), 0.25), *words,
    )  # fmt: skip
    level = (
        *_bar_boxes(x, y - BODY, length, False, BODY), Line(Point(right, y - BODY), Point(right, y + 0.5), 0.25),
        text(layout.bar_text, Point(right + 2.0, y - 0.5 * (BODY + note)), note),
    )  # fmt: skip
    bars = (Group(bar, name="check-bar", role="furniture") for bar in (upright, level))
    return tuple(bars)


FOOT_SHARES = ((1.0, 8.0), (1.0, 4.0), (0.9, 4.0), (0.8, 3.0), (0.7, 2.5), (0.62, 2.0))
"""Lettering of the foot line and the gap between its two parts: the first that fits is used."""


@lru_cache(maxsize=32)
def foot(layout: Layout, print_check: str, teaching: str, of_scale: Box) -> Group:
    """The line at the foot of the field: how to print, and what the sheet is not for."""
    parts = [(words, ink) for words, ink in ((print_check, "ink"), (teaching, "ink-2")) if words]
    field, note = layout.field, layout.style.note
    low = min(field.bottom + 3.0, layout.zero.y - BODY - note - 1.2)
    # It ends before the mark in the field's lower edge, and where it is close below the scale, before that.
    right = field.left + BOTTOM_SHARE * field.width - 4.0
    right = min(right, of_scale.left - 2.0) if low + 1.05 * note > of_scale.bottom - 0.8 else right
    for share, gap in FOOT_SHARES:
        left = layout.zero.x if gap == FOOT_SHARES[0][1] else field.left + 4.2
        size = share * note
        wide = math.fsum(width_of(words, size) for words, _ in parts) + gap * (len(parts) - 1)
        if left + wide <= right:
            break
    items: list[Item] = []
    for words, ink in parts:
        items.append(text(words, Point(left, low), size, ink=ink))  # type: ignore[arg-type]
        left += width_of(words, size) + gap
    return Group(tuple(items), name="foot")


LOW = 3.9
"""How far a scale below the figure's area stands above the lower edge of the field, on which marks are."""
RULE_ROOM = 18.0
"""Length of the line on which a learner writes the number of a scale, mm, beside capitals of 7 mm."""


def scale_line(
    wording: str, at: Point, capitals: float, room: float, anchor: str = "start"
) -> tuple[list[Item], float]:
    """Return a scale in words and how wide it is; a ruled line where the learner writes its number."""
    pieces = wording.split(ROOM)
    rule = RULE_ROOM * capitals / 7.0
    wide = math.fsum(width_of(piece, capitals) for piece in pieces) + rule * (len(pieces) - 1)
    share = min(1.0, room / wide)
    size, rule, wide = capitals * share, rule * share, wide * share
    x = first = at.x - (wide if anchor == "end" else 0.0)
    items: list[Item] = []
    for piece in pieces:
        if x > first:
            items.append(Line(Point(x, at.y - 0.2 * size), Point(x + rule, at.y - 0.2 * size), 0.25))
            x += rule
        items.append(text(piece, Point(x, at.y), size))
        x += width_of(piece, size)
    return [with_role("paragraph", *items)], wide


@lru_cache(maxsize=32)
def scales(layout: Layout, wording: str) -> tuple[tuple[Group, Box], ...]:
    """The scale, right-aligned at the foot of the field, in its place, a little higher, and below the figure's area for
    a figure that reaches so far down; each with the rectangle that labels keep out of."""
    capitals, low = layout.style.scale_words, layout.field.bottom + LOW
    below = 0.34 if any(letter in "gjpqy,()" for letter in wording) else 0.06
    least = min(capitals, (layout.area.bottom - 0.8 - low) / (1.05 + below))
    places = ((capitals, layout.zero.y - 2.0), (capitals, low + below * capitals), (least, low + below * least))
    return tuple(_scale(layout, wording, size, y, below) for size, y in places)


def _scale(layout: Layout, wording: str, capitals: float, y: float, below: float) -> tuple[Group, Box]:
    left = layout.zero.x + layout.bar + width_of(layout.bar_text, layout.style.note) + 6.0
    right = layout.field.right - 2.5
    items, wide = scale_line(wording, Point(right, y), capitals, right - left, "end")
    return Group(tuple(items), name="scale"), Box(right - wide, y - below * capitals, right, y + 1.05 * capitals)


def turning_sign(centre: Point, radius: float, *, anticlockwise: bool) -> list[Item]:
    """Return an open circle with an arrowhead: the sense in which positive angles turn."""
    start, sweep = (30.0, 290.0) if anticlockwise else (150.0, -290.0)
    end = centre.moved(radius, start + sweep)
    ahead = start + sweep + (90.0 if anticlockwise else -90.0)
    tip = end.moved(1.2, ahead)
    wings = (end.moved(-0.9, ahead).moved(0.75, ahead + 90.0), end.moved(-0.9, ahead).moved(0.75, ahead - 90.0))
    return [Arc(centre, radius, start, sweep, 0.35, "ink"), Shape((tip, *wings), 0.0, "ink", "ink")]


TURNING_DOWN = (15.0, 9.5, 21.0, 27.0, 33.0, 39.0, 45.0, 51.0)
"""How far below the field's upper edge the middle of the sense of rotation stands, in order of preference."""


def turning(
    layout: Layout, writing: FieldText, drawn: Sequence[Segment] | None, marks: Sequence[Box]
) -> tuple[Group, Box]:
    """The sense of rotation at the upper left, or lower in its strip where lines of the figure or marks are in its way;
    without its words where these never have room, or where it is not known what is drawn."""
    note, radius = layout.style.note, 3.5 if layout.small else 4.5
    field = layout.field
    wide = max(width_of(line, note) for line in writing.turning)
    below = radius + 1.2 + (0.4 + 1.5 * len(writing.turning)) * note
    left = field.left + 1.4
    for down in () if drawn is None else TURNING_DOWN:
        centre = Point(left + max(wide / 2, radius), field.top - down)
        box = Box(left, centre.y - below, left + max(wide, 2 * radius), centre.y + radius)
        if box.bottom > layout.zero.y + layout.bar + 1.0 and is_free(box, drawn or (), marks):
            y = centre.y - radius - 0.8 - note
            lines = [
                text(line, Point(centre.x, y - 1.5 * index * note), note, "middle", "ink-2")
                for index, line in enumerate(writing.turning)
            ]
            sign = turning_sign(centre, radius, anticlockwise=writing.anticlockwise)
            return Group((*sign, *lines), name="turning"), box
    centre = Point(field.left + 5.6, field.top - TURNING_DOWN[1])
    return Group(tuple(turning_sign(centre, 3.5, anticlockwise=writing.anticlockwise)), name="turning"), Box(
        *centre, *centre
    ).grown(4.2)


def is_free(box: Box, drawn: Sequence[Segment], others: Sequence[Box]) -> bool:
    """Return whether neither a line of the figure nor other furniture is in a rectangle."""
    room = left, bottom, right, top = box.grown(0.9)
    # ``Box.meets``, written out: asked forty times for each sheet.
    for other_left, other_bottom, other_right, other_top in others:
        if left < other_right and other_left < right and bottom < other_top and other_bottom < top:
            return False
    # Most lines lie wholly to one side: asked five times for each sheet, of every line on it.
    near = [
        (start, end) for start, end, _owner, _half_width in drawn
        if (start[0] > left or end[0] > left) and (start[0] < right or end[0] < right)
        and (start[1] > bottom or end[1] > bottom) and (start[1] < top or end[1] < top)
    ]  # fmt: skip
    return not any(room.meets_segment(start, end) for start, end in near)


STUB = 5.0


def zero_mark(
    layout: Layout, writing: FieldText, origin: Point, drawn: Sequence[Segment], others: Sequence[Box]
) -> tuple[Group, tuple[Box, ...]]:
    """A short line on the frame where the first direction meets it, and its name: it sets the first line upright. An
    empty group where a line of the figure, a mark of the photograph or other furniture is."""
    field, area, note = layout.field, layout.area, layout.style.note
    wide, margin = width_of(writing.zero, note), layout.style.margin
    if not writing.zero:
        return Group((), name="zero"), ()
    if writing.up:
        start = Point(origin.x, field.top)
        end = Point(origin.x, field.top - min(STUB, field.top - area.top + margin - 1.0))
        base = field.top - 1.2 - note
        places = [Point(origin.x + 1.2, base), Point(origin.x - 1.2 - wide, base)]
    else:
        start = Point(field.right, origin.y)
        end = Point(field.right - min(STUB, field.right - area.right + margin - 1.0), origin.y)
        places = [Point(field.right - 1.2 - wide, origin.y + up) for up in (1.2, -1.2 - note)]
    stub = geometry.bounds([start, end]).grown(0.8)
    for place in places:
        box = Box(place.x, place.y - 0.1 * note, place.x + wide, place.y + 1.05 * note)
        if is_free(box, drawn, others) and is_free(stub, drawn, others):
            return Group((Line(start, end, FIELD), text(writing.zero, place, note)), name="zero"), (stub, box)
    return Group((), name="zero"), ()


CROSS, RING = 4.0, 1.0
"""Half the cross at the point from which a learner draws, and the radius of its ring."""


def cross_segments(at: Point) -> tuple[Segment, Segment]:
    """Return what other furniture keeps clear of at the point from which a learner draws."""
    level, upright = geometry.cross_strokes(at, CROSS)
    return Segment(*level), Segment(*upright)


def start_cross(at: Point) -> tuple[Item, ...]:
    """Return a circle with a cross at a point from which a learner draws."""
    level, upright = geometry.cross_strokes(at, CROSS)
    return Line(*level, 0.18), Line(*upright, 0.18), Circle(at, RING, 0.35)


def point_name(
    layout: Layout, name: str, at: Point, drawn: Sequence[Segment], others: Sequence[Box]
) -> tuple[Text, ...]:
    """Return the name of the point from which a learner draws, beside it: where no line of the drawing will run, else
    where there is room."""
    note = layout.style.note
    wide = width_of(name, note)
    places = [
        Point(at.x + right, at.y + up)
        for right in (1.8, -1.8 - wide) for up in (-1.8 - note, 1.8, -CROSS - 0.8 - note, CROSS + 0.8)
    ]  # fmt: skip
    free = [(place, Box(place.x, place.y - 0.34 * note, place.x + wide, place.y + 1.05 * note)) for place in places]
    free = [(place, box) for place, box in free if layout.area.holds(box) and not any(box.meets(one) for one in others)]
    best = next((place for place, box in free if is_free(box, drawn, ())), free[0][0] if free else None)
    return () if best is None or not name else (text(name, best, note, ink="ink-2"),)
