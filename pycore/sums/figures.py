"""The numbers of a circuit's working: each line is calculated from the digits that are printed before it."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from pycore import quantity
from pycore.forms.elements import TYPED_DIGITS, parts
from pycore.quantity import NO_BREAK_SPACE
from pycore.sums.answer import Block, Paragraph
from pycore.sums.carried import TIE, number_of
from pycore.words.answers import MORE_DIGITS, carried_figures
from pycore.words.formula import Bracketed, Formula, Number

FINAL = 4
"""Figures of an answer."""
MOST, FURTHER = 11, 6
"""Figures of a carried number at most, and where not even these lead to the answers."""
NOTHING = 1e-4
"""Share of what is added up to which a sum counts as nothing."""


@dataclass(frozen=True, slots=True)
class Figure:
    """A number of a working: its value as it is printed (SI), and how it stands in a formula."""

    value: float
    number: Number

    @property
    def signed(self) -> Formula:
        """The number as it stands among others, in brackets where it is below zero."""
        return Bracketed(self.number) if self.value < 0 else self.number

    @property
    def text(self) -> str:
        """The number with its unit, in a table."""
        space = NO_BREAK_SPACE if self.number.unit else ""
        return f"{self.number.text}{space}{self.number.unit}"

    @property
    def negative(self) -> "Figure":
        """The same below zero."""
        return Figure(-self.value, Number(quantity.MINUS + self.number.text, self.number.unit)) if self.value else self

    @property
    def size(self) -> "Figure":
        """The same without its sign."""
        return Figure(math.fabs(self.value), Number(self.number.text.removeprefix(quantity.MINUS), self.number.unit))


def ratio(above: float, below: float) -> float:
    """A quotient; 0 where the divisor is printed as nothing, which leads to no answer."""
    return above / below if below else 0.0


class Figures:
    """Numbers of one working: those that are carried on have ``count`` figures.

    ``agree``: whether every result so far, rounded as an answer is, is the answer of the unrounded calculation.
    """

    def __init__(self, mark: str, count: int) -> None:
        self.mark, self.count, self.agree = mark, count, True

    def given(self, value: float, unit: str) -> Figure:
        """A typed value, with its own digits."""
        return self._printed(value, value, unit, TYPED_DIGITS)

    def result(self, value: float, exact: float, unit: str, among: float = 0.0) -> Figure:
        """A result of a line, from printed numbers, that is used again. ``exact`` is what the answer says of it;
        ``among`` is the size of what it came from, if it may be nothing."""
        self.compare(value, exact, among)
        return self._printed(value, exact, unit, self.count)

    def total(self, value: float, exact: float, unit: str, among: float) -> Figure:
        """The result of adding, with the decimals of what was added; ``among`` is the size of that."""
        self.compare(value, exact, among)
        lost = quantity.order_of_magnitude(among) - quantity.order_of_magnitude(value) if among and value else 0
        return self._printed(value, exact, unit, min(self.count, max(FINAL, self.count - lost)))

    def final(self, value: float, exact: float, unit: str, among: float = 0.0) -> Number:
        """A result that is not used again, as the answer has it."""
        self.compare(value, exact, among)
        return self._printed(value, exact, unit, FINAL).number

    def compare(self, value: float, exact: float, among: float) -> None:
        """Note whether a result leads to the answer; instead of nothing, next to nothing will do."""
        answer = float(f"{exact:.{FINAL - 1}e}")
        half = 0.5 * float(f"1e{quantity.order_of_magnitude(answer) - FINAL + 1}") if answer else NOTHING * among
        self.agree &= math.fabs(value - answer) <= half * (1.0 + TIE)

    def text(self, follows: str, answer: str) -> Number:
        """A result in another form than a quantity, such as an angle: as it follows, and as the answer has it."""
        self.agree &= follows == answer
        return Number(follows)

    def decimals(self, value: float, decimals: int, unit: str = "") -> Figure:
        """A number with a fixed number of decimals, such as a cosine or an angle, that is used again."""
        text = quantity.fixed(value, decimals, self.mark)
        return Figure(number_of(text), Number(text + unit))

    def _printed(self, value: float, exact: float, unit: str, count: int) -> Figure:
        text, written = parts(value, unit, self.mark, count, exact)
        power = quantity.PREFIXES.get(written.removesuffix(unit), 0)
        return Figure(float(f"{number_of(text)!r}e{power}") if power else number_of(text), Number(text, written))


def with_enough(mark: str, blocks: Callable[[Figures], tuple[Block, ...]]) -> tuple[Block, ...]:
    """Return a working with the fewest figures that lead to the answers, and how many they are."""
    for count in range(FINAL, MOST + 1):
        figures = Figures(mark, count)
        made = blocks(figures)
        if figures.agree:
            return (Paragraph(carried_figures(count, FINAL)), *made) if count > FINAL else made
    return (Paragraph(MORE_DIGITS), *blocks(Figures(mark, FURTHER)))
