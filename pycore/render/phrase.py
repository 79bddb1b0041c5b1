"""Sentences as HTML: numbers keep their units, symbols keep their indexes."""

import re

from pycore.render.elements import Markup, h, join
from pycore.words.phrase import Emphasis, Phrase, Piece, Symbol

NO_BREAK = "\u00a0"
UNITS = "A|mA|kA|V|mV|kV|Ω|mm|cm|m|W|kW|VA|kVA|var|kvar|µF|H|mH|Hz|%|°"
NUMBER_AND_UNIT = re.compile(rf"(?<=\d) (?=(?:{UNITS})(?![\w²]))")
SIGN_AND_NUMBER = re.compile(r"(?<=[=±≈]) (?=\d)")


def together(text: str) -> str:
    """Return a text with a no-break space between every number and its unit, and after a sign before a number."""
    return SIGN_AND_NUMBER.sub(NO_BREAK, NUMBER_AND_UNIT.sub(NO_BREAK, text))


def symbol_html(symbol: Symbol) -> Markup:
    """Return a quantity symbol: italic letter, upright index."""
    index = h("sub", None, symbol.index) if symbol.index else None
    return h("span", {"class": "symbol"}, h("var", None, symbol.letter), index)


def _piece(piece: Piece) -> Markup:
    if isinstance(piece, Emphasis):
        return h("strong", None, [_piece(inner) for inner in _merged(piece.pieces)])
    if isinstance(piece, Symbol):
        return symbol_html(piece)
    return join(together(piece))


def _merged(pieces: Phrase) -> Phrase:
    """Return neighbouring texts joined: a number may be one piece and its unit the next."""
    merged: list[Piece] = []
    for piece in pieces:
        if isinstance(piece, str) and merged and isinstance(merged[-1], str):
            merged[-1] += piece
        else:
            merged.append(piece)
    return tuple(merged)


def phrase_html(phrase: Phrase | str) -> Markup:
    """Return a phrase as inline HTML; plain text is a phrase of one piece."""
    if isinstance(phrase, str):
        return join(together(phrase))
    return join([_piece(piece) for piece in _merged(phrase)])
