"""What is drawn on a page of a PDF: items as a content stream, and what each of them is to a reader.

Source: ISO 32000-1 (PDF 1.7), sections 8 (graphics), 9 (text) and 14.6 (marked content).
"""

import math
from collections.abc import Callable
from functools import cache, lru_cache
from typing import TYPE_CHECKING, NamedTuple

import pydyf

from pycore import lettering, trig
from pycore.drawing import (
    PAPER_COLOURS,
    Arc,
    Arrow,
    Circle,
    Group,
    Ink,
    Item,
    Line,
    Picture,
    Role,
    Shape,
    Squares,
    Text,
    dark_runs,
    walk,
)
from pycore.errors import DrawingError
from pycore.geometry import Point
from pycore.writers import pdf_fonts
from pycore.writers.numbers import coordinate, extent, factor
from pycore.writers.parts import arrow_parts, placed_runs, strokes
from pycore.writers.pdf_structure import HOLDERS, PageStructure

if TYPE_CHECKING:
    from pycore.writers.pdf_letters import LetterFonts

FONT_NAMES = {"regular": "R", "bold": "B", "italic": "I"}
MITRE_LIMIT = "4"  # that of SVG, so that both writers cut corners alike
_LARGEST_PIECE = 30.0  # degrees of one Bézier curve: 0.00003 mm off at a radius of 75 mm

Shown = tuple[str, str]
"""A face, and a text that is shown in it."""
MOST_NOTED = 2048
"""Texts of which a writer remembers that their glyphs are noted: a long file has any number."""
LAST_CHARACTER = "\U0010ffff"
Used = dict[str, dict[int, str]]
"""By face: the glyphs in use, each with the character that it stands for."""


@lru_cache(maxsize=512)
def _bent(x: float, y: float, radius: float, start: float, sweep: float) -> str:
    """Return the path of an arc; raises DrawingError for numbers that are not finite."""
    if not (math.isfinite(start) and math.isfinite(sweep)):
        raise DrawingError(f"an arc runs from {start} through {sweep} degrees")
    extent(radius)
    centre = Point(x, y)
    pieces = max(1, math.ceil(math.fabs(sweep) / _LARGEST_PIECE))
    quarter = sweep / pieces / 4
    reach = 4.0 / 3.0 * radius * trig.sine(quarter) / trig.cosine(quarter)
    here = centre.moved(radius, start)
    path = [f"{coordinate(here.x)} {coordinate(here.y)} m"]
    for piece in range(1, pieces + 1):
        before, after = (start + sweep * index / pieces for index in (piece - 1, piece))
        there = centre.moved(radius, after)
        points = (here.moved(reach, before + 90), there.moved(-reach, after + 90), there)
        path.append(" ".join([coordinate(number) for point in points for number in point]) + " c")
        here = there
    return "\n".join(path)


@lru_cache(maxsize=4096)
def _shown(text: str, face: str) -> tuple[tuple[int, ...], str]:
    """Return the glyphs of a text, and how they are written."""
    numbers = lettering.glyphs(text, face)
    # Hexadecimal: in a plain string a reader may change the byte of a carriage return.
    return numbers, f"<{''.join([f'{number:04x}' for number in numbers])}>"


class _StrokeStyle(NamedTuple):
    """The style of a stroke as written."""

    ink: Ink
    width: str
    dash: tuple[str, ...]


@lru_cache(maxsize=2048)
def _polygon(points: tuple[Point, ...], closed: bool) -> str:
    """Return the path of a shape."""
    first, *others = [f"{coordinate(x)} {coordinate(y)}" for x, y in points]
    return "".join([f"{first} m", *[f"\n{other} l" for other in others], "\nh" if closed else ""])


@lru_cache(maxsize=2048)
def _lettered(text: Text, spaced: bool) -> tuple[str, tuple[Shown, ...]]:
    """Return a line of text as written, except for its ink, and the text in each face; "" if it is empty. ``spaced``:
    a space follows, so that no reader joins its last word to the next line's first.

    Cached, because most texts are in the same place on all sheets of a class set.
    """
    runs = [run for run in text.runs if run.text]
    if not runs:
        return "", ()
    *others, last = [(run.face, run.text) for run in runs]
    shown = (*others, (last[0], f"{last[1]} ") if spaced else last)
    letters = [f"/{FONT_NAMES[run.face]} {extent(run.size)} Tf" for run in runs], [
        f"[{_shown(letters, face)[1]}] TJ" for face, letters in shown
    ]
    return _text_object(text, spaced, list(zip(*letters, strict=True))), shown


