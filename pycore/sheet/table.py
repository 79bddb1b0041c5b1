"""The table of a sheet: symbol and line, amount, length and angle of every phasor; columns as wide as their widest
cell."""

import math
from collections.abc import Sequence
from dataclasses import replace

from pycore.drawing import Group, Item, Line
from pycore.geometry import Point
from pycore.sheet.lettered import text, width_of
from pycore.sheet.media import Layout
from pycore.sheet.parts import HEAD, Part
from pycore.sheet.sheet_text import SheetText, TableRow
from pycore.sheet.styles import Style
from pycore.sheet.worksheet import line_sample
from pycore.words.phrase import Phrase
from pycore.words.sheet import ROOM

Head = tuple[Phrase, Phrase, Phrase, Phrase]
SAMPLE, BEFORE_SAMPLE = 7.0, 1.6
"""Length of the sample of a phasor's line, and the gap between it and the symbol."""
LEAST_GAP = 1.2


class Table(Part):
    """Symbol, amount, length and angle of every phasor."""

    is_table = True

    def __init__(self, style: Style, head: Head, rows: Sequence[TableRow], row: float) -> None:
        self.style = replace(style, value=min(style.value, 0.56 * row))
        self.head, self.rows, self.row = head, rows, row
        super().__init__(HEAD * style.note + row * len(rows))

    def drawn(self, at: Point, width: float) -> list[Item]:
        """Return the table below a point, in a width."""
        head, rows, right = self.head, self.rows, at.x + width
        style, (symbol, *columns) = self._set(at.x, width)
        y = at.y - self.style.note - 0.4
        items: list[Item] = []
        widest = max(width_of(row.amount, style.value) for row in rows)
        first = columns[0] - max(widest, width_of(head[1], style.note))
        if head[0] and at.x + width_of(head[0], style.note) + LEAST_GAP <= first:
            # On the narrowest sheet the symbols speak for themselves.
            items.append(text(head[0], Point(at.x, y), style.note, ink="ink-2"))
        for x, name in zip(columns, head[1:3], strict=False):
            items.append(text(name, Point(x, y), style.note, "end", "ink-2"))
        # The last head runs on over the senses of rotation, so it begins where its column does.
        last = columns[2] - max(width_of(row.angle, style.value) for row in rows)
        items.append(text(head[3], Point(last, y), style.note, ink="ink-2"))
        top = y = at.y - HEAD * self.style.note
        for index, row in enumerate(rows):
            if index:
                items.append(Line(Point(at.x, y), Point(right, y), *((0.25, "ink") if row.ruled else (0.18, "rule"))))
            items += self._row(row, Point(at.x, y), style, symbol, columns)
            y -= self.row
        return [*items, *(Line(Point(at.x, at_y), Point(right, at_y), style.wide) for at_y in (top, y))]

    def _row(self, row: TableRow, at: Point, style: Style, symbol: float, columns: Sequence[float]) -> list[Item]:
        base = at.y - self.row + (self.row - style.value) / 2 + 0.1
        items: list[Item] = [text(row.symbol, Point(at.x, base), style.value)]
        wide = width_of(row.symbol, style.value)
        if row.sample and symbol and wide <= symbol:
            start = Point(at.x + symbol + BEFORE_SAMPLE, base + 0.5 * style.value)
            items += line_sample(row.sample, start, SAMPLE, style)
        for x, written in zip(columns, (row.amount, row.length, row.angle), strict=True):
            end = Point(x, base)
            items.append(_blank(end, style) if written == ROOM else text(written, end, style.value, "end"))
        if row.sense:
            items.append(text(row.sense, Point(columns[2] + LEAST_GAP, base), style.note))
        return items

    def _set(self, left: float, width: float) -> tuple[Style, tuple[float, float, float, float]]:
        """Return the style in which the widest rows fit the table, the width of symbols beside samples (0 without
        samples), and the right edges of the columns."""
        for share in TABLE_SHARES:
            style = self.style
            smaller = replace(style, value=max(share * style.value, 2.0), note=min(style.note, share * style.value))
            columns = self._columns(smaller, left, width)
            sense = max(width_of(row.sense, smaller.note) for row in self.rows)
            if columns[3] + LEAST_GAP + sense <= left + width + 0.3:
                break
        return smaller, columns

    def _columns(self, style: Style, left: float, width: float) -> tuple[float, float, float, float]:
        """Return the width of symbols beside samples, and the right edges of amount, length and angle."""
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
        if sampled and room - max(wide_symbol, sampled + BEFORE_SAMPLE + SAMPLE) >= 3 * LEAST_GAP:
            wide_symbol = symbol = max(wide_symbol, sampled + BEFORE_SAMPLE + SAMPLE)
        else:
            sampled = 0.0
        symbol = wide_symbol if room - wide_symbol >= 3 * LEAST_GAP else symbol
        gap = max(1.0, (room - symbol) / 3)
        first = left + symbol + gap + widths[0]
        second = first + gap + widths[1]
        return sampled, first, second, second + gap + widths[2]


TABLE_SHARES = (1.0, 0.9, 0.8, 0.7)
"""Lettering of a table as a share of its usual height: the first that fits is used."""


def _blank(end: Point, style: Style) -> Line:
    """A line on which the learner writes a number."""
    y = end.y - 0.25 * style.value
    return Line(Point(end.x - width_of(ROOM, style.value), y), Point(end.x, y), style.narrow)


def table(layout: Layout, writing: SheetText) -> Group:
    """The table of a sheet laid out for easy reading, in its own place."""
    box, style = layout.table, layout.style
    part = Table(style, writing.head, writing.rows, style.row)
    return Group(tuple(part.drawn(Point(box.left, box.top), box.width)), name="table")
