"""The closed formula of the neutral current, with this problem's numbers."""

import math

from pycore import quantity
from pycore.calculators.neutral_current import words
from pycore.calculators.neutral_current.circuit import StarSolution, closed_formula
from pycore.quantity import NumberFormat
from pycore.sums.answer import Block, Equation, Paragraph
from pycore.sums.workings import result_row
from pycore.words.formula import Bracketed, Fraction, Number, Root, Square, row
from pycore.words.phrase import Symbol

A, B, C = Symbol("a"), Symbol("b"), Symbol("c")


def formula_blocks(symbol: Symbol, solution: StarSolution, writing: NumberFormat) -> tuple[Block, ...]:
    """The closed formula with this problem's numbers, or why it does not hold."""
    if not solution.equal_angles:
        return (Paragraph(words.FORMULA_FAILS),)
    sizes = solution.load.currents
    a, b, c = (Number(writing.as_typed(value)) for value in sizes)
    squares = (Square(A), "+", Square(B), "+", Square(C))
    filled = (Square(a), "+", Square(b), "+", Square(c))
    minus = ("−", A, B, "−", B, C, "−", C, A)
    filled_minus = ("−", a, "×", b, "−", b, "×", c, "−", c, "×", a)
    size = closed_formula(sizes)
    result = result_row(symbol, size, size, writing)
    half = Fraction(Number("1"), Number("2"))
    differences = row(
        half,
        Bracketed(row(
            Square(Bracketed(row(A, "−", B))), "+", Square(Bracketed(row(B, "−", C))), "+",
            Square(Bracketed(row(C, "−", A))),
        )),
    )  # fmt: skip
    gaps = [Number(_difference(sizes[i] - sizes[j], writing)) for i, j in ((0, 1), (1, 2), (2, 0))]
    filled_gaps = row(
        half,
        Bracketed(row(Square(Bracketed(gaps[0])), "+", Square(Bracketed(gaps[1])), "+", Square(Bracketed(gaps[2])))),
    )
    return (
        Paragraph(words.FORMULA_INTRO),
        Equation((
            row(symbol, "=", Root(row(*squares, *minus))),
            row(symbol, "=", Root(row(*filled, *filled_minus))),
            result,
        )),
        Equation(
            (row(symbol, "=", Root(differences)), row(symbol, "=", Root(filled_gaps)), result),
            words.FORMULA_DIFFERENCES,
        ),
        Paragraph(words.FORMULA_NO_ANGLE),
    )  # fmt: skip


def _difference(value: float, writing: NumberFormat) -> str:
    """A difference of given values, with their decimals and a true minus sign."""
    number_text = writing.as_typed(math.fabs(value))
    return quantity.MINUS + number_text if value < 0 and number_text != "0" else number_text
