"""The recording sheet for a training rig: rows from the top down, to be filled in by hand. In mm."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from pycore.drawing import Group, Item, Line, Page, Role, Shape, with_role
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
        self.items.append(with_role("subheading", text(words, Point(self.left, self.y), HEADING, face="bold")))
        self.y -= 2.0

    def lines(self, words: str, capitals: float) -> None:
        self.items.append(self._wrapped("paragraph", words, capitals, 0.0))

    def _wrapped(self, role: Role, words: str, capitals: float, indent: float) -> Item:
        lines: list[Item] = []
        for line in wrapped(words, capitals, self.width - indent):
            self.y -= 1.75 * capitals
            lines.append(text(line, Point(self.left + indent, self.y), capitals))
        return with_role(role, *lines)

    def ticked(self, checks: Sequence[str]) -> None:
        """Lines, each with a box to tick before it."""
        items: list[Item] = []
        for words in checks:
            base = self.y - 1.75 * VALUE - 0.5
            items.append(with_role("item", self._wrapped("body", words, VALUE, 7.0)))
            items.append(_box(self.left, base, TICK, TICK))
            self.y -= 1.2
        self.items.append(with_role("list", *items))

    def table(self, head: Sequence[str], rows: Sequence[Sequence[str]], shares: Sequence[float]) -> None:
        """A row of heads, and rows whose first cell names them."""
        written = [self._row(tuple(zip(head, shares, strict=True)), 7.0, roles=("column-head", "column-head"))]
        for cells in rows:
            written.append(self._row(tuple(zip(cells, shares, strict=True)), roles=("row-head", "cell")))
        self.items.append(with_role("table", *(with_role("row", *row) for row in written)))

    def row(self, cells: Sequence[tuple[str, float]], height: float | None = None, small: bool = False) -> None:
        """A row of cells without a head, each with its words and its share of the width."""
        self.items += self._row(cells, height, small)

    def _row(
        self, cells: Sequence[tuple[str, float]], height: float | None = None, small: bool = False,
        roles: tuple[Role, Role] = ("paragraph", "paragraph"),
    ) -> list[Item]:
        """Return cells; small words are at the top. ``roles``: of the first cell, and of the others."""
        items, written = list[Item](), list[Item]()
        capitals = NOTE if small else VALUE
        height = height or self.row_height
        x = self.left
        for words, share in cells:
            wide = share * self.width
            items.append(_box(x, self.y - height, wide, height))
            base = self.y - NOTE - 1.2 if small else self.y - (height + VALUE) / 2
            role, ink = roles[bool(written)], "ink-2" if small else "ink"
            letters = (text(words, Point(x + 1.8, base), capitals, ink=ink),) if words else ()  # type: ignore[arg-type]
            if letters or role != "paragraph":
                written.append(with_role(role, *letters))
            x += wide
        self.y -= height
        return [*items, *written]

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
    sheet.items.append(with_role("heading", text(writing.title, Point(sheet.left, sheet.y), TITLE)))
    sheet.heading(writing.first)
    sheet.ticked(writing.checks)
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
    sheet.table(writing.head, [(name, *[""] * (columns + 1)) for name in writing.rows], shares)
    sheet.heading(writing.answers)
    shares = (0.18, 0.2, 0.2, 0.42)
    sheet.table(writing.answer_head, [(name, "", "", where) for name, where in writing.answer_rows], shares)
    sheet.heading(writing.agree)
    sheet.lines(writing.agree_help, NOTE)
    sheet.y -= 2.0
    for name in writing.agree_rows:
        sheet.row(((name, 0.34), (writing.agree_line, 0.66)))
    sheet.lines(writing.why, NOTE)
    sheet.rule()
