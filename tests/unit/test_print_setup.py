"""The print set-up: bars of true length, readings to corrections, limits, feed axes, refusals, and its requests."""

import json
import math
import re
from ctypes import c_float

import pypdfium2 as pdfium
import pypdfium2.raw as raw
import pytest

from pycore.api import handle
from pycore.drawing import Line, Text
from pycore.errors import InputError
from pycore.pages.print_setup import FIELDS, PrinterCorrection, percent, saved_correction, set_up
from pycore.sheet.lettered import box_of
from pycore.sheet.media import PAPERS
from pycore.sheet.setup_sheet import SETUP_PAPERS, bars
from pycore.writers import svg
from pycore.writers.collect import collect

MM_PER_POINT = 25.4 / 72
SHEETS = [(paper, orientation) for paper in SETUP_PAPERS for orientation in ("portrait", "landscape")]
KEPT = {"along": 1.008, "across": 0.997, "edge": "short", "lead": 210.0}


def read(upright: str, level: str, kept: PrinterCorrection | None = None, **choices: str):
    """The set-up that two readings give."""
    return set_up({"upright": upright, "level": level, **choices}, kept)


def asked(request: dict) -> tuple[dict, bytes | None]:
    """The api's reply to a request."""
    text, data = handle(json.dumps(request))
    return json.loads(text), data


def strokes(page, name: str) -> list[Line]:
    """The two end strokes of a bar."""
    return [one.item for one in collect(page) if name in one.names and isinstance(one.item, Line)]


def straight(data: bytes) -> list[tuple[float, float, float, float]]:
    """Every path of two points in a PDF's first page, mm from the lower left corner."""
    found = []
    document = pdfium.PdfDocument(data)
    for item in document[0].get_objects(filter=[raw.FPDF_PAGEOBJ_PATH]):
        if raw.FPDFPath_CountSegments(item) != 2:
            continue
        ends = []
        for number in range(2):
            across, up = c_float(), c_float()
            assert raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(item, number), across, up)
            ends += [value * MM_PER_POINT for value in item.get_matrix().on_point(across.value, up.value)]
        found.append(tuple(ends))
    document.close()
    return found


@pytest.mark.parametrize(("paper", "orientation"), SHEETS)
def test_bars_are_whole_centimetres_from_150_to_250_mm_and_17_mm_from_every_edge(paper: str, orientation: str):
    place = bars(paper, orientation)
    for length, side in ((place.upright, place.height), (place.level, place.width)):
        assert 0.0 == length % 10
        assert 150 <= length <= 250
        assert length == 250 or length + 10 > side - 34, "a longer bar would fit"
    assert min(place.upright_foot) >= 17 and min(place.level_left) >= 17
    assert place.upright_foot.y + place.upright <= place.height - 17 + 1e-9
    assert place.level_left.x + place.level <= place.width - 17 + 1e-9


@pytest.mark.parametrize(("paper", "orientation"), SHEETS)
def test_end_strokes_of_svg_and_pdf_stand_exactly_as_far_apart_as_the_sheet_says(paper: str, orientation: str):
    setup = set_up({"paper": paper, "orientation": orientation}, None)
    written = svg.write(setup.page, prefix="sheet", role="sheet")
    groups = dict(re.findall(r'<g data-name="bar-(upright|level)">(.*?)</g>', written))
    ends = {
        "upright": [float(y) for y in re.findall(r'<line[^>]* y1="([\d.]+)"', groups["upright"])],
        "level": [float(x) for x in re.findall(r'<line[^>]* x1="([\d.]+)"', groups["level"])],
    }
    reply, data = asked({"do": "setup", "form": {"paper": paper, "orientation": orientation}, "pdf": True})
    assert reply["ok"]
    lines = straight(data)
    for name, length in (("upright", setup.bars.upright), ("level", setup.bars.level)):
        assert f"{length:.0f}" in "".join(one.item.plain for one in collect(setup.page) if isinstance(one.item, Text))
        assert length == pytest.approx(abs(ends[name][1] - ends[name][0]), abs=0.0002)
        first, second = strokes(setup.page, f"bar-{name}")
        found = [min(lines, key=lambda line, s=s: math.dist(line, (*s.start, *s.end))) for s in (first, second)]
        assert length == pytest.approx(math.dist(found[0][:2], found[1][:2]), abs=0.0005)


