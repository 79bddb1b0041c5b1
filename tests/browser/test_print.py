"""What the browser prints: one page of exactly the paper's size, every arrow true to a twentieth of a millimetre."""

import ctypes
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path

import pypdfium2
import pypdfium2.raw as raw
import pytest
from browser.asking import wait_until
from playwright.sync_api import Browser, Page

POINT = 25.4 / 72
TOLERANCE = 0.05  # mm
PIXEL = 25.4 / 96
"""Chromium rounds a page's sides, not what stands on it, to whole CSS pixels (mm)."""
PAPERS = {
    "A5": (210, 148), "A4": (297, 210), "A3": (420, 297), "A2": (594, 420), "letter": (279.4, 215.9),
    "tabloid": (431.8, 279.4),
}  # fmt: skip
VALUES = "v=1&i1=18.4&i2=11.2&i3=24.6"

Segment = tuple[float, float, float, float]


def straight_lines(path: Path) -> list[Segment]:
    """Every straight piece of every path of the first page, in mm from the upper left corner."""
    document = pypdfium2.PdfDocument(path)
    page = document[0]
    height = page.get_height()
    found = []
    for item in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH], max_depth=8):
        points = [matrix_point(item, index) for index in range(raw.FPDFPath_CountSegments(item))]
        for (x1, y1), (x2, y2) in pairwise(points):
            found.append((x1 * POINT, (height - y1) * POINT, x2 * POINT, (height - y2) * POINT))
    document.close()
    return found


def matrix_point(item: pypdfium2.PdfObject, index: int) -> tuple[float, float]:
    """Where a segment of a path ends on the page, in points: its own matrix, then those of the forms around it."""
    x, y = ctypes.c_float(), ctypes.c_float()
    raw.FPDFPathSegment_GetPoint(raw.FPDFPath_GetPathSegment(item, index), x, y)
    place = (x.value, y.value)
    for matrix in matrices(item):
        place = matrix.on_point(*place)
    return place


def matrices(item: pypdfium2.PdfObject) -> Iterator[pypdfium2.PdfMatrix]:
    """The matrices that apply to an object, innermost first."""
    while item is not None:
        yield item.get_matrix()
        item = item.container


def arrows(page: Page) -> dict[str, Segment]:
    """Tail and tip of every arrow on the sheet, in mm from the upper left corner, as the page holds them."""
    return page.evaluate("""() => {
      const lines = [...document.querySelectorAll("svg[data-sheet] g[data-phasor] > line")];
      const ends = (line) => ["x1", "y1", "x2", "y2"].map((key) => Number(line.getAttribute(key)));
      const name = (line, index) => `${line.parentElement.dataset.phasor} ${index}`;
      return Object.fromEntries(lines.map((line, index) => [name(line, index), ends(line)]));
    }""")


def off(first: Segment, second: Segment) -> float:
    return max(abs(a - b) for a, b in zip(first, second, strict=True))


def print_page(page: Page, target: Path) -> tuple[tuple[float, float], str]:
    """Print the page: its size in mm and its words. It is one page and holds nothing but the sheet."""
    page.pdf(prefer_css_page_size=True, path=target)
    document = pypdfium2.PdfDocument(target)
    assert 1 == len(document)
    width, height = document[0].get_size()
    words = document[0].get_textpage().get_text_range()
    document.close()
    assert "Every result" not in words
    return (width * POINT, height * POINT), words


def hold_true(page: Page, target: Path) -> None:
    """Every arrow of the sheet stands on the printed page where the sheet has it."""
    drawn = arrows(page)
    assert {"i1", "i2", "i3", "sum"} <= {name.split()[0] for name in drawn}
    printed = straight_lines(target)
    worst = {name: min(off(arrow, line) for line in printed) for name, arrow in drawn.items()}
    assert {} == {name: error for name, error in worst.items() if error > TOLERANCE}


