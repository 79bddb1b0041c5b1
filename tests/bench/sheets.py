"""Sheets measured in CPython: layout and writing beside matplotlib making the same sheet, and labels counted.

`build.py bench` runs this; tests/unit/test_bench_sheets.py holds that it measures what it says.
"""

import io
import statistics
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import numpy
from calculators.neutral_current.forms import forms
from matplotlib.collections import LineCollection, PatchCollection
from matplotlib.figure import Figure
from matplotlib.patches import Arc as ArcPatch
from matplotlib.patches import Circle as CirclePatch
from matplotlib.patches import Polygon
from render.plotted import canvas, written
from unit.sheets import NEUTRAL, frame_of, strokes
from unit.test_sheet_clear import faults_of

from pycore.drawing import PAPER_COLOURS, Arc, Arrow, Circle, Document, Line, Page, Shape, Text
from pycore.sheet import labels
from pycore.writers import pdf, svg
from pycore.writers.collect import collect

ROUNDS = 5
CLASS_SET = 60
PROBLEMS = 2000
POINTS = 72 / 25.4
DEFAULT = {"i1": "18.4", "i2": "11.2", "i3": "24.6"}
SHEETS = ("construction", "construction", "problem", "overlay")
Figures = tuple[str, float, float, str, str]
"""One row: name, ours, the other's, unit, what the other is."""


def plot(page: Page) -> Figure:
    """The sheet as matplotlib draws it, primitive by primitive, in collections where it has them.

    The layout comes free: where each label stands is not worked out again.
    """
    figure, axes = canvas(page.width, page.height)
    lines: list[tuple[list, float, str]] = []
    shapes = []
    for item in (placed.item for placed in collect(page)):
        colour = PAPER_COLOURS[item.ink] if item else "black"
        if isinstance(item, Line):
            lines.append(([item.start, item.end], item.width, colour))
        elif isinstance(item, Arrow):
            drawn = {"arrowstyle": "-|>", "lw": item.width * POINTS, "color": colour}
            axes.annotate("", item.tip, item.tail, arrowprops=drawn)
        elif isinstance(item, Arc):
            low, high = sorted((item.start, item.start + item.sweep))
            across = 2 * item.radius
            axes.add_patch(ArcPatch(item.centre, across, across, theta1=low, theta2=high, color=colour))
        elif isinstance(item, Circle):
            shapes.append(CirclePatch(item.centre, item.radius))
        elif isinstance(item, Shape):
            shapes.append(Polygon(item.points, closed=item.closed))
        elif isinstance(item, Text) and item.plain.strip():
            where = {"start": "left", "middle": "center", "end": "right"}[item.anchor]
            size = item.runs[0].size * POINTS
            axes.text(*item.at, item.plain, fontsize=size, ha=where, va="baseline", rotation=item.turn, color=colour)
    axes.add_collection(LineCollection([ends for ends, _, _ in lines], linewidths=[w * POINTS for _, w, _ in lines],
                                       colors=[colour for _, _, colour in lines]))  # fmt: skip
    axes.add_collection(PatchCollection(shapes, facecolor="none", edgecolor="black"))
    return figure


def plotted_files(page: Page) -> None:
    """One sheet as SVG and PDF by matplotlib."""
    figure = plot(page)
    for kind in ("svg", "pdf"):
        figure.savefig(io.BytesIO(), format=kind)


def our_files(form: dict[str, str]) -> None:
    """One sheet from its form: layout, SVG, PDF."""
    page = NEUTRAL.sheet_page(form)
    svg.write(page, prefix="sheet", role="sheet")
    pdf.write(Document((page,), page.title))


def taken(work: Callable[[], object]) -> float:
    """Seconds of the processor that some work takes: neither side waits for anything but it."""
    began = time.process_time()
    work()
    return time.process_time() - began


def in_alternation(
    ours: Callable[[], object], theirs: Callable[[], object], rounds: int = ROUNDS
) -> tuple[float, float]:
    """Medians of both in seconds, in turn, so that a slow spell of the machine meets both; the first is not counted."""
    ours(), theirs()
    pairs = [(taken(ours), taken(theirs)) for _ in range(rounds)]
    first, second = (statistics.median(times) for times in zip(*pairs, strict=True))
    return first, second


