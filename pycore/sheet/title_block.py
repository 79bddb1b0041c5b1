"""The title block in the lower right corner of the frame (after ISO 7200, adapted). All in mm."""

from functools import lru_cache
from itertools import pairwise

from pycore.drawing import Group, Ink, Item, Line, Shape
from pycore.geometry import Box, Point
from pycore.sheet.lettered import fitting, text, width_of, wrapped
from pycore.sheet.media import BLOCK_HEIGHT, BLOCK_ROWS, COLUMN_MARGIN, Layout, layout
from pycore.sheet.sheet_text import BlockText
from pycore.sheet.styles import Style
from pycore.words.phrase import Phrase, with_symbols

CELL_PADDING = 3.2
LOWER_ROW = 10.0
HEAD_SHARES, LEAST_STEP = (1.0, 0.92, 0.85, 0.78, 0.7), 1.43
"""Lettering of place and method as a share of notes, the first at which their lines fit; their least spacing."""
THIRDS = (0.0, 0.34, 0.67, 1.0)
"""Edges of the cells for group, date and sheet, as shares of the block's width."""


def lower_cells(paper: str) -> tuple[float, ...]:
    """Return the room in mm for the texts in the cells that are filled in by hand: name, group, date."""
    width = layout(paper, "landscape").block.width
    return tuple(width * share - CELL_PADDING for share in (1.0, THIRDS[1], THIRDS[2] - THIRDS[1]))


def fits_block(scale: str, layout: Layout) -> bool:
    """Return whether a scale fits its cell in the title block of a solved sheet."""
    return width_of(scale, min(layout.style.note, 2.5)) <= layout.block.width / 2 - CELL_PADDING


@lru_cache(maxsize=32)
def title_block(layout: Layout, writing: BlockText) -> Group:
    """Title, kind of sheet, place and method; below them the cells to fill in, or those of a solved sheet."""
    style, box = layout.style, layout.block
    lower = LOWER_ROW * box.height / BLOCK_HEIGHT
    high = box.bottom + 2 * lower
    items: list[Item] = [Line(Point(box.left, box.top), Point(box.right, box.top), 0.5)]
    if not layout.landscape:
        items.append(Line(Point(box.left, box.bottom), Point(box.left, box.top), 0.5))
    left = layout.table.left if layout.landscape else box.left + COLUMN_MARGIN
    items += _head(Box(left, high, box.right - COLUMN_MARGIN, box.top), writing, style)
    for y in (high, box.bottom + lower):
        items.append(Line(Point(box.left, y), Point(box.right, y), 0.25))
    for (label, value), (begin, end), top in _cells(writing, high, high - lower):
        x = box.left + begin * box.width
        if begin:
            items.append(Line(Point(x, top), Point(x, top - lower), 0.25))
        at = Point(x + COLUMN_MARGIN if begin else left, top)
        items += _cell(at, label, value, style, box.left + end * box.width - at.x, lower)
    return Group(tuple(items), name="title-block")


def _cells(
    writing: BlockText, upper: float, lower: float
) -> list[tuple[tuple[str, str], tuple[float, float], float]]:
    """Return label and value of every cell, its edges as shares of the width, and its top."""
    if writing.by_hand:
        below = zip((writing.group, writing.date, writing.sheet), pairwise(THIRDS), strict=True)
        return [(writing.name, (0.0, 1.0), upper), *((cell, edges, lower) for cell, edges in below)]
    # What was typed for a solved sheet is printed too.
    typed = ", ".join(value for _, value in (writing.name, writing.group, writing.date) if value)
    return [
        (writing.scale, (0.0, 0.5), upper), (writing.paper, (0.5, 1.0), upper),
        (("", typed or writing.maker), (0.0, THIRDS[2]), lower), (writing.sheet, (THIRDS[2], 1.0), lower),
    ]  # fmt: skip