@pytest.mark.parametrize(("width", "scheme"), [(360, "dark"), (1440, "light")])
@pytest.mark.parametrize(("paper", "orientation"), [
    *((paper, "landscape") for paper in PAPERS), *((paper, "portrait") for paper in ("A4", "A2", "letter", "tabloid")),
])  # fmt: skip
def test_the_sheet_prints_true(
    open_page: Callable[..., Page], site: str, ready, answered, tmp_path: Path, paper, orientation, width, scheme
) -> None:
    """From phone and desk, by day and night: nothing but the sheet, on one page of its own size."""
    page = open_page(viewport={"width": width, "height": 800}, color_scheme=scheme)
    page.goto(f"{site}neutral-current/#{VALUES}&paper={paper}&orientation={orientation}")
    ready(page)
    answered(page)
    size, _ = print_page(page, tmp_path / "sheet.pdf")
    wanted = PAPERS[paper] if orientation == "landscape" else PAPERS[paper][::-1]
    assert size == pytest.approx(wanted, abs=PIXEL)
    hold_true(page, tmp_path / "sheet.pdf")


@pytest.mark.parametrize("more", ["method=tip-to-tail", "method=components", "method=tip-to-tail&i1=850mA&i2=1.2&i3=1"])
def test_every_method_prints_true(open_page, site: str, ready, answered, tmp_path: Path, more: str) -> None:
    page = open_page(viewport={"width": 390, "height": 844})
    page.goto(f"{site}neutral-current/#{VALUES}&orientation=landscape&{more}")
    ready(page)
    answered(page)
    size, _ = print_page(page, tmp_path / "sheet.pdf")
    assert size == pytest.approx(PAPERS["A4"], abs=PIXEL)
    hold_true(page, tmp_path / "sheet.pdf")


@pytest.mark.parametrize(("kind", "says"), [
    ("construction", "Print at"), ("problem", "problem"), ("overlay", "verlay"), ("overlay&mirror=yes", "osahP"),
])  # fmt: skip
def test_every_kind_of_sheet_prints_on_one_page(
    open_page, site: str, ready, answered, tmp_path: Path, kind: str, says: str
) -> None:
    """Of the paper's exact size; a mirrored overlay has every arrow, and its words, the other way round."""
    page = open_page(viewport={"width": 1440, "height": 900})
    page.goto(f"{site}neutral-current/#{VALUES}&sheet={kind}&orientation=landscape")
    ready(page)
    answered(page)
    size, words = print_page(page, tmp_path / "sheet.pdf")
    assert size == pytest.approx(PAPERS["A4"], abs=PIXEL)
    # Mirrored letters run from right to left: a reader may put each on a line of its own.
    assert "".join(says.split()) in "".join(words.split())
    if kind != "problem":
        hold_true(page, tmp_path / "sheet.pdf")
    if "mirror" in kind:
        there = arrows(page)
        page.evaluate("location.hash = location.hash.replace('mirror=yes', 'mirror=no')")
        wait_until(page, f"document.querySelector('svg[data-sheet] [data-phasor=i2] > line').getAttribute('x2') "
                         f"!== '{there['i2 1'][2]:g}'")  # fmt: skip
        answered(page)
        plain = arrows(page)
        mirrored = {name: (297 - x1, y1, 297 - x2, y2) for name, (x1, y1, x2, y2) in plain.items()}
        assert {name: pytest.approx(ends, abs=1e-3) for name, ends in mirrored.items()} == there


def test_without_python_the_example_prints_true(browser: Browser, site: str, tmp_path: Path) -> None:
    context = browser.new_context(viewport={"width": 1440, "height": 900})
    page = context.new_page()
    page.route("**/library.zip", lambda route: route.abort())
    page.goto(f"{site}neutral-current/")
    wait_until(page, "document.documentElement.dataset.python === 'failed'", 30)
    page.evaluate("() => { window.printed = 0; window.print = () => { window.printed += 1; }; }")
    page.click("[data-action=print]")
    wait_until(page, "window.printed === 1")
    size, _ = print_page(page, tmp_path / "sheet.pdf")
    assert size == pytest.approx(PAPERS["A4"], abs=PIXEL)
    hold_true(page, tmp_path / "sheet.pdf")
    context.close()


def test_ink_on_paper_is_dark_by_night_too(open_page: Callable[..., Page], site: str, ready, answered) -> None:
    page = open_page(color_scheme="dark", viewport={"width": 1440, "height": 900})
    page.goto(f"{site}neutral-current/")
    ready(page)
    answered(page)
    page.emulate_media(media="print")
    assert "rgb(20, 25, 26)" == page.evaluate("getComputedStyle(document.querySelector('.fill-ink')).fill")
    page.emulate_media(media="screen")
    assert "rgb(233, 238, 235)" == page.evaluate("getComputedStyle(document.querySelector('.fill-ink')).fill")
