"""Every kind of sheet read by programs that are not ours: they open it without complaint and agree with the drawing.

PDF: pdfium, MuPDF, qpdf, poppler. SVG: librsvg and Chromium, beside pdfium's picture of the PDF.
"""

import hashlib
import io
import json
import math
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import numpy
import pikepdf
import pymupdf
import pypdfium2 as pdfium
import pytest
from making.paths import ROOT
from making.programs import READERS as READERS_OF_DEBIAN
from PIL import Image
from playwright.sync_api import Browser
from render.readers import POINT, READERS, SIZES, Segment, nearest
from unit.sheets import NEUTRAL

from pycore.drawing import Arrow, Document, Page, Text
from pycore.pages import print_setup
from pycore.pages.paper import PAPER_PAGES
from pycore.writers import pdf, svg
from pycore.writers.collect import collect

TRUE = 0.01  # mm
PAPERS = (("A5", "portrait"), ("A4", "landscape"), ("A3", "portrait"), ("A2", "landscape"), ("letter", "portrait"),
          ("tabloid", "landscape"))  # fmt: skip
METHODS = ("parallelogram", "tip-to-tail", "components")
VALUES = {"i1": "18.4", "i2": "11.2", "i3": "24.6"}
KINDS = {
    "construction": {"sheet": "construction"}, "problem": {"sheet": "problem"}, "overlay": {"sheet": "overlay"},
    "mirrored": {"sheet": "overlay", "mirror": "yes"},
}  # fmt: skip
PICTURE_DPI = 288  # three times a CSS pixel
TIP_WINDOW = 2.5  # mm round a tip
PICTURES_AGREE = 0.02  # mm, a quarter of a pixel: each program smooths edges in its own way


def _sheets() -> dict[str, Page]:
    """Every kind of sheet by name; those of a problem on each paper, with each method in turn."""
    made = {}
    for index, (paper, way) in enumerate(PAPERS):
        for kind, more in KINDS.items():
            form = {**VALUES, "paper": paper, "orientation": way, "method": METHODS[index % 3], **more}
            made[f"{kind} {paper} {way}"] = NEUTRAL.sheet_page(form)
    for slug, page in PAPER_PAGES.items():
        kinds = next(field for field in page.fields if field.group == "method")
        for choice, (paper, way) in zip(kinds.options, (PAPERS[1], PAPERS[4], PAPERS[1]), strict=False):
            form = {kinds.name: choice.value, "paper": paper, "orientation": way}
            made[f"{slug} {choice.value} {paper} {way}"] = page.make(form).page
    made["print-setup"] = print_setup.set_up({}, None).page
    return made


SHEETS = _sheets()


def written(*pages: Page) -> bytes:
    return pdf.write(Document(pages, pages[0].title, subject="a subject"))


def arrows_of(page: Page) -> list[Segment]:
    """Tail and tip of every arrow that has a length, mm from the upper left corner."""
    found = [placed.item for placed in collect(page) if isinstance(placed.item, Arrow)]
    return [(a.tail.x, page.height - a.tail.y, a.tip.x, page.height - a.tip.y) for a in found if a.tail != a.tip]


def program(name: str) -> str:
    """A program of Debian's; missing, it fails the test where CI is set and is a listed omission elsewhere."""
    found, package = shutil.which(name), READERS_OF_DEBIAN[name]
    if found is None and not os.environ.get("CI"):
        pytest.skip(f"left out: {name} is not installed (Debian package {package})")
    assert found is not None, f"{name} is missing and CI is set: install the Debian package {package}"
    return found


def told(command: list[str], data: bytes = b"") -> str:
    """What a program prints, which must end well and complain of nothing."""
    done = subprocess.run(command, input=data, capture_output=True, timeout=60)
    complaints = done.stderr.decode("utf-8", "replace")
    assert (0, "") == (done.returncode, complaints)
    return done.stdout.decode("utf-8")


@pytest.mark.parametrize("name", list(SHEETS))
def test_every_reader_finds_the_papers_size_and_every_arrows_ends(name: str):
    """Three programs that share no code, each within a hundredth of a millimetre."""
    page = SHEETS[name]
    data = written(page)
    arrows = arrows_of(page)
    assert (len(arrows) >= 2) == (name.split()[0] in ("construction", "overlay", "mirrored", "print-setup"))
    for reader, lines in READERS.items():
        assert (page.width, page.height) == pytest.approx(SIZES[reader](data), abs=TRUE), reader
        found = list(lines(data))
        assert found, reader
        missed = {arrow: nearest(arrow, found) for arrow in arrows}
        assert {} == {arrow: error for arrow, error in missed.items() if error > TRUE}, reader


def test_the_readers_see_a_line_that_is_out_by_two_hundredths():
    """The comparison can fail."""
    data = written(SHEETS["construction A4 landscape"])
    x1, y1, x2, y2 = arrows_of(SHEETS["construction A4 landscape"])[0]
    for reader, lines in READERS.items():
        assert nearest((x1, y1, x2 + 2 * TRUE, y2), list(lines(data))) > TRUE, reader


