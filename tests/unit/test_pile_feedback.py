"""Sheets of feedback: a learner's photograph with the first line to look at, what is said of it, the mark."""

import io
import json
from typing import Any

import pymupdf
import pytest
from host.piles import JUDGED_WRONG, PER_MM, WIDE, feedback, kept, learners, seen_from_above
from PIL import Image
from render.tagged import read
from unit.from_above import jpeg

from pycore import api
from pycore.errors import DrawingError
from pycore.writers.jpeg import head_of

RED = (0xB3, 0x26, 0x1E)


def test_each_accepted_row_has_a_tagged_page_in_the_order_of_the_learners_with_its_own_photograph():
    rows = [kept(3), kept(1, slip=24.0), kept(2, accepted=False)]
    reply, data = feedback(rows, {"r3": jpeg(), "r1": jpeg(90)})
    assert "2 feedback sheets are saved." == reply["told"]
    document = pymupdf.open(stream=data)
    texts = [page.get_text() for page in document]
    assert ["Ada Lark", "Cy Wren"] == [text.split("\n")[0] for text in texts]
    assert all("Mark: 3 of 4" in text for text in texts)
    assert "Every line is correct" in texts[1] and "wrong" in texts[0] and "Red: the first line" in texts[0]
    assert [len(page.get_images()) for page in document] == [1, 1]
    assert len({page.get_images()[0][0] for page in document}) == 2
    middles = [page.get_pixmap(dpi=50).pixel(200, 100)[0] for page in document]
    assert middles[0] < 120 < middles[1]  # each has its own
    figures = read(data).root.of("Figure")
    assert [figure.alternative.startswith("Photograph of the drawing") for figure in figures] == [True, True]
    assert len(data) < 100_000


def test_the_red_line_lies_where_the_learner_drew_the_first_line_that_is_off():
    _, data = feedback([kept(1, slip=24.0)], {"r1": jpeg()})
    page = pymupdf.open(stream=data)[0]
    box = page.get_image_rects(page.get_images()[0][0])[0]
    red = [line for line in page.get_drawings() if tuple(round(255 * one) for one in line["color"] or ()) == RED]
    assert 1 == len(red)
    _, start, end = red[0]["items"][0]
    taps = seen_from_above(learners()[0], 24.0)["taps"]
    share = box.width / WIDE
    ends = [(box.x0 + share * x, box.y0 + share * y) for x, y in taps.values()]
    for at in (start, end):
        assert min(abs(at.x - x) + abs(at.y - y) for x, y in ends) < 0.3 * PER_MM * share


def test_a_photograph_that_is_gone_or_broken_is_said_and_the_sheet_is_made_all_the_same():
    reply, data = feedback([kept(1), kept(2)], {"r2": b"no picture at all"})
    assert "2 feedback sheets are saved." == reply["told"]
    for page in pymupdf.open(stream=data):
        assert "The photograph is not on this device any more." in page.get_text() and not page.get_images()


def test_without_an_accepted_row_it_is_said_what_to_do():
    reply, _ = feedback([kept(1, accepted=False)], {})
    assert not reply["ok"] and "Accept a row first." in reply["announce"]
    ranged = JUDGED_WRONG | {"parts": ["accept", "look", "wrong"], "band": "look"}
    assert not feedback([kept(1, settled=None, drawing=ranged)], {})[0]["ok"]  # A range is no mark.


@pytest.mark.parametrize("pictures", [None, [3], [{"row": "r1", "size": -1, "part": [0, 0, 9, 9]}],
                                      [{"row": "r1", "size": 4, "part": ["a", 0, 9, 9]}]])  # fmt: skip
def test_strange_lists_of_photographs_do_no_harm(pictures: Any):
    begun = json.loads(api.handle(json.dumps({
        "do": "begin", "work": "feedback", "page": "photographs", "form": {}, "rows": [kept(1)], "pictures": pictures,
    }), b"abcd")[0])  # fmt: skip
    assert json.loads(api.handle(json.dumps({"do": "finish", "page": "photographs", "job": begun["job"]}))[0])["ok"]


@pytest.mark.parametrize("mode", ["RGB", "L"])
@pytest.mark.parametrize("progressive", [False, True])
def test_size_and_colours_of_a_jpeg_file(mode: str, progressive: bool):
    data = io.BytesIO()
    Image.new(mode, (37, 21)).save(data, "JPEG", progressive=progressive, comment=b"x" * 300)
    assert (37, 21, 3 if mode == "RGB" else 1) == head_of(data.getvalue())


@pytest.mark.parametrize("data", [b"", b"\xff\xd8", b"\x89PNG", jpeg()[:3], b"\xff\xd8\xff\xe0\x00\x04\x00\x00" * 3])
def test_what_is_no_jpeg_file_is_refused(data: bytes):
    with pytest.raises(DrawingError):
        head_of(data)
