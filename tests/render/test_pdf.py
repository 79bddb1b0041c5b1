"""The PDF writer, its output read back by pdfium: lengths, words, fonts and print settings."""

import ctypes
import io
import math
import re
import time
import zlib
from collections.abc import Iterator

import numpy
import pypdfium2 as pdfium
import pypdfium2.raw as raw
import pytest
from fontTools.ttLib import TTFont
from render.readers import unpacked

from pycore import lettering
from pycore.drawing import Arc, Arrow, Circle, Document, Group, Line, Page, Run, Shape, Squares, Text
from pycore.errors import DrawingError
from pycore.geometry import ORIGIN, Point
from pycore.lettering import made
from pycore.writers import pdf

MM_PER_POINT = 25.4 / 72
WIDTH, HEIGHT = 297.0, 210.0
MIDDLE = Point(148.5, 105.0)


def written(*items, **choices) -> bytes:
    return pdf.write(Document((Page(WIDTH, HEIGHT, items),), "A sheet"), **choices)


def paths(data: bytes) -> list[list[tuple[int, float, float]]]:
    """Every path of the first page: its segments' kinds and ends in mm, through the object's matrix."""
    found = []
    for item in pdfium.PdfDocument(data)[0].get_objects(filter=[raw.FPDF_PAGEOBJ_PATH]):
        matrix = item.get_matrix()
        segments = []
        for number in range(raw.FPDFPath_CountSegments(item)):
            segment = raw.FPDFPath_GetPathSegment(item, number)
            x, y = ctypes.c_float(), ctypes.c_float()
            assert raw.FPDFPathSegment_GetPoint(segment, x, y)
            x, y = matrix.on_point(x.value, y.value)
            segments.append((raw.FPDFPathSegment_GetType(segment), x * MM_PER_POINT, y * MM_PER_POINT))
        found.append(segments)
    return found


def words(data: bytes, page: int = 0) -> str:
    return pdfium.PdfDocument(data)[page].get_textpage().get_text_range()


def said(text: str, *, at: Point = MIDDLE, **choices) -> Text:
    return Text((Run(text),), at, **choices)


def streams(data: bytes) -> list[bytes]:
    """Every stream of the file, uncompressed."""
    bodies = re.findall(rb"stream\n(.*?)\nendstream", unpacked(data), re.DOTALL)
    return [zlib.decompress(body) for body in bodies]


def font_object(data: bytes, name: bytes) -> bytes:
    """The one object of the file that holds a name."""
    (found,) = [body for body in re.findall(rb"\d+ 0 obj\n(.*?)\nendobj", unpacked(data), re.DOTALL) if name in body]
    return found


def fan() -> tuple[Arrow, ...]:
    """Arrows of awkward lengths all round, from a tail at no round number."""
    tail = Point(148.123456, 105.654321)
    return tuple(Arrow(tail, tail.moved(7.3 + number * 1.237, number * 7.77)) for number in range(80))


def test_every_arrow_runs_from_its_tail_to_its_tip_within_half_a_micrometre():
    worst = 0.0
    for arrow, exact in zip(fan(), paths(written(*fan()))[::3], strict=True):
        (_, *tail), (_, *tip) = exact
        worst = max(worst, math.dist(tail, arrow.tail), math.dist(tip, arrow.tip))
        length = math.dist(arrow.tail, arrow.tip)
        assert length == pytest.approx(math.dist(tail, tip), abs=0.0005)
    assert worst < 0.0005


def test_the_heads_point_stands_on_the_tip_and_the_shaft_stops_short_of_it():
    found = paths(written(*fan()))
    for arrow, shaft, head in zip(fan(), found[1::3], found[2::3], strict=True):
        assert math.dist(arrow.tip, head[0][1:]) < 0.0005
        assert 3.45 == pytest.approx(math.dist(arrow.tip, shaft[-1][1:]), abs=0.001)


def test_lengths_across_the_whole_of_the_largest_paper_are_true():
    page = Page(594.0, 420.0, (Line(Point(17, 17), Point(577, 17)), Line(Point(17, 17), Point(17, 403))))
    across, up = paths(pdf.write(Document((page,), "A2")))
    assert 560.0 == pytest.approx(across[1][1] - across[0][1], abs=0.0005)
    assert 386.0 == pytest.approx(up[1][2] - up[0][2], abs=0.0005)


