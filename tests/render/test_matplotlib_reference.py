"""Matplotlib as reference: the same phasors on the same page at the same scale, both PDFs read back by one reader."""

import math

import pytest
from host.seeded import SeededChoices
from render.plotted import canvas, placed, plot_arrows, written
from render.readers import mupdf_lines, mupdf_size, nearest, pdfium_lines
from unit.sheets import NEUTRAL, lines_of, results, turn_to_paper

from pycore.drawing import Circle, Document, Page
from pycore.writers import pdf
from pycore.writers.collect import collect

COUNT = 20
TRUE = 0.01  # mm
PAPERS = ("A5", "A4", "A3", "A2", "letter", "tabloid")


def form_of(number: int) -> dict[str, str]:
    """Problems of three lines that all carry current, on every paper both ways round, by both drawings."""
    rng = SeededChoices(4000 + number)
    made = {f"i{n}": f"{(50 + rng.below(250)) / 10:.1f}" for n in "123"}
    made |= {f"a{n}": f"{rng.below(61) - 20}" for n in "123"}
    return made | {
        "paper": PAPERS[number % 6], "orientation": ("landscape", "portrait")[number // 6 % 2],
        "method": ("tip-to-tail", "parallelogram")[number % 2], "first": rng.one_of(("up", "right")),
        "rotation": rng.one_of(("anticlockwise", "clockwise")), "sequence": rng.one_of(("123", "132")),
    }  # fmt: skip


def star_point(page: Page) -> complex:
    """Where the sheet starts: the small circle of its first step."""
    at = next(placed.item.centre for placed in collect(page) if isinstance(placed.item, Circle) and placed.step)
    return complex(*at)


def plotted(form: dict[str, str], page: Page) -> bytes:
    """The problem plotted from its values: only the star point's place is the sheet's own choice."""
    scale = results(form)["scale"]
    lines = lines_of(form)
    lines["sum"] = sum(lines.values())
    vectors = {key: turn_to_paper(form, value) * 10.0 / scale for key, value in lines.items()}
    order = tuple(f"i{n}" for n in order_of(page)) if form["method"] == "tip-to-tail" else ()
    figure, axes = canvas(page.width, page.height)
    plot_arrows(axes, *placed(vectors, order, star_point(page)))
    return written([figure])


def order_of(page: Page) -> str:
    """In which order a tip-to-tail sheet lays the lines: by the step that first draws each."""
    steps = {placed.phasor: placed.step for placed in reversed(collect(page)) if placed.phasor in ("i1", "i2", "i3")}
    return "".join(key[1] for key in sorted(steps, key=steps.__getitem__))


@pytest.mark.parametrize("number", range(COUNT))
def test_matplotlibs_arrows_end_where_the_sheets_do(number: int):
    form = form_of(number)
    page = NEUTRAL.sheet_page(form)
    ours, theirs = pdf.write(Document((page,), "sheet")), plotted(form, page)
    assert mupdf_size(theirs) == pytest.approx(mupdf_size(ours), abs=TRUE)
    for lines in (pdfium_lines, mupdf_lines):
        wanted, found = list(lines(theirs)), list(lines(ours))
        assert 4 == len(wanted)
        assert all(math.dist(line[:2], line[2:]) > 1.0 for line in wanted)
        assert [] == [line for line in wanted if nearest(line, found) > TRUE]


def test_the_comparison_sees_a_scale_that_is_out_by_a_thousandth():
    form = form_of(1)
    page = NEUTRAL.sheet_page(form)
    ours = list(pdfium_lines(pdf.write(Document((page,), "sheet"))))
    wrong = plotted({**form, "i1": f"{float(form['i1']) * 1.001:.4f}"}, page)
    assert [line for line in pdfium_lines(wrong) if nearest(line, ours) > TRUE]
