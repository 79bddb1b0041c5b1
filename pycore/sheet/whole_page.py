"""A sheet in large print whose drawing has the first page to itself: a strip below it, table and code on the
next. In mm."""

from dataclasses import replace

from pycore.drawing import Group, Item, Line, with_role
from pycore.geometry import Box, Point
from pycore.sheet.code_area import code_area
from pycore.sheet.lettered import fitting, text
from pycore.sheet.media import STRIP_ROWS, Layout
from pycore.sheet.sheet_text import SheetText
from pycore.sheet.skeleton import scale_line
from pycore.sheet.table import table
from pycore.sheet.title_block import name_and_date

TITLE_SHARE, NAME_SHARE = 0.56, 0.66
"""Where scale and date begin in the strip, as shares of its width."""


def strip(layout: Layout, writing: SheetText) -> Group:
    """Return title and scale, name and date below the drawing."""
    style, box = layout.style, layout.block
    upper = box.top - STRIP_ROWS[0] * style.title
    items: list[Item] = [
        Line(Point(box.left, box.top), Point(box.right, box.top), style.wide),
        Line(Point(box.left, upper), Point(box.right, upper), style.narrow),
    ]
    x, room = box.left + 4.0, TITLE_SHARE * box.width - 8.0
    base = upper + 0.62 * style.title
    title = writing.block.whole_title
    items.append(with_role("heading", text(title, Point(x, base), fitting(title, style.title, room))))
    left = box.left + TITLE_SHARE * box.width
    # Above the rule stands even the tail of a decimal comma.
    low = upper + 0.38 * style.scale_words
    # Above its figures there is room for the mark in the field's lower edge.
    capitals = min(style.scale_words, (box.top - 3.6 - low) / 1.05)
    items += scale_line(writing.scale_words, Point(left, low), capitals, box.right - 4.0 - left)[0]
    middle = box.left + NAME_SHARE * box.width
    items.append(Line(Point(middle, upper), Point(middle, box.bottom), style.narrow))
    base = (upper + box.bottom) / 2 - 0.5 * style.note
    items += name_and_date(writing.block, base, (x, middle, box.right), style)
    return Group(tuple(items), name="title-block")


def furniture_below(layout: Layout, writing: SheetText, left: float, right: float, top: float) -> tuple[Group, float]:
    """Return table and code for the second page, below ``top``, and the height where they end."""
    style = layout.style
    high = style.row * len(writing.rows) + 2.4 * style.note + 6.0
    there = replace(layout, table=Box(left, top - high, right, top))
    items: list[Item] = [table(there, writing)]
    y = top - high
    if writing.second_scale:
        y -= 1.6 * style.value
        words = writing.second_scale[-1]
        items.append(text(words, Point(left, y), fitting(words, style.value, right - left)))
    if writing.code or writing.short_code:
        square = style.code if writing.code else 0.0
        y -= 2.6 * style.value
        items.append(code_area(replace(layout, code=Box(left, y - square, right, y)), writing))
        y -= square
    return Group(tuple(items), name="furniture"), y
