"""Every sentence of the project, as templates over named values (British English)."""

from pycore.words.phrase import Emphasis, Phrase, Piece, Symbol, plain, say

__all__ = ["Emphasis", "Phrase", "Piece", "Symbol", "plain", "say"]
