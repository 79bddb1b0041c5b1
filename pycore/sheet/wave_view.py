"""Waves over the whole width: arrows at the left, their curves at the right at the same heights.

A page of 192 by 74 units. The height of an arrow's tip above the axis is the value at that moment: its length is the
peak, root two times the r.m.s. value.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from pycore import geometry, phasor, quantity, trig
from pycore.constructions.names import SUM_KEY
from pycore.drawing import Arrow, Circle, Group, Ink, Item, Line, Page, Shape
from pycore.geometry import Box, Point
from pycore.sheet import labels
from pycore.sheet.aside import Lanes, aside, carried
from pycore.sheet.lesson_view import CLASSROOM, ToolNote, beside
from pycore.sheet.lettered import text, width_of
from pycore.sheet.strokes import PhasorStyles
from pycore.sheet.ticks import ticks

WIDTH, HEIGHT = 192.0, 74.0
MIDDLE, HALF = 37.5, 31.0
"""Height of the axis, and from it to the largest value of the scale."""
CENTRE = Point(42.0, MIDDLE)
LEFT, RIGHT = 88.0, 172.0
CURVE_STEPS = 120
TAG, NUMBER = 4.7, 2.4
"""Capitals of names and of the numbers on the axes: letters of 37 pixels of 1080."""
APART = 6.4
"""From one name at the ends of the curves to the next."""
HEAD = 4.0
"""Length of an arrowhead, less on a short arrow."""
ASIDE = 4.5
"""From one arrow to the next where several lie on one line."""
NICE = (1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0)


@dataclass(frozen=True, slots=True)
class Wave:
    """One phasor with its curve: key and r.m.s. value as a phasor."""

    key: str
    value: complex

    @property
    def peak(self) -> float:
        """The largest value of the curve."""
        return math.sqrt(2.0) * phasor.magnitude(self.value)

    def at(self, turned: float) -> float:
        """The value after a turn."""
        return self.peak * trig.sine(phasor.angle(self.value) + turned) if self.value else 0.0


def top_of(waves: Sequence[Wave]) -> float:
    """Return the largest value of the scale: a round number not below any peak."""
    peak = max((wave.peak for wave in waves), default=0.0)
    if peak == 0.0:
        return 1.0
    power = float(f"1e{quantity.order_of_magnitude(peak)}")
    return next((nice * power for nice in NICE if nice * power >= peak), 10.0 * power)


def _x(degrees: float) -> float:
    return LEFT + (RIGHT - LEFT) * degrees / 360.0


def _axes(top: float, turned: float, amount: Callable[[float], str]) -> list[Item]:
    """Both axes with their numbers: 0 to 360 degrees, and the quantity's own unit."""
    items: list[Item] = []
    for share in (1.0, 0.5, -0.5, -1.0):
        y = MIDDLE + share * HALF
        items.append(Line(Point(LEFT, y), Point(RIGHT, y), 0.12, "rule"))
        items.append(text(amount(share * top), Point(LEFT - 1.8, y - NUMBER / 2), NUMBER, "end"))
    items.append(text("0", Point(LEFT - 1.8, MIDDLE + 0.8), NUMBER, "end"))
    for degrees in range(0, 361, 90):
        x = _x(degrees)
        items.append(Line(Point(x, MIDDLE - HALF), Point(x, MIDDLE + HALF), 0.12, "rule"))
        if math.fabs(degrees - turned) > 22.0:
            items.append(text(f"{degrees}°", Point(x, MIDDLE - HALF - 4.4), NUMBER, "middle"))
    for degrees in range(30, 360, 30):
        items.append(Line(Point(_x(degrees), MIDDLE - 0.7), Point(_x(degrees), MIDDLE + 0.7), 0.25, "ink"))
    items.append(Line(Point(6.0, MIDDLE), Point(LEFT, MIDDLE), 0.25, "ink"))
    items.append(Group((Line(Point(LEFT, MIDDLE), Point(RIGHT, MIDDLE), 0.25, "ink"),), name="axis"))
    return items


def _cursor(turned: float) -> Group:
    """The moment that is looked at: a line with a flag."""
    at, low = _x(turned), MIDDLE - HALF - 5.4
    wide = width_of(f"{turned:g}°", NUMBER, "bold") / 2 + 1.2
    flag = Box(at - wide, low, at + wide, MIDDLE - HALF - 0.8)
    return Group(
        (Line(Point(at, MIDDLE - HALF - 0.8), Point(at, MIDDLE + HALF + 1.5), 0.4, "accent"),
         Shape(flag.corners, 0.0, "accent", "accent"),
         text(f"{turned:g}°", Point(at, low + 1.1), NUMBER, "middle", "sheet", "bold")),
        name="cursor",
    )  # fmt: skip


def _spread(heights: Sequence[float]) -> list[float]:
    """Return heights moved apart so that names beside the curves never touch, in the same order from below."""
    order = sorted(range(len(heights)), key=lambda index: heights[index])
    placed = [0.0] * len(heights)
    low = MIDDLE - HALF - 2.0
    for index in order:
        placed[index] = max(heights[index], low)
        low = placed[index] + APART
    high = MIDDLE + HALF + 2.0
    for index in reversed(order):
        placed[index] = min(placed[index], high)
        high = placed[index] - APART
    return placed