def _head(box: Box, writing: BlockText, style: Style) -> list[Item]:
    """Title and kind on one line; place and method below, smaller where they are long."""
    y = box.top - style.title - 1.8
    kind = text(writing.kind, Point(box.right, y), style.value, "end")
    room = box.width - width_of(writing.kind, style.value) - 3.0
    title = text(writing.title, Point(box.left, y), fitting(writing.title, style.title, room))
    free = y - 0.36 * style.title - box.bottom
    for share in HEAD_SHARES:
        size = share * style.note
        place = wrapped(writing.place, size, box.width, 2) if writing.place else []
        method = wrapped(writing.method, size, box.width, 2)
        lines: list[str | Phrase] = [*place, *(with_symbols(line) for line in method)]
        if (1.1 + LEAST_STEP * (len(lines) - 1) + 0.45) * size <= free:
            break
    step = min(1.85 * size, (free - 1.55 * size) / max(len(lines) - 1, 1))
    first = y - 0.36 * style.title - 1.1 * size - (0.6 * size if len(lines) < 3 else 0.0)
    return [
        title, kind, *(text(line, Point(box.left, first - index * step), size) for index, line in enumerate(lines)),
    ]  # fmt: skip


def _cell(at: Point, label: str, value: str, style: Style, width: float, height: float) -> list[Item]:
    """A cell's small label above its value, which is smaller if it would not fit; a value alone in the middle."""
    small = min(style.note, 2.5)
    items: list[Item] = []
    if label:
        items.append(text(label, Point(at.x, at.y - small - 1.0), small, ink="ink-2"))
    if value:
        room = width - 0.7
        large = small if label and width < 40.0 else style.value
        size = large if width_of(value, large) <= room else fitting(value, small, room)
        base = at.y - height + 1.9 if label else at.y - (height + size) / 2
        items.append(text(value, Point(at.x, base), size))
    return items


@lru_cache(maxsize=32)
def plain_block(layout: Layout, writing: BlockText) -> Group:
    """Title, method, name and date only, all large enough to read easily."""
    style, box = layout.style, layout.block
    x, room = box.left + 4.0, box.width - 8.0
    title, method, last = (
        share * size for share, size in zip(BLOCK_ROWS, (style.title, style.note, style.note), strict=True)
    )
    y = box.top - title
    wording, capitals = _plain_title(writing, style, room)
    items: list[Item] = [
        Shape(box.corners, style.wide),
        text(wording, Point(x, y + 0.6 * style.title), capitals),
        Line(Point(box.left, y), Point(box.right, y), style.narrow),
    ]
    lines = wrapped(writing.method, style.note, room)
    first = y - (method + (1.0 - 1.5 * (len(lines) - 1)) * style.note) / 2
    for index, line in enumerate(lines):
        items.append(text(with_symbols(line), Point(x, first - index * 1.5 * style.note), style.note))
    y -= method
    items.append(Line(Point(box.left, y), Point(box.right, y), style.narrow))
    middle = box.left + 0.62 * box.width
    items.append(Line(Point(middle, y), Point(middle, box.bottom), style.narrow))
    base = y - (last + style.note) / 2
    items += _plain_cell(writing.name, Point(x, base), middle - x - 4.0, style)
    items += _plain_cell(writing.date, Point(middle + 4.0, base), box.right - middle - 8.0, style)
    return Group(tuple(items), name="title-block")


def _plain_cell(cell: tuple[str, str], at: Point, room: float, style: Style) -> list[Item]:
    """A label, or in its place what was typed: a long name is set smaller, and never left out."""
    label, value = cell
    size = next((s for s in (style.note, 0.7 * style.note) if width_of(value, s) <= room), 2.5)
    ink: Ink = "ink" if value else "ink-2"
    return [text(value or label, at, size, ink=ink)]


def _plain_title(writing: BlockText, style: Style, room: float) -> tuple[str, float]:
    """Return a title as large as fits; without the kind of sheet if even small lettering is too wide."""
    title, short = writing.whole_title, writing.title
    for wording, capitals in ((title, style.title), (title, style.note), (short, style.title)):
        if width_of(wording, capitals) <= room:
            return wording, capitals
    return short, min(style.title, max(style.note, fitting(short, style.title, room)))
