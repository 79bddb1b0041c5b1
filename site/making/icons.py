"""Draws the site's sign as pictures for a device's home screen: a parallelogram and its diagonal, as on every page."""

import struct
import zlib
from pathlib import Path

import numpy as np

SHEET, INK, ACCENT = (252, 253, 251), (20, 25, 26), (0, 102, 75)
BOX = 32.0
"""The side of the square in whose units the sign is drawn."""

ORIGIN, T1, N, T2 = (5.5, 24.0), (11.0, 10.5), (26.5, 8.0), (21.0, 21.5)
"""Corners, y down: the star point, the tips of two phasors, and the tip of their sum."""

EDGES = ((ORIGIN, T1), (T1, N), (N, T2), (T2, ORIGIN))
DIAGONAL = (ORIGIN, N)
EDGE_WIDTH, DIAGONAL_WIDTH = 1.6, 3.0

ICONS = {
    "icon-180.png": (180, 0.9),
    "icon-192.png": (192, 0.9),
    "icon-512.png": (512, 0.9),
    "icon-mask.png": (512, 0.66),
}
"""By file name, the pixels of a side and the share of it that the sign takes: a mask may cut a fifth off each side."""


def write_icons(folder: Path) -> None:
    """Write every icon into `folder`."""
    folder.mkdir(parents=True)
    for name, (pixels, share) in ICONS.items():
        (folder / name).write_bytes(png(drawn(pixels, share)))


def drawn(pixels: int, share: float) -> np.ndarray:
    """The sign as an array of pixels × pixels × 3 bytes, filling `share` of the side, on the sheet's colour."""
    unit = pixels * share / BOX
    places = (np.arange(pixels) + 0.5 - pixels / 2) / unit + BOX / 2
    across, down = np.meshgrid(places, places)
    picture = np.full((pixels, pixels, 3), SHEET, dtype=float)
    strokes = [*((edge, EDGE_WIDTH, INK) for edge in EDGES), (DIAGONAL, DIAGONAL_WIDTH, ACCENT)]
    for (start, end), width, colour in strokes:
        inside = width / 2 - _distance(across, down, start, end)
        cover = np.clip(inside * unit + 0.5, 0, 1)[..., None]
        picture += cover * (np.array(colour) - picture)
    colours: np.ndarray = np.rint(picture).astype(np.uint8)
    return colours


def _distance(across: np.ndarray, down: np.ndarray, start: tuple, end: tuple) -> np.ndarray:
    """How far each place is from the line between two points."""
    (x, y), (run, rise) = start, (end[0] - start[0], end[1] - start[1])
    along = np.clip(((across - x) * run + (down - y) * rise) / (run * run + rise * rise), 0, 1)
    away: np.ndarray = np.sqrt((across - x - along * run) ** 2 + (down - y - along * rise) ** 2)
    return away


def png(picture: np.ndarray) -> bytes:
    """A picture of height × width × 3 bytes as a PNG file."""
    height, width, _colours = picture.shape

    def chunk(kind: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

    rows = b"".join(b"\0" + row.tobytes() for row in picture)
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(rows, 9)) + chunk(b"IEND", b"")