@pytest.mark.parametrize("name", list(SHEETS))
def test_qpdf_mupdf_and_pdfium_open_it_without_complaint(name: str):
    data = written(SHEETS[name])
    with pikepdf.open(io.BytesIO(data)) as document:
        assert [] == document.check_pdf_syntax()
    pymupdf.TOOLS.reset_mupdf_warnings()
    with pymupdf.open(stream=data, filetype="pdf") as document:
        document[0].get_pixmap(dpi=20)
        assert (False, False) == (document.is_repaired, document.needs_pass)
    assert "" == pymupdf.TOOLS.mupdf_warnings()
    assert 1 == len(pdfium.PdfDocument(data))


def test_qpdf_itself_finds_nothing_wrong_in_all_sheets_together(tmp_path: Path):
    target = tmp_path / "all.pdf"
    target.write_bytes(written(*SHEETS.values()))
    said = told([program("qpdf"), "--check", str(target)])
    assert "No syntax or stream encoding errors found" in said


def test_poppler_finds_every_papers_size_the_title_and_the_language(tmp_path: Path):
    """And complains of nothing. It writes sizes to a hundredth of a point, 0.004 mm."""
    tool, target = program("pdfinfo"), tmp_path / "all.pdf"
    target.write_bytes(written(*SHEETS.values()))
    said = told([tool, "-box", "-f", "1", "-l", str(len(SHEETS)), str(target)])
    boxes = re.findall(r"Page +\d+ MediaBox: +([\d.]+) +([\d.]+) +([\d.]+) +([\d.]+)", said)
    assert len(SHEETS) == len(boxes)
    for page, box in zip(SHEETS.values(), boxes, strict=True):
        left, top, right, bottom = (float(side) * POINT for side in box)
        assert (page.width, page.height) == pytest.approx((right - left, bottom - top), abs=TRUE)
    assert f"Title:           {plainly(next(iter(SHEETS.values())).title)}" in plainly(said)
    assert "a subject" in said and "Encrypted:       no" in said


def plainly(text: str) -> str:
    """A text with common spaces for those that do not break."""
    return text.replace("\u00a0", " ")


def words_of(text: str) -> list[str]:
    return plainly(text).split()


@pytest.mark.parametrize("name", [name for name in SHEETS if "mirrored" not in name])
def test_the_text_is_read_whole_and_in_the_order_it_is_drawn(name: str, tmp_path: Path):
    """Words as drawn, row after row, by MuPDF, poppler and pdfium: for selecting, searching, reading aloud."""
    page = SHEETS[name]
    data = written(page)
    drawn = words_of(" ".join(placed.item.plain for placed in collect(page) if isinstance(placed.item, Text)))
    letters = "".join(drawn)
    (tmp_path / "sheet.pdf").write_bytes(data)
    tool = program("pdftotext")
    with pymupdf.open(stream=data, filetype="pdf") as document:
        # Not sorted by place: the file's own order is what is read aloud.
        mupdf = document[0].get_text("text", sort=False)
    read = {
        "pdfium": pdfium.PdfDocument(data)[0].get_textpage().get_text_range(),
        "mupdf": mupdf,
        "poppler": told([tool, "-raw", "-enc", "UTF-8", str(tmp_path / "sheet.pdf"), "-"]).replace("\f", ""),
    }
    found = {reader: "".join(words_of(text)) for reader, text in read.items()}
    assert {"mupdf": letters, "poppler": letters} == {reader: found[reader] for reader in ("mupdf", "poppler")}
    # pdfium puts turned letters near level ones into an order of its own: every level line must be whole in it.
    assert sorted(letters) == sorted(found["pdfium"])
    level = ["".join(words_of(p.item.plain)) for p in collect(page) if isinstance(p.item, Text) and not p.item.turn]
    assert [] == [line for line in level if line not in found["pdfium"]]


def test_a_sheet_is_read_from_its_title_to_its_foot():
    """The title block first, then the answer and the steps, the table, figure, bars, and the foot last."""
    page = SHEETS["construction A4 landscape"]
    text = pdfium.PdfDocument(written(page))[0].get_textpage().get_text_range()
    places = [plainly(text).index(part) for part in
              ("Neutral current", "The neutral current", "phasor", "Print at 100", "For teaching")]
    assert sorted(places) == places


def test_words_and_values_can_be_searched_for():
    page = SHEETS["construction A4 landscape"]
    with pymupdf.open(stream=written(page), filetype="pdf") as document:
        for wanted in ("Neutral current", "18.4", "anticlockwise", "Print at 100 %"):
            assert document[0].search_for(wanted), wanted
    found = pdfium.PdfDocument(written(page))[0].get_textpage().search("Community hall")
    assert found.get_next() is not None


@pytest.mark.parametrize("name", list(SHEETS))
def test_title_and_language_are_set_and_shown(name: str):
    page = SHEETS[name]
    with pikepdf.open(io.BytesIO(written(page))) as document:
        assert page.title and plainly(page.title) == plainly(str(document.docinfo["/Title"]))
        assert "en-GB" == str(document.Root.Lang)
        shown = document.Root.ViewerPreferences
        assert (True, "/None") == (bool(shown.DisplayDocTitle), str(shown.PrintScaling))


