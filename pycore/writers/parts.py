"""What all writers share: the parts of an arrow, of a cased line, and of a line of text."""

import math
import re
from collections.abc import Iterator
from dataclasses import replace
from typing import NamedTuple, TypeVar

from pycore import lettering
from pycore.drawing import Arc, Arrow, Ink, Line, Run, Shape, Text
from pycore.errors import DrawingError
from pycore.geometry import Point, distance

EXACT_WIDTH = 0.1
"""Width in mm of the line that runs from the tail to exactly the tip, hidden by the shaft."""

_SLOPE = 0.17  # half the head's breadth over its length
_NOTCH = 0.85  # the middle of the head's back, as a part of the head's length from the tip
_SHAFT_END = 0.75  # where the shaft stops: inside the head, so that no seam shows
_SHORT_HEAD = 0.6  # an arrow shorter than its head gets a head of this part of its length

# What XML 1.0 cannot hold, and lone surrogates, which UTF-8 and UTF-16 cannot.
_UNWRITABLE = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")

Stroked = TypeVar("Stroked", Line, Arc)


def clean(text: str) -> str:
    """Return a text with characters that no file format can contain replaced by U+FFFD."""
    return _UNWRITABLE.sub("\ufffd", text)


def strokes(stroked: Stroked) -> tuple[Stroked, ...]:
    """Return a line or arc as it is drawn: once, or in white ink as ink with white between."""
    if stroked.ink != "white":
        return (stroked,)
    return (
        replace(stroked, ink="ink"),
        replace(stroked, width=stroked.width - 2 * _casing(stroked.width)),
    )


def _casing(width: float) -> float:
    """Return the width in mm of each of the two ink lines of a cased line."""
    return 0.26 * width


class ArrowParts(NamedTuple):
    """The parts of an arrow: the exact line first, then shafts and heads in drawing order."""

    exact: Line
    visible: tuple[Line | Shape, ...]


def arrow_parts(arrow: Arrow) -> ArrowParts:
    """Return the thin exact line from tail to tip, and the visible shaft and head.

    An arrow of length zero has only its exact line; one shorter than its head gets a smaller head. Raises DrawingError
    if an end is not a finite number.
    """
    length = distance(arrow.tail, arrow.tip)
    if not math.isfinite(length):
        raise DrawingError(f"an arrow runs from {arrow.tail} to {arrow.tip}")
    cased = arrow.cased or arrow.ink == "white"
    outer: Ink = "ink" if cased else arrow.ink
    exact = Line(arrow.tail, arrow.tip, min(EXACT_WIDTH, arrow.width), outer)
    if length == 0.0:
        return ArrowParts(exact, ())
    back = arrow.tail.minus(arrow.tip).times(1.0 / length)
    head = arrow.head if arrow.head < length else _SHORT_HEAD * length
    width = min(arrow.width, _SLOPE * head) if 0.0 < head < arrow.head else arrow.width
    visible = _solid(arrow, back, head, width, outer)
    if cased:
        visible += _filling(arrow, back, head, width)
    return ArrowParts(exact, visible)


def _solid(arrow: Arrow, back: Point, head: float, width: float, ink: Ink) -> tuple[Line | Shape, ...]:
    """Shaft and head in one ink; the point of the head is exactly at the tip."""
    end = arrow.tip.plus(back.times(_SHAFT_END * head))
    shaft = Line(arrow.tail, end, width, ink)
    return (shaft, _head(arrow.tip, back, head, ink)) if head > 0.0 else (shaft,)


def _filling(arrow: Arrow, back: Point, head: float, width: float) -> tuple[Line | Shape, ...]:
    """The ink's own colour between the lines of the casing, at the same distance from every edge."""
    edge = _casing(width)
    sideways = edge * math.sqrt(1.0 + _SLOPE * _SLOPE) / _SLOPE
    inner = head - sideways - 1.5 * edge
    point = arrow.tip.plus(back.times(sideways if inner > 0.0 else head))
    end = point.plus(back.times(_SHAFT_END * max(inner, 0.0)))
    shaft = Line(arrow.tail.minus(back.times(edge)), end, width - 2 * edge, arrow.ink)
    return (shaft, _head(point, back, inner, arrow.ink)) if inner > 0.0 else (shaft,)


def _head(point: Point, back: Point, head: float, ink: Ink) -> Shape:
    """A slim triangle with a notched back."""
    (x, y), (along, up), slope, notch = point, back, _SLOPE * head, _NOTCH * head
    base_x, base_y, side_x, side_y = x + along * head, y + up * head, -up * slope, along * slope
    corners = (
        point, Point(base_x + side_x, base_y + side_y),
        Point(x + along * notch, y + up * notch), Point(base_x - side_x, base_y - side_y),
    )  # fmt: skip
    return Shape(corners, 0.0, ink, ink)


class PlacedRun(NamedTuple):
    """A run with the start of its baseline (not turned, mm, y upwards) and its width (mm)."""

    run: Run
    at: Point
    width: float


def placed_runs(text: Text) -> Iterator[PlacedRun]:
    """Return the places of all runs that contain characters, before the text is turned about ``at``."""
    widths = [lettering.run_width(run) for run in text.runs]
    along = text.at.x - math.fsum(widths) * {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor]
    for run, width in zip(text.runs, widths, strict=True):
        if run.text:
            yield PlacedRun(run, Point(along, text.at.y + run.rise), width)
        along += width
