"""Drawings of a class set's learners, photographed from straight above, as the page of a pile tells pycore of them."""

import io
import json
from typing import Any

from PIL import Image, ImageDraw

from pycore import api
from pycore.calculators.registry import CALCULATORS
from pycore.forms.fields import default_form
from pycore.pages import class_set
from pycore.pages.class_job import learners_of
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
def jpeg(shade: int = 190) -> bytes:
    """A photograph of plain paper."""
    picture = Image.new("RGB", (1188, 840), (shade, shade, shade))
    ImageDraw.Draw(picture).ellipse((500, 300, 700, 500), outline=(80, 80, 80), width=3)
    data = io.BytesIO()
    picture.save(data, "JPEG", quality=80)
    return data.getvalue()


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
