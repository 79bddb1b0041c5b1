"""The furniture of a problem sheet: question, given values, scale, room for results and for working. In mm.

All parts go into the column beside the figure, or into the two columns below it; where they have little room, rows and
lines move closer together, and the room for working goes first. The figure never moves for them.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from pycore.drawing import Arc, Group, Ink, Item, Line, Shape
from pycore.geometry import Box, Point
from pycore.sheet.lettered import fitting, text, width_of, wrapped
from pycore.sheet.media import Layout, Style
from pycore.sheet.ticks import ticks
from pycore.words.phrase import Phrase, with_symbols
from pycore.words.sheet import ROOM


@dataclass(frozen=True, slots=True)
class GivenRow:
    """A phasor of a problem: symbol, ink and ticks of its line, amount and direction in words; ``ROOM`` where the
    learner finds them."""

    symbol: Phrase
    ink: Ink
    ticks: int
    amount: str
    direction: str
    double: bool = False
    """A phasor of a second quantity, drawn as a double line."""


@dataclass(frozen=True, slots=True)
class ResultColumn:
    """A result that is estimated, drawn and calculated: its head, and the unit printed in its cells."""

    head: Phrase
    unit: str


@dataclass(frozen=True, slots=True)
class Worksheet:
    """What a problem gives and asks for. ``head``: heads of the given values. ``stages``: names of the rows of results.
    ``working``: head of the room for sums. ``turning``: name of the sense of rotation, which is ``anticlockwise``."""

    question: str
    head: tuple[Phrase, Phrase, Phrase, Phrase]
    given: tuple[GivenRow, ...]
    result: Phrase
    stages: tuple[str, ...]
    results: tuple[ResultColumn, ...]
    working: str
    turning: tuple[str, ...]
    anticlockwise: bool


@dataclass(frozen=True, slots=True)
class _Fit:
    """Sizes with which a worksheet is tried: table rows, capitals of the question and of notes, line spacing, gaps
    between parts, and the least room for working (0: none)."""

    row: float
    question: float
    note: float
    spacing: float
    gap: float
    working: float


FITS = (
    _Fit(7.0, 3.5, 2.5, 1.9, 3.2, 16.0), _Fit(6.5, 3.5, 2.5, 1.75, 2.8, 14.0), _Fit(6.2, 3.5, 2.5, 1.65, 2.4, 12.0),
    _Fit(6.0, 3.2, 2.5, 1.6, 2.0, 10.0), _Fit(5.6, 3.0, 2.4, 1.5, 1.6, 10.0), _Fit(6.5, 3.2, 2.5, 1.65, 2.2, 0.0),
    _Fit(6.0, 3.0, 2.5, 1.6, 2.0, 0.0),
    _Fit(5.5, 2.8, 2.4, 1.55, 1.8, 0.0), _Fit(5.2, 2.5, 2.3, 1.5, 1.5, 0.0), _Fit(5.0, 2.4, 2.1, 1.45, 1.2, 0.0),
    _Fit(4.6, 2.2, 1.95, 1.45, 1.0, 0.0), _Fit(4.2, 2.0, 1.8, 1.4, 0.8, 0.0),
)  # fmt: skip
"""The first that fits is used."""
HEAD = 4.6
"""Height of a table's head."""
SQUARE = 5.0
RULE_ROOM = 18.0
"""Length of the line on which a learner writes the number of a scale, mm."""
TURNING_RADIUS = 3.6
STAGE_WIDTH = 17.5


def writes_worksheet(layout: Layout) -> bool:
    """Return whether a problem sheet of this layout has room for a worksheet: not small paper or easy reading."""
    return not layout.small and not layout.style.column


