"""The calculated workings of the neutral current: components line by line, and the closed formula."""

import math

from pycore import phasor, quantity, trig
from pycore.calculators.interface import Block, Equation, Grid, Paragraph
from pycore.calculators.telling import Teller, direction_phrase
from pycore.calculators.written import degrees_text
from pycore.circuits.star import StarSolution, closed_formula
from pycore.constructions.construction import Picture
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE, Writing
from pycore.words import Phrase, Symbol, say
from pycore.words import neutral as words
from pycore.words.formula import (
    Fenced,
    Formula,
    Fraction,
    Function,
    Number,
    Root,
    Square,
    row,
)

PART_DECIMALS = 2
"""Further decimals in which parts are written, so that adding what is written gives the answer."""
X, Y = Symbol("X"), Symbol("Y")
A, B, C = Symbol("a"), Symbol("b"), Symbol("c")


def _rid_of_rounding(value: complex, least: float) -> complex:
    """A sum whose parts below ``least`` are 0: they are only rounding, and have no direction."""
    x = 0.0 if math.fabs(value.real) <= least else value.real
    y = 0.0 if math.fabs(value.imag) <= least else value.imag
    return complex(x, y)


class ComponentsWorking:
    """Components of the line currents along the paper's axes, with this problem's numbers."""

    def __init__(self, solution: StarSolution, picture: Picture, teller: Teller) -> None:
        self.solution, self.picture, self.teller = solution, picture, teller
        self.writing: Writing = teller.telling.writing
        self.mark = self.writing.mark
        paper = [picture.paper_angle(angle) for angle in solution.angles]
        sizes = solution.load.currents
        self.across = [size * trig.cosine(angle) for size, angle in zip(sizes, paper, strict=True)]
        self.upward = [size * trig.sine(angle) for size, angle in zip(sizes, paper, strict=True)]
        self.told_angles = [wrap(90.0 - angle) if picture.first == "up" else angle for angle in paper]
        self.sum = _rid_of_rounding(
            phasor.total(complex(x, y) for x, y in zip(self.across, self.upward, strict=True)),
            phasor.ZERO_SHARE * math.fsum(sizes),
        )

    def blocks(self) -> tuple[Block, ...]:
        """The whole path: table, sums, Pythagoras, angle by quarter."""
        intro = words.components_intro(self.picture.first == "up", self.teller.telling.reference)
        decimals = self.writing.decimals + PART_DECIMALS
        made: list[Block] = [Paragraph(intro), self.grid(), Paragraph(words.rounding_note(decimals))]
        if self.sum == 0:
            reason = words.balanced() if self.solution.balanced else words.closed_not_balanced()
            made.append(Paragraph(reason))
            return tuple(made)
        made.append(Equation(self.pythagoras(), words.pythagoras()))
        if self.sum.real != 0 and self.sum.imag != 0:
            made.append(Equation(self.arctangent(), words.arctangent()))
        made.append(Paragraph(self.quarter()))
        return tuple(made)

    def part(self, value: float) -> str:
        return self.writing.fixed(value, PART_DECIMALS)

    def grid(self) -> Grid:
        first = self.picture.first == "up"
        level, upright = ("sin", "cos") if first else ("cos", "sin")
        unit = self.writing.unit
        head: tuple[Phrase, ...] = (
            say("line"),
            say("{unit}", unit=unit),
            say("angle {theta}", theta=Symbol("θ")),
            say("level, {i} {f} {theta}", i=Symbol("I"), f=level, theta=Symbol("θ")),
            say("upright, {i} {f} {theta}", i=Symbol("I"), f=upright, theta=Symbol("θ")),
        )
        rows = [
            (
                self.teller.tag(index + 1),
                (self.writing.given(self.solution.load.currents[index]),),
                (quantity.fixed(self.told_angles[index], 1, self.mark) + "°",),
                (self.part(self.across[index]),),
                (self.part(self.upward[index]),),
            )
            for index in range(3)
        ]
        total: tuple[Phrase, ...] = (
            ("sum",), ("",), ("",), (self.part(self.sum.real),), (self.part(self.sum.imag),),
        )  # fmt: skip
        return Grid(head, (*rows, total), total=True)

    def number(self, value: float) -> Formula:
        written = self.part(value)
        return Fenced(Number(written)) if written.startswith(quantity.MINUS) else Number(written)

    def pythagoras(self) -> tuple[Formula, ...]:
        symbol = Symbol("I", "N")
        return (
            row(symbol, "=", Root(row(Square(X), "+", Square(Y)))),
            row(
                symbol, "=",
                Root(row(Square(self.number(self.sum.real)), "+", Square(self.number(self.sum.imag)))),
            ),
            result_row(self.solution.current, self.writing),
        )  # fmt: skip

    def slope(self) -> float:
        return trig.angle_of(math.fabs(self.sum.real), math.fabs(self.sum.imag))

    def arctangent(self) -> tuple[Formula, ...]:
        ratio = Fraction(
            Number(self.part(math.fabs(self.sum.imag))), Number(self.part(math.fabs(self.sum.real)))
        )
        general = Fraction(Fenced(Y, bars=True), Fenced(X, bars=True))
        angle = Number(degrees_text(self.slope(), self.mark))
        return (
            row(Symbol("α"), "=", Function("arctan", Fenced(general))),
            row(Symbol("α"), "=", Function("arctan", Fenced(ratio)), "=", angle),
        )

    def quarter(self) -> Phrase:
        reckoned = self.picture.reckoned_angle(phasor.angle(self.sum))
        told = direction_phrase(self.teller, wrap(reckoned - self.picture.reference))
        if self.sum.real == 0 or self.sum.imag == 0:
            return words.on_axis(self.teller.way(reckoned), told)
        return words.quarter(
            self.sum.real > 0, self.sum.imag > 0, degrees_text(self.slope(), self.mark), told
        )


