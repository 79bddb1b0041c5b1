"""Formulas in one line of text, for paper: a root sign before brackets, a stroke for a fraction."""

from pycore.words.formula import (
    Bracketed,
    Formula,
    FormulaRow,
    Fraction,
    Function,
    Number,
    Root,
    Square,
)
from pycore.words.phrase import Phrase, Piece, Symbol

OPERATORS = ("=", "≈", "+", "−", "×", "÷", "±")
EQUALS, SIGNS = ("=", "≈"), ("+", "−")


def line_of(formula: Formula) -> Phrase:
    """Return a formula as one line."""
    match formula:
        case str():
            return (formula,)
        case Symbol():
            return (formula,)
        case Number(text=text, unit=unit):
            return (f"{text}\u00a0{unit}" if unit else text,)
        case Fraction(above=above, below=below):
            return (*_factor(above), " / ", *_factor(below))
        case Root(inside=inside):
            return ("√", *_factor(inside))
        case Square(base=base):
            return (*_factor(base, Function, Number), "²")
        case Function(name=name, of=of):
            return (name, " ", *_factor(of))
        case Bracketed(inside=inside, bars=bars):
            return ("|", *line_of(inside), "|") if bars else ("(", *line_of(inside), ")")
        case FormulaRow(parts=parts):
            return _row(parts)


def _factor(formula: Formula, *further: type) -> Phrase:
    """Return a formula as a factor: in brackets if it has several parts."""
    many = isinstance(formula, FormulaRow) and len(formula.parts) > 1
    with_unit = Number in further and isinstance(formula, Number) and bool(formula.unit)
    of_two = isinstance(formula, Number) and any(sign in formula.text[1:] for sign in SIGNS)
    wide = of_two or isinstance(formula, (Fraction, *(one for one in further if one is not Number)))
    return ("(", *line_of(formula), ")") if many or wide or with_unit else line_of(formula)


def _row(parts: tuple[Formula, ...]) -> Phrase:
    """Return parts side by side: spaces about operators, none after a sign or within a product of letters."""
    pieces: list[Piece] = []
    for place, part in enumerate(parts):
        after_operator = place == 0 or parts[place - 1] in OPERATORS
        if part in OPERATORS:
            pieces.append(str(part) if after_operator and part in SIGNS else f" {part} ")
            continue
        before_operator = place + 1 == len(parts) or parts[place + 1] in OPERATORS
        pieces += [" "] if isinstance(part, Function) and not after_operator else []
        in_product = isinstance(part, Fraction) and not (after_operator and before_operator)
        pieces += ("(", *line_of(part), ")") if in_product else line_of(part)
    return tuple(pieces)


def segments(formula: Formula) -> tuple[Phrase, ...]:
    """Return a formula parted before its signs of equality, where a line may be broken."""
    if not isinstance(formula, FormulaRow):
        return (line_of(formula),)
    groups: list[list[Formula]] = [[]]
    for part in formula.parts:
        if part in EQUALS and groups[-1]:
            groups.append([])
        groups[-1].append(part)
    return tuple(_row(tuple(group)) for group in groups)
