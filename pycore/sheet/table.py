"""The table of a sheet: symbol and line, amount, length and angle of every phasor; columns as wide as their widest
cell."""

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product
from typing import ClassVar, NamedTuple

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
        return _lettered(self.usual, min(self.usual.value, 0.56 * self.row), self.usual.note)

    def drawn(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return the table below a point, in a width."""
        head, rows, right = self.head, self.rows, at.x + width
        style, symbol, columns = self._set(at.x, width)
        note = self.usual.note
        widest = max([width_of(row.amount, style.value) for row in rows])
        first = columns[0] - max(widest, width_of(head[1], style.note))
        # On the narrowest sheet the symbols speak for themselves.
        named = at.x + width_of(head[0], style.note) + LEAST_GAP <= first
        # The last head runs on over the senses of rotation, so it begins where its column does.
        last = columns[2] - max([width_of(row.angle, style.value) for row in rows])
        places = at.x, columns[0], columns[1], last
        items: list[Item] = [_heads(head if named else ((), *head[1:]), places, at.y - note - 0.4, style.note)]
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
        measured: dict[float, _Widths] = {}
        for least, lines, share in TRIES:
            smaller = _lettered(style, max(share * style.value, 2.0), min(style.note, share * style.value))
            if share not in measured:
                measured[share] = self._widths(smaller)
            widths = measured[share]
            columns = _columns(widths, left, width, least * smaller.value)
            end = columns[3] + widths.after_angle
            lacks = lines and sampled and not columns[0]
            if end <= left + width + 0.3 and not lacks:
                break
        return smaller, columns[0], columns[1:]

    def _widths(self, style: Style) -> "_Widths":
        """Return how wide the cells are in a style."""
        head, rows, value, note = self.head, self.rows, style.value, style.note
        symbol = max([width_of(row.symbol, value) for row in rows])
        sampled = max([width_of(row.symbol, value) for row in rows if row.sample] or [0.0])
        amount = max(max([width_of(row.amount, value) for row in rows]), width_of(head[1], note))
        length = max(max([width_of(row.length, value) for row in rows]), width_of(head[2], note))
        angle = max([width_of(row.angle, value) for row in rows])
        sense = max([width_of(row.sense, note) for row in rows]) + LEAST_GAP
        after_angle = max(sense, width_of(head[3], note) - angle)
        return _Widths(symbol, sampled, max(symbol, width_of(head[0], note)), amount, length, angle, after_angle)


class _Widths(NamedTuple):
    """The widest cell of each column: symbols (all, those with a sample, and their head), amounts, lengths, angles, and
    what stands after the angles."""

    symbol: float
    sampled: float
    wide_symbol: float
    amount: float
    length: float
    angle: float
    after_angle: float


def _columns(widths: _Widths, left: float, width: float, least: float) -> tuple[float, float, float, float]:
    """Return the width of symbols beside samples, and the right edges of amount, length and angle; ``least``: gap
    between columns."""
    symbol, sampled, wide_symbol = widths.symbol, widths.sampled, widths.wide_symbol
    room = width - widths.after_angle - math.fsum((widths.amount, widths.length, widths.angle))
    if sampled and room - max(wide_symbol, sampled + BEFORE_SAMPLE + SAMPLE) >= 3 * least:
        wide_symbol = symbol = max(wide_symbol, sampled + BEFORE_SAMPLE + SAMPLE)
    else:
        sampled = 0.0
    symbol = wide_symbol if room - wide_symbol >= 3 * least else symbol
    gap = max(least, (room - symbol) / 3)
    first = left + symbol + gap + widths.amount
    second = first + gap + widths.length
    return sampled, first, second, second + gap + widths.angle


@lru_cache(maxsize=64)
def _lettered(style: Style, value: float, note: float) -> Style:
    """Return a style with capitals of other heights."""
    return replace(style, value=value, note=note)


@lru_cache(maxsize=16)
def _heads(head: Head, places: tuple[float, float, float, float], y: float, note: float) -> Group:
    """Return the row of heads: above the amounts and lengths they end at their places, else they begin there; none over
    the symbols if that is empty. Cached: an edit seldom changes it."""
    heads = [with_role("column-head", *((text(head[0], Point(places[0], y), note, ink="ink-2"),) if head[0] else ()))]
    for x, name in zip(places[1:3], head[1:3], strict=True):
        heads.append(with_role("column-head", text(name, Point(x, y), note, "end", "ink-2")))
    heads.append(with_role("column-head", text(head[3], Point(places[3], y), note, ink="ink-2")))
    return with_role("row", *heads)


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