def _text_object(text: Text, spaced: bool, letters: list[tuple[str, str]]) -> str:
    """Return a text as written: ``letters`` has for each of its runs what chooses a font, and what shows the letters in
    it."""
    coordinate(text.turn)
    across, up = trig.direction(text.turn)
    flip = -1.0 if text.mirrored else 1.0
    level = across == 1.0 and not text.mirrored
    turn = "1 0 0 1" if level else " ".join([factor(number) for number in (flip * across, flip * up, -up, across)])
    operators = ["BT"]
    for (_, at, _), (chosen, shown) in zip(placed_runs(text), letters, strict=True):
        x, y = flip * (at.x - text.at.x), at.y - text.at.y
        x, y = text.at.x + (across * x - up * y), text.at.y + (up * x + across * y)
        operators += [*([chosen] if chosen else []), f"{turn} {coordinate(x)} {coordinate(y)} Tm", shown]
    operators.append("ET")
    if text.turn != 0.0 or text.mirrored or len({run.rise for run in text.runs}) > 1:
        # Readers take a lowered index for a line of its own ("I_N" breaks in two) and turned
        # letters for a line each.
        meant = pydyf.Dictionary({"ActualText": pdf_fonts.text_string(f"{text.plain} " if spaced else text.plain)})
        operators = ["/Span", meant.data.decode("ascii"), "BDC", *operators, "EMC"]
    return "\n".join(operators)


