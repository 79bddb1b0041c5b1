"""Where a sheet prints its code: one of twelve signs has room on every paper, and one of nine stands as it ever did."""

from itertools import product

import pytest
from unit.sheets import NEUTRAL, on_page, texts
from unit.test_sheet_clear import faults_of

from pycore import lettering
from pycore.calculators.registry import CALCULATORS
from pycore.drawing import Page, Text
from pycore.forms.opening import ReopenInfo, SetPlace
from pycore.geometry import Box
from pycore.sheet.media import ORIENTATIONS, PAPERS, layout
from pycore.sheet.styles import PRINTS

BASE = "https://folio.example.org/a-page/"
NINE = "333-JDL-2GA"
USUAL, WIDEST = "42C-332-3C2-9XZ", "4WW-WWW-WWW-WWW"
"""Codes of twelve signs: a usual one, and one of the broadest signs throughout."""
CURRENTS = {"i1": "18.4", "i2": "11.2", "i3": "24.6"}
BESIDE = [printed for printed in PRINTS if printed != "page"]
"""The print styles with the code on the page of the drawing."""
WAYS = [way for way in product(PAPERS, ORIENTATIONS, BESIDE) if way[0] != "A5" or way[2] == "usual"]


def sheet(code: str, paper: str, way: str, printed: str, qr: bool = True, **more: str) -> Page:
    form = {**CURRENTS, "sheet": "problem", "paper": paper, "orientation": way, "print": printed, **more}
    return NEUTRAL.pages(form, ReopenInfo(BASE, qr, SetPlace(code, 12, 30)))[0]


def lines_of(page: Page, code: str) -> list[Box]:
    """The boxes of the lines that together say the code, from the upper to the lower."""
    found = [one for one in texts(page) if one.words and one.words.replace("-", "") in code.replace("-", "")
             and "-" in one.words]  # fmt: skip
    found.sort(key=lambda one: -one.box.top)
    assert code == "".join(one.words for one in found)
    return [one.box for one in found]


def capitals_of(page: Page, words: str) -> list[float]:
    return [run.size / lettering.size_for_capitals(1.0, run.face) for placed in on_page(page, Text)
            for run in placed.item.runs if run.text == words]  # fmt: skip


@pytest.mark.parametrize(("paper", "way", "printed"), WAYS)
def test_a_code_of_twelve_signs_has_room_wherever_a_code_is_printed(paper: str, way: str, printed: str):
    """With a QR code beside it and without, with a further question and without."""
    place = layout(paper, way, 5, printed=printed)
    for code, qr, further in product((USUAL, WIDEST), (True, False), ("", "zero")):
        page = sheet(code, paper, way, printed, qr, **({"further": further} if further else {}))
        boxes = lines_of(page, code)
        assert len(boxes) <= 2
        assert max(box.right for box in boxes) <= place.code.right + 1e-6
        assert [] == faults_of(page), (code, qr, further)


@pytest.mark.parametrize(("paper", "way", "printed"), WAYS)
def test_a_long_code_is_never_smaller_than_the_notes_of_its_sheet(paper: str, way: str, printed: str):
    page = sheet(WIDEST, paper, way, printed)
    sizes = capitals_of(page, WIDEST) or capitals_of(page, WIDEST[:8]) + capitals_of(page, WIDEST[8:])
    assert layout(paper, way, 5, printed=printed).style.note <= min(sizes) + 1e-9


@pytest.mark.parametrize(("paper", "way", "printed"), WAYS)
def test_a_code_of_nine_signs_is_one_line_at_least_as_high_as_the_values(paper: str, way: str, printed: str):
    """4.2 mm on the usual sheet, where it is typed from paper most often."""
    (capitals,) = capitals_of(sheet(NINE, paper, way, printed), NINE)
    least = layout(paper, way, 5, printed=printed).style.value
    assert capitals == pytest.approx(4.2 if printed == "usual" and paper != "A5" else least)


@pytest.mark.parametrize("slug", list(CALCULATORS))
def test_no_page_of_the_shelf_lets_a_long_code_touch_anything(slug: str):
    """Pages with a second scale, with many rows, with other words beside the code; faults of a short code apart."""
    page = CALCULATORS[slug]
    for paper, way, printed in WAYS:
        form = {"sheet": "problem", "paper": paper, "orientation": way, "print": printed}
        before, made = (faults_of(page.pages(form, ReopenInfo(BASE, True, SetPlace(code, 12, 30)))[0])
                        for code in (NINE, WIDEST))  # fmt: skip
        assert [] == [fault for fault in made if fault not in before], (paper, way, printed)
