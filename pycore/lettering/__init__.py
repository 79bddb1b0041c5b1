"""Widths and heights of lettering, from the metrics of the fonts that the build makes.

Three faces: ``regular`` and ``bold`` for words and numbers, ``italic`` for symbols of quantities. Sizes are the em in
mm. Advances are added without kerning, so that paper and screen have the same widths. This module is below ``drawing``,
so it knows a run of text only by its text, face and size.
"""

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import Protocol

from pycore.lettering import made
from pycore.lettering.glyphs import Glyph
from pycore.lettering.glyphs import width as glyphs_width


class Lettered(Protocol):
    """Anything with a text, a face and a size (mm): ``pycore.drawing.Run``."""

    @property
    def text(self) -> str:
        """The characters."""

    @property
    def face(self) -> str:
        """The face's name."""

    @property
    def size(self) -> float:
        """The em in mm."""

    @property
    def glyphs(self) -> tuple[Glyph, ...]:
        """Shapes in place of the face's own."""


def has(character: str, face: str = "regular") -> bool:
    """Return whether the face has a glyph for a character."""
    return character in made.ADVANCES[face]


def missing(text: str, face: str = "regular") -> str:
    """Return the characters of a text that the face lacks, each once, in order."""
    held = made.ADVANCES[face]
    return "".join(dict.fromkeys(character for character in text if character not in held))


@lru_cache(maxsize=2048)
def units(text: str, face: str = "regular") -> int:
    """Return the sum of the advances in font units; raises ValueError for a missing glyph."""
    advances = made.ADVANCES[face]
    try:
        return int(math.fsum([advances[character] for character in text]))
    except KeyError:
        raise ValueError(_lacking(text, face)) from None


def width(text: str, face: str = "regular", size: float = 5.0) -> float:
    """Return the advance width of a text in mm at an em of ``size`` mm; raises ValueError for a missing glyph."""
    return units(text, face) * size / made.UNITS_PER_EM[face]


def run_width(run: Lettered) -> float:
    """Return the advance width in mm of a run."""
    return glyphs_width(run.glyphs, run.size) if run.glyphs else width(run.text, run.face, run.size)


def runs_width(runs: Iterable[Lettered]) -> float:
    """Return the advance width in mm of consecutive runs."""
    return math.fsum(map(run_width, runs))


def glyphs(text: str, face: str = "regular") -> tuple[int, ...]:
    """Return the glyph numbers of a text in the font file; raises ValueError for a missing one."""
    numbers = made.GLYPHS[face]
    try:
        return tuple([numbers[character] for character in text])
    except KeyError:
        raise ValueError(_lacking(text, face)) from None


def capital_height(face: str = "regular", size: float = 5.0) -> float:
    """Return the height in mm of a capital without overshoot, at an em of ``size`` mm."""
    return made.CAPITAL_HEIGHT[face] * size / made.UNITS_PER_EM[face]


def size_for_capitals(height: float, face: str = "regular") -> float:
    """Return the em in mm for capitals ``height`` mm high."""
    return height * made.UNITS_PER_EM[face] / made.CAPITAL_HEIGHT[face]


def ascent(face: str = "regular", size: float = 5.0) -> float:
    """Return how far the face reaches above its baseline, mm (positive)."""
    return made.ASCENT[face] * size / made.UNITS_PER_EM[face]


def descent(face: str = "regular", size: float = 5.0) -> float:
    """Return how far the face reaches below its baseline, mm (negative, as in font files)."""
    return made.DESCENT[face] * size / made.UNITS_PER_EM[face]


def _lacking(text: str, face: str) -> str:
    lacking = ", ".join(f"{character!r} (U+{ord(character):04X})" for character in missing(text, face))
    return f"the {face} face has no glyph for {lacking} in {text!r}"