def worksheet(
    layout: Layout, work: Worksheet, notes: Sequence[str], scale: str, second: Sequence[str], free: float
) -> tuple[Group, Group]:
    """Return words and tables of a problem sheet. ``free``: the height from which the column is free, above the code
    or the title block."""
    columns = _columns(layout, free)
    for fit in FITS:
        parts = [_parts(layout.style, work, notes, scale, second, fit, box.width) for box in columns]
        sets = _divided(parts, len(columns))
        heights = [math.fsum(part.height for part in one) + fit.gap * (len(one) - 1) for one in sets]
        left = [box.height - high for box, high in zip(columns, heights, strict=True)]
        enough = max(left) >= fit.gap + fit.working + 1.0 if fit.working else True
        if min(left) >= 0.0 and enough:
            break
    words: list[Item] = []
    tables: list[Item] = []
    for box, one, spare in zip(columns, sets, left, strict=True):
        y = box.top
        for part in one:
            (tables if part.is_table else words).extend(part.drawn(Point(box.left, y), box.width))
            y -= part.height + fit.gap
        if spare - fit.gap >= max(10.0, fit.working) and spare == max(left):
            tables += _working(Box(box.left, box.bottom, box.right, y), work.working, layout.style.note)
    return Group(tuple(words), name="words"), Group(tuple(tables), name="table")


def _columns(layout: Layout, free: float) -> tuple[Box, ...]:
    table, words = layout.table, layout.words
    if layout.orientation == "landscape":
        return (Box(table.left, free, table.right, table.top),)
    return (
        Box(table.left, layout.code.top + 1.0, table.right, table.top),
        Box(words.left, words.bottom, words.right, words.top),
    )


class _Part:
    """A part of a worksheet: how high it is, and how it is drawn below a point."""

    is_table = False

    def __init__(self, height: float) -> None:
        self.height = height

    def drawn(self, at: Point, width: float) -> list[Item]:
        raise NotImplementedError


class _Lines(_Part):
    """Lines of text."""

    def __init__(self, wording: str, capitals: float, spacing: float, width: float) -> None:
        self.capitals, self.step = capitals, capitals * spacing
        self.lines = wrapped(wording, capitals, width)
        super().__init__(capitals * 1.15 + self.step * (len(self.lines) - 1) + 0.3 * capitals)

    def drawn(self, at: Point, width: float) -> list[Item]:
        y = at.y - 1.15 * self.capitals
        return [
            text(with_symbols(line), Point(at.x, y - index * self.step), self.capitals)
            for index, line in enumerate(self.lines)
        ]


class _Scale(_Part):
    """The scale in words, a second one below it, and the sense of rotation drawn at the right."""

    def __init__(self, style: Style, work: Worksheet, scale: str, second: Sequence[str]) -> None:
        self.style, self.work, self.scale = style, work, scale
        self.second = second[-1] if second else ""
        super().__init__(max(8.6, 1.2 * style.scale_words) + (6.4 if self.second else 0.0))

    def drawn(self, at: Point, width: float) -> list[Item]:
        style, y = self.style, at.y - 1.05 * self.style.scale_words
        turning = max(width_of(line, style.note) for line in self.work.turning)
        room = width - 2 * TURNING_RADIUS - turning - 4.0
        items = list(scale_line(self.scale, Point(at.x, y), style.scale_words, room))
        if self.second:
            size = fitting(self.second, style.value, room)
            items.append(text(self.second, Point(at.x, y - 0.12 * style.scale_words - 1.7 * style.value), size))
        centre = Point(at.x + width - TURNING_RADIUS - 0.6, at.y - TURNING_RADIUS - 0.6)
        items += turning_sign(centre, TURNING_RADIUS, anticlockwise=self.work.anticlockwise)
        for index, line in enumerate(self.work.turning):
            base = centre.y + (0.45 if len(self.work.turning) > 1 else -0.5) * style.note - 1.5 * index * style.note
            items.append(text(line, Point(centre.x - TURNING_RADIUS - 1.6, base), style.note, "end", "ink-2"))
        return items


