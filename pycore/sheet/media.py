"""Papers, and how a sheet is divided: frame, figure, table and title block. All in mm.

Paper sizes: ISO 216 (A series), ANSI/ASME Y14.1 A and B (letter, tabloid). Frame and filing margin follow ISO 5457, the
title block ISO 7200, lettering heights ISO 3098, line widths ISO 128: adapted, with values from memory.
"""

import math
from dataclasses import dataclass, replace
from functools import lru_cache

from pycore import quantity
from pycore.geometry import Box
from pycore.quantity import NO_BREAK_SPACE

PAPERS: dict[str, tuple[float, float]] = {
    "A5": (148.0, 210.0),
    "A4": (210.0, 297.0),
    "A3": (297.0, 420.0),
    "A2": (420.0, 594.0),
    "letter": (215.9, 279.4),
    "tabloid": (279.4, 431.8),
}
"""Width and height in portrait orientation."""

ORIENTATIONS = ("landscape", "portrait")
FILING_MARGIN = 20.0
MARGIN = 10.0
PRINTABLE_EDGE = 17.0
"""Check bars keep this distance from every edge; printers may lose that much (common practice)."""


@dataclass(frozen=True, slots=True)
class Style:
    """Capital heights, line widths, arrowheads and spacings of one medium, mm."""

    note: float = 2.5
    value: float = 3.5
    tag: float = 5.0
    title: float = 5.0
    scale_words: float = 7.0
    row: float = 7.0
    narrow: float = 0.25
    wide: float = 0.5
    extra_wide: float = 1.0
    head: float = 4.6
    large_head: float = 8.2
    open_wide: float = 0.35
    rail: float = 1.1
    """From a companion's own line to either of its two rails."""
    tick: float = 4.0
    tick_gap: float = 1.5
    arc: float = 12.0
    code: float = 22.0
    dash: tuple[float, float] = (3.0, 0.75)
    margin: float = 3.0
    """Room kept round the figure for arrowheads and labels that hang over."""
    column: float = 0.0
    """Width of the column of words on a sheet laid out for easy reading; 0 on the usual sheet."""


NORMAL = Style()
COMPACT = Style(
    value=2.5, tag=3.5, title=3.5, scale_words=5.0, row=4.5, arc=8.0, code=18.0, head=3.6, large_head=6.0,
    tick=3.0, tick_gap=1.2, extra_wide=0.8,
)  # fmt: skip


PHONE = Style(
    note=2.7, value=3.0, tag=3.9, arc=9.0, head=4.0, large_head=6.5, tick=3.2, tick_gap=1.3,
    dash=(2.4, 0.9),
)  # fmt: skip
"""For the figure alone on a phone; 100 mm are the width of the screen."""


LARGE = Style(
    note=5.0, value=6.0, tag=7.2, title=6.2, scale_words=8.0, row=11.0, narrow=0.5, wide=0.9, extra_wide=1.7, head=8.0,
    large_head=12.5, open_wide=0.6, rail=1.7, tick=6.0, tick_gap=2.4, arc=18.0, code=32.0, dash=(4.5, 1.8), margin=6.0,
    column=112.0,
)  # fmt: skip
EASY = Style(
    note=3.2, value=4.0, tag=5.5, title=5.5, scale_words=7.0, row=9.0, code=26.0, margin=3.5, column=94.0,
)  # fmt: skip
USUAL, LARGE_PRINT, EASY_READING = "usual", "large", "easy"
"""Print styles: option values of the form, which stand in links."""
PRINTS = {USUAL: NORMAL, LARGE_PRINT: LARGE, EASY_READING: EASY}
"""Styles by print style. Large: capitals of 5 mm and more, text of 18 points and more, thicker lines, for low vision.
Easy: text of 12 points and more, fewer words beside the drawing, for dyslexia (both common practice)."""
SMALL_PAPER = "A5"
"""The smallest paper."""
TOO_SMALL_FOR_READING = (SMALL_PAPER,)
"""Papers on which a sheet for easy reading would leave no room to draw."""


