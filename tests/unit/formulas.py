"""The formulas of a working in one line of plain text each, so that a test can read them."""

from pycore.sums.answer import Equation, Working
from pycore.words.formula import Bracketed, Formula, FormulaRow, Fraction, Function, Number, Root, Square
from pycore.words.phrase import Symbol


def line(formula: Formula) -> str:
    """A formula as plain text."""
    match formula:
        case str():
            return formula
        case Number():
            return formula.text + (f" {formula.unit}" if formula.unit else "")
        case Symbol():
            return formula.plain
        case Fraction():
            return f"({line(formula.above)})/({line(formula.below)})"
        case Root():
            return f"√({line(formula.inside)})"
        case Square():
            return f"({line(formula.base)})²"
        case Function():
            return f"{formula.name} {line(formula.of)}"
        case Bracketed():
            return f"({line(formula.inside)})"
        case FormulaRow():
            return " ".join(line(part) for part in formula.parts)
    raise TypeError(f"{formula} is no formula")


def lines_of(working: Working) -> list[str]:
    """Every line of a working's equations."""
    return [line(one) for block in working.blocks if isinstance(block, Equation) for one in block.lines]
