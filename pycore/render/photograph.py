"""Checking a drawing by its photograph: the reply line by line, and the request ``photo``."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from pycore import quantity
from pycore.constructions.methods import TIP_TO_TAIL
from pycore.constructions.names import SUM_KEY, arm_key
from pycore.geometry import Point
from pycore.practice.drawn import JudgedLine, ReferenceDrawing, first_direction, points_to_find
from pycore.practice.marking import ACCEPT, WRONG
from pycore.practice.photo_checks import check_hands, check_rings, check_view
from pycore.practice.photograph import Photo, PhotoJudgement, PhotoUnusableError, measure, measured_by, measured_by_one
from pycore.projection import Projection
from pycore.render.elements import Marks, Markup, h, join
from pycore.render.photo_panel import CORNERS, panel_html
from pycore.render.phrase import phrase_html
from pycore.render.refusals import BadRequestError
from pycore.sheet.media import PAPERS
from pycore.sums.page import SumPage
from pycore.sums.photograph import PhotoTask, photo_task
from pycore.words import photograph as words
from pycore.words import plain
from pycore.words.phrase import Phrase

LARGEST = 20_000.0
MARKS, OLDER = "marks", "older"
"""Which marks a photographed sheet has: those of today, or those of sheets printed before."""


class NoPhotoError(BadRequestError):
    """Raised for a request about a photograph that no page of this site makes."""


# The reply.


def _number(value: float, mark: str) -> str:
    return quantity.fixed(value, 1, mark)


def _pair(own: str, right: str | None) -> Markup:
    return join(own, " ", h("span", {"class": "photo-right"}, right) if right is not None else None)


def _angle(line: JudgedLine, mark: str, *, held: bool) -> Markup:
    """Return the protractor's reading, or how far a line is from its correct place."""
    if line.kind == "line" and line.angle is not None:
        right = None if held else f"{_number(line.angle_expected, mark)}°"
        return _pair(f"{_number(line.angle, mark)}°", right)
    off = f"{_number(math.fabs(line.off), mark)}°"
    return _pair(off, words.OFF_PARALLEL if line.kind == "dashed" else words.SHEET_TURN)


def _row(line: JudgedLine, mark: str, *, sheet: bool, held: bool) -> Markup:
    angle = _angle(line, mark, held=held) if sheet or line.kind != "first" else Markup.trusted("")
    marks: Marks = {"data-photo-line": "-".join(line.ends), "data-band": line.band}
    right = None if held or line.runs_on else _number(quantity.on_ruler(line.expected), mark)
    return h("tr", marks,
             h("th", {"scope": "row"}, phrase_html(name_of(line))),
             h("td", {"class": "off" if line.bands[0] != ACCEPT else None}, _pair(_number(line.length, mark), right)),
             h("td", {"class": "off" if line.bands[1] != ACCEPT else None}, angle),
             h("td", {"class": "verdict"}, _verdict(line)))  # fmt: skip


def name_of(line: JudgedLine) -> Phrase:
    """Return what a line is called."""
    return words.dashed(line.symbol) if line.kind == "dashed" else line.symbol


def line_texts(line: JudgedLine, mark: str) -> tuple[Phrase, str, str, str]:
    """Return a line as a table of texts has it: its name, its length and its angle with the right ones, the verdict."""
    own, right = _number(line.length, mark), _number(quantity.on_ruler(line.expected), mark)
    length = f"{own} mm" if line.runs_on else words.drawn_and_right(own, f"{right} mm")
    if line.kind == "line" and line.angle is not None:
        angle = words.drawn_and_right(f"{_number(line.angle, mark)}°", f"{_number(line.angle_expected, mark)}°")
    else:
        off = words.OFF_PARALLEL if line.kind == "dashed" else words.SHEET_TURN
        angle = f"{_number(math.fabs(line.off), mark)}° {off}"
    return name_of(line), length, angle, _verdict(line)


def _verdict(line: JudgedLine) -> str:
    return words.MIRRORED if line.mirrored and line.bands[0] == ACCEPT else words.BANDS[line.band]


def _table(measured: PhotoJudgement, mark: str, *, sheet: bool, held: bool) -> Markup:
    head = [h("th", {"scope": "col"}, text) if text else h("td") for text in words.HEAD]
    rows = [_row(line, mark, sheet=sheet, held=held) for line in measured.lines]
    return h("table", None, h("caption", None, words.OWN_CAPTION if held else words.CAPTION),
             h("thead", None, h("tr", None, head)), h("tbody", None, rows))  # fmt: skip