@pytest.mark.parametrize(("paper", "orientation"), SHEETS)
@pytest.mark.parametrize("printed", ["plain", "corrected"])
def test_no_text_of_the_sheet_touches_another_or_leaves_the_frame(paper: str, orientation: str, printed: str):
    kept = PrinterCorrection(0.9712, 1.0288, "long", 297.0)
    page = set_up({"paper": paper, "orientation": orientation, "printed": printed}, kept).page
    texts = [one.item for one in collect(page) if isinstance(one.item, Text) and not one.item.turn]
    boxes = [(text.plain, box_of(text, max(run.size for run in text.runs) * 0.65)) for text in texts]
    for index, (words, box) in enumerate(boxes):
        assert 10 < box.left and box.right < page.width - 10, words
        assert 10 < box.bottom and box.top < page.height - 10, words
        for other, second in boxes[index + 1 :]:
            apart = (
                box.right <= second.left or second.right <= box.left
                or box.top <= second.bottom or second.top <= box.bottom
            )  # fmt: skip
            assert apart, (words, other)


def test_a_correction_is_the_true_length_divided_by_the_reading():
    found = read("248", "170.5 mm").correction
    assert found is not None
    assert (250 / 248, 170 / 170.5) == (found.along, found.across)


@pytest.mark.parametrize("text", ["24,8 cm", "248", "248,0 mm", " 24.8cm ", "2.48e2"])
def test_readings_are_taken_in_millimetres_or_centimetres_with_either_mark(text: str):
    found = read(text, "170").correction
    assert found is not None
    assert 250 / 248 == pytest.approx(found.along, rel=1e-12)


def test_the_axes_follow_the_edge_that_goes_in_first_and_the_way_round():
    """Upright 1 % short: along the feed on an upright sheet, across it when the sheet lies or goes in sideways."""
    along = read("247.52", "170").correction
    assert (1.01, 1.0) == pytest.approx((along.along, along.across), abs=1e-4)
    lying = read("168.32", "250", orientation="landscape").correction
    assert (1.0, 1.01) == pytest.approx((lying.along, lying.across), abs=1e-4)
    sideways = read("247.52", "170", edge="long").correction
    assert (1.0, 1.01) == pytest.approx((sideways.along, sideways.across), abs=1e-4)


def test_a_correction_is_swapped_for_landscape_on_every_paper():
    pages = PrinterCorrection(1.02, 0.99, "short", 210.0).by_page()
    assert {paper.lower() + way for paper in PAPERS for way in "lp"} == set(pages)
    assert all((0.99, 1.02) == factors for key, factors in pages.items() if key.endswith("p"))
    assert all((1.02, 0.99) == factors for key, factors in pages.items() if key.endswith("l"))


def test_a_broad_machine_takes_small_papers_by_their_long_edge_and_large_ones_by_their_short_edge():
    pages = PrinterCorrection(1.02, 0.99, "long", 297.0).by_page()
    assert (1.02, 0.99) == pages["a4p"] == pages["letterp"] == pages["a5p"] == pages["a3l"]
    assert (0.99, 1.02) == pages["a4l"] == pages["a3p"] == pages["tabloidp"]


@pytest.mark.parametrize("share", [0.9701, 1.0299])
def test_up_to_three_per_cent_is_corrected(share: float):
    assert "measured" == read(f"{250 / share:.4f}", "170").state


@pytest.mark.parametrize("share", [0.9690, 1.0310, 0.5, 1.4])
def test_beyond_three_per_cent_the_dialog_is_scaling_and_nothing_is_offered_to_be_kept(share: float):
    found = read(f"{250 / share:.4f}", f"{170 / share:.4f}")
    assert ("refused", True, None) == (found.state, found.scaling, found.correction)
    assert {"upright", "level"} == {fault.field for fault in found.faults}
    assert all("scaling" in fault.message and "3\u00a0%" in fault.message for fault in found.faults)


def test_what_remains_is_a_reading_error_carried_to_160_mm():
    found = read("248", "170")
    assert (0.25 * 160 / 250, 0.25 * 160 / 170) == pytest.approx((found.remains.x, found.remains.y))


