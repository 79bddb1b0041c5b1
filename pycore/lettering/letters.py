"""Letters of other fonts, read from a request (site/CONTRACTS.md, "Letters"), and those that one lacks.

A request has a table of glyphs, and for each piece of text (``scripts``) which of them it has, from left to right; none
for a piece that no font of the site has.
"""

import re
from collections.abc import Iterable
from typing import Any

from pycore.lettering import made
from pycore.lettering.glyphs import UNITS, Glyph, Letters
from pycore.lettering.held import own
from pycore.lettering.scripts import Piece, pieces

ABOVE, BELOW = 1.25, 0.4
"""How far letters may reach above and below the baseline, in heights of our capitals."""
MOST_GLYPHS, LONGEST_OUTLINE, WIDEST = 20_000, 20_000, 100 * UNITS
_OUTLINE = re.compile(r"M(?: (?:[MLQCZ]|-?\d{1,5}))*|")
_NUMBERS = {"M": 2, "L": 2, "Q": 4, "C": 6, "Z": 0}


def commands(outline: str) -> list[tuple[str, list[int]]]:
    """Return the parts of an outline: a letter and its coordinates each."""
    parts: list[tuple[str, list[int]]] = []
    for word in outline.split():
        if word in _NUMBERS:
            parts.append((word, []))
        else:
            parts[-1][1].append(int(word))
    return parts


def share_that_fits(glyphs: Iterable[Glyph]) -> float:
    """Return how much smaller glyphs must be to keep to the height of a line of our own capitals, marks included: 1.0
    for those that do."""
    heights = [y for glyph in glyphs for _, values in commands(glyph.outline) for y in values[1::2]]
    capitals = made.CAPITAL_HEIGHT["regular"]
    above, below = max([1, *heights]), max([1, *(-y for y in heights)])
    return min(1.0, ABOVE * capitals / above, BELOW * capitals / below)


def side_by_side(glyphs: Iterable[Glyph]) -> str:
    """Return the outlines of glyphs in a line as one outline."""
    words: list[str] = []
    along = 0
    for glyph in glyphs:
        for letter, values in commands(glyph.outline):
            words.append(letter)
            words += [str(value if place % 2 else value + along) for place, value in enumerate(values)]
        along += glyph.advance
    return " ".join(words)


def unknown(letters: Letters, texts: Iterable[str]) -> list[Piece]:
    """Return the pieces of texts that nobody has tried to shape, each once."""
    wanted = (piece for text in texts if not own(text) for piece in pieces(text) if piece.script)
    return list({piece.key: piece for piece in wanted if piece.key not in letters.glyphs}.values())


def _is_outline(text: object) -> bool:
    if not isinstance(text, str) or len(text) > LONGEST_OUTLINE or not _OUTLINE.fullmatch(text):
        return False
    return all(len(numbers) == _NUMBERS[letter] for letter, numbers in commands(text))


def _glyph(entry: object) -> Glyph:
    if not isinstance(entry, list) or len(entry) != 3:
        raise ValueError("a glyph is a list of three")
    text, advance, outline = entry
    if not isinstance(text, str) or not isinstance(advance, int) or not 0 <= advance < WIDEST:
        raise ValueError("a glyph has a text and an advance")
    if not _is_outline(outline):
        raise ValueError("a glyph has an outline")
    return Glyph(text, advance, outline)


def read(given: Any) -> Letters:
    """Return the letters of a request; raises ValueError for what no page of this site sends."""
    try:
        table, runs = given["glyphs"], given["runs"]
        if len(table) > MOST_GLYPHS:
            raise ValueError("too many glyphs")
        glyphs = [_glyph(entry) for entry in table]
        return Letters({
            key: None if places is None else tuple(glyphs[place] for place in places)
            for key, places in runs.items()
        })  # fmt: skip
    except (KeyError, TypeError, IndexError, AttributeError) as error:
        raise ValueError("letters are a table of glyphs and runs") from error
