"""A page of a drawing as SVG: true mm on paper, classes for the colours on screen.

Every coordinate is absolute (no transform above a line), y is mirrored by arithmetic, and there is no ``style``
attribute, which a strict policy would refuse. Colours are presentation attributes, so a saved file is correct by
itself; the classes ``ink-<name>`` (stroke) and ``fill-<name>`` let a style sheet change them on screen.
"""

import math
import re
from collections.abc import Callable, Iterable
from functools import lru_cache
from typing import Literal

from pycore.drawing import (
    PAPER_COLOURS,
    WHOLE,
    Arc,
    Arrow,
    Circle,
    Group,
    Ink,
    Inset,
    Item,
    Line,
    Page,
    Picture,
    Shape,
    Squares,
    Stamp,
    Text,
    dark_runs,
)
from pycore.errors import DrawingError
from pycore.geometry import Box, Point
from pycore.lettering.glyphs import UNITS
from pycore.writers.numbers import coarse, coordinate, extent, factor
from pycore.writers.parts import PlacedRun, arrow_parts, clean, placed_runs, strokes

FAMILIES = {
    "regular": "Phasor Sans, sans-serif",
    "bold": "Phasor Sans, sans-serif",
    "italic": "Phasor Serif, serif",
}
WEIGHTS = {"regular": 450, "bold": 650, "italic": 400}

_IDLE_SPACE = re.compile(r"^\s|\s$|\s\s")


STILL_NAMES = frozenset(("frame", "check-bar", "title-block", "scale", "opening", "foot"))
STILL_ROLES = frozenset(("row", "paragraph"))
"""Names and roles of groups that most edits leave as they are: the very same, made once (sheet/skeleton.py and
others)."""

Number = Callable[[float], str]
Units = dict[str, Group]
"""Groups that are used over and over, by key."""


def write(
    page: Page, *, prefix: str, role: Literal["sheet", "view"], view: str = "", units: Units | None = None,
    width: str = "", window: Box | None = None,
) -> str:
    """Return the ``<svg>`` element of a page.

    ``prefix`` begins the ids of title and description, so that several drawings can be in one document. A sheet has its
    size in mm; a view (``view``: phone, projector ...) has only its view box and takes the size that the page gives it,
    or the share of its place that ``width`` names; with a ``window`` it shows only that part of the page. With
    ``units``, a stamped group is a reference to its unit, which is noted there for ``write_units``, and places are
    written to 0.01. Raises DrawingError for NaN and infinities, and ValueError for a character that the face lacks.
    """
    across, up = extent(page.width), extent(page.height)
    marks = f'data-sheet="" width="{across}mm" height="{up}mm"'
    if role == "view":
        marks = f'data-view="{escaped(view)}"' + (f' width="{escaped(width)}"' if width else "")
    box = window or page.box
    seen = " ".join(map(extent, (box.left, page.height - box.top, box.width, box.height)))
    ids = f"{escaped(prefix)}-title", f"{escaped(prefix)}-desc"
    # The title is its name; what is seen in it is heard after that, and nothing twice.
    described = page.description if page.description != page.title else ""
    more = f'aria-describedby="{ids[1]}" ' if described else ""
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" {marks} viewBox="{seen}" '
        f'role="img" aria-labelledby="{ids[0]}" {more}fill="none" '
        f'font-family="{FAMILIES["regular"]}" font-weight="{WEIGHTS["regular"]}">'
        f'<title id="{ids[0]}">{escaped(page.title)}</title>',
        f'<desc id="{ids[1]}">{escaped(described)}</desc>' if described else "",
    ]
    _SvgWriter(page.height, parts, units, prefix).items(page.items, within_phasor=False)
    parts.append("</svg>")
    return "".join(parts)


def write_units(units: Units) -> str:
    """Return an ``<svg>`` without size that contains every unit once, for drawings in the same document."""
    parts = ['<svg xmlns="http://www.w3.org/2000/svg" class="units" width="0" height="0" aria-hidden="true" '
             f'fill="none" font-family="{FAMILIES["regular"]}" font-weight="{WEIGHTS["regular"]}"><defs>']  # fmt: skip
    for key, unit in sorted(units.items()):
        parts.append(f'<g id="{escaped(key)}">')
        writer = _SvgWriter(0.0, parts, {})
        writer.strokes_together(item for item in unit.items if isinstance(item, Line))
        others = tuple(item for item in unit.items if not isinstance(item, (Line, Text)))
        writer.items(others, within_phasor=False)
        writer.figures_together(item for item in unit.items if isinstance(item, Text))
        parts.append("</g>")
    parts.append("</defs></svg>")
    return "".join(parts)


