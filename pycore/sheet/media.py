"""Papers, and how a sheet is divided: frame, field of the drawing, column or band of words, title block. All in mm.

Paper sizes: ISO 216 (A series), ANSI/ASME Y14.1 A and B (letter, tabloid). Frame and filing margin follow ISO 5457, the
title block ISO 7200, lettering heights ISO 3098, line widths ISO 128: adapted, with values from memory.
"""

import math
from dataclasses import dataclass, replace
from functools import lru_cache

from pycore import quantity
from pycore.geometry import Box, Point
from pycore.quantity import NO_BREAK_SPACE
from pycore.sheet.styles import BLANK, COMPACT, OWN_PAPER, PRINTS, SMALL_PAPER, USUAL, Style

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
class Layout:
    """Where the parts of one sheet are; all kinds of sheet of a problem share it.

    ``field``: the part of the frame for the drawing. ``area``: figure with labels, inside the field: it chooses the
    scale and the figure's place, so it is the same for ever. ``table`` and ``words``: texts, on a usual landscape sheet
    one column. ``code``: QR code with its words. ``block``: title block in the lower right corner of the frame.
    ``bar``: length of the check bars, which share their zero at ``zero``.
    """

    paper: str
    orientation: str
    width: float
    height: float
    style: Style
    frame: Box
    field: Box
    area: Box
    table: Box
    words: Box
    code: Box
    block: Box
    bar: float
    zero: Point

    @property
    def page_key(self) -> str:
        """The style sheet's name of this page: ``a4l``, ``letterp``."""
        return page_key(self.paper, self.orientation)

    @property
    def landscape(self) -> bool:
        """Whether the words stand beside the field, not below it."""
        return self.orientation == "landscape"

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
    """The frame of a sheet divided: the figure's place, field, table, words, code, title block."""

    figure: Box
    field: Box
    table: Box
    words: Box
    code: Box
    block: Box


BLOCK_HEIGHT, SMALL_BLOCK_HEIGHT = 40.0, 36.0
COLUMN = 82.0
"""Width of the column beside the field of a usual sheet."""
COLUMN_MARGIN, MARK_MARGIN = 2.5, 3.8
"""From a text to the frame, and to the edge of the field, on which marks stand."""
CODE_ROOM = 3.5
"""Between the title block and the code above it, whose own white margin adds to it."""
CODE_SIDE = 28.0
"""Side of the QR code in the column of a usual sheet, with its white margin."""


def _beside(frame: Box, style: Style, _rows: int, _second: bool) -> _Parts:
    """Landscape: the field on the left, one column on the right."""
    small = style is COMPACT
    figure = Box(frame.left, frame.bottom, frame.right - (66.0 if small else 90.0) - 2.0, frame.top)
    line = frame.right - (66.0 if small else COLUMN)
    block = Box(line, frame.bottom, frame.right, frame.bottom + (SMALL_BLOCK_HEIGHT if small else BLOCK_HEIGHT))
    left, right = line + MARK_MARGIN, frame.right - COLUMN_MARGIN
    low = block.top + (1.0 if small else CODE_ROOM)
    code = Box(left, low, right, low + (style.code if small else CODE_SIDE))
    column = Box(left, code.top + 1.0, right, frame.top - (3.6 if small else 5.0))
    return _Parts(figure, Box(frame.left, frame.bottom, line, frame.top), column, column, code, block)


def _above(frame: Box, style: Style, rows: int, second: bool) -> _Parts:
    """Portrait: the field above, a band below: tables and code on the left, words and title block on the right."""
    small = style is COMPACT
    # Each of these millimetres counts: they say where the figure stands, on every sheet printed so far.
    table_height = style.row * (rows + 1) + 6.0
    band = table_height + 46.0 if small else max(table_height + style.code + 17.0, 87.0 + (7.0 if second else 0.0))
    top = frame.bottom + band
    block = Box(
        frame.right - (52.0 if small else 90.0), frame.bottom,
        frame.right, frame.bottom + BLOCK_HEIGHT,
    )  # fmt: skip
    left, middle, above = frame.left + COLUMN_MARGIN, block.left - COLUMN_MARGIN, top - MARK_MARGIN
    code = Box(left, frame.bottom + 2.0, middle, frame.bottom + 2.0 + style.code)
    table = Box(left, code.top + 1.0, middle, above)
    words = Box(block.left + COLUMN_MARGIN, block.top + 2.0, frame.right - COLUMN_MARGIN, above)
    field = Box(frame.left, top, frame.right, frame.top)
    return _Parts(field, field, table, words, code, block)


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
    if not sheet.style.column or sheet.style.whole:
        return True
    if sheet.orientation == "landscape":
        return sheet.words.bottom >= sheet.code.top + sheet.style.value + 2.0
    return sheet.area.height >= LEAST_AREA


