"""A finished drawing: frozen primitives in mm, y upwards, without any knowledge of electricity.

Each writer in ``pycore.writers`` turns these into a file; the code that makes a drawing is independent of the file
format. Line widths, dash lengths and text sizes are mm on paper.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from pycore.errors import DrawingError
from pycore.geometry import Box, Point
from pycore.lettering.glyphs import Glyph

Ink = Literal[
    "ink", "ink-2", "ink-3", "rule", "accent", "tint", "tint-2", "sheet",
    "brown", "black", "grey", "blue", "red", "yellow", "orange", "white",
]  # fmt: skip
"""A named ink: the writers know its colour on paper, the style sheet its colour on screen."""

PAPER_COLOURS: dict[str, str] = {
    "ink": "#14191A",
    "ink-2": "#46504C",
    "ink-3": "#68726D",
    "rule": "#9FA9A1",
    "accent": "#00664B",
    "tint": "#E4F0EB",
    "tint-2": "#C0DDD3",
    "sheet": "#FFFFFF",
    "brown": "#8A4A14",
    "black": "#14191A",
    "grey": "#6E767A",
    "blue": "#1257B3",
    "red": "#B3261E",
    "yellow": "#9A7400",
    "orange": "#B85600",
    "white": "#FFFFFF",
}

Face = Literal["regular", "bold", "italic"]

Role = Literal[
    "", "heading", "subheading", "paragraph", "list", "item", "label", "body",
    "table", "row", "column-head", "row-head", "cell", "figure", "furniture",
]  # fmt: skip
"""What a group is to a reader who cannot see the page. ``furniture`` is passed over: frames, what stands on each page
again. A list holds items, an item a label and a body; a table holds rows, a row heads and cells."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line with square ends; ``dash`` is (stroke, gap) in mm or empty."""

    start: Point
    end: Point
    width: float = 0.25
    ink: Ink = "ink"
    dash: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Arc:
    """Part of a circle, from ``start`` degrees through ``sweep`` degrees (signed)."""

    centre: Point
    radius: float
    start: float
    sweep: float
    width: float = 0.25
    ink: Ink = "ink-2"
    dash: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle, filled or not."""

    centre: Point
    radius: float
    width: float = 0.25
    ink: Ink = "ink"
    fill: Ink | None = None


@dataclass(frozen=True, slots=True)
class Shape:
    """A polygon: outline (if width > 0), fill (if named), closed or open."""

    points: tuple[Point, ...]
    width: float = 0.0
    ink: Ink = "ink"
    fill: Ink | None = None
    closed: bool = True


@dataclass(frozen=True, slots=True)
class Squares:
    """The dark squares of a grid, filled together: ``rows`` from the top, "1" dark, "0" empty.

    ``corner``: the upper left corner of the grid; ``side``: that of one square.
    """

    corner: Point
    side: float
    rows: tuple[str, ...]
    fill: Ink = "ink"


@dataclass(frozen=True, slots=True)
class Picture:
    """A photograph as a JPEG file, which fills ``box``. Only a PDF can hold it."""

    box: Box
    jpeg: bytes


_DARK = re.compile("1+")


def dark_runs(row: str) -> list[tuple[int, int]]:
    """Return the runs of dark squares in a row, each as (first column, column after the last)."""
    return [run.span() for run in _DARK.finditer(row)]


@dataclass(frozen=True, slots=True)
class Arrow:
    """The arrow of a phasor; its point is exactly at ``tip``.

    Writers draw a thin line from ``tail`` to exactly ``tip``, a shaft of ``width`` that stops inside the head, and a
    head ``head`` mm long and 0.34 of that wide. A head of 0 gives a plain line. ``cased`` draws the shaft as two ink
    lines with the ink's colour between.
    """

    tail: Point
    tip: Point
    width: float = 0.5
    ink: Ink = "ink"
    head: float = 4.6
    cased: bool = False


@dataclass(frozen=True, slots=True)
class Run:
    """A piece of text in one face; ``size`` is the em in mm, ``rise`` lifts the baseline. ``glyphs``: its shapes from
    left to right, where the face lacks its letters."""

    text: str
    face: Face = "regular"
    size: float = 5.0
    rise: float = 0.0
    glyphs: tuple[Glyph, ...] = ()


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; ``at`` is the start, middle or end of its baseline.

    ``turn`` rotates it about ``at`` (degrees, anticlockwise); ``mirrored`` mirrors it at a vertical line through
    ``at``, before it is turned. ``read``: the text as it is read, where its runs are in another order.
    """

    runs: tuple[Run, ...]
    at: Point
    anchor: Literal["start", "middle", "end"] = "start"
    ink: Ink = "ink"
    turn: float = 0.0
    mirrored: bool = False
    read: str = ""

    @property
    def plain(self) -> str:
        """The text without its faces."""
        return self.read or "".join(run.text for run in self.runs)


