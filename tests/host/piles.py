"""Drawings of a class set's learners and of a question paper, photographed from straight above, as the page of a pile
tells pycore of them; and what is asked of such a pile. Nothing here needs more than pycore: it runs in the site's
Pyodide too.
"""

import hashlib
import json
from collections.abc import Iterator
from typing import Any

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.pages import class_set
from pycore.pages.class_job import learners_of
from pycore.pages.pile_papers import kept_papers
from pycore.practice.class_set import Learner
from pycore.practice.drawn import points_to_find
from pycore.sums.photograph import photo_task

SET = "v=3&learners=3&method=parallelogram&seed=0"
ROLL = "Ada Lark\nBo Finch\nCy Wren"
GROUP = class_set.read_set(
    default_form(class_set.FIELDS) | {"learners": "3", "method": "parallelogram", "seed": "0"}
)
SET_CODE = str(GROUP.code)
PER_MM = 8.0
"""Pixels of the photograph."""


def learners() -> list[Learner]:
    """The learners of the set."""
    return [one for one in learners_of(GROUP) if one is not None]


def seen_from_above(learner: Learner, slip: float = 0.0, method: str = "") -> dict[str, Any]:
    """A right drawing on the learner's sheet, with all that a request says of it; with ``slip`` its end is moved along
    so many mm."""
    page = CALCULATORS["neutral-current"]
    form = {**learner.form, "code": str(learner.code), "sheet": "problem"} | ({"method": method} if method else {})
    want = photo_task(page, form)
    figure, drawing = want.drawing.construction.figure.points, want.drawing
    height = page.case(form).sheet_plan().layout.height

    def seen(place: Any) -> list[float]:
        return [round(PER_MM * place.x, 3), round(PER_MM * (height - place.y), 3)]

    places = {
        name: want.origin.plus(drawing.picture.place(figure[name], drawing.factor))
        for name in points_to_find(drawing.construction)
    }
    end = drawing.construction.end
    places[end] = places[end].moved(slip, 20.0)
    return {
        "form": form, "photo": {"width": 2400, "height": 1700, "tap": 1.2}, "ground": "marks", "byHand": False,
        "printed": "marks", "marks": [seen(place) for place in want.marks], "rings": None, "untouched": [],
        "taps": {name: seen(place) for name, place in places.items()},
    }  # fmt: skip


WIDE, HIGH = 2376, 1680
"""The sheet in its photograph, in pixels."""
JUDGED_WRONG = {
    "found": "7", "asked": "6", "unit": "A", "off": "1", "band": "wrong", "parts": ["accept", "wrong", "wrong"],
    "mistakes": [],
}  # fmt: skip


def kept(number: int, slip: float = 0.0, **more: Any) -> dict[str, Any]:
    """A row of the learner in a place, accepted."""
    learner = learners()[number - 1]
    seen = seen_from_above(learner, slip)
    form, taps = seen.pop("form"), seen.pop("taps")
    return {
        "id": f"r{number}", "file": f"{number}.jpg", "state": "judged", "page": "neutral-current", "form": form,
        "code": str(learner.code), "group": SET_CODE, "seen": seen, "taps": taps, "accepted": True, "settled": 3,
        "drawing": JUDGED_WRONG, "points": {},
    } | more  # fmt: skip


def feedback(rows: list[dict[str, Any]], files: dict[str, bytes]) -> tuple[dict[str, Any], bytes]:
    """The reply to the whole work, and its file."""
    pictures = [{"row": row, "part": [0, 0, WIDE, HIGH], "size": len(data)} for row, data in files.items()]
    begun = json.loads(api.handle(json.dumps({
        "do": "begin", "work": "feedback", "page": "photographs", "form": {}, "set": SET, "roll": ROLL, "rows": rows,
        "pictures": pictures,
    }), b"".join(files.values()))[0])  # fmt: skip
    if not begun["ok"]:
        return begun, b""
    reply, data = api.handle(json.dumps({"do": "finish", "page": "photographs", "job": begun["job"]}))
    return json.loads(reply), data or b""


# What is asked of a pile, one after another.

