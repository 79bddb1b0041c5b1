"""What is on a sheet besides its figure: frame, check bars, table, notes, title block, foot."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product

from pycore.drawing import Group, Ink, Item, Line, Shape, Text
from pycore.geometry import Box, Point
from pycore.sheet.code import code
from pycore.sheet.lettered import fitting, text, width_of, wrapped
from pycore.sheet.media import BLOCK_ROWS, Layout, Style, layout
from pycore.sheet.worksheet import Worksheet, scale_line, worksheet, writes_worksheet
from pycore.words.phrase import Phrase, with_symbols


@dataclass(frozen=True, slots=True)
class TableRow:
    """One phasor in the table: symbol, amount, length and angle as text."""

    symbol: Phrase
    amount: str
    length: str
    angle: str
    sense: str = ""
    ruled: bool = False
    """Whether a rule parts it from the row above."""


@dataclass(frozen=True, slots=True)
class SheetText:
    """All words of a sheet, ready to set: table, scale, notes, title block."""

    title: str
    subtitle: str
    method: str
    head: tuple[Phrase, Phrase, Phrase, Phrase]
    rows: tuple[TableRow, ...]
    scale_words: str
    notes: tuple[str, ...]
    foot: str
    block: tuple[tuple[str, str], ...]
    """Small label and value of the title block's cells: scale, paper, sheet; name, group, date."""
    code_words: tuple[str, ...]
    """What stands beside the QR code or in its place: the first of these that has room."""
    page_title: str
    description: str
    second_scale: tuple[str, ...] = ()
    """The scale of phasors of a second quantity, below the sum's: the first of these that has room."""
    code: tuple[str, ...] = ()
    """The QR code's rows of dark (1) and light (0) modules; empty: none."""
    short_code: str = ""
    """The problem's code as it is printed, beside the QR code or in its place."""
    more: str = ""
    """A further question: the last note but one, or where the notes have no room, beside the code."""
    work: Worksheet | None = None
    """What a problem gives and asks for, in place of the table, where a sheet has room for it."""


@lru_cache(maxsize=32)
def frame(layout: Layout) -> Group:
    """Frame and centring marks (after ISO 5457, adapted)."""
    box = layout.frame
    outline = Shape(box.corners, 0.7)
    x, y = (box.left + box.right) / 2, (box.bottom + box.top) / 2
    marks = (
        Line(Point(box.left - 5, y), Point(box.left + 2, y), 0.7),
        Line(Point(box.right - 2, y), Point(box.right + 5, y), 0.7),
        Line(Point(x, box.bottom - 5), Point(x, box.bottom), 0.7),
        Line(Point(x, box.top - 2), Point(x, box.top + 5), 0.7),
    )
    return Group((outline, *marks), name="frame")


def _bar_boxes(x: float, y: float, length: float, upright: bool) -> Iterator[Item]:
    """Alternately filled fields of 10 mm, and the end strokes."""
    count = int(length / 10)
    for index in range(count):
        low = index * 10.0
        box = (
            Box(x, y + low, x + 1.6, y + low + 10) if upright else Box(x + low, y, x + low + 10, y + 1.6)
        )
        yield Shape(box.corners, 0.18, "ink", "ink" if index % 2 == 0 else "sheet")


def check_bar(
    at: Point, length: float, length_text: str, note: float, *, upright: bool = False, below: bool = False
) -> Group:
    """Return a bar to measure with a ruler, from its lower left corner; ``length_text`` is its length as text.

    The text is along a vertical bar (above it, it would reach into the figure's area), and after a horizontal one, or
    below it if ``below``.
    """
    x, y = at
    ends = (0.0, length)
    strokes = (
        (Line(Point(x - 1, y + end), Point(x + 2.6, y + end), 0.25) for end in ends)
        if upright
        else (Line(Point(x + end, y - 1), Point(x + end, y + 2.6), 0.25) for end in ends)
    )
    if upright:
        words = replace(text(length_text, Point(x + 3.5 + note, y + length / 2), note, "middle"), turn=90.0)
    elif below:
        words = text(length_text, Point(x + length / 2, y - 2.0 - note), note, "middle")
    else:
        words = text(length_text, Point(x + length + 2, y - 0.4), note)
    return Group((*_bar_boxes(x, y, length, upright), *strokes, words), name="check-bar")


