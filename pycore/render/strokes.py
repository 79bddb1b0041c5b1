"""A drawing read from the strokes in its photograph: the request ``strokes``, in three steps.

With the form alone: where the sheet's marks are, which part of the paper to read and what is printed there. With the
photo and its marks: the projection. With strokes: the reading, and its judgement once nothing is left to ask.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pycore.geometry import Point
from pycore.practice.drawn import JudgedLine
from pycore.practice.photograph import PhotoJudgement, PhotoUnusableError, measure_read
from pycore.practice.stroke_reading import StrokeReading, guides_of, needed_points, read_strokes
from pycore.practice.stroke_sums import drawn_feet
from pycore.practice.strokes import PencilStroke, StrokeSheet, stroke_of
from pycore.projection import Projection
from pycore.render import photograph
from pycore.render.photograph import NoPhotoError
from pycore.sums.page import SumPage
from pycore.sums.strokes import StrokesTask, strokes_task
from pycore.words import plain
from pycore.words import strokes as words

MOST_STROKES, LARGEST = 200, 2000.0
"""Strokes of a sheet, and mm: more is no reading of this site's script."""
PRESSED = 0.4
"""Standard uncertainty of a point that somebody set or chose, mm."""


def _numbers(value: object, count: int) -> tuple[float, ...]:
    if not (isinstance(value, list) and len(value) == count):
        raise NoPhotoError
    if not all(isinstance(one, int | float) and math.fabs(one) <= LARGEST for one in value):
        raise NoPhotoError
    return tuple(float(one) for one in value)


def _several(value: object, count: int) -> list[tuple[float, ...]]:
    if not isinstance(value, list) or len(value) > MOST_STROKES:
        raise NoPhotoError
    return [_numbers(one, count) for one in value]


def _stroke(value: object) -> PencilStroke | None:
    if not isinstance(value, dict):
        raise NoPhotoError
    x1, y1, x2, y2, dark = _numbers([value.get(name) for name in ("x1", "y1", "x2", "y2", "dark")], 5)
    runs, blind = ([(low, high) for low, high in _several(value.get(name), 2)] for name in ("runs", "blind"))
    heads, beside = (
        [(at, 1 if way > 0 else -1, clear) for at, way, clear in _several(value.get(name, []), 3)]
        for name in ("heads", "beside")
    )  # fmt: skip
    return stroke_of(Point(x1, y1), Point(x2, y2), dark, runs, blind, heads, beside)


def _strokes(value: object) -> list[PencilStroke]:
    if not isinstance(value, list) or len(value) > MOST_STROKES:
        raise NoPhotoError
    return [stroke for stroke in map(_stroke, value) if stroke is not None]


def _opened(task: StrokesTask) -> dict[str, Any]:
    places = {name: [[place.x, place.y] for _, place in numbered]
              for name, numbered in (("marks", task.photo.numbered), ("older", task.photo.older))}  # fmt: skip
    start = task.photo.origin
    return {"ok": True, **places, "box": list(task.box), "printed": _printed(task), "start": [start.x, start.y]}


def _printed(task: StrokesTask) -> dict[str, Any]:
    printed = task.printed
    return {"lines": printed.lines, "discs": printed.discs, "areas": printed.areas}


def _projected(projection: Projection) -> dict[str, Any]:
    lens = projection.lens
    return {"numbers": list(projection.numbers), "middle": list(lens.middle), "reach": lens.reach}


# The reading.


def _settled(request: Mapping[str, Any], task: StrokesTask) -> tuple[str, dict[str, Point | None]]:
    """The method and points that somebody has settled; None: not drawn."""
    settled = request.get("settled")
    if settled is None:
        return "", {}
    if not isinstance(settled, dict) or not isinstance(settled.get("points", {}), dict):
        raise NoPhotoError
    points: dict[str, Point | None] = {}
    for name, place in settled.get("points", {}).items():
        points[str(name)] = None if place is None else Point(*_numbers(place, 2))
    method = settled.get("method", "")
    if method and method not in {drawing.construction.method for drawing in task.drawings}:
        raise NoPhotoError
    return str(method), points


@dataclass(frozen=True, slots=True)
class ReadDrawing:
    """A drawing that was read: its projection, the reading, the points that somebody settled, and its judgement (None
    while something is asked)."""

    projection: Projection
    reading: StrokeReading
    settled: Mapping[str, Point | None]
    judged: PhotoJudgement | None

    @property
    def is_asked_whole(self) -> bool:
        """Whether the whole reading is asked, and not single points of it."""
        return bool(self.reading.why) and not self.settled

    @property
    def open_points(self) -> list[tuple[str, tuple[Point, ...]]]:
        """The points that are asked, each with the places to choose from."""
        unsure = [(point.name, point.choices) for point in self.reading.points if not point.sure]
        return [one for one in (*unsure, *self.reading.missing) if one[0] not in self.settled]


