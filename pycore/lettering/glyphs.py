"""Letters that our faces lack, as a shaper in the browser found them: frozen shapes, ready to be drawn.

``letters`` reads them from a request; ``scripts`` says which letters of a text they are.
"""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from pycore.lettering import made
from pycore.lettering.held import own

UNITS = 1000
"""Units of an em, in which advances and outlines are."""


@dataclass(frozen=True, slots=True)
class Glyph:
    """The shape of a cluster: its characters, its advance, and its outline: the letters M, L, Q, C, Z of an SVG path,
    each followed by its coordinates, separated by spaces; y upwards, ``UNITS`` to the em."""

    text: str
    advance: int
    outline: str


@dataclass(frozen=True, slots=True)
class Shaped:
    """A text that needs letters of other fonts: as it is read, and its pieces from left to right: words in our own
    face, or glyphs."""

    text: str
    pieces: tuple[str | tuple[Glyph, ...], ...]


@dataclass(frozen=True, slots=True)
class Letters:
    """What a request knows of letters that our faces lack: glyphs by the key of a piece; None where no font has it."""

    glyphs: Mapping[str, tuple[Glyph, ...] | None]

    def set(self, text: str) -> str | Shaped | None:
        """Return a text as it can be set; None if some of it cannot."""
        if own(text):
            return text
        from pycore.lettering.scripts import pieces  # Only such a text needs the table of scripts.

        found: list[str | tuple[Glyph, ...]] = []
        for piece in pieces(text):
            glyphs = self.glyphs.get(piece.key) if piece.script else None
            if piece.script and glyphs is None:
                return None
            found.append(glyphs or piece.text)
        return Shaped(text, tuple(_with_spaces(found)))


def _with_spaces(pieces: list[str | tuple[Glyph, ...]]) -> list[str | tuple[Glyph, ...]]:
    """Pieces in which a space between glyphs is one of them: else a reader of a PDF may lose it."""
    put: list[str | tuple[Glyph, ...]] = []
    for at, piece in enumerate(pieces):
        before = put[-1] if put else ""
        after = pieces[at + 1] if at + 1 < len(pieces) else ""
        if piece == " " and isinstance(before, tuple) and isinstance(after, tuple):
            put[-1] = (*before, Glyph(" ", made.ADVANCES["regular"][" "], ""))
        elif isinstance(piece, tuple) and isinstance(before, tuple):
            put[-1] = (*before, *piece)
        else:
            put.append(piece)
    return put


NO_LETTERS = Letters({})


def width(glyphs: Iterable[Glyph], size: float) -> float:
    """Return the advance width of glyphs in mm at an em of ``size`` mm."""
    return math.fsum([glyph.advance for glyph in glyphs]) * size / UNITS


def joined(texts: Sequence[str | Shaped], between: str) -> str | Shaped:
    """Return texts one after another."""
    if all(isinstance(one, str) for one in texts):
        return between.join(map(str, texts))
    pieces: list[str | tuple[Glyph, ...]] = []
    for one in texts:
        pieces += ([between] if pieces else []) + ([one] if isinstance(one, str) else list(one.pieces))
    return Shaped(between.join([one if isinstance(one, str) else one.text for one in texts]), tuple(pieces))