class _Given(_Part):
    """The phasors of the problem with what is given of them; empty cells for the rest."""

    is_table = True

    def __init__(self, style: Style, work: Worksheet, row: float) -> None:
        self.style, self.work, self.row = style, work, row
        super().__init__(HEAD + row * len(work.given))

    def drawn(self, at: Point, width: float) -> list[Item]:
        style, work = self.style, self.work
        value = min(style.value, 0.52 * self.row)
        symbol = max(max(width_of(row.symbol, value) for row in work.given), width_of(work.head[0], style.note))
        amounts = [width_of(row.amount, value) for row in work.given if row.amount != ROOM]
        amount = max([12.0, width_of(work.head[1], style.note), *amounts])
        words = max([width_of(row.direction, style.note) for row in work.given if row.direction != ROOM] or [0.0])
        words = max(words, width_of(work.head[3], style.note)) + 2.4
        length = max(11.0, min(15.0, width - symbol - amount - words - 13.0))
        sample = width - symbol - amount - length - words - 4.0
        edges = (at.x + width - words - length - amount - 1.4, at.x + width - words - length, at.x + width - words)
        head, top = at.y - style.note - 0.4, at.y - HEAD
        items: list[Item] = [text(work.head[0], Point(at.x, head), style.note, ink="ink-2")]
        items.append(text(work.head[1], Point(edges[1] - 1.0, head), style.note, "end", "ink-2"))
        items.append(text(work.head[2], Point(edges[2] - 1.0, head), style.note, "end", "ink-2"))
        items.append(text(work.head[3], Point(edges[2] + 1.4, head), style.note, ink="ink-2"))
        for index, row in enumerate(work.given):
            base = top - (index + 0.5) * self.row - 0.5 * value + 0.1
            items.append(text(row.symbol, Point(at.x, base), value))
            if sample >= 5.0:
                items += _sample(row, Point(at.x + symbol + 1.6, base + 0.5 * value), min(9.0, sample), style)
            if row.amount != ROOM:
                items.append(text(row.amount, Point(edges[1] - 1.0, base), value, "end"))
            if row.direction != ROOM:
                items.append(text(row.direction, Point(edges[2] + 1.4, base), style.note))
            else:
                items.append(text("°", Point(at.x + width - 1.2, base), style.note, "end", "ink-2"))
        return [*items, *_grid(Box(at.x, top - self.row * len(work.given), at.x + width, top), self.row, edges)]


def _sample(row: GivenRow, at: Point, length: float, style: Style) -> list[Item]:
    """A piece of the phasor's own line, with its ticks."""
    end = Point(at.x + length, at.y)
    if row.double:
        aside = Point(0.0, style.rail)
        pair = (aside, aside.times(-1))
        return [Line(at.plus(one), end.plus(one), style.narrow, row.ink, (2.4, 0.8)) for one in pair]
    small = replace(style, tick=0.6 * style.tick, tick_gap=0.8 * style.tick_gap)
    return [Line(at, end, style.wide, row.ink), *ticks(at, end, row.ticks, style.wide, row.ink, small, 0.5)]


class _Results(_Part):
    """Cells for what the learner estimates, draws and calculates, and for the difference."""

    is_table = True

    def __init__(self, style: Style, work: Worksheet, row: float) -> None:
        self.style, self.work, self.row = style, work, row
        super().__init__(HEAD + row * len(work.stages))

    def drawn(self, at: Point, width: float) -> list[Item]:
        style, work = self.style, self.work
        first = max(STAGE_WIDTH, *(width_of(stage, style.note) + 1.5 for stage in work.stages))
        across = (width - first) / len(work.results)
        edges = tuple(at.x + first + index * across for index in range(len(work.results)))
        head, top = at.y - style.note - 0.4, at.y - HEAD
        items: list[Item] = [text(work.result, Point(at.x, head), style.note, ink="ink-2")]
        for left, column in zip(edges, work.results, strict=True):
            size = fitting(column.head, style.note, across - 1.6)
            items.append(text(column.head, Point(left + across / 2, head), size, "middle"))
        for index, stage in enumerate(work.stages):
            base = top - (index + 0.5) * self.row - 0.5 * style.note + 0.1
            items.append(text(stage, Point(at.x, base), style.note))
            for left, column in zip(edges, work.results, strict=True):
                if column.unit:
                    items.append(text(column.unit, Point(left + across - 1.2, base), style.note, "end", "ink-2"))
        box = Box(at.x, top - self.row * len(work.stages), at.x + width, top)
        return [*items, *_grid(box, self.row, edges)]


