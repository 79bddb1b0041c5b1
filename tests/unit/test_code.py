"""The QR code's modules and the shapes that draw them."""

import math

import numpy
import pytest
import segno
import zxingcpp

from pycore.drawing import Page, Squares, dark_runs, mirrored
from pycore.geometry import Box, Point
from pycore.sheet import code
from pycore.writers import qr
from pycore.writers.numbers import coordinate

LINK = (
    "https://www.folio.example/term/neutral-current/#v=1&i1=18.4&i2=11.2&i3=24.6&a1=0&a2=0&a3=0&sequence=123"
    "&method=parallelogram&order=12&parallels=protractor&protractor=180&first=up&reference=current"
    "&rotation=anticlockwise&resultant=sum&paper=A4&orientation=landscape&scale=2&steps=125&names=L123&colours=iec"
    "&decimal=point&angles=protractor&place=Village%20theatre%2C%20dimmer%20racks"
)
TEXTS = ("a", "https://folio.example/#v=1", LINK, "größer Ω 位相", "x" * qr.LONGEST)
BOX = Box(200.0, 60.0, 222.0, 82.0)


@pytest.mark.parametrize("text", TEXTS, ids=lambda text: f"{len(text)} characters")
def test_another_library_reads_the_modules(text: str):
    """Oracle: zxing-cpp, from a picture of 4 points to the module."""
    modules = numpy.array([[int(mark) for mark in row] for row in qr.matrix(text)], dtype=numpy.uint8)
    picture = 255 * (1 - numpy.kron(numpy.pad(modules, 4), numpy.ones((4, 4), dtype=numpy.uint8)))
    found = zxingcpp.read_barcodes(picture, formats=zxingcpp.BarcodeFormat.QRCode)
    assert [text.encode()] == [one.bytes for one in found]


def test_the_modules_are_those_of_the_encoders_public_front():
    """pycore asks the inner encoder, which the package does not promise to keep: a new release must still agree."""
    for text in TEXTS:
        front = segno.make_qr(text.encode(), error="L", mode="byte", mask=qr.MASK)
        assert tuple("".join(map(str, row)) for row in front.matrix) == qr.matrix(text)


@pytest.mark.parametrize(("text", "said"), [("", "no text"), ("x" * 2954, "2953 bytes; this text has 2954"),
                                            ("Ω" * 1477, "2953 bytes; this text has 2954")])  # fmt: skip
def test_a_text_that_no_code_holds_is_refused(text: str, said: str):
    with pytest.raises(ValueError, match=said):
        qr.matrix(text)


def test_every_size_and_level_has_the_modules_of_the_public_front():
    """One text for each version and each level that may stand in it, at both ends of its room."""
    seen = set()
    for length in sorted({*range(1, 400, 3), *range(400, qr.LONGEST, 31)}):
        text = ("https://folio.example/#i1=18.4&" * 100)[:length]
        front = segno.make_qr(text.encode(), error="L", mode="byte", mask=qr.MASK)
        assert tuple("".join(map(str, row)) for row in front.matrix) == qr.matrix(text), length
        seen.add((front.version, front.error))
    assert set(range(1, 41)) == {version for version, _ in seen}
    assert set("LMQH") == {level for _, level in seen}


def test_dark_modules_side_by_side_are_one_run():
    assert [(0, 2), (3, 4), (6, 7)] == list(dark_runs("1101001"))
    assert [] == list(dark_runs("000"))
    assert [] == list(dark_runs(""))


def test_every_corner_is_written_exactly_and_the_quiet_zone_stays_in_the_box():
    """Modules are whole micrometres, so the four decimals that a writer keeps hold every edge."""
    rows = qr.matrix(LINK)
    module = code.module_of(rows, BOX)
    group = code.code(rows, BOX)
    ground, squares = group.items
    assert "code" == group.name
    # The box is 22 mm wide, with four modules of quiet on either side.
    assert 22_000 // (len(rows) + 8) / 1000 == module == squares.side
    assert math.isclose(module * 1000, round(module * 1000), abs_tol=1e-9)
    assert (rows, "ink", "sheet", 0.0) == (squares.rows, squares.fill, ground.fill, ground.width)
    (left, top), side = squares.corner, len(rows) * module
    quiet = 4 * module
    edges = [(left - quiet, top + quiet), (left + side + quiet, top - side - quiet)]
    assert numpy.allclose([ground.points[0], ground.points[2]], edges, atol=1e-9)
    steps = [start + step * module for start in (left, top - side) for step in range(len(rows) + 1)]
    assert [] == [edge for edge in steps if math.fabs(float(coordinate(edge)) - edge) > 1e-9]
    assert BOX.left <= edges[0][0] < edges[1][0] <= BOX.right
    assert BOX.bottom <= edges[1][1] < edges[0][1] <= BOX.top


def test_a_mirror_shows_the_squares_turned_over():
    [squares] = mirrored(Page(20.0, 10.0, (Squares(Point(2.0, 8.0), 0.5, ("110", "1")),))).items
    assert Squares(Point(16.5, 8.0), 0.5, ("011", "001")) == squares


@pytest.mark.parametrize("rows", [(), ("10",), ("10", "1")])
def test_rows_that_are_no_square_are_refused(rows: tuple[str, ...]):
    with pytest.raises(ValueError, match="square"):
        code.code(rows, BOX)
