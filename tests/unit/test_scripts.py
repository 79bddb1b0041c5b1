"""Texts in pieces by script, direction and order on the line; letters read from a request; outlines in PDF and SVG."""

import re

import pymupdf
import pytest

from pycore.drawing import Document, Page
from pycore.geometry import Point
from pycore.lettering import made
from pycore.lettering.glyphs import NO_LETTERS, Glyph, Letters, Shaped, joined
from pycore.lettering.letters import commands, read, side_by_side, unknown
from pycore.lettering.scripts import pieces
from pycore.pages.class_set import read_roll, shortened
from pycore.render.lettered import lacking
from pycore.sheet.lettered import text, width_of
from pycore.writers import pdf, svg

SQUARE = "M 100 0 L 100 700 L 600 700 L 600 0 Z"
BOW = "M 0 0 Q 500 900 1000 0 Z"
DANA = "דנה"
LETTERS = Letters({
    f"Hebr {DANA}": (Glyph("ה", 700, SQUARE), Glyph("נ", 500, SQUARE), Glyph("ד", 600, BOW)),
    "Hebr כהן": (Glyph("ן", 400, SQUARE), Glyph("ה", 700, SQUARE), Glyph("כ", 600, BOW)),
})  # fmt: skip


@pytest.mark.parametrize(("given", "expected"), [
    ("Zoë", ["Zoë"]),
    ("Nguyễn", ["Nguy", "Latn ễ", "n"]),
    ("e\u0331va", ["Latn e\u0331", "va"]),
    ("דנה כהן", ["Hebr כהן", " ", "Hebr דנה"]),
    ("דנה 12 כהן", ["Hebr כהן", " ", "12", " ", "Hebr דנה"]),
    ("דנה (Dana)", ["(", "Dana", ") ", "Hebr דנה"]),
    ("John דנה כהן Smith", ["John ", "Hebr כהן", " ", "Hebr דנה", " Smith"]),
    ("دانا ۱۲", ["Arab ۱۲", " ", "Arab دانا"]),
    ("山田 はな", ["Jpan 山田", " ", "Jpan はな"]),
    ("王小明", ["Hani 王小明"]),
    ("李 수민", ["Kore 李", " ", "Kore 수민"]),
])  # fmt: skip
def test_pieces_stand_in_their_order_on_the_line(given: str, expected: list[str]):
    assert expected == [one.key if one.script else one.text for one in pieces(given)]


def test_each_unknown_piece_is_asked_for_once_and_known_ones_never():
    assert ["Hebr לוי"] == [one.key for one in unknown(LETTERS, ["דנה לוי", "לוי כהן", "Amber"])]


def test_a_text_is_set_whole_or_not_at_all():
    assert "Amber" == NO_LETTERS.set("Amber")
    assert NO_LETTERS.set("דנה") is None
    assert LETTERS.set("דנה לוי") is None
    found = LETTERS.set("דנה כהן")
    assert isinstance(found, Shaped)
    assert "דנה כהן" == found.text
    size, usual = (text(one, Point(0.0, 0.0), 1.0).runs[0].size for one in (found, " "))
    assert 3.5 * size + size * width_of(" ", 1.0) / usual == pytest.approx(width_of(found, 1.0))


def test_joined_texts_keep_their_pieces_in_order():
    assert "a, b" == joined(["a", "b"], ", ")
    found = joined(["a", LETTERS.set(DANA) or ""], ", ")
    assert isinstance(found, Shaped)
    assert ["a", ", "] == list(found.pieces[:2])


@pytest.mark.parametrize("given", [
    {"glyphs": [["a", 500]], "runs": {}},
    {"glyphs": [["a", -1, ""]], "runs": {}},
    {"glyphs": [["a", 500, "M 0 0 L 5"]], "runs": {}},
    {"glyphs": [["a", 500, "M 0 0\" onload=\"x"]], "runs": {}},
    {"glyphs": [["a", 500, "L 0 0"]], "runs": {}},
    {"glyphs": [], "runs": {"Hebr a": [0]}},
    {"glyphs": [], "runs": []},
    {"runs": {}},
    7,
])  # fmt: skip
def test_letters_that_no_page_sends_are_refused(given: object):
    with pytest.raises(ValueError, match=r"letters|glyph"):
        read(given)


def test_letters_are_read_as_they_were_sent():
    found = read({"glyphs": [["ד", 600, BOW]], "runs": {"Hebr ד": [0, 0], "Hebr ם": None}})
    assert (Glyph("ד", 600, BOW),) * 2 == found.glyphs["Hebr ד"]
    assert found.glyphs["Hebr ם"] is None