def _headline(measured: PhotoJudgement) -> Phrase:
    if measured.mirrored:
        return words.MIRRORED_DRAWING
    off = len([line for line in measured.lines if line.band == WRONG])
    if off:
        return words.some_off(off)
    good = words.GOOD_SO_FAR if measured.not_drawn else words.ALL_GOOD
    return good if measured.band == ACCEPT else words.look_again()


def _mistakes(measured: PhotoJudgement, mark: str) -> list[Phrase]:
    """Return what went wrong, line by line; what all lines have in common replaces the single lines."""
    if measured.longer:
        share = quantity.plain(round(100 * math.fabs(measured.longer), 1), mark)
        return [words.all_longer(share, longer=measured.longer > 0)]
    if measured.shifted:
        return [words.all_shifted(quantity.plain(round(math.fabs(measured.shifted)), mark))]
    phrases: list[Phrase] = []
    if measured.mirrored:
        phrases.append(words.look_of("mirrored"))
    for line in measured.lines:
        phrases += [words.slip_line(slip.name, slip.look) for slip in line.slips]
        if line.band == WRONG and not line.slips and not (line.mirrored and line.bands[0] != WRONG):
            phrases.append(words.no_slip(name_of(line)))
    return phrases


def _result(want: PhotoTask, measured: PhotoJudgement, *, held: bool) -> list[Phrase]:
    if measured.result is None:
        return []
    writing, factor = want.notation.writing, want.drawing.factor
    drawn = measured.result / factor
    right = (measured.result - measured.result_off) / factor
    sizes = measured.result_off, measured.result_allowed
    off, allowed = (writing.fixed(math.fabs(size) / factor) for size in sizes)
    unit = quantity.NO_BREAK_SPACE + writing.unit
    own = words.result(want.symbol, _number(measured.result, writing.mark), writing.amount(drawn))
    if held:
        return [own]
    compared = words.result_right(writing.amount(right), off + unit, allowed + unit)
    turned = measured.turned_from(want.drawing.construction)
    if turned is None:
        return [own, compared]
    return [own, (*compared, " ", *words.result_direction(_number(math.fabs(turned), writing.mark)))]


def what_is_said(
    want: PhotoTask, measured: PhotoJudgement, *, held: bool = False
) -> tuple[Phrase, list[Phrase], list[Phrase]]:
    """Return what is said of a drawing: in one sentence, mistake by mistake, and of its result; ``held``: without
    anything of the answer."""
    mistakes = _mistakes(measured, want.notation.mark)
    if measured.not_drawn:
        labels = _labels(want)
        mistakes.append(words.not_drawn([labels[name] for name in measured.not_drawn]))
    return _headline(measured), mistakes, _result(want, measured, held=held)


def result_html(want: PhotoTask, measured: PhotoJudgement, *, sheet: bool, held: bool) -> tuple[Markup, str]:
    """Return the complete reply as HTML, and as text for screen readers; ``held``: without anything of the answer."""
    mark = want.notation.mark
    headline, mistakes, result = what_is_said(want, measured, held=held)
    length, angle = (_number(max(0.1, value), mark) for value in measured.sure)
    below: list[Phrase] = [*result, words.measured_to(length, angle)]
    if held:
        below.append((words.HELD_BACK,))
    listed = h("ul", {"class": "photo-mistakes"}, [h("li", None, phrase_html(one)) for one in mistakes])
    html = join(
        h("h3", None, words.RESULT), h("p", {"class": "photo-headline", "data-photo-band": measured.band},
                                       phrase_html(headline)),
        listed if mistakes else None,
        h("div", {"class": "photo-table"}, _table(measured, mark, sheet=sheet, held=held)),
        [h("p", None, phrase_html(one)) for one in below],
    )  # fmt: skip
    return html, words.announced((headline, *mistakes))


# The request.


def _pixel(value: object) -> Point:
    if not (isinstance(value, list) and len(value) == 2 and all(isinstance(n, int | float) for n in value)):
        raise NoPhotoError
    x, y = float(value[0]), float(value[1])
    if not (math.fabs(x) <= LARGEST and math.fabs(y) <= LARGEST):
        raise NoPhotoError
    return Point(x, y)


def photo_of(request: object) -> Photo:
    """Return the photo's size and how surely points are set in it. Raises NoPhotoError."""
    if not isinstance(request, dict):
        raise NoPhotoError
    sizes = [request.get(name) for name in ("width", "height", "tap")]
    if not all(isinstance(size, int | float) and 0.05 <= size <= LARGEST for size in sizes):
        raise NoPhotoError
    return Photo(*(float(size) for size in sizes))  # type: ignore[arg-type]


