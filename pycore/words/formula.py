"""Formulas as data, from which the page makes MathML."""

from dataclasses import dataclass

from pycore.words.phrase import Symbol


@dataclass(frozen=True, slots=True)
class Number:
    """A number as written (decimal mark chosen), with its unit if it has one."""

    text: str
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Fraction:
    """One expression over another."""

    above: "Formula"
    below: "Formula"


@dataclass(frozen=True, slots=True)
class Root:
    """A square root."""

    inside: "Formula"


@dataclass(frozen=True, slots=True)
class Square:
    """An expression squared."""

    base: "Formula"


@dataclass(frozen=True, slots=True)
class Function:
    """A named function of an expression: sin, cos, arctan."""

    name: str
    of: "Formula"


@dataclass(frozen=True, slots=True)
class Bracketed:
    """An expression in brackets (round), or between bars when ``bars``."""

    inside: "Formula"
    bars: bool = False


@dataclass(frozen=True, slots=True)
class FormulaRow:
    """Expressions and operators (plain strings such as +, −, ×, =, ≈) side by side."""

    parts: tuple["Formula", ...]


Formula = str | Symbol | Number | Fraction | Root | Square | Function | Bracketed | FormulaRow


def row(*parts: Formula) -> FormulaRow:
    """Expressions and operators side by side."""
    return FormulaRow(parts)
