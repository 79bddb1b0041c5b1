"""What reading a drawing from the strokes on its sheet needs: every drawing that the sheet may hold, and its print."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from pycore.drawing import Page
from pycore.errors import InputError
from pycore.forms.opening import ReopenInfo
from pycore.geometry import Box
from pycore.practice.drawn import ReferenceDrawing
from pycore.sheet.kinds import PROBLEM
from pycore.sheet.printed import PrintedMatter, printed_matter
from pycore.sums.page import SumPage
from pycore.sums.photograph import PhotoTask, photo_task

ABOUT = 3.0
"""So far beyond the field's frame is read, mm: lines run on."""


@dataclass(frozen=True, slots=True)
class StrokesTask:
    """A sheet that is read: what it asks to be drawn, all that may have been drawn (that first), the part of the paper
    that is read (mm), and what is printed there."""

    photo: PhotoTask
    drawings: tuple[ReferenceDrawing, ...]
    box: Box
    printed: PrintedMatter


def _drawings(page: SumPage[Any], form: Mapping[str, str], asked: PhotoTask) -> tuple[ReferenceDrawing, ...]:
    """What may have been drawn: as the sheet asks, and by each other method of the page, on the sheet's own scale."""
    first = asked.drawing
    found = [first]
    options = next((field.options for field in page.fields if field.name == "method"), ())
    for method in (option.value for option in options):
        if method == first.construction.method:
            continue
        try:
            other = photo_task(page, {**form, "method": method}).drawing
        except InputError:
            continue
        if other.construction.method == method:
            found.append(replace(other, factor=first.factor, scale=first.scale, picture=first.picture))
    return tuple(found)


def strokes_task(page: SumPage[Any], form: Mapping[str, str]) -> StrokesTask:
    """Return what reading a form's problem sheet needs. Raises InputError."""
    form = {**form, "sheet": PROBLEM}
    asked = photo_task(page, form)
    field = page.case(form).sheet_plan().layout.field
    box = Box(field.left - ABOUT, field.bottom - ABOUT, field.right + ABOUT, field.top + ABOUT)
    sheet: Page = page.pages(form, ReopenInfo(), (PROBLEM,))[0]
    return StrokesTask(asked, _drawings(page, form, asked), box, printed_matter(sheet, box))
