"""The title block in the lower right corner of the frame (after ISO 7200, adapted). All in mm."""

from functools import lru_cache
from itertools import pairwise

from pycore.drawing import Group, Ink, Item, Line, Shape, with_role
from pycore.geometry import Box, Point
from pycore.lettering.glyphs import Shaped, joined
from pycore.sheet.lettered import fitting, text, width_of, wrapped
from pycore.sheet.media import BLOCK_HEIGHT, BLOCK_ROWS, COLUMN_MARGIN, ORIENTATIONS, Layout, layout
from pycore.sheet.sheet_text import BlockText, Cell
from pycore.sheet.styles import Style
from pycore.words.phrase import Phrase, with_symbols

LOWER_ROW = 10.0
HEAD_SHARES, LEAST_STEP = (1.0, 0.92, 0.85, 0.78, 0.7), 1.43
"""Lettering of place and method as a share of notes, the first at which their lines fit; their least spacing."""
THIRDS = (0.0, 0.34, 0.67, 1.0)
"""Edges of the cells for group, date and sheet, as shares of the block's width."""
LEAST_TYPED, TYPED_SPACING = 2.0, 1.4
"""Smallest capitals of what was typed for a cell, mm: what is longer goes on over another line; and their spacing."""
CELL_END, NARROW_CELL = 0.7, 39.3
"""From a value to the end of its cell; in less room than this a value below its label has the size of a note."""


def lower_cells(paper: str) -> tuple[float, ...]:
    """Return the room in mm for the texts in the cells that are filled in by hand, in the narrower orientation of the
    paper: name, group, date."""
    rooms = []
    for sheet in (layout(paper, orientation) for orientation in ORIENTATIONS):
        ends = ((0.0, 1.0), *pairwise(THIRDS[:3]))
        rooms.append([_cell_room(sheet, begin, end) for begin, end in ends])
    return tuple(min(pair) for pair in zip(*rooms, strict=True))


def _text_left(layout: Layout) -> float:
    """Return where the texts of the title block begin."""
    return layout.table.left if layout.landscape else layout.block.left + COLUMN_MARGIN


def _cell_left(layout: Layout, begin: float) -> float:
    """Return where the text of a cell begins; ``begin``: its left edge as a share of the block's width."""
    return layout.block.left + begin * layout.block.width + COLUMN_MARGIN if begin else _text_left(layout)


def _cell_room(layout: Layout, begin: float, end: float) -> float:
    """Return the room for the text of a cell between two shares of the block's width."""
    return layout.block.left + end * layout.block.width - _cell_left(layout, begin) - CELL_END


def typed_lines(value: str | Shaped, at: Point, sizes: tuple[float, ...], room: float, ink: Ink = "ink") -> list[Item]:
    """Return a text in the first size that fits its room, else smaller; what would be smaller than ``LEAST_TYPED``
    goes on over further lines, about the baseline ``at``;
    letters of other fonts become smaller still."""
    size = next((one for one in sizes if width_of(value, one) <= room), fitting(value, sizes[-1], room))
    if isinstance(value, Shaped):
        return [text(value, at, size, ink=ink)]
    lines = [value] if size >= LEAST_TYPED else wrapped(value, LEAST_TYPED, room)
    size = max(size, LEAST_TYPED)
    step = TYPED_SPACING * size
    first = at.y + (len(lines) - 1) * (step / 2 + 0.1 * size)  # tails below the last line count too
    return [text(line, Point(at.x, first - index * step), size, ink=ink) for index, line in enumerate(lines)]


def fits_block(scale: str, layout: Layout) -> bool:
    """Return whether a scale fits its cell in the title block of a solved sheet."""
    return width_of(scale, min(layout.style.note, 2.5)) <= _cell_room(layout, 0.0, 0.5)


