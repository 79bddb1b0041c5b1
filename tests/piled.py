"""Photographs of a class set's sheets, drawn on by hand, for the tests of a pile."""

import io

import pencilled
from pencil_photographs import photographed
from photographs import Conditions, Taken, taken
from PIL import Image, ImageDraw

from pycore.forms.fields import default_form
from pycore.pages import class_set
from pycore.pages.class_job import learners_of
from pycore.practice.class_set import Learner

STEADY = Conditions(4.0, 14, 40, 4, -0.02, 0.7, 4, 0.3)


def learners(seed: int, count: int) -> list[Learner]:
    """The first learners of a class set with this seed."""
    form = default_form(class_set.FIELDS) | {"learners": str(count), "method": "parallelogram", "seed": str(seed)}
    return [one for one in learners_of(class_set.read_set(form)) if one is not None]


def sheet(learner: Learner, seed: int, slip: tuple[str, float] | None = None, how: Conditions = STEADY) -> Taken:
    """A photograph of a learner's drawing on the problem sheet."""
    return taken(seed, {**learner.form, "code": str(learner.code), "sheet": "problem"}, slip, how)


def without_code(shot: Taken, learner: Learner) -> bytes:
    """The same with a thumb over the QR code."""
    from pycore.calculators.registry import CALCULATORS

    box = CALCULATORS["neutral-current"].case(learner.form).sheet_plan().layout.code
    corners = [shot.camera.seen(x, y) for x, y in (
        (box.left, box.bottom), (box.right, box.bottom), (box.right, box.top), (box.left, box.top)
    )]  # fmt: skip
    picture = shot.picture.copy()
    ImageDraw.Draw(picture).polygon(corners, fill=(180, 140, 120))
    return jpeg(picture)


def without_marks(shot: Taken) -> bytes:
    """The same with something over each of its marks."""
    picture = shot.picture.copy()
    for place in shot.marks:
        u, v = shot.camera.seen(*place)
        ImageDraw.Draw(picture).ellipse((u - 40, v - 40, u + 40, v + 40), fill=(180, 140, 120))
    return jpeg(picture)


def jpeg(picture: Image.Image) -> bytes:
    """A picture as a file."""
    data = io.BytesIO()
    picture.save(data, "JPEG", quality=90)
    return data.getvalue()


def pencilled_sheet(learner: Learner, number: int, method: str) -> tuple[bytes, str]:
    """A photograph of a learner's sheet with a drawing in pencil, and the mistake in it ("" for none)."""
    form = {**learner.form, "code": str(learner.code), "sheet": "problem", "method": method}
    drawing = pencilled.pencilled(number, method, form)
    return jpeg(photographed(drawing, number).picture), drawing.mistake
