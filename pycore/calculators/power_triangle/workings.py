"""The power triangle calculated line by line, with the problem's numbers."""

import math

from pycore import phasor, quantity
from pycore.calculators.power_triangle import words
from pycore.calculators.power_triangle.case import P, PowerCase, Q
from pycore.calculators.power_triangle.circuit import capacitance
from pycore.sums.answer import Block, Equation, Paragraph
from pycore.sums.circuit import side_of
from pycore.sums.circuit_formula import PI, F, hypotenuse, number
from pycore.words.answers import MORE_DIGITS
from pycore.words.formula import Bracketed, Formula, FormulaRow, Fraction, Function, Number, Root, Square, row
from pycore.words.phrase import Symbol

S, VOLTS, AMPS = Symbol("S"), Symbol("V"), Symbol("I")
PHI = Symbol("φ")
ROOT_THREE = Root(Number("3"))


class _PowerWorking:
    """One load's lines."""

    def __init__(self, case: PowerCase) -> None:
        self.case, self.entered, self.load, self.mark = case, case.entered, case.entered.load, case.notation.mark

    def number(self, value: float, unit: str) -> Number:
        return number(value, unit, self.mark)

    def signed(self, value: float, unit: str) -> Number | Bracketed:
        """A value as it stands within a formula, in brackets where it is below zero."""
        number = self.number(value, unit)
        return Bracketed(number) if value < 0 else number

    def angle(self, power: complex) -> Number:
        """An angle as the result of a line, below zero where the current leads."""
        return Number(quantity.fixed(phasor.angle(power), 2, self.mark) + "°")

    def of(self, name: str, power: complex) -> Function:
        """Sine, cosine or tangent of that angle, in brackets where it is below zero."""
        angle = self.angle(power)
        return Function(name, Bracketed(angle) if phasor.angle(power) < 0 else angle)

    def arccos(self, symbol: Symbol, power: complex) -> Formula:
        """The angle from the power factor; one that leads takes a minus."""
        arccos = Function("arccos", self.factor(power))
        signed = row("−", arccos) if phasor.angle(power) < 0 else arccos
        return row(symbol, "=", signed, "=", self.angle(power))

    def factor(self, power: complex) -> Number:
        """A power factor as it stands in a formula, to four figures: its tangent is wanted."""
        return Number(quantity.fixed(power.real / phasor.magnitude(power), 4, self.mark))

    def triangle(self) -> list[Block]:
        """The powers from what was given."""
        power, unit = self.load.power, self.entered.unit
        size, reactive = phasor.magnitude(power), power.imag
        cos, tan, sin = (Function(name, PHI) for name in ("cos", "tan", "sin"))
        active, apparent, vars_ = self.number(power.real, "W"), self.number(size, "VA"), self.number(reactive, "var")
        lines: list[Formula] = [self.arccos(PHI, power)]
        if unit == "W":
            lines += [
                row(S, "=", Fraction(P, cos), "=", Fraction(active, self.factor(power)), "=", apparent),
                row(Q, "=", FormulaRow((P, tan)), "=", active, "×", self.of("tan", power), "=", vars_),
            ]
        elif unit == "var":
            lines += [
                row(S, "=", Fraction(Q, sin), "=", Fraction(vars_, self.of("sin", power)), "=", apparent),
                row(P, "=", FormulaRow((S, cos)), "=", apparent, "×", self.factor(power), "=", active),
            ]
        else:
            if unit == "A":
                lines.append(self.from_current(apparent))
            lines += [
                row(P, "=", FormulaRow((S, cos)), "=", apparent, "×", self.factor(power), "=", active),
                row(Q, "=", FormulaRow((S, sin)), "=", apparent, "×", self.of("sin", power), "=", vars_),
            ]
        check = hypotenuse(S, (P, power.real), (Q, reactive), "", self.mark)[0]
        return [Equation((*lines, check), words.LEADING_TRIANGLE_INTRO if reactive < 0 else words.TRIANGLE_INTRO)]

    def from_current(self, apparent: Number) -> Formula:
        """S = V I, on three phases times the root of three."""
        volts, amperes = self.number(self.load.volts, "V"), self.number(self.entered.amount, "A")
        if self.load.phases == 3:
            return row(
                S, "=", FormulaRow((ROOT_THREE, VOLTS, AMPS)), "=", ROOT_THREE, "×", volts, "×", amperes, "=", apparent
            )
        return row(S, "=", FormulaRow((VOLTS, AMPS)), "=", volts, "×", amperes, "=", apparent)

    def current(self, power: complex, apparent: Symbol, amperes: Symbol) -> Formula:
        """The line current at so much power."""
        volts, result = self.number(self.load.volts, "V"), self.number(self.load.current(power), "A")
        size = self.number(phasor.magnitude(power), "VA")
        below: Formula = FormulaRow((ROOT_THREE, VOLTS)) if self.load.phases == 3 else VOLTS
        filled: Formula = row(ROOT_THREE, "×", volts) if self.load.phases == 3 else volts
        return row(amperes, "=", Fraction(apparent, below), "=", Fraction(size, filled), "=", result)

    def correction(self) -> list[Block]:
        """From the target to the capacitor, and what is left."""
        correction = self.case.correction
        if correction is None or not self.case.corrected:
            return []
        before, after = self.load.power, self.case.total
        phi, left = Symbol("φ", "2"), Symbol("Q", "2")
        third = self.case.notation.tags["i3"][0]
        name = third if isinstance(third, Symbol) else Q
        remaining, taken = self.number(math.fabs(after.imag), "var"), self.number(math.fabs(correction.vars), "var")
        ends = [(Q, before.imag), (left, after.imag)]
        (first, larger), (second, less) = ends if correction.vars > 0 else ends[::-1]
        lines = (
            self.arccos(phi, after),
            row(left, "=", FormulaRow((P, Function("tan", phi))), "=", self.number(before.real, "W"), "×",
                self.of("tan", after), "=", self.number(after.imag, "var")),
            row(name, "=", first, "−", second, "=", self.number(larger, "var"), "−",
                self.signed(less, "var"), "=", taken),
        )  # fmt: skip
        turns = before.imag > 0 > after.imag or before.imag < 0 < after.imag
        side = side_of(phasor.angle(after))
        blocks: list[Block] = [Equation(lines, words.other_side_intro(side) if turns else words.TARGET_INTRO)]
        if correction.vars > 0:
            blocks.append(Equation(self.capacitors(taken), words.CAPACITORS_INTRO[self.load.phases]))
        apparent = Symbol("S", "2")
        triangle = row(apparent, "=", Root(row(Square(P), "+", Square(left))), "=",
                       Root(row(Square(self.number(after.real, "W")), "+", Square(remaining))), "=",
                       self.number(phasor.magnitude(after), "VA"))  # fmt: skip
        current = self.current(after, apparent, Symbol("I", "2"))
        return [*blocks, Equation((triangle, current), words.POWERS_AFTER_INTRO)]

    def capacitors(self, taken: Number) -> tuple[Formula, ...]:
        """Farads of one capacitor, or of each of three in delta and in star."""
        vars_ = self.case.correction.vars if self.case.correction else 0.0
        frequency, volts = self.number(self.load.hertz, "Hz"), Square(self.number(self.load.volts, "V"))
        lines: list[Formula] = []
        for connection in ("delta", "star") if self.load.phases == 3 else ("",):
            three: tuple[Formula, ...] = ("3", "×") if connection == "delta" else ()
            below = FormulaRow((*three, "2", PI, F, Square(VOLTS)))
            filled = FormulaRow((*three, "2", PI, "×", frequency, "×", volts))
            symbol = Symbol("C", connection)
            farads = self.number(capacitance(self.load, vars_, connection), "F")
            lines.append(row(symbol, "=", Fraction(Symbol("Q", "C"), below), "=", Fraction(taken, filled), "=", farads))
        return tuple(lines)

    def blocks(self) -> tuple[Block, ...]:
        """The whole path."""
        current = self.current(self.load.power, S, AMPS)
        line_current = Equation((current,), words.LINE_CURRENT_INTRO)
        return (Paragraph(MORE_DIGITS), *self.triangle(), line_current, *self.correction())


def power_blocks(case: PowerCase) -> tuple[Block, ...]:
    """The triangle, the line current, the correction and its capacitors, with this load's numbers."""
    return _PowerWorking(case).blocks()
