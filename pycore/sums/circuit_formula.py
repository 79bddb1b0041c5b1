"""Formulas of circuits with a problem's numbers: reactances, sums, roots."""

import math

from pycore.circuits.elements import COIL
from pycore.forms.elements import TypedElement, parts
from pycore.words.formula import Formula, FormulaRow, Fraction, Number, Root, Square, row
from pycore.words.phrase import Symbol

PI, F = Symbol("π"), Symbol("f")


def number(value: float, unit: str, mark: str, count: int = 4) -> Number:
    """Return a value as an element of a formula."""
    return Number(*parts(value, unit, mark, count))


def reactance_line(
    typed: TypedElement, symbol: Symbol, letter: Symbol, size: float, hertz: float, mark: str
) -> Formula:
    """Return X = 2 pi f L = 2 pi x 50 Hz x 0.1 H = 31.42 ohms, or the reactance as it was typed."""
    result, frequency = number(size, "Ω", mark), number(hertz, "Hz", mark)
    if typed.element.in_ohms:
        return row(symbol, "=", result)
    value = Number(typed.number, typed.unit)
    general, filled = FormulaRow(("2", PI, F, letter)), FormulaRow(("2", PI, "×", frequency, "×", value))
    if typed.element.kind == COIL:
        return row(symbol, "=", general, "=", filled, "=", result)
    one = Number("1")
    return row(symbol, "=", Fraction(one, general), "=", Fraction(one, filled), "=", result)


def added(symbol: Symbol, parts_of: list[tuple[Symbol, float, int]], unit: str, total: float, mark: str) -> Formula:
    """Return a sum of signed terms, in symbols and in numbers."""
    symbols: list[Formula] = []
    numbers: list[Formula] = []
    for place, (term, size, sign) in enumerate(parts_of):
        if place or sign < 0:
            symbols.append("+" if sign > 0 else "−")
            numbers.append("+" if sign > 0 else "−")
        symbols.append(term)
        numbers.append(number(size, unit, mark))
    result = number(total, unit, mark)
    if len(parts_of) == 1 and parts_of[0][2] > 0:
        return row(symbol, "=", *symbols, "=", result)
    return row(symbol, "=", *symbols, "=", *numbers, "=", result)


def hypotenuse(symbol: Symbol, first: tuple[Symbol, float], second: tuple[Symbol, float], unit: str, mark: str
) -> tuple[Formula, ...]:  # fmt: skip
    """Return Pythagoras' theorem, in symbols and in numbers."""
    size = math.hypot(first[1], second[1])
    squares = [Square(number(math.fabs(value), unit, mark)) for _, value in (first, second)]
    return (
        row(symbol, "=", Root(row(Square(first[0]), "+", Square(second[0])))),
        row(symbol, "=", Root(row(squares[0], "+", squares[1])), "=", number(size, unit, mark)),
    )