@lru_cache(maxsize=1024)
def escaped(text: str) -> str:
    """Return a text escaped for markup, both between tags and inside a quoted attribute."""
    return (
        clean(text)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace('"', "&quot;")
        .replace("'", "&#39;")
    )


@lru_cache(maxsize=256)
def _stroke(ink: Ink, width: float, dash: tuple[float, ...] = ()) -> str:
    dashes = f' stroke-dasharray="{" ".join(extent(stretch) for stretch in dash)}"' if dash else ""
    return f'stroke="{PAPER_COLOURS[ink]}" stroke-width="{extent(width)}"{dashes}'


class _SvgWriter:
    """Writes items into a list of strings; knows the height for mirroring y, and the units to refer to."""

    def __init__(self, height: float, parts: list[str], units: Units | None = None, prefix: str = "") -> None:
        self._height, self._prefix = height, prefix
        self._parts = parts
        self._units = units
        self._number = coordinate if units is None else coarse

    def items(self, items: tuple[Item, ...], *, within_phasor: bool) -> None:
        """Write every item in drawing order.

        Within the group of a phasor only its arrow is a ``<line>``, so that measurements find one line there; the ticks
        beside it are paths.
        """
        for item in items:
            if isinstance(item, Group):
                if self._units is None and (item.name in STILL_NAMES or item.role in STILL_ROLES):
                    self._parts.append(_still(item, self._height))
                else:
                    self.group(item, within_phasor)
            elif isinstance(item, Line):
                for line in strokes(item):
                    self._line(line, as_path=within_phasor)
            elif isinstance(item, Arrow):
                self._arrow(item)
            elif isinstance(item, Text):
                self._text(item)
            elif isinstance(item, Arc):
                for arc in strokes(item):
                    self._arc(arc)
            elif isinstance(item, Circle):
                self._circle(item)
            elif isinstance(item, Squares):
                self._squares(item)
            elif isinstance(item, Picture):
                raise DrawingError("a photograph stands in PDFs alone")
            else:
                self._shape(item)

    def strokes_together(self, lines: Iterable[Line]) -> None:
        """Many lines as few paths, one for each ink and width: a graduation takes a quarter of the room."""
        paths: dict[str, list[str]] = {}
        for line in lines:
            marks = f'class="ink-{line.ink}" {_stroke(line.ink, line.width, line.dash)}'
            paths.setdefault(marks, []).append(f"M{self._xy(line.start)}L{self._xy(line.end)}")
        self._parts += [f'<path {marks} d="{"".join(pieces)}"/>' for marks, pieces in paths.items()]

    def figures_together(self, figures: Iterable[Text]) -> None:
        """Figures of a scale, those of one ink, face and size in one group. Their own lengths are not
        written: they are short, and far from each other."""
        groups: dict[str, list[str]] = {}
        for figure in figures:
            for placed in placed_runs(figure):
                run = placed.run
                marks = (f'class="fill-{figure.ink}" fill="{PAPER_COLOURS[figure.ink]}" font-size="{extent(run.size)}"'
                         f' font-weight="{WEIGHTS[run.face]}"')  # fmt: skip
                x, y = self._number(placed.at.x), self._number(self._height - placed.at.y)
                turn = _turned(figure, self._height, self._number)
                words = f'<text x="{x}" y="{y}"{turn}>{escaped(run.text)}</text>'
                groups.setdefault(marks, []).append(words)
        self._parts += [f"<g {marks}>{''.join(words)}</g>" for marks, words in groups.items()]

    def group(self, group: Group, within_phasor: bool) -> None:
        """A group with its marks, and all that is in it."""
        marks = [
            "" if group.step is None else f' data-step="{group.step}"',
            f' data-phasor="{escaped(group.phasor)}"' if group.phasor else "",
            ' data-copy=""' if group.copy else "",
            f' data-name="{escaped(group.name)}"' if group.name else "",
            f' data-instrument="{escaped(group.instrument)}"' if group.instrument else "",
            f' data-for-step="{group.for_step}"' if group.for_step is not None else "",
            f' id="{escaped(self._prefix)}-{WHOLE}"' if group.name == WHOLE else "",
            ' visibility="hidden"' if group.hidden else "",
        ]
        if group.role and not any(marks) and group.inset is None:
            self.items(group.items, within_phasor=within_phasor)
            return
        self._parts.append(f"<g{''.join(marks)}>")
        if self._units is not None and group.stamp is not None:
            self._refer(group.stamp)
            self._parts.append("</g>")
            return
        self.items(group.items, within_phasor=within_phasor or bool(group.phasor))
        if group.inset is not None:
            self._inset(group.inset)
        self._parts.append("</g>")

    def _inset(self, inset: Inset) -> None:
        """A part of the page enlarged: a picture of the same strokes, so that nothing is written twice."""
        number, place, shown = self._number, inset.place, inset.shown
        at = f'x="{number(place.left)}" y="{number(self._height - place.top)}"'
        box = f"{number(shown.left)} {number(self._height - shown.top)} {extent(shown.width)} {extent(shown.height)}"
        self._parts.append(
            f'<svg {at} width="{extent(place.width)}" height="{extent(place.height)}" viewBox="{box}"'
            f' aria-hidden="true"><use href="#{escaped(self._prefix)}-{WHOLE}"/></svg>'
        )

    def _refer(self, stamp: Stamp) -> None:
        """A reference to a unit, which is written elsewhere once."""
        if self._units is not None:
            self._units.setdefault(stamp.key, stamp.unit)
        moved = f"translate({self._xy(stamp.at)}) rotate({coordinate(-stamp.degrees)}) scale({factor(stamp.factor)})"
        self._parts.append(f'<use href="#{escaped(stamp.key)}" transform="{moved}"/>')

    def _xy(self, point: Point) -> str:
        return f"{self._number(point.x)} {self._number(self._height - point.y)}"

    def _line(self, line: Line, *, as_path: bool, extra: str = "") -> None:
        marks = f'class="{extra}ink-{line.ink}" {_stroke(line.ink, line.width, line.dash)}'
        if as_path:
            self._parts.append(f'<path {marks} d="M{self._xy(line.start)}L{self._xy(line.end)}"/>')
            return
        start, end = line.start, line.end
        self._parts.append(
            f'<line {marks} x1="{self._number(start.x)}" y1="{self._number(self._height - start.y)}"'
            f' x2="{self._number(end.x)}" y2="{self._number(self._height - end.y)}"/>'
        )

    def _arrow(self, arrow: Arrow) -> None:
        parts = arrow_parts(arrow)
        for item in parts.visible:
            if isinstance(item, Line):
                self._line(item, as_path=True, extra="shaft ")
            else:
                self._shape(item, extra="head ")
        # Last, so that a style sheet can draw the dark core of a cased line with it at night.
        self._line(parts.exact, as_path=False, extra="exact ")

    def _arc(self, arc: Arc) -> None:
        if not (math.isfinite(arc.start) and math.isfinite(arc.sweep)):
            raise DrawingError(f"an arc runs from {arc.start} through {arc.sweep} degrees")
        # Short pieces: an arc near half a turn is badly fixed by its ends.
        pieces = max(1, math.ceil(math.fabs(arc.sweep) / 120.0))
        radius, turn = extent(arc.radius), 0 if arc.sweep >= 0 else 1
        path = [f"M{self._xy(arc.centre.moved(arc.radius, arc.start))}"]
        for piece in range(1, pieces + 1):
            end = arc.centre.moved(arc.radius, arc.start + arc.sweep * piece / pieces)
            path.append(f"A{radius} {radius} 0 0 {turn} {self._xy(end)}")
        self._parts.append(f'<path class="ink-{arc.ink}" {_stroke(arc.ink, arc.width, arc.dash)} d="{"".join(path)}"/>')

    def _circle(self, circle: Circle) -> None:
        x, y = self._number(circle.centre.x), self._number(self._height - circle.centre.y)
        marks = _outline_and_fill(circle.ink, circle.width, circle.fill)
        self._parts.append(f'<circle {marks} cx="{x}" cy="{y}" r="{extent(circle.radius)}"/>')

    def _shape(self, shape: Shape, extra: str = "") -> None:
        if not shape.points:
            return
        marks = _outline_and_fill(shape.ink, shape.width, shape.fill, extra)
        path = "L".join(self._xy(point) for point in shape.points)
        self._parts.append(f'<path {marks} d="M{path}{"Z" if shape.closed else ""}"/>')

    def _squares(self, squares: Squares) -> None:
        """One path, so that there are no gaps between touching squares."""
        corner, side = squares.corner, squares.side
        extent(side)
        columns = max((len(row) for row in squares.rows), default=0)
        across = [self._number(corner.x + column * side) for column in range(columns + 1)]
        down = [self._number(self._height - corner.y + row * side) for row in range(len(squares.rows) + 1)]
        path = [
            f"M{across[start]} {down[row]}H{across[end]}V{down[row + 1]}H{across[start]}Z"
            for row, marks in enumerate(squares.rows)
            for start, end in dark_runs(marks)
        ]
        if path:
            self._parts.append(f'<path {_outline_and_fill("ink", 0.0, squares.fill)} d="{"".join(path)}"/>')

    def _text(self, text: Text) -> None:
        self._parts.append(_text(text, self._height, self._number))



