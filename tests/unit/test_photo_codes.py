"""The page's own script finds every QR code in a photograph, small ones too."""

import pytest
from PIL import Image, ImageDraw
from strokes_of import Reader

from pycore.writers import qr

FIRST, SECOND = "https://www.folio.example/#v=3&code=A", "https://www.folio.example/#v=3&code=B"


@pytest.fixture(scope="module")
def reader():
    """One Node for all pictures."""
    with Reader() as one:
        yield one


def picture(*codes: tuple[str, int, int, int]) -> Image.Image:
    """A photograph of 4000 by 3000 pixels with codes: text, left, top, pixels of a module."""
    paper = Image.new("RGB", (4000, 3000), (225, 225, 220))
    pen = ImageDraw.Draw(paper)
    for text, left, top, size in codes:
        for row, line in enumerate(qr.matrix(text)):
            for column, module in enumerate(line):
                x, y = left + column * size, top + row * size
                if module == "1":
                    pen.rectangle((x, y, x + size - 1, y + size - 1), fill=(30, 30, 30))
    return paper


@pytest.mark.parametrize(("left", "top"), [(100, 100), (3700, 2800), (1980, 1480)])
def test_a_code_too_small_for_the_measured_picture_is_found_anywhere(reader: Reader, left: int, top: int):
    assert [FIRST] == reader.codes(picture((FIRST, left, top, 1)))


def test_a_second_sheet_is_seen_beside_one_that_is_larger(reader: Reader):
    """Else the drawing on one sheet could be marked as that of the other's learner."""
    assert {FIRST, SECOND} == set(reader.codes(picture((FIRST, 300, 300, 9), (SECOND, 3500, 2600, 1))))


def test_a_picture_without_a_code_has_none(reader: Reader):
    assert [] == reader.codes(picture())
