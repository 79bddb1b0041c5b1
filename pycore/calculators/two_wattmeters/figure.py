"""The phasor diagram of two wattmeters: line voltages, line currents, each current's part along its voltage."""

from collections.abc import Iterator
from itertools import pairwise, product

from pycore import trig
from pycore.calculators.two_wattmeters.circuit import METERS
from pycore.drawing import Arc, Arrow, Circle, Item, Line, Page, Shape
from pycore.geometry import ORIGIN, Point, bounds, dot
from pycore.phasor import wrap
from pycore.sheet.lettered import text
from pycore.words.phrase import Symbol

WIDTH = 120.0
VOLTAGE, CURRENT = 46.0, 36.0
CAPITALS = 3.4
MARGIN = 7.0
RIGHT_ANGLE = 90.0
WIDE = 40.0
"""Degrees from which an angle has room for its own size."""
RADII = (13.0, 21.0)
"""Of the arcs of both angles."""
OUTSIDE = 30.0
DIGIT, CLEAR, CHORDS = 2.1, 0.6, 24
"""Breadth of a figure, the room about a size (mm), the chords by which an arc is told from its neighbours."""


def _pair(start: Point, voltage: float, lag: float, names: tuple[Symbol, Symbol], radius: float) -> list[Item]:
    """One meter: its voltage (filled head), its current (open head), the angle between, the part along."""
    tip, end = start.moved(VOLTAGE, voltage), start.moved(CURRENT, voltage - lag)
    unit = ORIGIN.moved(1.0, voltage)
    foot = start.plus(unit.times(dot(end.minus(start), unit)))
    items: list[Item] = [Arrow(start, tip, 0.5, "ink", 4.0)]
    barbs = [end.moved(-4.5, voltage - lag + side) for side in (22.0, -22.0)]
    items.append(Line(start, end, 0.5, "blue", (5.0, 1.2)))
    items.append(Shape((barbs[0], end, barbs[1]), 0.5, "blue", None, closed=False))
    if dot(end.minus(start), unit) < 0:
        # The voltage's line is extended backwards, where the part of a meter that reads backwards lies.
        items.append(Line(start, foot, 0.2, "ink-2"))
    items += [Line(end, foot, 0.3, "ink-2", (1.6, 1.0)), Circle(foot, 0.8, 0.3, "ink", "sheet")]
    sweep = -lag
    if lag > 3.0 or lag < -3.0:
        items.append(Arc(start, radius, voltage, sweep, 0.3, "ink-2"))
    items.append(_label((names[0],), tip, voltage))
    items.append(_label((names[1],), end, voltage - lag))
    return items


def _chords(arc: Arc) -> Iterator[tuple[Point, Point]]:
    turns = [arc.start + arc.sweep * step / CHORDS for step in range(CHORDS + 1)]
    ends = [arc.centre.moved(arc.radius, turn) for turn in turns]
    return pairwise(ends)


def _strokes(items: list[Item]) -> list[tuple[Point, Point]]:
    """What is drawn, as straight pieces."""
    pieces: list[tuple[Point, Point]] = []
    for item in items:
        if isinstance(item, Arrow):
            pieces.append((item.tail, item.tip))
        elif isinstance(item, Line):
            pieces.append((item.start, item.end))
        elif isinstance(item, Arc):
            pieces += _chords(item)
    return pieces


def _place(items: list[Item], voltage: float, lag: float, size_text: str, radius: float) -> tuple[float, float]:
    """Where an angle's size stands: degrees and distance from the common point. Inside a wide angle, beyond the arc of
    a narrow one; where lines stand in the way, as near to that as nothing touches it."""
    strokes = _strokes(items)
    usual = 0.62 * radius if lag >= WIDE or lag <= -WIDE else radius + 4.0
    within = [voltage - share * lag for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)]
    # Beside a narrow angle, where there is no room within.
    beside = [end + side * off for off in (8.0, 12.0, 16.0, 22.0, 30.0) for end, side in _ends(voltage, lag)]
    half = Point(DIGIT * len(size_text) / 2, CAPITALS / 2)
    for degrees, away in product([*within, *beside], (usual, radius + 4.0, radius + 7.0, OUTSIDE)):
        at = ORIGIN.moved(away, degrees)
        box = bounds((at.minus(half), at.plus(half))).grown(CLEAR)
        if not any(box.meets_segment(*stroke) for stroke in strokes):
            return degrees, away
    return within[0], usual


def _ends(voltage: float, lag: float) -> tuple[tuple[float, float], ...]:
    """Both ends of an angle, each with the sense that leads away from it."""
    outwards = 1.0 if lag > 0 else -1.0
    return (voltage, outwards), (voltage - lag, -outwards)


def _label(label: tuple[Symbol, ...] | str, at: Point, degrees: float, away: float = 5.0) -> Item:
    place = at.moved(away, degrees)
    return text(label, Point(place.x, place.y - CAPITALS / 2), CAPITALS, "middle")


def phasors(lag: float, angles: tuple[str, str], title: str, meters: str) -> Page:
    """The diagram for a balanced load whose currents lag their phase voltages by ``lag`` degrees; V1 points up.

    ``angles``: the two angles between voltage and current as they are written; ``meters``: a key of ``METERS``.
    """
    pair = METERS[meters]
    feet = [
        (wrap(RIGHT_ANGLE + one.voltage_angle), wrap(one.voltage_angle - one.current_angle + lag)) for one in pair
    ]
    reach = [ORIGIN.moved(CURRENT * trig.cosine(between), voltage) for voltage, between in feet]
    reach += [ORIGIN.moved(VOLTAGE + MARGIN + 3.0, voltage) for voltage, _ in feet]
    reach += [ORIGIN.moved(CURRENT + MARGIN + 3.0, voltage - between) for voltage, between in feet]
    names = [(Symbol("V", f"{one.line}{one.to}"), Symbol("I", str(one.line))) for one in pair]
    drawn = [item for n in (0, 1) for item in _pair(ORIGIN, *feet[n], names[n], RADII[n])]
    places = [_place(drawn, *feet[n], angles[n], RADII[n]) for n in (0, 1)]
    reach += [ORIGIN.moved(away + CAPITALS, degrees) for degrees, away in places]
    box = bounds((*reach, ORIGIN))
    height = box.height + 2 * MARGIN
    start = Point(WIDTH / 2 - box.centre.x, height / 2 - box.centre.y)
    items = [item for n in (0, 1) for item in _pair(start, *feet[n], names[n], RADII[n])]
    items += [_label(size_text, start, *place) for size_text, place in zip(angles, places, strict=True)]
    return Page(WIDTH, height, tuple(items), title, title)
