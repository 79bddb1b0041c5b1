"""The table of a sheet: symbol and line, amount, length and angle of every phasor; columns as wide as their widest
cell."""

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product
from typing import ClassVar

from pycore.drawing import Group, Item, Line, with_role
from pycore.geometry import Box, Point
from pycore.sheet.lettered import text, width_of
from pycore.sheet.media import Layout
from pycore.sheet.parts import HEAD
from pycore.sheet.sheet_text import SheetText, TableRow
from pycore.sheet.styles import Style
from pycore.sheet.worksheet import line_sample
from pycore.words.phrase import Phrase
from pycore.words.sheet import ROOM

Head = tuple[Phrase, Phrase, Phrase, Phrase]
SAMPLE, BEFORE_SAMPLE = 7.0, 1.6
"""Length of the sample of a phasor's line, and the gap between it and the symbol."""
LEAST_GAP = 1.2


@dataclass(frozen=True, slots=True)
class Table:
    """Symbol, amount, length and angle of every phasor; ``row``: height of each, mm, by which values are set smaller.
    """

    usual: Style
    head: Head
    rows: tuple[TableRow, ...]
    row: float
    is_table: ClassVar[bool] = True

    @property
    def height(self) -> float:
        """Its height, mm."""
        return HEAD * self.usual.note + self.row * len(self.rows)

    @property
    def style(self) -> Style:
        """The style in which values fit their rows."""
        return replace(self.usual, value=min(self.usual.value, 0.56 * self.row))

    def drawn(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return the table below a point, in a width."""
        head, rows, right = self.head, self.rows, at.x + width
        style, symbol, columns = self._set(at.x, width)
        note = self.usual.note
        y = at.y - note - 0.4
        heads: list[Item] = []
        widest = max(width_of(row.amount, style.value) for row in rows)
        first = columns[0] - max(widest, width_of(head[1], style.note))
        # On the narrowest sheet the symbols speak for themselves.
        named = head[0] and at.x + width_of(head[0], style.note) + LEAST_GAP <= first
        symbols = (text(head[0], Point(at.x, y), style.note, ink="ink-2"),) if named else ()
        heads.append(with_role("column-head", *symbols))
        for x, name in zip(columns, head[1:3], strict=False):
            heads.append(with_role("column-head", text(name, Point(x, y), style.note, "end", "ink-2")))
        # The last head runs on over the senses of rotation, so it begins where its column does.
        last = columns[2] - max(width_of(row.angle, style.value) for row in rows)
        heads.append(with_role("column-head", text(head[3], Point(last, y), style.note, ink="ink-2")))
        items: list[Item] = [with_role("row", *heads)]
        top = y = at.y - HEAD * note
        for index, row in enumerate(rows):
            if index:
                items.append(Line(Point(at.x, y), Point(right, y), *((0.25, "ink") if row.ruled else (0.18, "rule"))))
            items.append(_row(row, Box(at.x, y - self.row, right, y), style, symbol, columns))
            y -= self.row
        rules = (Line(Point(at.x, at_y), Point(right, at_y), style.wide) for at_y in (top, y))
        return (with_role("table", *items, *rules),)

    def _set(self, left: float, width: float) -> tuple[Style, float, tuple[float, float, float]]:
        """Return the style in which the widest rows fit the table, the width of symbols beside samples (0 without
        samples), and the right edges of the columns."""
        style = self.style
        sampled = any(row.sample for row in self.rows)
        for least, lines, share in TRIES:
            smaller = replace(style, value=max(share * style.value, 2.0), note=min(style.note, share * style.value))
            columns = self._columns(smaller, left, width, least * smaller.value)
            sense = max(width_of(row.sense, smaller.note) for row in self.rows)
            angle = max(width_of(row.angle, smaller.value) for row in self.rows)
            end = columns[3] + max(LEAST_GAP + sense, width_of(self.head[3], smaller.note) - angle)
            lacks = lines and sampled and not columns[0]
            if end <= left + width + 0.3 and not lacks:
                break
        return smaller, columns[0], columns[1:]

    def _columns(self, style: Style, left: float, width: float, least: float) -> tuple[float, float, float, float]:
        """Return the width of symbols beside samples, and the right edges of amount, length and angle; ``least``: gap
        between columns."""
        head, rows = self.head, self.rows
        symbol = max(width_of(row.symbol, style.value) for row in rows)
        sampled = max([width_of(row.symbol, style.value) for row in rows if row.sample] or [0.0])
        wide_symbol = max(symbol, width_of(head[0], style.note))
        sense = max(width_of(row.sense, style.note) for row in rows) + LEAST_GAP
        widths = []
        for index, name in enumerate(("amount", "length", "angle"), start=1):
            values = max(width_of(getattr(row, name), style.value) for row in rows)
            widths.append(max(values, 0.0 if index == 3 else width_of(head[index], style.note)))
        sense = max(sense, width_of(head[3], style.note) - widths[2])
        room = width - sense - math.fsum(widths)
        if sampled and room - max(wide_symbol, sampled + BEFORE_SAMPLE + SAMPLE) >= 3 * least:
            wide_symbol = symbol = max(wide_symbol, sampled + BEFORE_SAMPLE + SAMPLE)
        else:
            sampled = 0.0
        symbol = wide_symbol if room - wide_symbol >= 3 * least else symbol
        gap = max(least, (room - symbol) / 3)
        first = left + symbol + gap + widths[0]
        second = first + gap + widths[1]
        return sampled, first, second, second + gap + widths[2]


@lru_cache(maxsize=64)
def _row(row: TableRow, box: Box, style: Style, symbol: float, columns: tuple[float, float, float]) -> Group:
    """Return a row in its box. Cached: an edit changes few of them."""
    base = box.bottom + (box.height - style.value) / 2 + 0.1
    items: list[Item] = [text(row.symbol, Point(box.left, base), style.value)]
    wide = width_of(row.symbol, style.value)
    if row.sample and symbol and wide <= symbol:
        start = Point(box.left + symbol + BEFORE_SAMPLE, base + 0.5 * style.value)
        items += line_sample(row.sample, start, SAMPLE, style)
    cells: list[list[Item]] = []
    for x, written in zip(columns, (row.amount, row.length, row.angle), strict=True):
        end = Point(x, base)
        cells.append([_blank(end, style) if written == ROOM else text(written, end, style.value, "end")])
    if row.sense:
        cells[-1].append(text(row.sense, Point(columns[2] + LEAST_GAP, base), style.note))
    return with_role("row", with_role("row-head", *items), *(with_role("cell", *cell) for cell in cells))


TABLE_SHARES = (1.0, 0.9, 0.8, 0.7)
"""Lettering of a table as a share of its usual height."""
COLUMN_GAP, LEAST_COLUMN_GAP = 0.7, 0.28
"""Gap between columns of figures, in capitals of the figures; and where nothing else fits."""
TRIES = (
    *product((COLUMN_GAP,), (True,), TABLE_SHARES[:2]), *product((COLUMN_GAP, LEAST_COLUMN_GAP), (False,), TABLE_SHARES)
)
"""Gap, whether the samples of lines must have room, and share of the lettering: the first that fits is used."""


def _blank(end: Point, style: Style) -> Line:
    """A line on which the learner writes a number."""
    y = end.y - 0.25 * style.value
    return Line(Point(end.x - width_of(ROOM, style.value), y), Point(end.x, y), style.narrow)


def table(layout: Layout, writing: SheetText) -> Group:
    """The table of a sheet laid out for easy reading, in its own place."""
    box, style = layout.table, layout.style
    part = Table(style, writing.head, writing.rows, style.row)
    return Group(part.drawn(Point(box.left, box.top), box.width), name="table")