@lru_cache(maxsize=32)
def title_block(layout: Layout, writing: BlockText) -> Group:
    """Title, kind of sheet, place and method; below them the cells to fill in, or those of a solved sheet."""
    style, box = layout.style, layout.block
    lower = LOWER_ROW * box.height / BLOCK_HEIGHT
    high = box.bottom + 2 * lower
    items: list[Item] = [Line(Point(box.left, box.top), Point(box.right, box.top), 0.5)]
    if not layout.landscape:
        items.append(Line(Point(box.left, box.bottom), Point(box.left, box.top), 0.5))
    items += _head(Box(_text_left(layout), high, box.right - COLUMN_MARGIN, box.top), writing, style)
    for y in (high, box.bottom + lower):
        items.append(Line(Point(box.left, y), Point(box.right, y), 0.25))
    for cell, (begin, end), top in _cells(writing, high, high - lower):
        x = box.left + begin * box.width
        if begin:
            items.append(Line(Point(x, top), Point(x, top - lower), 0.25))
        items += _cell(Point(_cell_left(layout, begin), top), cell, style, _cell_room(layout, begin, end), lower)
    return Group(tuple(items), name="title-block")


def _cells(
    writing: BlockText, upper: float, lower: float
) -> list[tuple[Cell, tuple[float, float], float]]:
    """Return label and value of every cell, its edges as shares of the width, and its top."""
    if writing.by_hand:
        below = zip((writing.group, writing.date, writing.sheet), pairwise(THIRDS), strict=True)
        return [(writing.name, (0.0, 1.0), upper), *((cell, edges, lower) for cell, edges in below)]
    # What was typed for a solved sheet is printed too.
    typed = joined([value for _, value in (writing.name, writing.group, writing.date) if value], ", ")
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
    set_lines = [text(line, Point(box.left, first - index * step), size) for index, line in enumerate(lines)]
    parts = (set_lines[: len(place)], set_lines[len(place) :])
    return [with_role("heading", title, kind), *(with_role("paragraph", *part) for part in parts if part)]


def _cell(at: Point, cell: Cell, style: Style, room: float, height: float) -> list[Item]:
    """A cell's small label above its value, which is smaller if it would not fit; a value alone in the middle."""
    label, value = cell
    small = min(style.note, 2.5)
    items: list[Item] = []
    if label:
        items.append(text(label, Point(at.x, at.y - small - 1.0), small, ink="ink-2"))
    if value and label:
        sizes = (small,) if room < NARROW_CELL else (style.value, small)
        items += typed_lines(value, Point(at.x, at.y - height + 1.9), sizes, room)
    elif value:
        size = style.value if width_of(value, style.value) <= room else small
        items += typed_lines(value, Point(at.x, at.y - (height + size) / 2), (size,), room)
    return [with_role("paragraph", *items)] if items else []


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
        with_role("heading", text(wording, Point(x, y + 0.6 * style.title), capitals)),
        Line(Point(box.left, y), Point(box.right, y), style.narrow),
    ]
    lines = wrapped(writing.method, style.note, room)
    first = y - (method + (1.0 - 1.5 * (len(lines) - 1)) * style.note) / 2
    of_method = (
        text(with_symbols(line), Point(x, first - index * 1.5 * style.note), style.note)
        for index, line in enumerate(lines)
    )
    items.append(with_role("paragraph", *of_method))
    y -= method
    items.append(Line(Point(box.left, y), Point(box.right, y), style.narrow))
    middle = box.left + 0.62 * box.width
    items.append(Line(Point(middle, y), Point(middle, box.bottom), style.narrow))
    base = y - (last + style.note) / 2
    items += name_and_date(writing, base, (x, middle, box.right), style)
    return Group(tuple(items), name="title-block")


def name_and_date(writing: BlockText, base: float, edges: tuple[float, float, float], style: Style) -> list[Item]:
    """Return name and date beside each other on a baseline, each a label, or in its place what was typed; ``edges``:
    where the name begins, the line between both, and the end."""
    begin, middle, end = edges
    items: list[Item] = []
    for (label, value), left, right in ((writing.name, begin, middle), (writing.date, middle + 4.0, end)):
        ink: Ink = "ink" if value else "ink-2"
        sizes = (style.note, 0.7 * style.note)
        items += typed_lines(value or label, Point(left, base), sizes, right - left - 4.0, ink)
    return items


def _plain_title(writing: BlockText, style: Style, room: float) -> tuple[str, float]:
    """Return a title as large as fits; without the kind of sheet if even small lettering is too wide."""
    title, short = writing.whole_title, writing.title
    for wording, capitals in ((title, style.title), (title, style.note), (short, style.title)):
        if width_of(wording, capitals) <= room:
            return wording, capitals
    return short, min(style.title, max(style.note, fitting(short, style.title, room)))