@dataclass(frozen=True, slots=True)
class Group:
    """Items that belong together.

    ``step``: number of the construction step that draws them. ``phasor``: key of the phasor they show (``i1``, ``sum``
    ...). ``copy``: the phasor is drawn a second time. ``name``: a free mark for tests and style sheets (``frame``,
    ``table``, ``check-bar``). ``instrument`` and ``for_step``: a ruler or protractor, and the step for which it is laid
    on. ``stamp``: how the items result from a reusable group. ``inset``: over the items, a part of the page enlarged.
    ``hidden``: only a style sheet shows it. ``role``: what it is to a reader who cannot see it; ``alternative``: a
    figure in words.
    """

    items: tuple["Item", ...]
    step: int | None = None
    phasor: str = ""
    copy: bool = False
    name: str = ""
    instrument: str = ""
    for_step: int | None = None
    stamp: "Stamp | None" = None
    inset: "Inset | None" = None
    hidden: bool = False
    role: Role = ""
    alternative: str = ""


@dataclass(frozen=True, slots=True)
class Stamp:
    """How a group results from a reusable one: ``unit`` enlarged by ``factor`` about its origin, turned by ``degrees``
    and moved to ``at``.

    A writer may write the unit once, under ``key``, and refer to it.
    """

    key: str
    unit: Group
    at: Point
    degrees: float
    factor: float


@dataclass(frozen=True, slots=True)
class Inset:
    """A part of a page shown again, enlarged, at another place of it: what is in the group named ``WHOLE``."""

    shown: Box
    place: Box


WHOLE = "whole"
"""The name of the group that an inset shows a part of."""

Item = Line | Arc | Circle | Shape | Squares | Picture | Arrow | Text | Group


@dataclass(frozen=True, slots=True)
class Page:
    """One page: its size in mm, its items, its title, and a description for people who cannot see it."""

    width: float
    height: float
    items: tuple[Item, ...]
    title: str = ""
    description: str = ""

    @property
    def box(self) -> Box:
        """The rectangle of the page."""
        return Box(0.0, 0.0, self.width, self.height)


@dataclass(frozen=True, slots=True)
class Document:
    """Pages that are printed together."""

    pages: tuple[Page, ...]
    title: str
    language: str = "en-GB"
    subject: str = ""


def with_role(role: Role, *items: Item) -> Group:
    """Return items as one group with a role."""
    return Group(items, role=role)


def walk(items: tuple[Item, ...]) -> Iterator[Item]:
    """Yield every item, including the items inside groups, in drawing order."""
    for item in items:
        yield item
        if isinstance(item, Group):
            yield from walk(item.items)


def mirrored(page: Page) -> Page:
    """Return the page mirrored left to right, words included."""

    def over(point: Point) -> Point:
        return Point(page.width - point.x, point.y)

    def turned_over(item: Item) -> Item:
        match item:
            case Line():
                return replace(item, start=over(item.start), end=over(item.end))
            case Arc():
                return replace(item, centre=over(item.centre), start=180.0 - item.start, sweep=-item.sweep)
            case Circle():
                return replace(item, centre=over(item.centre))
            case Shape():
                return replace(item, points=tuple(over(point) for point in item.points))
            case Squares():
                across = max((len(row) for row in item.rows), default=0)
                corner = over(item.corner.plus(Point(across * item.side, 0.0)))
                return replace(item, corner=corner, rows=tuple(row.ljust(across, "0")[::-1] for row in item.rows))
            case Picture():
                raise DrawingError("a photograph cannot be mirrored")
            case Arrow():
                return replace(item, tail=over(item.tail), tip=over(item.tip))
            case Text():
                return replace(item, at=over(item.at), turn=-item.turn, mirrored=not item.mirrored)
            case Group():
                return replace(item, items=tuple(turned_over(inner) for inner in item.items))

    return replace(page, items=tuple(turned_over(item) for item in page.items))
