"""Sheets without a problem: graph paper, and instruments to cut out. All in mm.

Check bars and instruments keep 17 mm from every edge, which printers may lose (common practice, no source). The grid of
graph paper may extend into the margin, where nothing is measured.
"""

from dataclasses import dataclass

from pycore.drawing import Group, Item, Page, with_role
from pycore.geometry import Box, Point
from pycore.sheet.instruments import BASE, RADIUS, RULER_BEFORE_ZERO, RULER_WIDTH, Pose, protractor, ruler
from pycore.sheet.lettered import numbered, text
from pycore.sheet.media import MARGIN, PRINTABLE_EDGE, size_of
from pycore.sheet.ruled import ruled
from pycore.sheet.skeleton import check_bar
from pycore.sheet.styles import SMALL_PAPER

INSTRUMENT_PAPERS = ("A4", "A3", "letter", "tabloid")
"""On A5 a full circle of 150 mm leaves no room for a ruler; people who print A2 have rulers."""
LONGEST_RULER = 250.0
NOTE, VALUE, TITLE = 2.5, 3.5, 5.0
_STROKE_REACH = 1.0
"""How far the end strokes of a bar extend towards the edge."""
_UPRIGHT_BREADTH = 8.0
"""Width of the vertical bar with its text."""
_LEVEL_HEIGHT = 5.0
_GAP = 6.0


@dataclass(frozen=True, slots=True)
class BlankWriting:
    """The texts of a blank sheet: title, lines below it, the unit of a bar's length (`` mm``), page title, and a
    description for people who cannot see it."""

    title: str
    lines: tuple[str, ...]
    unit: str
    page_title: str
    description: str


def bar_length(paper: str) -> float:
    """Return the length of a sheet's check bars: 100 mm, or 50 mm on the smallest paper."""
    return 50.0 if paper == SMALL_PAPER else 100.0


def ruler_length(paper: str, orientation: str) -> float:
    """Return the length of the ruler on a sheet: as many whole centimetres as fit, at most 250 mm."""
    room = size_of(paper, orientation)[0] - 2 * (PRINTABLE_EDGE + RULER_BEFORE_ZERO)
    return min(LONGEST_RULER, 10.0 * int(room / 10.0 + 1e-9))


def graph_page(kind: str, paper: str, orientation: str, writing: BlankWriting) -> Page:
    """Return graph paper (``millimetre``, ``polar``, ``sixty``); raises KeyError for another kind."""
    width, height = size_of(paper, orientation)
    edge = PRINTABLE_EDGE + _STROKE_REACH
    length = bar_length(paper)
    box = Box(edge + _UPRIGHT_BREADTH, edge + _LEVEL_HEIGHT, width - MARGIN, height - MARGIN)
    length_text = f"{length:.0f}{writing.unit}"
    upright = check_bar(Point(edge, box.bottom + _GAP), length, length_text, NOTE, upright=True)
    level = check_bar(Point(box.left + _GAP, edge), length, length_text, NOTE)
    words: list[Item] = [
        text(line, Point(width - PRINTABLE_EDGE, edge + 0.2 - index * NOTE * 1.7), NOTE, "end", "ink-2")
        for index, line in enumerate((writing.title, *writing.lines))
    ]
    title, *lines = words
    grid = Group((ruled(kind, box),), role="figure", alternative=writing.description)
    items = (grid, upright, level, Group((with_role("heading", title), *lines), name="words"))
    return Page(width, height, items, writing.page_title, writing.description)


def _words(writing: BlankWriting, left: float, top: float, width: float) -> Group:
    """The title and the instructions below it."""
    title = Point(left, top - 1.1 * TITLE)
    lines, _ = numbered(writing.lines, Point(left, title.y - 3.0), VALUE, width)
    return Group((with_role("heading", text(writing.title, title, TITLE)), lines), name="words")


def instruments_page(circle: bool, paper: str, orientation: str, writing: BlankWriting) -> Page:
    """A ruler and a protractor (half, or a full ``circle``) at exact size, and how to cut them out."""
    width, height = size_of(paper, orientation)
    edge = PRINTABLE_EDGE
    length = ruler_length(paper, orientation)
    scale = ruler(Pose(Point(edge + RULER_BEFORE_ZERO, edge + RULER_WIDTH), 0.0), length, tint=True)
    # A circle comes near the ruler in one point only, and needs all the height of A4 lying.
    foot = edge + RULER_WIDTH + (1.0 if circle else _GAP)
    tall = 2 * RADIUS if circle else RADIUS + BASE
    beside = orientation == "landscape"
    left = edge if beside else edge + _STROKE_REACH + _UPRIGHT_BREADTH + 1.0
    centre = Point(left + RADIUS, foot + (RADIUS if circle else BASE))
    bars_left = left + 2 * RADIUS + _GAP if beside else edge + _STROKE_REACH
    level = Point(bars_left, height - edge - 3.0) if beside else Point(left, foot + tall + _GAP)
    room = width - edge - bars_left
    bar = min(100.0, 10.0 * int(room / 10.0)) if beside else 100.0
    bars = (
        check_bar(Point(bars_left, edge + RULER_WIDTH + _GAP + 2.0), 100.0, f"100{writing.unit}", NOTE, upright=True),
        check_bar(level, bar, f"{bar:.0f}{writing.unit}", NOTE, below=beside),
    )
    words = (
        _words(writing, bars_left + _UPRIGHT_BREADTH + 6.0, level.y - 12.0, room - _UPRIGHT_BREADTH - 6.0)
        if beside
        else _words(writing, left, min(height - edge, level.y + 72.0), width - edge - left)
    )
    turned = protractor(Pose(centre, 0.0), circle=circle, tint=True)
    instruments = Group((scale, turned), role="figure", alternative=writing.description)
    return Page(width, height, (instruments, *bars, words), writing.page_title, writing.description)
