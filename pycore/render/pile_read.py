"""Requests of a pile of photographs that measure: which sheet a code opens, a drawing judged, the row in hand."""

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from pycore import quantity
from pycore.accuracy.hand import ONE_LENGTH
from pycore.errors import InputError
from pycore.geometry import Point
from pycore.pages import pile as page
from pycore.pages.pile import MarkedDrawing
from pycore.pages.pile_marks import marked
from pycore.pages.pile_papers import kept_papers, paper_place
from pycore.pages.pile_sheet import PileSheet, kept_set, set_for, sheet_of
from pycore.pages.pile_to_papers import into_papers
from pycore.practice import codes
from pycore.practice.codes import CodeError
from pycore.practice.photograph import PhotoJudgement, PhotoUnusableError
from pycore.practice.task import NO_LIMITS, Limits, Task
from pycore.projection import Projection
from pycore.render import photograph
from pycore.render.elements import Markup, h, join
from pycore.render.phrase import phrase_html
from pycore.render.pile import look_html, question_html
from pycore.render.pile_judged import frame_of, lines_read, page_of
from pycore.render.refusals import refused
from pycore.sums.photograph import PhotoTask, photo_task
from pycore.words import pile as words
from pycore.words import plain
from pycore.words import strokes as stroke_words

if TYPE_CHECKING:
    from pycore.render.strokes import ReadDrawing
    from pycore.sums.strokes import StrokesTask

LONGEST_TEXT = 4_000


