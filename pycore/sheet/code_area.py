"""How a sheet is opened again: the QR code on the right, its words and the code to type on the left. In mm."""

from collections.abc import Iterable
from functools import lru_cache

from pycore.drawing import Group, Item, with_role
from pycore.geometry import Box, Point
from pycore.sheet.code import code
from pycore.sheet.lettered import fitting, text, wrapped
from pycore.sheet.media import Layout
from pycore.sheet.sheet_text import SheetText
from pycore.sheet.styles import Style

CODE_CAPITALS = 4.2
CODE_STEP = 1.5
"""Line spacing of a printed code, in capitals."""
SPACING = 1.7


def code_area(layout: Layout, writing: SheetText) -> Group:
    """The QR code and its words, or, without a code, only the words."""
    return _code_area(layout, writing.code, writing.short_code, writing.code_words)


def _short_code(written: str, style: Style, room: float) -> tuple[tuple[str, ...], float]:
    """Return the lines of a printed code and the height of their capitals.

    A code is one line, smaller if necessary, down to the size of notes; a longer one has two lines.
    """
    if not written:
        return (), style.value
    largest = style.value if style.column or style.value == style.note else CODE_CAPITALS
    size = fitting(written, largest, room, "bold")
    if size >= style.note:
        return (written,), size
    groups = written.split("-")
    half = (len(groups) + 1) // 2
    lines = "-".join(groups[:half]) + "-", "-".join(groups[half:])
    return lines, min(style.note, *(fitting(line, style.note, room, "bold") for line in lines))


def _stacked(lines: Iterable[str], at: Point, step: float, size: float) -> list[Item]:
    """Bold lines of text from the last to the first, each ``step`` mm above the one below."""
    drawn = [text(line, Point(at.x, at.y + step * index), size, face="bold") for index, line in enumerate(lines)]
    return [with_role("paragraph", *reversed(drawn))] if drawn else []


@lru_cache(maxsize=32)
def _code_area(layout: Layout, modules: tuple[str, ...], short_code: str, beside: tuple[str, ...]) -> Group:
    """Cached by its texts: most edits leave them unchanged."""
    box, style, note = layout.code, layout.style, layout.style.note
    right, items = box.right, list[Item]()
    if modules:
        size = min(box.height, box.width)
        items.append(code(modules, Box(box.right - size, box.bottom, box.right, box.bottom + size)))
        right -= size + 0.5
    room = box.width if style.column else right - box.left
    short, size = _short_code(short_code, style, room)
    # On a line with the lowest dark squares; in large print above them, over all of the width.
    low = box.top + 1.5 if style.column else box.bottom + (0.09 * box.height if modules else 0.6)
    items += _stacked(reversed(short), Point(box.left, low), CODE_STEP * size, size)
    taken = 0.0 if style.column or not short else low - box.bottom + CODE_STEP * size * len(short)
    y = box.top - (0.09 * box.height if modules else 0.0)
    for words in beside:
        lines = wrapped(words, note, right - box.left)
        if y - SPACING * note * (len(lines) - 1) - note >= box.bottom + taken:
            set_lines = (text(line, Point(box.left, y - (1.0 + SPACING * k) * note), note)
                         for k, line in enumerate(lines))
            items.append(with_role("paragraph", *set_lines))
            break
    return Group(tuple(items), name="opening")
