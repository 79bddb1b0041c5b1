"""A photograph of a pile as pycore knows it: which sheet it shows, where that lies in it, and the drawing judged."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pycore import geometry
from pycore.calculators.registry import CALCULATORS
from pycore.geometry import Box
from pycore.practice.marking import LOOK, WRONG
from pycore.practice.photograph import PhotoJudgement, PhotoUnusableError
from pycore.projection import Projection
from pycore.render import photograph
from pycore.sheet.kinds import PROBLEM
from pycore.sums.page import SumPage
from pycore.sums.photograph import PhotoTask, photo_task


def page_of(request: Mapping[str, Any]) -> tuple[SumPage[Any], dict[str, str]]:
    """Return the calculator and the form of the sheet. Raises NoPhotoError."""
    calculator, form = CALCULATORS.get(str(request.get("sheet"))), request.get("form")
    if calculator is None or not isinstance(form, dict):
        raise photograph.NoPhotoError
    return calculator, {str(key): value for key, value in form.items() if isinstance(value, str)}


def frame_of(request: Mapping[str, Any]) -> list[float]:
    """Return the part of a photograph that its sheet fills: left, top, right and bottom in its pixels; nothing where
    that is not known."""
    if not isinstance(request.get("photo"), dict):
        return []
    calculator, texts = page_of(request)
    want = photo_task(calculator, texts)
    photo = photograph.photo_of(request["photo"])
    try:
        projection = photograph.projected(request, want, photo)
    except PhotoUnusableError:
        return []
    layout = calculator.case({**texts, "sheet": PROBLEM}).sheet_plan().layout
    seen = [projection.seen(corner) for corner in Box(0.0, 0.0, layout.width, layout.height).corners]
    box = geometry.bounds(seen)
    left, right = max(0.0, box.left), min(photo.width, box.right)
    top, bottom = max(0.0, box.bottom), min(photo.height, box.top)
    return [round(one, 1) for one in (left, top, right, bottom)] if left < right and top < bottom else []


@dataclass(frozen=True, slots=True)
class JudgedPhotograph:
    """A drawing judged in its photograph: what was to be drawn, how it was measured, and where paper is seen."""

    want: PhotoTask
    measured: PhotoJudgement
    projection: Projection


def judged_photograph(request: Mapping[str, Any]) -> JudgedPhotograph | None:
    """Return the drawing of a row whose points are known, by its strokes or by the points that were pressed; None where
    it cannot be judged."""
    calculator, texts = page_of(request)
    try:
        if isinstance(request.get("taps"), dict):
            want, measured = photograph.judged(calculator, request, texts)
            projection = photograph.projected(request, want, photograph.photo_of(request["photo"]))
        else:
            from pycore.render import strokes
            from pycore.sums.strokes import strokes_task

            task = strokes_task(calculator, texts)
            found = strokes.read(task, request)
            measured, projection = found.judged, found.projection
            want = photograph.for_drawing(task.photo, found.reading.drawing)
    except PhotoUnusableError:
        return None
    return None if measured is None else JudgedPhotograph(want, measured, projection)


def first_to_look_at(measured: PhotoJudgement) -> tuple[str, str] | None:
    """Return the ends of the first line that is wrong, else of the first that is to be looked at again."""
    for band in (WRONG, LOOK):
        for line in measured.lines:
            if line.band == band:
                return line.ends
    return None


def lines_read(measured: PhotoJudgement, projection: Projection) -> list[dict[str, Any]]:
    """Return the lines that were judged, in the pixels of their photograph; the first to look at comes last, upon
    the others."""
    first, places = first_to_look_at(measured), measured.places
    lines = sorted(measured.lines, key=lambda line: line.ends == first)
    return [
        {"role": "first" if line.ends == first else "read",
         "points": [[round(at.x, 1), round(at.y, 1)] for at in (projection.seen(places[end]) for end in line.ends)]}
        for line in lines if all(end in places for end in line.ends)
    ]  # fmt: skip