def test_a_reading_of_the_corrected_sheet_refines_what_is_kept():
    kept = PrinterCorrection(1.01, 0.99, "short", 210.0)
    found = read("249", "170.5", kept, printed="corrected").correction
    assert (1.01 * 250 / 249, 0.99 * 170 / 170.5) == pytest.approx((found.along, found.across), rel=1e-12)
    assert "true" == read("250.2", "169.8", kept, printed="corrected").state
    assert "refused" == read("245", "170", kept, printed="corrected").state, "3 % holds for the whole"


def test_the_corrected_sheet_is_printed_by_the_kept_correction_and_says_so():
    request = {"do": "setup", "form": {"printed": "corrected"}, "kept": KEPT, "pdf": True}
    page = set_up({"printed": "corrected"}, PrinterCorrection(1.008, 0.997, "short", 210.0)).page
    lines = straight(asked(request)[1])
    for name, factor, true in (("upright", 1.008, 250), ("level", 0.997, 170)):
        ends = []
        for stroke in strokes(page, f"bar-{name}"):
            middle = [105 + (point.x - 105) * 0.997 for point in (stroke.start, stroke.end)]
            high = [148.5 + (point.y - 148.5) * 1.008 for point in (stroke.start, stroke.end)]
            wanted = (middle[0], high[0], middle[1], high[1])
            ends.append(min(lines, key=lambda line, wanted=wanted: math.dist(line, wanted)))
        assert true * factor == pytest.approx(math.dist(ends[0][:2], ends[1][:2]), abs=0.0005)
    words = " ".join(one.item.plain for one in collect(page) if isinstance(one.item, Text))
    assert "+0.8\u00a0% along, −0.3\u00a0% across" in words


@pytest.mark.parametrize(("upright", "level", "faults"), [
    ("40 %", "170", {"upright": "per cent"}),
    ("0", "170", {"upright": "is 0"}),
    ("-250", "170", {"upright": "is negative"}),
    ("abc", "170", {"upright": "not a number"}),
    ("2.4.9", "170", {"upright": "more than one decimal mark"}),
    ("9.8 in", "170", {"upright": "unit"}),
    ("24.9", "170", {"upright": "centimetres"}),
    ("1e300", "170", {"upright": "scaling"}),
    ("1e999", "170", {"upright": "not a finite number"}),
    ("1e-300", "170", {"upright": "scaling"}),
    ("9" * 200, "0", {"upright": "too long", "level": "is 0"}),
    ("170", "250", {"upright": "swapped", "level": "swapped"}),
    ("40 %", "", {"upright": "per cent"}),
])  # fmt: skip
def test_readings_that_cannot_be_used_say_which_and_why(upright: str, level: str, faults: dict[str, str]):
    found = read(upright, level, PrinterCorrection(1.01, 1.0, "short", 210.0))
    assert ("refused", None) == (found.state, found.correction)
    assert set(faults) == {fault.field for fault in found.faults}
    for fault in found.faults:
        assert faults[fault.field] in fault.message
        assert len(fault.message) < 320


def test_the_ways_out_of_a_fault_are_readings_that_can_be_used():
    for given in ({"upright": "24.9", "level": "170"}, {"upright": "170", "level": "250"}):
        (offer,) = dict.fromkeys(offer for fault in set_up(given, None).faults for offer in fault.offers)
        assert set_up({**given, **dict(offer.values)}, None).correction is not None


def test_nothing_read_is_no_fault_and_one_bar_alone_asks_for_the_other():
    assert ("empty", ()) == (read("", "").state, read("", "").faults)
    assert ("waiting", "level") == (read("249", "").state, read("249", "").missing)


@pytest.mark.parametrize(("factor", "written"), [
    (1.008, "+0.8\u00a0%"), (0.998, "−0.2\u00a0%"), (1.0, "0.0\u00a0%"), (1.0004, "0.0\u00a0%"), (0.9996, "0.0\u00a0%"),
])  # fmt: skip
def test_a_correction_is_written_with_its_sign_and_never_as_minus_zero(factor: float, written: str):
    assert written == percent(factor)


@pytest.mark.parametrize("choice", [{"paper": "A9"}, {"orientation": "sideways"}, {"edge": "left"}, {"printed": "x"}])
def test_a_choice_that_is_not_on_offer_is_named(choice: dict[str, str]):
    with pytest.raises(InputError) as refused:
        set_up(choice, None)
    assert set(choice) == {fault.field for fault in refused.value.faults}