LEAST_AREA = 80.0
"""Smallest height of the drawing area on a portrait sheet, mm."""


STRIP_ROWS = (2.1, 2.3)
"""Heights of both rows of the strip below a drawing that has the page to itself, in capitals of title and notes."""


def _whole(frame: Box, style: Style) -> _Parts:
    """A drawing with the page to itself; its words follow on the next."""
    strip = frame.bottom + STRIP_ROWS[0] * style.title + STRIP_ROWS[1] * style.note
    block = Box(frame.left, frame.bottom, frame.right, strip)
    field = Box(frame.left, strip, frame.right, frame.top)
    return _Parts(field, field, block, block, block, block)


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
        figure = Box(frame.left, frame.bottom, block.left - 2, frame.top)
        field = Box(frame.left, frame.bottom, block.left, frame.top)
        return _Parts(figure, field, table, words, code, block)
    beside_table = style.code + words_height + 0.2 * style.scale_words + 1.8 * style.value
    top = frame.bottom + block_height + max(table_height, beside_table) + 6.0
    block = Box(frame.left, frame.bottom, frame.right, frame.bottom + block_height)
    left, middle = frame.left + 4.0, frame.left + style.column - 6.0
    table = Box(left, top - 2 - table_height, middle, top - 2)
    words = Box(middle + 6.0, top - 2 - words_height, frame.right - 3, top - 2)
    code = Box(middle + 6.0, block.top + 2, frame.right - 3, block.top + 2 + style.code)
    field = Box(frame.left, top, frame.right, frame.top)
    return _Parts(field, field, table, words, code, block)


def size_of(paper: str, orientation: str) -> tuple[float, float]:
    """Return width and height of a paper in this orientation; raises KeyError for an unknown paper."""
    short, long = PAPERS[paper]
    return (long, short) if orientation == "landscape" else (short, long)


OWN_MARGIN = 10.0
"""What a drawing on the learner's own paper leaves free at every edge."""


def _blank(paper: str, orientation: str) -> Layout:
    """Blank paper of the learner's own: the drawing may take all of it but a margin."""
    page, nothing = Box(0.0, 0.0, *size_of(paper, orientation)), Box(0.0, 0.0, 0.0, 0.0)
    return Layout(
        paper, orientation, page.width, page.height, BLANK, page, page, page.grown(-OWN_MARGIN), nothing, nothing,
        nothing, nothing, 0.0, Point(0.0, 0.0),
    )  # fmt: skip


@lru_cache(maxsize=64)
def layout(
    paper: str, orientation: str, rows: int = 5, *, second: bool = False, printed: str = USUAL
) -> Layout:
    """Divide a paper. ``rows``: rows of the table below its header. ``second``: a second scale is shown. ``printed``:
    ``usual``, ``page``, ``large``, ``easy``, or ``own`` for blank paper.

    Raises KeyError for an unknown paper.
    """
    if printed == OWN_PAPER:
        return _blank(paper, orientation)
    width, height = size_of(paper, orientation)
    landscape = orientation == "landscape"
    style = COMPACT if paper == SMALL_PAPER else PRINTS[printed]
    frame = Box(FILING_MARGIN, MARGIN, width - MARGIN, height - MARGIN)
    roomy = style.column > 0
    if style.whole:
        parts = _whole(frame, style)
    elif roomy:
        style = _closer(style, frame, rows, second) if landscape else style
        parts = _roomy(frame, style, rows, landscape, second)
    else:
        parts = (_beside if landscape else _above)(frame, style, rows, second)
    # Each of these millimetres counts: with a little more, letter upright took the example at 5 A to the centimetre.
    level_y = max(parts.figure.bottom + 4.0, PRINTABLE_EDGE)
    figure = parts.figure
    words_of_bar = 3.0 if not roomy else 6.0 if style.whole else 1.0 + 1.4 * style.note
    area = Box(
        figure.left + 8.0 + words_of_bar, level_y + max(6.0, 1.4 * style.note),
        figure.right - 1.0, figure.top - 2.5,
    )  # fmt: skip
    zero = Point(area.left - 1.0, area.bottom - 3.0)
    # A bar of 100 mm and its words, where the area has room for them.
    short = style is COMPACT or (roomy and area.width < 124.0 + 6.5 * style.note) or area.height < 112.0
    return Layout(
        paper, orientation, width, height, style, frame, parts.field, area, parts.table, parts.words, parts.code,
        parts.block, 50.0 if short else 100.0, zero,
    )  # fmt: skip