@pytest.mark.parametrize("size", [(148, 210), (297, 210), (594, 420), (215.9, 279.4), (431.8, 279.4)])
def test_the_page_has_its_size_to_a_fifth_of_a_micrometre(size):
    data = pdf.write(Document((Page(*size, ()),), "t"))
    box = re.search(rb"/MediaBox \[ 0 0 ([\d.]+) ([\d.]+) \]", unpacked(data)).groups()
    assert size == pytest.approx([float(side) * MM_PER_POINT for side in box], abs=0.0002)
    assert size == pytest.approx([s * MM_PER_POINT for s in pdfium.PdfDocument(data)[0].get_size()], abs=0.0002)


@pytest.mark.parametrize("sweep", [1.0, 29.0, 90.0, -135.0, 180.0, 300.0, -360.0])
def test_an_arc_stays_on_its_circle_between_its_ends(sweep):
    centre, radius = Point(110.0, 95.0), 75.0
    (segments,) = paths(written(Arc(centre, radius, 12.3, sweep)))
    places = [place for _, *place in segments]
    assert math.dist(places[0], centre.moved(radius, 12.3)) < 0.0005
    assert math.dist(places[-1], centre.moved(radius, 12.3 + sweep)) < 0.0005
    for start in range(0, len(places) - 1, 3):
        a, b, c, d = places[start : start + 4]
        for step in range(21):
            t = step / 20
            weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
            place = [math.fsum(w * p[axis] for w, p in zip(weights, (a, b, c, d), strict=True)) for axis in (0, 1)]
            assert radius == pytest.approx(math.dist(place, centre), abs=0.0005)


def test_a_circle_and_shapes_are_closed_filled_and_stroked_as_asked():
    square = (ORIGIN, Point(9, 0), Point(9, 9), Point(0, 9))
    data = written(
        Circle(Point(50, 50), 10.0, fill="accent"),
        Shape(square, 0.7),
        Shape(square, fill="rule"),
        Shape(square, 0.7, closed=False),
        Shape(square),
    )
    items = list(pdfium.PdfDocument(data)[0].get_objects())
    modes = []
    for item in items:
        fill, stroke = ctypes.c_int(), ctypes.c_int()
        raw.FPDFPath_GetDrawMode(item, fill, stroke)
        modes.append((bool(fill.value), bool(stroke.value)))
    assert [(True, True), (False, True), (True, False), (False, True)] == modes
    closed = [raw.FPDFPathSegment_GetClose(raw.FPDFPath_GetPathSegment(item, len(path) - 1)) for item, path in
              zip(items, paths(data), strict=True)]  # fmt: skip
    assert [1, 1, 1, 0] == closed


def test_squares_are_filled_together_true_to_their_place():
    """Runs of dark squares as rectangles of one path, by pdfium: corners in mm, y up, and one filling for all."""
    rows = ("1101", "0000", "0110")
    data = written(Squares(Point(20.0, 60.0), 0.285, rows, "accent"), Shape((ORIGIN, Point(9, 0), Point(9, 9)), 0.7))
    squares, _ = pdfium.PdfDocument(data)[0].get_objects()
    fill, stroke = ctypes.c_int(), ctypes.c_int()
    raw.FPDFPath_GetDrawMode(squares, fill, stroke)
    assert (True, False) == (bool(fill.value), bool(stroke.value))
    found = sorted({(round(x * MM_PER_POINT, 3), round(y * MM_PER_POINT, 3)) for x, y in corners(squares)})
    wanted = [
        (20.0 + 0.285 * column, 60.0 - 0.285 * row)
        for first, last, line in ((0, 2, 0), (3, 4, 0), (1, 3, 2))
        for column in (first, last) for row in (line, line + 1)
    ]  # fmt: skip
    assert numpy.allclose(found, sorted(wanted), atol=0.0006)


def corners(path: pdfium.PdfObject) -> Iterator[tuple[float, float]]:
    """Every point of a path in points on the page, y up."""
    matrix = path.get_matrix()
    for index in range(raw.FPDFPath_CountSegments(path)):
        x, y = ctypes.c_float(), ctypes.c_float()
        raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(path, index), x, y)
        yield matrix.on_point(x.value, y.value)


