"""The words of a sheet laid out for easy reading beside its drawing: a table, and the scale. In mm."""

from pycore.drawing import Group, Item, with_role
from pycore.geometry import Point
from pycore.quantity import MINUS
from pycore.sheet.lettered import text, wrapped
from pycore.sheet.media import LEAST_ROW, Layout
from pycore.sheet.parts import Part
from pycore.sheet.sheet_text import SheetText
from pycore.sheet.skeleton import scale_line
from pycore.sheet.table import Table
from pycore.sheet.worksheet import Given, Results

BETWEEN = 1.2
"""Between two tables, in capitals of notes."""


def plain_words(layout: Layout, writing: SheetText) -> tuple[Group, Group]:
    """Return words and tables: those of a problem where there is room for letters of full size, else one table. The
    scale stands with them: in letters so large it would reach into the drawing."""
    style, box = layout.style, layout.table
    second = writing.second_scale[-1] if writing.second_scale else ""
    lines = wrapped(second, style.value, layout.words.width) if second else []
    high = 2.0 * style.scale_words + 1.7 * style.value * len(lines)
    low = layout.code.top + 3.0 * style.value + high if layout.landscape else layout.block.top + 2.0
    parts = _tables(layout, writing, box.top - low)
    items: list[Item] = []
    y = box.top
    for part in parts:
        items += part.drawn(Point(box.left, y), box.width)
        y -= part.height + BETWEEN * style.note
    turned_back = not writing.work and any(row.angle.startswith(MINUS) for row in writing.rows)
    sense = wrapped(writing.minus, style.note, box.width) if writing.minus and turned_back else []
    if sense and y - 1.6 * style.note * len(sense) >= low:
        items.append(with_role("paragraph", *(
            text(line, Point(box.left, y - (0.6 + 1.6 * number) * style.note), style.note)
            for number, line in enumerate(sense)
        )))  # fmt: skip
        y -= 1.6 * style.note * len(sense)
    top = Point(box.left, y) if layout.landscape else Point(layout.words.left, layout.words.top)
    base = top.y - 1.1 * style.scale_words - (1.0 if layout.landscape else 1.8)
    words, _ = scale_line(writing.scale_words, Point(top.x, base), style.scale_words, layout.words.width)
    # Below the tail of a decimal comma.
    base -= 0.12 * style.scale_words
    if lines:
        words.append(with_role("paragraph", *(
            text(line, Point(top.x, base - 1.7 * number * style.value), style.value)
            for number, line in enumerate(lines, start=1)
        )))  # fmt: skip
    return Group(tuple(words), name="words"), Group(tuple(items), name="table")


def _tables(layout: Layout, writing: SheetText, room: float) -> list[Part]:
    style, work = layout.style, writing.work
    if work:
        for row in (style.row, LEAST_ROW * style.value):
            given, results = Given(style, work, row), Results(style, work, row)
            full = given.is_full(layout.table.width) and results.is_full(layout.table.width)
            if full and given.height + results.height + BETWEEN * style.note <= room:
                return [given, results]
    return [Table(style, writing.head, writing.rows, style.row)]
