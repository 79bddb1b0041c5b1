"""A document as PDF 1.7: exact size, searchable text, equal drawings in equal bytes.

One matrix at the start of each page turns mm into points, so all numbers after it are mm. Sources: ISO 32000-1 (PDF
1.7), sections 8 (graphics), 9 (text), 12.2 (viewer preferences).
"""

import io
import math
import zlib
from functools import cache, lru_cache
from typing import NamedTuple

import pydyf

from pycore import lettering, trig
from pycore.drawing import (
    PAPER_COLOURS,
    Arc,
    Arrow,
    Circle,
    Document,
    Group,
    Ink,
    Item,
    Line,
    Page,
    Shape,
    Squares,
    Text,
    dark_runs,
)
from pycore.errors import DrawingError
from pycore.geometry import Point
from pycore.lettering.subset import subset
from pycore.writers import pdf_fonts
from pycore.writers.numbers import coordinate, extent, factor
from pycore.writers.parts import arrow_parts, clean, placed_runs, strokes

POINTS_PER_MM = 72.0 / 25.4
UNCORRECTED = Point(1.0, 1.0)

_FONT_NAMES = {"regular": "R", "bold": "B", "italic": "I"}
_MITRE_LIMIT = "4"  # that of SVG, so that both writers cut corners alike
_LEVEL = 6  # of compression: the highest takes twice as long and leaves four in a thousand less
_LARGEST_PIECE = 30.0  # degrees of one Bézier curve: 0.00003 mm off at a radius of 75 mm

Shown = tuple[str, str]
"""A face, and a text that is shown in it."""
MOST_NOTED = 2048
"""Texts of which a writer remembers that their glyphs are noted: a long file has any number."""
LAST_CHARACTER = "\U0010ffff"
Used = dict[str, dict[int, str]]
"""By face: the glyphs in use, each with the character that it stands for."""


class Writer:
    """A PDF file made page by page, so that the drawings of a long one are never all in memory.

    ``correction`` stretches every page about its centre, horizontally and vertically, against a printer that shrinks or
    stretches; 1 and 1 leave every length unchanged.
    """

    def __init__(self, *, correction: Point = UNCORRECTED) -> None:
        self._pdf = pydyf.PDF()
        self._used: Used = {}
        self._noted: dict[Shown, None] = {}
        self._fonts = pydyf.Dictionary()
        self._resources = pydyf.Dictionary({"Font": self._fonts})
        self._pdf.add_object(self._resources)
        self._correction = correction
        self._parts: dict[int, list[pydyf.Dictionary]] = {}

    def add(self, page: Page, section: int = 0) -> None:
        """Write a page; in the file, pages of a lower ``section`` come before those of a higher one.

        Raises DrawingError for NaN and infinities, and ValueError for a character that a face lacks.
        """
        width, height = page.width * POINTS_PER_MM, page.height * POINTS_PER_MM
        across, up = self._correction
        content = _Content(self._used, self._noted)
        content.set_matrix(
            factor(POINTS_PER_MM * across), factor(POINTS_PER_MM * up),
            factor((1.0 - across) * width / 2), factor((1.0 - up) * height / 2),
        )  # fmt: skip
        content.write(f"{_MITRE_LIMIT} M")
        content.items(page.items)
        stream = _compressed("\n".join(content.pieces).encode("ascii"))
        self._pdf.add_object(stream)
        sheet = pydyf.Dictionary(
            {
                "Type": "/Page",
                "Parent": self._pdf.pages.reference,
                "MediaBox": pydyf.Array(["0", "0", factor(width), factor(height)]),
                "Resources": self._resources.reference,
                "Contents": stream.reference,
            }
        )
        self._parts.setdefault(section, []).append(sheet)

    def pages_of(self, section: int) -> int:
        """Return how many pages of a section have been written so far."""
        return len(self._parts.get(section, ()))

    def finish(self, title: str, *, language: str = "en-GB", subject: str = "") -> bytes:
        """Return the complete file; nothing can be added after it."""
        pdf = self._pdf
        for section in sorted(self._parts):
            for sheet in self._parts[section]:
                pdf.add_page(sheet)
        for face in sorted(self._used):
            self._fonts[_FONT_NAMES[face]] = _add_font(pdf, face, self._used[face])
        pdf.catalog.update(
            {
                "Lang": pdf_fonts.text_string(clean(language)),
                # Else viewers shrink the page to what the printer can reach, and no length is true.
                "ViewerPreferences": pydyf.Dictionary(
                    {"PrintScaling": "/None", "DisplayDocTitle": "true", "PickTrayByPDFSize": "true"}
                ),
            }
        )
        pdf.info["Title"] = pdf_fonts.text_string(clean(title))
        if subject:
            pdf.info["Subject"] = pdf_fonts.text_string(clean(subject))
        output = io.BytesIO()
        pdf.write(output, version=b"1.7", identifier=True)
        return output.getvalue()