@lru_cache(maxsize=32)
def check_bars(layout: Layout) -> tuple[Group, ...]:
    """Return a bar on each axis to measure with a ruler, away from the edges that a printer may lose."""
    upright_x, upright_y, level_x, level_y = layout.bars
    length_text, note = layout.bar_text, layout.style.note
    return (
        check_bar(Point(upright_x, upright_y), layout.bar, length_text, note, upright=True),
        check_bar(Point(level_x, level_y), layout.bar, length_text, note),
    )


def asked(layout: Layout, writing: SheetText) -> tuple[Group, Group] | None:
    """Return words and tables of a problem sheet; None for another kind, or where there is no room for them."""
    if writing.work is None or not writes_worksheet(layout):
        return None
    *first, last = writing.notes
    notes = (*first, writing.more, last) if writing.more and not _asks_below(layout) else writing.notes
    # The question stands alone, in larger letters: what is left of its note is what is done with every problem.
    notes = tuple(note.removeprefix(writing.work.question).strip() for note in notes)
    opens = bool(writing.code or writing.short_code or any(writing.code_words))
    free = layout.code.top + 1.0 if opens else layout.block.top + 3.0
    return worksheet(layout, writing.work, notes, writing.scale_words, writing.second_scale, free)


NOTE_SPACINGS = ((1.9, 1.5), (1.7, 1.0), (1.55, 0.6), (1.45, 0.2))
"""Line spacing as a share of the capitals, and mm between notes: the first that fits all notes is used."""
NOTE_SHARES = (1.0, 0.92, 0.85, 0.78, 0.72)
"""Reduced lettering of the notes, if even the closest lines do not fit: a small sheet with many values."""


def words(layout: Layout, writing: SheetText) -> Group:
    """Return the scale in words and the notes below it, closer together or smaller if they would not fit."""
    *first, last = ("", *writing.notes)
    notes = (*first, writing.more, last) if writing.more and not _asks_below(layout) else writing.notes
    return _words(layout, writing.scale_words, notes, writing.second_scale)


@lru_cache(maxsize=32)
def _words(layout: Layout, scale: str, notes: tuple[str, ...], second_scale: tuple[str, ...]) -> Group:
    """Cached part of ``words``, by its texts: most edits leave them unchanged."""
    style, box = layout.style, layout.words
    y = box.top - style.scale_words - 1
    head = scale_line(scale, Point(box.left, y), style.scale_words, box.width)
    for wording in second_scale or ("",):
        below = _second_scale(layout, wording, y)
        start = below[-1].at.y if below else y
        lines, complete = _notes([note for note in notes if note], style.note, box, start - _below_scale(style))
        if complete:
            break
    return Group((*head, *below, *lines), name="words")


def _below_scale(style: Style) -> float:
    """Return the distance from the baseline of the scale to the notes."""
    return 3.0 if style.note < style.value else 1.5


def _second_scale(layout: Layout, scale_line: str, y: float) -> list[Text]:
    """Return the scale of a second quantity below the first, whose baseline is ``y``."""
    style, box = layout.style, layout.words
    # Below the tail of a decimal comma.
    y -= 0.12 * style.scale_words
    lines = wrapped(scale_line, style.value, box.width) if scale_line else []
    return [
        text(line, Point(box.left, y - 1.7 * style.value * number), style.value)
        for number, line in enumerate(lines, start=1)
    ]


def _notes(texts: Sequence[str], capitals: float, box: Box, y: float) -> tuple[list[Text], bool]:
    """Return the notes below ``y`` as large and as far apart as possible, and whether all fit."""
    for share, (spacing, gap) in product(NOTE_SHARES, NOTE_SPACINGS):
        size = share * capitals
        notes = [wrapped(note, size, box.width) for note in texts]
        lines = len([line for note in notes for line in note])
        if lines * spacing * size + (len(notes) - 1) * gap <= y - box.bottom:
            break
    items = []
    for note in notes:
        for line in note:
            y -= size * spacing
            if y >= box.bottom - 1e-9:
                items.append(text(with_symbols(line), Point(box.left, y), size))
        y -= gap
    return items, len(items) == lines


def _asks_below(layout: Layout) -> bool:
    """Return whether a further question is beside the code: portrait and small sheets have few lines for notes."""
    return layout.orientation == "portrait" or layout.style.value == layout.style.note


BLOCK_ROWS_USUAL = (((0, 1, 2, 4), (0.0, 0.36, 0.52, 0.72)), ((3, 5), (0.0, 0.72)))
"""The two lower rows of the title block: which cells stand there, and their left edges as shares of its width. The name
has 60 mm and more."""
BLOCK_ROWS_COMPACT = (((0, 1, 2), (0.0, 0.42, 0.68)), ((3, 4, 5), (0.0, 0.42, 0.68)))
CELL_PADDING = 3.2