MOST_KEPT = 16
_kept: dict[str, list[tuple[Group, float, str]]] = {}


def _still(group: Group, height: float) -> str:
    """A group as it was written before, if it is the very same one; to compare it piece by piece takes as long as to
    write it. Kept are the last few of each name or role that were asked for."""
    kept = _kept.setdefault(group.name or group.role, [])
    for place, (one, its_height, text) in enumerate(kept):
        if one is group and its_height == height:
            if place:
                kept.insert(0, kept.pop(place))
            return text
    parts: list[str] = []
    _SvgWriter(height, parts).group(group, within_phasor=False)
    kept.insert(0, (group, height, "".join(parts)))
    del kept[MOST_KEPT:]
    return kept[0][2]


@lru_cache(maxsize=1024)
def _text(text: Text, height: float, number: Number) -> str:
    """A line of text, "" if it is empty. Most lines of a sheet stay from one edit to the next: the last are kept."""
    placed_all = tuple(placed_runs(text))
    if not placed_all:
        return ""
    turn, inked = _turned(text, height, number), f'class="fill-{text.ink}" fill="{PAPER_COLOURS[text.ink]}"'
    # Without this attribute idle spaces vanish, and what is copied runs together.
    space = ' xml:space="preserve"' if _IDLE_SPACE.search(text.plain) else ""
    if not any(run.glyphs for run in text.runs):
        spans = "".join([_span(placed, height, number) for placed in placed_all])
        return f"<text {inked}{space}{turn}>{spans}</text>"
    # No browser need have a font for these letters; who hears the sheet hears the text.
    drawn = [
        _outlines(placed, height) if placed.run.glyphs else f"<text{space}>{_span(placed, height, number)}</text>"
        for placed in placed_all
    ]
    return f'<g {inked} role="img" aria-label="{escaped(text.plain)}"{turn}>{"".join(drawn)}</g>'


