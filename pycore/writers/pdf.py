"""A document as PDF 1.7: true to scale, its text searchable, equal drawings in equal bytes.

One matrix at the head of each page turns mm into points, so all numbers after it are mm.
Sources: ISO 32000-1 (PDF 1.7), sections 8 (graphics), 9 (text), 12.2 (viewer preferences).
"""

import io
import math
import zlib
from collections.abc import Callable
from functools import lru_cache
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
from pycore.writers.parts import PlacedRun, arrow_parts, clean, placed_runs, strokes

POINTS_PER_MM = 72.0 / 25.4
UNCORRECTED = Point(1.0, 1.0)

_FONT_NAMES = {"regular": "R", "bold": "B", "italic": "I"}
_MITRE_LIMIT = "4"  # that of SVG, so that both writers cut corners alike
_LARGEST_PIECE = 30.0  # degrees of one Bézier curve: 0.00003 mm off at a radius of 75 mm

Used = dict[str, dict[int, str]]
"""By face: the glyphs in use, each with the character that it stands for."""


class Writer:
    """A PDF file made page by page, so that a long one never stands in memory as drawings.

    ``correction`` stretches every page about its centre, across and up, against a printer that shrinks or
    stretches; 1 and 1 leave every length true.
    """

    def __init__(self, *, correction: Point = UNCORRECTED) -> None:
        self._pdf = pydyf.PDF()
        self._used: Used = {}
        self._fonts = pydyf.Dictionary()
        self._resources = pydyf.Dictionary({"Font": self._fonts})
        self._pdf.add_object(self._resources)
        self._correction = correction
        self._parts: dict[int, list[pydyf.Dictionary]] = {}

    def add(self, page: Page, part: int = 0) -> None:
        """Write a page; in the file, pages of a lower ``part`` come before those of a higher one.

        Raises DrawingError for NaN and infinities and ValueError for a character that a face does not hold.
        """
        width, height = page.width * POINTS_PER_MM, page.height * POINTS_PER_MM
        stream = pydyf.Stream()
        across, up = self._correction
        stream.set_matrix(
            factor(POINTS_PER_MM * across), "0", "0", factor(POINTS_PER_MM * up),
            factor((1.0 - across) * width / 2), factor((1.0 - up) * height / 2),
        )  # fmt: skip
        stream.set_miter_limit(_MITRE_LIMIT)
        _Content(stream, self._used).items(page.items)
        content = _compressed(b"\n".join(_as_bytes(piece) for piece in stream.stream))
        self._pdf.add_object(content)
        sheet = pydyf.Dictionary(
            {
                "Type": "/Page",
                "Parent": self._pdf.pages.reference,
                "MediaBox": pydyf.Array(["0", "0", factor(width), factor(height)]),
                "Resources": self._resources.reference,
                "Contents": content.reference,
            }
        )
        self._parts.setdefault(part, []).append(sheet)

    def finish(self, title: str, *, language: str = "en-GB", subject: str = "") -> bytes:
        """The whole file; nothing can be added after it."""
        pdf = self._pdf
        for part in sorted(self._parts):
            for sheet in self._parts[part]:
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
    """The PDF file of a document. Raises as ``Writer.add`` does."""
    writer = Writer(correction=correction)
    for page in document.pages:
        writer.add(page)
    return writer.finish(document.title, language=document.language, subject=document.subject)


def _as_bytes(piece: str | bytes) -> bytes:
    return piece.encode("ascii") if isinstance(piece, str) else piece


def _compressed(content: bytes, extra: dict[str, object] | None = None) -> pydyf.Stream:
    """A stream compressed here once; pydyf would do it again for the file's identifier."""
    return pydyf.Stream([zlib.compress(content, 9)], {"Filter": "/FlateDecode", **(extra or {})})


@lru_cache(maxsize=512)
def _bent(x: float, y: float, radius: float, start: float, sweep: float) -> str:
    """The path of a part of a circle; raises DrawingError for what is not finite."""
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
        before, after = (start + sweep * part / pieces for part in (piece - 1, piece))
        there = centre.moved(radius, after)
        points = (here.moved(reach, before + 90), there.moved(-reach, after + 90), there)
        path.append(" ".join([coordinate(number) for point in points for number in point]) + " c")
        here = there
    return "\n".join(path)


@lru_cache(maxsize=4096)
def _shown(text: str, face: str) -> tuple[tuple[int, ...], str]:
    """The glyphs of a text, and how they are written."""
    numbers = lettering.glyphs(text, face)
    # Hexadecimal: in a plain string a reader may change the byte of a carriage return.
    return numbers, f"<{''.join([f'{number:04x}' for number in numbers])}>"


class _Pen(NamedTuple):
    """What a stroke looks like, as written."""

    ink: Ink
    width: str
    dash: tuple[str, ...]


