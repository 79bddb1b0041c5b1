"""What a PDF has to know of a JPEG file: its size in pixels and its colours.

Source: ITU-T T.81 (ISO/IEC 10918-1), annex B: segments of a marker and a length; the frame header has the size.
"""

from typing import NamedTuple

from pycore.errors import DrawingError

_START, _SCAN = 0xD8, 0xDA
_FRAMES = frozenset((0xC0, 0xC1, 0xC2))
"""Baseline, extended and progressive: the frames that ISO 32000-1 lets a PDF hold."""


class JpegHead(NamedTuple):
    """Width and height in pixels, and how many colours there are: 1 or 3."""

    width: int
    height: int
    colours: int


def head_of(data: bytes) -> JpegHead:
    """Return size and colours of a JPEG file. Raises DrawingError for anything else."""
    at = 2
    if data[:2] == bytes((0xFF, _START)):
        while at + 9 < len(data) and data[at] == 0xFF and data[at + 1] != _SCAN:
            if data[at + 1] in _FRAMES:
                high, wide = (256 * data[place] + data[place + 1] for place in (at + 5, at + 7))
                if wide and high and data[at + 9] in (1, 3):
                    return JpegHead(wide, high, data[at + 9])
                break
            at += 2 + 256 * data[at + 2] + data[at + 3]
    raise DrawingError("this is no JPEG picture that a PDF can hold")
