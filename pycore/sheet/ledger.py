"""Tables over as many pages as they need: title, notes and legend once, then header and rows. All in mm.

Rules and words carry the meaning, so that a black-and-white copy is readable.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pycore.drawing import Item, Line, Page, Role, with_role
from pycore.geometry import Box, Point
from pycore.lettering.glyphs import Shaped
from pycore.sheet.lettered import text, width_of, wrapped
from pycore.sheet.media import PAPERS
from pycore.words.phrase import Phrase, with_symbols

MARGINS = (20.0, 12.0)
"""Left margin (for filing) and all other margins."""
TITLE, NOTE, CELL = 4.0, 2.5, 2.5
LINE, PAD, LONG_PAD, LEAST_PAD = 4.4, 1.1, 0.3, -0.2
"""Height of a line of text, and what a row has more: usually, in a table that no page holds, and where closer rows save
a page."""
FOOT_ROOM = 4.0
LEGEND_STEP, BETWEEN = 4.3, 6.0
LEAST_GAP = 2.0
"""Between two columns."""
LEAST_LINES = 3
"""Lines of text that may stand alone at the foot of a page."""
FIGURES = str.maketrans("123456789", "000000000")

Lines = tuple[Phrase | str | Shaped, ...]
"""What stands in one cell, a line below another."""


@dataclass(frozen=True, slots=True)
class ColumnHeading:
    """The header of a column, and on which side its cells are aligned."""

    lines: Lines
    anchor: str = "end"


@dataclass(frozen=True, slots=True)
class Ledger:
    """A table with its words. ``legend`` explains signs, in two columns below the notes; ``lines``: lines in each row;
    ``apart``: it begins a page; ``bare``: it is lines of text, without heads and rules. Without a title it goes on what
    stands above it."""

    title: str
    aside: str
    notes: tuple[str, ...]
    legend: tuple[tuple[str, str], ...]
    headings: tuple[ColumnHeading, ...]
    rows: Sequence[tuple[Lines, ...]]
    foot: str
    lines: int = 1
    apart: bool = False
    bare: bool = False


@dataclass(frozen=True, slots=True)
class _LedgerLayout:
    """Where the parts of a page lie."""

    width: float
    height: float
    box: Box


def _frame(paper: str) -> _LedgerLayout:
    short, long = PAPERS["letter" if paper in ("letter", "tabloid") else "A4"]
    left, other = MARGINS
    return _LedgerLayout(long, short, Box(left, other, long - other, short - other))


def room_across(paper: str) -> float:
    """Return the available width of a table."""
    return _frame(paper).box.width


def natural_widths(headings: Sequence[ColumnHeading], rows: Sequence[tuple[Lines, ...]]) -> list[float]:
    """Return the width of each column's widest cell; all digits have equal widths."""
    measured: dict[str, float] = {}
    widths = []
    for index, heading in enumerate(headings):
        widest = max(width_of(line, CELL) for line in heading.lines)
        for row in rows:
            for line in row[index]:
                if isinstance(line, str):
                    pattern = line.translate(FIGURES)
                    if pattern not in measured:
                        measured[pattern] = width_of(pattern, CELL)
                    widest = max(widest, measured[pattern])
                else:
                    widest = max(widest, width_of(line, CELL))
        widths.append(widest)
    return widths


def least_width(widths: Sequence[float]) -> float:
    """Return the room of columns with the least gap behind each."""
    return math.fsum(widths) + LEAST_GAP * len(widths)


def _legend_lines(ledger: Ledger, width: float) -> list[tuple[str, list[str]]]:
    half = (width - 8.0) / 2 - 8.0
    return [(sign, wrapped(words, NOTE, half)) for sign, words in ledger.legend]


def _lowered(line: str) -> Phrase | str:
    """A line with its indexes low, where they have no letters of their own: I_R; a letter alone may be a unit."""
    return with_symbols(line) if "_" in line else line