def test_pen_width_colour_and_dashes_change_only_where_asked_and_are_right_everywhere():
    lines = (
        Line(ORIGIN, Point(9, 9), 0.5, "blue"),
        Line(ORIGIN, Point(9, 8), 0.5, "blue", (3.0, 0.75)),
        Line(ORIGIN, Point(9, 7), 0.25, "brown", (3.0, 0.75)),
        Line(ORIGIN, Point(9, 6), 0.25, "brown"),
    )
    (content,) = streams(written(*lines))
    assert [b"0.0706 0.3412 0.702 RG", b"0.5412 0.2902 0.0784 RG"] == re.findall(rb".*RG", content)
    assert [b"0.5 w", b"0.25 w"] == re.findall(rb".*\bw$", content, re.MULTILINE)
    assert [b"[3 0.75] 0 d", b"[] 0 d"] == re.findall(rb"\[.*d$", content, re.MULTILINE)


def test_printing_is_at_true_size_and_the_language_and_title_are_told():
    data = pdf.write(Document((Page(WIDTH, HEIGHT, ()),), "Neutral current – 31,2 A", "en-GB", "A class set"))
    document = pdfium.PdfDocument(data)
    plain = unpacked(data)
    assert b"/PrintScaling /None" in plain and b"/Lang <feff0065006e002d00470042>" in plain and b"/Rotate" not in plain
    assert 0 == raw.FPDF_VIEWERREF_GetPrintScaling(document)
    told = document.get_metadata_dict()
    assert ("Neutral current – 31,2 A", "A class set", "") == tuple(
        told[k] for k in ("Title", "Subject", "CreationDate")
    )
    assert 17 == document.get_version() and data.startswith(b"%PDF-1.7\n")


def test_text_is_read_back_in_drawing_order():
    texts = ("Neutral current", "I₁ = 18.4 A ∙ 3 → ½ √2 ≤ 4 Ω µ".replace("∙", "·"), "(brackets) \\ <angles> & Łódź")
    items = [said(text, at=Point(20, 100 - 10 * row)) for row, text in enumerate(texts)]
    assert "\r\n".join(texts) == words(written(*items))


def test_a_lowered_index_stays_with_its_symbol():
    index = (Run("I", "italic", 5.0), Run("N", "regular", 3.5, -0.8), Run(" = 12.5 A"))
    assert "IN = 12.5 A" == words(written(Text(index, Point(50, 50))))


@pytest.mark.parametrize("turn", [0.0, 30.0, 87.5, -60.0, 180.0])
def test_turned_text_is_read_in_order(turn):
    text = Text((Run("set off "), Run("60°", "bold")), Point(100, 100), "middle", turn=turn)
    assert "set off 60°" == words(written(text))


def test_a_no_break_space_is_found_as_a_space():
    assert "18.4 A" == words(written(said("18.4\u00a0A")))
    both = written(said("18.4\u00a0A"), said("a b", at=Point(50, 20)))
    assert "18.4 A\r\na b" == words(both)


@pytest.mark.parametrize(("anchor", "part"), [("start", 0.0), ("middle", 0.5), ("end", 1.0)])
def test_every_letter_stands_where_the_lettering_says(anchor, part):
    """The origin of each character, read by pdfium, against sums of the lettering's advances."""
    runs = (Run("H18.4", "regular", 5.0), Run("bold", "bold", 7.0), Run("V", "italic", 5.0))
    data = written(Text(runs, Point(100, 50), anchor))
    page = pdfium.PdfDocument(data)[0].get_textpage()
    along, index = 100 - part * lettering.runs_width(runs), 0
    for run in runs:
        for character in run.text:
            x, y = ctypes.c_double(), ctypes.c_double()
            assert raw.FPDFText_GetCharOrigin(page, index, x, y)
            assert (along, 50.0) == pytest.approx((x.value * MM_PER_POINT, y.value * MM_PER_POINT), abs=0.001)
            along, index = along + lettering.width(character, run.face, run.size), index + 1
    assert index == page.count_chars()


def test_the_glyph_widths_in_the_file_are_the_letterings():
    text = "AV 18.4 ₁Ω"
    row = font_object(written(said(text)), b"/CIDToGIDMap")
    widths = {}
    for first, group in re.findall(rb"(\d+) \[([\d. ]+)\]", row.split(b"/W ")[1]):
        widths |= {int(first) + place: float(width) for place, width in enumerate(group.split())}
    expected = {made.GLYPHS["regular"][letter]: made.ADVANCES["regular"][letter] for letter in text}
    assert expected == widths