class _Content:
    """Writes items into a page's content stream and notes the glyphs used.

    Holds the pen and the filling last set, to say each only when it changes.
    """

    def __init__(self, stream: pydyf.Stream, used: Used) -> None:
        self._stream = stream
        self._used = used
        self._pen: _Pen | None = None
        self._filling: Ink | None = None

    def items(self, items: tuple[Item, ...]) -> None:
        """Every item in drawing order."""
        for item in items:
            if isinstance(item, Group):
                self.items(item.items)
            elif isinstance(item, Line):
                for line in strokes(item):
                    self._line(line)
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
            else:
                self._shape(item)

    def _set_pen(self, ink: Ink, width: float, dash: tuple[float, ...] = ()) -> None:
        pen = _Pen(ink, extent(width), tuple(extent(part) for part in dash))
        before, self._pen = self._pen, pen
        if before is None or before.ink != ink:
            self._stream.set_color_rgb(*_rgb(ink), stroke=True)
        if before is None or before.width != pen.width:
            self._stream.set_line_width(pen.width)
        if pen.dash != (before.dash if before else ()):
            self._stream.set_dash(pen.dash, "0")

    def _set_filling(self, ink: Ink) -> None:
        if self._filling != ink:
            self._filling = ink
            self._stream.set_color_rgb(*_rgb(ink))

    def _move(self, point: Point) -> None:
        self._stream.move_to(coordinate(point.x), coordinate(point.y))

    def _draw(self, point: Point) -> None:
        self._stream.line_to(coordinate(point.x), coordinate(point.y))

    def _line(self, line: Line) -> None:
        self._set_pen(line.ink, line.width, line.dash)
        self._move(line.start)
        self._draw(line.end)
        self._stream.stroke()

    def _arrow(self, arrow: Arrow) -> None:
        parts = arrow_parts(arrow)
        if not parts.visible:
            return  # a line of no length leaves a speck in some viewers
        self._line(parts.exact)
        for part in parts.visible:
            if isinstance(part, Line):
                self._line(part)
            else:
                self._shape(part)

    def _arc(self, arc: Arc) -> None:
        self._set_pen(arc.ink, arc.width, arc.dash)
        self._bend(arc.centre, arc.radius, arc.start, arc.sweep)
        self._stream.stroke()

    def _bend(self, centre: Point, radius: float, start: float, sweep: float) -> None:
        """Part of a circle as a path of Bézier curves."""
        self._stream.stream.append(_bent(centre.x, centre.y, radius, start, sweep))

    def _circle(self, circle: Circle) -> None:
        finish = self._outline_and_fill(circle.ink, circle.width, circle.fill)
        if finish:
            self._bend(circle.centre, circle.radius, 0.0, 360.0)
            self._stream.close()
            finish()

    def _shape(self, shape: Shape) -> None:
        finish = self._outline_and_fill(shape.ink, shape.width, shape.fill)
        if not finish or not shape.points:
            return
        first, *others = [f"{coordinate(point.x)} {coordinate(point.y)}" for point in shape.points]
        # A code has a thousand corners: one piece of text costs less than a thousand calls.
        self._stream.stream.append("".join([f"{first} m", *[f"\n{other} l" for other in others]]))
        if shape.closed:
            self._stream.close()
        finish()

    def _squares(self, squares: Squares) -> None:
        """Rectangles of whole squares, in a unit of their own: filled together, so that no seam shows."""
        last = len(squares.rows) - 1
        runs = [
            f"{start} {last - row} {end - start} 1 re"
            for row, marks in enumerate(squares.rows)
            for start, end in dark_runs(marks)
        ]
        extent(squares.side)
        if not runs:
            return
        side, left, top = squares.side, squares.corner.x, squares.corner.y
        self._set_filling(squares.fill)
        self._stream.push_state()
        unit = factor(side)
        self._stream.set_matrix(unit, "0", "0", unit, coordinate(left), coordinate(top - (last + 1) * side))
        self._stream.stream.append("\n".join(runs))
        self._stream.fill()
        self._stream.pop_state()

    def _outline_and_fill(self, ink: Ink, width: float, fill: Ink | None) -> Callable[[], None] | None:
        """Set pen and filling; what finishes the path, None if nothing would be seen."""
        extent(width)
        if width > 0.0:
            self._set_pen(ink, width)
        if fill is not None:
            self._set_filling(fill)
        finish: Callable[[], None] | None = {
            (True, True): self._stream.fill_and_stroke,
            (True, False): self._stream.stroke,
            (False, True): self._stream.fill,
        }.get((width > 0.0, fill is not None))
        return finish

    def _text(self, text: Text) -> None:
        placed = tuple(placed_runs(text))
        if not placed:
            return
        coordinate(text.turn)
        across, up = trig.cosine(text.turn), trig.sine(text.turn)
        self._set_filling(text.ink)
        flip = -1.0 if text.mirrored else 1.0
        marked = text.turn != 0.0 or text.mirrored or len({run.rise for run in text.runs}) > 1
        if marked:
            # Readers take a lowered index for a line of its own ("I_N" breaks in two) and turned
            # letters for a line each.
            meant = pydyf.Dictionary({"ActualText": pdf_fonts.text_string(text.plain)})
            self._stream.begin_marked_content("Span", meant.data)
        self._stream.begin_text()
        for run in placed:
            step = run.at.minus(text.at)
            step = Point(flip * step.x, step.y)
            self._run(
                run,
                (flip * across, flip * up, -up, across),
                text.at.plus(Point(across * step.x - up * step.y, up * step.x + across * step.y)),
            )
        self._stream.end_text()
        if marked:
            self._stream.end_marked_content()

    def _run(self, placed: PlacedRun, turn: tuple[float, float, float, float], at: Point) -> None:
        run = placed.run
        numbers, shown = _shown(run.text, run.face)
        used = self._used.setdefault(run.face, {})
        for number, character in zip(numbers, run.text, strict=True):
            used[number] = min(character, used.get(number, character))
        self._stream.set_font_size(_FONT_NAMES[run.face], extent(run.size))
        self._stream.set_text_matrix(*[factor(number) for number in turn], coordinate(at.x), coordinate(at.y))
        self._stream.show_text(shown)


def _rgb(ink: Ink) -> list[str]:
    """Red, green and blue of an ink on paper, 0 to 1."""
    colour = PAPER_COLOURS[ink]
    return [coordinate(int(colour[place : place + 2], 16) / 255) for place in (1, 3, 5)]


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
