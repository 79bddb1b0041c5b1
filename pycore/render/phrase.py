"""Sentences as HTML: numbers keep their units, symbols keep their indexes, sums stay on one line."""

from collections.abc import Iterator
from functools import lru_cache

from pycore.render.elements import Markup, h, join
from pycore.words.phrase import Emphasis, Phrase, Piece, Symbol
from pycore.words.unbroken import SYMBOL, together


@lru_cache(maxsize=128)
def symbol_html(symbol: Symbol) -> Markup:
    """Return a quantity symbol: italic letter, upright index."""
    index = h("sub", None, symbol.index) if symbol.index else None
    return h("span", {"class": "symbol"}, h("var", None, symbol.letter), index)


def _texts(phrase: Phrase) -> Iterator[str]:
    """Yield the text of each piece, with a character in the place of each symbol."""
    for piece in phrase:
        if isinstance(piece, Emphasis):
            yield "".join(_texts(piece.pieces))
        else:
            yield piece if isinstance(piece, str) else SYMBOL


def _kept_together(phrase: Phrase) -> Phrase:
    """Return a phrase with the no-break spaces of its whole text: a sum may have a symbol or a stress within it."""
    whole, at = together("".join(_texts(phrase))), 0

    def taken(pieces: Phrase) -> Iterator[Piece]:
        nonlocal at
        for piece in pieces:
            if isinstance(piece, Emphasis):
                yield Emphasis(tuple(taken(piece.pieces)))  # type: ignore[arg-type]
                continue
            length = len(piece) if isinstance(piece, str) else 1
            yield whole[at : at + length] if isinstance(piece, str) else piece
            at += length

    return tuple(taken(phrase))


def _piece(piece: Piece) -> Markup:
    if isinstance(piece, Emphasis):
        return h("strong", None, [_piece(inner) for inner in piece.pieces])
    return symbol_html(piece) if isinstance(piece, Symbol) else join(piece)


@lru_cache(maxsize=512)
def phrase_html(phrase: Phrase | str) -> Markup:
    """Return a phrase as inline HTML; plain text is a phrase of one piece. Most stay from one edit to the next."""
    if isinstance(phrase, str):
        return join(together(phrase))
    return join([_piece(piece) for piece in _kept_together(phrase)])