def test_only_the_faces_and_glyphs_in_use_are_embedded():
    data = written(said("AB"), Text((Run("I", "italic"),), Point(9, 9)))
    names = re.findall(rb"/FontName /([A-Z]{6})\+(PhasorFolio-\w+)", unpacked(data))
    assert {b"PhasorFolio-Regular", b"PhasorFolio-Symbol"} == {name for _, name in names}
    fonts = [TTFont(io.BytesIO(stream)) for stream in streams(data) if stream.startswith(b"\0\1\0\0")]
    drawn = [sum(font["glyf"][name].numberOfContours != 0 for name in font.getGlyphOrder()) for font in fonts]
    assert [1, 2] == sorted(drawn)
    assert b"/FontName" not in unpacked(written(*fan()))


def test_equal_documents_give_equal_bytes_without_a_date():
    items = (*fan(), said("18.4 A"), Arc(ORIGIN, 20, 0, 90))
    assert written(*items) == written(*items)
    assert b"Date" not in unpacked(written(*items)) and b"/ID [" in written(*items)
    assert written(*items) != written(*items[:-1])


def test_pages_of_unequal_paper_stand_in_one_document():
    pages = tuple(Page(*size, (said(f"page {size}"),)) for size in ((297, 210), (210, 297), (420, 297)))
    data = pdf.write(Document(pages, "A class set"))
    document = pdfium.PdfDocument(data)
    assert [(297, 210), (210, 297), (420, 297)] == [
        tuple(round(side * MM_PER_POINT) for side in document[number].get_size()) for number in range(3)
    ]
    assert ["page (297, 210)", "page (210, 297)", "page (420, 297)"] == [words(data, number) for number in range(3)]


def test_a_class_set_shares_its_fonts_and_takes_time_in_proportion():
    page = Page(WIDTH, HEIGHT, (*fan(), *[said(f"row {row}", at=Point(20, 5 * row)) for row in range(40)]))
    seconds = []
    for count in (50, 400):
        began = time.perf_counter()
        data = pdf.write(Document((page,) * count, "t"))
        seconds.append(time.perf_counter() - began)
        assert count == len(pdfium.PdfDocument(data)) and 1 == unpacked(data).count(b"/FontFile2")
    assert seconds[1] < 8 * 3 * seconds[0]


def test_a_correction_stretches_about_the_middle_of_the_page():
    line = Line(Point(48.5, 105), Point(248.5, 105)), Line(Point(148.5, 55), Point(148.5, 155))
    across, up = paths(written(*line, correction=Point(1.01, 0.98)))
    assert [47.5, 105.0, 249.5, 105.0] == pytest.approx([*across[0][1:], *across[1][1:]], abs=0.0005)
    assert [148.5, 56.0, 148.5, 154.0] == pytest.approx([*up[0][1:], *up[1][1:]], abs=0.0005)


def test_an_arrow_of_no_length_leaves_no_speck():
    assert [] == paths(written(Group((Arrow(Point(50, 50), Point(50, 50)),))))


@pytest.mark.parametrize("bad", [math.nan, math.inf])
def test_nan_and_infinity_are_refused_wherever_they_stand(bad):
    there = Point(bad, 1.0)
    for item in (
        Line(ORIGIN, there),
        Line(ORIGIN, Point(1, 1), width=bad),
        Line(ORIGIN, Point(1, 1), dash=(bad, 1.0)),
        Arrow(ORIGIN, there),
        Arc(ORIGIN, bad, 0.0, 90.0),
        Arc(ORIGIN, 1.0, bad, 90.0),
        Arc(ORIGIN, 1.0, 0.0, bad),
        Circle(there, 1.0),
        Circle(ORIGIN, bad),
        Shape((ORIGIN, there), 0.5),
        Shape((ORIGIN,), bad),
        Squares(there, 1.0, ("1",)),
        Squares(ORIGIN, bad, ("1",)),
        said("a", at=there),
        said("a", turn=bad),
        Text((Run("a", size=bad),), ORIGIN),
    ):
        with pytest.raises(DrawingError):
            written(Group((item,)))
    with pytest.raises(DrawingError):
        pdf.write(Document((Page(bad, 210.0, ()),), "t"))


def test_a_letter_that_no_face_holds_is_refused_by_name_and_odd_titles_are_cleaned():
    with pytest.raises(ValueError, match="no glyph for '漢'"):
        written(said("漢"))
    data = pdf.write(Document((Page(9, 9, ()),), "a\ud800b\x00c (d) \\ 𝕀"))
    assert "a\ufffdb\ufffdc (d) \\ 𝕀" == pdfium.PdfDocument(data).get_metadata_dict()["Title"]