def _sheet(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the sheet of a QR code or a typed code: its page, its form, where its marks are."""
    text = request.get("text")
    typed = text[:LONGEST_TEXT] if isinstance(text, str) else ""
    at = paper_place(kept_papers(request.get("papers")), typed)
    if at is not None:
        found = PileSheet(at.question.group.topic, at.form, at.code, None)
    else:
        found = sheet_of(typed, kept_set(request.get("set"), request.get("roll")))
    want = photo_task(found.page, found.form)
    return {
        "ok": True, "page": found.page.slug, "form": dict(found.form), "code": found.code,
        "group": "" if found.group is None else str(found.group),
        "editions": [[[place.x, place.y] for _, place in numbered] for numbered in (want.numbered, want.older)],
    }  # fmt: skip


def _judged(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return a drawing judged from its points, as its row has it, with the sentences and lines of its photograph."""
    calculator, texts = page_of(request)
    try:
        want, measured = photograph.judged(calculator, request, texts)
    except PhotoUnusableError as problem:
        return photograph.refused_reply(problem, request, photo_task(calculator, texts))
    if measured is None:
        return {"ok": True}
    projection = photograph.projected(request, want, photograph.photo_of(request["photo"]))
    return _reply(want, calculator.task(texts), measured, projection, request)


def _reply(
    want: PhotoTask, task: Task, measured: PhotoJudgement, projection: Projection, request: Mapping[str, Any]
) -> dict[str, Any]:
    drawing = marked(want, task, measured, _limits(request))
    html, announced = photograph.result_html(want, measured, sheet=True, held=False)
    return {
        "ok": True, "drawing": _data(drawing), "points": _places(measured), "announce": announced,
        "overlay": photograph.overlay_of(measured), "lines": lines_read(measured, projection), "result": str(html),
    }  # fmt: skip


def _read(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return what to look for in a photograph; with its strokes the drawing as its row has it, or what is to be asked,
    each place in the photograph's pixels."""
    from pycore.render import strokes  # A part of its own, which comes after the photograph is open.
    from pycore.sums.strokes import strokes_task

    calculator, texts = page_of(request)
    task = strokes_task(calculator, texts)
    try:
        if "strokes" not in request:
            return {"ok": True, "ground": strokes.ground_of(task, request)}
        found = strokes.read(task, request)
    except PhotoUnusableError as problem:
        return photograph.refused_reply(problem, request, task.photo)
    in_hand = request.get("move") == "look"
    more = {"figures": _figures(found, task, len(request["strokes"]))} if in_hand else {}
    if found.judged is None:
        return {"ok": True, **_asked(found, task), **more}
    want = photograph.for_drawing(task.photo, found.reading.drawing)
    problem_task = calculator.task({**texts, "method": found.reading.method})
    return {**_reply(want, problem_task, found.judged, found.projection, request), **more}


def _asked(found: "ReadDrawing", task: "StrokesTask") -> dict[str, Any]:
    """Return the first thing that is to be asked: another reading of the whole, or one point."""
    seen = found.projection.seen
    points = {point.name: _pair(seen(point.place)) for point in found.reading.points if point.sure}
    if found.is_asked_whole:
        readings = [
            {"method": one.method, "settled": {name: list(at) for name, at in one.points.items()},
             "marks": [_pair(seen(at)) for at in one.points.values()]}
            for one in found.reading.readings
        ]  # fmt: skip
        return {"why": stroke_words.why(found.reading.why), "readings": readings, "point": None, "found": []}
    labels = photograph.labels_of(task.photo, found.reading.drawing)
    if not found.open_points:
        return {"why": stroke_words.why(found.reading.why), "readings": [], "point": None, "found": []}
    name, choices = found.open_points[0]
    asked = {
        "name": name, "label": plain(labels[name]), "method": found.reading.method,
        "choices": [{"place": list(place), "mark": _pair(seen(place))} for place in choices],
        "left": len(found.open_points),
    }  # fmt: skip
    return {"why": "", "readings": [], "point": asked, "found": list(points.values())}


def _figures(found: "ReadDrawing", task: "StrokesTask", strokes: int) -> Markup:
    """Return every point that was read with its place on the paper, so that it can be compared with a ruler."""
    mark = task.photo.notation.mark
    labels = photograph.labels_of(task.photo, found.reading.drawing)
    rows = [
        h("tr", None, h("th", {"scope": "row"}, phrase_html(labels[point.name])),
          *(h("td", None, quantity.fixed(value, 1, mark)) for value in point.place),
          h("td", None, quantity.fixed(ONE_LENGTH * point.sigma, 1, mark)),
          h("td", None, words.SURE if point.sure else words.ASKED))
        for point in found.reading.points if point.name in labels
    ]  # fmt: skip
    head = h("tr", None, [h("th", {"scope": "col"}, name) if name else h("td") for name in words.READ_HEAD])
    table = h("table", None, h("thead", None, head), h("tbody", None, rows))
    return h("details", {"class": "more"}, h("summary", None, words.READ_IN_MM),
             h("p", None, words.read_from(strokes)), h("div", {"class": "photo-table"}, table))  # fmt: skip


def _pair(place: Point) -> list[float]:
    return [round(place.x, 1), round(place.y, 1)]


def _limits(request: Mapping[str, Any]) -> Limits:
    """Return what the class set of a sheet allows."""
    kept = kept_set(request.get("set"), request.get("roll"))
    try:
        return set_for(codes.read(str(request.get("group"))), kept).limits
    except (CodeError, InputError):
        return NO_LIMITS


def _data(drawing: MarkedDrawing) -> dict[str, Any]:
    return {
        "found": drawing.found, "asked": drawing.asked, "unit": drawing.unit, "off": drawing.off, "band": drawing.band,
        "parts": list(drawing.parts), "mistakes": list(drawing.mistakes),
        "angle": drawing.angle, "byPart": list(drawing.by_part),
    }  # fmt: skip


def _places(measured: PhotoJudgement) -> dict[str, list[float]]:
    return {name: [round(place.x, 2), round(place.y, 2)] for name, place in measured.places.items()}


def _look(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the row in hand; with its points also what its photograph shows."""
    pile = page.read_pile(request)
    row = next((one for one in pile.rows if one.id == request.get("row")), None)
    if row is None:
        return {"ok": True, "regions": {"look": ""}, "overlay": [], "frame": []}
    seen: dict[str, Any] = {}
    if row.state in ("judged", "asked") and isinstance(request.get("strokes"), list):
        seen = _read(request)
    elif row.state == "judged" and isinstance(request.get("taps"), dict):
        seen = _judged(request)
    frame = frame_of(request)
    result = Markup.trusted(seen["result"]) if "result" in seen else None
    question = question_html(seen) if row.state == "asked" and "why" in seen else None
    shown: dict[str, Any] = {name: seen[name] for name in ("readings", "point", "found", "lines") if name in seen}
    regions = {"look": str(join(look_html(row, result, question), seen.get("figures")))}
    return {"ok": True, "regions": regions, "overlay": seen.get("overlay", []), "frame": frame, **shown}


def _whole_sheet(request: Mapping[str, Any]) -> dict[str, Any]:
    return {"ok": True, "frame": frame_of(request)}


def _into_papers(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the answers to each question paper with those of the accepted drawings put in."""
    pile = page.read_pile(request)
    listed = request.get("papers")
    given = [one for one in listed if isinstance(one, dict)] if isinstance(listed, list) else []
    return {"ok": True, "papers": into_papers(pile, [one.get("text") for one in given])}


MOVES = {
    "paper": _into_papers, "frame": _whole_sheet, "sheet": _sheet, "judge": _judged, "strokes": _read, "look": _look,
}  # fmt: skip


def reply(request: Mapping[str, Any]) -> dict[str, Any]:
    """Answer a request ``pile``: which sheet a code opens, a drawing judged, the row in hand.

    Raises NoPhotoError for an unknown request.
    """
    move = MOVES.get(str(request.get("move")))
    if move is None:
        raise photograph.NoPhotoError
    try:
        return move(request)
    except InputError as error:
        return refused(error)