@dataclass(frozen=True, slots=True)
class Layout:
    """Where the parts of one sheet are; all kinds of sheet of a problem share it.

    ``area``: figure with labels. ``table`` and ``words``: texts. ``code``: QR code with its words. ``block``: title
    block in the lower right corner of the frame. ``bars``: left x and bottom y of the vertical bar, then of the
    horizontal bar.
    """

    paper: str
    orientation: str
    width: float
    height: float
    style: Style
    frame: Box
    area: Box
    table: Box
    words: Box
    code: Box
    block: Box
    bar: float
    bars: tuple[float, float, float, float]

    @property
    def page_key(self) -> str:
        """The style sheet's name of this page: ``a4l``, ``letterp``."""
        return page_key(self.paper, self.orientation)

    @property
    def small(self) -> bool:
        """Whether the paper is so small that notes are as short as possible."""
        return self.paper == SMALL_PAPER

    @property
    def bar_text(self) -> str:
        """The length of the check bars as text: 100 mm."""
        return quantity.fixed(self.bar, 0) + f"{NO_BREAK_SPACE}mm"


def page_key(paper: str, orientation: str) -> str:
    """Return the style sheet's name of a page: ``a4l``, ``letterp``."""
    return paper.lower() + orientation[0]


@dataclass(frozen=True, slots=True)
class _Parts:
    """The frame of a sheet divided: figure, table, words, code, title block."""

    figure: Box
    table: Box
    words: Box
    code: Box
    block: Box


WORDS_HEIGHT = 41.0
FOOT_HEIGHT = 11.0


def _block(frame: Box, style: Style) -> Box:
    width, height = (66.0, 42.0) if style is COMPACT else (90.0, 46.0)
    return Box(frame.right - width, frame.bottom, frame.right, frame.bottom + height)


def _beside(frame: Box, block: Box, table_height: float, code_height: float, _second: bool) -> _Parts:
    """Landscape: the figure on the left, one column on the right."""
    left, right = block.left + 2, frame.right - 3
    table = Box(left, frame.top - 4 - table_height, right, frame.top - 4)
    code = Box(left, block.top + 2, right, block.top + 2 + code_height)
    words = Box(left, code.top + 1, right, table.bottom - 2)
    return _Parts(Box(frame.left, frame.bottom, block.left - 2, frame.top), table, words, code, block)


def _above(frame: Box, block: Box, table_height: float, code_height: float, second: bool) -> _Parts:
    """Portrait: the figure above, a band below."""
    words_height = WORDS_HEIGHT + (SECOND_SCALE if second else 0.0)
    band = max(table_height + code_height + FOOT_HEIGHT + 6, block.height + words_height)
    top = frame.bottom + band
    left, right = frame.left + 4, block.left - 4
    table = Box(left, top - 2 - table_height, right, top - 2)
    code = Box(left, frame.bottom + FOOT_HEIGHT, right, frame.bottom + FOOT_HEIGHT + code_height)
    words = Box(block.left + 2, block.top + 2, frame.right - 3, top - 2)
    return _Parts(Box(frame.left, top, frame.right, frame.top), table, words, code, block)


def _above_compact(frame: Box, block: Box, table_height: float, code_height: float, _second: bool) -> _Parts:
    """Small portrait sheets: the table needs more width than is left beside the title block."""
    top = frame.bottom + table_height + block.height + 4
    table = Box(frame.left + 3, top - 2 - table_height, frame.left + 67, top - 2)
    words = Box(table.right + 3, block.top + 1, frame.right - 2, top - 2)
    foot = frame.bottom + FOOT_HEIGHT
    code = Box(frame.left + 3, foot, block.left - 2, max(block.top - 1, foot + code_height))
    return _Parts(Box(frame.left, top, frame.right, frame.top), table, words, code, block)


SECOND_SCALE = 7.0
"""Additional height of the words for a second scale below the first."""


BLOCK_ROWS = (2.2, 3.4, 2.6)
"""Heights of title, method, and the line for name and date on a sheet for easy reading, in capitals of each."""


def _roomy_block_height(style: Style) -> float:
    heights = (style.title, style.note, style.note)
    return math.fsum(share * size for share, size in zip(BLOCK_ROWS, heights, strict=True))


LEAST_ROW = 1.83
"""Height of a table row on a sheet for easy reading with many rows, in capitals of its values."""


def _closer(style: Style, frame: Box, rows: int, second: bool) -> Style:
    """Return the style with table rows closer together, if a landscape sheet has no room for all."""
    others = _words_height(style, second) + _roomy_block_height(style) + style.code + 2.4 * style.note + style.value
    row = (frame.height - others - 16.0) / max(rows, 1)
    return replace(style, row=min(style.row, max(row, LEAST_ROW * style.value)))


def _words_height(style: Style, second: bool) -> float:
    """Return the height of the scale in words, and of a second one below it."""
    return 2.4 * style.scale_words + (3.6 * style.value if second else 0.0)


