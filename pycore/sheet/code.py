"""A QR code as it is drawn: exact squares on white ground."""

from collections.abc import Sequence

from pycore.drawing import Group, Shape, Squares
from pycore.geometry import Box, Point

QUIET = 4
"""Light modules that must stand around a code (ISO/IEC 18004, 6.3.8)."""

SMALLEST_MODULE = 0.25
"""mm; what a phone held in the hand still reads from paper (common practice, no source)."""


def module_of(rows: Sequence[str], box: Box) -> float:
    """The side of one module in mm, when code and quiet zone fill the box: whole micrometres.

    A code whose modules would be below ``SMALLEST_MODULE`` should be left out, and that said.
    """
    micrometres = int(1000 * min(box.width, box.height) + 1e-6)
    return micrometres // (len(rows) + 2 * QUIET) / 1000


def code(rows: Sequence[str], box: Box) -> Group:
    """The code with its quiet zone, as large as fits the box and in its middle.

    ``rows`` from the top, "1" dark and "0" light, as ``pycore.writers.qr.matrix`` gives them.
    Raises ValueError when the rows are not a square.
    """
    size = len(rows)
    if not size or any(len(row) != size for row in rows):
        raise ValueError(f"a QR code is square; these {size} rows are not")
    module = module_of(rows, box)
    half = module * (size + 2 * QUIET) / 2
    left, top = box.centre.x - half, box.centre.y + half

    low, right = top - 2 * half, left + 2 * half
    ground = Shape((Point(left, top), Point(right, top), Point(right, low), Point(left, low)), fill="sheet")
    first = Point(left + QUIET * module, top - QUIET * module)
    return Group((ground, Squares(first, module, tuple(rows))), name="code")