def _grid(box: Box, row: float, edges: Sequence[float]) -> list[Item]:
    """Rules of a table: strong above and below, pale between rows and columns."""
    items: list[Item] = [Line(Point(x, box.bottom), Point(x, box.top), 0.18, "rule") for x in edges]
    for index in range(1, round(box.height / row)):
        y = box.top - index * row
        items.append(Line(Point(box.left, y), Point(box.right, y), 0.18, "rule"))
    return [*items, *(Line(Point(box.left, y), Point(box.right, y), 0.5) for y in (box.top, box.bottom))]


def _parts(
    style: Style, work: Worksheet, notes: Sequence[str], scale: str, second: Sequence[str], fit: _Fit, width: float
) -> tuple[_Part, ...]:
    before, after = ([note for note in some if note] for some in (reversed(notes[:2]), notes[2:]))
    lines = [_Lines(note, fit.note, fit.spacing, width) for note in after]
    return (
        _Lines(work.question, fit.question, min(fit.spacing, 1.6), width),
        *(_Lines(note, fit.note, fit.spacing, width) for note in before),
        _Given(style, work, fit.row), _Scale(style, work, scale, second), _Results(style, work, fit.row), *lines,
    )  # fmt: skip


def _divided(parts: Sequence[tuple[_Part, ...]], count: int) -> tuple[tuple[_Part, ...], ...]:
    """Divide parts on columns: all in one, or tables in the first and words in the second."""
    if count == 1:
        return (tuple(parts[0]),)
    return (
        tuple(part for part in parts[0] if part.is_table),
        tuple(part for part in parts[1] if not part.is_table),
    )


def _working(box: Box, head: str, note: float) -> list[Item]:
    """Squared room for working, with its head in the first squares."""
    rows = int(box.height / SQUARE)
    box = Box(box.left, box.top - rows * SQUARE, box.left + SQUARE * int(box.width / SQUARE), box.top)
    words = width_of(head, note) + 2.4
    blank = SQUARE * math.ceil(words / SQUARE)
    items: list[Item] = [text(head, Point(box.left + 1.2, box.top - 0.5 * SQUARE - 0.45 * note), note, ink="ink-2")]
    items.append(Shape(box.corners, 0.18, "rule"))
    for index in range(1, rows):
        y = box.top - index * SQUARE
        items.append(Line(Point(box.left, y), Point(box.right, y), 0.18, "rule"))
    for index in range(1, round(box.width / SQUARE)):
        x = box.left + index * SQUARE
        top = box.top - (SQUARE if index * SQUARE < blank - 0.1 else 0.0)
        items.append(Line(Point(x, box.bottom), Point(x, top), 0.18, "rule"))
    return items


def scale_line(scale: str, at: Point, capitals: float, room: float) -> list[Item]:
    """Return a scale in words; a ruled line where the learner writes its number."""
    pieces = scale.split(ROOM)
    rule = RULE_ROOM * capitals / 7.0
    wide = math.fsum(width_of(piece, capitals) for piece in pieces) + rule * (len(pieces) - 1)
    size = capitals * min(1.0, room / wide)
    rule *= size / capitals
    items: list[Item] = []
    x = at.x
    for piece, _after in pairwise((*pieces, "")):
        if x > at.x:
            items.append(Line(Point(x, at.y - 0.2 * size), Point(x + rule, at.y - 0.2 * size), 0.25))
            x += rule
        items.append(text(piece, Point(x, at.y), size))
        x += width_of(piece, size)
    return items


def turning_sign(centre: Point, radius: float, *, anticlockwise: bool) -> list[Item]:
    """Return an open circle with an arrowhead: the sense in which positive angles turn."""
    start, sweep = (30.0, 290.0) if anticlockwise else (150.0, -290.0)
    end = centre.moved(radius, start + sweep)
    ahead = start + sweep + (90.0 if anticlockwise else -90.0)
    tip = end.moved(1.2, ahead)
    wings = (end.moved(-0.9, ahead).moved(0.75, ahead + 90.0), end.moved(-0.9, ahead).moved(0.75, ahead - 90.0))
    return [Arc(centre, radius, start, sweep, 0.35, "ink"), Shape((tip, *wings), 0.0, "ink", "ink")]
