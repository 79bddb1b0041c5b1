"""Waveforms over one period, and a spectrum: small pictures for the screen, 120 units wide."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from pycore import trig
from pycore.drawing import Group, Ink, Item, Line, Page, Shape
from pycore.geometry import Point
from pycore.phasor import angle, magnitude
from pycore.sheet.lettered import fitting, text

WIDTH = 120.0
LEFT, RIGHT, TOP, FOOT = 12.0, 112.0, 6.5, 9.0
WAVE_HEIGHT, BAR_HEIGHT = 38.0, 44.0
CAPITALS = 3.2
APART = 1.0
"""Distance between the numbers of two orders that stand side by side, at the least."""
STEPS = 180
ROOT_TWO = math.sqrt(2.0)


@dataclass(frozen=True, slots=True)
class Wave:
    """One wave: its label, its phasors by order (r.m.s.) and its ink."""

    label: str
    phasors: Mapping[int, complex]
    ink: Ink


def _values(wave: Wave) -> list[float]:
    """Instantaneous values over one period, in STEPS pieces; a sine of its own for each order."""
    turned = {number: (ROOT_TWO * magnitude(value), angle(value)) for number, value in wave.phasors.items()}
    return [
        math.fsum(size * trig.sine(at + number * 360.0 * step / STEPS) for number, (size, at) in turned.items())
        for step in range(STEPS + 1)
    ]


def waveforms(rows: Sequence[Sequence[Wave]], title: str) -> Page:
    """Rows of waves over one period of the fundamental, all at one scale; the last row is the neutral's."""
    drawn = [[(wave, _values(wave)) for wave in row] for row in rows]
    peak = max((math.fabs(value) for row in drawn for _, values in row for value in values), default=0.0) or 1.0
    height = len(rows) * WAVE_HEIGHT + FOOT
    items: list[Item] = []
    for index, row in enumerate(drawn):
        middle = height - (index + 0.5) * WAVE_HEIGHT
        items.append(Line(Point(LEFT, middle), Point(RIGHT, middle), 0.25, "ink-3"))
        factor = (WAVE_HEIGHT / 2 - TOP) / peak
        for place, (wave, values) in enumerate(row):
            points = tuple(
                Point(LEFT + (RIGHT - LEFT) * step / STEPS, middle + factor * value)
                for step, value in enumerate(values)
            )
            width = 0.9 if index == len(drawn) - 1 else 0.6
            items.append(Group((Shape(points, width, wave.ink, None, closed=False),), name=f"wave-{index}-{place}"))
        names = ", ".join(wave.label for wave, _ in row)
        items.append(text(names, Point(LEFT, middle + WAVE_HEIGHT / 2 - 4.5), CAPITALS))
    for degrees in (0, 90, 180, 270, 360):
        x = LEFT + (RIGHT - LEFT) * degrees / 360
        items.append(Line(Point(x, FOOT - 1.5), Point(x, FOOT), 0.25, "ink-2"))
        items.append(text(f"{degrees}°", Point(x, 2.0), CAPITALS, "middle"))
    items.append(Line(Point(LEFT, FOOT), Point(RIGHT, FOOT), 0.25, "ink-2"))
    return Page(WIDTH, height, tuple(items), title, title)


@dataclass(frozen=True, slots=True)
class Bar:
    """One order in the spectrum: largest line current and neutral current (A), and the neutral current as text."""

    order: int
    line: float
    neutral: float
    amount_text: str


def spectrum(bars: Sequence[Bar], names: tuple[str, str], title: str) -> Page:
    """Pairs of bars by order: the largest line (outlined) and the neutral (filled), told apart by fill."""
    most = max((max(bar.line, bar.neutral) for bar in bars), default=0.0) or 1.0
    height = BAR_HEIGHT + FOOT + 14.0
    factor = BAR_HEIGHT / most
    room = (RIGHT - LEFT) / max(len(bars), 1)
    wide = min(7.0, 0.3 * room)
    items: list[Item] = [Line(Point(LEFT, FOOT), Point(RIGHT, FOOT), 0.25, "ink-2")]
    for index, bar in enumerate(bars):
        middle = LEFT + (index + 0.5) * room
        items.append(_box(middle - wide - 0.4, wide, factor * bar.line, "ink", "sheet"))
        items.append(_box(middle + 0.4, wide, factor * bar.neutral, "blue", "blue"))
        items.append(text(str(bar.order), Point(middle, 2.0), CAPITALS, "middle"))
        above = FOOT + factor * max(bar.line, bar.neutral) + 1.5
        capitals = fitting(bar.amount_text, CAPITALS, room - APART)
        items.append(text(bar.amount_text, Point(middle, above), capitals, "middle"))
    key = height - 5.5
    items.append(_box(LEFT, 4.0, 4.0, "ink", "sheet", key - 0.4))
    items.append(text(names[0], Point(LEFT + 6.0, key), CAPITALS))
    items.append(_box(LEFT + 55.0, 4.0, 4.0, "blue", "blue", key - 0.4))
    items.append(text(names[1], Point(LEFT + 61.0, key), CAPITALS))
    return Page(WIDTH, height, tuple(items), title, title)


def _box(left: float, wide: float, tall: float, ink: Ink, fill: Ink, foot: float = FOOT) -> Shape:
    corners = (
        Point(left, foot), Point(left + wide, foot), Point(left + wide, foot + tall), Point(left, foot + tall),
    )  # fmt: skip
    return Shape(corners, 0.4, ink, fill)
