"""The phasor diagram of two wattmeters: line voltages, line currents, each current's part along its voltage."""

from pycore import trig
from pycore.drawing import Arc, Arrow, Circle, Item, Line, Page, Shape
from pycore.geometry import ORIGIN, Point, bounds, dot
from pycore.phasor import wrap
from pycore.sheet.lettered import text
from pycore.words import Symbol

WIDTH = 120.0
VOLTAGE, CURRENT = 46.0, 36.0
CAPITALS = 3.4
MARGIN = 7.0
RIGHT_ANGLE = 90.0
WIDE = 40.0
"""Degrees from which an angle has room for its own size."""


def _pair(
    start: Point, voltage: float, lag: float, names: tuple[Symbol, Symbol], told: str, radius: float
) -> list[Item]:
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
    # Inside a wide angle, where nothing else is drawn; beyond the arc of a narrow one.
    away = 0.62 * radius if lag >= WIDE or lag <= -WIDE else radius + 4.0
    items.append(_label(told, start, voltage + sweep / 2, away))
    return items


def _label(told: tuple[Symbol, ...] | str, at: Point, degrees: float, away: float = 5.0) -> Item:
    place = at.moved(away, degrees)
    return text(told, Point(place.x, place.y - CAPITALS / 2), CAPITALS, "middle")


def phasors(lag: float, angles: tuple[str, str], title: str) -> Page:
    """The diagram for a balanced load whose currents lag their phase voltages by ``lag`` degrees; V1 points up.

    ``angles``: the two angles between voltage and current as they are written.
    """
    # From the L1 phase voltage: V12 leads by 30 degrees, V32 stands at 90; the picture is turned so that V1 is up.
    up = RIGHT_ANGLE
    feet = [(up + 30.0, wrap(30.0 + lag)), (up + 90.0, wrap(lag - 30.0))]
    reach = [ORIGIN.moved(CURRENT * trig.cosine(between), voltage) for voltage, between in feet]
    reach += [ORIGIN.moved(VOLTAGE + MARGIN + 3.0, angle) for angle in (up + 30.0, up + 90.0)]
    reach += [ORIGIN.moved(CURRENT + MARGIN + 3.0, angle) for angle in (up - lag, up + 120.0 - lag)]
    box = bounds((*reach, ORIGIN))
    height = box.height + 2 * MARGIN
    start = Point(WIDTH / 2 - box.centre.x, height / 2 - box.centre.y)
    items = _pair(start, *feet[0], (Symbol("V", "12"), Symbol("I", "1")), angles[0], 13.0)
    items += _pair(start, *feet[1], (Symbol("V", "32"), Symbol("I", "3")), angles[1], 21.0)
    return Page(WIDTH, height, tuple(items), title, title)
