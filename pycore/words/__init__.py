"""Every sentence of the project, as templates over named values (British English)."""

from pycore.words.phrase import Phrase, Piece, Strong, Symbol, plain, say

__all__ = ["Phrase", "Piece", "Strong", "Symbol", "plain", "say"]
