"""A sentence as data: plain words, quantity symbols, and the part that is stressed.

The sheet sets a phrase in the drawing's faces, the page in HTML, a screen reader hears it as
plain text: all three from the same pieces.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

SUBSCRIPTS = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")


@dataclass(frozen=True, slots=True)
class Symbol:
    """A quantity symbol: an italic letter with an upright index, such as I with index 1."""

    letter: str
    index: str = ""

    @property
    def plain(self) -> str:
        """The symbol in plain text: I₁, or I_N where no subscript letter exists."""
        if self.index.isdigit():
            return self.letter + self.index.translate(SUBSCRIPTS)
        return f"{self.letter}_{self.index}" if self.index else self.letter


@dataclass(frozen=True, slots=True)
class Emphasis:
    """The stressed part of a phrase."""

    pieces: tuple["str | Symbol", ...]


Piece = str | Symbol | Emphasis
Phrase = tuple[Piece, ...]


def plain(phrase: Phrase) -> str:
    """The phrase as plain text."""
    parts: list[str] = []
    for piece in phrase:
        if isinstance(piece, Emphasis):
            parts.append(plain(piece.pieces))
        else:
            parts.append(piece if isinstance(piece, str) else piece.plain)
    return "".join(parts)


def in_sentence(label: str) -> str:
    """A label as it stands within a sentence: with a small first letter, unless it is a name such as L1."""
    is_name = label[1:2] == label[1:2].upper()
    return label if is_name else label[:1].lower() + label[1:]


def stressed(phrase: Phrase) -> str:
    """The stressed part of a phrase as a short sentence in plain text; all of it if nothing is stressed."""
    parts = [plain(piece.pieces) for piece in phrase if isinstance(piece, Emphasis)]
    return f"{' '.join(parts).rstrip('.,:')}." if parts else plain(phrase)


def added(tags: Sequence[Phrase]) -> Phrase:
    """Return tags joined with a plus sign, or with the minus sign that a tag begins with: I₁ − I₂."""
    pieces: list[Piece] = list(tags[0])
    for tag in tags[1:]:
        pieces += (" − ", *tag[1:]) if tag[:1] == ("−",) else (" + ", *tag)
    return tuple(pieces)


def negated(tag: Phrase) -> Phrase:
    """Return the tag of the opposite: −I₁, and of that I₁."""
    return tuple(tag[1:]) if tag[:1] == ("−",) else ("−", *tag)


def listed_phrases(phrases: Sequence[Phrase]) -> Phrase:
    """Return phrases as a list in a sentence: I₁, I₂ and I₃."""
    pieces: list[Piece] = list(phrases[0])
    for phrase in phrases[1:-1]:
        pieces += (", ", *phrase)
    return (*pieces, " and ", *phrases[-1]) if len(phrases) > 1 else tuple(pieces)


@lru_cache(maxsize=1024)
def _parts(template: str) -> tuple[tuple[str, tuple[tuple[str, str], ...]], ...]:
    """Return a template split at ``**``: for each stretch the words before its first value, then each value's name and
    the words after it."""
    fragments = []
    for stretch in template.split("**"):
        before, *named = stretch.split("{")
        fragments.append((before, tuple((name, rest) for name, _, rest in (one.partition("}") for one in named))))
    return tuple(fragments)


def _fill(
    before: str, named: tuple[tuple[str, str], ...], values: dict[str, "str | Symbol | Phrase"]
) -> list["str | Symbol"]:
    pieces: list[str | Symbol] = [before] if before else []
    for name, rest in named:
        value = values[name]
        if isinstance(value, tuple):
            pieces.extend(piece for piece in value if not isinstance(piece, Emphasis) and piece != "")
        elif value != "" and not isinstance(value, Emphasis):
            pieces.append(value)
        if rest:
            pieces.append(rest)
    return pieces


_SYMBOL = re.compile(r"(?:\b|(?<=\d))([A-Z])(?:_([A-Za-z0-9]+(?:,[0-9]+)?)|([₀-₉]+))|\b([IPQSUV])\b(?![/’-])")
"""V_R; I₁; a letter of a quantity alone."""
_LEVEL = str.maketrans("₀₁₂₃₄₅₆₇₈₉", "0123456789")


def with_symbols(words: str) -> Phrase:
    """Return words in which V_R, I₁ and I are symbols: a slanting letter with an upright index."""
    pieces_so_far: list[Piece] = []
    end = 0
    for found in _SYMBOL.finditer(words):
        named, lowered, alone = found[2] or "", (found[3] or "").translate(_LEVEL), found[4]
        if alone and _is_unit(words[: found.start()], alone):
            continue
        pieces_so_far += [words[end : found.start()], Symbol(alone or found[1], named or lowered)]
        end = found.end()
    return tuple(piece for piece in (*pieces_so_far, words[end:]) if piece != "")


def _is_unit(before: str, letter: str) -> bool:
    """Return whether a letter after these words is a unit or part of a name: 5 V, kW/V, "calculate it in V"."""
    if letter in ("S", "V") and before.endswith(" in "):
        return True
    return before[-1:] in ("\u00a0", ".", ",", "/", "-") or (before[-2:-1].isdigit() and before[-1:] == " ")


def listed(names: Sequence[str], word: str = "or") -> str:
    """Return names in a sentence: a, b or c."""
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} {word} {names[-1]}"


def say(template: str, **values: "str | Symbol | Phrase") -> Phrase:
    """Fill a template: ``{name}`` is a value, ``**...**`` is emphasised.

    Raises KeyError if a value of the template is missing.
    """
    pieces: list[Piece] = []
    for index, (before, named) in enumerate(_parts(template)):
        filled = _fill(before, named, values)
        if index % 2 and filled:
            pieces.append(Emphasis(tuple(filled)))
        else:
            pieces.extend(filled)
    return tuple(pieces)