def _ends(waves: Sequence[Wave], scale: float, look: PhasorStyles) -> dict[str, list[Item]]:
    """The names of the curves at their ends, with the ticks by which lines are told apart."""
    heights = [MIDDLE + scale * wave.at(0.0) for wave in waves]
    named: dict[str, list[Item]] = {}
    for wave, height, place in zip(waves, heights, _spread(heights), strict=True):
        ink, width = look.inks[wave.key], 1.0 if wave.key == SUM_KEY else 0.5
        start, knee, end = Point(RIGHT, height), Point(RIGHT + 1.5, place), Point(RIGHT + 6.0, place)
        items: list[Item] = [Line(start, knee, 0.25, ink), Line(knee, end, width, ink)]
        items += ticks(knee, end, look.ticks.get(wave.key, 0), width, ink, CLASSROOM, 0.5)
        name = Point(RIGHT + 7.5, place - TAG / 2)
        items.append(text(look.tags[wave.key], name, _fitting_tag(look, wave.key), "start"))
        named[wave.key] = items
    return named


def _fitting_tag(look: PhasorStyles, key: str) -> float:
    """Capitals at which a name fits between the curves and the edge."""
    room = WIDTH - RIGHT - 8.5
    return min(TAG, TAG * room / max(width_of(look.tags[key], TAG), 1e-9))


def _curve(wave: Wave, scale: float, ink: Ink, width: float) -> Shape:
    places = [
        Point(_x(360.0 * step / CURVE_STEPS), MIDDLE + scale * wave.at(360.0 * step / CURVE_STEPS))
        for step in range(CURVE_STEPS + 1)
    ]
    return Shape(tuple(places), width, ink, None, closed=False)


@dataclass(frozen=True, slots=True)
class _Turned:
    """An arrow at one moment: its true tip, and by how much it stands aside if it lies on another."""

    tip: Point
    shift: Point | None

    @property
    def seen(self) -> tuple[Point, Point]:
        """The ends of the arrow that is seen."""
        return (CENTRE, self.tip) if self.shift is None else (CENTRE.plus(self.shift), self.tip.plus(self.shift))


def _turned(waves: Sequence[Wave], turned: float, scale: float) -> dict[str, _Turned]:
    """Every arrow at one moment, by key; those on one line stand beside each other, as on a sheet."""
    tips = {wave.key: CENTRE.moved(wave.peak * scale, phasor.angle(wave.value) + turned) for wave in waves}
    lanes = Lanes([CENTRE, *tips.values()], None, ASIDE)
    return {key: _Turned(tip, lanes.shift(CENTRE, tip)) for key, tip in tips.items()}


def _arrow(key: str, place: _Turned, width: float, look: PhasorStyles) -> tuple[Item, ...]:
    """An arrow with its ticks; one that stands aside with the lines that carry its ends over."""
    ink, start, tip = look.inks[key], *place.seen
    head = min(HEAD, 0.4 * geometry.distance(start, tip))
    arrow = Arrow(CENTRE, place.tip, width, ink, head, cased=ink == "black")
    across = ticks(start, tip, look.ticks.get(key, 0), width, ink, CLASSROOM)
    if place.shift is None:
        return (Group((arrow, *across), phasor=key),)
    return (*carried(arrow, place.shift), aside(arrow, place.shift, key, copy=False), Group(tuple(across)))


def _arrow_tags(
    waves: Sequence[Wave], places: Mapping[str, _Turned], turned: float, look: PhasorStyles
) -> dict[str, tuple[Item, ...]]:
    """The names of the arrows at their tips, clear of every arrow and of each other."""
    ground = labels.LabelArea(Box(2.0, 1.0, LEFT - 12.0, HEIGHT - 1.0))
    for place in places.values():
        ground.add(labels.Segment(*place.seen, "", 1.0))
        ground.add(labels.Segment(place.tip, Point(LEFT, place.tip.y), "", 0.3))
    return {
        wave.key: beside(
            ground, ToolNote(look.tags[wave.key], places[wave.key].seen[1], phasor.angle(wave.value) + turned), TAG,
            "regular", "ink",
        )
        for wave in waves
    }  # fmt: skip


def waves_page(
    waves: Sequence[Wave], turned: float, look: PhasorStyles, amount: Callable[[float], str], title: str
) -> Page:
    """Phasors turned by an angle, beside their curves over one period; the last is the sum.

    ``amount``: a number of the vertical axis as text.
    """
    visible = [wave for wave in waves if wave.value]
    top = top_of(visible)
    scale = HALF / top
    items: list[Item] = [*_axes(top, turned, amount)]
    largest = max((wave.peak for wave in visible), default=0.0)
    items.append(Circle(CENTRE, largest * scale, 0.15, "rule"))
    places, ends, at = _turned(visible, turned, scale), _ends(visible, scale, look), _x(turned)
    tags = _arrow_tags(visible, places, turned, look)
    over: list[Item] = [_cursor(turned)]
    for wave in visible:
        ink, width = look.inks[wave.key], 1.0 if wave.key == SUM_KEY else 0.5
        height = MIDDLE + scale * wave.at(turned)
        part: tuple[Item, ...] = (
            Group((_curve(wave, scale, ink, width),), name=f"wave-{wave.key}"),
            *_arrow(wave.key, places[wave.key], width, look),
            Line(places[wave.key].tip, Point(at, height), 0.2, ink, (1.2, 0.8)),
            *ends[wave.key], *tags[wave.key],
        )  # fmt: skip
        dot = Circle(Point(at, height), 1.0, 0.5, ink, "sheet")
        name = "answer" if wave.key == SUM_KEY else "part"
        items.append(Group(part, name=name))
        over.append(Group((dot,), name=name))
    over.append(Circle(CENTRE, 0.9, 0.35, "ink", "sheet"))
    return Page(WIDTH, HEIGHT, (*items, *over), title, title)