def holds(sheet: Layout) -> bool:
    """Return whether all texts fit a sheet laid out for easy reading; the usual sheet always has room."""
    if not sheet.style.column:
        return True
    if sheet.orientation == "landscape":
        return sheet.words.bottom >= sheet.code.top + sheet.style.value + 2.0
    return sheet.area.height >= LEAST_AREA


LEAST_AREA = 80.0
"""Smallest height of the drawing area on a portrait sheet, mm."""


def _roomy(frame: Box, style: Style, rows: int, landscape: bool, second: bool) -> _Parts:
    """A sheet laid out for easy reading: few, large words in one column or below the figure."""
    table_height = style.row * rows + 2.4 * style.note + 6.0
    words_height = _words_height(style, second)
    block_height = _roomy_block_height(style)
    if landscape:
        block = Box(frame.right - style.column, frame.bottom, frame.right, frame.bottom + block_height)
        left, right = block.left + 4.0, frame.right - 4.0
        table = Box(left, frame.top - 4 - table_height, right, frame.top - 4)
        words = Box(left, table.bottom - words_height, right, table.bottom - 2)
        code = Box(left, block.top + 3, right, block.top + 3 + style.code)
        return _Parts(Box(frame.left, frame.bottom, block.left - 2, frame.top), table, words, code, block)
    beside_table = style.code + words_height + 0.2 * style.scale_words + 1.8 * style.value
    top = frame.bottom + block_height + max(table_height, beside_table) + 6.0
    block = Box(frame.left, frame.bottom, frame.right, frame.bottom + block_height)
    left, middle = frame.left + 4.0, frame.left + style.column - 6.0
    table = Box(left, top - 2 - table_height, middle, top - 2)
    words = Box(middle + 6.0, top - 2 - words_height, frame.right - 3, top - 2)
    code = Box(middle + 6.0, block.top + 2, frame.right - 3, block.top + 2 + style.code)
    return _Parts(Box(frame.left, top, frame.right, frame.top), table, words, code, block)


def _usual(frame: Box, style: Style, rows: int, landscape: bool, second: bool) -> _Parts:
    divide = _beside if landscape else (_above_compact if style is COMPACT else _above)
    return divide(frame, _block(frame, style), style.row * (rows + 1) + 6, style.code, second)


def size_of(paper: str, orientation: str) -> tuple[float, float]:
    """Return width and height of a paper in this orientation; raises KeyError for an unknown paper."""
    short, long = PAPERS[paper]
    return (long, short) if orientation == "landscape" else (short, long)


@lru_cache(maxsize=64)
def layout(
    paper: str, orientation: str, rows: int = 5, *, second: bool = False, printed: str = USUAL
) -> Layout:
    """Divide a paper. ``rows``: rows of the table below its header. ``second``: a second scale is shown. ``printed``:
    ``usual``, ``large`` or ``easy``.

    Raises KeyError for an unknown paper.
    """
    width, height = size_of(paper, orientation)
    landscape = orientation == "landscape"
    style = COMPACT if paper == SMALL_PAPER else PRINTS[printed]
    frame = Box(FILING_MARGIN, MARGIN, width - MARGIN, height - MARGIN)
    roomy = style.column > 0
    style = _closer(style, frame, rows, second) if roomy and landscape else style
    parts = _roomy(frame, style, rows, landscape, second) if roomy else _usual(frame, style, rows, landscape, second)
    # Each of these millimetres counts: with a little more, letter upright took the example at 5 A to the centimetre.
    level_y = max(parts.figure.bottom + 4.0, PRINTABLE_EDGE)
    figure = parts.figure
    area = Box(
        figure.left + (11.0 if not roomy else 9.0 + 1.4 * style.note), level_y + max(6.0, 1.4 * style.note),
        figure.right - 1.0, figure.top - 2.5,
    )  # fmt: skip
    # A bar of 100 mm, its words and two registration marks, where the area is broad enough for them.
    bar = 50.0 if style is COMPACT or (roomy and area.width < 124.0 + 6.5 * style.note) else 100.0
    upright_y = min(area.bottom + 3, height - PRINTABLE_EDGE - bar)
    level_x = min(area.left + 8, width - PRINTABLE_EDGE - bar)
    return Layout(
        paper, orientation, width, height, style, frame, area, parts.table, parts.words, parts.code,
        parts.block, bar, (frame.left + 4.0, upright_y, level_x, level_y),
    )  # fmt: skip
