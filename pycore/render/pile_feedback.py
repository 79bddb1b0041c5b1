"""Each learner's sheet of feedback: their photograph with the first line to look at, what is said of it, their mark."""

from collections.abc import Iterator, Mapping
from typing import Any

from pycore.calculators.registry import CALCULATORS
from pycore.constructions.roles import PARALLEL
from pycore.drawing import Page
from pycore.errors import DrawingError, Fault, InputError
from pycore.geometry import Point
from pycore.lettering.glyphs import Letters
from pycore.pages.class_job import Job, Result
from pycore.pages.pile import Pile, PileRow
from pycore.practice.marking import ACCEPT
from pycore.render import photograph
from pycore.render.lettered import letters_of
from pycore.render.pile_judged import JudgedPhotograph, first_to_look_at, judged_photograph
from pycore.sheet.feedback_page import FeedbackPage, ShownPhotograph, feedback_page
from pycore.words import paper_marks as mark_words
from pycore.words import pile as words
from pycore.words import plain
from pycore.words.phrase import Phrase
from pycore.words.sheet import FOOT

LARGEST = 2_000_000
"""Bytes of a photograph in a sheet: more is none that this site's script has made."""
Held = Mapping[str, tuple[bytes, tuple[float, float, float, float]]]
"""By row: a JPEG file, and which part of the photograph it holds."""


def _pictures(request: Mapping[str, Any]) -> Held:
    """The photographs that came with a request, one after another in its bytes."""
    listed, file = request.get("pictures"), request.get("file")
    held: dict[str, tuple[bytes, tuple[float, float, float, float]]] = {}
    data, at = bytes(file) if file is not None else b"", 0
    for one in listed if isinstance(listed, list) else ():
        size, part = (one.get("size"), one.get("part")) if isinstance(one, dict) else (None, None)
        if not isinstance(size, int) or not 0 < size <= LARGEST or not isinstance(part, list) or len(part) != 4:
            break
        numbers = [float(number) for number in part if isinstance(number, int | float)]
        if len(numbers) == 4 and min(numbers[2:]) > 1.0:
            held[str(one.get("row"))] = data[at : at + size], (numbers[0], numbers[1], numbers[2], numbers[3])
        at += size
    return held


def _shown(seen: JudgedPhotograph, held: tuple[bytes, tuple[float, float, float, float]]) -> ShownPhotograph:
    measured, ends = seen.measured, first_to_look_at(seen.measured)
    line: tuple[Point, ...] = ()
    if ends is not None and all(end in measured.places for end in ends):
        line = tuple(seen.projection.seen(measured.places[end]) for end in ends)
    name: Phrase = next((photograph.name_of(one) for one in measured.lines if one.ends == ends), ())
    right = tuple((path.points, path.role == PARALLEL) for path in measured.overlay if measured.band != ACCEPT)
    caption = words.SHOWN_WRONG if line else words.SHOWN_RIGHT if right else ""
    return ShownPhotograph(*held, line, right, caption, words.picture_in_words(plain(name)))


def _page(row: PileRow, seen: JudgedPhotograph, held: Held, letters: Letters) -> Page:
    headline, advice, result = photograph.what_is_said(seen.want, seen.measured)
    mark = seen.want.notation.mark
    who = mark_words.learner(row.place, row.name) if row.place else row.code
    sheet = words.sheet_line(CALCULATORS[row.page].title, row.code)
    picture = _shown(seen, held[row.id]) if row.id in held else None
    decided = mark_words.of_total(*row.marks, row.of) if row.marks[0] == row.marks[1] else ""
    missing: list[Phrase] = [] if picture else [(words.NO_PHOTOGRAPH,)]
    page = FeedbackPage(
        letters.set(who) or mark_words.learner(row.place, ""), sheet,
        words.mark_line(decided), picture, headline, (*missing, *advice),
        words.FROM_LINES_BEFORE, words.FEEDBACK_HEAD,
        tuple(photograph.line_texts(line, mark) for line in seen.measured.lines), tuple(result),
        FOOT,
    )  # fmt: skip
    return feedback_page(seen.want.paper[0], page, f"{who}: {sheet}")


def _request_of(row: Mapping[str, Any], request: Mapping[str, Any]) -> dict[str, Any]:
    """What is asked of a row's photograph, from what the page keeps of it."""
    seen = row.get("seen")
    drawn = {"taps": row["taps"]} if isinstance(row.get("taps"), dict) else (
        {"strokes": row.get("strokes"), "settled": row.get("answers")}
    )
    return {**(seen if isinstance(seen, dict) else {}), **drawn, "sheet": row.get("page"), "form": row.get("form"),
            "group": row.get("group"), "set": request.get("set"), "roll": request.get("roll")}  # fmt: skip


def feedback_job(pile: Pile, request: Mapping[str, Any]) -> Job:
    """The making of the sheets of all accepted rows, in the order of the learners. Raises InputError where there are
    none."""
    from pycore.writers.pdf import Writer

    rows = sorted(pile.accepted, key=lambda row: (row.place == 0, row.place, row.number))
    if not rows:
        raise InputError(Fault("", "", words.NOT_ADDED))
    held, letters, writer = _pictures(request), letters_of(request), Writer()
    listed = {str(one.get("id")): one for one in request["rows"] if isinstance(one, dict)}
    made: list[str] = []

    def steps() -> Iterator[tuple[str, float]]:
        for number, row in enumerate(rows, start=1):
            yield words.making(number, len(rows)), (number - 1) / len(rows)
            seen = judged_photograph(_request_of(listed[row.id], request))
            if seen is None:
                continue
            try:
                writer.add(_page(row, seen, held, letters))
            except DrawingError:
                writer.add(_page(row, seen, {}, letters))
            made.append(row.id)

    def result() -> Result:
        file = {"filename": words.FEEDBACK_FILE, "type": "application/pdf", "told": words.made(len(made))}
        return file, writer.finish(words.FEEDBACK_TITLE)

    return Job(steps(), result, writer.take)