def result_row(current: float, writing: Writing) -> Formula:
    """The neutral current with the working's decimals, then rounded as the answer is."""
    exact = Number(writing.fixed(current, PART_DECIMALS), writing.unit)
    if current == 0:
        return row(Symbol("I", "N"), "=", Number("0", writing.unit))
    return row(Symbol("I", "N"), "=", exact, "≈", Number(writing.number(current), writing.unit))


def formula_blocks(solution: StarSolution, writing: Writing) -> tuple[Block, ...]:
    """The closed formula with this problem's numbers, or why it does not hold."""
    if not solution.equal_angles:
        return (Paragraph(words.formula_fails()),)
    symbol = Symbol("I", "N")
    sizes = solution.load.currents
    a, b, c = (Number(writing.given(value)) for value in sizes)
    squares = (Square(A), "+", Square(B), "+", Square(C))
    filled = (Square(a), "+", Square(b), "+", Square(c))
    minus = ("−", A, B, "−", B, C, "−", C, A)
    filled_minus = ("−", a, "×", b, "−", b, "×", c, "−", c, "×", a)
    result = result_row(closed_formula(sizes), writing)
    half = Fraction(Number("1"), Number("2"))
    differences = row(
        half,
        Fenced(row(
            Square(Fenced(row(A, "−", B))), "+", Square(Fenced(row(B, "−", C))), "+",
            Square(Fenced(row(C, "−", A))),
        )),
    )  # fmt: skip
    gaps = [Number(_difference(sizes[i] - sizes[j], writing)) for i, j in ((0, 1), (1, 2), (2, 0))]
    filled_gaps = row(
        half,
        Fenced(row(Square(Fenced(gaps[0])), "+", Square(Fenced(gaps[1])), "+", Square(Fenced(gaps[2])))),
    )
    return (
        Paragraph(words.formula_intro()),
        Equation((
            row(symbol, "=", Root(row(*squares, *minus))),
            row(symbol, "=", Root(row(*filled, *filled_minus))),
            result,
        )),
        Equation(
            (row(symbol, "=", Root(differences)), row(symbol, "=", Root(filled_gaps)), result),
            words.formula_differences(),
        ),
        Paragraph(words.formula_no_angle()),
    )  # fmt: skip


def _difference(value: float, writing: Writing) -> str:
    """A difference of given values, with their decimals and a true minus sign."""
    written = writing.given(math.fabs(value))
    return quantity.MINUS + written if value < 0 and written != "0" else written


def share_text(value: float, mark: str) -> str:
    """A share in per cent, to a tenth."""
    return quantity.fixed(100 * value, 1, mark) + NO_BREAK_SPACE + "%"
