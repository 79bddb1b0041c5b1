"""The figure, and the marks of photographs, stand where they stood on every sheet printed so far: held as data."""

import itertools
import json
from pathlib import Path

import pytest

from pycore.geometry import Point
from pycore.practice.photograph import Photo, PhotoUnusableError, measured_by
from pycore.sheet import marks
from pycore.sheet.media import ORIENTATIONS, PAPERS, layout
from pycore.sheet.styles import PRINTS

KEPT = json.loads((Path(__file__).parent / "kept_places.json").read_text(encoding="utf-8"))
MOST_ROWS = 20
SHEETS = list(itertools.product(PAPERS, ORIENTATIONS, PRINTS))


@pytest.mark.parametrize(("paper", "orientation", "printed"), SHEETS)
def test_the_area_of_the_figure_is_the_one_that_printed_sheets_have(paper: str, orientation: str, printed: str):
    """Every paper, orientation, print style and number of rows, with one scale and with two."""
    for second, scales in ((False, "one scale"), (True, "two scales")):
        # Each run begins at a number of rows and lasts until the next.
        runs = dict(KEPT["areas"][f"{paper} {orientation} {printed} {scales}"])
        for rows in range(1, MOST_ROWS + 1):
            kept = runs[max(first for first in runs if first <= rows)]
            area = layout(paper, orientation, rows, second=second, printed=printed).area
            assert [rows, *kept] == [rows, *(round(edge, 6) for edge in area)]


@pytest.mark.parametrize(("paper", "orientation", "printed"), SHEETS)
def test_the_marks_of_sheets_printed_before_are_known_by_their_places(paper: str, orientation: str, printed: str):
    """By these a photograph of an older sheet is measured."""
    places = marks.numbered(layout(paper, orientation, 5, printed=printed), Point(-100.0, -100.0), marks.BEFORE)
    kept = KEPT["marks"][f"{paper} {orientation} {printed}"]
    assert kept == [[round(place.x, 4), round(place.y, 4)] for _, place in places]


@pytest.mark.parametrize(("paper", "orientation", "printed"), SHEETS)
def test_marks_of_today_and_of_before_cannot_be_taken_for_one_another(paper: str, orientation: str, printed: str):
    """Set by hand on the corners and one more, one edition's marks miss the other's places by more than is accepted."""
    sheet = layout(paper, orientation, 5, printed=printed)
    today, before = (dict(marks.numbered(sheet, Point(-100.0, -100.0), edition)) for edition in marks.EDITIONS)
    numbers = (0, 2, 3, 4, 6)
    photo = Photo(2000.0, 1500.0, 1.2)
    for seen, places in ((today, before), (before, today)):
        shown = [Point(100.0 + 3.0 * seen[number].x, 1400.0 - 3.0 * seen[number].y) for number in numbers]
        with pytest.raises(PhotoUnusableError):
            measured_by(photo, [places[number] for number in numbers], shown, by_hand=True)
