"""Tables over as many pages as they need: title, notes and legend once, then header and rows. All in mm.

Rules and words carry the meaning, so that a black-and-white copy is readable.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from pycore.drawing import Item, Line, Page
from pycore.geometry import Box, Point
from pycore.sheet.lettered import text, width_of, wrapped
from pycore.sheet.media import PAPERS
from pycore.words.phrase import Phrase

MARGINS = (20.0, 12.0)
"""Left margin (for filing) and all other margins."""
TITLE, NOTE, CELL = 4.0, 2.5, 2.5
LINE, PAD = 4.4, 1.1
LEGEND_STEP = 4.3
FIGURES = str.maketrans("123456789", "000000000")

Lines = tuple[Phrase | str, ...]
"""What stands in one cell, a line below another."""


@dataclass(frozen=True, slots=True)
class ColumnHeading:
    """The header of a column, and on which side its cells are aligned."""

    lines: Lines
    anchor: str = "end"


@dataclass(frozen=True, slots=True)
class Ledger:
    """A table with its words. ``legend`` explains signs, in two columns below the notes; ``lines``: lines in each row.
    """

    title: str
    aside: str
    notes: tuple[str, ...]
    legend: tuple[tuple[str, str], ...]
    headings: tuple[ColumnHeading, ...]
    rows: Sequence[tuple[Lines, ...]]
    foot: str
    lines: int = 1


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


def _legend_lines(ledger: Ledger, width: float) -> list[tuple[str, list[str]]]:
    half = (width - 8.0) / 2 - 8.0
    return [(sign, wrapped(words, NOTE, half)) for sign, words in ledger.legend]


def _notes(ledger: Ledger, box: Box) -> tuple[list[Item], float]:
    """Return notes and legend, and the height they use."""
    items: list[Item] = []
    y = box.top - TITLE - 4.0
    for note in ledger.notes:
        for line in wrapped(note, NOTE, box.width):
            y -= LEGEND_STEP
            items.append(text(line, Point(box.left, y), NOTE))
    if not ledger.legend:
        return items, y - 3.0
    listed = _legend_lines(ledger, box.width)
    count = len([line for _, lines in listed for line in lines])
    start, column, used, lowest = y - 1.5, 0, 0, y
    y = start
    for sign, lines in listed:
        if column == 0 and used >= (count + 1) // 2:
            column, y = 1, start
        left = box.left + column * ((box.width - 8.0) / 2 + 8.0)
        items.append(text(sign, Point(left, y - LEGEND_STEP), NOTE, face="bold"))
        for line in lines:
            y -= LEGEND_STEP
            items.append(text(line, Point(left + 8.0, y), NOTE))
        used += len(lines)
        lowest = min(lowest, y)
    return items, lowest - 3.0


def _head(ledger: Ledger, edges: Sequence[tuple[float, float]], box: Box, top: float) -> tuple[list[Item], float]:
    """Return the headers between two rules, and the height they use."""
    deepest = max(len(heading.lines) for heading in ledger.headings)
    items: list[Item] = [Line(Point(box.left, top), Point(box.right, top), 0.5)]
    bottom = top - deepest * LINE - PAD
    for heading, edge in zip(ledger.headings, edges, strict=True):
        items += _cell(heading.lines, heading.anchor, edge, bottom + PAD + len(heading.lines) * LINE, bold=True)
    items.append(Line(Point(box.left, bottom), Point(box.right, bottom), 0.5))
    return items, bottom


def _cell(lines: Lines, anchor: str, edge: tuple[float, float], top: float, *, bold: bool = False) -> list[Item]:
    x = edge[0] if anchor == "start" else edge[1]
    face = "bold" if bold else "regular"
    return [
        text(line, Point(x, top - (index + 1) * LINE + 1.0), CELL, anchor, face=face)  # type: ignore[arg-type]
        for index, line in enumerate(lines)
        if line
    ]


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


def _height(ledger: Ledger) -> float:
    return ledger.lines * LINE + PAD


def _divided(ledger: Ledger, frame: _LedgerLayout) -> list[int]:
    """Return the number of rows on each page."""
    head = max(len(heading.lines) for heading in ledger.headings) * LINE + PAD
    _, first = _notes(ledger, frame.box)
    counts, left = [], len(ledger.rows)
    top = first
    while left > 0:
        room = top - head - frame.box.bottom - LINE - 2.0
        count = max(1, min(left, int(room / _height(ledger) + 1e-9)))
        counts.append(count)
        left -= count
        top = frame.box.top - TITLE - 5.0
    return counts


def page_count(ledger: Ledger, paper: str) -> int:
    """Return the number of pages of a table."""
    return len(_divided(ledger, _frame(paper)))


def pages(ledger: Ledger, paper: str, numbers: Sequence[str], description: str) -> Iterator[Page]:
    """Return the pages of a table in order; ``numbers``: the page numbers as text."""
    frame = _frame(paper)
    box = frame.box
    edges = _edges(ledger, box)
    done = 0
    for index, count in enumerate(_divided(ledger, frame)):
        items: list[Item] = [
            text(ledger.title, Point(box.left, box.top - TITLE), TITLE, face="bold"),
            text(f"{ledger.aside}  {numbers[index]}", Point(box.right, box.top - TITLE), NOTE, "end"),
        ]
        top = box.top - TITLE - 5.0
        if index == 0:
            notes, top = _notes(ledger, box)
            items += notes
        head, y = _head(ledger, edges, box, top)
        items += head
        for row in ledger.rows[done : done + count]:
            for heading, lines, edge in zip(ledger.headings, row, edges, strict=True):
                items += _cell(lines, heading.anchor, edge, y - PAD / 2)
            y -= _height(ledger)
            items.append(Line(Point(box.left, y), Point(box.right, y), 0.18, "rule"))
        done += count
        items.append(text(ledger.foot, Point(box.left, box.bottom - 1.0), NOTE, ink="ink-2"))
        yield Page(frame.width, frame.height, tuple(items), f"{ledger.title}, {numbers[index]}", description)