def _notes(ledger: Ledger, box: Box) -> tuple[list[Item], float]:
    """Return notes and legend, and the height they use."""
    items: list[Item] = []
    if not ledger.title:
        return items, box.top
    y = box.top - TITLE - 4.0
    for note in ledger.notes:
        lines = wrapped(note, NOTE, box.width)
        items.append(with_role("paragraph", *(
            text(_lowered(line), Point(box.left, y - index * LEGEND_STEP), NOTE)
            for index, line in enumerate(lines, start=1)
        )))  # fmt: skip
        y -= LEGEND_STEP * len(lines)
    if not ledger.legend:
        return items, y - 3.0
    listed = _legend_lines(ledger, box.width)
    count = len([line for _, lines in listed for line in lines])
    start, column, used, lowest = y - 1.5, 0, 0, y
    y, signs = start, list[Item]()
    for sign, lines in listed:
        if column == 0 and used >= (count + 1) // 2:
            column, y = 1, start
        left = box.left + column * ((box.width - 8.0) / 2 + 8.0)
        label = text(sign, Point(left, y - LEGEND_STEP), NOTE, face="bold")
        words = [
            text(_lowered(line), Point(left + 8.0, y - index * LEGEND_STEP), NOTE)
            for index, line in enumerate(lines, start=1)
        ]
        signs.append(with_role("item", with_role("label", label), with_role("body", *words)))
        y -= LEGEND_STEP * len(lines)
        used += len(lines)
        lowest = min(lowest, y)
    return [*items, with_role("list", *signs)], lowest - 3.0


def _head(ledger: Ledger, edges: Sequence[tuple[float, float]], box: Box, top: float) -> tuple[list[Item], float]:
    """Return the headers between two rules, and the height they use."""
    deepest = max(len(heading.lines) for heading in ledger.headings)
    cells: list[Item] = []
    bottom = top - deepest * LINE - PAD
    for heading, edge in zip(ledger.headings, edges, strict=True):
        high = bottom + PAD + len(heading.lines) * LINE
        cells.append(with_role("column-head", *_cell(heading.lines, heading.anchor, edge, high, bold=True)))
    rules = (Line(Point(box.left, y), Point(box.right, y), 0.5) for y in (top, bottom))
    return [with_role("row", *cells), *rules], bottom


def _cell(lines: Lines, anchor: str, edge: tuple[float, float], top: float, *, bold: bool = False) -> list[Item]:
    x = edge[0] if anchor == "start" else edge[1]
    face = "bold" if bold else "regular"
    return [
        text(line, Point(x, top - (index + 1) * LINE + 1.0), CELL, anchor, face=face)  # type: ignore[arg-type]
        for index, line in enumerate(lines)
        if line
    ]


def _row(
    ledger: Ledger, row: tuple[Lines, ...], edges: Sequence[tuple[float, float]], top: float, pad: float
) -> Item:
    """One row; its first cell names it."""
    cells = (
        _cell(lines, heading.anchor, edge, top - pad / 2)
        for heading, lines, edge in zip(ledger.headings, row, edges, strict=True)
    )
    return with_role("row", *(with_role("cell" if place else "row-head", *cell) for place, cell in enumerate(cells)))


def _once(role: Role, item: Item, before: int) -> Item:
    """What stands on every page is heard on the first one only, which has nothing ``before`` it."""
    return with_role("furniture" if before else role, item)


def _edges(ledger: Ledger, box: Box) -> list[tuple[float, float]]:
    """Return left and right edge of each column; spare room is shared."""
    widths = natural_widths(ledger.headings, ledger.rows)
    left_over = box.width - math.fsum(widths)
    gap = min(9.0, left_over / max(1, len(widths) - 1))
    edges, x = [], box.left
    for width in widths:
        edges.append((x, x + width))
        x += width + gap
    return edges


def _height(ledger: Ledger, pad: float = PAD) -> float:
    return ledger.lines * LINE + pad


def _pad(ledger: Ledger, count: int, room: float) -> float:
    """What a row has more than its lines, if so many rows are to stand in a height: less than usual where all of them
    then stand there; nothing where they are lines of text."""
    if ledger.bare:
        return 0.0
    wanted = room / max(1, count) - ledger.lines * LINE
    return wanted if LEAST_PAD <= wanted < PAD else PAD


