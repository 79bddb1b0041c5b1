"""The working by components, line by line."""

import math

from pycore import phasor, quantity, trig
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE, NumberFormat
from pycore.sums.answer import Block, Equation, Grid, Paragraph
from pycore.sums.case import SumCase
from pycore.sums.sentences import StepSentences, direction_phrase
from pycore.sums.wording import degrees_text
from pycore.words import answers as words
from pycore.words import sums as sum_words
from pycore.words.formula import (
    Bracketed,
    Formula,
    Fraction,
    Function,
    Number,
    Root,
    Square,
    row,
)
from pycore.words.phrase import Phrase, Symbol, say

PART_DECIMALS = 2
"""Further decimals of components, so that adding the written numbers gives the answer."""
X, Y = Symbol("X"), Symbol("Y")


def _rid_of_rounding(value: complex, least: float) -> complex:
    """Return a sum whose components below ``least`` are set to 0: they are only rounding, and have no direction."""
    x = 0.0 if math.fabs(value.real) <= least else value.real
    y = 0.0 if math.fabs(value.imag) <= least else value.imag
    return complex(x, y)


class ComponentsWorking:
    """Components of the phasors along the paper's axes, with the numbers of this problem."""

    def __init__(self, case: SumCase, sentences: StepSentences) -> None:
        self.case, self.picture, self.sentences = case, case.picture, sentences
        self.parts = case.parts()
        self.writing: NumberFormat = sentences.notation.writing
        self.mark = self.writing.mark
        picture = self.picture
        paper = [picture.paper_angle(row.angle) for row in self.parts]
        sizes = [row.size for row in self.parts]
        self.across = [size * trig.cosine(angle) for size, angle in zip(sizes, paper, strict=True)]
        self.upward = [size * trig.sine(angle) for size, angle in zip(sizes, paper, strict=True)]
        self.told_angles = [wrap(90.0 - angle) if picture.first == "up" else angle for angle in paper]
        self.sum = _rid_of_rounding(
            phasor.total(complex(x, y) for x, y in zip(self.across, self.upward, strict=True)),
            phasor.ZERO_SHARE * math.fsum(sizes),
        )

    def blocks(self) -> tuple[Block, ...]:
        """Return the complete working: table, sums, Pythagoras, angle by quadrant."""
        intro = words.components_intro(self.picture.first == "up", self.sentences.notation.reference)
        decimals = self.writing.decimals + PART_DECIMALS
        blocks: list[Block] = [Paragraph(intro), self.grid(), Paragraph(words.rounding_note(decimals))]
        if self.sum == 0:
            blocks.append(Paragraph(self.case.zero_reason()))
            return tuple(blocks)
        blocks.append(Equation(self.pythagoras(), words.PYTHAGORAS))
        if self.sum.real != 0 and self.sum.imag != 0:
            blocks.append(Equation(self.arctangent(), words.ARCTANGENT))
        blocks.append(Paragraph(self.quarter()))
        return tuple(blocks)

    def component_text(self, value: float) -> str:
        """Return a component with the working's decimals."""
        return self.writing.fixed(value, PART_DECIMALS)

    def grid(self) -> Grid:
        first = self.picture.first == "up"
        level, upright = ("sin", "cos") if first else ("cos", "sin")
        unit, letter = self.writing.unit, Symbol(self.case.symbol.letter)
        head: tuple[Phrase, ...] = (
            (self.case.part_word,),
            say("{unit}", unit=unit),
            *sum_words.part_heads(letter, level, upright),
        )
        rows = [
            (
                row.tag,
                (self.writing.as_typed(row.size),),
                (quantity.fixed(self.told_angles[index], 1, self.mark) + "°",),
                (self.component_text(self.across[index]),),
                (self.component_text(self.upward[index]),),
            )
            for index, row in enumerate(self.parts)
        ]
        total: tuple[Phrase, ...] = (
            ("sum",), ("",), ("",), (self.component_text(self.sum.real),), (self.component_text(self.sum.imag),),
        )  # fmt: skip
        return Grid(head, (*rows, total), total=True)

    def number(self, value: float) -> Formula:
        written = self.component_text(value)
        return Bracketed(Number(written)) if written.startswith(quantity.MINUS) else Number(written)

    def pythagoras(self) -> tuple[Formula, ...]:
        symbol = self.case.symbol
        return (
            row(symbol, "=", Root(row(Square(X), "+", Square(Y)))),
            row(
                symbol, "=",
                Root(row(Square(self.number(self.sum.real)), "+", Square(self.number(self.sum.imag)))),
            ),
            result_row(symbol, self.case.size, self.writing),
        )  # fmt: skip

    def slope(self) -> float:
        return trig.angle_of(math.fabs(self.sum.real), math.fabs(self.sum.imag))

    def arctangent(self) -> tuple[Formula, ...]:
        ratio = Fraction(
            Number(self.component_text(math.fabs(self.sum.imag))), Number(self.component_text(math.fabs(self.sum.real)))
        )
        general = Fraction(Bracketed(Y, bars=True), Bracketed(X, bars=True))
        angle = Number(degrees_text(self.slope(), self.mark))
        return (
            row(Symbol("α"), "=", Function("arctan", Bracketed(general))),
            row(Symbol("α"), "=", Function("arctan", Bracketed(ratio)), "=", angle),
        )

    def quarter(self) -> Phrase:
        reckoned = self.picture.reckoned_angle(phasor.angle(self.sum))
        angle_text = direction_phrase(self.sentences, wrap(reckoned - self.picture.reference))
        if self.sum.real == 0 or self.sum.imag == 0:
            return words.on_axis(self.sentences.direction(reckoned), angle_text)
        return words.quarter(
            self.sum.real > 0, self.sum.imag > 0, degrees_text(self.slope(), self.mark), angle_text
        )


def result_row(symbol: Symbol, size: float, writing: NumberFormat) -> Formula:
    """Return a result with the working's decimals, then rounded like the answer."""
    exact = Number(writing.fixed(size, PART_DECIMALS), writing.unit)
    if size == 0:
        return row(symbol, "=", Number("0", writing.unit))
    return row(symbol, "=", exact, "≈", Number(writing.number(size), writing.unit))


def share_text(value: float, mark: str) -> str:
    """Return a share in per cent, to a tenth."""
    return quantity.fixed(100 * value, 1, mark) + NO_BREAK_SPACE + "%"
