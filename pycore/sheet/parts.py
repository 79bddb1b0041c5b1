"""What a column of words is made of: parts that know how high they are, and draw themselves below a point. In mm."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import ClassVar, Protocol

from pycore.drawing import Group, Item, Line, with_role
from pycore.geometry import Box, Point
from pycore.sheet.lettered import text, wrapped
from pycore.words.phrase import with_symbols

HEAD = 1.84
"""Height of a table's head, in capitals of notes."""


class Part(Protocol):
    """A part of a column, frozen: its height, and whether it is a table."""

    @property
    def is_table(self) -> bool:
        """Whether it is a table."""

    @property
    def height(self) -> float:
        """Its height, mm."""

    def drawn(self, at: Point, width: float) -> tuple[Item, ...]:
        """Return its items below a point, in a width."""


@dataclass(frozen=True, slots=True)
class Lines:
    """Lines of text, one ``step`` below the other; ``number``: before the first of them, all as far in."""

    lines: tuple[str, ...]
    capitals: float
    step: float
    number: str = ""
    is_table: ClassVar[bool] = False

    @property
    def height(self) -> float:
        """Their height, mm."""
        return self.capitals * 1.15 + self.step * (len(self.lines) - 1) + 0.3 * self.capitals

    def drawn(self, at: Point, _width: float) -> tuple[Item, ...]:
        """Return the lines, with symbols set as such."""
        return _drawn(self, at)


def _indent(capitals: float, number: str) -> float:
    """Return how far in lines stand beside a number."""
    return 2.2 * capitals if number else 0.0


@lru_cache(maxsize=512)
def lines_of(wording: str, capitals: float, spacing: float, width: float, number: str = "") -> Lines:
    """Return a wording broken into lines. Cached: most edits leave most words of a sheet as they are."""
    lines = wrapped(wording, capitals, width - _indent(capitals, number))
    return Lines(tuple(lines), capitals, capitals * spacing, number)


@lru_cache(maxsize=512)
def _drawn(lines: Lines, at: Point) -> tuple[Group, ...]:
    capitals, left = lines.capitals, at.x + _indent(lines.capitals, lines.number)
    y = at.y - 1.15 * capitals
    texts = [
        text(with_symbols(line), Point(left, y - index * lines.step), capitals)
        for index, line in enumerate(lines.lines)
    ]
    if not lines.number:
        return (with_role("paragraph", *texts),)
    number = text(lines.number, Point(at.x, y), capitals, face="bold")
    return (with_role("item", with_role("label", number), with_role("body", *texts)),)


def grid(box: Box, row: float, edges: Sequence[float]) -> list[Item]:
    """Rules of a table: strong above and below, pale between rows and columns."""
    items: list[Item] = [Line(Point(x, box.bottom), Point(x, box.top), 0.18, "rule") for x in edges]
    for index in range(1, round(box.height / row)):
        y = box.top - index * row
        items.append(Line(Point(box.left, y), Point(box.right, y), 0.18, "rule"))
    return [*items, *(Line(Point(box.left, y), Point(box.right, y), 0.5) for y in (box.top, box.bottom))]
