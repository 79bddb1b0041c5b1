"""Formulas of circuits with a problem's numbers: reactances, sums, roots."""

import math
from collections.abc import Sequence

from pycore.circuits.elements import COIL, RESISTOR
from pycore.forms.elements import TypedElement
from pycore.sums.figures import Figure, Figures
from pycore.words.formula import Formula, FormulaRow, Fraction, Number, Root, Square, row
from pycore.words.phrase import Symbol

PI, F = Symbol("π"), Symbol("f")

Term = tuple[Symbol, Figure, int]
"""A symbol, its size and its sign in a sum."""


def reactance(typed: TypedElement, exact: float, hertz: float, figures: Figures) -> Figure:
    """Return the size of an element's reactance, or its resistance, from the values that its line prints."""
    if typed.element.in_ohms or typed.element.kind == RESISTOR:
        return figures.given(exact, "Ω")
    omega = math.tau * figures.given(hertz, "Hz").value
    value = omega * typed.element.value if typed.element.kind == COIL else 1.0 / (omega * typed.element.value)
    return figures.result(value, exact, "Ω")


def reactance_line(
    typed: TypedElement, symbol: Symbol, letter: Symbol, result: Figure, hertz: float, figures: Figures
) -> Formula:
    """Return X = 2 pi f L = 2 pi x 50 Hz x 0.1 H = 31.42 ohms, or the reactance as it was typed."""
    if typed.element.in_ohms:
        return row(symbol, "=", result.number)
    value = Number(typed.number, typed.unit)
    frequency = figures.given(hertz, "Hz").number
    general, filled = FormulaRow(("2", PI, F, letter)), FormulaRow(("2", PI, "×", frequency, "×", value))
    if typed.element.kind == COIL:
        return row(symbol, "=", general, "=", filled, "=", result.number)
    one = Number("1")
    return row(symbol, "=", Fraction(one, general), "=", Fraction(one, filled), "=", result.number)


def sum_of(terms: Sequence[Term]) -> float:
    """Return the sum of signed terms as they are printed."""
    return math.fsum(sign * term.value for _, term, sign in terms)


def added(symbol: Symbol, terms: Sequence[Term], result: Figure) -> Formula:
    """Return a sum of signed terms, in symbols and in numbers."""
    symbols: list[Formula] = []
    numbers: list[Formula] = []
    for place, (term, size, sign) in enumerate(terms):
        if place or sign < 0:
            symbols.append("+" if sign > 0 else "−")
            numbers.append("+" if sign > 0 else "−")
        symbols.append(term)
        numbers.append(size.number)
    if len(terms) == 1 and terms[0][2] > 0:
        return row(symbol, "=", *symbols, "=", result.number)
    return row(symbol, "=", *symbols, "=", *numbers, "=", result.number)


def hypotenuse(
    symbol: Symbol, first: tuple[Symbol, Figure], second: tuple[Symbol, Figure], result: Number
) -> tuple[Formula, ...]:
    """Return Pythagoras' theorem, in symbols and in numbers."""
    squares = [Square(one.size.number) for _, one in (first, second)]
    return (
        row(symbol, "=", Root(row(Square(first[0]), "+", Square(second[0])))),
        row(symbol, "=", Root(row(squares[0], "+", squares[1])), "=", result),
    )
