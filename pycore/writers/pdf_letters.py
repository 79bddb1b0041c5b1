"""Letters of other fonts in a PDF: their outlines as Type 3 fonts, whose text can be searched and copied.

A cluster (a letter with its marks, a ligature) is one glyph, so that each stands for its own characters. Source: ISO
32000-1 (PDF 1.7), sections 9.6.5 (Type 3 fonts) and 9.10 (extraction of text).
"""

from collections.abc import Iterable

import pydyf

from pycore.lettering import scripts
from pycore.lettering.glyphs import UNITS, Glyph
from pycore.lettering.letters import commands
from pycore.writers import pdf_fonts
from pycore.writers.numbers import coordinate
from pycore.writers.pdf_file import compressed

_TO_A_FONT = 255
"""Glyphs of one font: a code has one byte, and 0 is left free."""
_OPERATORS = {"M": "m", "L": "l", "C": "c"}
Place = tuple[int, int]
"""A font, counted from 0, and the code in it."""


class LetterFonts:
    """The glyphs of other fonts that a file uses, in the order in which they came."""

    def __init__(self) -> None:
        self._places: dict[Glyph, Place] = {}

    def shown(self, glyphs: Iterable[Glyph]) -> list[tuple[str, str]]:
        """Return glyphs as they are written: the name of a font, and the codes in it, in hexadecimal."""
        pieces: list[tuple[str, str]] = []
        for glyph in glyphs:
            count = len(self._places)
            font, code = self._places.setdefault(glyph, (count // _TO_A_FONT, count % _TO_A_FONT + 1))
            if pieces and pieces[-1][0] == _name(font):
                pieces[-1] = (_name(font), f"{pieces[-1][1]}{code:02x}")
            else:
                pieces.append((_name(font), f"{code:02x}"))
        return pieces

    def write(self, pdf: pydyf.PDF) -> dict[str, bytes]:
        """Add the fonts to a file; by the name of each, the reference that a page's resources need."""
        fonts: dict[int, list[Glyph]] = {}
        for glyph, (font, _) in self._places.items():
            fonts.setdefault(font, []).append(glyph)
        return {_name(font): _font(pdf, glyphs) for font, glyphs in fonts.items()}


def _name(font: int) -> str:
    return f"L{font}"


def _font(pdf: pydyf.PDF, glyphs: list[Glyph]) -> bytes:
    shapes = pydyf.Dictionary()
    for code, glyph in enumerate(glyphs, start=1):
        stream = compressed(_procedure(glyph).encode("ascii"))
        pdf.add_object(stream)
        shapes[f"g{code}"] = stream.reference
    texts = {code: _meaning(glyph.text) for code, glyph in enumerate(glyphs, start=1)}
    meanings = compressed(pdf_fonts.to_unicode(texts, 1).encode("ascii"))
    pdf.add_object(meanings)
    left, bottom, right, top = _bounds(glyphs)
    names = " ".join([f"/g{code}" for code in range(1, len(glyphs) + 1)])
    font = pydyf.Dictionary(
        {
            "Type": "/Font",
            "Subtype": "/Type3",
            "FontBBox": f"[{left} {bottom} {right} {top}]",
            "FontMatrix": f"[{coordinate(1 / UNITS)} 0 0 {coordinate(1 / UNITS)} 0 0]",
            "CharProcs": shapes,
            "Encoding": pydyf.Dictionary({"Type": "/Encoding", "Differences": f"[1 {names}]"}),
            "FirstChar": 1,
            "LastChar": len(glyphs),
            "Widths": f"[{' '.join([str(glyph.advance) for glyph in glyphs])}]",
            "Resources": pydyf.Dictionary(),
            "ToUnicode": meanings.reference,
        }
    )
    pdf.add_object(font)
    reference: bytes = font.reference
    return reference


def _meaning(text: str) -> str:
    """The characters of a glyph: readers turn a line round that is read from the right, character by character."""
    return text[::-1] if scripts.right_to_left(text) else text


def _bounds(glyphs: Iterable[Glyph]) -> tuple[int, int, int, int]:
    """The box around all points, control points too: none of a curve is outside of them."""
    numbers = [(values[0::2], values[1::2]) for glyph in glyphs for _, values in commands(glyph.outline)]
    across = [x for row, _ in numbers for x in row] or [0]
    up = [y for _, row in numbers for y in row] or [0]
    return min(across), min(up), max(across), max(up)


def _procedure(glyph: Glyph) -> str:
    """How a glyph is drawn, in the ink of the text. A quadratic curve becomes the cubic one that is the same."""
    left, bottom, right, top = _bounds((glyph,))
    lines = [f"{glyph.advance} 0 {left} {bottom} {right} {top} d1"]
    x = y = 0.0
    for letter, values in commands(glyph.outline):
        if letter == "Z":
            lines.append("h")
        elif letter == "Q":
            bend_x, bend_y, end_x, end_y = values
            points = (
                x + (bend_x - x) * 2 / 3, y + (bend_y - y) * 2 / 3,
                end_x + (bend_x - end_x) * 2 / 3, end_y + (bend_y - end_y) * 2 / 3, end_x, end_y,
            )  # fmt: skip
            lines.append(" ".join([coordinate(round(point, 1)) for point in points]) + " c")
        else:
            lines.append(" ".join(map(str, values)) + f" {_OPERATORS[letter]}")
        if values:
            x, y = values[-2:]
    return "\n".join([*lines, "f"]) if glyph.outline else lines[0]