def digests() -> dict[str, str]:
    """A digest of every sheet's PDF and SVG."""
    return {
        name: hashlib.sha256(written(page) + svg.write(page, prefix="s", role="sheet").encode()).hexdigest()
        for name, page in _sheets().items()
    }


def test_the_same_sheets_are_the_same_bytes_in_another_process_with_another_hash_seed():
    code = "import json; from render.test_independent_eyes import digests; print(json.dumps(digests()))"
    paths = os.pathsep.join(str(ROOT / part) for part in ("", "site", "tests"))
    environment = {**os.environ, "PYTHONHASHSEED": "4711", "PYTHONPATH": paths}
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, env=environment, cwd=ROOT)
    assert 0 == done.returncode, done.stderr
    assert digests() == json.loads(done.stdout)


def arrows_alone(sheet: Page) -> Page:
    """A page with nothing but the arrows: fonts are not shared, and hairlines each program thickens in its own way.

    It has whole inches, and so whole pixels: else each program rounds the sides and stretches the page in its own way.
    """
    found = tuple(placed.item for placed in collect(sheet) if isinstance(placed.item, Arrow))
    width, height = (25.4 * math.ceil(side / 25.4) for side in (sheet.width, sheet.height))
    return Page(width, height, found, sheet.title)


def ink(picture: Image.Image) -> numpy.ndarray:
    """How dark each pixel is, 0 to 1; what is not painted is white."""
    flat = Image.new("RGBA", picture.size, "white")
    flat.alpha_composite(picture.convert("RGBA"))
    return 1.0 - numpy.asarray(flat.convert("L"), dtype=float) / 255.0


def centroid(dark: numpy.ndarray, x: float, y: float) -> tuple[float, float]:
    """The middle in mm of the ink within a few millimetres of a place."""
    scale, reach = PICTURE_DPI / 25.4, TIP_WINDOW + 0.2
    part = tuple(slice(int((at - reach) * scale), int((at + reach) * scale)) for at in (y, x))
    rows, columns = numpy.mgrid[part]
    xs, ys = (columns + 0.5) / scale, (rows + 0.5) / scale
    near = dark[part] * (numpy.hypot(xs - x, ys - y) < TIP_WINDOW)
    assert near.sum() > 5, "no ink where a tip should be"
    return float((near * xs).sum() / near.sum()), float((near * ys).sum() / near.sum())


def chromium_picture(browser: Browser, path: Path, size: tuple[float, float]) -> Image.Image:
    """An SVG file as Chromium paints it, at three times a CSS pixel."""
    view = dict(zip(("width", "height"), (round(side * 96 / 25.4) for side in size), strict=True))
    context = browser.new_context(viewport=view, device_scale_factor=PICTURE_DPI / 96)
    page = context.new_page()
    page.goto(path.as_uri())
    taken = Image.open(io.BytesIO(page.screenshot()))
    context.close()
    return taken


@pytest.mark.parametrize("name", ["construction A4 landscape", "construction A5 portrait", "overlay A4 landscape",
                                  "construction letter portrait", "mirrored A3 portrait"])  # fmt: skip
def test_librsvg_chromium_and_pdfium_paint_every_tip_in_the_same_place(name: str, browser: Browser, tmp_path: Path):
    """The middle of the ink round each tip, in three pictures of one size."""
    page = arrows_alone(SHEETS[name])
    source, target = tmp_path / "sheet.svg", tmp_path / "sheet.png"
    source.write_text(svg.write(page, prefix="s", role="sheet"), encoding="utf-8")
    tool = program("rsvg-convert")
    told([tool, f"--dpi-x={PICTURE_DPI}", f"--dpi-y={PICTURE_DPI}", "--output", str(target), str(source)])
    document = pdfium.PdfDocument(written(page))
    pictures = {
        "librsvg": Image.open(io.BytesIO(target.read_bytes())),
        "chromium": chromium_picture(browser, source, (page.width, page.height)),
        "pdfium": document[0].render(scale=PICTURE_DPI / 72).to_pil(),
    }
    wanted = tuple(round(side * PICTURE_DPI / 25.4) for side in (page.width, page.height))
    for reader, picture in pictures.items():
        # One pixel more where a program rounds 2592.0000001 up.
        assert wanted == pytest.approx(picture.size, abs=1.0), reader
    dark = {reader: ink(picture) for reader, picture in pictures.items()}
    for x1, y1, x2, y2 in arrows_of(page):
        if math.hypot(x2 - x1, y2 - y1) > 2 * TIP_WINDOW:
            places = {reader: centroid(pixels, x2, y2) for reader, pixels in dark.items()}
            apart = {reader: math.dist(place, places["pdfium"]) for reader, place in places.items()}
            assert max(apart.values()) < PICTURES_AGREE, (apart, (x2, y2))
