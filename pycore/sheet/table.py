"""The table of a sheet: symbol, amount, length and angle of every phasor; columns as wide as their widest cell."""

import math
from dataclasses import replace

from pycore.drawing import Group, Item, Line
from pycore.geometry import Box, Point
from pycore.sheet.furniture import SheetText
from pycore.sheet.lettered import text, width_of
from pycore.sheet.media import Layout, Style
from pycore.words.sheet import ROOM


def table(layout: Layout, writing: SheetText) -> Group:
    """Symbol, amount, length and angle of every phasor."""
    box, right = layout.table, layout.table.right
    style, columns = _table_style(layout.style, box, writing)
    y = box.top - style.note - 1
    items: list[Item] = []
    widest = max(width_of(row.amount, style.value) for row in writing.rows)
    first = columns[0] - max(widest, width_of(writing.head[1], style.note))
    if writing.head[0] and box.left + width_of(writing.head[0], style.note) + 1.2 <= first:
        # On the narrowest sheet the symbols speak for themselves.
        items.append(text(writing.head[0], Point(box.left, y), style.note, ink="ink-2"))
    for x, head in zip(columns, writing.head[1:3], strict=False):
        items.append(text(head, Point(x, y), style.note, "end", "ink-2"))
    # The last head runs on over the senses of rotation, so it begins where its column does.
    last = columns[2] - max(width_of(row.angle, style.value) for row in writing.rows)
    items.append(text(writing.head[3], Point(last, y), style.note, ink="ink-2"))
    y -= max(2.0, 0.55 * style.note)
    items.append(Line(Point(box.left, y), Point(right, y), style.wide))
    for index, row in enumerate(writing.rows):
        if row.ruled and index:
            items.append(Line(Point(box.left, y - 0.6), Point(right, y - 0.6), style.narrow))
            y -= 0.6
        base = y - style.row + (style.row - style.value) / 2 + 0.2
        items.append(text(row.symbol, Point(box.left, base), style.value))
        for x, written in zip(columns, (row.amount, row.length, row.angle), strict=True):
            end = Point(x, base)
            items.append(_blank(end, style) if written == ROOM else text(written, end, style.value, "end"))
        if row.sense:
            items.append(text(row.sense, Point(columns[2] + 1.2, base), style.note))
        y -= style.row
    items.append(Line(Point(box.left, y), Point(right, y), style.wide))
    return Group(tuple(items), name="table")


def _blank(end: Point, style: Style) -> Line:
    """A line on which the learner writes a number."""
    y = end.y - 0.25 * style.value
    return Line(Point(end.x - width_of(ROOM, style.value), y), Point(end.x, y), style.narrow)


TABLE_SHARES = (1.0, 0.9, 0.8, 0.7)
"""Lettering of a table as a share of its usual height: the first that fits is used."""


def _table_style(style: Style, box: Box, writing: SheetText) -> tuple[Style, tuple[float, float, float]]:
    """Return the style in which the widest rows fit the table, and its columns."""
    for share in TABLE_SHARES:
        smaller = replace(style, value=max(share * style.value, 2.0), note=min(style.note, share * style.value))
        columns = _columns(smaller, box, writing)
        if columns[2] + 1.2 + max(width_of(row.sense, smaller.note) for row in writing.rows) <= box.right + 0.3:
            break
    return smaller, columns


def _columns(style: Style, box: Box, writing: SheetText) -> tuple[float, float, float]:
    """Return the right edges of the columns for amount, length and angle."""
    symbol = max(width_of(row.symbol, style.value) for row in writing.rows)
    wide_symbol = max(symbol, width_of(writing.head[0], style.note))
    sense = max(width_of(row.sense, style.note) for row in writing.rows) + 1.2
    widths = []
    for index, name in enumerate(("amount", "length", "angle"), start=1):
        values = max(width_of(getattr(row, name), style.value) for row in writing.rows)
        head = 0.0 if index == 3 else width_of(writing.head[index], style.note)
        widths.append(max(values, head))
    sense = max(sense, width_of(writing.head[3], style.note) - widths[2])
    room = box.width - sense - math.fsum(widths)
    symbol = wide_symbol if room - wide_symbol >= 3 * 1.2 else symbol
    gap = max(1.0, (room - symbol) / 3)
    first = box.left + symbol + gap + widths[0]
    second = first + gap + widths[1]
    return first, second, second + gap + widths[2]
