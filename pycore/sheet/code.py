"""Draws a QR code: exact squares on a white ground."""

from collections.abc import Sequence

from pycore.drawing import Group, Shape, Squares
from pycore.geometry import Box, Point
from pycore.words.sheet import QR_CODE

QUIET = 4
"""Light modules that must stand around a code (ISO/IEC 18004, 6.3.8)."""

SMALLEST_MODULE = 0.25
"""mm; the smallest module that a hand-held phone reads from paper (common practice, no source)."""


def module_of(rows: Sequence[str], box: Box) -> float:
    """Return the side of one module in mm if code and quiet zone fill the box, in whole micrometres.

    If modules would be smaller than ``SMALLEST_MODULE``, the code should be left out with a notice.
    """
    micrometres = int(1000 * min(box.width, box.height) + 1e-6)
    return micrometres // (len(rows) + 2 * QUIET) / 1000


def code(rows: Sequence[str], box: Box) -> Group:
    """Return the code with its quiet zone, as large as fits the box, centred.

    ``rows`` from the top, "1" dark and "0" light, as from ``pycore.writers.qr.matrix``. Raises ValueError if the rows
    are not a square.
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
    squares = Squares(first, module, tuple(rows))
    return Group((ground, squares), name="code", role="figure", alternative=QR_CODE)