@dataclass(frozen=True, slots=True)
class _Part:
    """Some rows of a table on one page, and the height where its title begins."""

    ledger: Ledger
    start: int
    count: int
    top: float
    pad: float


def _under_head(ledger: Ledger, box: Box, start: int) -> float:
    """Return the height where a table's first row on a page begins."""
    head = 0.0 if ledger.bare else max(len(heading.lines) for heading in ledger.headings) * LINE + PAD
    return (_notes(ledger, box)[1] if start == 0 else box.top - TITLE - 5.0) - head


def _is_long(ledger: Ledger, box: Box) -> bool:
    """Whether a table has more rows than a page has room for."""
    room = _under_head(ledger, box, 0) - box.bottom - FOOT_ROOM
    return len(ledger.rows) * _height(ledger, LEAST_PAD) > room


def _divided(ledgers: Sequence[Ledger], box: Box) -> list[list[_Part]]:
    """Return what stands on each page: a table that fits whole below another one shares its page, and so does the
    beginning of one that no page holds."""
    divided: list[list[_Part]] = []
    low = box.bottom
    for ledger in ledgers:
        start, top = 0, low - BETWEEN
        while start < len(ledger.rows) or start == 0:
            left = len(ledger.rows) - start
            # What has no title of its own begins below the place of one: the code stands there.
            begin = top if ledger.title or start or top < box.top else top - TITLE - 2.0
            first = _under_head(ledger, box._replace(top=begin), start)
            room = first - box.bottom - FOOT_ROOM
            is_long = _is_long(ledger, box)
            pad = min(LONG_PAD if is_long else PAD, _pad(ledger, left, room))
            count = int(room / _height(ledger, pad) + 1e-9)
            fits = count >= left or ((ledger.bare or is_long) and count >= LEAST_LINES)
            shared = start == 0 and top < box.top and fits and not ledger.apart
            if not shared and top < box.top:
                top = box.top
                continue
            count = max(1, min(left, count))
            part = _Part(ledger, start, count, begin, pad)
            if shared:
                divided[-1].append(part)
            else:
                divided.append([part])
            low = first - count * _height(ledger, pad)
            start, top = start + count, box.bottom
    return divided


def page_count(ledgers: Sequence[Ledger], paper: str) -> int:
    """Return the number of pages of tables."""
    return len(_divided(ledgers, _frame(paper).box))


def pages(ledgers: Sequence[Ledger], paper: str, numbers: Sequence[str], description: str) -> Iterator[Page]:
    """Return the pages of tables in order; ``numbers``: the page numbers as text."""
    frame = _frame(paper)
    box = frame.box
    for index, (number, parts) in enumerate(zip(numbers, _divided(ledgers, box), strict=True)):
        first = parts[0].ledger
        items = [item for part in parts for item in _part(part, box._replace(top=part.top))]
        aside = text(f"{first.aside}  {number}", Point(box.right, box.top - TITLE), NOTE, "end")
        foot = text(first.foot, Point(box.left, box.bottom - 1.0), NOTE, ink="ink-2")
        items += [_once("paragraph", one, index) for one in (aside, foot)]
        yield Page(frame.width, frame.height, tuple(items), f"{first.title}, {number}", description)


def _part(part: _Part, box: Box) -> list[Item]:
    """Return title, notes, head and rows of a table's part, from the top of a box."""
    ledger = part.ledger
    title = text(ledger.title, Point(box.left, box.top - TITLE), TITLE, face="bold")
    items: list[Item] = [_once("heading", title, part.start)] if ledger.title else []
    top = box.top - TITLE - 5.0
    if part.start == 0:
        notes, top = _notes(ledger, box)
        items += notes
    edges = _edges(ledger, box)
    table, y = ([], top) if ledger.bare else _head(ledger, edges, box, top)
    for row in ledger.rows[part.start : part.start + part.count]:
        table.append(_row(ledger, row, edges, y, part.pad))
        y -= _height(ledger, part.pad)
        if not ledger.bare:
            table.append(Line(Point(box.left, y), Point(box.right, y), 0.18, "rule"))
    return [*items, with_role("table", *table)]