PAPER = {
    "title": "Autumn paper", "questions": "2", "seed": "77", "codes": "problem",
    "q1-topic": "neutral-current", "q2-topic": "neutral-current", "q2-asks": "drawing",
}  # fmt: skip
PAPERS = [{"form": PAPER, "roll": ROLL}]
NO_PICTURE = bytes((0xFF, 0xD8, 0xFF, 0xC0, 0, 17, 8, 840 >> 8, 840 & 0xFF, 1188 >> 8, 1188 & 0xFF, 3, *[0] * 40))
"""The head of a JPEG of 1188 by 840 pixels, which is all that a PDF asks of it."""


def _asked(**request: Any) -> dict[str, Any]:
    reply: dict[str, Any] = json.loads(api.handle(json.dumps({"do": "pile", "papers": PAPERS, **request}))[0])
    return reply


def _strokes(form: dict[str, str]) -> list[dict[str, Any]]:
    """The lines of a right drawing from its start, in mm, as the page's script finds them."""
    want = photo_task(CALCULATORS["neutral-current"], form)
    figure, drawing = want.drawing.construction.figure.points, want.drawing
    found = []
    for name in points_to_find(drawing.construction):
        end = want.origin.plus(drawing.picture.place(figure[name], drawing.factor))
        long = ((end.x - want.origin.x) ** 2 + (end.y - want.origin.y) ** 2) ** 0.5
        if long > 1.0:
            found.append({
                "x1": want.origin.x, "y1": want.origin.y, "x2": end.x, "y2": end.y, "dark": 0.03,
                "runs": [[0.0, long]], "blind": [], "heads": [[long - 0.5, 1, 9.0]], "beside": [],
            })  # fmt: skip
    return found


def row_of_paper(question: int, place: int, slip: float = 0.0) -> dict[str, Any]:
    """An accepted row of a question paper, its drawing judged by pycore itself."""
    problems = [one for one in kept_papers(PAPERS)[0].paper.questions[question - 1].learners() if one is not None]
    learner = problems[place - 1]
    seen = seen_from_above(learner, slip, "parallelogram")
    judged = _asked(move="judge", sheet="neutral-current", group="", **seen)
    assert judged["ok"], judged
    return {
        "id": f"r{question}{place}", "file": "a.jpg", "digest": f"d{question}{place}", "state": "judged",
        "page": "neutral-current", "form": seen["form"], "code": str(learner.code), "group": "533-22D-227",
        "drawing": judged["drawing"], "points": judged["points"], "accepted": True,
    }  # fmt: skip


def replies() -> Iterator[object]:
    """A pile of a class set and a question paper: found by their codes, read from strokes, looked at, put into paper,
    table and sheets of feedback."""
    own = learners()
    yield [_asked(move="sheet", text=text) for text in (str(own[0].code), SET_CODE, "75L-KUT-24T/2", "x", "")]
    for learner in own:
        seen = seen_from_above(learner, 9.0)
        form, taps = seen.pop("form"), seen.pop("taps")
        sheet = {"sheet": "neutral-current", "form": form, "group": SET_CODE, **seen}
        yield _asked(move="strokes", **sheet)
        for strokes in ([], _strokes(form)):
            yield _asked(move="strokes", **sheet, strokes=strokes, settled={})
            row = {**kept(1), "strokes": strokes}
            yield _asked(move="look", row="r1", rows=[row], **sheet, strokes=strokes, settled={})
        yield _asked(move="judge", **sheet, taps=taps)
    rows = [kept(1), kept(2, 12.0), kept(3, accepted=False), row_of_paper(1, 1), row_of_paper(2, 3, 14.0)]
    about = {"page": "photographs", "form": {}, "rows": rows, "set": SET, "roll": ROLL, "papers": PAPERS}
    yield json.loads(api.handle(json.dumps({"do": "answer", **about}))[0])
    yield _asked(move="paper", rows=rows, papers=[{**PAPERS[0], "text": "Bo Finch; 1; 9.9 A at 10"}])
    reply, data = feedback(rows[:2], {"r1": NO_PICTURE, "r2": NO_PICTURE})
    yield [reply, hashlib.sha256(data).hexdigest()]
    begun = json.loads(api.handle(json.dumps({"do": "begin", "work": "table", **about}))[0])
    text, data = api.handle(json.dumps({"do": "finish", "job": begun.get("job")}))
    yield [text, hashlib.sha256(data or b"").hexdigest()]
