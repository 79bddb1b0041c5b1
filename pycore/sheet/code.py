"""A QR code as shapes: exact squares on white ground, as few shapes as its pattern allows."""

from collections.abc import Sequence

from pycore.drawing import Group, Shape
from pycore.geometry import Box, Point

QUIET = 4
"""Light modules that must stand around a code (ISO/IEC 18004, 6.3.8)."""

SMALLEST_MODULE = 0.25
"""mm; what a phone held in the hand still reads from paper (common practice, no source)."""

Run = tuple[int, int]
"""The dark modules of one row from the first column up to, not including, the second."""


def module_of(rows: Sequence[str], box: Box) -> float:
    """The side of one module in mm, when code and quiet zone fill the box: whole micrometres.

    A code whose modules would be below ``SMALLEST_MODULE`` should be left out, and that said.
    """
    whole = int(1000 * min(box.width, box.height) + 1e-6)
    return whole // (len(rows) + 2 * QUIET) / 1000


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

    # Worked out once: a code has a thousand corners, and a class set a hundred codes.
    across = [left + (QUIET + column) * module for column in range(size + 1)]
    down = [top - (QUIET + row) * module for row in range(size + 1)]
    low, right = top - 2 * half, left + 2 * half
    ground = Shape((Point(left, top), Point(right, top), Point(right, low), Point(left, low)), fill="sheet")
    dark = [
        Shape(tuple([Point(across[column], down[row]) for column, row in outline]), fill="ink")
        for outline in _outlines(rows)
    ]
    return Group((ground, *dark), name="code")


def _outlines(rows: Sequence[str]) -> list[list[tuple[int, int]]]:
    """Outlines, as corners (column, row), that cover the dark modules once each."""
    made: list[list[tuple[int, int]]] = []
    above: list[tuple[int, list[Run]]] = []
    for number, row in enumerate((*rows, "")):
        here: list[tuple[int, list[Run]]] = []
        for run in _runs(row):
            # A run joins one that it touches in the row above: most seams between rows vanish, and holes cannot arise.
            start, end = run
            for place, chain in enumerate(above):
                last = chain[1][-1]
                if start < last[1] and last[0] < end:
                    chain[1].append(run)
                    here.append(above.pop(place))
                    break
            else:
                here.append((number, [run]))
        made += [_outline(first, runs) for first, runs in above]
        above = here
    return made


def _runs(row: str) -> list[Run]:
    """The dark runs of a row, from the left."""
    made, start = [], row.find("1")
    while start >= 0:
        end = row.find("0", start)
        end = len(row) if end < 0 else end
        made.append((start, end))
        start = row.find("1", end)
    return made


def _outline(first: int, runs: Sequence[Run]) -> list[tuple[int, int]]:
    """Down the right edge of runs that stand below one another, and up the left."""
    right = _edge(first, [end for _, end in runs])
    return right + _edge(first, [start for start, _ in runs])[::-1]


def _edge(first: int, columns: Sequence[int]) -> list[tuple[int, int]]:
    """The corners of one edge, from the top, none of them on a straight line between two others."""
    before, row = columns[0], first
    corners = [(before, row)]
    for after in columns[1:]:
        row += 1
        if before != after:
            corners += [(before, row), (after, row)]
            before = after
    return [*corners, (columns[-1], first + len(columns))]