def read(task: StrokesTask, request: Mapping[str, Any]) -> ReadDrawing:
    """Read the drawing from the strokes of a request. Raises PhotoUnusableError and NoPhotoError."""
    projection = photograph.projected(request, task.photo, photograph.photo_of(request["photo"]))
    method, settled = _settled(request, task)
    drawings = [one for one in task.drawings if method in ("", one.construction.method)]
    sheet = StrokeSheet(_strokes(request["strokes"]), task.photo.origin, guides_of(drawings), task.box)
    reading = read_strokes(sheet, drawings)
    return ReadDrawing(projection, reading, settled, _judged(sheet, projection, reading, settled))


def ground_of(task: StrokesTask, request: Mapping[str, Any]) -> dict[str, Any]:
    """Return what the page's script is told of the paper. Raises PhotoUnusableError and NoPhotoError."""
    projection = photograph.projected(request, task.photo, photograph.photo_of(request["photo"]))
    return {"projection": _projected(projection), "box": list(task.box), "printed": _printed(task)}


def _judged(
    sheet: StrokeSheet, projection: Projection, reading: StrokeReading, settled: Mapping[str, Point | None]
) -> PhotoJudgement | None:
    """The judgement once every point is sure or settled; None before, and where nothing can be judged."""
    places, sigmas = {}, {}
    for point in reading.points:
        if settled.get(point.name, point.place) is not None and (point.sure or point.name in settled):
            places[point.name], sigmas[point.name] = point.place, point.sigma
    for name, place in settled.items():
        if place is not None:
            places[name], sigmas[name] = place, PRESSED
    needed = needed_points(reading.drawing)
    open_points = [name for name in needed if name not in places and name not in settled]
    if open_points or (reading.why and not settled):
        return None
    try:
        feet = drawn_feet(sheet, reading.drawing.construction, places)
        return measure_read(reading.drawing, projection, places, sigmas, feet)
    except PhotoUnusableError:
        return None


def _line(line: JudgedLine) -> dict[str, Any]:
    return {
        "ends": list(line.ends), "kind": line.kind, "name": plain(line.symbol), "band": line.band,
        "bands": list(line.bands), "length": line.length, "expected": line.expected, "angle": line.angle,
        "angleExpected": line.angle_expected, "off": line.off, "slips": [slip.key for slip in line.slips],
    }  # fmt: skip


def _points(reading: StrokeReading, settled: Mapping[str, Point | None]) -> list[dict[str, Any]]:
    return [
        {"name": point.name, "at": list(settled.get(point.name) or point.place), "sigma": round(point.sigma, 3),
         "sure": point.sure or point.name in settled}
        for point in reading.points if settled.get(point.name, point.place) is not None
    ]  # fmt: skip


def _asked(reading: StrokeReading, settled: Mapping[str, Point | None], task: StrokesTask) -> list[dict[str, Any]]:
    labels = photograph.labels_of(task.photo, reading.drawing)
    unsure = [(point.name, point.choices) for point in reading.points if not point.sure]
    return [
        {"name": name, "label": plain(labels[name]), "choices": [list(place) for place in choices],
         "notDrawn": words.NOT_DRAWN}
        for name, choices in (*unsure, *reading.missing) if name not in settled
    ]  # fmt: skip


def reply(page: SumPage[Any], request: Mapping[str, Any], form: Mapping[str, str]) -> dict[str, Any]:
    """Answer a request ``strokes``. Raises InputError for a form that cannot be used, NoPhotoError for an unknown
    request."""
    task = strokes_task(page, form)
    if task.photo.own:
        raise NoPhotoError
    if "photo" not in request:
        return _opened(task)
    try:
        if "strokes" not in request:
            return {"ok": True, "projection": ground_of(task, request)["projection"]}
        found = read(task, request)
    except PhotoUnusableError as problem:
        return photograph.refused_reply(problem, request, task.photo)
    reading, settled, judged = found.reading, found.settled, found.judged
    whole = found.is_asked_whole
    answer: dict[str, Any] = {
        "ok": True, "method": reading.method, "points": _points(reading, settled),
        "asked": _asked(reading, settled, task), "why": words.why(reading.why) if whole else "",
        "readings": [{"method": one.method, "points": {name: list(at) for name, at in one.points.items()}}
                     for one in reading.readings] if whole else [],
        "band": "", "lines": [], "overlay": [], "regions": {}, "announce": words.why(reading.why) if whole else "",
    }  # fmt: skip
    if judged is None:
        return answer
    held = request.get("veiled") is True
    shown = photograph.for_drawing(task.photo, reading.drawing)
    html, announced = photograph.result_html(shown, judged, sheet=True, held=held)
    return answer | {
        "band": judged.band, "lines": [] if held else [_line(line) for line in judged.lines],
        "overlay": [] if held else photograph.overlay_of(judged), "regions": {"photo-result": str(html)},
        "announce": announced,
    }  # fmt: skip