def test_a_request_with_a_name_in_other_letters_is_answered_by_asking_for_them():
    request = {"do": "answer", "page": "add-phasors", "form": {"who": "דנה"}}
    assert [{"key": "Hebr דנה", "text": "דנה", "script": "Hebr", "rtl": True}] == lacking(request)["unlettered"]
    assert lacking({**request, "letters": {"glyphs": [], "runs": {"Hebr דנה": None}}}) is None
    assert lacking({**request, "form": {"who": "Zoë"}}) is None
    assert lacking({**request, "do": "hint"}) is None
    roll = {"do": "begin", "page": "class-set", "form": {}, "roll": "Zoë\n\"דנה\"\t"}
    assert ["דנה"] == [one["text"] for one in lacking(roll)["unlettered"]]


def test_outlines_side_by_side_are_moved_by_what_stands_before():
    assert [("M", [600, 0]), ("Q", [1100, 900, 1600, 0]), ("Z", [])] == commands(side_by_side(
        (Glyph("a", 600, ""), Glyph("b", 600, BOW))
    ))  # fmt: skip


def page_of(*names: str) -> Page:
    """A page with these names, one below another."""
    return Page(200.0, 100.0, tuple(
        text(LETTERS.set(name) or "", Point(20.0, 80.0 - 12.0 * at), 5.0) for at, name in enumerate(names)
    ), "Names", "names")  # fmt: skip


def test_a_pdf_has_the_letters_as_text_in_the_order_of_reading_and_twice_the_same_bytes():
    document = Document((page_of("דנה כהן", "Amber", DANA),), "Names")
    data = pdf.write(document)
    assert data == pdf.write(document)
    assert ["דנה כהן", "Amber", "דנה"] == pymupdf.open(stream=data)[0].get_text().split("\n")[:3]


def test_more_letters_than_one_font_takes_go_on_in_the_next():
    many = tuple(Glyph(chr(0x4E00 + at), 1000, SQUARE) for at in range(600))
    letters = Letters({"Hani " + "".join(one.text for one in many): many})
    shaped = letters.set("".join(one.text for one in many))
    page = Page(2000.0, 100.0, (text(shaped, Point(5.0, 50.0), 2.0),), "Names", "names")
    document = pymupdf.open(stream=pdf.write(Document((page,), "Names")))
    assert 3 == len([font for font in document[0].get_fonts() if font[2] == "Type3"])
    assert "".join(one.text for one in many) == document[0].get_text().strip()


def test_the_outline_is_drawn_where_it_belongs():
    page = page_of(DANA)
    shown = pymupdf.open(stream=pdf.write(Document((page,), "Names")))[0]
    pixels = shown.get_pixmap(dpi=254, colorspace=pymupdf.csGRAY)  # 10 to a mm
    size = page.items[0].runs[0].size

    def dark(across: float, up: float) -> bool:
        return pixels.pixel(round((20.0 + across * size) * 10), round((20.0 - up * size) * 10))[0] < 128

    assert dark(0.35, 0.35)  # the first square, from 0.1 to 0.6 em
    assert not dark(0.05, 0.35)
    assert not dark(0.65, 0.35)
    assert dark(1.2 + 0.5, 0.44)  # the bow's top is at half its control point's height
    assert not dark(1.2 + 0.5, 0.47)


def test_letters_that_reach_high_or_low_are_smaller_so_that_they_keep_to_their_line():
    """They ran into the label above a name, and through the rule below it."""
    tall, deep = Glyph("ך", 500, "M 0 0 L 0 1500 L 9 0 Z"), Glyph("ף", 500, "M 0 0 L 0 -800 L 9 0 Z")
    capitals = 0.001 * made.CAPITAL_HEIGHT["regular"]
    usual = Glyph("נ", 500, SQUARE)
    for glyph, share in ((tall, 1.25 * capitals / 1.5), (deep, 0.4 * capitals / 0.8), (usual, 1.0)):
        plain, fitted = (
            text(one, Point(0.0, 0.0), 2.0).runs[0].size for one in ("n", Shaped(glyph.text, ((glyph,),)))
        )
        assert share * plain == pytest.approx(fitted)


def test_in_svg_the_letters_are_paths_that_say_the_name():
    written = svg.write(page_of("דנה כהן"), prefix="p", role="sheet")
    assert 'role="img" aria-label="דנה כהן"' in written
    assert 1 == len(re.findall(r"<path transform=\"translate\(", written))


def test_a_long_name_is_cut_between_words_and_never_within_one():
    whole = width_of(LETTERS.set("דנה כהן"), 2.0)
    first = width_of(LETTERS.set("דנה…"), 2.0)
    assert "דנה כהן" == shortened("דנה כהן", whole + 0.1, 2.0, LETTERS)
    assert "דנה…" == shortened("דנה כהן", first + 0.1, 2.0, LETTERS)
    assert "" == shortened("דנה כהן", first - 1.0, 2.0, LETTERS)


def test_a_name_without_letters_is_the_number_in_the_list():
    names = read_roll("Amber\nדנה\nלוי", "A4", LETTERS)
    assert [("Amber", True), ("דנה", True), ("Learner 3", False)] == [(one.printed, one.is_set) for one in names]
