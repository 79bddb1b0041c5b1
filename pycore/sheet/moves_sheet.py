"""The second page of a sheet for easy reading: given values, then one move for each line with a box to tick. In mm.

Line spacing is one and a half times the usual (common practice for readers with dyslexia).
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from pycore.drawing import Group, Item, Page, Shape, with_role
from pycore.geometry import Point
from pycore.sheet.lettered import text, wrapped
from pycore.sheet.media import FILING_MARGIN, MARGIN, PAPERS, Layout
from pycore.sheet.sheet_text import SheetText
from pycore.sheet.whole_page import furniture_below
from pycore.words.phrase import with_symbols

LINE = 2.3
"""Line spacing, in capitals."""
BOX = 1.15
"""Side of a tick box, in capitals."""


@dataclass(frozen=True, slots=True)
class TextSection:
    """Lines below a heading; ``ticked``: each begins with a box."""

    heading: str
    lines: tuple[str, ...]
    ticked: bool = False


@dataclass(frozen=True, slots=True)
class _SetLine:
    """One line as it is set: its words, how far down from the one before, bold or boxed."""

    words: str
    drop: float
    indent: float = 0.0
    heading: bool = False
    boxed: bool = False


def _rows(lists: Sequence[TextSection], capitals: float, width: float) -> Iterator[tuple[_SetLine, ...]]:
    """Yield rows that must stay together: a heading with its first line, all lines of one move."""
    pitch = LINE * capitals
    for listed in lists:
        ahead: tuple[_SetLine, ...] = (_SetLine(listed.heading, 1.3 * pitch, heading=True),)
        indent = 2.4 * capitals if listed.ticked else 0.0
        for line in listed.lines:
            pieces = wrapped(line, capitals, width - indent)
            rest = tuple(
                _SetLine(piece, (1.25 if index == 0 else 0.85) * pitch, indent, boxed=listed.ticked and index == 0)
                for index, piece in enumerate(pieces)
            )
            yield (*ahead, *rest)
            ahead = ()


def _box(x: float, y: float, side: float) -> Shape:
    return Shape((Point(x, y), Point(x + side, y), Point(x + side, y + side), Point(x, y + side)), 0.35)


def moves_pages(
    layout: Layout, title: str, lists: Sequence[TextSection], foot: str, named: Sequence[str], description: str,
    writing: SheetText | None = None,
) -> tuple[Page, ...]:
    """Return as many portrait pages of the sheet's paper as the lines need; ``writing``: with its table and code first.

    ``named``: the pages' titles, the last for all that follow. ``description``: their content, for people who cannot
    see them.
    """
    capitals = layout.style.note
    width, height = PAPERS[layout.paper]
    left, right, top = _left(layout), width - MARGIN - 5.0, height - MARGIN - 5.0
    bottom = MARGIN + 5.0 + 3.4 * capitals
    pages: list[list[Item]] = [[]]
    y = top - layout.style.title
    pages[0].append(with_role("heading", text(title, Point(left, y), layout.style.title)))
    if writing:
        furniture, y = furniture_below(layout, writing, left, right, y - 0.8 * layout.style.title)
        pages[0].append(furniture)
    for rows in _rows(lists, capitals, right - left):
        high = 0.0
        for row in rows:
            high += row.drop
        if y - high < bottom and pages[-1]:
            pages.append([])
            y = top
        pages[-1] += _set_row(rows, Point(left, y), capitals)
        y -= high
    return tuple(
        Page(width, height, (Group((*_in_lists(items), _foot(layout, foot, right, index)), name="moves"),),
             named[min(index, len(named) - 1)], description)
        for index, items in enumerate(pages)
    )  # fmt: skip


def _left(layout: Layout) -> float:
    """Where lines begin: at the frame of a sheet; the frame of own paper is its edge."""
    return max(layout.frame.left, FILING_MARGIN)


def _set_row(rows: Iterable[_SetLine], at: Point, capitals: float) -> list[Item]:
    """Return the lines of a row below a point: a heading, and one move or line."""
    items, lines = list[Item](), list[Item]()
    y, boxed = at.y, False
    for row in rows:
        y -= row.drop
        written = text(with_symbols(row.words), Point(at.x + row.indent, y), capitals, face="bold" if row.heading else
                       "regular")
        if row.heading:
            items.append(with_role("subheading", written))
        else:
            lines.append(written)
        if row.boxed:
            boxed = True
            items.append(_box(at.x, y - 0.1 * capitals, BOX * capitals))
    return [*items, with_role("item", with_role("body", *lines)) if boxed else with_role("paragraph", *lines)]


def _in_lists(items: Iterable[Item]) -> Iterator[Item]:
    """Yield the items, moves that follow each other as one list."""
    for moves, run in groupby(items, _is_of_list):
        if moves:
            yield with_role("list", *run)
        else:
            yield from run


def _is_of_list(item: Item) -> bool:
    return isinstance(item, Shape) or (isinstance(item, Group) and item.role == "item")


def _foot(layout: Layout, words: str, right: float, index: int) -> Group:
    """The line at the foot of a page; on further pages it is passed over by who hears it."""
    capitals = layout.style.note
    left = _left(layout)
    lines = wrapped(words, capitals, right - left)
    low = MARGIN + 5.0 + (len(lines) - 1) * 1.7 * capitals
    drawn = (
        text(line, Point(left, low - place * 1.7 * capitals), capitals, ink="ink-2")
        for place, line in enumerate(lines)
    )
    return with_role("furniture" if index else "paragraph", *drawn)