def write(document: Document, *, correction: Point = UNCORRECTED) -> bytes:
    """Return the PDF file of a document. Raises the errors of ``Writer.add``."""
    writer = Writer(correction=correction)
    for page in document.pages:
        writer.add(page)
    return writer.finish(document.title, language=document.language, subject=document.subject)


def _compressed(content: bytes, extra: dict[str, object] | None = None) -> pydyf.Stream:
    """Return a compressed stream; pydyf would compress it again for the file's identifier."""
    return pydyf.Stream([zlib.compress(content, _LEVEL)], {"Filter": "/FlateDecode", **(extra or {})})


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
def _lettered(text: Text) -> tuple[str, tuple[Shown, ...]]:
    """Return a line of text as written, except for its ink, and the text in each face; "" if it is empty.

    Cached, because most texts are in the same place on all sheets of a class set.
    """
    placed = tuple(placed_runs(text))
    if not placed:
        return "", ()
    coordinate(text.turn)
    across, up = trig.direction(text.turn)
    flip = -1.0 if text.mirrored else 1.0
    level = across == 1.0 and not text.mirrored
    turn = "1 0 0 1" if level else " ".join([factor(number) for number in (flip * across, flip * up, -up, across)])
    operators = ["BT"]
    for run, at, _ in placed:
        x, y = flip * (at.x - text.at.x), at.y - text.at.y
        x, y = text.at.x + (across * x - up * y), text.at.y + (up * x + across * y)
        operators.append(f"/{_FONT_NAMES[run.face]} {extent(run.size)} Tf")
        operators.append(f"{turn} {coordinate(x)} {coordinate(y)} Tm")
        operators.append(f"[{_shown(run.text, run.face)[1]}] TJ")
    operators.append("ET")
    if text.turn != 0.0 or text.mirrored or len({run.rise for run in text.runs}) > 1:
        # Readers take a lowered index for a line of its own ("I_N" breaks in two) and turned
        # letters for a line each.
        meant = pydyf.Dictionary({"ActualText": pdf_fonts.text_string(text.plain)})
        operators = ["/Span", meant.data.decode("ascii"), "BDC", *operators, "EMC"]
    return "\n".join(operators), tuple((run.face, run.text) for run, _, _ in placed)


class _Content:
    """Writes items as a page's content stream (ISO 32000-1, annex A) and notes the glyphs used.

    Keeps the current stroke style and fill, to write each only when it changes.
    """

    def __init__(self, used: Used, noted: dict[Shown, None]) -> None:
        self.pieces: list[str] = []
        self.write = self.pieces.append
        self._used = used
        self._noted = noted
        self._pen: _StrokeStyle | None = None
        self._filling: Ink | None = None

    def items(self, items: tuple[Item, ...]) -> None:
        """Write every item in drawing order."""
        for item in items:
            if isinstance(item, Group):
                self.items(item.items)
            elif isinstance(item, Text):
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
            else:
                self._squares(item)

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
        written, pieces = _lettered(text)
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


@cache
def _rgb(ink: Ink) -> str:
    """Red, green and blue of an ink on paper, 0 to 1."""
    colour = PAPER_COLOURS[ink]
    return " ".join([coordinate(int(colour[place : place + 2], 16) / 255) for place in (1, 3, 5)])


def _add_font(pdf: pydyf.PDF, face: str, used: dict[int, str]) -> bytes:
    """Add a face with the glyphs in use; the reference that a page's resources need."""
    data = subset(face, sorted(used))
    name = pdf_fonts.name(face, data)
    file = _compressed(data, {"Length1": len(data)})
    meanings = _compressed(pdf_fonts.to_unicode(used).encode("ascii"))
    pdf.add_object(file)
    pdf.add_object(meanings)
    descriptor = pydyf.Dictionary(
        {
            "Type": "/FontDescriptor",
            "FontName": name,
            **pdf_fonts.description(face),
            "FontFile2": file.reference,
        }
    )
    pdf.add_object(descriptor)
    registry = {"Registry": "(Adobe)", "Ordering": "(Identity)", "Supplement": 0}
    descendant = pydyf.Dictionary(
        {
            "Type": "/Font",
            "Subtype": "/CIDFontType2",
            "BaseFont": name,
            "CIDSystemInfo": pydyf.Dictionary(registry),
            "FontDescriptor": descriptor.reference,
            "DW": 0,
            "W": pdf_fonts.widths(face, used),
            "CIDToGIDMap": "/Identity",
        }
    )
    pdf.add_object(descendant)
    font = pydyf.Dictionary(
        {
            "Type": "/Font",
            "Subtype": "/Type0",
            "BaseFont": name,
            "Encoding": "/Identity-H",
            "DescendantFonts": pydyf.Array([descendant.reference]),
            "ToUnicode": meanings.reference,
        }
    )
    pdf.add_object(font)
    reference: bytes = font.reference
    return reference
