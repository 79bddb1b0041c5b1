"""The QR code's modules and the shapes that draw them."""

import math

import numpy
import pytest
import segno
import zxingcpp

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


def area(points: tuple[Point, ...]) -> float:
    """The area of a polygon, negative when it runs clockwise."""
    pairs = zip(points, points[1:] + points[:1], strict=True)
    return math.fsum(a.x * b.y - b.x * a.y for a, b in pairs) / 2


def holds(points: tuple[Point, ...], place: Point) -> bool:
    """Whether a place lies in a polygon: an odd number of edges to its right."""
    pairs = zip(points, points[1:] + points[:1], strict=True)
    return 1 == sum(
        1 for a, b in pairs
        if (a.y > place.y) != (b.y > place.y) and place.x < a.x + (place.y - a.y) * (b.x - a.x) / (b.y - a.y)
    ) % 2  # fmt: skip


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


@pytest.mark.parametrize("text", TEXTS, ids=lambda text: f"{len(text)} characters")
def test_the_shapes_cover_the_dark_modules_and_nothing_else(text: str):
    """The middle of each dark module lies in exactly one shape, no light one in any, and the areas agree."""
    rows = qr.matrix(text)[:60]
    rows = tuple(row[: len(rows)] for row in rows)
    box = Box(10.0, 20.0, 10.0 + (len(rows) + 8) * 0.3, 20.0 + (len(rows) + 8) * 0.3)
    ground, *dark = code.code(rows, box).items
    assert 0.3 == code.module_of(rows, box)
    corners = [item.points for item in dark]
    for number, row in enumerate(rows):
        for column, mark in enumerate(row):
            middle = Point(box.left + (4.5 + column) * 0.3, box.top - (4.5 + number) * 0.3)
            inside = [points for points in corners if holds(points, middle)]
            assert int(mark) == len(inside), (number, column)
    assert math.isclose("".join(rows).count("1") * 0.09, -math.fsum(map(area, corners)), rel_tol=1e-9)
    assert {("ink", 0.0, True)} == {(item.fill, item.width, item.closed) for item in dark}
    assert ("sheet", 0.0) == (ground.fill, ground.width)


def test_a_pattern_with_holes_and_steps_is_outlined_without_idle_corners():
    """A ring is cut into two shapes; straight edges have corners at their ends only."""
    ground, *dark = code.code(("111", "101", "111"), Box(0.0, 0.0, 11.0, 11.0)).items
    assert [(0, 11), (11, 11), (11, 0), (0, 0)] == list(ground.points)
    assert [
        [(7, 6), (7, 5), (6, 5), (6, 6)],
        [(7, 7), (7, 6), (5, 6), (5, 5), (7, 5), (7, 4), (4, 4), (4, 7)],
    ] == [[(point.x, point.y) for point in item.points] for item in dark]


def test_every_corner_is_written_exactly_and_the_quiet_zone_stays_in_the_box():
    """Modules are whole micrometres, so the four decimals that a writer keeps hold every edge."""
    rows = qr.matrix(LINK)
    module = code.module_of(rows, BOX)
    group = code.code(rows, BOX)
    assert "code" == group.name
    assert 0.285 == module
    assert math.isclose(module * 1000, round(module * 1000), abs_tol=1e-9)
    places = [point for item in group.items for point in item.points]
    assert [] == [p for p in places if max(abs(float(coordinate(v)) - v) for v in p) > 1e-9]
    assert BOX.left <= min(p.x for p in places) < max(p.x for p in places) <= BOX.right
    assert BOX.bottom <= min(p.y for p in places) < max(p.y for p in places) <= BOX.top
    dark = [point for item in group.items[1:] for point in item.points]
    edge = min(point.x for point in group.items[0].points)
    assert math.isclose(4 * module, min(point.x for point in dark) - edge, abs_tol=1e-9)


def test_shapes_are_few():
    """Fewer than half of the dark runs of a typical link's code."""
    rows = qr.matrix(LINK)
    runs = sum(len([part for part in row.split("0") if part]) for row in rows)
    assert runs > 1000
    assert len(code.code(rows, BOX).items) < runs / 2


@pytest.mark.parametrize("rows", [(), ("10",), ("10", "1")])
def test_rows_that_are_no_square_are_refused(rows: tuple[str, ...]):
    with pytest.raises(ValueError, match="square"):
        code.code(rows, BOX)
