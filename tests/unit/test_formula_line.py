"""Formulas in one line: nothing is read in another way than it is meant."""

import pytest

from pycore.words import plain
from pycore.words.formula import Bracketed, Formula, Fraction, Function, Number, Root, Square, row
from pycore.words.formula_line import line_of, segments
from pycore.words.phrase import Symbol

X, Y = Symbol("X"), Symbol("Y")


@pytest.mark.parametrize(("formula", "line"), [
    (Number("7.2", "A"), "7.2\u00a0A"),
    (Root(row(Square(X), "+", Square(Y))), "√(X² + Y²)"),
    (Root(X), "√X"),
    (Square(Number("2.5", "A")), "(2.5\u00a0A)²"),
    (Square(row(X, "−", Y)), "(X − Y)²"),
    (Fraction(row(X, "+", Y), Number("2")), "(X + Y) / 2"),
    (row(Fraction(Number("1"), Number("2")), Bracketed(row(X, "−", Y))), "(1 / 2)(X − Y)"),
    (row(X, "=", Fraction(X, Y)), "X = X / Y"),
    (row(X, Function("tan", Symbol("φ"))), "X tan φ"),
    (row("−", X, "+", Y), "−X + Y"),
    (row(X, "=", "−", Y), "X = −Y"),
    (Bracketed(X, bars=True), "|X|"),
    (Fraction(Number("5.4 − j2.6", "A"), Number("0.08", "S")), "(5.4 − j2.6\u00a0A) / 0.08\u00a0S"),
    (Fraction(Number("−5", "A"), Number("2")), "−5\u00a0A / 2"),
    (Fraction(X, Fraction(X, Y)), "X / (X / Y)"),
    (Function("arctan", Bracketed(Fraction(X, Y))), "arctan (X / Y)"),
])  # fmt: skip
def test_a_formula_is_one_line(formula: Formula, line: str):
    assert line == plain(line_of(formula))


def test_a_formula_may_be_broken_before_its_signs_of_equality():
    parts = segments(row(X, "=", Fraction(X, Y), "=", Number("3"), "≈", Number("4")))
    assert ["X", " = X / Y", " = 3", " ≈ 4"] == [plain(part) for part in parts]