def _corners(request: Mapping[str, Any]) -> tuple[Point, ...]:
    """Return the four corners of plain paper, clockwise from the upper left."""
    paper, orientation = request.get("paper"), request.get("way")
    if not isinstance(paper, str) or paper not in PAPERS:
        raise NoPhotoError
    width, height = PAPERS[paper] if orientation == "portrait" else PAPERS[paper][::-1]
    return Point(0.0, height), Point(width, height), Point(width, 0.0), Point(0.0, 0.0)


def for_drawing(want: PhotoTask, drawing: ReferenceDrawing) -> PhotoTask:
    """Return the same sheet with another drawing on it."""
    return replace(want, drawing=drawing)


def labels_of(want: PhotoTask, drawing: ReferenceDrawing) -> dict[str, Phrase]:
    """Return the name of each point of a drawing on a sheet."""
    return _labels(for_drawing(want, drawing))


def _labels(want: PhotoTask) -> dict[str, Phrase]:
    """Return the name of each point to be marked."""
    construction, tags = want.drawing.construction, want.drawing.tags
    guide = first_direction(construction)
    common = construction.method != TIP_TO_TAIL
    labels: dict[str, Phrase] = {}
    tips = {getattr(move, "point", ""): getattr(move, "phasor", "") for move in construction.moves}
    for name in points_to_find(construction):
        if name == guide:
            labels[name] = words.far_on(tags.get("reference", ()) if guide == "D" else ())
        elif name == "O":
            labels[name] = (words.COMMON_POINT if common else words.START,)
        elif tips.get(name):
            labels[name] = words.tip_of(tags[tips[name]])
        else:
            key = SUM_KEY if name == construction.end else arm_key(construction.order)
            labels[name] = words.end_of_diagonal(tags.get(key, ()))
    return labels


BY_HAND = {
    0: (0.0, 0.0), 2: (1.0, 0.0), 4: (1.0, 1.0), 6: (0.0, 1.0),
    3: (1.0, 0.5), 5: (0.8, 1.0), 7: (0.0, 0.3), 1: (0.3, 0.0),
}  # fmt: skip
"""About where a mark is in a photograph, by its number: shares from the left and from the top. The corners are set by
hand, and the first of the others that a sheet has: it tells marks of today from those of before."""


def _set_by_hand(want: PhotoTask) -> tuple[int, ...]:
    """Return the numbers of the marks that are set by hand where none is found."""
    both = [number for number in BY_HAND if number in dict(want.numbered) and number in dict(want.older)]
    return tuple(number for number in both if number % 2 == 0) + tuple(number for number in both if number % 2)[:1]


def _sheet_marks(numbered: Sequence[tuple[int, Point]], want: PhotoTask) -> list[dict[str, Any]]:
    by_hand = _set_by_hand(want)
    return [
        {"name": words.mark_name(number), "sign": words.MARK_NAMES[number], "x": place.x, "y": place.y,
         "hand": BY_HAND[number] if number in by_hand else None}
        for number, place in numbered
    ]  # fmt: skip


def _rings(request: Mapping[str, Any], count: int) -> list[tuple[float, float] | None] | None:
    """Return how wide and how high the ring of each mark is in the photo, if the script has found them."""
    rings = request.get("rings")
    if rings is None:
        return None
    if not isinstance(rings, list) or len(rings) != count:
        raise NoPhotoError
    sizes = [None if one is None else _pixel(one) for one in rings]
    if any(size is not None and min(size) <= 0.0 for size in sizes):
        raise NoPhotoError
    return [None if size is None else (size.x, size.y) for size in sizes]


def _untouched(request: Mapping[str, Any], count: int) -> list[int]:
    """Return the marks whose rings nobody moved."""
    untouched = request.get("untouched", [])
    if not isinstance(untouched, list) or not all(one in range(count) for one in untouched):
        raise NoPhotoError
    return [int(one) for one in untouched]


def projected(request: Mapping[str, Any], want: PhotoTask, photo: Photo) -> Projection:
    """Return the projection from the marks of the sheet, today's or those of before, or from the corners of plain
    paper.

    Raises PhotoUnusableError, BadRequestError.
    """
    seen, by_hand, printed = request.get("marks"), request.get("byHand") is not False, request.get("printed")
    sheet = request.get("ground") != CORNERS
    if sheet and want.own:
        raise NoPhotoError
    expected = want.older if printed == OLDER else want.numbered
    places = tuple(place for _, place in expected) if sheet else _corners(request)
    if not isinstance(seen, list) or len(seen) != len(places):
        raise NoPhotoError
    points = [None if one is None else _pixel(one) for one in seen]
    rings, untouched = _rings(request, len(places)), _untouched(request, len(places))
    if by_hand:
        check_hands(photo, points, untouched)
    if not sheet or printed in (MARKS, OLDER):
        projection = measured_by(photo, places, points, by_hand=by_hand)
    else:
        # It is not known which marks the sheet has: the fit says which.
        known = {number: point for (number, _), point in zip(expected, points, strict=True)}
        older = [known.get(number) for number, _ in want.older]
        projection = measured_by_one(
            photo, (places, tuple(place for _, place in want.older)), (points, older), by_hand=by_hand
        )
    if rings is not None:
        check_rings(projection, places, rings, want.older_ring if printed == OLDER else want.ring)
    if by_hand:
        check_view(projection, photo)
    return projection


