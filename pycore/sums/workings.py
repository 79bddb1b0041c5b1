"""The working by components, line by line."""

import math

from pycore import phasor, quantity, trig
from pycore.phasor import wrap
from pycore.quantity import NO_BREAK_SPACE, NumberFormat
from pycore.sums.answer import Block, Equation, Grid, Paragraph
from pycore.sums.carried import agrees, as_printed, fewest, number_of
from pycore.sums.case import SumCase
from pycore.sums.sentences import StepSentences, direction_phrase
from pycore.sums.wording import degrees_text
from pycore.words import answers as words
from pycore.words import constructions as words_of_steps
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

PART_DECIMALS, MOST_DECIMALS = 2, 6
"""Decimals beyond the answer's in which components are printed: at least, and at most if the answer must follow."""
MORE_OF_SIZE, MOST_OF_ANGLE = 4, 8
"""Decimals of a calculated size beyond those of its components, and of an angle, at most, so that components follow."""
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
        self.stated_angles = [wrap(90.0 - angle) if picture.first == "up" else angle for angle in paper]
        self.unrounded = _rid_of_rounding(
            phasor.total(complex(x, y) for x, y in zip(self.across, self.upward, strict=True)),
            phasor.ZERO_SHARE * math.fsum(sizes),
        )
        extra = fewest(PART_DECIMALS, MOST_DECIMALS, self.follows)
        self.carried, self.extra = extra is not None, PART_DECIMALS if extra is None else extra
        self.sum = self.sum_as_printed(self.extra) if self.carried else self.unrounded
        self.size_extra, self.angle_decimals = self._digits_before()

    def sum_as_printed(self, extra: int) -> complex:
        """The components as printed, with ``extra`` decimals beyond the answer's, added column by column (SI)."""
        decimals, factor = self.writing.decimals + extra, self.writing.factor
        x, y = (
            as_printed(math.fsum(as_printed(value / factor, decimals) for value in column), decimals)
            for column in (self.across, self.upward)
        )
        return complex(x * factor, y * factor)

    def _digits_before(self) -> tuple[int, int]:
        """The fewest digits of sizes (beyond the usual ones) and of angles from which every component follows."""
        pairs = [
            (size, angle) for size in range(self.extra + MORE_OF_SIZE + 1) for angle in range(1, MOST_OF_ANGLE + 1)
        ]
        return next((pair for pair in sorted(pairs, key=sum) if self.parts_follow(*pair)), pairs[-1])

    def parts_follow(self, size_extra: int, angle_decimals: int) -> bool:
        """Whether each component, as printed, is that of the printed size at the printed angle."""
        for index, one in enumerate(self.parts):
            size = number_of(self.size_text(one.size, size_extra))
            angle = as_printed(self.stated_angles[index], angle_decimals)
            along, square = size * trig.cosine(angle), size * trig.sine(angle)
            level, upright = (square, along) if self.picture.first == "up" else (along, square)
            if not agrees(level, self.component_text(self.across[index])):
                return False
            if not agrees(upright, self.component_text(self.upward[index])):
                return False
        return True

    def size_text(self, value: float, extra: int) -> str:
        """A size as it was typed; a calculated one with ``extra`` decimals beyond the usual ones."""
        usual, written = self.writing.as_typed(value), value / self.writing.factor
        as_typed = not self.writing.computed and math.fabs(number_of(usual) - written) <= phasor.ZERO_SHARE * written
        return usual if as_typed else quantity.fixed(written, quantity.decimals_of(usual) + extra, self.mark)

    def follows(self, extra: int) -> bool:
        """Whether the printed components lead to the answer's size and angle, digit by digit."""
        total, exact, factor = self.sum_as_printed(extra), self.unrounded, self.writing.factor
        if (total.real == 0, total.imag == 0) != (exact.real == 0, exact.imag == 0):
            return False
        if exact == 0:
            return True
        size = as_printed(phasor.magnitude(total) / factor, self.writing.decimals + extra)
        angles = (degrees_text(_slope(one), self.mark) for one in (total, exact))
        return agrees(size, self.writing.number(self.case.size)) and next(angles) == next(angles)

    def blocks(self) -> tuple[Block, ...]:
        """Return the complete working: table, sums, Pythagoras, angle by quadrant."""
        intro = words.components_intro(self.picture.first == "up", self.sentences.notation.reference)
        note = words.rounding_note(self.writing.decimals + self.extra, carried=self.carried)
        blocks: list[Block] = [Paragraph(intro), self.grid(), Paragraph(note)]
        if self.sum == 0:
            blocks.append(Paragraph(self.case.zero_reason()))
            return tuple(blocks)
        blocks.append(Equation(self.pythagoras(), words.PYTHAGORAS))
        if self.case.closed:
            return (*blocks, Paragraph(self.case.zero_reason()))
        if self.sum.real != 0 and self.sum.imag != 0:
            blocks.append(Equation(self.arctangent(), words.ARCTANGENT))
        positive = self.sentences.sense(1.0)
        measured = words_of_steps.sense(anticlockwise=self.picture.first != "up")
        opposite = self.sentences.notation.polar and positive != measured
        blocks.append(Paragraph((*self.quarter(), " ", *words.answer_sense(positive)) if opposite else self.quarter()))
        return tuple(blocks)

    def component_text(self, value: float) -> str:
        """A part with the working's decimals."""
        return self.writing.fixed(value, self.extra)

    def grid(self) -> Grid:
        first = self.picture.first == "up"
        level, upright = ("sin", "cos") if first else ("cos", "sin")
        unit, letter = self.writing.unit, Symbol(self.case.part_letter)
        head: tuple[Phrase, ...] = (
            (self.case.part_word,),
            say("{unit}", unit=unit),
            *sum_words.part_heads(letter, level, upright),
        )
        rows = [
            (
                row.tag,
                (self.size_text(row.size, self.size_extra),),
                (quantity.fixed(self.stated_angles[index], self.angle_decimals, self.mark) + "°",),
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
            result_row(symbol, phasor.magnitude(self.sum), self.case.size, self.writing, self.extra),
        )  # fmt: skip

    def slope(self) -> float:
        return _slope(self.sum)

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
        degrees = self.picture.phasor_angle(phasor.angle(self.sum))
        angle_text = direction_phrase(self.sentences, wrap(degrees - self.picture.reference))
        if self.sum.real == 0 or self.sum.imag == 0:
            return words.on_axis(self.sentences.direction(degrees), angle_text)
        return words.quarter(
            self.sum.real > 0, self.sum.imag > 0, degrees_text(self.slope(), self.mark), angle_text
        )


def _slope(value: complex) -> float:
    """The angle in degrees, from 0 to 90, between a phasor and the horizontal axis."""
    return trig.angle_of(math.fabs(value.real), math.fabs(value.imag))


def result_row(
    symbol: Symbol, carried: float, size: float, writing: NumberFormat, extra: int = PART_DECIMALS
) -> Formula:
    """A result (SI) with ``extra`` decimals as it follows from the ``carried`` digits, then the answer's ``size``."""
    if size == 0:
        return row(symbol, "=", Number("0", writing.unit))
    result = Number(writing.fixed(carried, extra), writing.unit)
    return row(symbol, "=", result, "≈", Number(writing.number(size), writing.unit))


def share_text(value: float, mark: str) -> str:
    """Return a share in per cent, to a tenth."""
    return quantity.fixed(100 * value, 1, mark) + NO_BREAK_SPACE + "%"
