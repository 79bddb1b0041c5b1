"""Requests of a pile of photographs that measure: which sheet a code opens, a drawing judged, the row in hand."""

from collections.abc import Mapping
from typing import Any

from pycore.calculators.registry import CALCULATORS
from pycore.errors import InputError
from pycore.pages import pile as page
from pycore.pages.pile import MarkedDrawing
from pycore.pages.pile_marks import marked
from pycore.pages.pile_sheet import kept_set, set_for, sheet_of
from pycore.practice import codes
from pycore.practice.codes import CodeError
from pycore.practice.photograph import PhotoJudgement, PhotoUnusableError
from pycore.practice.task import NO_LIMITS, Limits
from pycore.render import photograph
from pycore.render.elements import Markup
from pycore.render.pile import look_html
from pycore.render.refusals import refused
from pycore.sums.photograph import photo_task

LONGEST_TEXT = 4_000


def _sheet(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the sheet of a QR code or a typed code: its page, its form, where its marks are."""
    text = request.get("text")
    typed = text[:LONGEST_TEXT] if isinstance(text, str) else ""
    found = sheet_of(typed, kept_set(request.get("set"), request.get("roll")))
    want = photo_task(found.page, found.form)
    return {
        "ok": True, "page": found.page.slug, "form": dict(found.form), "code": found.code,
        "group": "" if found.group is None else str(found.group),
        "editions": [[[place.x, place.y] for _, place in numbered] for numbered in (want.numbered, want.older)],
    }  # fmt: skip


def _judged(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return a drawing judged from its points, as its row has it, with the sentences and lines of its photograph."""
    calculator = CALCULATORS.get(str(request.get("sheet")))
    form = request.get("form")
    if calculator is None or not isinstance(form, dict):
        raise photograph.NoPhotoError
    texts = {str(key): value for key, value in form.items() if isinstance(value, str)}
    try:
        want, measured = photograph.judged(calculator, request, texts)
    except PhotoUnusableError as problem:
        return photograph.refused_reply(problem, request, photo_task(calculator, texts))
    if measured is None:
        return {"ok": True}
    drawing = marked(want, calculator.task(texts), measured, _limits(request))
    html, announced = photograph.result_html(want, measured, sheet=True, held=False)
    return {
        "ok": True, "drawing": _data(drawing), "points": _places(measured), "announce": announced,
        "overlay": photograph.overlay_of(measured), "result": str(html),
    }  # fmt: skip


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
    }  # fmt: skip


def _places(measured: PhotoJudgement) -> dict[str, list[float]]:
    return {name: [round(place.x, 2), round(place.y, 2)] for name, place in measured.places.items()}


def _look(request: Mapping[str, Any]) -> dict[str, Any]:
    """Return the row in hand; with its points also what its photograph shows."""
    pile = page.read_pile(request)
    row = next((one for one in pile.rows if one.id == request.get("row")), None)
    if row is None:
        return {"ok": True, "regions": {"look": ""}, "overlay": []}
    judged = _judged(request) if row.state == "judged" and isinstance(request.get("taps"), dict) else {}
    result = Markup.trusted(judged["result"]) if "result" in judged else None
    return {"ok": True, "regions": {"look": str(look_html(row, result))}, "overlay": judged.get("overlay", [])}


MOVES = {"sheet": _sheet, "judge": _judged, "look": _look}


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