def _cells(style: Style) -> dict[int, tuple[int, float, float]]:
    """Return row, left and right edge of each cell in the two lower rows of the title block, by its number."""
    rows = BLOCK_ROWS_COMPACT if style.title < 4 else BLOCK_ROWS_USUAL
    return {
        number: (row, begin, end)
        for row, (numbers, begins) in enumerate(rows)
        for number, begin, end in zip(numbers, begins, (*begins[1:], 1.0), strict=True)
    }


def lower_cells(paper: str) -> tuple[float, ...]:
    """Return the room in mm for the texts in the cells that are filled in by hand: name, group, date."""
    sheet = layout(paper, "landscape")
    places = _cells(sheet.style)
    return tuple(sheet.block.width * (places[one][2] - places[one][1]) - CELL_PADDING for one in (3, 4, 5))


def fits_block(scale: str, layout: Layout) -> bool:
    """Return whether a scale fits its cell in the title block."""
    room = layout.block.width * _cells(layout.style)[0][2] - CELL_PADDING
    return width_of(scale, min(layout.style.note, 2.5)) <= room


def title_block(layout: Layout, writing: SheetText) -> Group:
    """Title, method and the cells below (after ISO 7200, adapted)."""
    return _title_block(layout, writing.title, writing.subtitle, writing.method, writing.block)


@lru_cache(maxsize=32)
def _title_block(
    layout: Layout, title: str, subtitle: str, method: str, cells: tuple[tuple[str, str], ...]
) -> Group:
    """Cached part of ``title_block``, by its texts: most edits leave them unchanged."""
    style, box = layout.style, layout.block
    compact = style.title < 4
    title_height, cell = (16.5, 8.5) if compact else (15.0, 10.3)
    x = box.left + 2.4
    items: list[Item] = [Shape(box.corners, 0.5)]
    y = box.top - title_height
    size = fitting(title, style.title, box.width - 4.8)
    items.append(text(title, Point(x, box.top - style.title - 2.2), size))
    lines = wrapped(subtitle, style.note, box.width - 4.8, 2 if compact else 1)
    for index, line in enumerate(reversed(lines)):
        items.append(text(line, Point(x, y + 1.6 + index * 1.6 * style.note), style.note))
    items.append(Line(Point(box.left, y), Point(box.right, y), 0.25))
    items += _cell(x, y, "method", method, style, box.width)
    y -= cell
    for row in (0, 1):
        items.append(Line(Point(box.left, y - row * cell), Point(box.right, y - row * cell), 0.25))
    for number, (row, begin, end) in sorted(_cells(style).items()):
        left, top = box.left + begin * box.width, y - row * cell
        if begin:
            items.append(Line(Point(left, top), Point(left, max(box.bottom, top - cell)), 0.25))
        items += _cell(left + 2.4, top, *cells[number], style, (end - begin) * box.width)
    return Group(tuple(items), name="title-block")


def plain_block(layout: Layout, writing: SheetText) -> Group:
    """Title, method, name and date only, all large enough to read easily."""
    style, box = layout.style, layout.block
    x, room = box.left + 4.0, box.width - 8.0
    title, method, last = (
        share * size for share, size in zip(BLOCK_ROWS, (style.title, style.note, style.note), strict=True)
    )
    y = box.top - title
    wording, capitals = _plain_title(writing.title, style, room)
    items: list[Item] = [
        Shape(box.corners, style.wide),
        text(wording, Point(x, y + 0.6 * style.title), capitals),
        Line(Point(box.left, y), Point(box.right, y), style.narrow),
    ]
    lines = wrapped(writing.method, style.note, room)
    first = y - (method + (1.0 - 1.5 * (len(lines) - 1)) * style.note) / 2
    for index, line in enumerate(lines):
        items.append(text(with_symbols(line), Point(x, first - index * 1.5 * style.note), style.note))
    y -= method
    items.append(Line(Point(box.left, y), Point(box.right, y), style.narrow))
    middle = box.left + 0.62 * box.width
    items.append(Line(Point(middle, y), Point(middle, box.bottom), style.narrow))
    for left, right, (label, value) in ((x, middle, writing.block[3]), (middle + 4.0, box.right, writing.block[5])):
        # A name that was typed is never left out: a long one is set smaller.
        size = next((s for s in (style.note, 0.7 * style.note) if width_of(value, s) <= right - left - 4.0), 2.5)
        ink: Ink = "ink" if value else "ink-2"
        items.append(text(value or label, Point(left, y - (last + style.note) / 2), size, ink=ink))
    return Group(tuple(items), name="title-block")


