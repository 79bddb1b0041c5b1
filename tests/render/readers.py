"""PDFs read back by programs that share no code: pdfium, MuPDF, and an interpreter of our own over qpdf's tokens.

Everything is in mm from the page's upper left corner.
"""

import ctypes
import io
import math
from collections.abc import Callable, Iterator

import numpy
import pikepdf
import pymupdf
import pypdfium2 as pdfium
import pypdfium2.raw as raw

POINT = 25.4 / 72
Segment = tuple[float, float, float, float]
Affine = tuple[float, float, float, float, float, float]


def pdfium_lines(data: bytes, number: int = 0) -> Iterator[Segment]:
    """Every straight piece on a page, by pdfium."""
    page = pdfium.PdfDocument(data)[number]
    height = page.get_height()
    for item in page.get_objects(filter=[raw.FPDF_PAGEOBJ_PATH], max_depth=8):
        matrix, last = item.get_matrix(), None
        for index in range(raw.FPDFPath_CountSegments(item)):
            segment = raw.FPDFPath_GetPathSegment(item, index)
            x, y = ctypes.c_float(), ctypes.c_float()
            raw.FPDFPathSegment_GetPoint(segment, x, y)
            place = matrix.on_point(x.value, y.value)
            if raw.FPDFPathSegment_GetType(segment) == raw.FPDF_SEGMENT_LINETO and last is not None:
                yield last[0] * POINT, (height - last[1]) * POINT, place[0] * POINT, (height - place[1]) * POINT
            last = place


def mupdf_lines(data: bytes, number: int = 0) -> Iterator[Segment]:
    """Every straight piece on a page, by MuPDF."""
    with pymupdf.open(stream=data, filetype="pdf") as document:
        for path in document[number].get_drawings():
            for kind, *points in path["items"]:
                if kind == "l":
                    (x1, y1), (x2, y2) = points[:2]
                    yield x1 * POINT, y1 * POINT, x2 * POINT, y2 * POINT


def _then(first: Affine, second: Affine) -> Affine:
    """The matrix that does ``first``, then ``second`` (ISO 32000-1, 8.3.4)."""
    a, b, c, d, e, f = first
    p, q, r, s, t, u = second
    return (a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u)


def qpdf_lines(data: bytes, number: int = 0) -> Iterator[Segment]:
    """Every straight piece on a page, by the operators of its content stream as qpdf reads them."""
    with pikepdf.open(io.BytesIO(data)) as document:
        page = document.pages[number]
        height = float(page.mediabox[3])
        matrix: Affine = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
        kept: list[Affine] = []
        at = (0.0, 0.0)
        for operands, operator in pikepdf.parse_content_stream(page):
            name = str(operator)
            if name == "q":
                kept.append(matrix)
            elif name == "Q":
                matrix = kept.pop()
            elif name == "cm":
                matrix = _then(tuple(map(float, operands)), matrix)  # type: ignore[arg-type]
            elif name in ("m", "l", "c"):
                x, y = map(float, list(operands)[-2:])
                place = (x * matrix[0] + y * matrix[2] + matrix[4], x * matrix[1] + y * matrix[3] + matrix[5])
                if name == "l":
                    yield at[0] * POINT, (height - at[1]) * POINT, place[0] * POINT, (height - place[1]) * POINT
                at = place


def unpacked(data: bytes) -> bytes:
    """The same file with each of its objects written by itself, by qpdf."""
    with pikepdf.open(io.BytesIO(data)) as document:
        output = io.BytesIO()
        document.save(output, object_stream_mode=pikepdf.ObjectStreamMode.disable, static_id=True)
        return output.getvalue()


READERS: dict[str, Callable[..., Iterator[Segment]]] = {
    "pdfium": pdfium_lines, "mupdf": mupdf_lines, "qpdf": qpdf_lines,
}  # fmt: skip


def pdfium_size(data: bytes, number: int = 0) -> tuple[float, float]:
    """Width and height of a page in mm, by pdfium."""
    width, height = pdfium.PdfDocument(data)[number].get_size()
    return width * POINT, height * POINT


def mupdf_size(data: bytes, number: int = 0) -> tuple[float, float]:
    """Width and height of a page in mm, by MuPDF."""
    with pymupdf.open(stream=data, filetype="pdf") as document:
        box = document[number].rect
        return box.width * POINT, box.height * POINT


def qpdf_size(data: bytes, number: int = 0) -> tuple[float, float]:
    """Width and height of a page in mm, by qpdf."""
    with pikepdf.open(io.BytesIO(data)) as document:
        box = [float(side) for side in document.pages[number].mediabox]
        return (box[2] - box[0]) * POINT, (box[3] - box[1]) * POINT


SIZES = {"pdfium": pdfium_size, "mupdf": mupdf_size, "qpdf": qpdf_size}


def off(first: Segment, second: Segment) -> float:
    """The larger of the distances of both ends, whichever way round a line was drawn."""
    a, b, c, d = first
    ahead = max(math.hypot(a - second[0], b - second[1]), math.hypot(c - second[2], d - second[3]))
    back = max(math.hypot(a - second[2], b - second[3]), math.hypot(c - second[0], d - second[1]))
    return min(ahead, back)


def nearest(wanted: Segment, found: list[Segment]) -> float:
    """How far in mm the line that comes nearest to a wanted one misses it."""
    lines = numpy.array(found)
    first, last = (numpy.hypot(lines[:, n] - wanted[n], lines[:, n + 1] - wanted[n + 1]) for n in (0, 2))
    turned = [numpy.hypot(lines[:, n] - wanted[2 - n], lines[:, n + 1] - wanted[3 - n]) for n in (0, 2)]
    return float(min(numpy.maximum(first, last).min(), numpy.maximum(*turned).min()))
