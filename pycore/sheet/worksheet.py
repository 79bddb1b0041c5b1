"""The tables of a problem sheet: what is given, room for results, squares for working. In mm."""

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import ClassVar

from pycore.drawing import Item, Line, Shape, with_role
from pycore.geometry import Box, Point
from pycore.sheet.lettered import fitting, text, width_of
from pycore.sheet.parts import HEAD, grid
from pycore.sheet.sheet_text import LineSample, Worksheet
from pycore.sheet.styles import Style
from pycore.sheet.ticks import ticks
from pycore.words.sheet import ROOM

SQUARE = 5.0
STAGE_WIDTH = 17.5


@dataclass(frozen=True, slots=True)
class Given:
    """The phasors of the problem with what is given of them; empty cells for the rest."""

    style: Style
    work: Worksheet
    row: float
    is_table: ClassVar[bool] = True

    @property
    def height(self) -> float:
        """Its height, mm."""
        return HEAD * self.style.note + self.row * len(self.work.given)

    def _widths(self, width: float) -> tuple[float, float, float, float, float, float]:
        """Return the capitals of values and of directions, and the widths of symbols, amounts, lengths, directions."""
        style, work = self.style, self.work
        value = min(style.value, 0.52 * self.row)
        symbol = max(*(width_of(row.symbol, value) for row in work.given), self._head_width())
        amounts = [width_of(row.amount, value) for row in work.given if row.amount != ROOM]
        amount = max([12.0, width_of(work.head[1], style.note), *amounts])
        length = max(9.0, width_of(work.head[2], style.note) + 3.0)
        words = max([width_of(row.direction, style.note) for row in work.given if row.direction != ROOM] or [0.0])
        words = max(words, width_of(work.head[3], style.note)) + 2.4
        room = width - symbol - amount - length - 4.0
        # On the narrowest sheet the directions are set smaller.
        note, words = style.note * min(1.0, room / words), min(words, room)
        return value, note, symbol, amount, max(length, min(15.0, length + room - words - 9.0)), words

    def _head_width(self) -> float:
        """Return the width of the first head; in large print the symbols speak for themselves."""
        return 0.0 if self.style.column else width_of(self.work.head[0], self.style.note)

    def is_full(self, width: float) -> bool:
        """Return whether all of it has letters of full size."""
        value, note, *_ = self._widths(width)
        return value >= self.style.note and note == self.style.note

    def drawn(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return the table below a point, in a width."""
        style, work = self.style, self.work
        value, note, symbol, amount, length, words = self._widths(width)
        sample = width - symbol - amount - length - words - 4.0
        edges = (at.x + width - words - length - amount - 1.4, at.x + width - words - length, at.x + width - words)
        head, top = at.y - style.note - 0.4, at.y - HEAD * style.note
        heads = (
            () if style.column else (text(work.head[0], Point(at.x, head), style.note, ink="ink-2"),),
            (text(work.head[1], Point(edges[1] - 1.0, head), style.note, "end", "ink-2"),),
            (text(work.head[2], Point(edges[2] - 1.0, head), style.note, "end", "ink-2"),),
            (text(work.head[3], Point(edges[2] + 1.4, head), note, ink="ink-2"),),
        )
        rows: list[Item] = [with_role("row", *(with_role("column-head", *one) for one in heads))]
        for index, row in enumerate(work.given):
            base = top - (index + 0.5) * self.row - 0.5 * value + 0.1
            symbols: list[Item] = [text(row.symbol, Point(at.x, base), value)]
            if sample >= 5.0:
                start = Point(at.x + symbol + 1.6, base + 0.5 * value)
                symbols += line_sample(row.sample, start, min(9.0, sample), style)
            known = row.amount != ROOM
            amounts = (text(row.amount, Point(edges[1] - 1.0, base), value, "end"),) if known else ()
            direction = (
                text(row.direction, Point(edges[2] + 1.4, base), note) if row.direction != ROOM
                else text("°", Point(at.x + width - 1.2, base), style.note, "end", "ink-2")
            )  # fmt: skip
            rows.append(with_role(
                "row", with_role("row-head", *symbols), with_role("cell", *amounts), with_role("cell"),
                with_role("cell", direction),
            ))  # fmt: skip
        box = Box(at.x, top - self.row * len(work.given), at.x + width, top)
        return (with_role("table", *rows, *grid(box, self.row, edges)),)


@lru_cache(maxsize=64)
def line_sample(sample: LineSample, at: Point, length: float, style: Style) -> tuple[Line, ...]:
    """A piece of a phasor's own line, with its ticks."""
    end = Point(at.x + length, at.y)
    if sample.double:
        aside = Point(0.0, style.rail)
        pair = (aside, aside.times(-1))
        return tuple(Line(at.plus(one), end.plus(one), style.narrow, sample.ink, (2.4, 0.8)) for one in pair)
    # Six ticks in large print would be longer than the sample.
    gap = min(0.8 * style.tick_gap, 0.75 * length / max(1, sample.ticks - 1))
    small = replace(style, tick=0.6 * style.tick, tick_gap=gap)
    return (Line(at, end, style.wide, sample.ink), *ticks(at, end, sample.ticks, style.wide, sample.ink, small, 0.5))


@dataclass(frozen=True, slots=True)
class Results:
    """Cells for what the learner estimates, draws and calculates, and for the difference."""

    style: Style
    work: Worksheet
    row: float
    is_table: ClassVar[bool] = True

    @property
    def height(self) -> float:
        """Its height, mm."""
        return HEAD * self.style.note + self.row * len(self.work.stages)

    def _widths(self, width: float) -> tuple[float, float]:
        """Return the widths of the names of stages and of each result."""
        first = max(STAGE_WIDTH, *(width_of(stage, self.style.note) + 1.5 for stage in self.work.stages))
        return first, (width - first) / len(self.work.results)

    def is_full(self, width: float) -> bool:
        """Return whether all of it has letters of full size."""
        across = self._widths(width)[1] - 1.6
        return all(width_of(column.head, self.style.note) <= across for column in self.work.results)

    def drawn(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return the table below a point, in a width."""
        style, work = self.style, self.work
        first, across = self._widths(width)
        edges = tuple(at.x + first + index * across for index in range(len(work.results)))
        head, top = at.y - style.note - 0.4, at.y - HEAD * style.note
        heads: list[Item] = [with_role("column-head", text(work.result, Point(at.x, head), style.note, ink="ink-2"))]
        for left, column in zip(edges, work.results, strict=True):
            size = fitting(column.head, style.note, across - 1.6)
            heads.append(with_role("column-head", text(column.head, Point(left + across / 2, head), size, "middle")))
        rows: list[Item] = [with_role("row", *heads)]
        for index, stage in enumerate(work.stages):
            base = top - (index + 0.5) * self.row - 0.5 * style.note + 0.1
            cells: list[Item] = [with_role("row-head", text(stage, Point(at.x, base), style.note))]
            for left, column in zip(edges, work.results, strict=True):
                unit = text(column.unit, Point(left + across - 1.2, base), style.note, "end", "ink-2")
                cells.append(with_role("cell", *((unit,) if column.unit else ())))
            rows.append(with_role("row", *cells))
        box = Box(at.x, top - self.row * len(work.stages), at.x + width, top)
        return (with_role("table", *rows, *grid(box, self.row, edges)),)


def working(box: Box, head: str, note: float) -> list[Item]:
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