def test_a_corrected_sheet_needs_a_correction():
    reply, _ = asked({"do": "setup", "form": {"printed": "corrected"}})
    assert (False, "printed") == (reply["ok"], reply["errors"][0]["field"])


@pytest.mark.parametrize("kept", [
    "1", [], {}, {**KEPT, "along": 1.4}, {**KEPT, "across": "1"}, {**KEPT, "edge": "top"}, {**KEPT, "lead": -1},
    {**KEPT, "along": True}, {**KEPT, "lead": None},
])  # fmt: skip
def test_what_a_device_may_not_have_kept_is_refused(kept: object):
    with pytest.raises(InputError, match="correction for your printer"):
        saved_correction({"kept": kept})
    assert not asked({"do": "setup", "form": {}, "kept": kept})[0]["ok"]


def test_the_reply_holds_regions_and_what_may_be_kept_even_beside_a_fault():
    reply, data = asked({"do": "setup", "form": {"upright": "248", "level": "170"}})
    assert (True, None) == (reply["ok"], data)
    assert {"sheet", "bars", "result", "kept"} == set(reply["regions"])
    assert "keep-printer" in reply["regions"]["result"]
    assert saved_correction({"kept": reply["correction"]}) == PrinterCorrection(250 / 248, 1.0, "short", 210.0)
    refused, _ = asked({"do": "setup", "form": {"upright": "40 %", "level": "170"}, "kept": KEPT})
    assert (False, None) == (refused["ok"], refused["correction"])
    assert "is unchanged" in refused["regions"]["result"] and "keep-printer" not in refused["regions"]["result"]


@pytest.mark.parametrize("form", [None, [], {"upright": 5}, {"upright": "<img>", "level": "\x00"}])
def test_a_strange_form_gets_a_reply_without_markup_of_its_own(form: object):
    reply, _ = asked({"do": "setup", "form": form})
    assert "<img" not in json.dumps(reply["regions"])


@pytest.mark.parametrize("factors", [[1.4, 1], [1, 0.9], [1], "1", [1, None], [True, 1], {"x": 1}, [1, 1, 1]])
def test_a_pdf_refuses_a_correction_beyond_three_per_cent(factors: object):
    reply, data = asked({"do": "pdf", "page": "neutral-current", "form": {}, "correction": factors})
    assert (False, None, "correction") == (reply["ok"], data, reply["errors"][0]["field"])
    assert "0.97 to 1.03" in reply["errors"][0]["message"]


def test_a_pdf_is_stretched_about_its_centre_by_its_correction():
    plain, corrected = (
        straight(asked({"do": "pdf", "page": "neutral-current", "form": {}, **more})[1])
        for more in ({}, {"correction": [1.02, 0.985]})
    )
    assert len(plain) == len(corrected) > 20
    for before, after in zip(plain, corrected, strict=True):
        middles, factors = (148.5, 105, 148.5, 105), (1.02, 0.985, 1.02, 0.985)
        wanted = [m + (x - m) * f for x, m, f in zip(before, middles, factors, strict=True)]
        assert wanted == pytest.approx(after, abs=0.001)


def test_no_link_ever_holds_anything_of_a_printer():
    form = {field.name: "1" for field in FIELDS if field.name not in ("paper", "orientation")}
    reply, _ = asked({"do": "share", "page": "neutral-current", "form": form, "correction": [1.01, 1], "base": "x"})
    assert reply["ok"]
    assert not re.search("correction|upright|level|edge|printed|kept", reply["link"])


@pytest.mark.parametrize(("form", "kinds", "name"), [
    ({}, [], "neutral-current.pdf"), ({"sheet": "problem"}, [], "neutral-current-problem.pdf"),
    ({}, ["overlay"], "neutral-current-overlay.pdf"),
    ({}, ["problem", "construction", "overlay"], "neutral-current-all.pdf"),
])  # fmt: skip
def test_a_file_says_which_sheet_it_holds(form: dict[str, str], kinds: list[str], name: str):
    """The sheet with the answer is not handed out for the one without."""
    assert name == asked({"do": "pdf", "page": "neutral-current", "form": form, "kinds": kinds})[0]["filename"]
