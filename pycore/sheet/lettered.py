"""Phrases as drawn text: symbols in italics with an upright index, everything else upright."""

from collections.abc import Iterator, Sequence
from functools import lru_cache

from pycore import lettering
from pycore.drawing import Face, Group, Ink, Run, Text, with_role
from pycore.geometry import Box, Point
from pycore.lettering.glyphs import Shaped
from pycore.words.phrase import Emphasis, Phrase, Symbol
from pycore.words.unbroken import NO_BREAK, together

INDEX_SIZE = 0.7
INDEX_DROP = 0.22
"""How far an index is below the baseline, as a share of the capital height."""
NUMBER_ROOM, BETWEEN_STEPS = 8.0, 2.0
"""Room for the number before an instruction, and between two instructions, mm."""


def _symbol(symbol: Symbol, capitals: float) -> tuple[Run, ...]:
    letter = Run(symbol.letter, "italic", lettering.size_for_capitals(capitals, "italic"))
    if not symbol.index:
        return (letter,)
    size = lettering.size_for_capitals(capitals * INDEX_SIZE, "regular")
    return (letter, Run(symbol.index, "regular", size, -INDEX_DROP * capitals))


@lru_cache(maxsize=1024)
def runs(phrase: Phrase | str | Shaped, capitals: float, face: Face = "regular") -> tuple[Run, ...]:
    """Return the runs of a phrase with capitals ``capitals`` mm high."""
    if isinstance(phrase, Shaped):
        return _shaped(phrase, capitals, face)
    pieces = (phrase,) if isinstance(phrase, str) else phrase
    lettered: list[Run] = []
    for piece in pieces:
        if isinstance(piece, Emphasis):
            lettered.extend(runs(piece.pieces, capitals, "bold"))
        elif isinstance(piece, Symbol):
            lettered.extend(_symbol(piece, capitals))
        else:
            lettered.append(Run(piece, face, lettering.size_for_capitals(capitals, face)))
    return tuple(lettered)


def _shaped(phrase: Shaped, capitals: float, face: Face) -> tuple[Run, ...]:
    from pycore.lettering.letters import share_that_fits  # Few sheets have such letters.

    glyphs = [glyph for piece in phrase.pieces if not isinstance(piece, str) for glyph in piece]
    size = lettering.size_for_capitals(capitals, face) * share_that_fits(glyphs)
    return tuple(
        Run(piece, face, size) if isinstance(piece, str)
        else Run("".join([glyph.text for glyph in piece]), face, size, glyphs=piece)
        for piece in phrase.pieces
    )  # fmt: skip


def text(
    phrase: Phrase | str | Shaped,
    at: Point,
    capitals: float,
    anchor: str = "start",
    ink: Ink = "ink",
    face: Face = "regular",
) -> Text:
    """A line of text with capitals of this height."""
    read = phrase.text if isinstance(phrase, Shaped) else ""
    return Text(runs(phrase, capitals, face), at, anchor, ink, read=read)  # type: ignore[arg-type]


def box_of(item: Text, capitals: float) -> Box:
    """Return the rectangle of a line of text: capitals above, index and descenders below."""
    width = lettering.runs_width(item.runs)
    left = item.at.x - {"start": 0.0, "middle": width / 2, "end": width}[item.anchor]
    low = 0.34 if len(item.runs) > 1 or any(c in "gjpqy,()" for c in item.plain) else 0.05
    return Box(left, item.at.y - low * capitals, left + width, item.at.y + 1.05 * capitals)


@lru_cache(maxsize=4096)
def width_of(phrase: Phrase | str | Shaped, capitals: float, face: Face = "regular") -> float:
    """Return the width of a phrase in mm."""
    return lettering.runs_width(runs(phrase, capitals, face))


def fitting(phrase: Phrase | str | Shaped, capitals: float, room: float, face: Face = "regular") -> float:
    """Return the height of capitals at which a line fits ``room`` mm: ``capitals``, or less if necessary."""
    wide = width_of(phrase, capitals, face)
    return capitals if wide <= room else capitals * room / wide


def numbered(steps: Sequence[str], at: Point, capitals: float, width: float) -> tuple[Group, float]:
    """Return numbered instructions below a point, in ``width`` mm, and the height where they end."""
    items: list[Group] = []
    y = at.y
    for number, step in enumerate(steps, start=1):
        pitch = 1.75 * capitals
        lines = [
            text(line, Point(at.x + NUMBER_ROOM, y - index * pitch), capitals)
            for index, line in enumerate(wrapped(step, capitals, width - NUMBER_ROOM), start=1)
        ]
        label = text(f"{number}", Point(at.x, y - pitch), capitals, ink="ink-2")
        items.append(with_role("item", with_role("label", label), with_role("body", *lines)))
        y -= len(lines) * pitch + BETWEEN_STEPS
    return with_role("list", *items), y


def wrapped(phrase: str, capitals: float, width: float, most: int = 0) -> list[str]:
    """Return plain text broken into lines no wider than ``width`` mm: at spaces outside sums, else anywhere.

    If breaking at spaces takes more than ``most`` lines, the text is broken anywhere, so that nothing is lost.
    """
    lines: list[str] = []
    for word in _words(phrase, capitals, width):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width_of(longer, capitals) <= width:
            lines[-1] = longer
        elif width_of(word, capitals) <= width:
            lines.append(word)
        else:
            lines += _broken(word, capitals, width)
    return _broken(phrase, capitals, width) if 0 < most < len(lines) else lines


def _words(phrase: str, capitals: float, width: float) -> Iterator[str]:
    """Yield what a line may not be broken within; what is wider than the line is broken at any space."""
    for word in together(phrase).split(" "):
        yield from (word,) if width_of(word, capitals) <= width else word.split(NO_BREAK)


def _broken(text: str, capitals: float, width: float) -> list[str]:
    """Return a text broken after & or /, or if necessary between any two characters."""
    lines = [""]
    for piece in _pieces(text):
        letters = (piece,) if width_of(piece, capitals) <= width else tuple(piece)
        for letter in letters:
            if lines[-1] and width_of(lines[-1] + letter, capitals) > width:
                lines.append("")
            lines[-1] += letter
    return lines


def _pieces(text: str) -> list[str]:
    """Return a text split where a long address is best broken: after & and /."""
    return text.replace("&", "&\n").replace("/", "/\n").split("\n")