def class_set(count: int) -> list[dict[str, str]]:
    """Problems of a class set: all of one kind, values of their own."""
    random = numpy.random.default_rng(60)
    return [{**DEFAULT, **{f"i{n}": f"{random.uniform(5, 30):.1f}" for n in "123"}} for _ in range(count)]


def one_sheet() -> Figures:
    """Layout, SVG and PDF of one sheet."""
    page = NEUTRAL.sheet_page(DEFAULT)
    ours, theirs = in_alternation(lambda: our_files(DEFAULT), lambda: plotted_files(page))
    return "one sheet: layout, SVG, PDF", 1000 * ours, 1000 * theirs, "ms", "matplotlib"


def many_sheets(count: int = CLASS_SET, rounds: int = ROUNDS) -> Figures:
    """A class set as one PDF: layout and writing."""
    problems = class_set(count)
    pages = [NEUTRAL.sheet_page(form) for form in problems]

    def ours() -> bytes:
        return pdf.write(Document(tuple(NEUTRAL.sheet_page(form) for form in problems), "A class set"))

    first, second = in_alternation(ours, lambda: written([plot(page) for page in pages]), rounds)
    return f"{count} sheets in one PDF", 1000 * first, 1000 * second, "ms", "matplotlib"


@contextmanager
def watched() -> Iterator[list[tuple[float, list, list]]]:
    """Every placing of labels while this lasts: seconds, those placed, those left to the table."""
    seen: list[tuple[float, list, list]] = []
    place = labels.place

    def watch(ground: labels.LabelArea, wanted: list[labels.LabelRequest]) -> tuple[list, list]:
        began = time.process_time()
        placed, left = place(ground, wanted)
        seen.append((time.process_time() - began, placed, left))
        return placed, left

    labels.place = watch
    try:
        yield seen
    finally:
        labels.place = place


def placing(count: int = 200, rounds: int = ROUNDS) -> Figures:
    """Placing the labels of a sheet beside writing its PDF, the mean of many problems, the median of rounds."""
    problems = list(forms(count))
    pairs = []
    for _ in range(rounds):
        with watched() as seen:
            pages = [NEUTRAL.sheet_page(form) for form in problems]
        writing = taken(lambda pages=pages: [pdf.write(Document((page,), page.title)) for page in pages])
        pairs.append((1000 * sum(seconds for seconds, _, _ in seen) / count, 1000 * writing / count))
    ours, theirs = (statistics.median(times) for times in zip(*pairs, strict=True))
    return "placing the labels of a sheet", ours, theirs, "ms", "its PDF"


def of_every_kind(count: int) -> Iterator[dict[str, str]]:
    """The tests' random problems, half as constructions, a quarter each as problem sheets and overlays."""
    for number, form in enumerate(forms(count)):
        # The kinds of problem follow one another in tens: each must meet each kind of sheet.
        yield {**form, "sheet": SHEETS[number // 10 % len(SHEETS)]}


def counts(count: int = PROBLEMS) -> Counter:
    """Over random problems: labels, leaders, labels left to the table, texts that touch, what leaves the frame."""
    names = ("sheets", "labels", "leaders", "left to the table", "touching", "outside")
    found: Counter = Counter(dict.fromkeys(names, 0))
    with watched() as seen:
        for form in of_every_kind(count):
            page = NEUTRAL.sheet_page(form)
            frame = frame_of(page)
            said = faults_of(page, frame)
            left = [fault for fault in said if fault.endswith("leaves the frame")]
            found.update(sheets=1, touching=len(said) - len(left), outside=len(left) + len(ink_outside(page)))
    for _, placed, left in seen:
        leaders = sum(label.leader is not None for label in placed)
        found.update({"labels": len(placed) + len(left), "leaders": leaders, "left to the table": len(left)})
    return found


def ink_outside(page: Page) -> list[str]:
    """Every stroke of the figure that leaves the frame."""
    frame = frame_of(page).grown(1e-6)
    figure = Page(page.width, page.height, tuple(placed.item for placed in collect(page) if placed.step))
    return [
        stroke.source
        for stroke in strokes(figure)
        for x, y in (stroke.start, stroke.end)
        if not (frame.left <= x <= frame.right and frame.bottom <= y <= frame.top)
    ]
