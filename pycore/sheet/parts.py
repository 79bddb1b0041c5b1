"""What a column of words is made of: parts that know how high they are, and draw themselves below a point. In mm."""

from collections.abc import Sequence

from pycore.drawing import Item, Line, Text
from pycore.geometry import Box, Point
from pycore.sheet.lettered import text, wrapped
from pycore.words.phrase import with_symbols

HEAD = 1.84
"""Height of a table's head, in capitals of notes."""


class Part:
    """A part of a column: its height, and whether it is a table."""

    is_table = False

    def __init__(self, height: float) -> None:
        self.height = height

    def drawn(self, at: Point, width: float) -> list[Item]:
        """Return its items below a point, in a width."""
        raise NotImplementedError


class Lines(Part):
    """Lines of text; ``number``: before the first of them, all others as far in."""

    def __init__(self, wording: str, capitals: float, spacing: float, width: float, number: str = "") -> None:
        self.capitals, self.step, self.number = capitals, capitals * spacing, number
        self.indent = 2.2 * capitals if number else 0.0
        self.lines = wrapped(wording, capitals, width - self.indent)
        super().__init__(capitals * 1.15 + self.step * (len(self.lines) - 1) + 0.3 * capitals)

    def drawn(self, at: Point, width: float) -> list[Item]:
        """Return the lines, with symbols set as such."""
        y = at.y - 1.15 * self.capitals
        lines: list[Text] = [
            text(with_symbols(line), Point(at.x + self.indent, y - index * self.step), self.capitals)
            for index, line in enumerate(self.lines)
        ]
        return [text(self.number, Point(at.x, y), self.capitals, face="bold"), *lines] if self.number else [*lines]


def grid(box: Box, row: float, edges: Sequence[float]) -> list[Item]:
    """Rules of a table: strong above and below, pale between rows and columns."""
    items: list[Item] = [Line(Point(x, box.bottom), Point(x, box.top), 0.18, "rule") for x in edges]
    for index in range(1, round(box.height / row)):
        y = box.top - index * row
        items.append(Line(Point(box.left, y), Point(box.right, y), 0.18, "rule"))
    return [*items, *(Line(Point(box.left, y), Point(box.right, y), 0.5) for y in (box.top, box.bottom))]