def _opened(want: PhotoTask, form: Mapping[str, str]) -> dict[str, Any]:
    labels = _labels(want)
    return {
        "ok": True,
        "regions": {"photo": str(panel_html(form, want.paper if want.own else None))},
        "marks": _sheet_marks(want.numbered, want),
        "older": _sheet_marks(want.older, want),
        "corners": [
            {"name": words.corner_name(number), "sign": sign, "hand": BY_HAND[2 * number]}
            for number, sign in enumerate(words.CORNERS)
        ],
        "taps": [
            {"name": name, "label": plain(label), "ask": str(phrase_html(words.show(label)))}
            for name, label in labels.items()
        ],
    }


def refused_reply(problem: PhotoUnusableError, request: Mapping[str, Any], want: PhotoTask) -> dict[str, Any]:
    """Return what is wrong with a photograph, and with which marks."""
    sheet = request.get("ground") != CORNERS
    paper, way = want.paper if sheet else (str(request.get("paper")), str(request.get("way")))
    numbers = [number for number, _ in (want.older if request.get("printed") == OLDER else want.numbered)]
    names = [words.MARK_NAMES[number] for number in numbers] if sheet else words.CORNERS
    values = {
        **problem.values, "paper": paper, "way": dict(words.WAYS).get(way, way),
        "rings": ", ".join(names[index] for index in problem.marks),
    }  # fmt: skip
    if "point" in values:
        values["point"] = plain(_labels(want).get(values["point"], (values["point"],)))
    reason = "shape-marks" if sheet and problem.reason == "shape" else problem.reason
    sentence = words.refused(reason, **values)
    return {"ok": False, "errors": [], "announce": sentence, "waiting": sentence, "marks": list(problem.marks)}


def overlay_of(measured: PhotoJudgement) -> list[dict[str, Any]]:
    """Return the lines of the right drawing in the pixels of its photograph."""
    return [
        {"role": path.role, "phasor": path.phasor, "tag": plain(path.tag),
         "points": [[round(point.x, 2), round(point.y, 2)] for point in path.points]}
        for path in measured.overlay
    ]  # fmt: skip


def judged(
    page: SumPage[Any], request: Mapping[str, Any], form: Mapping[str, str]
) -> tuple[PhotoTask, PhotoJudgement | None]:
    """Return what was to be drawn, and the drawing judged from the points of a request; None without points, where the
    marks fit. Raises PhotoUnusableError, and as ``reply`` does."""
    want = photo_task(page, form)
    return want, _judged(want, request)


def _judged(want: PhotoTask, request: Mapping[str, Any]) -> PhotoJudgement | None:
    photo, taps = photo_of(request["photo"]), request.get("taps")
    points_in_photo = projected(request, want, photo)
    if not isinstance(taps, dict):
        return None
    names = points_to_find(want.drawing.construction)
    if tuple(sorted(taps)) != tuple(sorted(names)):
        raise NoPhotoError
    tapped = {name: _pixel(taps[name]) for name in names if taps[name] is not None}
    return measure(want.drawing, points_in_photo, photo, tapped, sheet=request.get("ground") != CORNERS)


def reply(page: SumPage[Any], request: Mapping[str, Any], form: Mapping[str, str]) -> dict[str, Any]:
    """Answer a request ``photo``.

    Without a photo: the panel and the points to mark. With marks: whether they fit. With taps: the judgement, without
    anything of the answer while it is held back (``veiled``). Raises InputError for a form that cannot be used,
    BadRequestError for an unknown request.
    """
    want = photo_task(page, form)
    if "photo" not in request:
        return _opened(want, form)
    sheet, held = request.get("ground") != CORNERS, request.get("veiled") is True
    try:
        measured = _judged(want, request)
    except PhotoUnusableError as problem:
        return refused_reply(problem, request, want)
    if measured is None:
        return {"ok": True}
    html, announced = result_html(want, measured, sheet=sheet, held=held)
    lines = [] if held else overlay_of(measured)
    return {"ok": True, "regions": {"photo-result": str(html)}, "overlay": lines, "announce": announced}