class Content:
    """Writes items as a page's content stream (ISO 32000-1, annex A) and notes the glyphs used.

    Keeps the current stroke style and fill, to write each only when it changes, and what the content belongs to: all of
    a group with a role is that element's; beside such groups a text is a paragraph, and strokes are furniture.
    """

    def __init__(self, used: Used, noted: dict[Shown, None], letters: Callable[[], "LetterFonts"],
                 pictures: Callable[[bytes], str]) -> None:  # fmt: skip
        """``pictures``: takes a JPEG file into the PDF, and gives its name."""
        self.pieces: list[str] = []
        self.write = self.pieces.append
        self._used = used
        self._noted = noted
        self._letters = letters
        self._pictures = pictures
        self._pen: _StrokeStyle | None = None
        self._filling: Ink | None = None
        self.structure = PageStructure()
        self._open: Role = ""
        self._within = False
        self._to_come = 0  # texts of the element that is being written

    def items(self, items: tuple[Item, ...]) -> None:
        """Write every item in drawing order."""
        for item in items:
            if isinstance(item, Group):
                self._group(item)
                continue
            if not self._within:
                self._begin("paragraph" if isinstance(item, Text) else "furniture")
            if isinstance(item, Text):
                self._text(item)
            elif isinstance(item, Shape):
                self._shape(item)
            elif isinstance(item, Line):
                for line in strokes(item):
                    self._line(line)
            elif isinstance(item, Arrow):
                self._arrow(item)
            elif isinstance(item, Arc):
                for arc in strokes(item):
                    self._arc(arc)
            elif isinstance(item, Circle):
                self._circle(item)
            elif isinstance(item, Picture):
                self._picture(item)
            else:
                self._squares(item)

    def _group(self, group: Group) -> None:
        """A group: as one element if it has a role, unless it is part of one."""
        role = group.role
        if not role or self._within:
            self.items(group.items)
        elif role in HOLDERS:
            self.structure.hold(role)
            self.items(group.items)
            self.structure.release()
        elif group.items or role == "furniture":
            self._begin(role, group.alternative)
            self._within = True
            self._to_come = len([item for item in walk(group.items) if isinstance(item, Text)])
            self.items(group.items)
            self._within = False
        else:
            self.structure.empty(role)

    def _begin(self, role: Role, alternative: str = "") -> None:
        """Begin the content of an element; furniture runs on."""
        if role == self._open == "furniture":
            return
        self.close()
        self.write("/Artifact BMC" if role == "furniture" else self.structure.content(role, alternative))
        self._open = role

    def close(self) -> None:
        """End the content that is open."""
        if self._open:
            self.write("EMC")
            self._open = ""

    def set_matrix(self, across: str, up: str, x: str, y: str) -> None:
        """Scale everything that follows horizontally and vertically, and move it."""
        self.write(f"{across} 0 0 {up} {x} {y} cm")

    def _set_pen(self, ink: Ink, width: float, dash: tuple[float, ...] = ()) -> None:
        pen = _StrokeStyle(ink, extent(width), tuple([extent(stretch) for stretch in dash]))
        before, self._pen = self._pen, pen
        if before == pen:
            return
        if before is None or before.ink != ink:
            self.write(f"{_rgb(ink)} RG")
        if before is None or before.width != pen.width:
            self.write(f"{pen.width} w")
        if pen.dash != (before.dash if before else ()):
            self.write(f"[{' '.join(pen.dash)}] 0 d")

    def _set_filling(self, ink: Ink) -> None:
        if self._filling != ink:
            self._filling = ink
            self.write(f"{_rgb(ink)} rg")

    def _line(self, line: Line) -> None:
        self._set_pen(line.ink, line.width, line.dash)
        self.write(f"{_polygon((line.start, line.end), False)}\nS")

    def _arrow(self, arrow: Arrow) -> None:
        parts = arrow_parts(arrow)
        if not parts.visible:
            return  # a line of no length leaves a speck in some viewers
        self._line(parts.exact)
        for item in parts.visible:
            if isinstance(item, Line):
                self._line(item)
            else:
                self._shape(item)

    def _arc(self, arc: Arc) -> None:
        self._set_pen(arc.ink, arc.width, arc.dash)
        self.write(f"{_bent(arc.centre.x, arc.centre.y, arc.radius, arc.start, arc.sweep)}\nS")

    def _circle(self, circle: Circle) -> None:
        finish = self._outline_and_fill(circle.ink, circle.width, circle.fill)
        if finish:
            path = _bent(circle.centre.x, circle.centre.y, circle.radius, 0.0, 360.0)
            self.write(f"{path}\nh\n{finish}")

    def _shape(self, shape: Shape) -> None:
        finish = self._outline_and_fill(shape.ink, shape.width, shape.fill)
        if finish and shape.points:
            self.write(f"{_polygon(shape.points, shape.closed)}\n{finish}")

    def _squares(self, squares: Squares) -> None:
        """Rectangles of whole squares in their own unit, filled together, so that there are no gaps."""
        last = len(squares.rows) - 1
        runs = [
            f"{start} {last - row} {end - start} 1 re"
            for row, marks in enumerate(squares.rows)
            for start, end in dark_runs(marks)
        ]
        extent(squares.side)
        if not runs:
            return
        side, (left, top) = squares.side, squares.corner
        self._set_filling(squares.fill)
        self.write("q")
        self.set_matrix(factor(side), factor(side), coordinate(left), coordinate(top - (last + 1) * side))
        self.pieces += [*runs, "f", "Q"]

    def _picture(self, picture: Picture) -> None:
        left, bottom, _, _ = box = picture.box
        self.write("q")
        self.set_matrix(extent(box.width), extent(box.height), coordinate(left), coordinate(bottom))
        self.pieces += [f"/{self._pictures(picture.jpeg)} Do", "Q"]

    def _outline_and_fill(self, ink: Ink, width: float, fill: Ink | None) -> str:
        """Set stroke style and fill; return the operator that finishes the path, "" if nothing would be visible."""
        extent(width)
        if width > 0.0:
            self._set_pen(ink, width)
        if fill is not None:
            self._set_filling(fill)
            return "B" if width > 0.0 else "f"
        return "S" if width > 0.0 else ""

    def _text(self, text: Text) -> None:
        self._to_come = max(0, self._to_come - 1)
        spaced = self._to_come > 0
        with_letters = any(run.glyphs for run in text.runs)
        written, pieces = self._shaped(text, spaced) if with_letters else _lettered(text, spaced)
        if written:
            self._set_filling(text.ink)
            self.write(written)
        for one in pieces:
            if one in self._noted:
                continue
            if len(self._noted) == MOST_NOTED:
                self._noted.clear()
            self._noted[one] = None
            face, letters = one
            used = self._used.setdefault(face, {})
            for number, character in zip(_shown(letters, face)[0], letters, strict=True):
                if character < used.get(number, LAST_CHARACTER):
                    used[number] = character

    def _shaped(self, text: Text, spaced: bool) -> tuple[str, tuple[Shown, ...]]:
        """As ``_lettered``, for a text that has letters of other fonts."""
        written: list[tuple[str, str]] = []
        own: list[Shown] = []
        for run in (run for run in text.runs if run.text):
            size = extent(run.size)
            if run.glyphs:
                shown = self._letters().shown(run.glyphs)
                written.append(("", "\n".join([f"/{name} {size} Tf\n<{codes}> Tj" for name, codes in shown])))
            else:
                own.append((run.face, run.text))
                written.append((f"/{FONT_NAMES[run.face]} {size} Tf", f"[{_shown(run.text, run.face)[1]}] TJ"))
        if spaced:
            own.append(("regular", " "))
            chosen, shows = written[-1]
            space = f"/{FONT_NAMES['regular']} {size} Tf\n[{_shown(' ', 'regular')[1]}] TJ"
            written[-1] = chosen, f"{shows}\n{space}"
        return _text_object(text, spaced, written), tuple(own)


@cache
def _rgb(ink: Ink) -> str:
    """Red, green and blue of an ink on paper, 0 to 1."""
    colour = PAPER_COLOURS[ink]
    return " ".join([coordinate(int(colour[place : place + 2], 16) / 255) for place in (1, 3, 5)])