def _plain_title(title: str, style: Style, room: float) -> tuple[str, float]:
    """Return a title as large as fits; without the kind of sheet if even small lettering is too wide."""
    short = title.partition(":")[0]
    for wording, capitals in ((title, style.title), (title, style.note), (short, style.title)):
        if width_of(wording, capitals) <= room:
            return wording, capitals
    return short, min(style.title, max(style.note, fitting(short, style.title, room)))


def _cell(x: float, top: float, label: str, value: str, style: Style, width: float) -> list[Item]:
    """A cell's small label and its value, smaller if it would not fit."""
    small = min(style.note, 2.5)
    items: list[Item] = []
    if label:
        items.append(text(label, Point(x, top - small - 1.0), small, ink="ink-2"))
    if value:
        room = width - CELL_PADDING
        size = style.value if width_of(value, style.value) <= room else fitting(value, small, room)
        drop = small + style.value + 2.3 if label else style.value + 2.8
        items.append(text(with_symbols(value) if label == "method" else value, Point(x, top - drop), size))
    return items


def code_area(layout: Layout, writing: SheetText) -> Group:
    """The QR code with its words beside it, or, without a code, only the words."""
    question = writing.more if _asks_below(layout) else ""
    return _code_area(layout, writing.code, writing.short_code, question, writing.code_words)


CODE_STEP = 1.5
"""Line spacing of a printed code, in capitals."""


def _short_code(written: str, style: Style, room: float) -> tuple[tuple[str, ...], float]:
    """Return the lines of a printed code and the height of their capitals.

    A code of up to three groups is one line in the size of values. A longer one is smaller if necessary, down to the
    size of notes, or else has two lines.
    """
    if not written:
        return (), style.value
    groups = written.split("-")
    size = fitting(written, style.value, room, "bold")
    if len(groups) <= 3:
        return (written,), style.value
    if size >= style.note:
        return (written,), size
    half = (len(groups) + 1) // 2
    return ("-".join(groups[:half]) + "-", "-".join(groups[half:])), style.note


def _stacked(lines: Iterable[str], at: Point, step: float, size: float) -> list[Item]:
    """Bold lines of text, each ``step`` mm above the one before."""
    return [text(line, Point(at.x, at.y + step * index), size, face="bold") for index, line in enumerate(lines)]


@lru_cache(maxsize=32)
def _code_area(
    layout: Layout, modules: tuple[str, ...], short_code: str, question: str, beside: tuple[str, ...]
) -> Group:
    """Cached part of ``code_area``, by its texts: most edits leave them unchanged."""
    box, note = layout.code, layout.style.note
    items: list[Item] = []
    left, y, step = box.left, box.top, note * 1.7
    if modules:
        size = layout.style.code
        y = box.top if question else box.bottom + size
        square = Box(left, box.bottom, left + size, box.bottom + size)
        items.append(code(modules, square))
        left += size + 1.5
    short, size = _short_code(short_code, layout.style, box.right - (box.left if layout.style.column else left))
    if layout.style.column:
        items += _stacked(reversed(short), Point(box.left, box.top + 1.5), CODE_STEP * size, size)
    else:
        y -= size if short else 0.0
        items += _stacked(short, Point(left, y), -CODE_STEP * size, size)
        y -= CODE_STEP * size * max(0, len(short) - 1)
    if question:
        lines = wrapped(question, note, box.right - left)
        items += [text(line, Point(left, y - step * (index + 1)), note) for index, line in enumerate(lines)]
        y -= step * len(lines) + 0.8
    for words_here in beside:
        lines = wrapped(words_here, note, box.right - left)
        if y - step * len(lines) >= box.bottom - 0.6:
            items += [text(line, Point(left, y - step * (index + 1)), note) for index, line in enumerate(lines)]
            break
    return Group(tuple(items), name="opening")


@lru_cache(maxsize=32)
def foot(layout: Layout, words_below: str) -> Group:
    """The safety note in the lower left corner of the frame."""
    if not words_below:
        return Group((), name="foot")
    note = layout.style.note
    left = layout.frame.left + 3
    lines = wrapped(words_below, note, layout.block.left - left - 2)
    set_lines = tuple(
        text(line, Point(left, layout.frame.bottom + 1.8 + index * note * 1.7), note, ink="ink-2")
        for index, line in enumerate(reversed(lines))
    )
    return Group(set_lines, name="foot")