def _outlines(placed: PlacedRun, height: float) -> str:
    """Letters of other fonts, as they were shaped."""
    from pycore.lettering.letters import side_by_side  # Few sheets have such letters.

    place = f"{coordinate(placed.at.x)} {coordinate(height - placed.at.y)}"
    scale = factor(placed.run.size / UNITS)
    return f'<path transform="translate({place}) scale({scale} -{scale})" d="{side_by_side(placed.run.glyphs)}"/>'


def _turned(text: Text, height: float, number: Number) -> str:
    """The transform of a text that is turned about its place, or mirrored, or both."""
    transforms = []
    if text.turn:
        transforms.append(f"rotate({coordinate(-text.turn)} {number(text.at.x)} {number(height - text.at.y)})")
    if text.mirrored:
        transforms.append(f"translate({number(2 * text.at.x)} 0) scale(-1 1)")
    return f' transform="{" ".join(transforms)}"' if transforms else ""


def _span(placed: PlacedRun, height: float, number: Number) -> str:
    run = placed.run
    face = ""
    if run.face != "regular":
        face = f' font-weight="{WEIGHTS[run.face]}"'
    if run.face == "italic":
        face += f' font-family="{FAMILIES["italic"]}" font-style="italic"'
    x, y = number(placed.at.x), number(height - placed.at.y)
    # textLength holds the width also in a fallback font, so that nothing collides.
    fit = f' textLength="{extent(placed.width)}" lengthAdjust="spacingAndGlyphs"'
    return (
        f'<tspan x="{x}" y="{y}" font-size="{extent(run.size)}"{face}{fit if placed.width else ""}>'
        f"{escaped(run.text)}</tspan>"
    )


@lru_cache(maxsize=256)
def _outline_and_fill(ink: Ink, width: float, fill: Ink | None, extra: str = "") -> str:
    """Class and presentation attributes of a shape: outline if it has width, filling if named."""
    classes, marks = [], ""
    if width > 0.0:
        classes.append(f"ink-{ink}")
        marks += f" {_stroke(ink, width)}"
    elif width < 0.0 or not math.isfinite(width):
        raise DrawingError(f"a shape has an outline of {width!r} mm")
    if fill is not None:
        classes.append(f"fill-{fill}")
        marks += f' fill="{PAPER_COLOURS[fill]}"'
    return f'class="{extra}{" ".join(classes)}"{marks}'
