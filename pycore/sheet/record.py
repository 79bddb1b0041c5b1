"""The recording sheet for a training rig: rows from the top down, to be filled in by hand. In mm."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from pycore.drawing import Group, Item, Line, Page, Shape
from pycore.geometry import Point
from pycore.sheet.lettered import text, wrapped
from pycore.sheet.media import PRINTABLE_EDGE
from pycore.words.phrase import Phrase

NOTE, VALUE, HEADING, TITLE = 2.5, 3.0, 3.5, 5.0
ROWS = (9.0, 8.0, 7.0, 6.4)
"""Heights of a row to write in: the first with which everything fits is used."""
FOOT = 14.0
TICK = 4.0


@dataclass(frozen=True, slots=True)
class RecordWriting:
    """All words of the sheet in their order."""

    title: str
    first: str
    checks: tuple[str, ...]
    stop: str
    instrument: str
    cells: tuple[tuple[tuple[str, float], ...], ...]
    readings: str
    order: str
    head: tuple[str, ...]
    rows: tuple[str, ...]
    answers: str
    answer_head: tuple[str, ...]
    answer_rows: tuple[tuple[str, str], ...]
    agree: Phrase
    agree_help: str
    agree_rows: tuple[str, ...]
    agree_line: str
    why: str
    checked: str
    foot: str
    page_title: str
    description: str


@dataclass(slots=True)
class _Ruled:
    """A sheet being filled from the top; ``y`` is the height used so far."""

    left: float
    right: float
    y: float
    row_height: float = ROWS[0]
    items: list[Item] = field(default_factory=list)

    @property
    def width(self) -> float:
        return self.right - self.left

    def heading(self, words: str | Phrase) -> None:
        self.y -= HEADING + self.row_height - 4.0
        self.items.append(text(words, Point(self.left, self.y), HEADING, face="bold"))
        self.y -= 2.0

    def lines(self, words: str, capitals: float, indent: float = 0.0) -> None:
        for line in wrapped(words, capitals, self.width - indent):
            self.y -= 1.75 * capitals
            self.items.append(text(line, Point(self.left + indent, self.y), capitals))

    def tick(self, words: str) -> None:
        top = self.y
        self.lines(words, VALUE, 7.0)
        base = top - 1.75 * VALUE - 0.5
        self.items.append(_box(self.left, base, TICK, TICK))
        self.y -= 1.2

    def row(self, cells: Sequence[tuple[str, float]], height: float | None = None, small: bool = False) -> None:
        """A row of cells, each with its words and its share of the width; small words are at the top."""
        capitals = NOTE if small else VALUE
        height = height or self.row_height
        x = self.left
        for words, share in cells:
            wide = share * self.width
            self.items.append(_box(x, self.y - height, wide, height))
            base = self.y - NOTE - 1.2 if small else self.y - (height + VALUE) / 2
            if words:
                self.items.append(text(words, Point(x + 1.8, base), capitals, ink="ink-2" if small else "ink"))
            x += wide
        self.y -= height

    def rule(self) -> None:
        self.y -= self.row_height
        self.items.append(Line(Point(self.left, self.y), Point(self.right, self.y), 0.18, "ink-2"))


def _box(x: float, y: float, width: float, height: float) -> Shape:
    corners = (Point(x, y), Point(x + width, y), Point(x + width, y + height), Point(x, y + height))
    return Shape(corners, 0.25)


def _shares(first: float, count: int, last: float = 0.0) -> tuple[float, ...]:
    """Shares of a width: one for the row's name, equal ones, and perhaps a last one."""
    each = (1.0 - first - last) / count
    return (first, *[each] * count, *([last] if last else []))


def record_page(width: float, height: float, writing: RecordWriting) -> Page:
    """The sheet on a paper of this size, with rows as high as there is room for."""
    for row in ROWS:
        sheet = _Ruled(PRINTABLE_EDGE, width - PRINTABLE_EDGE, height - PRINTABLE_EDGE, row)
        _fill(sheet, writing)
        if sheet.y >= PRINTABLE_EDGE + FOOT:
            break
    line = PRINTABLE_EDGE + 6.0
    last = (
        text(writing.checked, Point(sheet.right - 62.0, line), NOTE, "end", "ink-2"),
        Line(Point(sheet.right - 60.0, line), Point(sheet.right, line), 0.18, "ink-2"),
        text(writing.foot, Point(sheet.left, PRINTABLE_EDGE), NOTE, ink="ink-2"),
    )
    return Page(width, height, (Group((*sheet.items, *last), name="record"),), writing.page_title, writing.description)


def _fill(sheet: _Ruled, writing: RecordWriting) -> None:
    """All rows, from the top down."""
    sheet.y -= TITLE
    sheet.items.append(text(writing.title, Point(sheet.left, sheet.y), TITLE))
    sheet.heading(writing.first)
    for check in writing.checks:
        sheet.tick(check)
    sheet.items.append(text(writing.stop, Point(sheet.left, sheet.y - 1.75 * VALUE), VALUE, face="bold"))
    sheet.y -= 1.75 * VALUE
    sheet.heading(writing.instrument)
    for cells in writing.cells:
        sheet.row(cells, 10.5, small=True)
    sheet.heading(writing.readings)
    sheet.lines(writing.order, NOTE)
    sheet.y -= 2.0
    columns = len(writing.head) - 2
    shares = _shares(0.18, columns, 0.18 if columns < 5 else 0.13)
    sheet.row(tuple(zip(writing.head, shares, strict=True)), 7.0)
    for name in writing.rows:
        sheet.row(tuple(zip((name, *[""] * (columns + 1)), shares, strict=True)))
    sheet.heading(writing.answers)
    shares = (0.18, 0.2, 0.2, 0.42)
    sheet.row(tuple(zip(writing.answer_head, shares, strict=True)), 7.0)
    for name, where in writing.answer_rows:
        sheet.row(tuple(zip((name, "", "", where), shares, strict=True)))
    sheet.heading(writing.agree)
    sheet.lines(writing.agree_help, NOTE)
    sheet.y -= 2.0
    for name in writing.agree_rows:
        sheet.row(((name, 0.34), (writing.agree_line, 0.66)))
    sheet.lines(writing.why, NOTE)
    sheet.rule()
